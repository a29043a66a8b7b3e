#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;
using namespace ride;

namespace {

Verdict of(Word word, bool couldProve = true) {
    Verdict verdict;
    verdict.word = word;
    verdict.couldProve = couldProve;
    return verdict;
}

PeakRange range(std::optional<double> low, std::optional<double> high, bool strip) {
    PeakRange peak;
    peak.fromStrip = strip;
    if (low) {
        peak.low = celsius(*low);
    }
    if (high) {
        peak.high = celsius(*high);
    }
    return peak;
}

} // namespace

TEST_CASE("between readings the first word of the order wins, whatever the order of the readings", "[cure][join]") {
    // decisions 4: under-cured, overheated, not proven, cured
    const Word order[] = {Word::underCured, Word::overheated, Word::notProven, Word::cured};
    for (int i = 0; i < 4; ++i) {
        for (int j = 0; j < 4; ++j) {
            const auto joined = joinReadings({of(order[i]), of(order[j])});
            CHECK(joined.word == order[std::min(i, j)]);
        }
    }
}

TEST_CASE("readings that could not prove or were refused are left out", "[cure][join]") {
    const auto incapable = of(Word::notProven, false);
    CHECK(joinReadings({incapable, of(Word::cured)}).word == Word::cured);
    CHECK(joinReadings({of(Word::refused), of(Word::cured)}).word == Word::cured);
    CHECK(joinReadings({incapable, of(Word::underCured)}).word == Word::underCured);
    CHECK(joinReadings({of(Word::overheated, false), of(Word::cured)}).word == Word::overheated);
    CHECK(joinReadings({incapable, of(Word::refused)}).word == Word::notProven);
    CHECK_FALSE(joinReadings({incapable}).couldProve);
    CHECK(joinReadings({of(Word::refused)}).word == Word::refused);
    CHECK(joinReadings({}).word == Word::notProven);
    CHECK_FALSE(joinReadings({}).couldProve);
}

TEST_CASE("the other readings' words are named among the reasons", "[cure][join]") {
    auto cool = of(Word::underCured);
    cool.reasons.emplace_back();
    cool.reasons.back().code = ReasonCode::belowCure;
    auto hot = of(Word::overheated);
    hot.reasons.emplace_back();
    hot.reasons.back().code = ReasonCode::aboveHardCeiling;
    const auto joined = joinReadings({hot, cool});
    CHECK(joined.reasons.front().code == ReasonCode::belowCure);
    CHECK(says(joined, ReasonCode::aboveHardCeiling));
}

TEST_CASE("a strip and a probe that share no temperature disagree", "[cure][join]") {
    CHECK(excludeEachOther(range(150.0, 160.0, true), range(160.1, 170.0, false)));
    CHECK(excludeEachOther(range(140.0, 149.9, false), range(150.0, 160.0, true)));
    CHECK_FALSE(excludeEachOther(range(150.0, 160.0, true), range(160.0, 170.0, false)));
    CHECK_FALSE(excludeEachOther(range(150.0, std::nullopt, true), range(160.0, 170.0, false)));
    CHECK(excludeEachOther(range(std::nullopt, 150.0, true), range(160.0, 170.0, false)));
    CHECK_FALSE(excludeEachOther(range(100.0, 110.0, false), range(160.0, 170.0, false)));

    auto probeReading = of(Word::cured);
    probeReading.peakRange = range(162.0, 170.0, false);
    auto stripReading = of(Word::notProven, false);
    stripReading.peakRange = range(140.0, 150.0, true);
    const auto joined = joinReadings({probeReading, stripReading});
    CHECK(joined.word == Word::cured);
    REQUIRE(says(joined, ReasonCode::readingsDisagree));
    CHECK(advises(joined, Remedy::checkInstrument));
}

TEST_CASE("a probe's range is its peak give or take 2 u", "[cure][join]") {
    // u = 1.7320508 (ride.hpp): 168 ± 3.4641016
    const auto verdict = judge(plan({family(160.0)}), trapezoid(168.0));
    REQUIRE(verdict.peakRange);
    CHECK(verdict.peakRange->low->celsius() == Approx(164.5358984));
    CHECK(verdict.peakRange->high->celsius() == Approx(171.4641016));
}

TEST_CASE("a bleed that one counted reading does not rule out is not ruled out", "[cure][join]") {
    auto near = of(Word::cured);
    near.bleedNotRuledOut = true;
    near.bleedWatchDue = true;
    const auto joined = joinReadings({of(Word::cured), near});
    CHECK(joined.bleedNotRuledOut);
    CHECK(joined.bleedWatchDue);
}
