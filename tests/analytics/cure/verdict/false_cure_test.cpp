#include "analytics/cure/dose.hpp"
#include "analytics/cure/hold_level.hpp"
#include "tests/analytics/cure/verdict/simulated_ride.hpp"

#include <catch2/catch.hpp>

#include <functional>

// Rides whose true margin is 0, read with errors drawn from the instrument's own uncertainty, are called cured in 5 %
// at the most: of 2000, 100 + 3·√(2000 × 0.05 × 0.95) = 129.2, so not more than 130.

using namespace holdfast::analytics;
using namespace ride;

namespace {

constexpr int kRides = 2000;
constexpr int kMost = 130;
constexpr int kLeast = 70; ///< three standard errors below: the rule is not merely deaf

using TrueMargin = std::function<double(const Pass&)>;

/// The hot part of a ride moved until its true margin is 0.
double shiftToZero(const Hump& hump, double step, const TrueMargin& margin) {
    double shift = 0.0;
    for (int i = 0; i < 40; ++i) {
        const auto pass = cleanRecording(sampled(hump, step, shift), nullptr).passes.front();
        const double now = margin(pass);
        shift -= now;
        if (std::abs(now) < 1e-7) {
            break;
        }
    }
    return shift;
}

/// How many of kRides rides with true margin 0 are called cured. `guarded`: where the layer's guard is taken.
int falselyCured(const RunPlan& run, double guarded, const TrueMargin& margin, unsigned seed) {
    std::mt19937 engine{seed};
    std::normal_distribution<double> normal;
    const auto calibration = inDate();
    const auto u = calibration.uncertaintyAt(celsius(guarded));
    int cured = 0;
    for (int i = 0; i < kRides; ++i) {
        Hump hump = randomHump(engine);
        hump.level = 162.0;
        const double step = randomStep(engine);
        const double truth = shiftToZero(hump, step, margin);
        const double error = u.common.celsius() * normal(engine) + u.random.celsius() * normal(engine);
        cured += judge(run, sampled(hump, step, truth + error), calibration).word == Word::cured;
    }
    return cured;
}

void checkShare(int cured) {
    INFO("called cured: " << cured << " of " << kRides);
    CHECK(cured <= kMost);
    CHECK(cured >= kLeast);
}

} // namespace

TEST_CASE("rides that sustain exactly the cure temperature are called cured in 5 %", "[cure][property]") {
    checkShare(falselyCured(
        plan({family(160.0)}), 160.0, [](const Pass& pass) { return sustainedPeak(pass)->t.celsius() - 160.0; }, 11U));
}

TEST_CASE("rides that hold exactly long enough are called cured in 5 %", "[cure][property]") {
    const auto margin = [](const Pass& pass) {
        return highestLevelKept(pass, Duration{25.0}, {celsius(900.0), false})->celsius() - 155.0;
    };
    checkShare(falselyCured(plan({family(155.0, 25.0)}), 155.0, margin, 12U));
}

TEST_CASE("rides that hold exactly long enough without a break are called cured in 5 %", "[cure][property]") {
    auto ink = family(155.0, 25.0);
    ink.unbroken = true;
    const auto margin = [](const Pass& pass) {
        return highestLevelKept(pass, Duration{25.0}, {celsius(900.0), false})->celsius() - 155.0;
    };
    checkShare(falselyCured(plan({ink}), 155.0, margin, 13U)); // a single hump: one spell either way
}

TEST_CASE("rides with exactly the dose are called cured in 5 %", "[cure][property]") {
    const EqualCureLaw law{*familyWithPairs().pairs};
    const auto margin = [&](const Pass& pass) { return law.margin(pass, degrees(900.0), false)->celsius(); };
    checkShare(falselyCured(plan({familyWithPairs()}), 165.0, margin, 14U));
}

TEST_CASE("strips on films that peak exactly at the cure temperature are called cured in 5 % at most",
          "[cure][property]") {
    // The label sees the peak plus its placement error, each step darkens within its tolerance.
    Instrument label;
    label.kind = InstrumentKind::strip;
    label.strip = StripSteps{};
    for (double f = 270.0; f <= 330.0; f += 5.0) {
        label.strip->steps.push_back(Temperature::fromFahrenheit(f));
    }
    label.strip->tolerance = TemperatureDifference::fromFahrenheit(2.0);
    const auto strip = inDate(label);
    const auto& steps = label.strip->steps;
    std::mt19937 engine{15U};
    std::normal_distribution<double> placement{0.0, 1.5};
    std::uniform_real_distribution<double> tolerance{-label.strip->tolerance.celsius(),
                                                     label.strip->tolerance.celsius()};
    int cured = 0;
    for (int i = 0; i < kRides; ++i) {
        const double cure = std::uniform_real_distribution<double>{140.0, 150.0}(engine);
        const double seen = cure + placement(engine);
        StripReading reading;
        for (std::size_t k = 0; k < steps.size(); ++k) {
            const bool dark = seen >= steps[k].celsius() + tolerance(engine);
            if (dark) {
                reading.lastDark = k;
            } else if (!reading.firstLight) {
                reading.firstLight = k;
            }
        }
        if (reading.lastDark && reading.firstLight && *reading.lastDark > *reading.firstLight) {
            continue; // refused as out of order
        }
        cured += judgeStrip(plan({family(cure)}), reading, strip).word == Word::cured;
    }
    INFO("called cured: " << cured);
    CHECK(cured <= kMost);
}
