#include "analytics/metrology/calibration.hpp"

#include "tests/analytics/metrology/instruments.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;
using Catch::WithinAbs;

TEST_CASE("the newest certificate in date counts, its due day included", "[metrology][calibration]") {
    // decisions 2: from a certificate in date only; in date from its date up to and including the due day.
    auto probe = classOneProbe();
    probe.certificates = {certificate(day(100), day(465), {{160, 0.3, 0.5}}),
                          certificate(day(200), day(565), {{160, 0.7, 0.5}}),
                          certificate(day(50), day(900), {{160, 0.1, 0.5}})};
    const auto correctionOn = [&](int n) { return Calibration{probe, day(n)}.correctionAt(celsius(160)).celsius(); };
    CHECK(correctionOn(49) == 0.0);
    CHECK(correctionOn(50) == 0.1);
    CHECK(correctionOn(99) == 0.1);
    CHECK(correctionOn(100) == 0.3);
    CHECK(correctionOn(200) == 0.7);
    CHECK(correctionOn(565) == 0.7);
    CHECK(correctionOn(566) == 0.1); // the newer ones have run out, the long one has not
    CHECK(correctionOn(901) == 0.0);
    CHECK_FALSE(Calibration{probe, day(901)}.certificateInDate());
    CHECK(Calibration{probe, day(200)}.today() == day(200));
    CHECK(Calibration{probe, day(200)}.instrument().certificates.size() == 3);
}

TEST_CASE("corrections run straight between points and flat outside", "[metrology][calibration]") {
    auto probe = classOneProbe();
    probe.certificates = {certificate(day(0), day(365), {{100, 0.4, 0.5}, {150, 1.4, 0.5}, {200, -0.6, 0.5}})};
    const Calibration calibration{probe, day(1)};
    const auto correction = [&](double t) { return calibration.correctionAt(celsius(t)).celsius(); };
    CHECK_THAT(correction(100), WithinAbs(0.4, 1e-12));
    CHECK_THAT(correction(125), WithinAbs(0.9, 1e-12));
    CHECK_THAT(correction(150), WithinAbs(1.4, 1e-12));
    CHECK_THAT(correction(175), WithinAbs(0.4, 1e-12));
    CHECK_THAT(correction(200), WithinAbs(-0.6, 1e-12));
    for (const double outside : {-270.0, 0.0, 99.999}) {
        CHECK(correction(outside) == 0.4);
    }
    for (const double outside : {200.001, 400.0, 1e6}) {
        CHECK(correction(outside) == -0.6);
    }
    CHECK_THAT(calibration.corrected(celsius(125)).celsius(), WithinAbs(125.9, 1e-12));
}

TEST_CASE("raising every correction raises every corrected reading alike", "[metrology][calibration]") {
    auto probe = classOneProbe();
    probe.certificates = {certificate(day(0), day(365), {{100, 0.4, 0.5}, {150, 1.4, 0.5}, {200, -0.6, 0.5}})};
    auto raised = probe;
    for (auto& point : raised.certificates.front().points) {
        point.correction += kelvins(0.25);
    }
    for (double t = 50; t <= 250; t += 0.7) {
        const auto difference =
            Calibration{raised, day(1)}.corrected(celsius(t)) - Calibration{probe, day(1)}.corrected(celsius(t));
        REQUIRE_THAT(difference.celsius(), WithinAbs(0.25, 1e-9));
    }
}

TEST_CASE("a thousand points are read like the function they sample", "[metrology][calibration]") {
    std::vector<std::array<double, 3>> points;
    for (int i = 0; i < 5000; ++i) {
        points.push_back({i * 0.1, 2.0 * std::sin(i * 0.01), 0.5});
    }
    auto probe = classOneProbe();
    probe.certificates = {certificate(day(0), day(365), points), certificate(day(-365), day(0), points)};
    const Calibration calibration{probe, day(1)};
    for (double t = 0.05; t < 499.9; t += 0.37) {
        // the chord of a sine of amplitude 2 over 0.01 rad lies within 2·0.01²/8 of it
        REQUIRE_THAT(calibration.correctionAt(celsius(t)).celsius(), WithinAbs(2.0 * std::sin(t * 0.1), 2.6e-5));
    }
    CHECK_THAT(calibration.uncertaintyAt(celsius(250)).common.celsius(), WithinAbs(0.25, 1e-9));
}

TEST_CASE("a passed check in date stands in for a certificate, a failed one takes it away",
          "[metrology][calibration]") {
    auto probe = classOneProbe();
    probe.checks = {{CheckKind::ice, true, day(10), day(40)}};
    CHECK_FALSE(Calibration{probe, day(9)}.checkedInDate());
    CHECK(Calibration{probe, day(10)}.checkedInDate());
    CHECK(Calibration{probe, day(40)}.checkedInDate());
    CHECK_FALSE(Calibration{probe, day(41)}.checkedInDate());
    CHECK_FALSE(Calibration{probe, day(20)}.faultAt(celsius(160)));
    CHECK(Calibration{probe, day(41)}.faultAt(celsius(160)) == CalibrationFault::noCertificateOrCheckInDate);

    probe.checks.push_back({CheckKind::boiling, false, day(20), day(50)});
    CHECK(Calibration{probe, day(19)}.checkedInDate());
    CHECK_FALSE(Calibration{probe, day(20)}.checkedInDate());
    CHECK(Calibration{probe, day(20)}.lastCheckFailed());
    CHECK(Calibration{probe, day(20)}.faultAt(celsius(160)) == CalibrationFault::noCertificateOrCheckInDate);

    probe.checks.push_back({CheckKind::boiling, true, day(21), day(22)});
    CHECK(Calibration{probe, day(21)}.checkedInDate());
    CHECK_FALSE(Calibration{probe, day(21)}.lastCheckFailed());
    CHECK_FALSE(Calibration{probe, day(23)}.checkedInDate()); // what the failed check took away stays away
}

TEST_CASE("a failed check overrules an older certificate until it is calibrated anew", "[metrology][calibration]") {
    auto probe = certifiedProbe();
    probe.checks = {{CheckKind::ice, false, day(100), day(130)}};
    CHECK_FALSE(Calibration{probe, day(99)}.faultAt(celsius(160)));
    CHECK(Calibration{probe, day(100)}.faultAt(celsius(160)) == CalibrationFault::noCertificateOrCheckInDate);
    CHECK(Calibration{probe, day(200)}.faultAt(celsius(160)) == CalibrationFault::noCertificateOrCheckInDate);
    probe.certificates.push_back(certificate(day(210), day(575), {{160, 0.4, 0.5}}));
    CHECK(Calibration{probe, day(209)}.lastCheckFailed());
    CHECK_FALSE(Calibration{probe, day(210)}.lastCheckFailed());
    CHECK_FALSE(Calibration{probe, day(210)}.faultAt(celsius(160)));
}

TEST_CASE("a certificate without a sound k is refused", "[metrology][calibration]") {
    // decisions 2: a missing or zero k is refused.
    for (const double k : {0.0, -2.0, kNan, kInfinity}) {
        auto probe = certifiedProbe();
        probe.certificates.front().coverageFactor = k;
        const Calibration calibration{probe, day(1)};
        CHECK_FALSE(calibration.certificateInDate());
        CHECK(calibration.correctionAt(celsius(160)).celsius() == 0.0);
        CHECK(calibration.faultAt(celsius(160)) == CalibrationFault::noCertificateOrCheckInDate);
        CHECK(calibration.guardAt(celsius(160)).isFinite());
    }
}

TEST_CASE("a certificate with broken points is refused and an older sound one used", "[metrology][calibration]") {
    const std::vector<std::vector<std::array<double, 3>>> broken{{},
                                                                 {{160, kNan, 0.5}},
                                                                 {{kNan, 0.1, 0.5}},
                                                                 {{160, 0.1, -0.5}},
                                                                 {{160, 0.1, 0.5}, {150, 0.1, 0.5}},
                                                                 {{160, 0.1, 0.5}, {160, 0.2, 0.5}},
                                                                 {{160, 0.1, kInfinity}}};
    for (const auto& points : broken) {
        auto probe = certifiedProbe();
        probe.certificates.push_back(certificate(day(10), day(375), points));
        const Calibration calibration{probe, day(20)};
        REQUIRE(calibration.certificateInDate());
        CHECK(calibration.certificateInDate()->date == day(0));
        CHECK_THAT(calibration.correctionAt(celsius(160)).celsius(), WithinAbs(0.44, 1e-12));
    }
}

TEST_CASE("a certificate far from the limit that shows more than the class proves nothing",
          "[metrology][calibration]") {
    // decisions 2: a correction larger than a with no point within 25 °C of the limit; a = 1.5, equality is within.
    auto probe = classOneProbe();
    const auto faultWith = [&](double at, double correction) {
        probe.certificates = {certificate(day(0), day(365), {{at, correction, 0.5}})};
        return Calibration{probe, day(1)}.faultAt(celsius(160));
    };
    CHECK_FALSE(faultWith(100, 1.5));
    CHECK_FALSE(faultWith(100, -1.5));
    CHECK(faultWith(100, 1.51) == CalibrationFault::correctionBeyondClassFarFromLimit);
    CHECK(faultWith(100, -1.51) == CalibrationFault::correctionBeyondClassFarFromLimit);
    CHECK_FALSE(faultWith(135, 1.51));
    CHECK(faultWith(134.9, 1.51) == CalibrationFault::correctionBeyondClassFarFromLimit);
    CHECK_FALSE(faultWith(185, 8.0));
}

TEST_CASE("without a tolerance the uncertainty is unknown, unless the certificates alone give it",
          "[metrology][calibration]") {
    auto probe = classOneProbe();
    probe.toleranceClass.reset();
    probe.checks = {{CheckKind::ice, true, day(0), day(365)}};
    CHECK(Calibration(probe, day(1)).faultAt(celsius(160)) == CalibrationFault::noTolerance);
    CHECK(Calibration(probe, day(1)).guardAt(celsius(160)).celsius() == kInfinity);
    probe.certificates = {certificate(day(0), day(365), {{100, 0.1, 0.5}, {160, 0.2, 0.5}})};
    CHECK(Calibration(probe, day(1)).faultAt(celsius(160)) == CalibrationFault::noTolerance);
    probe.certificates.push_back(certificate(day(10), day(375), {{100, 0.1, 0.5}, {160, 0.5, 0.5}}));
    CHECK_FALSE(Calibration(probe, day(11)).faultAt(celsius(160)));
    CHECK_THAT(Calibration(probe, day(11)).uncertaintyAt(celsius(160)).common.celsius(),
               WithinAbs(std::sqrt(0.0625 + 0.09 / 3.0), 1e-12));
    CHECK(Calibration(probe, day(11)).faultAt(celsius(250)) == CalibrationFault::noTolerance);
}

TEST_CASE("a class that does not reach the limit falls back on the stated tolerance", "[metrology][calibration]") {
    auto probe = classOneProbe();
    probe.toleranceClass = ToleranceClass::iecClass3; // −200 to 40 °C: IEC 60584-1:2013, tolerance classes
    CHECK_FALSE(Calibration(probe, day(0)).toleranceAt(celsius(160)));
    CHECK(Calibration(probe, day(0)).toleranceAt(celsius(0)) == kelvins(2.5));
    probe.statedTolerance = kelvins(3.0);
    CHECK(Calibration(probe, day(0)).toleranceAt(celsius(160)) == kelvins(3.0));
    for (const double broken : {kNan, kInfinity, -1.0}) {
        probe.statedTolerance = kelvins(broken);
        CHECK_FALSE(Calibration(probe, day(0)).toleranceAt(celsius(160)));
    }
}

TEST_CASE("a strip has its placement only, and nothing after its expiry", "[metrology][calibration]") {
    // decisions 2 and 4: the strip's own tolerance belongs to the edges of its steps.
    auto strip = labelStrip();
    const Calibration calibration{strip, day(50)};
    CHECK(calibration.uncertaintyAt(celsius(160)).common.celsius() == 0.0);
    CHECK(calibration.uncertaintyAt(celsius(160)).random.celsius() == 3.0);
    CHECK_THAT(calibration.guardAt(celsius(160)).celsius(), WithinAbs(1.64485 * 3.0, 5e-5));
    CHECK(calibration.toleranceAt(celsius(160)) == kelvins(1.5));
    CHECK_FALSE(calibration.faultAt(celsius(160)));
    CHECK_FALSE(Calibration(strip, day(100)).faultAt(celsius(160)));
    CHECK(Calibration(strip, day(101)).faultAt(celsius(160)) == CalibrationFault::stripExpired);

    strip.certificates = {certificate(day(0), day(365), {{160, 5.0, 0.5}})};
    CHECK(Calibration(strip, day(50)).corrected(celsius(160)) == celsius(160));
    strip.strip.reset();
    CHECK(Calibration(strip, day(50)).faultAt(celsius(160)) == CalibrationFault::noTolerance);
}

TEST_CASE("a gun lives on the tolerance its maker states", "[metrology][calibration]") {
    // decisions 2: a = its maker's stated tolerance, u_p = 3 °C.
    Instrument gun;
    gun.kind = InstrumentKind::gun;
    gun.resolution = kelvins(0.1);
    gun.checks = {{CheckKind::comparison, true, day(0), day(30)}};
    CHECK(Calibration(gun, day(1)).faultAt(celsius(160)) == CalibrationFault::noTolerance);
    gun.statedTolerance = kelvins(2.0);
    const Calibration calibration{gun, day(1)};
    CHECK_FALSE(calibration.faultAt(celsius(160)));
    CHECK_THAT(calibration.uncertaintyAt(celsius(160)).common.celsius(), WithinAbs(std::sqrt(4.0 / 3.0), 1e-12));
    CHECK_THAT(calibration.uncertaintyAt(celsius(160)).random.celsius(),
               WithinAbs(std::sqrt(9.0 + 0.01 / 12.0), 1e-12));
    CHECK(Calibration(gun, day(31)).faultAt(celsius(160)) == CalibrationFault::noCertificateOrCheckInDate);
    gun.type = ThermocoupleType::k; // a gun has no thermocouple class
    gun.toleranceClass = ToleranceClass::iecClass1;
    CHECK(Calibration(gun, day(1)).toleranceAt(celsius(160)) == kelvins(2.0));
}

TEST_CASE("on one day a failed check outweighs a passed one and a certificate outweighs both",
          "[metrology][calibration]") {
    auto probe = classOneProbe();
    probe.checks = {{CheckKind::ice, true, day(10), day(40)}, {CheckKind::boiling, false, day(10), day(40)}};
    CHECK_FALSE(Calibration(probe, day(10)).checkedInDate());
    CHECK(Calibration(probe, day(10)).lastCheckFailed());
    std::swap(probe.checks[0], probe.checks[1]);
    CHECK_FALSE(Calibration(probe, day(10)).checkedInDate());
    CHECK(Calibration(probe, day(10)).lastCheckFailed());
    probe.certificates = {certificate(day(10), day(375), {{160, 0.3, 0.5}})};
    CHECK_FALSE(Calibration(probe, day(10)).lastCheckFailed());
    CHECK_FALSE(Calibration(probe, day(10)).faultAt(celsius(160)));
}

TEST_CASE("of two certificates of one day the last typed counts and neither is the other's history",
          "[metrology][calibration]") {
    auto probe = certifiedProbe();
    probe.certificates.push_back(certificate(day(0), day(365), {{100, 0.3, 0.5}, {160, 0.9, 0.5}}));
    const Calibration calibration{probe, day(1)};
    CHECK_THAT(calibration.correctionAt(celsius(160)).celsius(), WithinAbs(0.9, 1e-12));
    // d = a/2 = 0.75, not the 0.46 between the two; decisions 2
    CHECK_THAT(calibration.uncertaintyAt(celsius(160)).common.celsius(),
               WithinAbs(std::sqrt(0.0625 + 0.5625 / 3.0), 1e-12));
}
