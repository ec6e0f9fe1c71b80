-- A tasting as it is held: laid once, closed once.
CREATE TABLE sitting (
    number BIGINT PRIMARY KEY CHECK (number > 0),
    kind TEXT NOT NULL CHECK (kind = 'tasting'),
    tasting TEXT NOT NULL,
    revision BIGINT NOT NULL,
    seed TEXT NOT NULL,
    laid_at TEXT NOT NULL,
    closed_at TEXT NOT NULL,
    FOREIGN KEY (kind, tasting, revision) REFERENCES revision (kind, name, number)
);

-- No tasting is held twice at a time.
CREATE UNIQUE INDEX sitting_open ON sitting (tasting) WHERE closed_at = '';

-- From which revision each sample was made.
CREATE TABLE sitting_sample (
    sitting BIGINT NOT NULL REFERENCES sitting (number),
    place BIGINT NOT NULL,
    kind TEXT NOT NULL,
    name TEXT NOT NULL,
    revision BIGINT NOT NULL,
    PRIMARY KEY (sitting, place),
    FOREIGN KEY (kind, name, revision) REFERENCES revision (kind, name, number)
);

-- Where somebody tastes: nobody's name, only the hash of the link that leads there.
CREATE TABLE seat (
    sitting BIGINT NOT NULL REFERENCES sitting (number),
    number BIGINT NOT NULL CHECK (number > 0),
    link TEXT NOT NULL UNIQUE CHECK (length(link) = 64),
    agreed_at TEXT NOT NULL,
    forgotten_at TEXT NOT NULL,
    PRIMARY KEY (sitting, number)
);

-- What stands before a seat, and what is in it: the key to the codes. Place 0 is a reference, which has no code.
CREATE TABLE cup (
    sitting BIGINT NOT NULL,
    seat BIGINT NOT NULL,
    place BIGINT NOT NULL,
    code BIGINT NOT NULL,
    sample BIGINT NOT NULL,
    PRIMARY KEY (sitting, seat, place),
    UNIQUE (sitting, seat, code),
    FOREIGN KEY (sitting, seat) REFERENCES seat (sitting, number)
);

-- What was answered; a correction comes after what it corrects, which stays. Only a taster's wish removes them.
CREATE TABLE answer (
    sitting BIGINT NOT NULL,
    seat BIGINT NOT NULL,
    item TEXT NOT NULL,
    number BIGINT NOT NULL CHECK (number > 0),
    client TEXT NOT NULL,
    value TEXT NOT NULL,
    answered_at TEXT NOT NULL,
    PRIMARY KEY (sitting, seat, item, number),
    UNIQUE (sitting, seat, client),
    FOREIGN KEY (sitting, seat) REFERENCES seat (sitting, number)
);
