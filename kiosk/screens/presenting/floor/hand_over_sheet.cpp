#include "kiosk/screens/presenting/floor/floor_sheets.hpp"
#include "kiosk/screens/presenting/header_presenter.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/shown.hpp"

namespace holdfast::kiosk::screens {
namespace {

void addPowerLoss(SheetPageState& page, const shop::ProvingState& state, const wording::Speech& speech) {
    if (!state.floor.notReady) {
        return;
    }
    page.blocks.append(textBlock(SheetKinds::Lead, speech.text("readings.dryer.not-ready")));
    page.blocks.append(
        textBlock(SheetKinds::Sentence, state.floor.inTunnelAtLoss
                                            ? speech.text("readings.hand-over.in-tunnel",
                                                          {{"count", std::to_string(*state.floor.inTunnelAtLoss)}})
                                            : speech.text("readings.hand-over.tunnel-unknown")));
    page.blocks.append(textBlock(SheetKinds::Sentence, speech.text("readings.dryer.not-ready-do")));
}

void addRows(SheetPageState& page, const char* heading, const std::vector<SheetRow>& rows, const char* none,
             const wording::Speech& speech) {
    page.blocks.append(textBlock(SheetKinds::Heading, speech.text(heading)));
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, speech.text(none))
                                    : rowsBlock(SheetKinds::Rows, rows));
}

std::vector<SheetRow> running(const shop::ProvingState& state, const wording::Speech& speech) {
    std::vector<SheetRow> rows;
    for (const auto& run : state.belt) {
        const auto& plan = run->onFile.plan;
        rows.push_back(factRow(speech.text("dryer.run", {{"run", runName(plan.number, plan.title)}}), {},
                               whatIsPrinted(plan, speech)));
    }
    return rows;
}

std::vector<SheetRow> unanswered(const shop::ProvingState& state, const FloorFacts& facts,
                                 const wording::Speech& speech) {
    std::vector<SheetRow> rows;
    for (const auto& one : state.floor.unanswered) {
        auto row = factRow(speech.text("dryer.run", {{"run", runName(one.runNumber, one.runTitle)}}),
                           wording::clockText(one.takenAt, facts.utcOffsetMinutes), one.runTitle);
        row.marked = one.word.has_value();
        row.mark = one.word ? markOf(*one.word) : MarkKind::NotProven;
        row.id = QStringLiteral("open.%1").arg(one.runNumber);
        rows.push_back(row);
    }
    for (const auto& one : state.floor.unclaimed) {
        auto row = factRow(speech.text("dryer.unnamed-ride"), wording::clockText(one.takenAt, facts.utcOffsetMinutes),
                           speech.text("floor.claim-how"));
        row.id = toQString("floor.claim." + one.id);
        rows.push_back(row);
    }
    return rows;
}

std::vector<SheetRow> bins(const FloorFacts& facts, const wording::Speech& speech) {
    std::vector<SheetRow> rows;
    for (const auto& hold : facts.onHold) {
        auto row = factRow(speech.text("dryer.hold-row", {{"run", std::to_string(hold.runNumber)},
                                                          {"lot", std::to_string(hold.lot.number)}}),
                           {}, hold.what);
        row.marked = hold.word.has_value();
        row.mark = hold.word ? markOf(*hold.word) : MarkKind::NotProven;
        row.id = QStringLiteral("open.%1").arg(hold.runNumber);
        rows.push_back(row);
    }
    return rows;
}

std::vector<SheetRow> dueRows(const FloorFacts& facts, const wording::Speech& speech) {
    std::vector<SheetRow> rows;
    for (const auto& item : facts.due) {
        const auto* title = item.kind == records::DueKind::firstReading     ? "dryer.due-first"
                            : item.kind == records::DueKind::certificateDue ? "dryer.due-certificate"
                                                                            : "dryer.due-check";
        auto row = factRow(speech.text(title), {}, item.subject);
        row.id = item.runNumber > 0 ? QStringLiteral("open.%1").arg(item.runNumber) : QString{};
        rows.push_back(row);
    }
    return rows;
}

} // namespace

void showHandOverSheet(SheetPageState& page, const shop::ProvingState& state, const FloorFacts& facts,
                       const wording::Speech& speech) {
    page.title = toQString(speech.text("floor.hand-over"));
    addPowerLoss(page, state, speech);
    addRows(page, "readings.hand-over.runs", running(state, speech), "readings.hand-over.nothing-runs", speech);
    addRows(page, "readings.hand-over.unanswered", unanswered(state, facts, speech), "readings.hand-over.all-answered",
            speech);
    addRows(page, "readings.hand-over.bins", bins(facts, speech), "dryer.hold-none", speech);
    if (facts.lotsOnHold > static_cast<int>(facts.onHold.size())) {
        page.blocks.append(textBlock(
            SheetKinds::Note,
            speech.text("readings.hand-over.more-bins",
                        {{"count", std::to_string(facts.lotsOnHold - static_cast<int>(facts.onHold.size()))}})));
    }
    addRows(page, "dryer.due", dueRows(facts, speech), "dryer.due-none", speech);
    page.actions.append(pressOf("floor.taken-over", speech.text("readings.hand-over.taken"), true));
    page.actions.append(pressOf("dryer", speech.text("action.home")));
}

} // namespace holdfast::kiosk::screens
