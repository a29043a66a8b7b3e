#include "analytics/metrology/calibration.hpp"

#include "tests/analytics/metrology/instruments.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;
using Catch::WithinAbs;

TEST_CASE("common part: certificate with points at the limit and no history", "[metrology][calibration]") {
    // decisions 2: c² = (U/k)² + (d/√3)² + (e/√3)², d = a/2 until there are two certificates; a = 1.5 (IEC class 1).
    const Calibration calibration{certifiedProbe(), day(1)};
    CHECK_THAT(calibration.uncertaintyAt(celsius(160)).common.celsius(),
               WithinAbs(std::sqrt(0.25 * 0.25 + 0.75 * 0.75 / 3.0), 1e-12)); // 0.5 °C with k = 2
    CHECK_THAT(calibration.uncertaintyAt(celsius(160)).random.celsius(),
               WithinAbs(std::sqrt(1.5 * 1.5 + 0.1 * 0.1 / 12.0), 1e-12));
}

TEST_CASE("common part: two certificates give the drift, read at the newer one's points", "[metrology][calibration]") {
    auto probe = certifiedProbe(); // day 0: 0.2 at 100, 0.4 at 150, 0.6 at 200
    probe.certificates.push_back(certificate(day(300), day(665), {{110, 0.34, 0.5}, {160, 1.04, 0.5}}));
    // d: 0.34 − 0.24 = 0.10 at 110, 1.04 − 0.44 = 0.60 at 160; decisions 2
    const auto at155 = Calibration{probe, day(300)}.uncertaintyAt(celsius(155)).common.celsius();
    CHECK_THAT(at155, WithinAbs(std::sqrt(0.0625 + 0.36 / 3.0), 1e-12));
    // before the newer one's date the older stands alone: d = a/2
    const auto before = Calibration{probe, day(299)}.uncertaintyAt(celsius(155)).common.celsius();
    CHECK_THAT(before, WithinAbs(std::sqrt(0.0625 + 0.5625 / 3.0), 1e-12));
    // the older one's due day has passed; it still tells the drift
    const auto later = Calibration{probe, day(600)}.uncertaintyAt(celsius(155)).common.celsius();
    CHECK_THAT(later, WithinAbs(at155, 1e-12));
}

TEST_CASE("common part: certificates that share no point near the limit say nothing of its drift",
          "[metrology][calibration]") {
    // decisions 2: d is a/2 if two certificates share no point within 25 °C; a = 1.5.
    auto probe = classOneProbe();
    probe.certificates = {certificate(day(0), day(365), {{0, 0.0, 0.5}, {100, 0.0, 0.5}}),
                          certificate(day(300), day(665), {{100, 0.05, 0.5}, {160, 0.1, 0.5}})};
    const Calibration calibration{probe, day(301)};
    CHECK_THAT(calibration.uncertaintyAt(celsius(160)).common.celsius(),
               WithinAbs(std::sqrt(0.0625 + 0.5625 / 3), 1e-12));
    CHECK_THAT(calibration.uncertaintyAt(celsius(120)).common.celsius(),
               WithinAbs(std::sqrt(0.0625 + 0.05 * 0.05 / 3), 1e-12));
}

TEST_CASE("common part: beyond the last point the extended line is the error", "[metrology][calibration]") {
    // decisions 2: e = |correction extended along its last segment − flat correction|; a = 1.5.
    auto probe = classOneProbe();
    probe.certificates = {certificate(day(0), day(365), {{100, 0.0, 0.4}, {150, 0.5, 0.6}})};
    const Calibration calibration{probe, day(1)};
    const auto common = [&](double limit) { return calibration.uncertaintyAt(celsius(limit)).common.celsius(); };
    const double drift = 0.5625 / 3.0;
    CHECK_THAT(common(170), WithinAbs(std::sqrt(0.3 * 0.3 + drift + 0.2 * 0.2 / 3.0), 1e-12)); // slope 0.01 × 20
    CHECK_THAT(common(90), WithinAbs(std::sqrt(0.2 * 0.2 + drift + 0.1 * 0.1 / 3.0), 1e-12));
    CHECK_THAT(common(150), WithinAbs(std::sqrt(0.3 * 0.3 + drift), 1e-12));
    CHECK_THAT(common(120), WithinAbs(std::sqrt(0.3 * 0.3 + drift), 1e-12)); // the larger U of the two
    // 25 °C away is still near, beyond it the class takes over: c² = a²/3 + e²
    CHECK_THAT(common(175), WithinAbs(std::sqrt(0.3 * 0.3 + drift + 0.25 * 0.25 / 3.0), 1e-12));
    CHECK_THAT(common(175.1), WithinAbs(std::sqrt(2.25 / 3.0 + 0.251 * 0.251), 1e-12));
    CHECK_THAT(common(250), WithinAbs(std::sqrt(2.25 / 3.0 + 1.0), 1e-12));
}

TEST_CASE("common part: between far points of a certificate the class counts", "[metrology][calibration]") {
    auto probe = classOneProbe();
    probe.certificates = {certificate(day(0), day(365), {{100, 0.1, 0.5}, {200, 0.2, 0.5}})};
    CHECK_THAT(Calibration(probe, day(1)).uncertaintyAt(celsius(150)).common.celsius(),
               WithinAbs(std::sqrt(2.25 / 3.0), 1e-12)); // decisions 2, e = 0 between points
}

TEST_CASE("common part: one point is flat and its error half the class", "[metrology][calibration]") {
    // decisions 2: one point: flat, e = a/2; here also d = a/2.
    auto probe = classOneProbe();
    probe.certificates = {certificate(day(0), day(365), {{160, 0.3, 0.5}})};
    const Calibration calibration{probe, day(1)};
    CHECK(calibration.correctionAt(celsius(20)).celsius() == 0.3);
    CHECK(calibration.correctionAt(celsius(300)).celsius() == 0.3);
    const double halfClass = 0.75 * 0.75;
    CHECK_THAT(calibration.uncertaintyAt(celsius(160)).common.celsius(),
               WithinAbs(std::sqrt(0.0625 + 2.0 * halfClass / 3.0), 1e-12));
    CHECK_THAT(calibration.uncertaintyAt(celsius(100)).common.celsius(),
               WithinAbs(std::sqrt(2.25 / 3 + halfClass), 1e-12));
}

TEST_CASE("common part: with a check only, the class is spread evenly", "[metrology][calibration]") {
    // decisions 2: c² = a²/3; JCGM 100:2008, 4.3.7. IEC class 2, K, 160 °C: a = 2.5, so c = 1.4434.
    auto probe = classOneProbe();
    probe.toleranceClass = ToleranceClass::iecClass2;
    probe.checks = {{CheckKind::ice, true, day(0), day(30)}};
    CHECK_THAT(Calibration(probe, day(1)).uncertaintyAt(celsius(160)).common.celsius(), WithinAbs(1.4434, 5e-5));
    CHECK_THAT(Calibration(probe, day(1)).uncertaintyAt(celsius(400)).common.celsius(), WithinAbs(1.7321, 5e-5));
}

TEST_CASE("the coverage factor of the certificate divides its uncertainty", "[metrology][calibration]") {
    auto probe = certifiedProbe();
    probe.certificates.front().coverageFactor = 2.5;
    CHECK_THAT(Calibration(probe, day(1)).uncertaintyAt(celsius(160)).common.celsius(),
               WithinAbs(std::sqrt(0.2 * 0.2 + 0.5625 / 3.0), 1e-12));
}

TEST_CASE("the resolution counts as a twelfth of its square", "[metrology][calibration]") {
    // JCGM 100:2008, F.2.2.1: a resolution δx alone gives u = 0.29 δx.
    auto probe = classOneProbe();
    probe.ownPlacement = kelvins(0);
    probe.resolution = kelvins(1.0);
    CHECK_THAT(Calibration(probe, day(0)).uncertaintyAt(celsius(160)).random.celsius(), WithinAbs(0.29, 0.005));
    probe.resolution = kelvins(0.0);
    CHECK(Calibration(probe, day(0)).uncertaintyAt(celsius(160)).random.celsius() == 0.0);
}

TEST_CASE("averaging readings shrinks the random part only", "[metrology][calibration]") {
    // JCGM 100:2008, 4.2.3 (s²/n) for the random part; decisions 2: c² + r²/n.
    const StandardUncertainty u{kelvins(0.6), kelvins(1.5)};
    CHECK_THAT(u.ofMean().celsius(), WithinAbs(std::sqrt(0.36 + 2.25), 1e-12));
    CHECK_THAT(u.ofMean(2).celsius(), WithinAbs(std::sqrt(0.36 + 1.125), 1e-12));
    CHECK_THAT(u.ofMean(9).celsius(), WithinAbs(std::sqrt(0.36 + 0.25), 1e-12));
    CHECK_THAT(u.ofMean(1'000'000'000).celsius(), WithinAbs(0.6, 1e-6));
    CHECK(u.ofMean(0) == u.ofMean(1));
    CHECK(u.ofMean(-3) == u.ofMean(1));
}

TEST_CASE("the guard is z times the uncertainty at the limit", "[metrology][calibration]") {
    const Calibration calibration{certifiedProbe(), day(1)};
    const auto u = calibration.uncertaintyAt(celsius(160)).ofMean().celsius();
    // JCGM 106:2012, Table 1: z = 1.64485 at 5 %, 2.32635 at 1 %
    CHECK_THAT(calibration.guardAt(celsius(160)).celsius(), WithinAbs(1.64485 * u, 2e-5));
    CHECK_THAT(calibration.guardAt(celsius(160), {Probability::fromPercent(1.0)}).celsius(),
               WithinAbs(2.32635 * u, 2e-5));
    CHECK(calibration.guardAt(celsius(160), {Probability::fromPercent(0.0)}).celsius() == kInfinity);
    CHECK(calibration.guardAt(celsius(160), {Probability::fromPercent(kNan)}).celsius() == kInfinity);
}

TEST_CASE("numbers that are none make the uncertainty unknown, never small", "[metrology][calibration]") {
    auto probe = certifiedProbe();
    probe.resolution = kelvins(kNan);
    CHECK(Calibration(probe, day(1)).uncertaintyAt(celsius(160)).random.celsius() == kInfinity);
    probe = certifiedProbe();
    probe.ownPlacement = kelvins(kNan);
    CHECK(Calibration(probe, day(1)).guardAt(celsius(160)).celsius() == kInfinity);
    CHECK_FALSE(Calibration(certifiedProbe(), day(1)).corrected(celsius(kNan)).isFinite());
    CHECK(Calibration(Instrument{}, day(1)).faultAt(celsius(160)) == CalibrationFault::noCertificateOrCheckInDate);
    CHECK(Calibration(Instrument{}, day(1)).guardAt(celsius(160)).celsius() == kInfinity);
}
