-- Everything that a class keeps. Tenant and class stand in every row, so that many classes fit one database.
-- Times are milliseconds since 1970; digests and identifiers are bytes. Rows of `segment`, `verdict`, `notice` and
-- `standing` are only ever added: they are the truth, the rest can be made from them.

CREATE TABLE class (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    definition TEXT NOT NULL,
    code TEXT NOT NULL,
    teacher_token BLOB NOT NULL,
    begun_ms INTEGER NOT NULL,
    PRIMARY KEY (tenant, class)
) STRICT, WITHOUT ROWID;

CREATE TABLE standing (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    number INTEGER NOT NULL,
    standing TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    PRIMARY KEY (tenant, class, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE notice (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    number INTEGER NOT NULL,
    seat INTEGER,
    text TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    PRIMARY KEY (tenant, class, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE seat (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    seat INTEGER NOT NULL,
    name TEXT NOT NULL,
    name_key TEXT NOT NULL,
    joined_ms INTEGER,
    word BLOB,
    word_until_ms INTEGER,
    PRIMARY KEY (tenant, class, seat),
    UNIQUE (tenant, class, name_key)
) STRICT, WITHOUT ROWID;

CREATE TABLE token (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    token BLOB NOT NULL,
    seat INTEGER NOT NULL,
    since_ms INTEGER NOT NULL,
    PRIMARY KEY (tenant, class, token)
) STRICT, WITHOUT ROWID;

CREATE TABLE attempt (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    attempt BLOB NOT NULL,
    seat INTEGER NOT NULL,
    begun_ms INTEGER NOT NULL,
    last_ms INTEGER NOT NULL,
    next INTEGER NOT NULL,
    digest BLOB NOT NULL,
    bytes INTEGER NOT NULL,
    closed INTEGER NOT NULL,
    PRIMARY KEY (tenant, class, attempt)
) STRICT, WITHOUT ROWID;

CREATE INDEX attempt_by_seat ON attempt (tenant, class, seat, begun_ms);

CREATE TABLE segment (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    attempt BLOB NOT NULL,
    sequence INTEGER NOT NULL,
    previous BLOB NOT NULL,
    digest BLOB NOT NULL,
    program TEXT NOT NULL,
    content BLOB NOT NULL,
    text TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    PRIMARY KEY (tenant, class, attempt, sequence)
) STRICT, WITHOUT ROWID;

CREATE TABLE verdict (
    tenant TEXT NOT NULL,
    class TEXT NOT NULL,
    attempt BLOB NOT NULL,
    program TEXT NOT NULL,
    content BLOB NOT NULL,
    verdict TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    PRIMARY KEY (tenant, class, attempt, program, content)
) STRICT, WITHOUT ROWID;
