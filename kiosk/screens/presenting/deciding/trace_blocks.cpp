// What Trace shows.
#include "kiosk/records/lot_state.hpp"
#include "kiosk/screens/presenting/deciding/shown_limits.hpp"
#include "kiosk/screens/presenting/deciding/trace_place.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/instrument_sentences.hpp"
#include "kiosk/wording/stock_sentences.hpp"

#include <type_traits>

namespace holdfast::kiosk::screens {
namespace {

using records::ClueHit;
using records::TestOutcome;

constexpr std::size_t kMostTrail = 200;
constexpr std::size_t kMostPictures = 8;
constexpr double kPercent = 100.0;

std::string hitText(const records::ClueRow& row, const wording::Speech& speech) {
    const char* key = row.hit == ClueHit::runNumber   ? "run-number"
                      : row.hit == ClueHit::reference ? "reference"
                      : row.hit == ClueHit::customer  ? "customer"
                      : row.hit == ClueHit::title     ? "title"
                      : row.hit == ClueHit::carton    ? "carton"
                      : row.hit == ClueHit::bucket    ? "bucket"
                      : row.hit == ClueHit::batch     ? "batch"
                                                      : "print";
    return speech.text(std::string{"holds.trace.hit."} + key, {{"what", row.what}});
}

std::string outcomeText(TestOutcome outcome, const wording::Speech& speech) {
    return speech.text(outcome == TestOutcome::passed   ? "holds.trace.outcome.passed"
                       : outcome == TestOutcome::failed ? "holds.trace.outcome.failed"
                       : outcome == TestOutcome::noted  ? "holds.trace.outcome.noted"
                                                        : "holds.trace.outcome.void");
}

const records::MethodDescribed* methodOf(const shop::tracing::TraceFacts& facts, const std::string& key) {
    for (const auto& method : facts.methods) {
        if (method.key == key) {
            return &method;
        }
    }
    return nullptr;
}

std::int64_t printNumber(const shop::tracing::TraceFacts& facts, const std::string& print) {
    for (const auto& row : facts.prints) {
        if (row.named.print == print) {
            return row.named.number;
        }
    }
    return 0;
}

/// The five signs in laundry pen: the code without its leading T.
std::string printSigns(std::int64_t number) {
    return drivers::encode(drivers::TicketKind::print, static_cast<std::uint64_t>(number), 4).substr(1);
}

/// Fills a line of the trail with what one thing was.
class Told final {
public:
    Told(TrailEntry& entry, const shop::tracing::TraceFacts& facts, const shop::PeopleNow& people, const LotSpeech& how)
        : m_entry{entry}, m_facts{facts}, m_people{people}, m_how{how} {}

    void operator()(const records::ReadingRow& row) const {
        say(m_how.text("holds.trace.trail.reading", {{"instrument", row.instrumentName}}));
        const auto word = row.refused ? analytics::Word::refused : row.word.value_or(analytics::Word::notProven);
        m_entry.marked = !row.refused && !row.struck;
        m_entry.mark = m_entry.marked ? filmMark(word) : MarkKind::Blank;
        m_entry.value = toQString(
            row.struck ? m_how.text("holds.reading-struck", {{"cause", wording::word(*row.struck, m_how.speech)}})
                       : wording::word(word, m_how.speech));
        detail({wording::word(row.position, m_how.speech), reasonText(row.reason, m_how.speech),
                row.corrected ? m_how.text("holds.reading-corrected") : std::string{}});
        m_entry.id = toQString("trace.reading." + row.id);
        m_entry.strong = m_entry.marked && word != analytics::Word::cured && word != analytics::Word::notProven;
    }
    void operator()(const records::MissedRow&) const {
        say(m_how.text("holds.trace.trail.missed"));
        m_entry.strong = true;
    }
    void operator()(const records::TestRow& row) const {
        const auto* method = methodOf(m_facts, row.done.method);
        const auto kind = wording::kindText(method != nullptr ? method->kind : records::TestKind::own, m_how.speech);
        const auto print = printSigns(printNumber(m_facts, row.done.print));
        say(row.done.cycle ? m_how.text("holds.trace.trail.test-cycle",
                                        {{"kind", kind}, {"cycle", std::to_string(*row.done.cycle)}, {"print", print}})
                           : m_how.text("holds.trace.trail.test", {{"kind", kind}, {"print", print}}));
        m_entry.value = toQString(outcomeText(row.done.outcome, m_how.speech));
        detail({row.person != 0 ? shownName(m_people, row.person, m_how.speech) : std::string{}, row.done.note});
        m_entry.id = toQString("trace.print." + row.done.print);
        m_entry.strong = row.done.outcome == TestOutcome::failed;
        if (!row.done.pictures.empty()) {
            m_entry.source = pictureUrl(row.done.pictures.front().sha256);
        }
    }
    void operator()(const records::HoldRow& row) const {
        say(m_how.text("holds.trace.trail.hold", {{"why", wording::word(row.placed.cause, m_how.speech)}}));
        detail({wording::piecesText(row.placed, std::nullopt, m_how.speech)});
        m_entry.value = toQString(row.lifted     ? m_how.text("holds.why-lifted")
                                  : row.decision ? m_how.text("holds.why-decided")
                                                 : std::string{});
        m_entry.id = toQString("trace.lot." + row.placed.lot);
        m_entry.strong = !row.decision;
    }
    void operator()(const records::DecisionRow& row) const {
        const auto entry = decisionEntry(row, m_people, m_how);
        m_entry.title = entry.title;
        m_entry.value = entry.value;
        detail({entry.detail.toStdString()});
        m_entry.id = toQString("trace.lot." + row.signedAs.lot);
    }
    void operator()(const records::MoveRow& row) const {
        say(wording::moveText(row.moved, m_how.speech));
        std::string cartons;
        for (const auto& carton : row.moved.cartons) {
            cartons += (cartons.empty() ? "" : ", ") + carton;
        }
        detail({cartons.empty() ? cartons : m_how.text("holds.move.cartons", {{"cartons", cartons}})});
        m_entry.value = toQString(row.corrected ? m_how.text("holds.decision-corrected") : std::string{});
        m_entry.id = toQString("trace.lot." + row.moved.lot);
    }
    void operator()(const records::ComplaintRow& row) const {
        say(m_how.text("holds.trace.trail.complaint", {{"number", std::to_string(row.taken.number)},
                                                       {"what", wording::word(row.taken.what, m_how.speech)}}));
        detail({row.taken.customer, row.finding ? row.finding->cause : std::string{}});
        m_entry.value = toQString(row.finding ? m_how.text("holds.complaint.closed") : std::string{});
        m_entry.id = toQString("trace.complaint." + row.taken.complaint);
        m_entry.strong = !row.finding;
    }

private:
    void say(const std::string& title) const { m_entry.title = toQString(title); }
    void detail(std::vector<std::string> parts) const {
        parts.insert(parts.begin(), m_entry.detail.toStdString()); // the lot
        m_entry.detail = toQString(joined(parts, " · "));
    }

    TrailEntry& m_entry;
    const shop::tracing::TraceFacts& m_facts;
    const shop::PeopleNow& m_people;
    const LotSpeech& m_how;
};

/// So that a line may be broken, and a person can read it out.
std::string inGroups(const std::string& hex) {
    constexpr std::size_t kSigns = 8;
    std::string groups;
    for (std::size_t i = 0; i < hex.size(); i += kSigns) {
        groups += (i == 0 ? "" : " ") + hex.substr(i, kSigns);
    }
    return groups;
}

} // namespace

TrailEntry TracePlace::entryOf(const shop::tracing::TrailLine& line) const {
    const auto speech = how();
    TrailEntry entry;
    entry.time = toQString(wording::clockText(line.at, speech.utcOffsetMinutes));
    entry.day = toQString(wording::dayOf(line.at, speech.utcOffsetMinutes));
    if (line.lot > 0) {
        entry.detail = toQString(text("holds.trace.trail-lot", {{"lot", std::to_string(line.lot)}}));
    }
    std::visit(Told{entry, *m_facts, m_people, speech}, line.what);
    return entry;
}

void TracePlace::addList(SheetPageState& page) const {
    for (const auto& row : m_found) {
        auto shown = factRow(text("holds.trace.row", {{"run", std::to_string(row.runNumber)}, {"title", row.runTitle}}),
                             hitText(row, m_needs.speech()), row.customer);
        shown.id = toQString("trace.run." + row.run);
        shown.chosen = m_facts && m_facts->plan.run == row.run;
        page.list.append(shown);
    }
}

void TracePlace::addSum(SheetPageState& page) const {
    const auto& counts = m_page.counts;
    const auto said = [&](const char* what, int count) {
        return text(std::string{"holds.trace.sum."} + what, {{"count", std::to_string(count)}});
    };
    auto sum = said("readings", counts.readings) + " " + said("bad", counts.bad) + " " + said("tests", counts.tests) +
               " " + said("failed", counts.failedTests) + " " + said("holds", counts.openHolds) + " " +
               said("shipped", counts.shipped);
    if (counts.shipped > 0) {
        sum += " " + said("cartons", counts.cartons);
    }
    page.blocks.append(textBlock(SheetKinds::Lead, sum));
}

void TracePlace::addOrder(SheetPageState& page) const {
    const auto& plan = m_facts->plan;
    std::vector<SheetRow> facts;
    const auto fact = [&](const char* key, const std::string& value) {
        if (!value.empty()) {
            facts.push_back(factRow(text(key), value));
        }
    };
    fact("holds.trace.customer", plan.customer);
    fact("holds.trace.reference", plan.reference);
    fact("holds.trace.planned", plan.pieces ? std::to_string(*plan.pieces) : std::string{});
    fact("holds.trace.fabric", plan.fabric);
    fact("holds.trace.garment", plan.garmentColour);
    fact("runs.fact.cloth-lot", plan.clothLot);
    fact("runs.fact.finish", plan.finish);
    fact("holds.fact.children", plan.childrensWear ? text("holds.fact.yes") : std::string{});
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.trace.order")));
    page.blocks.append(rowsBlock(SheetKinds::Facts, facts));
    std::vector<SheetRow> lots;
    for (const auto& lot : m_facts->lots) {
        auto row = factRow(text("holds.trace.lot", {{"lot", std::to_string(lot.lot.number)}}),
                           wording::word(records::standingOf(lot.lot.state), m_needs.speech()),
                           wording::balanceText(shop::deciding::sumOf(lot.pieces), m_needs.speech()));
        row.id = toQString("trace.lot." + lot.lot.id);
        row.strong = lot.lot.state == records::LotState::onHold;
        lots.push_back(row);
    }
    if (!lots.empty()) {
        page.blocks.append(textBlock(SheetKinds::Heading, text("holds.trace.lots")));
        page.blocks.append(rowsBlock(SheetKinds::Rows, lots));
    }
}

void TracePlace::addPeople(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.trace.people")));
    std::vector<SheetRow> rows;
    for (const auto& person : m_page.people) {
        std::string deeds;
        for (const auto deed : person.deeds) {
            deeds += (deeds.empty() ? "" : ", ") + wording::deedText(deed, m_needs.speech());
        }
        rows.push_back(factRow(shownName(m_people, person.person, m_needs.speech()), deeds));
    }
    if (m_page.unnamed > 0) {
        rows.push_back(factRow(text("holds.trace.unnamed", {{"count", std::to_string(m_page.unnamed)}}),
                               wording::deedText(shop::tracing::Deed::stood, m_needs.speech())));
    }
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("holds.trace.people-none"))
                                    : rowsBlock(SheetKinds::Facts, rows));
}

void TracePlace::addBatches(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.trace.batches")));
    std::vector<SheetRow> rows;
    for (const auto& line : m_page.batches) {
        const wording::Arguments arguments{
            {"bucket", std::to_string(line.bucket)}, {"name", line.name}, {"colour", line.colour}};
        const bool layer = line.depth == 0 && !line.colour.empty();
        const auto batch = line.isMix           ? std::string{}
                           : line.batch.empty() ? text("holds.trace.no-batch")
                                                : text("holds.trace.batch", {{"batch", line.batch}});
        const auto share = line.depth > 0
                               ? text("holds.trace.share", {{"percent", wording::numberText(line.share * kPercent, 0)}})
                               : std::string{};
        auto row = factRow(text(layer ? "holds.trace.layer" : "holds.trace.bucket", arguments), batch, share);
        row.indent = line.depth;
        rows.push_back(row);
    }
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("holds.trace.batches-none"))
                                    : rowsBlock(SheetKinds::Rows, rows));
}

void TracePlace::addRetained(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.trace.retained")));
    std::vector<SheetRow> rows;
    for (const auto& print : m_page.retained) {
        const auto& place = *print.named.retained;
        auto row = factRow(text("holds.trace.retained-row",
                                {{"print", printSigns(print.named.number)}, {"lot", std::to_string(print.lotNumber)}}),
                           place.shelf,
                           place.until ? text("holds.trace.retained-until", {{"day", wording::dateText(*place.until)}})
                                       : text("holds.trace.retained-no-day"));
        row.id = toQString("trace.print." + print.named.print);
        rows.push_back(row);
    }
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("holds.trace.retained-none"))
                                    : rowsBlock(SheetKinds::Rows, rows));
}

void TracePlace::addPictures(SheetPageState& page) const {
    if (m_page.pictures.empty()) {
        return;
    }
    SheetBlock block;
    block.kind = SheetKinds::Pictures;
    block.text = toQString(text("holds.trace.pictures"));
    for (std::size_t i = 0; i < m_page.pictures.size() && i < kMostPictures; ++i) {
        PictureEntry entry;
        entry.source = pictureUrl(m_page.pictures[i]);
        entry.id = pictureId(m_page.pictures[i]);
        entry.label = QString::number(i + 1);
        block.pictures.append(entry);
    }
    page.blocks.append(block);
}

void TracePlace::addTrail(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.trace.trail")));
    SheetBlock block;
    block.kind = SheetKinds::Trail;
    const auto& trail = m_page.trail;
    const auto from = trail.size() > kMostTrail ? trail.size() - kMostTrail : 0;
    if (from > 0) {
        page.blocks.append(textBlock(SheetKinds::Note, text("holds.trace.more", {{"count", std::to_string(from)}})));
    }
    for (std::size_t i = from; i < trail.size(); ++i) {
        block.trail.append(entryOf(trail[i]));
    }
    page.blocks.append(block);
}

void TracePlace::addNotTested(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.trace.not-tested")));
    if (m_page.notTested.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.trace.not-tested-none")));
    }
    for (const auto& gap : m_page.notTested) {
        const auto* method = methodOf(*m_facts, gap.method);
        const auto name =
            method != nullptr && !method->name.empty() ? method->name : wording::kindText(gap.kind, m_needs.speech());
        page.blocks.append(
            textBlock(SheetKinds::Sentence, wording::sentence(gap, name, printSigns(gap.print), m_needs.speech())));
    }
}

void TracePlace::addBook(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.trace.book")));
    page.blocks.append(rowsBlock(
        SheetKinds::Facts, {factRow(text("holds.trace.book-head", {{"entries", std::to_string(m_facts->entries)}}), {},
                                    inGroups(m_facts->head))}));
    page.blocks.append(textBlock(SheetKinds::Note, text("holds.trace.cautions")));
}

SheetPageState TracePlace::sheet() const {
    SheetPageState page;
    page.heading = toQString(text("holds.trace.heading"));
    page.head = m_facts ? toQString(text("dryer.run", {{"run", std::to_string(m_facts->plan.number)}})) : page.heading;
    page.headHow = m_facts ? toQString(m_facts->plan.title) : QString{};
    page.listNone = toQString(text("holds.trace.none"));
    addList(page);
    page.back = pressOf("trace.back", text("holds.back"));
    page.listActions = {pressOf("trace.holds", text("holds.heading"))};
    page.detailOnly = m_reading || m_facts || m_found.empty();
    if (m_reading) {
        m_reading->addTo(page);
        return page;
    }
    page.blocks.append(
        fieldsBlock({fieldOf("trace.clue", text("holds.trace.clue"), m_clue, text("holds.trace.clue-hint"))}));
    if (!m_facts) {
        page.title = toQString(text("holds.trace.heading"));
        const auto said = m_clue.empty()    ? text("holds.trace.lead")
                          : m_found.empty() ? text("holds.trace.nothing", {{"clue", m_clue}})
                                            : text("holds.trace.found",
                                                   {{"count", std::to_string(m_found.size())}, {"clue", m_clue}});
        page.blocks.append(textBlock(m_clue.empty() ? SheetKinds::Sentence : SheetKinds::Lead, said));
        return page;
    }
    page.title = toQString(
        text("holds.trace.title", {{"run", std::to_string(m_facts->plan.number)}, {"title", m_facts->plan.title}}));
    if (!m_said.empty()) {
        page.blocks.append(textBlock(SheetKinds::Lead, m_said));
    }
    addSum(page);
    addOrder(page);
    addPeople(page);
    addBatches(page);
    addReadings(page.blocks, m_facts->readings, "trace.reading.", how());
    addRetained(page);
    addPictures(page);
    addTrail(page);
    addNotTested(page);
    addBook(page);
    page.actions = {pressOf("trace.certificate", text("holds.trace.certificate"), true),
                    pressOf("trace.back", text("holds.back"))};
    return page;
}

} // namespace holdfast::kiosk::screens
