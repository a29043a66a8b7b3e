#include "analytics/fastness/colour_direction.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <random>
#include <vector>

using namespace holdfast::analytics;
using Catch::WithinAbs;

namespace {

RepeatReadings lightnesses(std::initializer_list<double> values) {
    RepeatReadings readings;
    for (const double value : values)
        readings.push_back({value, 3.0, -4.0});
    return readings;
}

/// NIST StRD one-way analysis of variance, data set SiRstv: five instruments, five readings each, less 100.
std::vector<RepeatReadings> resistivities() {
    return {lightnesses({96.3052, 96.1240, 96.1890, 96.2569, 96.3403}),
            lightnesses({96.3042, 96.3825, 96.1669, 96.3257, 96.0422}),
            lightnesses({96.1303, 96.2005, 96.2889, 96.0343, 96.1811}),
            lightnesses({96.2795, 96.1748, 96.1494, 96.1485, 95.9885}),
            lightnesses({96.2119, 96.1051, 96.1850, 96.0052, 96.2090})};
}

ChangeLimitRequest request(std::size_t freedoms, double total = 1.0) {
    ChangeLimitRequest result;
    result.spread = {total, freedoms};
    return result;
}

/// Share of pairs of readings of one colour that lie farther apart than the limit learnt from eight repeats.
double falseAlarms(double sl, double sa, double sb) {
    std::mt19937_64 random{7};
    std::normal_distribution<double> z;
    const auto read = [&] { return Lab{50 + sl * z(random), 20 + sa * z(random), -10 + sb * z(random)}; };
    constexpr int kTrials = 20000;
    int beyond = 0;
    for (int i = 0; i < kTrials; ++i) {
        RepeatReadings repeats(9);
        for (auto& reading : repeats)
            reading = read();
        ChangeLimitRequest asked;
        asked.spread = *repeatSpread({&repeats, 1});
        asked.step = 0.0;
        beyond += *cielabDifference(read(), read()) > *changeLimit(asked) ? 1 : 0;
    }
    return static_cast<double>(beyond) / kTrials;
}

} // namespace

TEST_CASE("the spread of repeats is pooled over the spots", "[fastness][direction]") {
    // NIST StRD, SiRstv, certified residual standard deviation 1.04076068334656E-01, within degrees of freedom 20.
    const auto spots = resistivities();
    const auto spread = repeatSpread(spots);
    REQUIRE(spread);
    CHECK(spread->freedoms == 20);
    CHECK_THAT(spread->total, WithinAbs(0.104076068334656, 1e-12));
}

TEST_CASE("the spreads of the three axes add as squares", "[fastness][direction]") {
    const RepeatReadings plain = resistivities()[0];
    RepeatReadings turned;
    for (const auto& reading : plain)
        turned.push_back({50, reading.l - 60, 80 - 2 * (reading.l - 60)}); // same readings, once in a*, twice in b*
    const double one = repeatSpread({&plain, 1})->total;
    CHECK_THAT(repeatSpread({&turned, 1})->total, WithinAbs(one * std::sqrt(5.0), 1e-12));
}

TEST_CASE("a spot read once says nothing about spread", "[fastness][direction]") {
    auto spots = resistivities();
    spots.push_back(lightnesses({20}));
    spots.push_back({});
    CHECK(repeatSpread(spots)->freedoms == 20);
    CHECK_THAT(repeatSpread(spots)->total, WithinAbs(0.104076068334656, 1e-12));
}

TEST_CASE("too few repeats give no spread", "[fastness][direction][hostile]") {
    CHECK(repeatSpread({}).error() == RepeatFault::tooFewRepeats);
    const std::vector<RepeatReadings> once{lightnesses({1}), lightnesses({2}), lightnesses({3})};
    CHECK(repeatSpread(once).error() == RepeatFault::tooFewRepeats);
    const std::vector<RepeatReadings> four{lightnesses({1, 2, 3, 4})};
    CHECK(repeatSpread(four).error() == RepeatFault::tooFewRepeats); // three degrees of freedom
    const std::vector<RepeatReadings> five{lightnesses({1, 2, 3, 4, 5})};
    CHECK(repeatSpread(five)->freedoms == kFewestFreedoms);
    auto bad = resistivities();
    bad[2][1].a = std::numeric_limits<double>::quiet_NaN();
    CHECK(repeatSpread(bad).error() == RepeatFault::invalidColour);
}

TEST_CASE("the limit is Student's t times the spread of a difference", "[fastness][direction]") {
    // NIST/SEMATECH e-Handbook 1.3.6.7.2, upper critical values of t, column 0.975 (three places), times √2.
    const struct {
        std::size_t freedoms;
        double t;
    } rows[] = {{4, 2.776}, {5, 2.571}, {8, 2.306}, {10, 2.228}, {20, 2.086}, {30, 2.042}, {100, 1.984}};
    for (const auto& row : rows)
        CHECK_THAT(*changeLimit(request(row.freedoms)) / std::sqrt(2.0), WithinAbs(row.t, 0.0005));
    auto looser = request(10);
    looser.risk = Probability::fromPercent(10);
    CHECK_THAT(*changeLimit(looser) / std::sqrt(2.0), WithinAbs(1.812, 0.0005)); // column 0.95
    looser.risk = Probability::fromPercent(1);
    CHECK_THAT(*changeLimit(looser) / std::sqrt(2.0), WithinAbs(3.169, 0.0005)); // column 0.995
}

TEST_CASE("averaged readings are limited by their own spread", "[fastness][direction]") {
    auto asked = request(10, 0.3);
    const double single = *changeLimit(asked);
    asked.referenceReadings = 4;
    asked.sampleReadings = 4;
    CHECK_THAT(*changeLimit(asked), WithinAbs(single / 2.0, 1e-12)); // √(1/4 + 1/4) = √2/2
    asked.referenceReadings = 0;
    asked.sampleReadings = 0;
    CHECK_THAT(*changeLimit(asked), WithinAbs(single, 1e-12));
}

TEST_CASE("repeats that all read alike are limited by the display's own step", "[fastness][direction]") {
    // JCGM 100:2008, F.2.2.1: step/√12 in each of three figures, √3·0.1/√12 = 0.05.
    auto asked = request(10, 0.0);
    asked.step = 0.1;
    CHECK_THAT(*changeLimit(asked), WithinAbs(2.228 * 0.05 * std::sqrt(2.0), 0.0005 * 0.05 * std::sqrt(2.0)));
}

TEST_CASE("what is no spread or no risk is refused", "[fastness][direction][hostile]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(changeLimit(request(3)).error() == RepeatFault::tooFewRepeats);
    CHECK(changeLimit(request(0)).error() == RepeatFault::tooFewRepeats);
    CHECK(changeLimit(request(10, -0.1)).error() == RepeatFault::spreadInvalid);
    CHECK(changeLimit(request(10, nan)).error() == RepeatFault::spreadInvalid);
    auto asked = request(10);
    asked.step = -1;
    CHECK(changeLimit(asked).error() == RepeatFault::spreadInvalid);
    asked.step = 0.01;
    for (const double percent : {0.0, 0.05, 20.1, 100.0, nan}) { // decisions 0: 0.1 to 20 %
        asked.risk = Probability::fromPercent(percent);
        CHECK(changeLimit(asked).error() == RepeatFault::riskInvalid);
    }
}

TEST_CASE("the same colour is called changed no oftener than the risk, however its spread lies",
          "[fastness][direction]") {
    // Székely and Bakirov, Probab. Theory Relat. Fields 126 (2003): of Gaussian quadratic forms with the same mean the
    // one along a single line has the heaviest tail, up to a risk of 21.5 %. 20 000 trials: 5 % ± 0.46 % (three sigma).
    CHECK_THAT(falseAlarms(0.2, 0.0, 0.0), WithinAbs(0.05, 0.0046));
    CHECK(falseAlarms(0.2, 0.2, 0.2) < 0.05);
    CHECK(falseAlarms(0.3, 0.1, 0.05) < 0.0546);
    CHECK(falseAlarms(0.0, 0.2, 0.2) < 0.05);
}
