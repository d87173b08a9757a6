-- From layout 1 to layout 2.

-- What doing an attempt again with this program and content has shown, as JSON: an `AttemptResult` of the gradebook.
-- Can be made again from the segments.
CREATE TABLE attempt_result (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    attempt BLOB NOT NULL,
    program TEXT NOT NULL,
    content BLOB NOT NULL,
    result TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    PRIMARY KEY (tenant, class, attempt, program, content)
) STRICT, WITHOUT ROWID;

-- What stands for a learner's name where none is needed. Drawn once.
CREATE TABLE pseudonym (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    seat INTEGER NOT NULL,
    pseudonym TEXT NOT NULL,
    PRIMARY KEY (tenant, class, seat),
    UNIQUE (tenant, class, pseudonym)
) STRICT, WITHOUT ROWID;

-- What instructors changed about marks: rows are only ever added, but for a learner who is erased. `what` is `mark` or
-- `comment`; a mark is a number of points, or empty for the one that is computed.
CREATE TABLE mark_change (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    number INTEGER NOT NULL,
    seat INTEGER NOT NULL,
    job TEXT NOT NULL,
    what TEXT NOT NULL,
    who TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    from_value TEXT NOT NULL,
    to_value TEXT NOT NULL,
    reason TEXT NOT NULL,
    PRIMARY KEY (tenant, class, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX mark_change_by_seat ON mark_change (tenant, class, seat, job, number);

-- The scenarios of sealed jobs, one for each seat: drawn once, and never again in another way.
CREATE TABLE sealed_job (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    seat INTEGER NOT NULL,
    job TEXT NOT NULL,
    seed INTEGER NOT NULL,
    draft INTEGER,
    text TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    PRIMARY KEY (tenant, class, seat, job)
) STRICT, WITHOUT ROWID;
