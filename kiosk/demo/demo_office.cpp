#include "kiosk/demo/demo_office.hpp"

#include "kiosk/demo/demo_instruments.hpp"
#include "kiosk/demo/demo_runs.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/json_object.hpp"
#include "kiosk/records/lot_state.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/shop/deciding/complaint.hpp"
#include "kiosk/shop/deciding/decision.hpp"
#include "kiosk/shop/deciding/doubt_query.hpp"
#include "kiosk/shop/deciding/pieces.hpp"
#include "kiosk/shop/deciding/shelf.hpp"
#include "kiosk/shop/keeping/rights.hpp"

#include <algorithm>

namespace holdfast::kiosk::demo {
namespace {

using records::PiecePlace;

constexpr std::int64_t kAtShelf = 6;
constexpr std::int64_t kPacker = 4;
constexpr int kCarton = 24;

ledger::Result<void> cannotAtDesk(const std::string& what, const shop::deciding::Faults& faults = {}) {
    std::string said = "demo: " + what;
    for (const auto& fault : faults) {
        said += " [" + std::to_string(static_cast<int>(fault.cause)) + " " + fault.field + " " + fault.text + "]";
    }
    return tl::unexpected(ledger::Failure{ledger::FailureCode::refused, said});
}

template <class Value>
Value orNone(ledger::Result<Value> asked) {
    return asked ? *std::move(asked) : Value{};
}

std::string cartonsOf(std::int64_t run, int pieces) {
    std::string marks;
    for (int carton = 0; carton * kCarton < pieces; ++carton) {
        marks += (carton == 0 ? "" : ", ") + std::string{"C-"} + std::to_string(run) + "-" + std::to_string(carton + 1);
    }
    return marks;
}

shop::deciding::ReadingFact factOf(const records::ReadingRow& row, const SQLite::Database& database) {
    shop::deciding::ReadingFact fact;
    fact.id = row.id;
    fact.word = row.word.value_or(analytics::Word::notProven);
    fact.struck = row.struck.has_value();
    fact.refused = row.refused;
    fact.setUp = row.reason == records::ReadingReason::setUp;
    if (const auto full = orNone(records::readingInFull(database, row.id))) {
        fact.piece = full->piece;
        fact.retakeOf = full->retakeOf.value_or(std::string{});
        fact.couldProve = !full->verdict || full->verdict->couldProve;
    }
    return fact;
}

} // namespace

ledger::Result<void> DemoOffice::operator()(const Packs& pack) {
    const auto row = lot(pack.run, pack.lot);
    const auto made = row ? madeOf(*row) : std::nullopt;
    if (!made) {
        return cannotAtDesk("pack run " + std::to_string(pack.run));
    }
    const auto& reader = m_book.reader();
    shop::deciding::LotOfPieces pieces{
        row->id, row->state == records::LotState::scrapped, row->state == records::LotState::onHold,
        orNone(records::piecesOfLot(reader, row->id)), orNone(records::movesOfLot(reader, row->id))};
    const int gone = pieces.pieces.retained + pieces.pieces.tested + pieces.pieces.scrapped + pack.spoiled;
    const int left = *made - gone - pack.unaccounted;
    const auto today = records::toText(analytics::Date{drivers::localDay(m_clock.wall())});
    std::vector<records::Record> list;
    shop::deciding::Faults faults;
    const auto count = shop::deciding::countFrom(
        {std::to_string(*made), pack.ships ? "0" : std::to_string(std::max(0, left))}, pieces);
    if (count) {
        list.emplace_back(*count);
    } else {
        faults = count.error();
    }
    const auto move = [&](PiecePlace to, int number) {
        shop::deciding::MoveDraft draft;
        draft.to = to;
        draft.count = std::to_string(number);
        draft.day = today;
        if (to == PiecePlace::shipped) {
            draft.customer = demoRun(pack.run)->customer;
            draft.cartons = cartonsOf(pack.run, number);
        }
        const auto kept = shop::deciding::moveFrom(draft, pieces);
        if (kept) {
            list.emplace_back(kept->move);
        } else {
            faults = kept.error();
        }
    };
    if (pack.spoiled > 0) {
        move(PiecePlace::scrapped, pack.spoiled);
    }
    if (pack.ships && left > 0) {
        move(PiecePlace::shipped, left);
    }
    return faults.empty() ? m_pen.writeSigned(kPacker, list)
                          : cannotAtDesk("pack run " + std::to_string(pack.run), faults);
}

ledger::Result<void> DemoOffice::operator()(const Decides& decide) {
    const auto row = lot(decide.run, decide.lot);
    const auto what = "decide run " + std::to_string(decide.run) + " lot " + std::to_string(decide.lot);
    if (!row) {
        return cannotAtDesk(what);
    }
    const auto facts = factsOf(*row);
    shop::deciding::DecisionDraft draft;
    draft.word = decide.word;
    draft.reason = decide.reason;
    draft.laboratoryReport = decide.laboratoryReport;
    draft.holds = shop::deciding::openHoldsOf(facts);
    draft.signers = decide.signers;
    const auto list = shop::deciding::decisionFrom(draft, facts, {m_pen.newId(), m_pen.newId()});
    return list ? m_pen.writeSigned(decide.signers.front(), *list) : cannotAtDesk(what, list.error());
}

ledger::Result<void> DemoOffice::operator()(const CountsShelf& count) {
    std::vector<shop::deciding::Bin> bins;
    shop::deciding::ShelfDraft draft;
    for (const auto& hold : orNone(records::openHolds(m_book.reader()))) {
        if (hold.placed.bin == 0) {
            continue;
        }
        const auto pieces = shop::deciding::piecesOfHold(
            hold.placed, orNone(records::piecesOfLot(m_book.reader(), hold.placed.lot)).made);
        bins.push_back({hold.placed.hold, hold.placed.bin, pieces});
        draft.found[hold.placed.hold] = pieces ? std::string{} : "1";
    }
    if (bins.empty()) {
        return cannotAtDesk("count an empty shelf");
    }
    const auto& newest = bins.back();
    draft.found[newest.hold] = std::to_string(newest.pieces.value_or(count.fewer) - count.fewer);
    const auto kept = shop::deciding::shelfFrom(draft, bins);
    return kept ? m_pen.writeSigned(kAtShelf, {kept->counted}) : cannotAtDesk("count the shelf", kept.error());
}

ledger::Result<void> DemoOffice::operator()(const Complains& complaint) {
    const auto& reader = m_book.reader();
    shop::deciding::ComplaintDraft draft;
    draft.customer = complaint.customer;
    draft.what = complaint.what;
    draft.words = complaint.words;
    draft.pieces = complaint.pieces;
    draft.clue = complaint.clue;
    draft.received = records::toText(analytics::Date{drivers::localDay(m_clock.wall())});
    shop::deciding::ComplaintFacts facts;
    facts.nextNumber = orNone(records::nextComplaint(reader));
    facts.nextBin = orNone(records::nextBin(reader));
    if (const auto row = complaint.run != 0 ? lot(complaint.run, 1) : std::nullopt) {
        const auto pieces = orNone(records::piecesOfLot(reader, row->id));
        draft.run = row->run;
        draft.lot = row->id;
        facts.lot = {row->id, records::standingOf(row->state), pieces.shipped, pieces.made, {}};
    }
    const auto list = shop::deciding::complaintFrom(draft, facts, {m_pen.newId(), m_pen.newId()});
    return list ? m_pen.writeSigned(kAtShelf, *list) : cannotAtDesk("take a complaint", list.error());
}

ledger::Result<void> DemoOffice::operator()(const FindsCause& finding) {
    const auto open = orNone(records::complaints(m_book.reader(), false));
    if (open.empty()) {
        return cannotAtDesk("no complaint");
    }
    const auto made =
        shop::deciding::findingFrom({finding.cause, finding.action, false}, open.back().taken, false, finding.signers);
    return made ? m_pen.writeSigned(finding.signers.front(), {*made}) : cannotAtDesk("sign a finding", made.error());
}

ledger::Result<void> DemoOffice::operator()(const FailsIceCheck& check) {
    for (const auto& one : orNone(records::instruments(m_book.reader()))) {
        if (one.instrument.name != check.instrument) {
            continue;
        }
        const auto wall = m_clock.wall();
        const auto done = std::get<records::CheckDone>(
            demoCheck(one, analytics::CheckKind::ice, drivers::localDay(wall), check.errorFahrenheit));
        shop::deciding::CheckFailed failed;
        failed.id = m_pen.newId();
        failed.done = done;
        failed.at = wall.millisecondsSinceEpoch;
        failed.utcOffsetMinutes = wall.utcOffsetMinutes;
        const auto doubt = shop::deciding::instrumentDoubt(m_book, failed);
        if (!doubt) {
            return tl::unexpected(doubt.error());
        }
        auto holds = *doubt ? shop::deciding::instrumentHolds(**doubt) : shop::deciding::InstrumentHolds{};
        shop::deciding::number(
            holds, [this] { return m_pen.newId(); }, orNone(records::nextBin(m_book.reader())));
        std::vector<records::Record> list{done};
        list.insert(list.end(), holds.list.begin(), holds.list.end());
        return m_pen.writeSigned(kAtShelf, list, {failed.id});
    }
    return cannotAtDesk(std::string{"no instrument "} + check.instrument);
}

std::optional<records::RunOnFile> DemoOffice::run(std::int64_t number) const {
    return orNone(records::runByNumber(m_book.reader(), records::PlanKind::run, number));
}

std::optional<records::LotRow> DemoOffice::lot(std::int64_t number, int of) const {
    const auto onFile = run(number);
    for (const auto& row :
         onFile ? orNone(records::lotsOfRun(m_book.reader(), onFile->plan.run)) : std::vector<records::LotRow>{}) {
        if (row.number == of) {
            return row;
        }
    }
    return std::nullopt;
}

std::optional<int> DemoOffice::madeOf(const records::LotRow& row) const {
    const auto planned = orNone(records::runById(m_book.reader(), row.run));
    const auto last = row.lastPiece ? row.lastPiece : planned ? planned->plan.pieces : std::nullopt;
    return last ? std::optional{std::max(0, *last - row.firstPiece.value_or(1) + 1)} : std::nullopt;
}

shop::deciding::LotFacts DemoOffice::factsOf(const records::LotRow& row) const {
    const auto& reader = m_book.reader();
    const auto onFile = orNone(records::runById(reader, row.run));
    const auto pieces = orNone(records::piecesOfLot(reader, row.id));
    shop::deciding::LotFacts facts;
    facts.lot = row.id;
    facts.run = row.run;
    facts.number = row.number;
    facts.standing = records::standingOf(row.state);
    facts.childrensWear = onFile && onFile->plan.childrensWear;
    for (const auto& hold : orNone(records::holdsOfLot(reader, row.id))) {
        facts.holds.push_back({hold.placed, hold.decision.has_value()});
    }
    for (const auto& reading : orNone(records::readingsOfLot(reader, row.id))) {
        facts.readings.push_back(factOf(reading, reader));
    }
    for (const auto& test : orNone(records::testsOfLot(reader, row.id))) {
        facts.tests.push_back({test.id, test.counts == records::TestOutcome::failed});
    }
    facts.missed = static_cast<int>(orNone(records::missedOfLot(reader, row.id)).size());
    facts.shipped = pieces.shipped;
    facts.made = pieces.made;
    for (const auto& person : orNone(records::peopleOnFile(reader))) {
        if (!person.left && shop::mayDo(shop::Right::decideHolds, person.roles)) {
            facts.entitled.push_back({person.number});
        }
    }
    facts.reRun.run = row.run;
    facts.reRun.number = onFile ? onFile->lotsSoFar + 1 : row.number + 1;
    facts.reRun.dryer = row.dryer;
    if (onFile) {
        facts.reRun.revisions = onFile->revisions;
    }
    return facts;
}

} // namespace holdfast::kiosk::demo
