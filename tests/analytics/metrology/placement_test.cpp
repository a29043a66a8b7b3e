#include "analytics/metrology/placement.hpp"

#include "tests/analytics/metrology/instruments.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;
using Catch::WithinAbs;

TEST_CASE("placement has starter settings the shop's own rides replace", "[metrology][placement]") {
    // decisions 2, from memory: wet ink 1.5, taped 3, in or under cloth 4, gun 3 °C; strip and spot as the probe there.
    auto instrument = classOneProbe();
    for (const auto kind : {InstrumentKind::probe, InstrumentKind::spot, InstrumentKind::strip}) {
        instrument.kind = kind;
        instrument.placement = Placement::wetInk;
        CHECK(placementOf(instrument) == kelvins(1.5));
        instrument.placement = Placement::tapedOnFilm;
        CHECK(placementOf(instrument) == kelvins(3.0));
        instrument.placement = Placement::inOrUnderCloth;
        CHECK(placementOf(instrument) == kelvins(4.0));
    }
    instrument.kind = InstrumentKind::gun;
    CHECK(placementOf(instrument) == kelvins(3.0));
    instrument.ownPlacement = kelvins(0.9);
    CHECK(placementOf(instrument) == kelvins(0.9));
}

TEST_CASE("ten repeat rides give the shop's own placement", "[metrology][placement]") {
    // s of these ten is 1.0 exactly: squares 4 × 1.5² = 9 = n − 1. t(9, 0.95) = 1.833: NIST/SEMATECH e-Handbook
    // 1.3.6.7.2; z = 1.64485: JCGM 106:2012, Table 1.
    std::vector<Temperature> peaks(10, celsius(160.0));
    peaks[0] = peaks[4] = celsius(161.5);
    peaks[5] = peaks[9] = celsius(158.5);
    const auto own = ownPlacementFrom(peaks);
    REQUIRE(own);
    CHECK_THAT(own->celsius(), WithinAbs(1.833 / 1.64485, 0.0005));
    // t(9, 0.99) = 2.821, t(9, 0.90) = 1.383: the same table
    CHECK_THAT(ownPlacementFrom(peaks, {Probability::fromPercent(1)})->celsius(), WithinAbs(2.821 / 2.32635, 0.0005));
    CHECK_THAT(ownPlacementFrom(peaks, {Probability::fromPercent(10)})->celsius(), WithinAbs(1.383 / 1.28155, 0.0005));
}

TEST_CASE("own placement moves with the spread and not with the level", "[metrology][placement]") {
    std::vector<Temperature> peaks;
    std::vector<Temperature> shifted;
    std::vector<Temperature> stretched;
    for (int i = 0; i < 12; ++i) {
        const double t = 160.0 + (i * 7 % 12) * 0.3;
        peaks.push_back(celsius(t));
        shifted.push_back(celsius(t + 37.0));
        stretched.push_back(celsius(160.0 + (t - 160.0) * 3.0));
    }
    const double base = ownPlacementFrom(peaks)->celsius();
    CHECK_THAT(ownPlacementFrom(shifted)->celsius(), WithinAbs(base, 1e-9));
    CHECK_THAT(ownPlacementFrom(stretched)->celsius(), WithinAbs(3.0 * base, 1e-9));
    CHECK(ownPlacementFrom(std::vector(10, celsius(160)))->celsius() == 0.0);
}

TEST_CASE("too few or broken rides give no placement", "[metrology][placement]") {
    CHECK_FALSE(ownPlacementFrom({}));
    CHECK_FALSE(ownPlacementFrom(std::vector(9, celsius(160))));
    std::vector<Temperature> peaks(10, celsius(160));
    peaks[3] = celsius(kNan);
    CHECK_FALSE(ownPlacementFrom(peaks));
    peaks[3] = celsius(kInfinity);
    CHECK_FALSE(ownPlacementFrom(peaks));
    CHECK_FALSE(ownPlacementFrom(std::vector(10, celsius(160)), {Probability::fromPercent(0)}));
}
