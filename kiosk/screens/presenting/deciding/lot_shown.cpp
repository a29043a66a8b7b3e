#include "kiosk/screens/presenting/deciding/lot_shown.hpp"

#include "kiosk/records/lot_state.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

using analytics::LotStanding;
using shop::deciding::LotFacts;

/// Puts the answer in its place; false once anything could not be read.
class Asking final {
public:
    template <class Value>
    Asking& operator()(ledger::Result<Value> answer, Value& into) {
        if (answer) {
            into = std::move(*answer);
        } else if (!m_failure) {
            m_failure = answer.error();
        }
        return *this;
    }
    [[nodiscard]] const std::optional<ledger::Failure>& failure() const noexcept { return m_failure; }

private:
    std::optional<ledger::Failure> m_failure;
};

shop::deciding::ReadingFact factOf(const records::ReadingRow& row, const SQLite::Database& database) {
    shop::deciding::ReadingFact fact;
    fact.id = row.id;
    fact.word = row.word.value_or(analytics::Word::notProven);
    fact.struck = row.struck.has_value();
    fact.refused = row.refused;
    fact.setUp = row.reason == records::ReadingReason::setUp;
    const auto full = records::readingInFull(database, row.id);
    if (full && *full) {
        fact.piece = (*full)->piece;
        fact.retakeOf = (*full)->retakeOf.value_or(std::string{});
        fact.couldProve = !(*full)->verdict || (*full)->verdict->couldProve;
    }
    return fact;
}

/// Newest revisions of what the run is printed with, on the dryer of the lot that is run again.
records::LotOpened reRunOf(const records::RunOnFile& run, const records::LotRow& row) {
    records::LotOpened lot;
    lot.run = row.run;
    lot.number = run.lotsSoFar + 1;
    lot.dryer = row.dryer;
    lot.revisions = run.revisions;
    return lot;
}

LotFacts factsOf(const LotShown& shown, const records::RunOnFile& run, const SQLite::Database& database) {
    LotFacts facts;
    facts.lot = shown.row.id;
    facts.run = shown.row.run;
    facts.number = shown.row.number;
    facts.standing = records::standingOf(shown.row.state);
    facts.childrensWear = shown.plan.childrensWear;
    for (const auto& hold : shown.holds) {
        facts.holds.push_back({hold.placed, hold.decision.has_value()});
    }
    for (const auto& reading : shown.readings) {
        facts.readings.push_back(factOf(reading, database));
    }
    for (const auto& test : shown.tests) {
        facts.tests.push_back({test.id, test.counts == records::TestOutcome::failed});
    }
    facts.missed = static_cast<int>(shown.missed.size());
    facts.shipped = shown.pieces.shipped;
    facts.made = shown.pieces.made;
    facts.entitled = entitledIn(shown.people);
    facts.reRun = reRunOf(run, shown.row);
    return facts;
}

} // namespace

const records::HoldRow* LotShown::hold(const std::string& id) const {
    const auto found = std::find_if(holds.begin(), holds.end(), [&](const auto& one) { return one.placed.hold == id; });
    return found == holds.end() ? nullptr : &*found;
}

std::vector<const records::HoldRow*> LotShown::openHolds() const {
    std::vector<const records::HoldRow*> open;
    for (const auto& one : holds) {
        if (!one.decision) {
            open.push_back(&one);
        }
    }
    return open;
}

const records::DecisionRow* LotShown::recallOf(const records::HoldRow& hold) const {
    for (const auto& one : decisions) {
        if (hold.recall == one.signedAs.decision) {
            return &one;
        }
    }
    return nullptr;
}

shop::deciding::LotOfPieces LotShown::ofPieces() const {
    return {row.id, facts.standing == LotStanding::scrapped, facts.standing == LotStanding::onHold, pieces, moves,
            counts};
}

std::vector<shop::deciding::Entitled> entitledIn(const shop::PeopleNow& people) {
    std::vector<shop::deciding::Entitled> entitled;
    for (const auto& person : people.people) {
        if (!person.left && shop::mayDo(shop::Right::decideHolds, person.roles)) {
            entitled.push_back({person.number});
        }
    }
    return entitled;
}

std::string namesOf(const std::vector<std::int64_t>& persons, const shop::PeopleNow& people,
                    const wording::Speech& speech) {
    std::string names;
    for (const auto person : persons) {
        names += (names.empty() ? "" : ", ") + shownName(people, person, speech);
    }
    return names;
}

ledger::Result<std::optional<LotShown>> lotShown(const ledger::Book& book, const std::string& lot) {
    const auto& reader = book.reader();
    Asking ask;
    std::optional<records::LotRow> row;
    ask(records::lotById(reader, lot), row);
    if (ask.failure() || !row) {
        return ask.failure() ? ledger::Result<std::optional<LotShown>>{tl::unexpected(*ask.failure())} : std::nullopt;
    }
    LotShown shown;
    shown.row = *row;
    std::optional<records::RunOnFile> run;
    ask(records::runById(reader, row->run), run)(records::holdsOfLot(reader, lot), shown.holds)(
        records::decisionsOfLot(reader, lot), shown.decisions)(records::movesOfLot(reader, lot), shown.moves)(
        records::countsOfLot(reader, lot), shown.counts)(records::piecesOfLot(reader, lot), shown.pieces)(
        records::readingsOfLot(reader, lot), shown.readings)(records::testsOfLot(reader, lot), shown.tests)(
        records::missedOfLot(reader, lot), shown.missed)(peopleNow(book), shown.people);
    if (ask.failure()) {
        return tl::unexpected(*ask.failure());
    }
    if (!run) {
        return std::nullopt;
    }
    shown.plan = run->plan;
    shown.facts = factsOf(shown, *run, reader);
    return shown;
}

} // namespace holdfast::kiosk::screens
