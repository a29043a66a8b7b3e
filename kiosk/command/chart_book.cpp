// The two charts of the owner's page, of a book.
#include "kiosk/command/book_trends.hpp"
#include "kiosk/command/chart.hpp"
#include "kiosk/shop/trending/failure_trend.hpp"
#include "kiosk/shop/trending/margin_trend.hpp"
#include "kiosk/wording/sentences.hpp"

#include <ostream>

namespace holdfast::kiosk::command {

namespace {

namespace st = analytics::statistics;
namespace trending = shop::trending;
using trending::FactIndex;

wording::Speech speechOf(bool fahrenheit) {
    return {&wording::Language::english(),
            {fahrenheit ? analytics::TemperatureUnit::fahrenheit : analytics::TemperatureUnit::celsius, 1},
            {}};
}

double kelvins(const std::optional<analytics::TemperatureDifference>& difference) {
    return difference ? difference->celsius() : std::nan("");
}

std::string nameIn(const std::vector<records::TrendDryer>& dryers, FactIndex dryer) {
    return dryer == trending::kNoFact ? std::string{} : dryers[static_cast<std::size_t>(dryer)].name;
}

/// As a chart of kelvins, whatever unit is spoken.
Charted chartedOf(const trending::MarginTrend& trend, const records::TrendFacts& facts) {
    Charted chart;
    chart.kind = "margin";
    for (const auto& episode : trend.episodes) {
        chart.values.push_back(kelvins(episode.mean));
        chart.labels.push_back(daySaid(episode.from, facts));
        chart.plotted.push_back(episode.mean ? 1 : 0);
    }
    if (trend.limits) {
        chart.limits = {{trend.limits->lower.celsius(), trend.limits->centre.celsius(), trend.limits->upper.celsius()}};
        st::Baseline base;
        base.name = trend.limits->baseline;
        base.center = trend.limits->centre.celsius();
        base.sigma = trend.limits->sd.celsius();
        base.points = trend.limits->episodes;
        base.caveats = trend.limits->caveats;
        chart.baseline = base;
    }
    for (const auto& signal : trend.alarms) {
        if (!signal.episodes.empty()) {
            chart.alarms.push_back({static_cast<int>(signal.rule), signal.side, signal.episodes, signal.metAt, {}});
        }
    }
    return chart;
}

Json episodesJson(const trending::MarginTrend& trend, const records::TrendFacts& facts) {
    Json all = Json::array();
    for (const auto& episode : trend.episodes) {
        const auto end = [](const std::optional<analytics::TemperatureDifference>& one) {
            return one ? figure(one->celsius()) : Json();
        };
        const bool strips = !episode.mean && (episode.between.low || episode.between.high);
        all.push_back({{"day", daySaid(episode.from, facts)},
                       {"dryer", nameIn(facts.dryers, episode.dryer)},
                       {"readings", episode.readings.size()},
                       {"missed", episode.missed},
                       {"mean_c", figure(kelvins(episode.mean))},
                       {"strips_low_c", strips ? end(episode.between.low) : Json()},
                       {"strips_high_c", strips ? end(episode.between.high) : Json()}});
    }
    return all;
}

void addDrift(Answer& answer, const trending::Figure<trending::MarginDrift>& drift, const wording::Speech& speech) {
    if (!drift) {
        answer.json["drift"] = refusalJson(drift.error());
        return;
    }
    const bool crosses = drift->standing == st::DriftStanding::Crosses;
    answer.json["drift"] = {{"a_week_c", figure(drift->aWeek.celsius())},
                            {"lower_c", figure(drift->leastAWeek.celsius())},
                            {"upper_c", figure(drift->mostAWeek.celsius())},
                            {"weeks_earliest", crosses ? figure(drift->weeksEarliest) : Json()},
                            {"weeks_latest", crosses ? figure(drift->weeksLatest) : Json()}};
    const bool isShown = drift->leastAWeek.celsius() > 0.0 || drift->mostAWeek.celsius() < 0.0;
    auto figures = speech.figures;
    figures.decimals = 2; // of a week
    answer.say(isShown ? "margin-drift" : "margin-no-drift", {{"a-week", figures.signedDifference(drift->aWeek)},
                                                              {"lower", figures.signedDifference(drift->leastAWeek)},
                                                              {"upper", figures.signedDifference(drift->mostAWeek)}});
}

void addSince(Answer& answer, const trending::Figure<trending::SinceWhen>& since, const records::TrendFacts& facts) {
    if (!since) {
        answer.json["since"] = refusalJson(since.error());
        return;
    }
    answer.json["since"] = {{"earliest", daySaid(since->earliest(), facts)},
                            {"latest", daySaid(since->latest(), facts)},
                            {"p", figure(since->p)},
                            {"before", figure(since->before)},
                            {"after", figure(since->after)}};
    answer.say("since", {{"earliest", daySaid(since->earliest(), facts)},
                         {"latest", daySaid(since->latest(), facts)},
                         {"p", chanceShown(since->p)}});
}

Answer marginAnswer(const trending::MarginTrend& trend, const records::TrendFacts& facts, const ChartTyped& typed) {
    const auto speech = speechOf(typed.fahrenheit);
    Answer answer;
    answer.json = {{"kind", "margin"}, {"points", trend.episodes.size()}};
    answer.say("margin-points", {{"episodes", count(trend.episodes.size())},
                                 {"readings", std::to_string(trend.readings)},
                                 {"missed", std::to_string(trend.missed)}});
    if (trend.limits) {
        const auto& limits = *trend.limits;
        answer.json["limits"] = {{"lower_c", figure(limits.lower.celsius())},
                                 {"center_c", figure(limits.centre.celsius())},
                                 {"upper_c", figure(limits.upper.celsius())},
                                 {"sigma_c", figure(limits.sd.celsius())},
                                 {"episodes", limits.episodes}};
        answer.say("margin-limits", {{"centre", speech.figures.signedDifference(limits.centre)},
                                     {"lower", speech.figures.signedDifference(limits.lower)},
                                     {"upper", speech.figures.signedDifference(limits.upper)},
                                     {"episodes", count(limits.episodes)}});
    } else {
        answer.json["limits"] = refusalJson(trend.limits.error());
        answer.lines.push_back(refusalSaid(trend.limits.error()));
    }
    const auto chart = chartedOf(trend, facts);
    addSignals(answer, chart);
    addCaveats(answer, chart);
    addDrift(answer, trend.drift, speech);
    addSince(answer, trend.since, facts);
    if (typed.points) {
        answer.json["series"] = episodesJson(trend, facts);
    }
    return answer;
}

Charted chartedOf(const trending::FailureTrend& trend, const records::TrendFacts& facts) {
    Charted chart;
    chart.kind = "failures";
    for (const auto& week : trend.weeks) {
        chart.values.push_back(week.share.value_or(std::nan("")));
        chart.plotted.push_back(week.share ? 1 : 0);
        chart.labels.push_back(daySaid(week.begins, facts));
        chart.limits.push_back(week.limits.value_or(st::Limits{std::nan(""), std::nan(""), std::nan("")}));
    }
    st::Baseline base;
    base.kind = st::ChartKind::LaneyP;
    base.center = trend.usual.value_or(std::nan(""));
    base.dispersion = trend.dispersion;
    base.points = trend.weeks.size();
    base.caveats = trend.caveats;
    chart.baseline = base;
    for (const auto& signal : trend.alarms) {
        if (!signal.weeks.empty()) {
            chart.alarms.push_back({static_cast<int>(signal.rule), signal.side, signal.weeks, signal.weeks.back(), {}});
        }
    }
    return chart;
}

Answer failureAnswer(const trending::FailureTrend& trend, const records::TrendFacts& facts, const ChartTyped& typed) {
    Answer answer;
    answer.json = {{"kind", "failures"},
                   {"points", trend.weeks.size()},
                   {"lots", trend.lots},
                   {"failed", trend.failed},
                   {"usual", trend.usual ? figure(*trend.usual) : Json()},
                   {"dispersion", figure(trend.dispersion)}};
    answer.say("failure-points",
               {{"weeks", count(trend.weeks.size())}, {"lots", count(trend.lots)}, {"failed", count(trend.failed)}});
    if (trend.usual) {
        answer.say("failure-usual", {{"share", shown(100.0 * *trend.usual)}});
    } else {
        answer.json["why_not"] = nameOf(trend.usual.error().why);
        answer.lines.push_back(refusalSaid(trend.usual.error()));
    }
    const auto chart = chartedOf(trend, facts);
    addSignals(answer, chart);
    addCaveats(answer, chart);
    if (trend.readingRate) {
        answer.json["readings"] = {{"lowest", figure(trend.readingRate->lowest)},
                                   {"highest", figure(trend.readingRate->highest)},
                                   {"lower", figure(trend.readingRate->limits.lower)},
                                   {"upper", figure(trend.readingRate->limits.upper)},
                                   {"due", trend.readingRate->due}};
    } else {
        answer.json["readings"] = Json();
    }
    addSince(answer, trend.since, facts);
    if (typed.points) {
        answer.json["series"] = seriesJson(chart);
    }
    return answer;
}

} // namespace

int runBookChart(const ChartTyped& typed, const std::filesystem::path& data, const DrawingReady& ready,
                 std::ostream& out, std::ostream& err) {
    const auto book = readBook(data);
    if (!book) {
        return tell(book.error(), err);
    }
    const auto rules = rulesFrom(typed.rules);
    const auto filter = filterFrom({typed.dryer, typed.family, typed.from, typed.to}, book->facts);
    if (!filter || !rules) {
        return tell(
            tl::unexpected(!filter ? filter.error() : CommandFault{"rules-unreadable", {{"text", typed.rules}}}),
            typed.json, out, err);
    }
    Answer answer;
    Charted chart;
    if (typed.kind == "margin") {
        trending::MarginQuestion question;
        question.filter = *filter;
        question.rules = *rules;
        const auto trend = trending::marginTrend(book->facts, question);
        answer = marginAnswer(trend, book->facts, typed);
        chart = chartedOf(trend, book->facts);
    } else {
        trending::FailureQuestion question;
        question.filter = *filter;
        const auto trend = trending::failureTrend(book->facts, question);
        answer = failureAnswer(trend, book->facts, typed);
        chart = chartedOf(trend, book->facts);
    }
    if (!typed.picture.empty()) {
        const auto picture = pictureOf(chart, answer.lines.front(), said("axis." + typed.kind));
        if (const auto saved = savePicture(picture, typed.picture, ready); !saved) {
            return tell(tl::unexpected(saved.error()), typed.json, out, err);
        }
        answer.json["picture"] = typed.picture;
        answer.say("picture-written", {{"path", typed.picture}});
    }
    return tell(answer, typed.json, out, err);
}

} // namespace holdfast::kiosk::command
