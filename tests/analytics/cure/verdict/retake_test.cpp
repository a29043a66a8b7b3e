#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace holdfast::analytics;
using namespace ride;

namespace {

Verdict retaken(const RunPlan& run, double first, double second) {
    return judgeRetake(run, judge(run, trapezoid(first)), judge(run, trapezoid(second)), inDate());
}

} // namespace

TEST_CASE("a retake is judged on the mean margin at a stricter risk", "[cure][retake]") {
    // decisions 4: u² = c² + r²/2 = 0.75 + 2.25/2 = 1.875, u = 1.3693064; z(1 − 0.05/5) = 2.3263479 (JCGM 106 Table 1:
    // 2.326); needed 3.1854830
    const auto run = plan({family(160.0)});
    const auto passed = retaken(run, 162.0, 164.38); // mean 3.19
    CHECK(wordOf(passed) == "cured");
    CHECK(passed.margin->low->celsius() == Approx(3.19));
    CHECK(passed.guard.celsius() == Approx(3.1854830).epsilon(1e-6));
    CHECK(passed.reasons.front().code == ReasonCode::retakePassed);
    const auto failed = retaken(run, 162.0, 164.36); // mean 3.18, although the second alone is cured
    CHECK(wordOf(failed) == "not proven");
    CHECK(failed.reasons.front().code == ReasonCode::retakeUsedUp);
}

TEST_CASE("a retake asks every layer and both ceilings", "[cure][retake]") {
    const auto layers = plan({family(160.0), family(161.0)});
    CHECK(wordOf(retaken(layers, 162.0, 164.38)) == "not proven");
    CHECK(wordOf(retaken(layers, 162.0, 166.38)) == "cured"); // means 4.19 and 3.19
    // H = 168: kept to 165.151. The first kept it, the second did not.
    const auto close = plan({family(160.0)}, ceilings(168.0));
    CHECK(wordOf(retaken(close, 162.0, 165.2)) == "not proven");
    CHECK(wordOf(retaken(close, 162.0, 165.1)) == "cured");
    // the first one lacked the ceiling, not the cure: a retake does not mend it
    CHECK(wordOf(retaken(close, 165.5, 164.0)) == "not proven");
}

TEST_CASE("under-cured and overheated are never replaced", "[cure][retake]") {
    const auto run = plan({family(160.0)}, ceilings(180.0));
    CHECK(wordOf(retaken(run, 150.0, 170.0)) == "under-cured");
    CHECK(wordOf(retaken(run, 162.0, 150.0)) == "under-cured");
    CHECK(wordOf(retaken(run, 162.0, 185.0)) == "overheated");
    CHECK(wordOf(retaken(run, 168.0, 162.0)) == "not proven"); // nothing was to be retaken: joined
}

TEST_CASE("a reading without a margin does not use up the retake", "[cure][retake]") {
    const auto run = plan({family(160.0)});
    const auto first = judge(run, trapezoid(162.0));
    const auto incomplete = judge(run, along({{0.0, 25.0}, {10.0, 25.0}, {57.0, 168.0}, {60.0, 168.0}}));
    const auto still = judgeRetake(run, first, incomplete, inDate());
    CHECK(wordOf(still) == "not proven");
    CHECK_FALSE(says(still, ReasonCode::retakeUsedUp));
    CHECK(wordOf(judgeRetake(run, incomplete, judge(run, trapezoid(168.0)), inDate())) == "cured");
}

TEST_CASE("a bad bucket stays bad in a retake", "[cure][retake]") {
    auto run = plan({family(160.0)});
    run.layers.front().bucketTrouble = BucketTrouble{"K7F", BucketFault::expired};
    CHECK(wordOf(retaken(run, 168.0, 168.0)) == "not proven");
}

TEST_CASE("at exactly L one reading passes in 5 %, the better of two in 10 %, a retake in 5.4 %", "[cure][retake]") {
    // decisions 4, Retake. Every error random (two equal certificates of no uncertainty), u = 1.5 °C; the readings
    // enter as verdicts with their margins. 40 000 pairs, fixed seed; three standard errors of a share p are
    // 3·√(p(1 − p)/40000): 0.33 % at 5 %, 0.45 % at 9.75 %.
    const std::vector<CalibrationPoint> points{{celsius(150.0), {}, degrees(1e-9)},
                                               {celsius(170.0), {}, degrees(1e-9)}};
    auto instrument = probe();
    instrument.certificates.push_back({today(), today() + std::chrono::days{90}, 2.0, points});
    instrument.certificates.push_back({today() - std::chrono::days{300}, today() - std::chrono::days{1}, 2.0, points});
    const auto exact = inDate(instrument);
    REQUIRE(exact.uncertaintyAt(celsius(160.0)).ofMean().celsius() == Approx(1.5));
    const double guard = exact.guardAt(celsius(160.0)).celsius();
    const auto run = plan({family(160.0)});
    const auto reading = [&](double margin) {
        auto verdict = judge(run, trapezoid(160.0), exact);
        verdict.word = margin >= guard ? Word::cured : margin <= -guard ? Word::underCured : Word::notProven;
        verdict.layers.front().margin = MarginRange{degrees(margin), degrees(margin)};
        verdict.margin = verdict.layers.front().margin;
        return verdict;
    };
    std::mt19937 engine{20260302U};
    std::normal_distribution<double> error{0.0, 1.5};
    constexpr int kPairs = 40000;
    int one = 0;
    int best = 0;
    int retake = 0;
    const auto blank = reading(0.0);
    for (int i = 0; i < kPairs; ++i) {
        const double first = error(engine);
        const double second = error(engine);
        one += first >= guard;
        best += first >= guard || second >= guard;
        if (first >= guard) {
            ++retake;
        } else if (first > -guard && first + second > 0.0) { // a mean below 0 cannot pass
            auto a = blank;
            auto b = blank;
            a.layers.front().margin = MarginRange{degrees(first), degrees(first)};
            b.layers.front().margin = MarginRange{degrees(second), degrees(second)};
            retake += second > -guard && judgeRetake(run, a, b, exact).word == Word::cured;
        }
    }
    CHECK(100.0 * one / kPairs == Approx(5.0).margin(0.33));
    CHECK(100.0 * best / kPairs == Approx(10.0).margin(0.45 + 0.25)); // 9.75, printed as 10
    CHECK(100.0 * retake / kPairs == Approx(5.4).margin(0.34));
}
