-- What came to the tables with layout 2.

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
