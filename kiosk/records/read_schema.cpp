#include "kiosk/records/floor_projection.hpp"
#include "kiosk/records/shop_projection.hpp"

namespace holdfast::kiosk::records {

namespace {

// Bodies are the entry's own; columns beside them are what is asked for. An index ends with the table's whole
// number, so that rows of one run, lot or instrument come out of it in the order in which they were first entered.
constexpr std::string_view kFloorTables = R"sql(
CREATE TABLE shop (
    id      INTEGER PRIMARY KEY CHECK (id = 1),
    body    TEXT    NOT NULL
) STRICT;
CREATE TABLE kinds_seen (
    kind    TEXT    NOT NULL,
    version INTEGER NOT NULL,
    PRIMARY KEY (kind, version)
) STRICT, WITHOUT ROWID;
CREATE TABLE crew_people (
    number  INTEGER PRIMARY KEY,
    gone    INTEGER NOT NULL DEFAULT 0,
    pin     TEXT    NOT NULL DEFAULT '',
    body    TEXT    NOT NULL
) STRICT;
CREATE TABLE crew (
    sequence INTEGER PRIMARY KEY,
    since_ms INTEGER NOT NULL,
    body     TEXT    NOT NULL
) STRICT;
CREATE TABLE dryers (
    id        TEXT    PRIMARY KEY,
    name      TEXT    NOT NULL,
    withdrawn INTEGER NOT NULL,
    body      TEXT    NOT NULL
) STRICT;
CREATE TABLE dryer_states (
    dryer      TEXT    PRIMARY KEY REFERENCES dryers (id),
    belt       REAL,
    set_value  REAL,
    set_unit   TEXT,
    said_belt  REAL,
    said_value REAL,
    said_unit  TEXT,
    stopped    INTEGER NOT NULL,
    since_ms   INTEGER NOT NULL
) STRICT;
CREATE TABLE settings (
    key  TEXT PRIMARY KEY,
    body TEXT NOT NULL
) STRICT;
CREATE TABLE families (
    name     TEXT    NOT NULL,
    revision INTEGER NOT NULL,
    sequence INTEGER NOT NULL,
    body     TEXT    NOT NULL,
    PRIMARY KEY (name, revision)
) STRICT;
CREATE TABLE fabrics (
    name     TEXT    NOT NULL,
    revision INTEGER NOT NULL,
    sequence INTEGER NOT NULL,
    body     TEXT    NOT NULL,
    PRIMARY KEY (name, revision)
) STRICT;
CREATE TABLE buckets (
    id        TEXT    PRIMARY KEY,
    number    INTEGER NOT NULL UNIQUE,
    sequence  INTEGER NOT NULL,
    opened_ms INTEGER NOT NULL,
    is_mix    INTEGER NOT NULL,
    tree_size INTEGER NOT NULL,
    batch     TEXT    NOT NULL COLLATE NOCASE,
    closed    TEXT,
    body      TEXT    NOT NULL
) STRICT;
CREATE INDEX buckets_by_batch ON buckets (batch) WHERE batch <> '';
CREATE TABLE bucket_parts (
    bucket   TEXT    NOT NULL REFERENCES buckets (id),
    position INTEGER NOT NULL,
    part     TEXT    NOT NULL REFERENCES buckets (id),
    mass     REAL    NOT NULL,
    PRIMARY KEY (bucket, position)
) STRICT;
CREATE INDEX bucket_parts_by_part ON bucket_parts (part);
CREATE TABLE instruments (
    id        TEXT    PRIMARY KEY,
    name      TEXT    NOT NULL,
    number    INTEGER,
    kind      TEXT    NOT NULL,
    withdrawn INTEGER NOT NULL,
    body      TEXT    NOT NULL
) STRICT;
CREATE INDEX instruments_by_name ON instruments (name);
CREATE INDEX instruments_by_number ON instruments (number);
CREATE TABLE certificates (
    sequence   INTEGER PRIMARY KEY,
    instrument TEXT    NOT NULL REFERENCES instruments (id),
    due        TEXT    NOT NULL,
    body       TEXT    NOT NULL
) STRICT;
CREATE INDEX certificates_by_instrument ON certificates (instrument);
CREATE TABLE checks (
    sequence   INTEGER PRIMARY KEY,
    instrument TEXT    NOT NULL REFERENCES instruments (id),
    due        TEXT    NOT NULL,
    passed     INTEGER NOT NULL,
    body       TEXT    NOT NULL
) STRICT;
CREATE INDEX checks_by_instrument ON checks (instrument);
CREATE TABLE runs (
    id         TEXT    PRIMARY KEY,
    kind       TEXT    NOT NULL,
    number     INTEGER NOT NULL,
    title      TEXT    NOT NULL,
    fabric     TEXT    NOT NULL,
    customer   TEXT    NOT NULL,
    reference  TEXT    NOT NULL,
    childrens_wear INTEGER NOT NULL,
    planned_ms INTEGER NOT NULL,
    body       TEXT    NOT NULL,
    UNIQUE (kind, number)
) STRICT;
CREATE INDEX runs_by_plan ON runs (kind, planned_ms, number);
CREATE INDEX runs_as_called ON runs (planned_ms, title, customer, reference);
CREATE TABLE finished_runs (
    run         TEXT    PRIMARY KEY REFERENCES runs (id),
    finished_ms INTEGER NOT NULL,
    body        TEXT    NOT NULL
) STRICT;
CREATE TABLE layers (
    run      TEXT    NOT NULL REFERENCES runs (id),
    position INTEGER NOT NULL,
    colour   TEXT    NOT NULL,
    ink      TEXT    NOT NULL,
    PRIMARY KEY (run, position)
) STRICT;
CREATE INDEX layers_by_ink ON layers (ink);
CREATE TABLE lots (
    id        TEXT    PRIMARY KEY,
    run       TEXT    NOT NULL REFERENCES runs (id),
    number    INTEGER NOT NULL,
    dryer     TEXT    NOT NULL,
    opened_ms INTEGER NOT NULL,
    closed    INTEGER NOT NULL,
    first_piece INTEGER,
    last_piece INTEGER,
    state     TEXT    NOT NULL,
    held_ms   INTEGER,
    ever_held INTEGER NOT NULL,
    body      TEXT    NOT NULL,
    UNIQUE (run, number)
) STRICT;
CREATE INDEX lots_by_state ON lots (state, held_ms);
CREATE INDEX lots_by_dryer ON lots (dryer, closed, opened_ms);
CREATE TABLE lot_buckets (
    lot    TEXT    NOT NULL REFERENCES lots (id),
    bucket INTEGER NOT NULL,
    PRIMARY KEY (lot, bucket)
) STRICT;
CREATE INDEX lot_buckets_by_bucket ON lot_buckets (bucket);
CREATE TABLE readings (
    first         INTEGER PRIMARY KEY,
    id            TEXT    NOT NULL UNIQUE,
    sequence      INTEGER NOT NULL,
    run           TEXT    REFERENCES runs (id),
    lot           TEXT    REFERENCES lots (id),
    dryer         TEXT    NOT NULL,
    instrument    TEXT    NOT NULL,
    taken_ms      INTEGER NOT NULL,
    utc_offset    INTEGER NOT NULL,
    refused       INTEGER NOT NULL,
    corrected     INTEGER NOT NULL,
    position      TEXT    NOT NULL,
    reason        TEXT    NOT NULL,
    word          TEXT,
    could_prove   INTEGER NOT NULL,
    margin_low_c  REAL,
    margin_high_c REAL,
    retake_of     TEXT,
    trace         TEXT    NOT NULL,
    by_check      TEXT,
    piece         INTEGER
) STRICT;
CREATE INDEX readings_by_run ON readings (run);
CREATE INDEX readings_by_lot ON readings (lot);
CREATE INDEX readings_by_instrument ON readings (instrument);
CREATE TABLE reading_versions (
    sequence INTEGER PRIMARY KEY,
    reading  TEXT    NOT NULL REFERENCES readings (id)
) STRICT;
CREATE INDEX reading_versions_by_reading ON reading_versions (reading);
CREATE TABLE struck (
    reading   TEXT    PRIMARY KEY REFERENCES readings (id),
    cause     TEXT    NOT NULL,
    struck_ms INTEGER NOT NULL
) STRICT;
CREATE TABLE strips_used (
    reading TEXT    PRIMARY KEY REFERENCES readings (id),
    number  INTEGER NOT NULL
) STRICT;
CREATE INDEX strips_used_by_number ON strips_used (number);
CREATE TABLE actions (
    sequence INTEGER PRIMARY KEY,
    dryer    TEXT    NOT NULL,
    taken_ms INTEGER NOT NULL,
    answers  TEXT    REFERENCES readings (id),
    body     TEXT    NOT NULL
) STRICT;
CREATE INDEX actions_by_dryer ON actions (dryer, sequence);
CREATE INDEX actions_by_answer ON actions (answers);
CREATE TABLE flashes (
    sequence INTEGER PRIMARY KEY,
    run      TEXT    NOT NULL REFERENCES runs (id),
    noted_ms INTEGER NOT NULL,
    body     TEXT    NOT NULL
) STRICT;
CREATE INDEX flashes_by_run ON flashes (run, sequence);
)sql";

void append(std::vector<std::string>& all, const std::vector<std::string>& more) {
    all.insert(all.end(), more.begin(), more.end());
}

} // namespace

std::string_view ShopProjection::schema() const {
    static const std::string kAll =
        std::string{kFloorTables} + std::string{projecting::testSchema()} + std::string{projecting::lotSchema()};
    return kAll;
}

std::vector<std::string> ShopProjection::tables() const {
    std::vector<std::string> all{
        "shop",     "kinds_seen",    "crew_people", "crew",         "dryers",      "dryer_states", "settings",
        "families", "fabrics",       "buckets",     "bucket_parts", "instruments", "certificates", "checks",
        "runs",     "finished_runs", "layers",      "lots",         "lot_buckets", "readings",     "reading_versions",
        "struck",   "strips_used",   "actions",     "flashes"};
    append(all, projecting::testTables());
    append(all, projecting::lotTables());
    return all;
}

} // namespace holdfast::kiosk::records
