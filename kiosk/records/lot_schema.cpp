#include "kiosk/records/floor_projection.hpp"

namespace holdfast::kiosk::records::projecting {

std::string_view lotSchema() {
    // A hold is open while it has neither a decision nor is lifted: what caused it was put right, or its wash load
    // found void. A decision's since is the sequence of the first that it stands for.
    return R"sql(
CREATE TABLE decisions (
    id        TEXT    PRIMARY KEY,
    entry     TEXT    NOT NULL,
    sequence  INTEGER NOT NULL,
    since     INTEGER NOT NULL,
    lot       TEXT    NOT NULL REFERENCES lots (id),
    word      TEXT    NOT NULL,
    whole     INTEGER NOT NULL,
    settles   INTEGER NOT NULL,
    re_run_lot TEXT,
    signed_ms INTEGER NOT NULL,
    corrected INTEGER NOT NULL,
    body      TEXT    NOT NULL
) STRICT;
CREATE INDEX decisions_by_lot ON decisions (lot, sequence);
CREATE INDEX decisions_by_re_run ON decisions (re_run_lot) WHERE re_run_lot IS NOT NULL;
CREATE TABLE holds (
    id        TEXT    PRIMARY KEY,
    sequence  INTEGER NOT NULL,
    lot       TEXT    NOT NULL REFERENCES lots (id),
    placed_ms INTEGER NOT NULL,
    cause     TEXT    NOT NULL,
    because   TEXT    NOT NULL,
    bin       INTEGER NOT NULL,
    decision  TEXT    REFERENCES decisions (id),
    lifted    INTEGER NOT NULL,
    body      TEXT    NOT NULL
) STRICT;
CREATE INDEX holds_by_lot ON holds (lot, sequence);
CREATE INDEX holds_by_because ON holds (because);
CREATE INDEX holds_by_decision ON holds (decision);
CREATE UNIQUE INDEX holds_by_bin ON holds (bin) WHERE bin > 0;
CREATE INDEX holds_open ON holds (sequence) WHERE decision IS NULL AND lifted = 0;
CREATE TABLE moves (
    sequence  INTEGER PRIMARY KEY,
    entry     TEXT    NOT NULL UNIQUE,
    lot       TEXT    NOT NULL REFERENCES lots (id),
    place     TEXT    NOT NULL,
    count     INTEGER NOT NULL,
    moved_ms  INTEGER NOT NULL,
    corrected INTEGER NOT NULL,
    body      TEXT    NOT NULL
) STRICT;
CREATE INDEX moves_by_lot ON moves (lot, sequence);
CREATE TABLE move_cartons (
    carton TEXT    NOT NULL COLLATE NOCASE,
    move   INTEGER NOT NULL REFERENCES moves (sequence),
    PRIMARY KEY (carton, move)
) STRICT;
CREATE TABLE counts (
    sequence   INTEGER PRIMARY KEY,
    entry      TEXT    NOT NULL UNIQUE,
    lot        TEXT    NOT NULL REFERENCES lots (id),
    counted_ms INTEGER NOT NULL,
    made       INTEGER,
    here       INTEGER,
    body       TEXT    NOT NULL
) STRICT;
CREATE INDEX counts_by_lot ON counts (lot, sequence);
CREATE TABLE shelf_counts (
    sequence   INTEGER PRIMARY KEY,
    counted_ms INTEGER NOT NULL,
    person     INTEGER NOT NULL,
    body       TEXT    NOT NULL
) STRICT;
CREATE TABLE missed (
    sequence  INTEGER PRIMARY KEY,
    lot       TEXT    NOT NULL REFERENCES lots (id),
    missed_ms INTEGER NOT NULL,
    body      TEXT    NOT NULL
) STRICT;
CREATE INDEX missed_by_lot ON missed (lot, sequence);
CREATE TABLE complaints (
    id       TEXT    PRIMARY KEY,
    number   INTEGER NOT NULL UNIQUE,
    sequence INTEGER NOT NULL UNIQUE,
    taken_ms INTEGER NOT NULL,
    run      TEXT    REFERENCES runs (id),
    lot      TEXT    REFERENCES lots (id),
    versions INTEGER NOT NULL,
    finding  TEXT,
    body     TEXT    NOT NULL
) STRICT;
CREATE INDEX complaints_by_run ON complaints (run, sequence);
CREATE INDEX complaints_by_lot ON complaints (lot);
CREATE INDEX complaints_open ON complaints (sequence) WHERE finding IS NULL;
CREATE TABLE findings (
    sequence  INTEGER PRIMARY KEY,
    complaint TEXT    REFERENCES complaints (id),
    lot       TEXT    REFERENCES lots (id),
    body      TEXT    NOT NULL
) STRICT;
CREATE INDEX findings_by_lot ON findings (lot);
CREATE INDEX findings_by_complaint ON findings (complaint);
)sql";
}

std::vector<std::string> lotTables() {
    return {"decisions",    "holds",  "moves",      "move_cartons", "counts",
            "shelf_counts", "missed", "complaints", "findings"};
}

} // namespace holdfast::kiosk::records::projecting
