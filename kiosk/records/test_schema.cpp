#include "kiosk/records/floor_projection.hpp"

namespace holdfast::kiosk::records::projecting {

std::string_view testSchema() {
    // Bodies are as last put right; a test's first is the sequence of its first entry, and every version stands beside.
    return R"sql(
CREATE TABLE prints (
    id       TEXT    PRIMARY KEY,
    number   INTEGER NOT NULL UNIQUE,
    sequence INTEGER NOT NULL,
    run      TEXT    NOT NULL REFERENCES runs (id),
    lot      TEXT    NOT NULL REFERENCES lots (id),
    named_ms INTEGER NOT NULL,
    half_of  TEXT    REFERENCES prints (id),
    shelf    TEXT,
    ended    TEXT,
    body     TEXT    NOT NULL
) STRICT;
CREATE INDEX prints_by_run ON prints (run, number);
CREATE INDEX prints_by_lot ON prints (lot);
CREATE INDEX prints_by_half ON prints (half_of) WHERE half_of IS NOT NULL;
CREATE INDEX prints_open ON prints (sequence) WHERE ended IS NULL;
CREATE INDEX prints_retained ON prints (shelf, number) WHERE shelf IS NOT NULL AND ended IS NULL;
CREATE TABLE methods (
    key      TEXT    NOT NULL,
    revision INTEGER NOT NULL,
    sequence INTEGER NOT NULL,
    body     TEXT    NOT NULL,
    PRIMARY KEY (key, revision)
) STRICT;
CREATE TABLE loads (
    sequence  INTEGER PRIMARY KEY,
    id        TEXT    NOT NULL UNIQUE,
    number    INTEGER NOT NULL UNIQUE,
    washed_ms INTEGER NOT NULL,
    machine   TEXT    NOT NULL,
    programme TEXT    NOT NULL,
    word      TEXT,
    judged_by TEXT,
    judged    TEXT,
    body      TEXT    NOT NULL
) STRICT;
CREATE INDEX loads_by_machine ON loads (machine, programme, sequence);
CREATE TABLE load_prints (
    print TEXT NOT NULL REFERENCES prints (id),
    load  TEXT NOT NULL REFERENCES loads (id),
    PRIMARY KEY (print, load)
) STRICT;
CREATE INDEX load_prints_by_load ON load_prints (load);
CREATE TABLE tests (
    first    INTEGER PRIMARY KEY,
    id       TEXT    NOT NULL UNIQUE,
    sequence INTEGER NOT NULL,
    done_ms  INTEGER NOT NULL,
    person   INTEGER NOT NULL,
    print    TEXT    NOT NULL REFERENCES prints (id),
    lot      TEXT    NOT NULL REFERENCES lots (id),
    method   TEXT    NOT NULL,
    cycle    INTEGER,
    load     TEXT    REFERENCES loads (id),
    outcome  TEXT    NOT NULL,
    versions INTEGER NOT NULL,
    body     TEXT    NOT NULL
) STRICT;
CREATE INDEX tests_by_print ON tests (print, method, cycle);
CREATE INDEX tests_by_lot ON tests (lot);
CREATE INDEX tests_by_load ON tests (load) WHERE load IS NOT NULL;
CREATE INDEX tests_by_time ON tests (done_ms);
CREATE TABLE test_versions (
    sequence INTEGER PRIMARY KEY,
    entry    TEXT    NOT NULL UNIQUE,
    test     TEXT    NOT NULL REFERENCES tests (id),
    method   TEXT    NOT NULL,
    done_ms  INTEGER NOT NULL,
    person   INTEGER NOT NULL,
    body     TEXT    NOT NULL
) STRICT;
CREATE INDEX test_versions_by_test ON test_versions (test);
CREATE INDEX test_versions_by_method ON test_versions (method);
)sql";
}

std::vector<std::string> testTables() {
    return {"prints", "methods", "loads", "load_prints", "tests", "test_versions"};
}

} // namespace holdfast::kiosk::records::projecting
