#include "kiosk/demo/demo_instruments.hpp"

#include "kiosk/demo/demo_shop.hpp"
#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/instruments/certificate_draft.hpp"
#include "kiosk/shop/instruments/check_draft.hpp"
#include "kiosk/shop/instruments/instrument_draft.hpp"

#include <cassert>

namespace holdfast::kiosk::demo {
namespace {

using analytics::InstrumentKind;
using shop::instruments::CertificateDraft;
using shop::instruments::InstrumentDraft;

/// Days are counted from the day the shop was described: a certificate of −200 was signed 200 days before.
struct Certificate final {
    int date = 0;
    int due = 0;
    const char* correction = "0"; ///< °F, at the middle one of three points
};

struct Instrument final {
    std::int64_t number = 0;
    const char* name = "";
    InstrumentKind kind = InstrumentKind::probe;
    std::vector<Certificate> certificates{}; ///< oldest first
    bool checked = false;                    ///< in ice and boiling water, on the day it was described
    const char* steps = "";                  ///< °F, of a strip
    int expiry = 0;                          ///< of a strip, in days
    const char* singles = "";                ///< how many numbered strips are in the pack
};

constexpr const char* kPacketSteps = "280 290 300 320 330";
constexpr const char* kSinglesSteps = "280 290 300 310 320 330 340 350 360";

/// By the figures of their certificates one is in date for long, one due this week (P-8), one expired (P-1), two have
/// none (P-5, G-6).
std::vector<Instrument> all() {
    return {
        {3, kDemoProbe, InstrumentKind::probe, {{-540, -175, "0.2"}, {-170, 195, "0.2"}}, true},
        {5, "P-5", InstrumentKind::probe, {}, true},
        {8, "P-8", InstrumentKind::probe, {{-345, 20, "-0.4"}}, true},
        {1, "P-1", InstrumentKind::probe, {{-420, -12, "1.1"}}},
        {7, "H-7", InstrumentKind::spot, {{-90, 275, "0.5"}}, true},
        {4, "G-4", InstrumentKind::gun, {{-60, 305, "-0.5"}}},
        {6, "G-6", InstrumentKind::gun},
        {12, "S-12", InstrumentKind::strip, {}, false, kPacketSteps, 365},
        {90, "S-20", InstrumentKind::strip, {}, false, kSinglesSteps, 300, "30"},
        {9, "S-9", InstrumentKind::strip, {}, false, kPacketSteps, 3},
    };
}

std::string dateText(std::chrono::sys_days today, int days) {
    return records::toText(analytics::Date{today + std::chrono::days{days}});
}

InstrumentDraft draftOf(const Instrument& row, std::chrono::sys_days today, const std::string& probeAddress) {
    InstrumentDraft draft;
    draft.name = row.name;
    draft.kind = row.kind;
    draft.placement = analytics::Placement::wetInk;
    if (row.kind == InstrumentKind::probe) {
        draft.unit = analytics::TemperatureUnit::celsius;
        draft.type = analytics::ThermocoupleType::k;
        draft.toleranceClass = analytics::ToleranceClass::iecClass1;
        draft.resolution = "0.1";
        draft.rangeLow = "-50";
        draft.rangeHigh = "1000";
    } else if (row.kind == InstrumentKind::strip) {
        draft.steps = row.steps;
        draft.stripTolerance = "2";
        draft.expiry = dateText(today, row.expiry);
        draft.packCount = row.singles;
        draft.batch = "T 07";
    } else {
        draft.statedTolerance = "3";
        draft.resolution = "0.5";
        draft.rangeLow = "-20";
        draft.rangeHigh = "700";
    }
    if (row.name == std::string{kDemoProbe}) {
        draft.catalogue = kDemoCatalogueId;
        draft.address = probeAddress;
    }
    return draft;
}

records::Record certificateOf(const Certificate& row, const std::string& instrument, std::chrono::sys_days today) {
    CertificateDraft draft;
    draft.instrument = instrument;
    draft.date = dateText(today, row.date);
    draft.due = dateText(today, row.due);
    draft.coverageFactor = "2";
    draft.points = {{"250", "0.1", "0.5"}, {"300", row.correction, "0.5"}, {"350", row.correction, "0.6"}};
    const auto certificate = shop::instruments::certificateFrom(draft, today);
    assert(certificate);
    return *certificate;
}

records::InstrumentDescribed described(const Instrument& row, const std::string& id, std::chrono::sys_days today,
                                       const std::string& probeAddress) {
    constexpr std::int64_t kFirstSingle = 60;
    auto draft = draftOf(row, today, {});
    auto made = shop::instruments::instrumentFrom(draft, {{}, {kDemoCatalogueId}});
    assert(made);
    made->number = row.number;
    if (!draft.catalogue.empty()) {
        made->address = probeAddress; // a plain path, as the tests and the demo attach their simulated probe
    }
    return shop::instruments::numbered(*std::move(made), id, kFirstSingle);
}

} // namespace

std::vector<records::Record> demoInstruments(const std::function<std::string()>& makeId, std::chrono::sys_days today,
                                             const std::string& probeAddress) {
    std::vector<records::Record> list;
    for (const auto& row : all()) {
        const auto instrument = described(row, makeId(), today, probeAddress);
        list.emplace_back(instrument);
        for (const auto& certificate : row.certificates) {
            list.push_back(certificateOf(certificate, instrument.instrument, today));
        }
        if (row.checked) {
            const records::InstrumentOnFile onFile{instrument, records::toInstrument(instrument.spec)};
            list.push_back(demoCheck(onFile, analytics::CheckKind::ice, today));
            list.push_back(demoCheck(onFile, analytics::CheckKind::boiling, today));
        }
    }
    return list;
}

std::optional<records::CheckDone> demoCheckIfDecided(const records::InstrumentOnFile& instrument,
                                                     analytics::CheckKind kind, std::chrono::sys_days today,
                                                     double errorFahrenheit) {
    constexpr auto kUnit = analytics::TemperatureUnit::fahrenheit;
    const auto air = analytics::airPressure(
        analytics::SeaLevelReport{analytics::Pressure::fromKilopascal(101.3), analytics::Altitude::fromMetres(120.0)});
    const auto bath = kind == analytics::CheckKind::ice ? analytics::iceReference() : analytics::boilingReference(*air);
    const analytics::Calibration calibration{instrument.instrument, today};
    analytics::CheckRequest request;
    request.kind = kind;
    request.reference = *bath;
    request.reading = shop::instruments::readByHand({bath->at.in(kUnit) + errorFahrenheit, kUnit}, "32.0",
                                                    analytics::TemperatureDifference::fromFahrenheit(0.1));
    const auto result = analytics::judgeCheck(calibration, request);
    assert(result);
    return shop::instruments::checkFrom(instrument.described.instrument, *result, *air, kUnit);
}

records::Record demoCheck(const records::InstrumentOnFile& instrument, analytics::CheckKind kind,
                          std::chrono::sys_days today, double errorFahrenheit) {
    const auto done = demoCheckIfDecided(instrument, kind, today, errorFahrenheit);
    assert(done);
    return *done;
}

} // namespace holdfast::kiosk::demo
