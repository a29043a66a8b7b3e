// The sentences over and under the charts.
#include "kiosk/screens/presenting/trending/trends_words.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

using analytics::TemperatureDifference;
using analytics::statistics::ChartCaveat;
using analytics::statistics::DriftStanding;
using analytics::statistics::NelsonRule;
using analytics::statistics::SignalSide;

constexpr double kLongWeeks = 52.0; // further ahead no week is named

std::string countText(std::size_t number) {
    return std::to_string(number);
}

bool isDrift(const trending::Figure<trending::MarginDrift>& drift) {
    return drift && (drift->standing == DriftStanding::Crosses || drift->standing == DriftStanding::MovesAway ||
                     drift->standing == DriftStanding::AlreadyPast);
}

/// Sums of squares of the episodes about the line and about the two levels: what the sentence speaks of is what lies
/// nearer to them.
bool isStep(const trending::MarginTrend& margin) {
    if (!margin.since || !isDrift(margin.drift)) {
        return margin.since.has_value();
    }
    double line = 0.0;
    double step = 0.0;
    const auto last = static_cast<double>(margin.episodes.back().from);
    for (const auto& episode : margin.episodes) {
        if (!episode.mean) {
            continue;
        }
        const double weeks = (last - static_cast<double>(episode.from)) / static_cast<double>(trending::kWeekMs);
        const double onLine = margin.drift->now.celsius() - weeks * margin.drift->aWeek.celsius();
        const double level = episode.from < margin.since->likely ? margin.since->before : margin.since->after;
        line += (episode.mean->celsius() - onLine) * (episode.mean->celsius() - onLine);
        step += (episode.mean->celsius() - level) * (episode.mean->celsius() - level);
    }
    return step < line;
}

wording::Figures tenths(const TrendsHow& how) {
    auto figures = how.speech.figures;
    figures.decimals = 1;
    return figures;
}

std::string driftLead(const trending::MarginDrift& drift, const TrendsHow& how) {
    return how.text(drift.aWeek.celsius() < 0.0 ? "trends.page.sinking" : "trends.page.rising",
                    {{"rate", tenths(how).difference(drift.aWeek)}});
}

std::string driftDetail(const trending::MarginDrift& drift, const TrendsHow& how) {
    const auto range = how.text("trends.page.rate-range", {{"low", tenths(how).signedDifference(drift.leastAWeek)},
                                                           {"high", tenths(how).signedDifference(drift.mostAWeek)},
                                                           {"episodes", countText(drift.episodes)}});
    if (drift.standing == DriftStanding::AlreadyPast) {
        return how.text("trends.page.reached") + " " + range;
    }
    if (drift.standing != DriftStanding::Crosses) {
        return range;
    }
    const bool open = drift.weeksLatest > kLongWeeks;
    const auto earliest = wording::numberText(std::floor(drift.weeksEarliest), 0);
    const auto latest = wording::numberText(std::ceil(drift.weeksLatest), 0);
    if (drift.weeksEarliest > kLongWeeks) {
        return how.text("trends.page.reaches-far") + " " + range;
    }
    return how.text(open ? "trends.page.reaches-from" : "trends.page.reaches",
                    {{"earliest", earliest}, {"latest", latest}}) +
           " " + range;
}

std::string stepLead(const trending::SinceWhen& since, const TrendsHow& how) {
    const auto before = TemperatureDifference::fromCelsius(since.before);
    const auto after = TemperatureDifference::fromCelsius(since.after);
    return how.text(after < before ? "trends.page.dropped" : "trends.page.rose",
                    {{"before", tenths(how).signedDifference(before)}, {"after", tenths(how).signedDifference(after)}});
}

std::string stepDetail(const trending::SinceWhen& since, const TrendsFound& found, const TrendsHow& how) {
    constexpr std::size_t kMost = 2;
    std::string events;
    for (const auto index : turningEvents(since, found, kMost)) {
        const auto& event = found.facts->events[static_cast<std::size_t>(index)];
        const auto name =
            how.text("trends.page.event-day", {{"event", eventText(event, found, how)}, {"day", how.day(event.at)}});
        events += events.empty() ? name : how.text("trends.page.and", {{"name", name}});
    }
    const auto from = how.day(since.earliest());
    const auto to = how.day(since.latest());
    return how.text(from == to ? "trends.page.changed-on" : "trends.page.changed-between",
                    {{"from", from}, {"to", to}}) +
           " " +
           (events.empty() ? how.text("trends.page.since-unknown")
                           : how.text("trends.page.since-events", {{"events", events}}));
}

const char* caveatKey(ChartCaveat caveat) {
    switch (caveat) {
    case ChartCaveat::FewPoints:
        return "trends.page.caveat.few-points";
    case ChartCaveat::NoSpread:
        return "trends.page.caveat.no-spread";
    case ChartCaveat::Correlated:
        return "trends.page.caveat.correlated";
    case ChartCaveat::SmallCounts:
        return "trends.page.caveat.small-counts";
    case ChartCaveat::OverDispersed:
        return "trends.page.caveat.over-dispersed";
    case ChartCaveat::EmptyPeriods:
        break;
    }
    return "trends.page.caveat.empty-periods";
}

/// Of a hundred: so many decimals that it is not 0, down to a hundredth.
std::string fewText(double perHundred) {
    constexpr double kLeast = 0.01;
    const double shown = std::max(perHundred, kLeast);
    return wording::numberText(shown, shown < 0.1 ? 2 : shown < 10.0 ? 1 : 0);
}

void addSentence(std::string& said, const std::string& sentence) {
    if (!sentence.empty()) {
        said += (said.empty() ? "" : " ") + sentence;
    }
}

} // namespace

std::string ruleText(const trending::MarginSignal& signal, const TrendsHow& how) {
    const bool below = signal.side == SignalSide::Below;
    const auto points = countText(signal.episodes.size());
    const auto say = [&](const char* key) { return how.text(key, {{"count", points}}); };
    switch (signal.rule) {
    case NelsonRule::BeyondThreeSigma:
        return say(below ? "trends.page.rule.beyond-low" : "trends.page.rule.beyond-high");
    case NelsonRule::OneSide:
        return say(below ? "trends.page.rule.side-low" : "trends.page.rule.side-high");
    case NelsonRule::Trend:
        return say(below ? "trends.page.rule.falling" : "trends.page.rule.climbing");
    case NelsonRule::Alternating:
        return say("trends.page.rule.alternating");
    case NelsonRule::TwoOfThree:
        return say(below ? "trends.page.rule.near-low" : "trends.page.rule.near-high");
    case NelsonRule::FourOfFive:
        return say(below ? "trends.page.rule.four-low" : "trends.page.rule.four-high");
    case NelsonRule::FifteenWithin:
        return say("trends.page.rule.within");
    case NelsonRule::EightBeyond:
        break;
    }
    return say("trends.page.rule.spread");
}

std::string marginLead(const TrendsFound& found, const TrendsHow& how) {
    const auto& margin = found.margin;
    if (margin.episodes.empty()) {
        return how.text("trends.page.margin-empty");
    }
    if (isStep(margin)) {
        return stepLead(*margin.since, how);
    }
    if (isDrift(margin.drift)) {
        return driftLead(*margin.drift, how);
    }
    if (!margin.alarms.empty()) {
        return how.text("trends.page.signals", {{"count", countText(margin.alarms.size())}});
    }
    if (!margin.limits) {
        return how.text("trends.page.margin-few", {{"count", countText(margin.episodes.size())}});
    }
    return how.text("trends.page.steady", {{"usual", tenths(how).signedDifference(margin.limits->centre)}});
}

std::string marginDetail(const TrendsFound& found, const TrendsHow& how) {
    const auto& margin = found.margin;
    if (margin.episodes.empty()) {
        return how.text("trends.page.margin-empty-detail");
    }
    if (isStep(margin)) {
        return stepDetail(*margin.since, found, how);
    }
    if (isDrift(margin.drift)) {
        return driftDetail(*margin.drift, how);
    }
    if (!margin.limits) {
        return whyNot(margin.limits.error(), how);
    }
    if (!margin.alarms.empty()) {
        const auto& signal = margin.alarms.back();
        return how.text("trends.page.latest-signal",
                        {{"rule", ruleText(signal, how)},
                         {"days", how.days(margin.episodes[signal.episodes.front()].from,
                                           margin.episodes[signal.episodes.back()].from)}});
    }
    return how.text("trends.page.steady-detail", {{"count", countText(margin.episodes.size())}});
}

std::string marginNote(const TrendsFound& found, const TrendsHow& how) {
    const auto& margin = found.margin;
    std::string said;
    if (margin.below) {
        addSentence(said, how.text("trends.page.below", {{"likely", fewText(margin.below->perHundred)},
                                                         {"most", fewText(margin.below->atMostPerHundred)}}));
    }
    if (margin.strips > 0) {
        addSentence(said, how.text("trends.page.strips", {{"count", std::to_string(margin.strips)}}));
    }
    if (margin.missed > 0) {
        addSentence(said, how.text("trends.page.missed", {{"count", std::to_string(margin.missed)}}));
    }
    if (margin.limits) {
        addSentence(said, how.text("trends.page.limits-from", {{"count", countText(margin.limits->episodes)}}));
        for (const auto caveat : margin.limits->caveats) {
            addSentence(said, how.text(caveatKey(caveat)));
        }
    }
    return said;
}

std::string failureLead(const TrendsFound& found, const TrendsHow& how) {
    if (found.failures.lots == 0) {
        return how.text("trends.page.failures-empty");
    }
    if (found.failures.failed == 0) {
        return how.text("trends.page.failures-zero", {{"count", std::to_string(found.failures.lots)}});
    }
    if (found.failures.failed == found.failures.lots) {
        return how.text("trends.page.failures-all", {{"count", std::to_string(found.failures.lots)}});
    }
    return how.text("trends.page.failures",
                    {{"failed", std::to_string(found.failures.failed)}, {"lots", std::to_string(found.failures.lots)}});
}

std::string failureDetail(const TrendsFound& found, const TrendsHow& how) {
    const auto& failures = found.failures;
    if (failures.lots == 0) {
        return how.text("trends.page.failures-empty-detail");
    }
    if (!failures.usual) {
        return whyNot(failures.usual.error(), how);
    }
    std::size_t outside = 0;
    const trending::FailureWeek* latest = nullptr;
    for (const auto& week : failures.weeks) {
        outside += week.outside ? 1 : 0;
        latest = week.outside ? &week : latest;
    }
    if (latest == nullptr) {
        return how.text("trends.page.within-chance", {{"usual", wording::numberText(*failures.usual * kHundred, 1)}});
    }
    const wording::Arguments arguments{{"week", std::to_string(latest->isoWeek)},
                                       {"share", wording::numberText(latest->share.value_or(0.0) * kHundred, 0)},
                                       {"count", countText(outside)}};
    return how.text(outside == 1 ? "trends.page.one-outside" : "trends.page.outside", arguments);
}

std::string failureNote(const TrendsFound& found, const TrendsHow& how) {
    std::string said;
    if (const auto& rate = found.failures.readingRate; rate && rate->due > 0) {
        const auto low = wording::numberText(rate->lowest * kHundred, 1);
        const auto high = wording::numberText(rate->highest * kHundred, 1);
        addSentence(said, low == high ? how.text("trends.page.reading-rate",
                                                 {{"count", std::to_string(rate->due)}, {"share", low}})
                                      : how.text("trends.page.reading-rate-missed",
                                                 {{"count", std::to_string(rate->due)}, {"low", low}, {"high", high}}));
    }
    for (const auto caveat : found.failures.caveats) {
        addSentence(said, how.text(caveatKey(caveat)));
    }
    return said;
}

std::string washLead(const TrendsFound& found, const TrendsHow& how) {
    const auto& wash = found.wash;
    if (wash.points.empty()) {
        return how.text("trends.page.wash-empty");
    }
    if (!wash.curve) {
        return how.text("trends.page.wash-counts",
                        {{"held", std::to_string(wash.held)}, {"count", std::to_string(wash.held + wash.failed)}});
    }
    if (wash.curve->aKelvinLow > 0.0) {
        return how.text("trends.page.wash-helps");
    }
    return how.text(wash.curve->aKelvinHigh < 0.0 ? "trends.page.wash-hurts" : "trends.page.wash-open");
}

std::string washDetail(const TrendsFound& found, const TrendsHow& how) {
    const auto& wash = found.wash;
    if (wash.points.empty()) {
        return how.text("trends.page.wash-empty-detail");
    }
    auto said = how.text("trends.page.wash-of", {{"held", std::to_string(wash.held)},
                                                 {"failed", std::to_string(wash.failed)},
                                                 {"lots-held", std::to_string(wash.lotsHeld)},
                                                 {"lots-failed", std::to_string(wash.lotsFailed)}});
    if (!wash.margins.empty()) {
        const auto& most = wash.margins.back();
        const wording::Arguments arguments{
            {"share", wording::numberText(most.share * kHundred, 0)},
            {"margin", how.speech.figures.signedDifference(most.margin)},
            {"low", most.low ? how.speech.figures.signedDifference(*most.low) : std::string{}},
            {"high", most.high ? how.speech.figures.signedDifference(*most.high) : std::string{}}};
        addSentence(said, how.text(most.beyondSeen         ? "trends.page.wash-margin-unseen"
                                   : most.low && most.high ? "trends.page.wash-margin"
                                                           : "trends.page.wash-margin-open",
                                   arguments));
    }
    return said;
}

} // namespace holdfast::kiosk::screens
