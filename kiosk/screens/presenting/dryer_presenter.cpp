#include "kiosk/screens/presenting/dryer_presenter.hpp"

#include "kiosk/screens/presenting/due_texts.hpp"
#include "kiosk/screens/presenting/run_band.hpp"
#include "kiosk/screens/presenting/run_presenter.hpp"
#include "kiosk/screens/presenting/scale_presenter.hpp"
#include "kiosk/screens/presenting/shown.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace holdfast::kiosk::screens {

namespace {

QString marginOf(const records::ReadingRow& row, const wording::Speech& speech) {
    return toQString(wording::marginText(analytics::MarginRange{row.marginLow, row.marginHigh}, speech));
}

EarlierRow earlierRow(const ListedReading& listed, const wording::Speech& speech) {
    EarlierRow row;
    row.id = listed.row.runNumber > 0 ? QStringLiteral("open.%1").arg(listed.row.runNumber) : QString{};
    row.mark = listed.row.word ? markOf(*listed.row.word) : MarkKind::NotProven;
    row.title =
        toQString(listed.row.run.empty()
                      ? speech.text("dryer.unnamed-ride")
                      : speech.text("dryer.run", {{"run", runName(listed.row.runNumber, listed.row.runTitle)}}));
    row.verdictWord = listed.row.word ? toQString(wording::word(*listed.row.word, speech)) : QString{};
    row.detail = toQString(listed.what);
    row.scale = smallScale(listed.reading, speech);
    row.margin = listed.reading.verdict ? toQString(wording::headMarginText(*listed.reading.verdict, speech))
                                        : marginOf(listed.row, speech);
    row.time = toQString(wording::clockText(listed.row.takenAt, listed.row.utcOffsetMinutes));
    return row;
}

DueRow dueRow(const records::DueItem& item, bool first, const wording::Speech& speech) {
    DueRow row;
    row.next = first;
    row.when = toQString(speech.text("header.due-now"));
    switch (item.kind) {
    case records::DueKind::firstReading:
        row.id = QStringLiteral("open.%1").arg(item.runNumber);
        row.title = toQString(speech.text("dryer.due-first"));
        row.detail =
            toQString(speech.text("dryer.due-run", {{"run", std::to_string(item.runNumber)}, {"what", item.subject}}));
        break;
    case records::DueKind::certificateDue:
        row.title = toQString(speech.text("dryer.due-certificate"));
        row.detail = toQString(item.subject);
        break;
    case records::DueKind::checkDue:
        row.title = toQString(speech.text("dryer.due-check"));
        row.detail = toQString(item.subject);
        break;
    }
    return row;
}

/// What nobody has said anything to yet comes before what is due.
void addOpenQuestions(QList<DueRow>& due, const shop::ProvingState& state, const FloorFacts& facts,
                      const wording::Speech& speech) {
    const auto add = [&](const std::string& id, const char* title, const std::string& detail, const std::string& when) {
        DueRow row;
        row.id = toQString(id);
        row.title = toQString(speech.text(title));
        row.detail = toQString(detail);
        row.when = toQString(when);
        row.next = due.isEmpty();
        due.append(row);
    };
    if (state.floor.notReady) {
        add("floor.dryer", "readings.dryer.not-ready", speech.text("readings.dryer.ride-makes-ready"), {});
    }
    if (state.floor.setUp) {
        add("floor.dryer", "readings.dryer.in-set-up", speech.text("readings.dryer.set-up-short"), {});
    }
    if (state.alsoOnBelt) {
        add("floor.dryer", "readings.dryer.also", speech.text("readings.dryer.also-do"), {});
    }
    if (state.floor.handOver) {
        add("floor.hand-over", "floor.hand-over", speech.text("floor.hand-over-how"), speech.text("header.due-now"));
    }
    for (const auto& row : state.floor.unanswered) {
        add("open." + std::to_string(row.runNumber), "floor.unanswered",
            speech.text("dryer.due-run", {{"run", runName(row.runNumber, row.runTitle)}, {"what", row.runTitle}}),
            wording::clockText(row.takenAt, facts.utcOffsetMinutes));
    }
    for (const auto& row : state.floor.unclaimed) {
        add("floor.claim." + row.id, "dryer.unnamed-ride", speech.text("floor.claim-how"),
            wording::clockText(row.takenAt, facts.utcOffsetMinutes));
    }
}

/// Readings of the runs on the belt, by themselves: nobody touches anything to be reminded.
void addReadings(QList<DueRow>& due, const shop::ProvingState& state, const wording::Speech& speech) {
    for (const auto& run : state.belt) {
        const auto* watch = shop::watchOf(state, run->onFile.plan.run);
        if (watch == nullptr || !watch->due) {
            continue;
        }
        const auto& plan = run->onFile.plan;
        DueRow row;
        row.id = QStringLiteral("run");
        row.title = toQString(speech.text("readings.due.row", {{"what", dueWhat(*watch->due, speech)}}));
        row.detail = toQString(
            speech.text("readings.due.run", {{"run", runName(plan.number, plan.title)}, {"what", plan.title}}));
        row.when = toQString(dueWhen(*watch, speech));
        row.next = due.isEmpty();
        due.append(row);
    }
}

/// An open lot without a reading is told of with its piece, if its run is on the belt.
bool isWatched(const records::DueItem& item, const shop::ProvingState& state) {
    return item.kind == records::DueKind::firstReading &&
           std::any_of(state.belt.begin(), state.belt.end(), [&](const auto& run) {
               const auto* watch = shop::watchOf(state, run->onFile.plan.run);
               return watch != nullptr && watch->due && run->onFile.plan.number == item.runNumber;
           });
}

BeltState emptyBelt(const FloorFacts& facts, const wording::Speech& speech) {
    BeltState belt;
    belt.heading = toQString(speech.text("dryer.belt-empty"));
    belt.word = toQString(speech.text(facts.latest.empty() ? "word.blank" : "word.belt-free"));
    belt.sentence = toQString(speech.text("dryer.how-to-start"));
    return belt;
}

/// "On the belt · runs 20418 and 20419": a reading counts for all of them.
std::string sharedBelt(const shop::ProvingState& state, const wording::Speech& speech) {
    std::string runs;
    for (const auto& run : state.belt) {
        runs += (runs.empty() ? "" : ", ") + runName(run->onFile.plan.number, run->onFile.plan.title);
    }
    return speech.text("dryer.on-belt-shared", {{"runs", runs}});
}

BeltState runningBelt(const shop::ProvingState& state, const FloorFacts& facts, const wording::Speech& base) {
    const auto speech = wording::speechFor(base, state.run->onFile.layers);
    const auto& plan = state.run->onFile.plan;
    BeltState belt;
    belt.heading = toQString(speech.text(
        "dryer.on-belt", {{"run", plan.number > 0 ? std::to_string(plan.number) : plan.title}, {"what", plan.title}}));
    const auto page = runPageOf(state, facts, {}, base);
    belt.mark = page.band.mark;
    belt.word = page.band.liveFigure.isEmpty() ? page.band.word : page.band.liveFigure;
    belt.note = page.band.margin;
    if (!page.lot.lotState.isEmpty() && !page.lot.readings.isEmpty()) {
        const auto lot = page.lot.lotHeading + QStringLiteral(" ") + page.lot.lotState.toLower();
        belt.note += belt.note.isEmpty() ? lot : QStringLiteral(" · ") + lot;
    } else if (belt.note.isEmpty()) {
        belt.note = page.band.status;
    }
    belt.showScale = true;
    belt.scale = page.scale;
    belt.actionId = QStringLiteral("run");
    if (state.belt.size() > 1) {
        belt.heading = toQString(sharedBelt(state, speech));
    }
    return belt;
}

} // namespace

DryerPageState dryerPageOf(const shop::ProvingState& state, const FloorFacts& facts, const wording::Speech& speech) {
    DryerPageState page;
    page.scan.id = QStringLiteral("scan");
    page.scan.label = toQString(speech.text("dryer.scan"));
    page.scan.hint = toQString(speech.text("dryer.scan-how"));
    page.scan.primary = true;
    page.belt = state.run && state.window ? runningBelt(state, facts, speech) : emptyBelt(facts, speech);
    page.earlierHeading = toQString(speech.text("dryer.earlier"));
    page.earlierNone = toQString(speech.text("dryer.earlier-none"));
    for (const auto& listed : facts.latest) {
        page.earlier.append(earlierRow(listed, speech));
    }
    page.dueHeading = toQString(speech.text("dryer.due"));
    page.dueNone = toQString(speech.text("dryer.due-none"));
    addOpenQuestions(page.due, state, facts, speech);
    addReadings(page.due, state, speech);
    for (const auto& item : facts.due) {
        if (!isWatched(item, state)) {
            page.due.append(dueRow(item, page.due.isEmpty(), speech));
        }
    }
    page.holdHeading = toQString(speech.text("dryer.hold"));
    page.holdNone = toQString(speech.text("dryer.hold-none"));
    for (const auto& hold : facts.onHold) {
        page.holds.append(HoldRow{QStringLiteral("open.%1").arg(hold.runNumber),
                                  hold.word ? markOf(*hold.word) : MarkKind::NotProven,
                                  toQString(speech.text("dryer.hold-row", {{"run", std::to_string(hold.runNumber)},
                                                                           {"lot", std::to_string(hold.lot.number)}})),
                                  toQString(hold.what)});
    }
    page.caution = toQString(speech.text("caution.short"));
    const bool stands = state.floor.dryer && state.floor.dryer->stopped;
    const std::vector<std::pair<const char*, const char*>> presses{
        {stands ? "floor.started" : "floor.stopped", stands ? "action.floor-started" : "action.floor-stopped"},
        {"floor.problem", "action.floor-problem"},
        {"floor.dryer", "action.floor-dryer"},
    };
    for (const auto& [id, key] : presses) {
        ActionState action;
        action.id = QString::fromLatin1(id);
        action.label = toQString(speech.text(key));
        page.actions.append(action);
    }
    return page;
}

} // namespace holdfast::kiosk::screens
