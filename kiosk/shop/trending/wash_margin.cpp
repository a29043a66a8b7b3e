#include "kiosk/shop/trending/wash_margin.hpp"

#include "analytics/statistics/models/margin_survival.hpp"
#include "kiosk/shop/trending/episodes.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;
using analytics::TemperatureDifference;
using records::TestKind;
using records::TestOutcome;

/// Mean of the drawn readings that are no strips, by lot.
std::map<FactIndex, double> marginsOf(const TrendFacts& facts, const Filtered& filtered) {
    std::map<FactIndex, std::pair<double, int>> sums;
    for (const auto& reading : facts.readings) {
        const bool counts = isDrawn(reading.reason) && !reading.isStrip && reading.lot != kNoFact &&
                            reading.margin.low && reading.margin.low->isFinite();
        if (counts && filtered.holds(reading)) {
            auto& [sum, count] = sums[reading.lot];
            sum += reading.margin.low->celsius();
            ++count;
        }
    }
    std::map<FactIndex, double> margins;
    for (const auto& [lot, sum] : sums) {
        margins.emplace(lot, sum.first / sum.second);
    }
    return margins;
}

/// By print: whether it failed in any wash or passed the last one. What is still under way says nothing yet.
std::map<FactIndex, bool> washedOf(const TrendFacts& facts) {
    std::map<FactIndex, bool> held;
    for (const auto& test : facts.tests) {
        if (test.kind != TestKind::wash || test.print == kNoFact) {
            continue;
        }
        if (test.counts == TestOutcome::failed) {
            held[test.print] = false;
        } else if (test.counts == TestOutcome::passed) {
            held.emplace(test.print, true);
        }
    }
    return held;
}

Refusal ruleOf(const WashMargin& said) {
    if (said.failed < kWashEvents) {
        return {NoFigure::tooFewFailures, said.failed, kWashEvents};
    }
    if (said.held < kWashEvents) {
        return {NoFigure::tooFewSurvivals, said.held, kWashEvents};
    }
    return said.lotsFailed < kWashLots ? Refusal{NoFigure::tooFewFailedLots, said.lotsFailed, kWashLots}
                                       : Refusal{NoFigure::tooFewHeldLots, said.lotsHeld, kWashLots};
}

std::optional<TemperatureDifference> kelvins(const std::optional<double>& value) {
    return value ? std::optional{TemperatureDifference::fromCelsius(*value)} : std::nullopt;
}

void takeCurve(const std::vector<st::MarginTest>& tests, WashMargin& said) {
    const auto fit = st::survivalByMargin(tests);
    if (!fit) {
        said.curve = tl::unexpected(refusalOf(fit.error(), static_cast<std::int64_t>(tests.size())));
        return;
    }
    const auto& slope = fit->coefficients[1];
    WashCurve curve;
    curve.intercept = fit->coefficients[0].estimate;
    curve.aKelvin = slope.estimate;
    curve.aKelvinLow = slope.lower.value_or(slope.estimate);
    curve.aKelvinHigh = slope.upper.value_or(slope.estimate);
    said.curve = curve;
    said.offerCureLadder = !(curve.aKelvinLow > 0.0);
    for (const double share : {0.95, 0.99}) {
        const auto value = st::marginForChance(tests, share);
        if (value && value->rises && curve.aKelvinLow > 0.0) {
            said.margins.push_back({share, TemperatureDifference::fromCelsius(value->value), kelvins(value->lower),
                                    kelvins(value->upper), value->extrapolated});
        }
    }
}

} // namespace

double WashCurve::holdsAt(TemperatureDifference margin) const noexcept {
    return 1.0 / (1.0 + std::exp(-(intercept + aKelvin * margin.celsius())));
}

WashMargin washMargin(const TrendFacts& facts, const TrendFilter& filter) {
    const Filtered filtered{facts, filter};
    const auto margins = marginsOf(facts, filtered);
    WashMargin said;
    std::vector<st::MarginTest> tests;
    for (const auto& [print, held] : washedOf(facts)) {
        const auto& of = facts.prints[static_cast<std::size_t>(print)];
        const auto margin = margins.find(of.lot);
        if (margin == margins.end() || !filtered.holds(facts.lots[static_cast<std::size_t>(of.lot)])) {
            continue;
        }
        said.points.push_back({print, of.lot, of.run, TemperatureDifference::fromCelsius(margin->second), held});
        tests.push_back({margin->second, held, of.lot});
    }
    const auto counts = st::countSurvival(tests);
    said.failed = static_cast<std::int64_t>(counts.failures);
    said.held = static_cast<std::int64_t>(counts.survivals);
    said.lotsFailed = static_cast<std::int64_t>(counts.failureLots);
    said.lotsHeld = static_cast<std::int64_t>(counts.survivalLots);
    if (counts.allowMargin()) {
        takeCurve(tests, said);
    } else {
        said.curve = tl::unexpected(ruleOf(said));
    }
    return said;
}

} // namespace holdfast::kiosk::shop::trending
