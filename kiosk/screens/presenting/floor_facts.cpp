#include "kiosk/screens/presenting/floor_facts.hpp"

#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/header_presenter.hpp"
#include "kiosk/screens/presenting/testing/tests_reading.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

namespace {

constexpr int kLooked = 60; ///< readings looked through for the newest of each run
constexpr std::size_t kListed = 6;
constexpr std::size_t kHoldsListed = 3;

std::string whatOf(const SQLite::Database& reader, const std::string& run, const wording::Speech& speech) {
    const auto found =
        run.empty() ? ledger::Result<std::optional<records::RunOnFile>>{} : records::runById(reader, run);
    return found && *found ? whatIsPrinted((*found)->plan, speech) : std::string{};
}

void addLatest(FloorFacts& facts, const SQLite::Database& reader, const wording::Speech& speech) {
    const auto rows = records::latestReadings(reader, kLooked);
    if (!rows) {
        return;
    }
    std::vector<std::string> seen;
    for (const auto& row : *rows) {
        const bool known = std::find(seen.begin(), seen.end(), row.run) != seen.end();
        if (row.refused || (known && !row.run.empty()) || facts.latest.size() >= kListed) {
            continue;
        }
        seen.push_back(row.run);
        ListedReading listed{row, {}, whatOf(reader, row.run, speech)};
        if (auto full = records::readingInFull(reader, row.id); full && *full) {
            listed.reading = std::move(**full);
        }
        facts.latest.push_back(std::move(listed));
    }
}

void addHolds(FloorFacts& facts, const SQLite::Database& reader) {
    const auto held = records::holds(reader);
    if (!held) {
        return;
    }
    facts.lotsOnHold = static_cast<int>(held->size());
    for (auto hold = held->rbegin(); hold != held->rend() && facts.onHold.size() < kHoldsListed; ++hold) {
        facts.onHold.push_back({hold->lot, hold->runNumber, hold->runTitle, hold->word}); // the newest first
    }
}

} // namespace

FloorFacts floorFactsOf(const ledger::Book& book, const drivers::WallTime& now, const wording::Speech& speech) {
    FloorFacts facts;
    const auto& reader = book.reader();
    if (const auto opened = records::shop(reader); opened && *opened) {
        facts.demo = (*opened)->demo;
    }
    if (const auto dryers = records::dryers(reader); dryers && !dryers->empty()) {
        facts.dryerName = dryers->front().name;
    }
    if (const auto crew = records::crew(reader); crew && *crew) {
        facts.crew = static_cast<int>((*crew)->persons.size()) + (*crew)->unnamed;
    }
    if (auto items = records::due(reader, drivers::localDay(now))) {
        facts.due = std::move(*items);
    }
    addLatest(facts, reader, speech);
    addHolds(facts, reader);
    facts.nextTest = nextTestText(reader, now, speech);
    return facts;
}

} // namespace holdfast::kiosk::screens
