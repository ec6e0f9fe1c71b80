-- What the texts of prices and trials tell, in rows that can be asked. Worked out of the texts, and made anew from them
-- at any time: nothing stands here alone.

-- Packs as prices.toml told them, revision by revision.
CREATE TABLE price (
    kind TEXT NOT NULL CHECK (kind = 'prices'),
    name TEXT NOT NULL,
    revision INTEGER NOT NULL,
    place INTEGER NOT NULL,
    ingredient TEXT NOT NULL,
    pack TEXT NOT NULL,
    costs TEXT NOT NULL,
    paid_on TEXT NOT NULL,
    bought_from TEXT NOT NULL,
    edible TEXT NOT NULL,
    PRIMARY KEY (kind, name, revision, place),
    FOREIGN KEY (kind, name, revision) REFERENCES revision (kind, name, number)
) STRICT;

CREATE INDEX price_of ON price (ingredient);

-- Figures as the latest revision of each trial tells them.
CREATE TABLE figure (
    kind TEXT NOT NULL CHECK (kind = 'trial'),
    trial TEXT NOT NULL,
    revision INTEGER NOT NULL,
    place INTEGER NOT NULL,
    formula TEXT NOT NULL,
    begun_on TEXT NOT NULL,
    figure TEXT NOT NULL,
    value TEXT NOT NULL,
    PRIMARY KEY (kind, trial, place),
    FOREIGN KEY (kind, trial, revision) REFERENCES revision (kind, name, number)
) STRICT;

CREATE INDEX figure_of ON figure (formula);

-- By which reading of the texts the rows were made; none where they are still to be made.
CREATE TABLE gathered (
    reading INTEGER PRIMARY KEY
) STRICT;
