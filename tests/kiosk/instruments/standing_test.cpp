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

constexpr Date kStandingDay{std::chrono::year{2026} / 11 / 25};
constexpr std::chrono::days kDay{1};

analytics::Instrument probeOfShop() {
    analytics::Instrument instrument;
    instrument.name = "P-3";
    instrument.type = analytics::ThermocoupleType::k;
    instrument.toleranceClass = analytics::ToleranceClass::iecClass1;
    return instrument;
}

analytics::Instrument gun() {
    analytics::Instrument instrument;
    instrument.name = "G-4";
    instrument.kind = analytics::InstrumentKind::gun;
    instrument.statedTolerance = TemperatureDifference::fromCelsius(2);
    return instrument;
}

analytics::Instrument stripsOfShop(std::optional<Date> expiry) {
    analytics::Instrument instrument;
    instrument.name = "S";
    instrument.kind = analytics::InstrumentKind::strip;
    instrument.strip =
        analytics::StripSteps{{Temperature::fromFahrenheit(280)}, TemperatureDifference::fromFahrenheit(2), expiry};
    return instrument;
}

analytics::InkFamily reached(double cureC) {
    analytics::InkFamily family;
    family.cure = Temperature::fromCelsius(cureC);
    return family;
}

analytics::InkFamily held(double cureC) {
    auto family = reached(cureC);
    family.hold = analytics::Duration{60};
    return family;
}

analytics::Certificate certificate(Date due) {
    return {due - std::chrono::days{365},
            due,
            2.0,
            {{Temperature::fromCelsius(160), TemperatureDifference{}, TemperatureDifference::fromCelsius(0.5)}}};
}

Standing standing(const analytics::Instrument& instrument) {
    return standingOf(instrument, kStandingDay, analytics::starterFamilies(), {});
}

std::string said(const Standing& standing, const std::string& name, const wording::Speech& speech = {}) {
    std::string text;
    for (const auto& line : wording::standingSentences(standing, name, speech)) {
        text += line + "\n";
    }
    return text;
}

std::string said(const analytics::Instrument& instrument) {
    return said(standing(instrument), instrument.name);
}

/// What nobody may read of an instrument that does not prove.
bool soundsProving(const std::string& text) {
    return text.find("can prove") != std::string::npos || text.find("must show at least") != std::string::npos;
}

} // namespace

TEST_CASE("without certificate or check an instrument proves nothing, and it is said what that does", "[instruments]") {
    const auto now = standing(probeOfShop());
    CHECK(now.ground == Ground::none);
    CHECK(now.lack == Lack::nothingYet);
    CHECK_FALSE(now.provesSomething());
    const auto text = said(probeOfShop());
    CHECK(text.find("proves no film cured") != std::string::npos);
    CHECK(text.find("“P-3 has no certificate or passed check in date”") != std::string::npos);
}

TEST_CASE("a certificate counts up to and including its due day", "[instruments]") {
    auto instrument = probeOfShop();
    instrument.certificates = {certificate(kStandingDay)};
    CHECK(standing(instrument).ground == Ground::certificate);
    CHECK(standing(instrument).until == kStandingDay);
    CHECK(standing(instrument).provesSomething());
    instrument.certificates = {certificate(kStandingDay - kDay)};
    const auto over = standing(instrument);
    CHECK(over.lack == Lack::expired);
    CHECK(over.until == kStandingDay - kDay);
    CHECK(said(instrument).find("ended on 2026-11-24") != std::string::npos);
}

TEST_CASE("a passed check is a ground, a failed one takes it away", "[instruments]") {
    auto instrument = probeOfShop();
    instrument.checks = {{analytics::CheckKind::ice, true, kStandingDay - kDay, kStandingDay + 29 * kDay}};
    CHECK(standing(instrument).ground == Ground::check);
    CHECK(wording::shortText(standing(instrument), {}) == "check due 2026-12-24");
    instrument.checks.push_back({analytics::CheckKind::boiling, false, kStandingDay, kStandingDay});
    CHECK(standing(instrument).lack == Lack::checkFailed);
    CHECK_FALSE(standing(instrument).provesSomething());
    CHECK(said(instrument).find("newest check failed") != std::string::npos);
}

TEST_CASE("an instrument in date without any tolerance proves nothing, and it is said where", "[instruments]") {
    analytics::Instrument bare;
    bare.name = "X";
    bare.checks = {{analytics::CheckKind::ice, true, kStandingDay, kStandingDay + 30 * kDay}};
    CHECK(standing(bare).ground == Ground::check);
    CHECK_FALSE(standing(bare).provesSomething());
    CHECK(said(bare).find("no tolerance is stated") != std::string::npos);
}

// decisions 4, Strip: used in date; decisions 2: past its expiry it proves nothing cured.
TEST_CASE("strips prove up to and including their day, and nothing past it", "[instruments]") {
    const auto over = stripsOfShop(kStandingDay - kDay);
    CHECK(standing(over).lack == Lack::stripExpired);
    CHECK(said(over).find("“The strip is past its date”") != std::string::npos);
    CHECK(said(over).find("Take a fresh packet") != std::string::npos);
    CHECK_FALSE(soundsProving(said(over)));
    const auto today = stripsOfShop(kStandingDay);
    CHECK(standing(today).ground == Ground::stripInDate);
    CHECK(standing(today).provesSomething());
    CHECK(said(today).find("good until 2026-11-25") != std::string::npos);
    CHECK(said(stripsOfShop({})).find("No date is known for them") != std::string::npos);
}

TEST_CASE("strips of which nobody stated a tolerance prove no film cured", "[instruments]") {
    auto bare = stripsOfShop(kStandingDay);
    bare.strip.reset();
    CHECK_FALSE(standing(bare).provesSomething());
    CHECK_FALSE(soundsProving(said(bare)));
    CHECK(said(bare).find("Its strips prove no film cured:") == 0);
}

// decisions 4, Surface gun: "Never cured".
TEST_CASE("a surface gun never proves cured, whatever certificate it has", "[instruments]") {
    auto instrument = gun();
    instrument.certificates = {certificate(kStandingDay)};
    const auto now = standing(instrument);
    CHECK(now.ground == Ground::certificate);
    CHECK_FALSE(now.provesSomething());
    CHECK(now.isInOrder());
    const auto text = said(instrument);
    CHECK(text.find("A surface gun never proves cured") == 0);
    CHECK(text.find("good until 2026-11-25") != std::string::npos);
    CHECK_FALSE(soundsProving(text));
    CHECK_FALSE(standingOf(instrument, kStandingDay, {}, {}).provesSomething());
}

// decisions 4, Surface gun: under-cured if surface + g <= L. A gun's placement is 3 C (decisions 2, MEM), its maker's
// stated tolerance 2 C: g = 1.644854 (z at 5 %, normal table) x sqrt(2^2/3 + 3^2) = 5.29 C by hand, 160 - 5.29 =
// 154.71.
TEST_CASE("a gun's standing says up to where a shot shows too cool", "[instruments]") {
    wording::Speech speech;
    speech.figures = {analytics::TemperatureUnit::celsius, 1};
    const auto now = standingOf(gun(), kStandingDay, {reached(160)}, {});
    REQUIRE(now.proofs.size() == 1);
    CHECK(now.proofs.front().mostTooCool().celsius() == Approx(154.71).margin(0.005));
    CHECK(said(now, "G-4", speech).find("only a shot of 154.7\u00A0°C or less shows too cool") != std::string::npos);
    auto bare = gun();
    bare.statedTolerance.reset();
    CHECK(said(bare).find("it shows nothing: no tolerance is stated") != std::string::npos);
}

// A strip or a surface gun cannot be checked in a bath (check.fault.not-for-bath).
TEST_CASE("a gun without anything valid is told to be calibrated, never to be checked in a bath", "[instruments]") {
    auto instrument = gun();
    const auto check = [](const std::string& text) {
        CHECK(text.find("A surface gun never proves cured") == 0);
        CHECK(text.find("Have it calibrated and add the certificate.") != std::string::npos);
        CHECK(text.find("boiling") == std::string::npos);
        CHECK(text.find("check it") == std::string::npos);
        CHECK_FALSE(soundsProving(text));
    };
    CHECK_FALSE(standing(instrument).isInOrder());
    check(said(instrument));
    instrument.certificates = {certificate(kStandingDay - kDay)};
    check(said(instrument));
    CHECK(said(instrument).find("ended on 2026-11-24") != std::string::npos);
    instrument.checks = {{analytics::CheckKind::comparison, false, kStandingDay, kStandingDay}};
    check(said(instrument));
}

// decisions 4, Spot: for cured, reading - 1.5 C stands for the sustained peak. A certified spot's g is what the same
// probe has at the limit, so it must show 1.5 C more.
TEST_CASE("a spot thermometer must show 1.5 °C more than a probe", "[instruments]") {
    auto instrument = probeOfShop();
    instrument.certificates = {certificate(kStandingDay)};
    const auto asProbe = standingOf(instrument, kStandingDay, {reached(160)}, {});
    instrument.kind = analytics::InstrumentKind::spot;
    const auto asSpot = standingOf(instrument, kStandingDay, {reached(160)}, {});
    REQUIRE(asProbe.proofs.size() == 1);
    REQUIRE(asSpot.proofs.size() == 1);
    CHECK((asSpot.proofs.front().least() - asProbe.proofs.front().least()).celsius() == Approx(1.5));
    CHECK(said(asSpot, "H-7").find("a held maximum lies about") != std::string::npos);
    CHECK(said(asProbe, "P-3").find("held maximum") == std::string::npos);
}

// decisions 4, Spot and Strip: with a hold or pairs never cured by them.
TEST_CASE("what sees no time proves no ink that asks for one", "[instruments]") {
    auto spot = probeOfShop();
    spot.kind = analytics::InstrumentKind::spot;
    spot.certificates = {certificate(kStandingDay)};
    for (const auto& instrument : {spot, stripsOfShop(kStandingDay)}) {
        const auto some = standingOf(instrument, kStandingDay, {reached(150), held(160)}, {});
        CHECK(some.timedInks == TimedInks::some);
        CHECK(some.provesSomething());
        REQUIRE(some.proofs.size() == 1);
        CHECK(some.proofs.front().limit.celsius() == Approx(150));
        CHECK(said(some, "X").find("that takes a ride with a probe") != std::string::npos);
        const auto all = standingOf(instrument, kStandingDay, {held(160)}, {});
        CHECK(all.timedInks == TimedInks::all);
        CHECK_FALSE(all.provesSomething());
        CHECK_FALSE(soundsProving(said(all, "X")));
    }
    spot.kind = analytics::InstrumentKind::probe;
    CHECK(standingOf(spot, kStandingDay, {held(160)}, {}).timedInks == TimedInks::none);
}

TEST_CASE("every sentence of an instrument's standing stands in both tables", "[instruments]") {
    auto spot = probeOfShop();
    spot.kind = analytics::InstrumentKind::spot;
    auto noStrip = stripsOfShop({});
    noStrip.strip.reset();
    auto bareGun = gun();
    bareGun.statedTolerance.reset();
    for (auto instrument : {probeOfShop(), spot, gun(), bareGun, stripsOfShop({}), stripsOfShop(kStandingDay),
                            stripsOfShop(kStandingDay - kDay), noStrip}) {
        for (int step = 0; step < 5; ++step) {
            instrument.certificates.clear();
            instrument.checks.clear();
            if (step == 1 || step == 2) {
                instrument.certificates = {certificate(step == 1 ? kStandingDay : kStandingDay - kDay)};
            } else if (step >= 3) {
                instrument.checks = {{analytics::CheckKind::comparison, step == 3, kStandingDay, kStandingDay}};
            }
            for (const auto* code : {"en", "es"}) {
                wording::Speech speech;
                speech.language = &wording::Language::ofCode(code);
                const auto now = standing(instrument);
                const auto text = said(now, instrument.name, speech) + wording::shortText(now, speech);
                INFO(text);
                CHECK(text.find('[') == std::string::npos);
                CHECK(text.find('{') == std::string::npos);
            }
        }
    }
}
