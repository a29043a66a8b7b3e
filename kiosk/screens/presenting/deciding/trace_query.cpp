#include "kiosk/screens/presenting/deciding/trace_query.hpp"

#include "kiosk/records/queries.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

using shop::tracing::LotTraced;
using shop::tracing::TraceFacts;

/// Remembers the first thing that could not be read.
class Reader final {
public:
    template <class Value>
    Value operator()(ledger::Result<Value> answer) {
        if (answer) {
            return std::move(*answer);
        }
        if (!m_failure) {
            m_failure = answer.error();
        }
        return {};
    }
    [[nodiscard]] const std::optional<ledger::Failure>& failure() const noexcept { return m_failure; }

private:
    std::optional<ledger::Failure> m_failure;
};

LotTraced lotTraced(const SQLite::Database& database, const records::LotRow& row, Reader& read) {
    LotTraced lot;
    lot.lot = row;
    lot.pieces = read(records::piecesOfLot(database, row.id));
    lot.holds = read(records::holdsOfLot(database, row.id));
    lot.decisions = read(records::decisionsOfLot(database, row.id));
    lot.moves = read(records::movesOfLot(database, row.id));
    lot.missed = read(records::missedOfLot(database, row.id));
    lot.findings = read(records::findingsOfLot(database, row.id));
    return lot;
}

void addTests(const SQLite::Database& database, TraceFacts& facts, Reader& read) {
    for (const auto& lot : facts.lots) {
        auto tests = read(records::testsOfLot(database, lot.lot.id));
        facts.tests.insert(facts.tests.end(), tests.begin(), tests.end());
    }
    for (auto& test : facts.tests) { // what it counts for today
        test.done.outcome = test.counts;
    }
}

void addBuckets(const SQLite::Database& database, TraceFacts& facts, Reader& read) {
    int position = 0;
    for (const auto& layer : facts.plan.layers) {
        ++position;
        for (const auto number : layer.buckets) {
            auto tree = read(records::ancestry(database, number));
            if (tree) {
                facts.buckets.push_back({position, layer.colour, std::move(*tree)});
            }
        }
    }
}

void addCrews(const SQLite::Database& database, TraceFacts& facts, Reader& read) {
    for (const auto& row : facts.readings) {
        if (auto crew = read(records::crewOfReading(database, row.id))) {
            facts.crews.push_back(std::move(*crew));
        }
    }
}

bool asksBleedWatch(const SQLite::Database& database, const TraceFacts& facts) {
    return std::any_of(facts.readings.begin(), facts.readings.end(), [&](const records::ReadingRow& row) {
        const auto full = row.refused ? ledger::Result<std::optional<records::ReadingTaken>>{}
                                      : records::readingInFull(database, row.id);
        return full && *full && (*full)->verdict && (*full)->verdict->bleedWatchDue;
    });
}

} // namespace

ledger::Result<std::optional<TraceFacts>> traceFacts(const ledger::Book& book, const std::string& run) {
    const auto& database = book.reader();
    Reader read;
    const auto found = read(records::runById(database, run));
    if (read.failure()) {
        return tl::unexpected(*read.failure());
    }
    if (!found) {
        return std::nullopt;
    }
    TraceFacts facts;
    facts.plan = found->plan;
    facts.finished = found->finished.has_value();
    for (const auto& row : read(records::lotsOfRun(database, run))) {
        facts.lots.push_back(lotTraced(database, row, read));
    }
    facts.readings = read(records::readingsOfRun(database, run));
    facts.prints = read(records::printsOfRun(database, run));
    facts.methods = read(records::methods(database));
    facts.complaints = read(records::complaintsOfRun(database, run));
    addCrews(database, facts, read);
    addTests(database, facts, read);
    addBuckets(database, facts, read);
    facts.bleedWatchDue = asksBleedWatch(database, facts);
    const auto head = read(book.head());
    facts.entries = head.sequence;
    facts.head = ledger::toHex(head.hash);
    if (read.failure()) {
        return tl::unexpected(*read.failure());
    }
    return facts;
}

} // namespace holdfast::kiosk::screens
