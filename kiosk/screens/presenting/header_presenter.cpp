#include "kiosk/screens/presenting/header_presenter.hpp"

#include "kiosk/screens/presenting/due_texts.hpp"
#include "kiosk/screens/presenting/floor/floor_sheets.hpp"
#include "kiosk/screens/presenting/shown.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

namespace {

HeaderCell titleCell(Place place, const shop::ProvingState& state, const FloorFacts& facts,
                     const wording::Speech& speech) {
    HeaderCell cell;
    cell.place = QStringLiteral("dryer");
    const auto dwell = dwellText(state, speech);
    const auto andDwell = dwell.empty() ? std::string{} : " · " + dwell;
    if (!state.run) {
        cell.what = toQString(facts.dryerName);
        cell.how = toQString(speech.text("header.due-none-how") + andDwell);
        return cell;
    }
    const auto& plan = state.run->onFile.plan;
    const auto number = plan.number > 0 ? std::to_string(plan.number) : plan.title;
    cell.what = place == Place::dryer
                    ? toQString(facts.dryerName)
                    : toQString(speech.text("run.title", {{"dryer", facts.dryerName}, {"run", number}}));
    cell.how = place == Place::dryer ? toQString(speech.text("header.running", {{"run", number}}) + andDwell)
                                     : toQString(whatIsPrinted(plan, speech));
    return cell;
}

std::string probeHow(const shop::Probe& probe, drivers::MonotonicTime now, const wording::Speech& speech) {
    const auto age = [&](std::optional<drivers::MonotonicTime> since) {
        if (!since) {
            return std::string{};
        }
        const double seconds = static_cast<double>((now - *since).count()) / 1e6;
        return wording::durationText(analytics::Duration{std::max(0.1, seconds)});
    };
    if (probe.link.state == drivers::LinkState::ready && !probe.lost) {
        return speech.text("header.probe.live", {{"age", age(probe.sampleAt)}});
    }
    if (probe.lost || probe.link.state == drivers::LinkState::lost) {
        return speech.text(probe.sampleAt ? "header.probe.lost" : "header.probe.silent",
                           {{"age", age(probe.sampleAt)}});
    }
    switch (probe.link.state) {
    case drivers::LinkState::opening:
        return speech.text("header.probe.opening");
    case drivers::LinkState::identifying:
        return speech.text("header.probe.identifying");
    default:
        return speech.text("header.probe.absent");
    }
}

HeaderCell probeCell(Place place, const shop::ProvingState& state, const wording::Speech& speech) {
    if (place == Place::strip && state.strip) {
        const auto& strip = state.strip->strip;
        HeaderCell cell{toQString(speech.text("header.strip")), toQString(strip.name), {}};
        if (strip.calibration && strip.calibration->instrument().strip) {
            cell.how += toQString(" · ±" + speech.figures.difference(strip.calibration->instrument().strip->tolerance));
        }
        return cell;
    }
    const auto* probe = shop::shownProbe(state);
    if (probe == nullptr) {
        return {toQString(speech.text("header.no-probe")), toQString(speech.text("header.probe.absent")), {}};
    }
    return {toQString(speech.text("header.probe", {{"subject", probe->name}})),
            toQString(probeHow(*probe, state.now, speech)),
            {}};
}

HeaderCell dueCell(const shop::ProvingState& state, const FloorFacts& facts, const wording::Speech& speech) {
    const auto open = facts.due.size() + state.floor.unanswered.size() + state.floor.unclaimed.size();
    if (!state.run && open > 0) {
        return {toQString(speech.text("header.due-count", {{"count", std::to_string(open)}})),
                toQString(speech.text("header.due-list")), QStringLiteral("dryer")};
    }
    if (!state.run) {
        return {toQString(speech.text("header.due-none")), toQString(speech.text("header.due-none-how")), {}};
    }
    if (const auto* watch = shop::dueFirst(state)) {
        return {toQString(speech.text(watch->due->reading.now ? "header.due" : "header.due-later")),
                toQString(dueShort(*watch, speech)),
                {}};
    }
    if (const auto* watch = shop::watchOf(state, state.run->onFile.plan.run); watch != nullptr && watch->readings > 0) {
        return {toQString(speech.text("header.due-none")), toQString(speech.text("readings.due.none")), {}};
    }
    const bool taken = !state.run->onFile.readings.empty() || state.verdict.has_value();
    return {toQString(speech.text(taken ? "header.due-later" : "header.due")),
            toQString(speech.text(taken ? "header.due-next" : "header.due-start")),
            {}};
}

} // namespace

std::string whatIsPrinted(const records::RunPlanned& plan, const wording::Speech& speech) {
    return plan.pieces ? speech.text("run.pieces", {{"pieces", std::to_string(*plan.pieces)},
                                                    {"garment", plan.title},
                                                    {"fabric", plan.fabric}})
                       : speech.text("run.no-pieces", {{"garment", plan.title}, {"fabric", plan.fabric}});
}

HeaderState headerOf(Place place, const shop::ProvingState& state, const FloorFacts& facts,
                     const wording::Speech& speech) {
    HeaderState header;
    header.title = titleCell(place, state, facts, speech);
    header.crew = {toQString(facts.crew > 0 ? speech.text("header.crew", {{"count", std::to_string(facts.crew)}})
                                            : speech.text("header.crew-none")),
                   toQString(speech.text("header.crew-how")),
                   {}};
    header.probe = probeCell(place, state, speech);
    header.due = dueCell(state, facts, speech);
    header.hold = {toQString(speech.text("header.hold")),
                   toQString(facts.lotsOnHold > 0
                                 ? speech.text("header.hold-lots", {{"count", std::to_string(facts.lotsOnHold)}})
                                 : speech.text("header.hold-none")),
                   QStringLiteral("holds")};
    header.clock = {toQString(wording::clockText(facts.wallMilliseconds, facts.utcOffsetMinutes)), {}, {}};
    header.demo = facts.demo;
    return header;
}

void tellOfPlace(HeaderState& header, const QString& what, const QString& how, const FloorFacts& facts,
                 const wording::Speech& speech) {
    if (what.isEmpty()) {
        return;
    }
    header.title.what = what;
    header.title.how = how;
    header.due = {toQString(speech.text("header.next-test")),
                  toQString(facts.nextTest.empty() ? speech.text("tests.due.none-short") : facts.nextTest),
                  QStringLiteral("tests")};
}

} // namespace holdfast::kiosk::screens
