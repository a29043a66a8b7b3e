// Days, names, and what is said of suspects and instruments.
#include "kiosk/screens/presenting/trending/trends_words.hpp"

#include "drivers/clock/clock.hpp"
#include "kiosk/wording/risk_sentences.hpp"
#include "kiosk/wording/testing_sentences.hpp"

#include <QString>

#include <chrono>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

using trending::Strength;

constexpr double kMinuteMs = 60'000.0;

std::string count(std::int64_t number) {
    return std::to_string(number);
}

std::string largeFirst(const std::string& text) {
    auto large = QString::fromStdString(text);
    if (!large.isEmpty()) {
        large[0] = large[0].toUpper();
    }
    return large.toStdString();
}

std::string oddsFigure(double odds) {
    return wording::numberText(odds, odds < 10.0 ? 1 : 0);
}

} // namespace

std::string TrendsHow::day(std::int64_t at) const {
    return wording::dayText(drivers::localDay({at, utcOffsetMinutes}), drivers::localDay({now, utcOffsetMinutes}),
                            speech);
}

std::string TrendsHow::days(std::int64_t from, std::int64_t to) const {
    const auto first = day(from);
    const auto last = day(to);
    return first == last ? first : text("trends.page.days", {{"from", first}, {"to", last}});
}

double TrendsHow::axisDay(std::int64_t at) const {
    return (static_cast<double>(at) + utcOffsetMinutes * kMinuteMs) / static_cast<double>(trending::kDayMs);
}

const records::TrendRun& runAt(const trending::TrendFacts& facts, trending::FactIndex run) {
    static const records::TrendRun none{};
    return run == trending::kNoFact ? none : facts.runs[static_cast<std::size_t>(run)];
}

std::string whyNot(const trending::Refusal& refusal, const TrendsHow& how) {
    return largeFirst(wording::whyText(refusal, how.speech));
}

std::string levelName(const trending::FactorLevel& level, const TrendsHow& how) {
    return largeFirst(wording::levelText(level, how.speech));
}

std::string shortName(const trending::FactorLevel& level, const TrendsHow& how) {
    return level.kind == trending::FactorKind::bucket
               ? how.text("trends.page.short-bucket", {{"number", count(level.number)}})
               : wording::levelText(level, how.speech);
}

std::string strengthWord(Strength strength, const TrendsHow& how) {
    return how.text(strength == Strength::strong ? "trends.page.strong"
                    : strength == Strength::weak ? "trends.page.weak"
                                                 : "trends.page.by-chance");
}

std::string countsText(const trending::Suspect& suspect, const TrendsHow& how) {
    const auto failed = suspect.failedWith + suspect.failedWithout;
    return how.text("trends.page.counts", {{"failed-with", count(suspect.failedWith)},
                                           {"failed", count(failed)},
                                           {"good-with", count(suspect.with - suspect.failedWith)},
                                           {"good", count(suspect.with + suspect.without - failed)}});
}

std::string suspectsDetail(const TrendsFound& found, const TrendsHow& how) {
    if (!found.suspects) {
        return whyNot(found.suspects.error(), how);
    }
    return how.text(
        found.question.span == TrendsSpan::all ? "trends.page.suspects-detail" : "trends.page.suspects-detail-year",
        {{"failed", count(found.suspects->failed)}, {"good", count(found.suspects->lots - found.suspects->failed)}});
}

std::string twinsText(const trending::Suspect& suspect, const TrendsHow& how) {
    std::string names;
    for (const auto& twin : suspect.sameAs) {
        names += names.empty() ? wording::levelText(twin, how.speech)
                               : how.text("trends.page.and", {{"name", wording::levelText(twin, how.speech)}});
    }
    return names.empty() ? names
                         : how.text("trends.page.twins", {{"name", levelName(suspect.level, how)}, {"others", names}});
}

std::string trialText(const trending::Suspect& suspect, const TrendsHow& how) {
    const auto name = wording::levelText(suspect.level, how.speech);
    if (suspect.strength == Strength::byChance) {
        return how.text("trends.page.sharing-chance");
    }
    if (!suspect.trial) {
        return how.text("trends.page.sharing-no-trial");
    }
    const auto* key = suspect.sameAs.empty() ? "trends.page.trial" : "trends.page.trial-twins";
    return how.text(key, {{"count", count(suspect.trial->perArm)}, {"name", name}});
}

std::string oddsText(const trending::Suspect& suspect, const TrendsHow& how) {
    if (!suspect.odds) {
        return how.text("trends.page.odds-none");
    }
    if (!std::isfinite(*suspect.odds) || !std::isfinite(suspect.oddsHigh)) {
        return how.text("trends.page.odds-open", {{"low", oddsFigure(suspect.oddsLow)}});
    }
    return how.text("trends.page.odds", {{"odds", oddsFigure(*suspect.odds)},
                                         {"low", oddsFigure(suspect.oddsLow)},
                                         {"high", oddsFigure(suspect.oddsHigh)}});
}

std::string eventText(const records::TrendEvent& event, const TrendsFound& found, const TrendsHow& how) {
    return wording::eventText(*found.facts, event, how.speech);
}

std::vector<trending::FactIndex> turningEvents(const trending::SinceWhen& since, const TrendsFound& found,
                                               std::size_t most) {
    std::vector<trending::FactIndex> events;
    for (const auto index : since.events) {
        const auto kind = found.facts->events[static_cast<std::size_t>(index)].kind;
        if (kind != records::TrendEventKind::bucketOpened && events.size() < most) {
            events.push_back(index);
        }
    }
    return events;
}

std::string sinceText(const trending::Figure<trending::SinceWhen>& since, const TrendsFound& found,
                      const TrendsHow& how) {
    constexpr std::size_t kMost = 3;
    if (!since) {
        return how.text("trends.page.since-not", {{"why", wording::whyText(since.error(), how.speech)}});
    }
    auto said = how.text("trends.page.since-share", {{"days", how.days(since->earliest(), since->latest())},
                                                     {"before", wording::numberText(since->before * kHundred, 0)},
                                                     {"after", wording::numberText(since->after * kHundred, 0)}});
    std::string events;
    for (std::size_t i = 0; i < std::min(kMost, since->events.size()); ++i) {
        const auto& event = found.facts->events[static_cast<std::size_t>(since->events[i])];
        const auto name =
            how.text("trends.page.event-day", {{"event", eventText(event, found, how)}, {"day", how.day(event.at)}});
        events += events.empty() ? name : how.text("trends.page.and", {{"name", name}});
    }
    return said + " " +
           (events.empty() ? how.text("trends.page.since-unknown")
                           : how.text("trends.page.since-events", {{"events", events}}));
}

namespace {

wording::Arguments offsetArguments(const trending::InstrumentOffset& offset, const TrendsHow& how) {
    auto figures = how.speech.figures;
    figures.decimals = 1;
    return {{"offset", figures.difference(offset.hotter)},
            {"low", figures.signedDifference(offset.least)},
            {"high", figures.signedDifference(offset.most)}};
}

} // namespace

std::string offsetRow(const trending::InstrumentOffset& offset, const TrendsHow& how) {
    return how.text(offset.hotter.celsius() < 0.0 ? "trends.page.offset-row-colder" : "trends.page.offset-row-hotter",
                    offsetArguments(offset, how));
}

std::string offsetText(const trending::InstrumentOffset& offset, const TrendsFound& found, const TrendsHow& how) {
    auto arguments = offsetArguments(offset, how);
    arguments["name"] = found.facts->instruments[static_cast<std::size_t>(offset.instrument)].name;
    return how.text(offset.hotter.celsius() < 0.0 ? "trends.page.offset-colder" : "trends.page.offset-hotter",
                    arguments);
}

} // namespace holdfast::kiosk::screens
