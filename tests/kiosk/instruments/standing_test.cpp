#include "kiosk/shop/instruments/standing.hpp"

#include "kiosk/wording/instrument_sentences.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::instruments;
using analytics::Date;
using analytics::Temperature;
using analytics::TemperatureDifference;

namespace {

constexpr Date kToday{std::chrono::year{2026} / 11 / 25};
constexpr std::chrono::days kDay{1};

analytics::Instrument probe() {
    analytics::Instrument instrument;
    instrument.name = "P-3";
    instrument.type = analytics::ThermocoupleType::k;
    instrument.toleranceClass = analytics::ToleranceClass::iecClass1;
    return instrument;
}

analytics::Certificate certificate(Date due) {
    return {due - std::chrono::days{365},
            due,
            2.0,
            {{Temperature::fromCelsius(160), TemperatureDifference{}, TemperatureDifference::fromCelsius(0.5)}}};
}

Standing standing(const analytics::Instrument& instrument) {
    return standingOf(instrument, kToday, analytics::starterFamilies(), {});
}

std::string said(const analytics::Instrument& instrument) {
    std::string text;
    for (const auto& line : wording::standingSentences(standing(instrument), instrument.name, {})) {
        text += line + "\n";
    }
    return text;
}

} // namespace

TEST_CASE("without certificate or check an instrument proves nothing, and it is said what that does", "[instruments]") {
    const auto now = standing(probe());
    CHECK(now.ground == Ground::none);
    CHECK(now.lack == Lack::nothingYet);
    CHECK_FALSE(now.provesSomething());
    const auto text = said(probe());
    CHECK(text.find("proves no film cured") != std::string::npos);
    CHECK(text.find("“P-3 has no certificate or passed check in date”") != std::string::npos);
}

TEST_CASE("a certificate counts up to and including its due day", "[instruments]") {
    auto instrument = probe();
    instrument.certificates = {certificate(kToday)};
    CHECK(standing(instrument).ground == Ground::certificate);
    CHECK(standing(instrument).until == kToday);
    CHECK(standing(instrument).provesSomething());
    instrument.certificates = {certificate(kToday - kDay)};
    const auto over = standing(instrument);
    CHECK(over.lack == Lack::expired);
    CHECK(over.until == kToday - kDay);
    CHECK(said(instrument).find("ended on 2026-11-24") != std::string::npos);
}

TEST_CASE("a passed check is a ground, a failed one takes it away", "[instruments]") {
    auto instrument = probe();
    instrument.checks = {{analytics::CheckKind::ice, true, kToday - kDay, kToday + 29 * kDay}};
    CHECK(standing(instrument).ground == Ground::check);
    CHECK(wording::shortText(standing(instrument), {}) == "check due 2026-12-24");
    instrument.checks.push_back({analytics::CheckKind::boiling, false, kToday, kToday});
    CHECK(standing(instrument).lack == Lack::checkFailed);
    CHECK_FALSE(standing(instrument).provesSomething());
    CHECK(said(instrument).find("newest check failed") != std::string::npos);
}

TEST_CASE("an instrument in date without any tolerance proves nothing, and it is said where", "[instruments]") {
    analytics::Instrument bare;
    bare.name = "X";
    bare.checks = {{analytics::CheckKind::ice, true, kToday, kToday + 30 * kDay}};
    CHECK(standing(bare).ground == Ground::check);
    CHECK_FALSE(standing(bare).provesSomething());
    CHECK(said(bare).find("no tolerance is stated") != std::string::npos);
}

TEST_CASE("strips prove nothing past their date", "[instruments]") {
    analytics::Instrument strip;
    strip.kind = analytics::InstrumentKind::strip;
    strip.strip = analytics::StripSteps{
        {Temperature::fromFahrenheit(280)}, TemperatureDifference::fromFahrenheit(2), kToday - kDay};
    CHECK(standing(strip).lack == Lack::stripExpired);
    CHECK(said(strip).find("“The strip is past its date”") != std::string::npos);
    strip.strip->expiry = kToday;
    CHECK(standing(strip).ground == Ground::stripInDate);
    CHECK(standing(strip).provesSomething());
}

TEST_CASE("every sentence of an instrument's standing stands in the table", "[instruments]") {
    auto instrument = probe();
    for (int i = 0; i < 3; ++i) {
        const auto text = said(instrument);
        CHECK(text.find('[') == std::string::npos);
        CHECK(text.find('{') == std::string::npos);
        instrument.certificates = {certificate(i == 0 ? kToday : kToday - kDay)};
    }
}
