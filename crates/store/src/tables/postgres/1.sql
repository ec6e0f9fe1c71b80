-- Every text that was ever saved, by what it says.
CREATE TABLE text (
    hash TEXT PRIMARY KEY CHECK (length(hash) = 64),
    body TEXT NOT NULL
);

-- What a document said, revision by revision; none is ever altered.
CREATE TABLE revision (
    kind TEXT NOT NULL,
    name TEXT NOT NULL,
    number BIGINT NOT NULL CHECK (number > 0),
    hash TEXT NOT NULL REFERENCES text (hash),
    note TEXT NOT NULL,
    saved_by TEXT NOT NULL,
    saved_at TEXT NOT NULL,
    PRIMARY KEY (kind, name, number)
);

-- What was published, and from which revisions.
CREATE TABLE edition (
    number BIGINT PRIMARY KEY CHECK (number > 0),
    note TEXT NOT NULL,
    published_at TEXT NOT NULL
);

CREATE TABLE edition_part (
    edition BIGINT NOT NULL REFERENCES edition (number),
    kind TEXT NOT NULL,
    name TEXT NOT NULL,
    revision BIGINT NOT NULL,
    PRIMARY KEY (edition, kind, name),
    FOREIGN KEY (kind, name, revision) REFERENCES revision (kind, name, number)
);
