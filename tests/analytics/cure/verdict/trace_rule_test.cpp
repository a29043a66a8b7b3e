#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;
using namespace ride;

namespace {

/// The trace without the samples between two times, ends kept.
RawTrace without(RawTrace trace, double from, double to) {
    auto& samples = trace.samples;
    samples.erase(std::remove_if(samples.begin(), samples.end(),
                                 [&](const TraceSample& sample) {
                                     const double at = static_cast<double>(sample.at.count()) / 1e6;
                                     return at > from && at < to;
                                 }),
                  samples.end());
    return trace;
}

/// Everything from here on was stamped this much earlier.
RawTrace clockBack(RawTrace trace, double from, double seconds) {
    for (auto& sample : trace.samples) {
        if (static_cast<double>(sample.at.count()) / 1e6 >= from) {
            sample.at -= std::chrono::microseconds{std::llround(seconds * 1e6)};
        }
    }
    return trace;
}

const double kTop = 10.0 + (168.0 - 25.0) / 3.0; ///< when trapezoid(168) gets to its plateau

} // namespace

TEST_CASE("a trace that has not fallen by 20 °C is never cured", "[cure][verdict]") {
    const auto run = plan({family(160.0)});
    const auto cut = [&](double last) {
        return judge(run, along({{0.0, 25.0}, {10.0, 25.0}, {57.0, 168.0}, {61.0, 168.0}, {68.0, last}}));
    };
    CHECK(wordOf(cut(148.1)) == "not proven");
    CHECK(says(cut(148.1), ReasonCode::notFallenBeforeEnd));
    CHECK_FALSE(cut(148.1).margin);
    CHECK(wordOf(cut(148.0)) == "cured");
    CHECK(wordOf(judge(plan({family(190.0)}), along({{0.0, 25.0}, {10.0, 25.0}, {57.0, 168.0}, {68.0, 149.0}}))) ==
          "not proven"); // nor under-cured
}

TEST_CASE("a recording cut off or stopped by hand is never cured, but may be under-cured", "[cure][verdict]") {
    const auto run = plan({family(160.0)});
    for (const bool byHand : {true, false}) {
        auto hot = trapezoid(168.0);
        auto cold = trapezoid(150.0);
        (byHand ? hot.stoppedByHand : hot.cutOff) = true;
        (byHand ? cold.stoppedByHand : cold.cutOff) = true;
        CHECK(wordOf(judge(run, hot)) == "not proven");
        CHECK(says(judge(run, hot), byHand ? ReasonCode::stoppedByHand : ReasonCode::cutOff));
        CHECK(wordOf(judge(run, cold)) == "under-cured");
    }
}

TEST_CASE("samples more than 5 s apart could not prove anything", "[cure][verdict]") {
    const auto verdict = judge(plan({family(160.0)}), trapezoid(168.0, 60.0, 5.5));
    CHECK(wordOf(verdict) == "not proven");
    CHECK_FALSE(verdict.couldProve);
    CHECK(verdict.reasons.front().code == ReasonCode::tooFewSamplesPerSecond);
    CHECK(advises(verdict, Remedy::sampleFaster));
}

TEST_CASE("a recording that starts hot is neither cured nor under-cured, overheated stands", "[cure][verdict]") {
    const auto from45 = [](double peak) {
        return along({{0.0, 45.0}, {10.0, 45.0}, {60.0, peak}, {64.0, peak}, {110.0, 40.0}});
    };
    const auto run = plan({family(160.0)}, ceilings(180.0));
    CHECK(wordOf(judge(run, from45(168.0))) == "not proven");
    CHECK(wordOf(judge(run, from45(150.0))) == "not proven");
    CHECK(wordOf(judge(run, from45(185.0))) == "overheated");
    CHECK(says(judge(run, from45(168.0)), ReasonCode::startsHot));
    CHECK(advises(judge(run, from45(168.0)), Remedy::answerUnit));
    auto answered = from45(168.0);
    answered.unitConfirmed = true; // 60 °C from then on
    CHECK(wordOf(judge(run, answered)) == "cured");
}

TEST_CASE("no pass seen is refused unless a print is known to have gone through", "[cure][verdict]") {
    const auto cold = along({{0.0, 25.0}, {10.0, 25.0}, {20.0, 70.0}, {30.0, 30.0}});
    const auto refused = judge(plan({family(160.0)}), cold);
    CHECK(wordOf(refused) == "refused");
    CHECK(says(refused, ReasonCode::noPassSeen));
    CHECK(refused.reasons.front().value->celsius() == Approx(70.0));
    ReadingContext known;
    known.printKnownToHavePassed = true;
    const auto verdict = judge(plan({family(160.0), family(140.0, 30.0)}), cold, inDate(), {}, known);
    CHECK(wordOf(verdict) == "under-cured");
    CHECK(verdict.layers[1].word == Word::underCured);
    CHECK(wordOf(judge(plan({family(160.0)}), RawTrace{}, inDate(), {}, known)) == "refused");
}

TEST_CASE("a gap over the peak hides it from both sides", "[cure][verdict]") {
    // 6 s missing around a peak of 155: hidden top (T1 + T2 + 15·6)/2 is 40 °C above the ends
    const auto run = plan({family(160.0)});
    const double top = 10.0 + (155.0 - 25.0) / 3.0;
    const auto verdict = judge(run, without(trapezoid(155.0), top - 1.0, top + 5.0));
    CHECK(wordOf(verdict) == "not proven");
    CHECK(says(verdict, ReasonCode::gapHidesTop));
    CHECK(advises(verdict, Remedy::leadClearOfBelt));
    // and from the ceiling: 165 is cured below 190 − 2.85 without the gap
    const auto hot = plan({family(150.0)}, ceilings(190.0));
    CHECK(wordOf(judge(hot, trapezoid(165.0, 14.0))) == "cured");
    const double shoulder = 10.0 + (165.0 - 25.0) / 3.0 + 5.0;
    CHECK(wordOf(judge(hot, without(trapezoid(165.0, 14.0), shoulder, shoulder + 6.0))) == "not proven");
}

TEST_CASE("a gap in a hold adds nothing for cured and everything for under-cured", "[cure][verdict]") {
    // 166 °C for 84 s: 84 + 2·3.151/3 = 86.1 s at 162.85. 10 s missing: 76.1 s seen surely, 84 + 5.9 = 89.9 s possible.
    const auto missing = without(trapezoid(166.0, 84.0), 80.0, 90.0);
    CHECK(wordOf(judge(plan({family(160.0, 75.0)}), missing)) == "cured");
    CHECK(wordOf(judge(plan({family(160.0, 80.0)}), missing)) == "not proven");
    CHECK(wordOf(judge(plan({family(160.0, 89.0)}), missing)) == "not proven");
    CHECK(wordOf(judge(plan({family(160.0, 91.0)}), missing)) == "under-cured");
    auto unbroken = family(160.0, 60.0);
    unbroken.unbroken = true; // the spell does not run across: 40 s at most seen in one piece
    CHECK(wordOf(judge(plan({unbroken}), missing)) == "not proven");
    unbroken.hold = Duration{91.0};
    CHECK(wordOf(judge(plan({unbroken}), missing)) == "under-cured");
    unbroken.hold = Duration{40.0};
    CHECK(wordOf(judge(plan({unbroken}), missing)) == "cured");
}

TEST_CASE("a gap in a dose counts whole at its hidden top", "[cure][verdict]") {
    // generous dose without the gap 28.5 s of 30; 6 s unseen at up to 205 °C are worth far more
    const auto run = plan({familyWithPairs()});
    const auto full = trapezoid(160.0, 30.0, 1.0 / 3.0);
    CHECK(wordOf(judge(run, full)) == "under-cured");
    CHECK(wordOf(judge(run, without(full, 60.0, 66.0))) == "not proven");
}

TEST_CASE("a gap after the fall only ends the trace", "[cure][verdict]") {
    const double fallen = kTop + 4.0 + 40.0 / 3.0; // 128 °C
    const auto missing = without(trapezoid(168.0), fallen, fallen + 6.0);
    CHECK(wordOf(judge(plan({family(160.0)}, ceilings(172.0)), missing)) ==
          wordOf(judge(plan({family(160.0)}, ceilings(172.0)), trapezoid(168.0))));
}

TEST_CASE("a jump proves nothing at all", "[cure][verdict]") {
    auto trace = trapezoid(168.0, 20.0);
    for (auto& sample : trace.samples) {
        if (static_cast<double>(sample.at.count()) / 1e6 >= kTop + 8.0) {
            sample.indicated = sample.indicated + degrees(60.0);
        }
    }
    const auto verdict = judge(plan({family(160.0)}, ceilings(180.0)), trace);
    CHECK(wordOf(verdict) == "not proven");
    CHECK(says(verdict, ReasonCode::jump));
}

TEST_CASE("what lies before a clock fault may show overheated, never under-cured", "[cure][verdict]") {
    const auto run = plan({family(160.0)}, ceilings(175.0));
    const auto hot = judge(run, clockBack(trapezoid(180.0, 10.0), 10.0 + 155.0 / 3.0 + 6.0, 3.0));
    CHECK(wordOf(hot) == "overheated");
    const auto cold = judge(run, clockBack(trapezoid(150.0, 10.0), 10.0 + 125.0 / 3.0 + 6.0, 3.0));
    CHECK(wordOf(cold) == "not proven");
    CHECK(says(cold, ReasonCode::clockFault));
    const auto between = judge(run, clockBack(trapezoid(168.0, 10.0), kTop + 6.0, 3.0));
    CHECK(wordOf(between) == "not proven"); // not fallen before the fault
    CHECK(between.layers.front().word == Word::cured);
}

TEST_CASE("a clock fault after the fall, with heat behind it, is never cured", "[cure][verdict]") {
    // decisions 3.6: broken, since a later valid sample lies above L − g; how long it was hot across the fault is
    // unknown
    auto trace = trapezoid(168.0, 10.0);
    const auto again = trapezoid(168.0, 10.0);
    const auto fallen = std::find_if(trace.samples.begin(), trace.samples.end(), [](const TraceSample& sample) {
        return static_cast<double>(sample.at.count()) / 1e6 > kTop + 10.0 + 40.0 / 3.0;
    });
    REQUIRE(fallen != trace.samples.end());
    trace.samples.erase(fallen, trace.samples.end());
    const auto back = trace.samples.back();
    for (const auto& sample : again.samples) {
        if (std::fabs((sample.indicated - back.indicated).celsius()) < 3.0 || sample.indicated > back.indicated) {
            trace.samples.push_back({sample.at - std::chrono::seconds{30}, sample.indicated, false});
        }
    }
    const auto verdict = judge(plan({family(160.0)}), trace);
    CHECK(wordOf(verdict) == "not proven");
    CHECK(says(verdict, ReasonCode::clockFault));
}

TEST_CASE("a second pass is a reading of its own", "[cure][verdict]") {
    auto trace = trapezoid(168.0);
    const auto offset = trace.samples.back().at + std::chrono::milliseconds{500};
    for (const auto& sample : trapezoid(150.0).samples) {
        trace.samples.push_back({sample.at + offset, sample.indicated, false});
    }
    const auto verdicts = judgeRecording(plan({family(160.0)}), trace, inDate());
    REQUIRE(verdicts.size() == 2);
    CHECK(wordOf(verdicts[0]) == "cured");
    CHECK(wordOf(verdicts[1]) == "under-cured");
    CHECK(says(verdicts[1], ReasonCode::secondPass));
}

TEST_CASE("dropped samples are counted among the reasons", "[cure][verdict]") {
    auto trace = trapezoid(168.0);
    trace.samples[5].flagged = true;
    trace.samples[9].indicated = Temperature::fromCelsius(std::nan(""));
    const auto verdict = judge(plan({family(160.0)}), trace);
    CHECK(wordOf(verdict) == "cured");
    CHECK(reasonOf(verdict, ReasonCode::samplesDropped).count == 2);
}
