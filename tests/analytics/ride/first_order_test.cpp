#include "analytics/cure/ride/first_order.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics;

namespace {

Temperature celsius(double t) {
    return Temperature::fromCelsius(t);
}

std::vector<CurvePoint> points(const std::vector<double>& times, const std::vector<double>& values) {
    std::vector<CurvePoint> result;
    for (std::size_t i = 0; i < times.size(); ++i) {
        result.push_back({Duration{times[i]}, celsius(values[i])});
    }
    return result;
}

std::vector<CurvePoint> along(const FirstOrderCurve& curve, double end, double step) {
    std::vector<CurvePoint> result;
    for (int i = 0; i * step <= end + 1e-9; ++i) {
        result.push_back({Duration{i * step}, curve.at(Duration{i * step})});
    }
    return result;
}

constexpr Probability k95 = Probability::fromFraction(0.95);

} // namespace

TEST_CASE("a first-order lag has gone 63.2, 86.5 and 95.0 % of a step after one, two and three time constants",
          "[ride]") {
    // Step response of a first-order system: any control handbook, three digits.
    const FirstOrderCurve curve{celsius(100.0), celsius(0.0), Duration{18.0}};
    CHECK(curve.at(Duration{0.0}).celsius() == 0.0);
    CHECK(curve.at(Duration{18.0}).celsius() == Approx(63.2).margin(0.05));
    CHECK(curve.at(Duration{36.0}).celsius() == Approx(86.5).margin(0.05));
    CHECK(curve.at(Duration{54.0}).celsius() == Approx(95.0).margin(0.05));
    // The tangent at the start meets the end value at one time constant (the same handbooks).
    CHECK(curve.rate().celsiusPerSecond() * 18.0 == Approx(100.0));
}

TEST_CASE("a curve tells when it passes a temperature, and that it never passes its air", "[ride]") {
    const FirstOrderCurve curve{celsius(180.0), celsius(30.0), Duration{20.0}};
    for (const double t : {-3.0, 0.0, 7.0, 55.0}) {
        CHECK(curve.timeOf(curve.at(Duration{t}))->count() == Approx(t).margin(1e-9));
    }
    CHECK_FALSE(curve.timeOf(celsius(180.0)));
    CHECK_FALSE(curve.timeOf(celsius(181.0)));
    CHECK_FALSE(FirstOrderCurve{celsius(30.0), celsius(30.0), Duration{20.0}}.timeOf(celsius(30.0)));
}

TEST_CASE("the certified fit of NIST's Misra1a is found", "[ride]") {
    // NIST StRD, nonlinear regression, Misra1a (lower difficulty): y = b1·(1 − e^(−b2·x)); data and certified values
    // from memory. air = b1, τ = 1/b2, sd(τ) = sd(b2)/b2².
    const auto problem = FirstOrderProblem::of(
        points({77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0},
               {10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78}),
        celsius(0.0));
    REQUIRE(problem);
    const auto fit = problem->fit();
    REQUIRE(fit);
    const double b2 = 1.0 / fit->curve.tau.count();
    CHECK(fit->curve.air.celsius() == Approx(2.3894212918E+02).epsilon(1e-10));
    CHECK(b2 == Approx(5.5015643181E-04).epsilon(1e-10));
    CHECK(fit->airError.celsius() == Approx(2.7070075241E+00).epsilon(1e-8));
    CHECK(fit->tauError.count() * b2 * b2 == Approx(7.2668688436E-06).epsilon(1e-8));
    CHECK(fit->spread.celsius() == Approx(1.0187876330E-01).epsilon(1e-9));
    CHECK(fit->freedom == 12);
}

TEST_CASE("the certified fit of NIST's BoxBOD is found", "[ride]") {
    // NIST StRD, nonlinear regression, BoxBOD (higher difficulty); data and certified values from memory, data and
    // standard deviations compared with a public copy of them in another library's tests.
    const auto problem =
        FirstOrderProblem::of(points({1, 2, 3, 5, 7, 10}, {109, 149, 149, 191, 213, 224}), celsius(0.0));
    REQUIRE(problem);
    const auto fit = problem->fit();
    REQUIRE(fit);
    const double b2 = 1.0 / fit->curve.tau.count();
    CHECK(fit->curve.air.celsius() == Approx(2.1380940889E+02).epsilon(1e-10));
    CHECK(b2 == Approx(5.4723748542E-01).epsilon(1e-10));
    CHECK(fit->airError.celsius() == Approx(1.2354515176E+01).epsilon(1e-8));
    CHECK(fit->tauError.count() * b2 * b2 == Approx(1.0455993237E-01).epsilon(1e-8));
    CHECK(fit->spread.celsius() == Approx(1.7088072423E+01).epsilon(1e-9));
}

TEST_CASE("the fit of a growth curve with a start of its own is R's", "[ride]") {
    // R, datasets::Loblolly, seed 329, and summary(nls(height ~ SSasymp(age, Asym, R0, lrc))) as printed by R's help
    // example of SSasymp; from memory. τ = e^(−lrc), sd(τ) = τ·sd(lrc).
    const auto problem =
        FirstOrderProblem::of(points({3, 5, 10, 15, 20, 25}, {3.93, 9.34, 26.08, 37.79, 48.31, 56.43}));
    REQUIRE(problem);
    const auto fit = problem->fit();
    REQUIRE(fit);
    CHECK(fit->curve.air.celsius() == Approx(94.1282).margin(0.00005));
    CHECK(fit->curve.start.celsius() == Approx(-8.2508).margin(0.00005));
    CHECK(-std::log(fit->curve.tau.count()) == Approx(-3.2176).margin(0.00005));
    CHECK(fit->airError.celsius() == Approx(8.4030).margin(0.00005));
    CHECK(fit->startError.celsius() == Approx(1.2261).margin(0.00005));
    CHECK(fit->tauError / fit->curve.tau == Approx(0.1386).margin(0.00005));
    CHECK(fit->spread.celsius() == Approx(0.7493).margin(0.00005));
    CHECK(fit->freedom == 3);
}

TEST_CASE("noise-free curves are recovered whatever their time constant", "[ride]") {
    std::mt19937 engine{11};
    for (int i = 0; i < 200; ++i) {
        std::uniform_real_distribution<double> tau{3.0, 60.0};
        std::uniform_real_distribution<double> air{130.0, 260.0};
        std::uniform_real_distribution<double> start{15.0, 45.0};
        const FirstOrderCurve truth{celsius(air(engine)), celsius(start(engine)), Duration{tau(engine)}};
        const auto problem = FirstOrderProblem::of(along(truth, 45.0, 0.25));
        REQUIRE(problem);
        const auto fit = problem->fit();
        REQUIRE(fit);
        CHECK(fit->curve.tau.count() == Approx(truth.tau.count()).epsilon(1e-9));
        CHECK(fit->curve.air.celsius() == Approx(truth.air.celsius()).epsilon(1e-9));
        CHECK(fit->curve.start.celsius() == Approx(truth.start.celsius()).epsilon(1e-8));
        CHECK(fit->spread.celsius() < 1e-9);
    }
}

TEST_CASE("the fit moves with the data: shifted, stretched, in other seconds", "[ride]") {
    const auto data = points({0, 2, 5, 9, 14, 20, 30, 41}, {31, 46, 69, 91, 113, 128, 150, 160});
    const auto base = FirstOrderProblem::of(data)->fit();
    REQUIRE(base);
    auto moved = data;
    for (auto& point : moved) {
        point.at = point.at * 3.0;
        point.t = celsius(2.0 * point.t.celsius() - 17.0);
    }
    const auto fit = FirstOrderProblem::of(moved)->fit();
    REQUIRE(fit);
    CHECK(fit->curve.tau.count() == Approx(3.0 * base->curve.tau.count()).epsilon(1e-9));
    CHECK(fit->curve.air.celsius() == Approx(2.0 * base->curve.air.celsius() - 17.0).epsilon(1e-9));
    CHECK(fit->airError.celsius() == Approx(2.0 * base->airError.celsius()).epsilon(1e-8));
    CHECK(fit->tauError.count() == Approx(3.0 * base->tauError.count()).epsilon(1e-8));
}

TEST_CASE("likelihood limits hold the truth as often as they say", "[ride]") {
    std::mt19937 engine{2026};
    std::normal_distribution<double> noise{0.0, 1.0};
    const FirstOrderCurve truth{celsius(185.0), celsius(35.0), Duration{18.0}};
    const auto clean = along(truth, 36.0, 0.5);
    constexpr int kRides = 1000;
    int tauHeld = 0;
    int airHeld = 0;
    for (int i = 0; i < kRides; ++i) {
        auto data = clean;
        for (auto& point : data) {
            point.t = point.t + TemperatureDifference::fromCelsius(noise(engine));
        }
        const auto problem = FirstOrderProblem::of(data);
        const auto fit = problem->fit();
        REQUIRE(fit);
        const auto limits = problem->limits(*fit, k95);
        REQUIRE((limits.shortest && limits.longest && limits.airLow && limits.airHigh));
        tauHeld += limits.shortest->tau <= truth.tau && truth.tau <= limits.longest->tau ? 1 : 0;
        airHeld += *limits.airLow <= truth.air && truth.air <= *limits.airHigh ? 1 : 0;
    }
    // 95 % of 1000 is 950; the count has a standard deviation of √(1000 × 0.95 × 0.05) = 6.9: ± 3 of them.
    CHECK(tauHeld > 929);
    CHECK(tauHeld < 971);
    CHECK(airHeld > 929);
    CHECK(airHeld < 971);
}

TEST_CASE("limits lie on both sides of the fit, wider for more confidence and for residuals alike in succession",
          "[ride]") {
    const auto problem =
        FirstOrderProblem::of(points({0, 2, 5, 9, 14, 20, 30, 41}, {31, 46, 69, 91, 113, 128, 150, 160}));
    const auto fit = problem->fit();
    REQUIRE(fit);
    const auto usual = problem->limits(*fit, k95);
    const auto surer = problem->limits(*fit, Probability::fromFraction(0.99));
    const auto alike = problem->limits(*fit, k95, 3.0);
    CHECK(usual.shortest->tau < fit->curve.tau);
    CHECK(usual.longest->tau > fit->curve.tau);
    CHECK(*usual.airLow < fit->curve.air);
    CHECK(*usual.airHigh > fit->curve.air);
    CHECK(surer.shortest->tau < usual.shortest->tau);
    CHECK(surer.longest->tau > usual.longest->tau);
    CHECK(alike.longest->tau > usual.longest->tau);
    CHECK(*alike.airHigh > *usual.airHigh);
    // For small errors likelihood limits are ± t·sd; Student's t of 5 degrees of freedom at 95 % is 2.571 (any table).
    CHECK((usual.longest->tau - usual.shortest->tau) / fit->tauError == Approx(2 * 2.571).epsilon(0.05));
}

TEST_CASE("a straight line has no upper limit to its time constant", "[ride]") {
    std::mt19937 engine{5};
    std::normal_distribution<double> noise{0.0, 0.3};
    std::vector<CurvePoint> data;
    for (int i = 0; i < 40; ++i) {
        data.push_back({Duration{i * 0.5}, celsius(30.0 + 3.0 * i * 0.5 + noise(engine))});
    }
    const auto problem = FirstOrderProblem::of(data);
    REQUIRE(problem);
    const auto fit = problem->fit();
    if (fit) {
        const auto limits = problem->limits(*fit, k95);
        CHECK_FALSE(limits.longest);
        CHECK_FALSE(limits.airHigh);
    } else {
        CHECK(fit.error() == CurveFault::noTimeConstant);
    }
}

TEST_CASE("data that no curve can be fitted to are refused by name", "[ride]") {
    const double nan = std::nan("");
    const auto fault = [](const std::vector<CurvePoint>& data, std::optional<Temperature> start = {}) {
        const auto problem = FirstOrderProblem::of(data, start);
        return problem ? std::optional<CurveFault>{} : problem.error();
    };
    CHECK(fault({}) == CurveFault::tooFewPoints);
    CHECK(fault(points({0}, {30})) == CurveFault::tooFewPoints);
    CHECK(fault(points({0, 1, 2}, {30, 40, 50})) == CurveFault::tooFewPoints);
    CHECK_FALSE(fault(points({0, 1, 2}, {30, 40, 50}), celsius(30)));
    CHECK(fault(points({0, 1, 2, 3}, {30, nan, 50, 60})) == CurveFault::notFinite);
    CHECK(fault(points({0, 1, nan, 3}, {30, 40, 50, 60})) == CurveFault::notFinite);
    CHECK(fault(points({0, 1, 2, 3}, {30, 40, 50, 60}), celsius(nan)) == CurveFault::notFinite);
    CHECK(fault(points({0, 2, 1, 3}, {30, 40, 50, 60})) == CurveFault::timesNotRising);
    CHECK(fault(points({1, 1, 1, 1}, {30, 40, 50, 60})) == CurveFault::timesNotRising);
    CHECK(fault(points({0, 1, 2, 3}, {30, 30, 30, 30})) == CurveFault::level);
    // A step from one level to another: shorter than any time constant that these times could show.
    const auto step = FirstOrderProblem::of(points({0, 1, 2, 3, 4, 5}, {30, 90, 90, 90, 90, 90}));
    REQUIRE(step);
    CHECK_FALSE(step->fit());
}
