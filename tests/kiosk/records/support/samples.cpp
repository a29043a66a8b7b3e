#include "tests/kiosk/records/support/samples.hpp"

#include "tests/kiosk/records/support/sample_ids.hpp"

namespace holdfast::kiosk::records::testing {
namespace {

using analytics::AuthoredDifference;
using analytics::AuthoredTemperature;
using analytics::Duration;
using analytics::Temperature;
using analytics::TemperatureDifference;
using analytics::TemperatureUnit;

constexpr AuthoredTemperature f(double value) {
    return {value, TemperatureUnit::fahrenheit};
}
constexpr AuthoredDifference df(double value) {
    return {value, TemperatureUnit::fahrenheit};
}
constexpr AuthoredDifference dc(double value) {
    return {value, TemperatureUnit::celsius};
}

const std::string kDryer = "01926e2a-0000-7000-8000-000000000003";
const std::string kProbe = "01926e2a-0000-7000-8000-000000000004";
const std::string kEntry = "01926e2a-0000-7000-8000-000000000005";
const std::string kPail = "01926e2a-0000-7000-8000-000000000006";
const std::string kMix = "01926e2a-0000-7000-8000-000000000007";
const std::string kCheck = "01926e2a-0000-7000-8000-000000000008";

FamilyRecord sampleFamily() {
    FamilyRecord family;
    family.name = "two-pair";
    family.revision = 2;
    family.gel = AuthoredGel{f(250), f(260)};
    family.cure = f(285);
    family.unbroken = true;
    family.ceiling = f(350);
    family.bleedResistance = analytics::BleedResistance::high;
    family.ease = 3;
    family.pairs = AuthoredPairs{{Duration{30}, f(300)}, {Duration{90}, f(285)}};
    family.potLife = Duration{28800};
    family.additiveBand = analytics::AdditiveBand{0.01, 0.03};
    family.restBeforeTest = Duration{86400};
    family.mark = analytics::Mark::dataSheet;
    family.source = "the shop's own sheet";
    return family;
}

FabricRecord sampleFabric() {
    FabricRecord fabric;
    fabric.name = "100% polyester";
    fabric.revision = 1;
    fabric.hardCeiling = f(340);
    fabric.bleedCeiling = f(300);
    fabric.needOfAtRiskColour = analytics::BleedResistance::high;
    fabric.coloursNotAtRisk = {"navy", "black"};
    return fabric;
}

InstrumentDescribed sampleInstrument() {
    InstrumentDescribed described;
    described.instrument = kProbe;
    described.number = 3;
    described.spec.name = "P-3";
    described.spec.type = analytics::ThermocoupleType::k;
    described.spec.toleranceClass = analytics::ToleranceClass::iecClass1;
    described.spec.resolution = dc(0.1);
    described.spec.range = AuthoredRange{{-20, TemperatureUnit::celsius}, {400, TemperatureUnit::celsius}};
    described.spec.ownPlacement = dc(1.2);
    described.catalogue = "thermometer-line";
    described.address = "usb:0403:6001:A1";
    return described;
}

RunPlanned samplePlan() {
    RunPlanned plan;
    plan.run = kSampleRun;
    plan.number = 20418;
    plan.title = "red jerseys";
    plan.customer = "school";
    plan.reference = "PO 4411";
    plan.garmentColour = "red";
    plan.clothLot = "KN-2207";
    plan.finish = "softener";
    plan.pieces = 144;
    plan.dryer = kDryer;
    plan.fabric = "100% polyester";
    plan.layers = {{"white", "low-cure", {{"low-cure", 1.0}}},
                   {"black", "black mix", {{"low-cure", 3.0}, {"standard", 1.0}}}};
    plan.childrensWear = true;
    return plan;
}

RevisionsUsed sampleRevisions() {
    return {{{"low-cure", 1}, {"standard", 2}}, {"100% polyester", 1}};
}

analytics::Reason sampleReason() {
    analytics::Reason reason;
    reason.code = analytics::ReasonCode::overCureWithinGuard;
    reason.layer = 2;
    reason.subject = "black";
    reason.value = Temperature::fromCelsius(161.25);
    reason.limit = Temperature::fromCelsius(160);
    reason.guard = TemperatureDifference::fromCelsius(2.5);
    reason.duration = Duration{12.5};
    reason.needed = Duration{30};
    reason.at = Duration{61.2};
    reason.count = 3;
    return reason;
}

analytics::Verdict sampleVerdict() {
    analytics::Verdict verdict;
    verdict.word = analytics::Word::notProven;
    verdict.bleedNotRuledOut = true;
    verdict.bleedWatchDue = true;
    verdict.margin =
        analytics::MarginRange{TemperatureDifference::fromCelsius(1.25), TemperatureDifference::fromCelsius(1.25)};
    verdict.upperMargin = TemperatureDifference::fromCelsius(8.5);
    verdict.guard = TemperatureDifference::fromCelsius(2.5);
    verdict.reasons = {sampleReason()};
    verdict.remedies = {analytics::Remedy::sendProbeHotter};
    analytics::LayerVerdict layer;
    layer.colour = "white";
    layer.family = "low-cure";
    layer.word = analytics::Word::cured;
    layer.margin = analytics::MarginRange{TemperatureDifference::fromCelsius(20.5), std::nullopt};
    layer.limit = {Temperature::fromCelsius(140.5), TemperatureDifference::fromCelsius(2.5)};
    verdict.layers = {layer};
    return verdict;
}

analytics::RunWindow sampleWindow() {
    analytics::RunWindow window;
    window.state = analytics::WindowState::notProvable;
    window.narrow = true;
    window.lower = Temperature::fromCelsius(160);
    window.hold = Duration{0};
    window.upperHard = analytics::GuardedLimit{Temperature::fromCelsius(171), TemperatureDifference::fromCelsius(2.75)};
    window.upperBleed = analytics::GuardedLimit{Temperature::fromCelsius(149), TemperatureDifference::fromCelsius(2.5)};
    window.upper = Temperature::fromCelsius(149);
    window.bleeds = {2};
    analytics::Culprit culprit;
    culprit.position = 2;
    culprit.name = "black";
    culprit.limit = Temperature::fromCelsius(160);
    window.culprits = {culprit};
    analytics::WayOut way;
    way.changes = {{2, "standard", "low-cure"}};
    way.instrument = "P-4";
    way.lower = Temperature::fromCelsius(140.5);
    way.upper = Temperature::fromCelsius(149);
    window.waysOut = {way};
    window.waysOutLeftOut = 4;
    return window;
}

DryerDescribed sampleDryer() {
    DryerDescribed dryer{kDryer, "the long one", 3.6, 2.1, f(340)};
    dryer.slowestMetresPerMinute = 0.5;
    dryer.fastestMetresPerMinute = 6.0;
    dryer.highestSetPoint = f(450);
    dryer.piecesPerMetre = 1.5;
    return dryer;
}

CheckDone sampleCheck() {
    CheckDone done{kProbe, {analytics::CheckKind::boiling, true, day(2026, 3, 1), day(2026, 3, 8)}, f(211.6)};
    done.reference = f(211.2);
    done.uncertainty = df(0.25);
    done.limit = df(2.0);
    done.stationPressureKilopascal = 100.5;
    return done;
}

RunPlanned sampleReplan() {
    auto plan = samplePlan();
    plan.layers[0].buckets = {31};
    plan.layers[0].underbase = true;
    plan.layers[1].buckets = {31, 32};
    return plan;
}

BucketOpened samplePail() {
    BucketOpened pail{kPail, 31, "two-pair", "white", "B-7", day(2027, 2, 1)};
    pail.additivePercent = 2.0;
    pail.potLifeStartsAt = 1'772'000'000'000;
    return pail;
}

MixMade sampleMix() {
    MixMade mix{kMix, 32, "grey mix", "grey", {{kPail, 2.5}, {kPail, 0.0}}};
    mix.additivePercent = 1.5;
    mix.potLifeStartsAt = 1'772'000'100'000;
    return mix;
}

ReadingRefused sampleRefused() {
    ReadingRefused refused;
    refused.dryer = kDryer;
    refused.instrument = kProbe;
    StripSeen strip;
    strip.lastDark = f(290);
    strip.firstLight = f(295);
    strip.usedBefore = true;
    strip.number = 205;
    refused.evidence = strip;
    analytics::Reason reason;
    reason.code = analytics::ReasonCode::stripUsedBefore;
    refused.reasons = {reason};
    return refused;
}

CorrectionMade sampleCorrection() {
    CorrectionMade correction{kEntry, sampleReading()};
    correction.reading.evidence = GunSeen{f(305), analytics::ShotPlace::inTunnelHottest};
    correction.reading.retakeOf = kEntry;
    correction.check = kCheck;
    return correction;
}

CertificateAdded sampleCertificate() {
    CertificateSpec spec;
    spec.date = day(2026, 1, 15);
    spec.due = day(2027, 1, 15);
    spec.points = {{f(212), df(-0.4), df(0.9)}, {f(320), df(0.7), df(1.1)}};
    return {kProbe, spec};
}

} // namespace

analytics::Date day(int year, unsigned month, unsigned dayOfMonth) {
    return std::chrono::year_month_day{std::chrono::year{year}, std::chrono::month{month},
                                       std::chrono::day{dayOfMonth}};
}

ReadingTaken sampleReading() {
    ReadingTaken reading;
    reading.run = kSampleRun;
    reading.lot = kSampleLot;
    reading.dryer = kDryer;
    reading.instrument = kProbe;
    reading.position = BeltPosition::left;
    reading.reason = ReadingReason::afterChange;
    reading.piece = 37;
    TraceSeen trace;
    trace.sha256 = std::string(64, 'a');
    trace.step = dc(0.1);
    trace.pass = 2;
    trace.unitConfirmed = true;
    trace.sustainedPeak = Temperature::fromCelsius(161.25);
    trace.rawPeak = Temperature::fromCelsius(161.5);
    reading.evidence = trace;
    reading.window = sampleWindow();
    reading.guards.layers = {{Temperature::fromCelsius(140.5), TemperatureDifference::fromCelsius(2.5)}};
    reading.guards.hard = reading.window->upperHard;
    reading.guards.bleed = reading.window->upperBleed;
    reading.revisions = sampleRevisions();
    CalibrationUsed used;
    used.certificate = day(2026, 1, 15);
    used.checkedInDate = true;
    used.correction = TemperatureDifference::fromCelsius(0.3);
    used.common = TemperatureDifference::fromCelsius(0.9);
    used.random = TemperatureDifference::fromCelsius(1.5);
    reading.calibration = used;
    reading.verdict = sampleVerdict();
    return reading;
}

std::vector<Record> sampleOfEveryKind() {
    std::vector<Record> all{
        BookOpened{"The invented shop", "outfeed", "0.1.0", true},
        PersonAdded{12, "P3K7", {Role::qualityAssurance, Role::owner}},
        CrewChanged{{12, 14}, 1},
        sampleDryer(),
        SettingChanged{"risk_percent", 5.0},
        sampleFamily(),
        sampleFabric(),
        sampleInstrument(),
        sampleCertificate(),
        sampleCheck(),
        samplePlan(),
        RunReplanned{sampleReplan()},
        LotOpened{kSampleLot, kSampleRun, 2, kDryer, 37, sampleRevisions(), f(340), 2.1},
        LotClosed{kSampleLot, 144, LotEnd::newRevision},
        sampleReading(),
        sampleRefused(),
        sampleCorrection(),
        samplePail(),
        sampleMix(),
        BucketClosed{kPail, BucketEnd::mislabelled},
        ActionTaken{kDryer, FloorAction::beltSlower, 1.8, f(335), 12, kEntry},
        ReadingStruck{kEntry, StruckCause::leadCaught},
        FlashNoted{kSampleRun, 1, kProbe, f(262), analytics::FlashWord::overFlashed, {sampleReason()}},
        RunFinished{kSampleRun, 140, 4},
        PersonChanged{12, "P9M2", {Role::operatorAtDryer}, true},
        PinSet{12, "$argon2id$v=19$m=65536,t=2,p=1$c2FsdHNhbHRzYWx0c2FsdA$aGFzaA"},
    };
    for (auto& sample : samplesOfTesting()) {
        all.push_back(std::move(sample));
    }
    return all;
}

} // namespace holdfast::kiosk::records::testing
