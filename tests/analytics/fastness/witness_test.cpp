#include "analytics/fastness/witness.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using Catch::WithinAbs;

namespace {

WitnessReading load(double good, double weak, bool byInstrument = true) {
    return {good, weak, byInstrument};
}

// NIST/SEMATECH e-Handbook 6.3.2.2, ten individuals, divided by 20 to lie on the grey scale.
const double kHandbook[] = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

std::vector<WitnessReading> handbookLoads() {
    std::vector<WitnessReading> loads;
    for (const double value : kHandbook)
        loads.push_back(load(value / 20.0, value / 20.0 - 1.0));
    return loads;
}
WitnessSettings ten() {
    WitnessSettings settings;
    settings.loadsToFreeze = 10;
    return settings;
}
LoadVerdict judged(const WitnessReading& reading, const WitnessLimits& limits) {
    const auto verdict = judgeLoad(reading, limits);
    REQUIRE(verdict);
    return *verdict;
}
WitnessLimits shopLimits() {
    return witnessLimits({}).value(); // good 4, weak 3: from memory
}

} // namespace

TEST_CASE("the chart's limits are those of individuals with moving range", "[fastness][witness]") {
    // NIST/SEMATECH e-Handbook 6.3.2.2: mean 50.81, MRbar 1.8778, UCL 55.8041, LCL 45.8159 (four places), over 20.
    const auto limits = witnessLimits(handbookLoads(), ten());
    REQUIRE(limits);
    CHECK(limits->goodAtLeast.origin == LimitOrigin::charted);
    CHECK(limits->goodAtLeast.loads == 10);
    CHECK_THAT(limits->goodAtLeast.value * 20.0, WithinAbs(45.8159, 0.00005));
    CHECK_THAT((limits->weakAtMost.value + 1.0) * 20.0, WithinAbs(55.8041, 0.00005));
}

TEST_CASE("before there are loads enough the shop's own limits hold", "[fastness][witness]") {
    CHECK(shopLimits().goodAtLeast.value == 4.0);
    CHECK(shopLimits().weakAtMost.value == 3.0);
    CHECK(shopLimits().goodAtLeast.origin == LimitOrigin::shop);
    CHECK(shopLimits().goodAtLeast.loads == 0);
    auto loads = handbookLoads();
    loads.pop_back();
    const auto limits = witnessLimits(loads, ten());
    CHECK(limits->goodAtLeast.origin == LimitOrigin::shop);
    CHECK(limits->goodAtLeast.loads == 9);
    CHECK(limits->goodAtLeast.value == 4.0);
    CHECK(witnessLimits(handbookLoads())->goodAtLeast.origin == LimitOrigin::shop); // twenty by default
}

TEST_CASE("frozen limits do not move with later loads", "[fastness][witness]") {
    auto loads = handbookLoads();
    const auto frozen = witnessLimits(loads, ten());
    loads.push_back(load(5.0, 1.0));
    loads.push_back(load(1.0, 5.0));
    const auto later = witnessLimits(loads, ten());
    CHECK(later->goodAtLeast.value == frozen->goodAtLeast.value);
    CHECK(later->weakAtMost.value == frozen->weakAtMost.value);
    CHECK(later->goodAtLeast.loads == 10);
}

TEST_CASE("grades by eye are ranked, not charted", "[fastness][witness]") {
    // Twenty loads alike: one more lies below all of them at a chance of at most 1/21 (Wilks 1941).
    std::vector<WitnessReading> loads(20, load(4.5, 2.0, false));
    loads[7] = load(4.0, 2.5, false);
    const auto limits = witnessLimits(loads).value();
    CHECK(limits.goodAtLeast.origin == LimitOrigin::ranked);
    CHECK(limits.goodAtLeast.value == 4.0);
    CHECK(limits.weakAtMost.value == 2.5);
    CHECK(limits.weakAtMost.loads == 20);
    CHECK(judged(load(4.0, 2.5, false), limits).state == LoadState::valid);
    CHECK(judged(load(3.5, 2.5, false), limits).reasons == std::vector{LoadReason::goodBelowLimit});
    CHECK(judged(load(4.0, 3.0, false), limits).reasons == std::vector{LoadReason::weakAboveLimit});
    loads.push_back(load(1.0, 5.0, false)); // frozen
    CHECK(witnessLimits(loads)->goodAtLeast.value == 4.0);
    loads.resize(19);
    CHECK(witnessLimits(loads)->goodAtLeast.origin == LimitOrigin::shop);
}

TEST_CASE("readings by an instrument go before grades by eye", "[fastness][witness]") {
    auto loads = handbookLoads();
    loads.insert(loads.begin(), 10, load(4.5, 2.0, false));
    CHECK(witnessLimits(loads, ten())->goodAtLeast.origin == LimitOrigin::charted);
    loads.pop_back();
    CHECK(witnessLimits(loads, ten())->goodAtLeast.origin == LimitOrigin::ranked);
}

TEST_CASE("a missing swatch is passed over by its own limit alone", "[fastness][witness]") {
    auto loads = handbookLoads();
    loads[3].weak.reset();
    CHECK(witnessLimits(loads, ten())->goodAtLeast.origin == LimitOrigin::charted);
    CHECK(witnessLimits(loads, ten())->weakAtMost.origin == LimitOrigin::shop);
    CHECK(witnessLimits(loads, ten())->weakAtMost.loads == 9);
}

TEST_CASE("a reading is taken to its half step where the limit is a grade", "[fastness][witness]") {
    // ISO 105-A05:1996, clause 8, rates on the numbers of the grades; half way the worse.
    CHECK(judged(load(3.9, 3.1), shopLimits()).state == LoadState::valid); // grades 4 and 3
    CHECK(judged(load(3.76, 3.25), shopLimits()).state == LoadState::valid);
    CHECK(judged(load(3.75, 2.0), shopLimits()).reasons == std::vector{LoadReason::goodBelowLimit});
    CHECK(judged(load(4.5, 3.26), shopLimits()).reasons == std::vector{LoadReason::weakAboveLimit});
    const auto charted = witnessLimits(handbookLoads(), ten()).value(); // good 2.2908, weak 1.7902
    CHECK(judged(load(2.5, 2.0, false), charted).state == LoadState::valid);
    CHECK(judged(load(2.0, 2.0, false), charted).reasons == std::vector{LoadReason::goodBelowLimit});
}

TEST_CASE("loads that all read alike have no width to chart", "[fastness][witness]") {
    const std::vector<WitnessReading> alike(12, load(4.6, 2.2));
    const auto limits = witnessLimits(alike, ten());
    CHECK(limits->goodAtLeast.origin == LimitOrigin::noSpread);
    CHECK(limits->goodAtLeast.value == 4.0);
}

TEST_CASE("a load with both witnesses inside their limits is valid", "[fastness][witness]") {
    const auto verdict = judged(load(4.5, 2.0), shopLimits());
    CHECK(verdict.state == LoadState::valid);
    CHECK(verdict.reasons.empty());
    CHECK(judged(load(4.0, 3.0), shopLimits()).state == LoadState::valid); // on the limit is inside
}

TEST_CASE("a harsh, a gentle and a mixed-up load are void, each for its reason", "[fastness][witness]") {
    using Reasons = std::vector<LoadReason>;
    const auto harsh = judged(load(3.5, 1.0), shopLimits());
    CHECK(harsh.state == LoadState::voided);
    CHECK(harsh.reasons == Reasons{LoadReason::goodBelowLimit});
    const auto gentle = judged(load(5.0, 3.5), shopLimits());
    CHECK(gentle.state == LoadState::voided);
    CHECK(gentle.reasons == Reasons{LoadReason::weakAboveLimit});
    const auto swapped = judged(load(2.0, 4.5), shopLimits());
    CHECK(swapped.state == LoadState::voided);
    CHECK(swapped.reasons ==
          Reasons{LoadReason::goodBelowLimit, LoadReason::weakAboveLimit, LoadReason::witnessesSwapped});
}

TEST_CASE("charted limits judge like the shop's", "[fastness][witness]") {
    const auto limits = witnessLimits(handbookLoads(), ten()).value(); // good 2.2908, weak 1.7902
    CHECK(judged(load(2.30, 1.78), limits).state == LoadState::valid);
    CHECK(judged(load(2.28, 1.78), limits).reasons == std::vector{LoadReason::goodBelowLimit});
    CHECK(judged(load(2.30, 1.80), limits).reasons == std::vector{LoadReason::weakAboveLimit});
    CHECK(judged(load(2.30, 1.80), limits).limits.weakAtMost.origin == LimitOrigin::charted);
}

TEST_CASE("a load without a witness is not shown valid, but may be shown void", "[fastness][witness]") {
    using Reasons = std::vector<LoadReason>;
    const auto noWeak = judged({4.5, std::nullopt, true}, shopLimits());
    CHECK(noWeak.state == LoadState::notShown);
    CHECK(noWeak.reasons == Reasons{LoadReason::weakMissing});
    const auto none = judged({}, shopLimits());
    CHECK(none.state == LoadState::notShown);
    CHECK(none.reasons == Reasons{LoadReason::goodMissing, LoadReason::weakMissing});
    const auto harsh = judged({2.0, std::nullopt, true}, shopLimits());
    CHECK(harsh.state == LoadState::voided);
    CHECK(harsh.reasons == Reasons{LoadReason::goodBelowLimit, LoadReason::weakMissing});
}

TEST_CASE("readings and settings off the scale are refused", "[fastness][witness][hostile]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double bad : {0.9, 5.1, nan, -3.0}) {
        CHECK(judgeLoad(load(bad, 2.0), shopLimits()).error() == WitnessFault::offScale);
        CHECK(judgeLoad(load(4.0, bad), shopLimits()).error() == WitnessFault::offScale);
        auto loads = handbookLoads();
        loads[5].good = bad;
        CHECK(witnessLimits(loads, ten()).error() == WitnessFault::offScale);
        WitnessSettings settings;
        settings.goodAtLeast = bad;
        CHECK(witnessLimits({}, settings).error() == WitnessFault::offScale);
    }
    WitnessSettings settings;
    settings.loadsToFreeze = kFewestLoads - 1;
    CHECK(witnessLimits({}, settings).error() == WitnessFault::tooFewToFreeze);
    settings = {};
    settings.goodAtLeast = 2.5;
    settings.weakAtMost = 3.0;
    CHECK(witnessLimits({}, settings).error() == WitnessFault::limitsContradict);
    auto limits = shopLimits();
    limits.goodAtLeast.value = nan;
    CHECK(judgeLoad(load(4.5, 2.0), limits).error() == WitnessFault::offScale);
}
