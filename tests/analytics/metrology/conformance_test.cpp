#include "analytics/metrology/conformance.hpp"
#include "tests/analytics/metrology/instruments.hpp"

#include <boost/math/distributions/gamma.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;
using Catch::WithinAbs;

namespace {

Limits atLeastOnly(double low) {
    return {celsius(low), std::nullopt};
}
Limits atMostOnly(double high) {
    return {std::nullopt, celsius(high)};
}
Limits between(double low, double high) {
    return {celsius(low), celsius(high)};
}

double chance(double value, double u, const Limits& limits) {
    const auto probability = conformanceProbability(celsius(value), kelvins(u), limits);
    REQUIRE(probability);
    return probability->fraction();
}

/// Consumer's and producer's risk of a process with a known spread: JCGM 106:2012, clause 9, global risk.
struct GlobalRisk {
    double conforming;
    double consumer;
    double producer;
};

template <class Density>
GlobalRisk globalRisk(Density density, const Limits& limits, const Limits& acceptance, double u, double lowest,
                      double highest) {
    using Quadrature = boost::math::quadrature::gauss_kronrod<double, 61>;
    const auto accepted = [&](double x) {
        return conformanceProbability(celsius(x), kelvins(u), acceptance)->fraction();
    };
    const auto good = [&](auto f, double a, double b) { return a < b ? Quadrature::integrate(f, a, b, 15, 1e-12) : 0; };
    const double low = limits.lower ? limits.lower->celsius() : lowest;
    const double high = limits.upper ? limits.upper->celsius() : highest;
    const auto wrong = [&](double x) { return density(x) * accepted(x); };
    return {good(density, low, high), good(wrong, lowest, low) + good(wrong, high, highest),
            good([&](double x) { return density(x) * (1.0 - accepted(x)); }, low, high)};
}

} // namespace

TEST_CASE("conformance probability at one limit", "[metrology][conformance]") {
    // JCGM 106:2012, 7.3: estimate −5.47, u 0.05, upper limit −5.40, prints 0.92; digits from SciPy 1.10.1, norm.cdf.
    CHECK_THAT(chance(-5.47, 0.05, atMostOnly(-5.40)), WithinAbs(0.919243, 1e-6));
    // NIST/SEMATECH e-Handbook 1.3.6.7.1, cumulative normal distribution, five decimals.
    struct Cell {
        double z;
        double phi;
    };
    const auto cell =
        GENERATE(Cell{0.0, 0.50000}, Cell{0.5, 0.69146}, Cell{1.0, 0.84134}, Cell{1.28, 0.89973}, Cell{1.64, 0.94950},
                 Cell{1.65, 0.95053}, Cell{1.96, 0.97500}, Cell{2.0, 0.97725}, Cell{2.33, 0.99010}, Cell{3.0, 0.99865});
    CHECK_THAT(chance(160.0 + 2.0 * cell.z, 2.0, atLeastOnly(160.0)), WithinAbs(cell.phi, 5e-6));
    CHECK_THAT(chance(160.0 - 2.0 * cell.z, 2.0, atMostOnly(160.0)), WithinAbs(cell.phi, 5e-6));
    CHECK_THAT(chance(160.0 - 2.0 * cell.z, 2.0, atLeastOnly(160.0)), WithinAbs(1.0 - cell.phi, 5e-6));
}

TEST_CASE("conformance probability between two limits", "[metrology][conformance]") {
    // JCGM 106:2012, 7.4: interval 12.5 to 16.3, estimate 13.6, u 1.8, prints 0.66; digits from SciPy 1.10.1.
    CHECK_THAT(chance(13.6, 1.8, between(12.5, 16.3)), WithinAbs(0.662630, 1e-6));
    // The 68.27, 95.45 and 99.73 % of one, two and three standard deviations: JCGM 100:2008, Table G.1.
    CHECK_THAT(chance(160, 1, between(159, 161)), WithinAbs(0.6827, 5e-5));
    CHECK_THAT(chance(160, 1, between(158, 162)), WithinAbs(0.9545, 5e-5));
    CHECK_THAT(chance(160, 1, between(157, 163)), WithinAbs(0.9973, 5e-5));
}

TEST_CASE("z of the one-sided risks", "[metrology][conformance]") {
    // JCGM 106:2012, Table 1, probabilities 0.80, 0.90, 0.95, 0.99; digits from SciPy 1.10.1, norm.ppf.
    struct Cell {
        double percent;
        double z;
    };
    const auto cell = GENERATE(Cell{20, 0.84162}, Cell{10, 1.28155}, Cell{5, 1.64485}, Cell{1, 2.32635},
                               Cell{0.1, 3.09023}); // last: Python 3.11, NormalDist().inv_cdf(0.999)
    CHECK_THAT(GuardSetting{Probability::fromPercent(cell.percent)}.z(), WithinAbs(cell.z, 1e-5));
}

TEST_CASE("a value on its acceptance limit carries the risk the guard was made for", "[metrology][conformance]") {
    // ILAC-G8:09/2019, 4.2 and ISO 14253-1:2017: guard w = r·U with U = 2u; risks from SciPy 1.10.1, norm.sf(2r).
    struct Cell {
        double r;
        double risk;
        double printed;
    };
    const auto cell =
        GENERATE(Cell{0.0, 0.5, 1e-12}, Cell{0.83, 0.04846, 5e-6}, Cell{1.0, 0.02275, 5e-6}, Cell{3.0, 9.9e-10, 5e-12});
    const double u = 0.7;
    const auto guard = kelvins(cell.r * 2.0 * u);
    const auto zone = acceptanceLimits(between(150, 170), {guard, guard});
    REQUIRE(zone);
    CHECK_THAT(1.0 - chance(zone->lower->celsius(), u, atLeastOnly(150)), WithinAbs(cell.risk, cell.printed));
    CHECK_THAT(chance(zone->upper->celsius(), u, atLeastOnly(170)), WithinAbs(cell.risk, cell.printed));
    CHECK_THAT(chance(zone->lower->celsius(), u, atMostOnly(150)), WithinAbs(cell.risk, cell.printed));
}

TEST_CASE("the resistors of JCGM 106 are accepted and refused at the published risks", "[metrology][conformance]") {
    // JCGM 106:2012, clause 9, resistors: tolerance ±0.2, process 0.12, measurement 0.04; digits from SciPy 1.10.1,
    // quad.
    const auto process = [](double x) { return boost::math::pdf(boost::math::normal_distribution<>{0.0, 0.12}, x); };
    const auto limits = between(-0.2, 0.2);
    const auto simple = globalRisk(process, limits, limits, 0.04, -1.2, 1.2);
    CHECK_THAT(simple.conforming, WithinAbs(0.904419, 1e-6));
    CHECK_THAT(simple.consumer, WithinAbs(0.018942, 1e-6));
    CHECK_THAT(simple.producer, WithinAbs(0.037208, 1e-6));

    const auto zone = acceptanceLimits(limits, {kelvins(0.02), kelvins(0.02)});
    REQUIRE(zone);
    CHECK_THAT(zone->upper->celsius(), WithinAbs(0.18, 1e-12));
    const auto guarded = globalRisk(process, limits, *zone, 0.04, -1.2, 1.2);
    CHECK_THAT(guarded.consumer, WithinAbs(0.009878, 1e-6));
    CHECK_THAT(guarded.producer, WithinAbs(0.069027, 1e-6));
}

TEST_CASE("the ball bearings of JCGM 106 are accepted at the published risk", "[metrology][conformance]") {
    // JCGM 106:2012, clause 9, ball bearings: run-out gamma with shape 4 and scale 1/4, limit 2, u 0.25; digits from
    // SciPy 1.10.1, quad.
    const auto process = [](double x) { return boost::math::pdf(boost::math::gamma_distribution<>{4.0, 0.25}, x); };
    const auto limits = atMostOnly(2.0);
    const auto risk = globalRisk(process, limits, limits, 0.25, 0.0, 15.0);
    CHECK_THAT(1.0 - risk.conforming, WithinAbs(0.042380, 1e-6));
    CHECK_THAT(risk.consumer, WithinAbs(0.008019, 1e-6));
    CHECK_THAT(risk.producer, WithinAbs(0.017445, 1e-6));
}

TEST_CASE("between proven and refused lies a zone without a decision", "[metrology][conformance]") {
    // ISO 14253-1:2017, zones of limits 155 to 170 with U = 2: accepted 157 to 168, refused below 153 and above 172.
    const auto limits = between(155, 170);
    const Guards guards{kelvins(2), kelvins(2)};
    CHECK(decide(celsius(156.9), limits, guards) == Conformity::undecided);
    CHECK(decide(celsius(157.0), limits, guards) == Conformity::conforming);
    CHECK(decide(celsius(162.0), limits, guards) == Conformity::conforming);
    CHECK(decide(celsius(168.0), limits, guards) == Conformity::conforming);
    CHECK(decide(celsius(168.1), limits, guards) == Conformity::undecided);
    CHECK(decide(celsius(153.1), limits, guards) == Conformity::undecided);
    CHECK(decide(celsius(152.9), limits, guards) == Conformity::nonConforming);
    CHECK(decide(celsius(171.9), limits, guards) == Conformity::undecided);
    CHECK(decide(celsius(172.1), limits, guards) == Conformity::nonConforming);
    // decisions 0: equality counts as met, also for refusing.
    CHECK(decide(celsius(153.0), limits, guards) == Conformity::nonConforming);
    CHECK(decide(celsius(172.0), limits, guards) == Conformity::nonConforming);
}

TEST_CASE("acceptance limits vanish when the guards meet", "[metrology][conformance]") {
    const auto limits = between(155, 170);
    const auto single = acceptanceLimits(limits, {kelvins(7.5), kelvins(7.5)});
    REQUIRE(single);
    CHECK(*single->lower == *single->upper);
    CHECK_FALSE(acceptanceLimits(limits, {kelvins(7.5), kelvins(7.6)}));
    CHECK(decide(celsius(162.5), limits, {kelvins(8), kelvins(8)}) == Conformity::undecided);

    const auto open = acceptanceLimits(atLeastOnly(155), {kelvins(2), kelvins(kNan)});
    REQUIRE(open);
    CHECK(open->lower->celsius() == 157);
    CHECK_FALSE(open->upper);
}

TEST_CASE("shifting and scaling everything leaves the conformance probability", "[metrology][conformance]") {
    const double base = chance(157.3, 1.1, between(155, 159));
    for (const double shift : {-500.0, -1.0, 0.25, 1e4}) {
        CHECK_THAT(chance(157.3 + shift, 1.1, between(155 + shift, 159 + shift)), WithinAbs(base, 1e-9));
    }
    for (const double scale : {1e-3, 1.8, 1e3}) {
        CHECK_THAT(chance(157.3 * scale, 1.1 * scale, between(155 * scale, 159 * scale)), WithinAbs(base, 1e-9));
    }
}

TEST_CASE("a hotter value conforms better with a lower limit and worse with an upper", "[metrology][conformance]") {
    double below = -1.0;
    double above = 2.0;
    for (double value = 150; value <= 170; value += 0.1) {
        const double lower = chance(value, 1.3, atLeastOnly(160));
        const double upper = chance(value, 1.3, atMostOnly(160));
        REQUIRE(lower > below);
        REQUIRE(upper < above);
        REQUIRE_THAT(lower + upper, WithinAbs(1.0, 1e-12));
        below = lower;
        above = upper;
    }
}

TEST_CASE("without uncertainty a value conforms or it does not", "[metrology][conformance]") {
    CHECK(chance(160.0, 0.0, atLeastOnly(160)) == 1.0);
    CHECK(chance(160.0 - 1e-6, 0.0, atLeastOnly(160)) == 0.0);
    CHECK(chance(170.0, 0.0, between(160, 170)) == 1.0);
    CHECK(chance(170.1, 0.0, between(160, 170)) == 0.0);
    CHECK(chance(-1e6, 3.0, {}) == 1.0);
}

TEST_CASE("broken input has no conformance probability and decides nothing", "[metrology][conformance]") {
    const auto limits = between(155, 170);
    CHECK_FALSE(conformanceProbability(celsius(kNan), kelvins(1), limits));
    CHECK_FALSE(conformanceProbability(celsius(kInfinity), kelvins(1), limits));
    CHECK_FALSE(conformanceProbability(celsius(160), kelvins(kNan), limits));
    CHECK_FALSE(conformanceProbability(celsius(160), kelvins(kInfinity), limits));
    CHECK_FALSE(conformanceProbability(celsius(160), kelvins(-1), limits));
    CHECK_FALSE(conformanceProbability(celsius(160), kelvins(1), between(170, 155)));
    CHECK_FALSE(conformanceProbability(celsius(160), kelvins(1), atLeastOnly(kNan)));
    for (const double broken : {kNan, kInfinity, -kInfinity}) {
        CHECK(decide(celsius(broken), limits, {kelvins(1), kelvins(1)}) == Conformity::undecided);
    }
    for (const double guard : {kNan, kInfinity}) {
        CHECK(decide(celsius(162), limits, {kelvins(guard), kelvins(guard)}) == Conformity::undecided);
        CHECK(decide(celsius(0), limits, {kelvins(guard), kelvins(guard)}) == Conformity::undecided);
        CHECK_FALSE(acceptanceLimits(limits, {kelvins(guard), kelvins(1)}));
    }
}

TEST_CASE("a value far out in the tail keeps its digits", "[metrology][conformance]") {
    // Python 3.11, math.erfc(6/sqrt(2))/2 and math.erfc(8/sqrt(2))/2.
    CHECK_THAT(chance(154, 1, atLeastOnly(160)), WithinAbs(9.8659e-10, 5e-15));
    CHECK_THAT(chance(152, 1, between(160, 165)), WithinAbs(6.2210e-16, 5e-21));
    CHECK_THAT(chance(168, 1, between(155, 160)), WithinAbs(6.2210e-16, 5e-21));
}

TEST_CASE("only risks from 0.1 to 20 % may be set, and an impossible one proves nothing", "[metrology][conformance]") {
    // decisions 0.
    for (const double percent : {0.1, 1.0, 5.0, 20.0}) {
        CHECK(isAllowedRisk(Probability::fromPercent(percent)));
    }
    for (const double percent : {0.0, 0.0999, 20.001, 50.0, -5.0, 100.0, kNan}) {
        CHECK_FALSE(isAllowedRisk(Probability::fromPercent(percent)));
    }
    for (const double percent : {0.0, 50.0, 100.0, -5.0, kNan, kInfinity}) {
        CHECK(GuardSetting{Probability::fromPercent(percent)}.z() == kInfinity);
    }
    // A fifth of the smallest risk, as a retake needs it, still has its z: Python 3.11, NormalDist().inv_cdf(0.9998).
    CHECK_THAT(GuardSetting{Probability::fromPercent(0.02)}.z(), WithinAbs(3.5401, 5e-5));
}
