#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/words.hpp"

#include <algorithm>
#include <charconv>

// From a clue to its runs, and from a bucket to the cartons its ink went into.
namespace holdfast::kiosk::records {
namespace {

using ledger::Result;
using SQLite::Database;

std::string trimmed(const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    return first == std::string::npos ? std::string{}
                                      : text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

std::optional<std::int64_t> numberFrom(const std::string& text) {
    std::int64_t number = 0;
    const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc{} && stop == text.data() + text.size() && number >= 0 ? std::optional{number}
                                                                                    : std::nullopt;
}

/// For LIKE with ESCAPE '!'.
std::string containing(const std::string& text) {
    std::string pattern = "%";
    for (const char sign : text) {
        if (sign == '%' || sign == '_' || sign == '!') {
            pattern += '!';
        }
        pattern += sign;
    }
    return pattern + "%";
}

constexpr const char* kOfBatch = "batch = ?1 AND batch <> ''";
constexpr const char* kOfNumber = "number = ?1";

/// `reached` are the lots printed from the buckets of ?1 or from any mix that some of them went into, however often it
/// was mixed again. The order of the joins is fixed: few buckets, then their lots.
std::string upFrom(const char* buckets) {
    return joined({"WITH RECURSIVE up (id) AS (SELECT id FROM buckets WHERE ", buckets,
                   " UNION SELECT p.bucket FROM up JOIN bucket_parts p ON p.part = up.id WHERE p.mass > 0), "
                   "reached (lot) AS (SELECT DISTINCT lb.lot FROM up CROSS JOIN buckets b ON b.id = up.id "
                   "CROSS JOIN lot_buckets lb ON lb.bucket = b.number) "});
}
constexpr const char* kRunsReached = "?1 FROM reached JOIN lots ON lots.id = reached.lot "
                                     "JOIN runs ON runs.id = lots.run WHERE runs.kind = 'run'";

class Clues final {
public:
    Clues(const Database& database, std::string clue, int limit)
        : m_database{database}, m_clue{std::move(clue)}, m_limit{limit} {}

    std::vector<ClueRow> find() {
        if (m_clue.empty()) {
            return {};
        }
        if (const auto number = numberFrom(m_clue)) {
            byNumber(*number);
        }
        byPlan();
        byCarton();
        byBatch();
        return std::move(m_rows);
    }

private:
    /// `before` stands before the SELECT, `from` says what was hit and where, newest plan first.
    template <class Value>
    void add(ClueHit hit, const std::string& before, const char* from, const Value& value) {
        auto query = prepared(m_database,
                              joined({before, "SELECT DISTINCT runs.id, runs.number, runs.title, runs.customer, ", from,
                                      " ORDER BY runs.planned_ms DESC, runs.number DESC LIMIT ?2"})
                                  .c_str(),
                              value, m_limit);
        while (query.executeStep()) {
            addRow(query, hit);
        }
    }
    void addRow(SQLite::Statement& query, ClueHit hit) {
        ClueRow row{query.getColumn(0).getString(),
                    query.getColumn(1).getInt64(),
                    query.getColumn(2).getString(),
                    query.getColumn(3).getString(),
                    hit,
                    query.getColumn(4).getString()};
        const bool known = std::any_of(m_rows.begin(), m_rows.end(), [&](const ClueRow& other) {
            return other.run == row.run && other.hit == row.hit;
        });
        if (!known && m_rows.size() < static_cast<std::size_t>(std::max(m_limit, 0))) {
            m_rows.push_back(std::move(row));
        }
    }

    void byNumber(std::int64_t number) {
        add(ClueHit::runNumber, "", "runs.number FROM runs WHERE runs.number = ?1 AND runs.kind = 'run'", number);
        add(ClueHit::print, "", "p.number FROM prints p JOIN runs ON runs.id = p.run WHERE p.number = ?1", number);
        add(ClueHit::bucket, upFrom(kOfNumber), kRunsReached, number);
    }

    void byPlan() {
        auto query = prepared(m_database,
                              "SELECT id, number, title, customer, reference, customer LIKE ?1 ESCAPE '!', "
                              "reference LIKE ?1 ESCAPE '!' FROM runs WHERE (title LIKE ?1 ESCAPE '!' "
                              "OR customer LIKE ?1 ESCAPE '!' OR reference LIKE ?1 ESCAPE '!') AND kind = 'run' "
                              "ORDER BY planned_ms DESC, number DESC LIMIT ?2",
                              containing(m_clue), m_limit);
        while (query.executeStep()) {
            const bool reference = query.getColumn(6).getInt() != 0;
            const bool customer = query.getColumn(5).getInt() != 0;
            const int hitColumn = reference ? 4 : customer ? 3 : 2;
            const auto hit = reference ? ClueHit::reference : customer ? ClueHit::customer : ClueHit::title;
            if (m_rows.size() < static_cast<std::size_t>(std::max(m_limit, 0))) {
                m_rows.push_back({query.getColumn(0).getString(), query.getColumn(1).getInt64(),
                                  query.getColumn(2).getString(), query.getColumn(3).getString(), hit,
                                  query.getColumn(hitColumn).getString()});
            }
        }
    }

    void byCarton() {
        add(ClueHit::carton, "",
            "c.carton FROM move_cartons c JOIN moves m ON m.sequence = c.move JOIN lots ON lots.id = m.lot "
            "JOIN runs ON runs.id = lots.run WHERE c.carton = ?1 AND m.corrected = 0",
            m_clue);
    }

    void byBatch() { add(ClueHit::batch, upFrom(kOfBatch), kRunsReached, m_clue); }

    const Database& m_database;
    std::string m_clue;
    int m_limit;
    std::vector<ClueRow> m_rows;
};

template <class Value>
std::vector<ReachedCarton> reached(const Database& database, const char* buckets, const Value& value) {
    std::vector<ReachedCarton> rows;
    const auto sql =
        joined({upFrom(buckets),
                "SELECT runs.id, runs.number, lots.id, lots.number, lots.state, m.body FROM reached "
                "JOIN lots ON lots.id = reached.lot JOIN runs ON runs.id = lots.run "
                "LEFT JOIN moves m ON m.lot = lots.id AND m.place = 'shipped' AND m.corrected = 0 AND m.count > 0 "
                "ORDER BY runs.number, lots.number, m.sequence"});
    auto query = prepared(database, sql.c_str(), value);
    while (query.executeStep()) {
        ReachedCarton row;
        row.run = query.getColumn(0).getString();
        row.runNumber = query.getColumn(1).getInt64();
        row.lot = query.getColumn(2).getString();
        row.lotNumber = query.getColumn(3).getInt();
        row.state = fromWord<LotState>(query.getColumn(4).getString()).value_or(row.state);
        if (const auto stored = textAt(query, 5)) {
            auto moved = storedBody<PiecesMoved>(*stored);
            row.customer = std::move(moved.customer);
            row.cartons = std::move(moved.cartons);
            row.pieces = moved.count;
            row.day = moved.day;
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

} // namespace

Result<std::vector<ClueRow>> runsByClue(const Database& database, const std::string& clue, int limit) {
    return asked("look for a clue", [&] { return Clues{database, trimmed(clue), limit}.find(); });
}

Result<std::vector<ReachedCarton>> reachedByBatch(const Database& database, const std::string& batch) {
    return asked("follow a batch", [&] { return reached(database, kOfBatch, trimmed(batch)); });
}

Result<std::vector<ReachedCarton>> reachedByBucket(const Database& database, std::int64_t bucket) {
    return asked("follow a bucket", [&] { return reached(database, kOfNumber, bucket); });
}

} // namespace holdfast::kiosk::records
