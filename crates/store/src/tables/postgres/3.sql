-- What was done to a document, stroke by stroke, so that it can be undone and done again.
CREATE TABLE stroke (
    kind TEXT NOT NULL,
    name TEXT NOT NULL,
    number BIGINT NOT NULL CHECK (number > 0),
    before TEXT NOT NULL REFERENCES text (hash),
    after TEXT NOT NULL REFERENCES text (hash),
    what TEXT NOT NULL,
    made_by TEXT NOT NULL,
    made_at TEXT NOT NULL,
    undone BIGINT NOT NULL CHECK (undone IN (0, 1)),
    PRIMARY KEY (kind, name, number)
);
