#include "analytics/metrology/instrument_faults.hpp"

#include "tests/analytics/metrology/instruments.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;
using Kind = InstrumentFaultKind;

namespace {

std::vector<Kind> kinds(const Instrument& instrument) {
    std::vector<Kind> found;
    for (const auto& fault : validate(instrument)) {
        found.push_back(fault.kind);
    }
    return found;
}

} // namespace

TEST_CASE("sound instruments have no faults", "[metrology][faults]") {
    CHECK(validate(certifiedProbe()).empty());
    CHECK(validate(labelStrip()).empty());
    CHECK(validate(Instrument{}).empty());
}

TEST_CASE("every fault of an instrument is listed at once, with its place", "[metrology][faults]") {
    auto probe = certifiedProbe();
    probe.type.reset();
    probe.statedTolerance = kelvins(-1);
    probe.resolution = kelvins(kNan);
    probe.ownPlacement = kelvins(-0.5);
    probe.range = MeasuringRange{celsius(300), celsius(0)};
    auto bad = certificate(day(10), day(9), {{150, 0.1, 0.5}, {150, kNan, -0.5}, {140, 0.1, 0.5}});
    bad.coverageFactor = 0.0;
    probe.certificates.push_back(bad);
    probe.certificates.push_back(certificate(day(0), day(1), {}));
    probe.checks = {{CheckKind::ice, true, day(1), day(1)}, {CheckKind::ice, true, day(2), day(1)}};
    const std::vector<InstrumentFault> expected{
        {Kind::classWithoutType, {}, {}},     {Kind::statedToleranceInvalid, {}, {}},
        {Kind::resolutionInvalid, {}, {}},    {Kind::placementInvalid, {}, {}},
        {Kind::rangeReversed, {}, {}},        {Kind::certificateDueBeforeDate, 1, {}},
        {Kind::coverageFactorInvalid, 1, {}}, {Kind::pointNotFinite, 1, 1},
        {Kind::pointsOutOfOrder, 1, 1},       {Kind::uncertaintyInvalid, 1, 1},
        {Kind::pointsOutOfOrder, 1, 2},       {Kind::certificateWithoutPoints, 2, {}},
        {Kind::checkDueBeforeDate, 1, {}}};
    CHECK(validate(probe) == expected);
}

TEST_CASE("a class the type does not have is a fault", "[metrology][faults]") {
    auto probe = classOneProbe();
    probe.type = ThermocoupleType::j;
    CHECK(kinds(probe).empty());
    probe.toleranceClass = ToleranceClass::iecClass3; // IEC 60584-1:2013, tolerance classes: none for type J
    CHECK(kinds(probe) == std::vector{Kind::classNotDefinedForType});
}

TEST_CASE("a range needs finite ends in their order", "[metrology][faults]") {
    auto probe = classOneProbe();
    probe.range = MeasuringRange{celsius(-50), celsius(300)};
    CHECK(kinds(probe).empty());
    probe.range = MeasuringRange{celsius(300), celsius(300)};
    CHECK(kinds(probe) == std::vector{Kind::rangeReversed});
    probe.range = MeasuringRange{celsius(kNan), celsius(300)};
    CHECK(kinds(probe) == std::vector{Kind::rangeInvalid});
    probe.range = MeasuringRange{celsius(0), celsius(kInfinity)};
    CHECK(kinds(probe) == std::vector{Kind::rangeInvalid});
}

TEST_CASE("a strip needs ascending finite steps and a tolerance", "[metrology][faults]") {
    auto strip = labelStrip();
    strip.strip->steps = {celsius(149), celsius(149), celsius(kNan), celsius(140)};
    strip.strip->tolerance = kelvins(kNan);
    CHECK(validate(strip) == std::vector<InstrumentFault>{{Kind::stripStepsOutOfOrder, {}, 1},
                                                          {Kind::stripStepNotFinite, {}, 2},
                                                          {Kind::stripToleranceInvalid, {}, {}}});
    strip.strip->steps.clear();
    strip.strip->tolerance = kelvins(0);
    CHECK(kinds(strip) == std::vector{Kind::stripWithoutSteps});
    strip.strip.reset();
    CHECK(kinds(strip) == std::vector{Kind::stripMissing});
    strip.kind = InstrumentKind::probe;
    CHECK(kinds(strip).empty());
}

TEST_CASE("thousands of faults are all listed", "[metrology][faults]") {
    auto probe = classOneProbe();
    std::vector<std::array<double, 3>> falling;
    for (int i = 0; i < 5000; ++i) {
        falling.push_back({500.0 - i * 0.1, 0.1, 0.5});
    }
    probe.certificates = {certificate(day(0), day(365), falling)};
    const auto found = kinds(probe);
    CHECK(found.size() == 4999);
    CHECK(std::all_of(found.begin(), found.end(), [](Kind kind) { return kind == Kind::pointsOutOfOrder; }));
}

TEST_CASE("every k that cannot divide is a fault", "[metrology][faults]") {
    for (const double k : {0.0, -0.0, -2.0, kNan, kInfinity, -kInfinity}) {
        auto probe = certifiedProbe();
        probe.certificates.front().coverageFactor = k;
        CHECK(kinds(probe) == std::vector{Kind::coverageFactorInvalid});
        CHECK(faultsOf(probe.certificates.front()) ==
              std::vector<InstrumentFault>{{Kind::coverageFactorInvalid, {}, {}}});
    }
    auto probe = certifiedProbe();
    probe.certificates.front().coverageFactor = 1.65; // a one-sided 95 % factor
    CHECK(kinds(probe).empty());
}
