#include "analytics/fastness/colour.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics;
using Catch::WithinAbs;

namespace {

struct PublishedPair {
    int number;
    Lab first;
    Lab second;
    double difference;
};

// Sharma, Wu and Dalal, The CIEDE2000 Color-Difference Formula: Implementation Notes, Supplementary Test Data, and
// Mathematical Observations, Color Res. Appl. 30 (2005), Table 1, all 34 pairs; as printed, and as in the test data of
// scikit-image 0.19.3 (Debian 12, skimage/color/tests/ciede2000_test_data.txt).
const PublishedPair kPublished[] = {
    {1, {50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
    {2, {50, 3.1571, -77.2803}, {50, 0, -82.7485}, 2.8615},
    {3, {50, 2.8361, -74.02}, {50, 0, -82.7485}, 3.4412},
    {4, {50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1.0000},
    {5, {50, -1.1848, -84.8006}, {50, 0, -82.7485}, 1.0000},
    {6, {50, -0.9009, -85.5211}, {50, 0, -82.7485}, 1.0000},
    {7, {50, 0, 0}, {50, -1, 2}, 2.3669},
    {8, {50, -1, 2}, {50, 0, 0}, 2.3669},
    {9, {50, 2.49, -0.001}, {50, -2.49, 0.0009}, 7.1792},
    {10, {50, 2.49, -0.001}, {50, -2.49, 0.001}, 7.1792},
    {11, {50, 2.49, -0.001}, {50, -2.49, 0.0011}, 7.2195},
    {12, {50, 2.49, -0.001}, {50, -2.49, 0.0012}, 7.2195},
    {13, {50, -0.001, 2.49}, {50, 0.0009, -2.49}, 4.8045},
    {14, {50, -0.001, 2.49}, {50, 0.001, -2.49}, 4.8045},
    {15, {50, -0.001, 2.49}, {50, 0.0011, -2.49}, 4.7461},
    {16, {50, 2.5, 0}, {50, 0, -2.5}, 4.3065},
    {17, {50, 2.5, 0}, {73, 25, -18}, 27.1492},
    {18, {50, 2.5, 0}, {61, -5, 29}, 22.8977},
    {19, {50, 2.5, 0}, {56, -27, -3}, 31.9030},
    {20, {50, 2.5, 0}, {58, 24, 15}, 19.4535},
    {21, {50, 2.5, 0}, {50, 3.1736, 0.5854}, 1.0000},
    {22, {50, 2.5, 0}, {50, 3.2972, 0}, 1.0000},
    {23, {50, 2.5, 0}, {50, 1.8634, 0.5757}, 1.0000},
    {24, {50, 2.5, 0}, {50, 3.2592, 0.335}, 1.0000},
    {25, {60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
    {26, {63.0109, -31.0961, -5.8663}, {62.8187, -29.7946, -4.0864}, 1.2630},
    {27, {61.2901, 3.7196, -5.3901}, {61.4292, 2.248, -4.962}, 1.8731},
    {28, {35.0831, -44.1164, 3.7933}, {35.0232, -40.0716, 1.5901}, 1.8645},
    {29, {22.7233, 20.0904, -46.694}, {23.0331, 14.973, -42.5619}, 2.0373},
    {30, {36.4612, 47.858, 18.3852}, {36.2715, 50.5065, 21.2231}, 1.4146},
    {31, {90.8027, -2.0831, 1.441}, {91.1528, -1.6435, 0.0447}, 1.4441},
    {32, {90.9257, -0.5406, -0.9208}, {88.6381, -0.8985, -0.7239}, 1.5381},
    {33, {6.7747, -0.2908, -2.4247}, {5.8714, -0.0985, -2.2286}, 0.6377},
    {34, {2.0776, 0.0795, -1.135}, {0.9033, -0.0636, -0.5514}, 0.9082},
};

Lab turned(double chroma, double degrees) {
    const double angle = degrees * 3.14159265358979323846 / 180.0;
    return {50.0, chroma * std::cos(angle), chroma * std::sin(angle)};
}

} // namespace

TEST_CASE("every published pair has its published difference, both ways round", "[fastness][colour]") {
    for (const auto& pair : kPublished) {
        CAPTURE(pair.number);
        const auto there = ciede2000(pair.first, pair.second);
        const auto back = ciede2000(pair.second, pair.first);
        REQUIRE(there);
        REQUIRE(back);
        CHECK_THAT(*there, WithinAbs(pair.difference, 0.00005)); // printed to four places
        CHECK_THAT(*back, WithinAbs(*there, 1e-12));
    }
}

TEST_CASE("the factors for lightness, chroma and hue act on their own part", "[fastness][colour]") {
    // python3-colormath 3.0.0 with numpy 1.24.2 (Debian 12; numpy.asscalar = lambda a: a.item() put back):
    // colormath.color_diff.delta_e_cie2000(LabColor(*first), LabColor(*second), Kl=.., Kc=.., Kh=..), six places.
    struct Row {
        Lab first;
        Lab second;
        DifferenceWeights weights;
        double difference;
    };
    const Row rows[] = {{{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, {2, 1, 1}, 1.254819},
                        {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, {1, 2, 1}, 1.085810},
                        {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, {1, 1, 2}, 0.918504},
                        {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, {2, 2, 2}, 0.632210},
                        {{50, 2.5, 0}, {73, 25, -18}, {2, 1, 1}, 21.038597},
                        {{50, 2.5, 0}, {73, 25, -18}, {1, 2, 1}, 22.123549},
                        {{50, 2.5, 0}, {73, 25, -18}, {1, 1, 2}, 26.950927},
                        {{40, 5, -40}, {44, 3, -35}, {1, 1, 1}, 3.798067},
                        {{40, 5, -40}, {44, 3, -35}, {2, 1, 1}, 2.143118},
                        {{40, 5, -40}, {44, 3, -35}, {1, 2, 1}, 3.671926},
                        {{40, 5, -40}, {44, 3, -35}, {1, 1, 2}, 3.911099},
                        {{92, 0.5, 2}, {86, 9, 5}, {1, 1, 1}, 10.581896},
                        {{92, 0.5, 2}, {86, 9, 5}, {2, 1, 1}, 10.058690},
                        {{20, 1, -3}, {26, 0, -1}, {1, 1, 1}, 4.864660},
                        {{20, 1, -3}, {26, 0, -1}, {2, 2, 2}, 2.432330}};
    for (const auto& row : rows) {
        const auto difference = ciede2000(row.first, row.second, row.weights);
        REQUIRE(difference);
        CHECK_THAT(*difference, WithinAbs(row.difference, 0.0000005));
    }
}

TEST_CASE("white and black are a hundred apart", "[fastness][colour]") {
    // ICC HDR working group, Summer 2020, reference data of the formula: 100.0; and three more rows of it.
    CHECK_THAT(*ciede2000({100, 0, 0}, {0, 0, 0}), WithinAbs(100.0, 0.05));
    CHECK_THAT(*ciede2000({84.25, 5.74, 96.0}, {84.46, 8.88, 96.49}), WithinAbs(1.6743, 0.00005));
    CHECK_THAT(*ciede2000({84.25, 5.74, 96.0}, {84.52, 5.75, 93.09}), WithinAbs(0.5887, 0.00005));
    CHECK_THAT(*ciede2000({84.25, 5.74, 96.0}, {84.37, 5.86, 99.42}), WithinAbs(0.6395, 0.00005));
}

TEST_CASE("rounding of two opposite hues never chooses the branch", "[fastness][colour]") {
    for (int angle = 0; angle < 180; ++angle) {
        for (const double chroma : {0.37, 2.49, 20.0, 77.7}) {
            CAPTURE(angle, chroma);
            const Lab one = turned(chroma, angle);
            const Lab opposite{one.l, -one.a, -one.b};
            const Lab justUnder = turned(chroma, angle + 180.0 - 1e-5); // on the side where the mean is a plain half
            CHECK_THAT(*ciede2000(one, opposite), WithinAbs(*ciede2000(one, justUnder), 1e-4));
            CHECK_THAT(*ciede2000(opposite, one), WithinAbs(*ciede2000(one, opposite), 1e-12));
        }
    }
}

TEST_CASE("CIEDE2000 is symmetric, never negative, and zero only for the same colour", "[fastness][colour]") {
    std::mt19937_64 random{20260101};
    std::uniform_real_distribution<double> lightness{0.0, 100.0};
    std::uniform_real_distribution<double> chromatic{-kLargestChromatic, kLargestChromatic};
    for (int i = 0; i < 2000; ++i) {
        const Lab x{lightness(random), chromatic(random), chromatic(random)};
        const Lab y{lightness(random), chromatic(random), chromatic(random)};
        const double there = *ciede2000(x, y);
        if (!(there > 0.0) || std::abs(there - *ciede2000(y, x)) > 1e-9 || *ciede2000(x, x) != 0.0) {
            CAPTURE(x.l, x.a, x.b, y.l, y.a, y.b, there);
            FAIL("not a difference");
        }
    }
    CHECK(*ciede2000({0, 0, 0}, {0, 0, 0}) == 0.0);
}

TEST_CASE("weights that cannot divide are refused", "[fastness][colour]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double bad : {0.0, -1.0, nan, std::numeric_limits<double>::infinity()}) {
        CHECK(ciede2000({50, 0, 0}, {51, 0, 0}, {bad, 1, 1}).error() == ColourFault::settingInvalid);
        CHECK(ciede2000({50, 0, 0}, {51, 0, 0}, {1, bad, 1}).error() == ColourFault::settingInvalid);
        CHECK(ciede2000({50, 0, 0}, {51, 0, 0}, {1, 1, bad}).error() == ColourFault::settingInvalid);
    }
}
