#include "kiosk/shop/instruments/certificate_draft.hpp"

#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/instrument_sentences.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::instruments;
using analytics::TemperatureUnit;

namespace {

constexpr analytics::Date kEntryDay{std::chrono::year{2026} / 11 / 25};

CertificateDraft good() {
    CertificateDraft draft;
    draft.instrument = "p3";
    draft.unit = TemperatureUnit::fahrenheit;
    draft.date = "2026-03-01";
    draft.due = "2027-03-01";
    draft.coverageFactor = "2";
    draft.points = {{"212", "-0.9", "0.5"},
                    {"320",
                     "\xE2\x88\x92"
                     "1,8",
                     "0.9"}};
    return draft;
}

bool has(const std::vector<FormFault>& faults, FormCause cause, const std::string& field) {
    return std::any_of(faults.begin(), faults.end(),
                       [&](const FormFault& fault) { return fault.cause == cause && fault.field == field; });
}

std::vector<FormFault> faultsOf(const CertificateDraft& draft) {
    const auto made = certificateFrom(draft, kEntryDay);
    return made ? std::vector<FormFault>{} : made.error();
}

} // namespace

TEST_CASE("a certificate is taken as copied, in the unit it was copied in", "[instruments]") {
    const auto made = certificateFrom(good(), kEntryDay);
    REQUIRE(made);
    CHECK(made->instrument == "p3");
    CHECK(made->certificate.coverageFactor == 2.0);
    REQUIRE(made->certificate.points.size() == 2);
    CHECK(made->certificate.points[1].correction == analytics::AuthoredDifference{-1.8, TemperatureUnit::fahrenheit});
    // a difference turns by 9/5 only: −1.8 °F are −1.0 °C
    CHECK(made->certificate.points[1].correction.difference().celsius() == Approx(-1.0).margin(1e-12));
}

TEST_CASE("a missing or zero k is refused", "[instruments]") {
    for (const auto* typed : {"", "0", "-2", "0.0"}) {
        auto draft = good();
        draft.coverageFactor = typed;
        CAPTURE(typed);
        CHECK(has(faultsOf(draft), FormCause::coverageFactorInvalid, "k"));
    }
    auto draft = good();
    draft.coverageFactor = "two";
    CHECK(has(faultsOf(draft), FormCause::notANumber, "k"));
    CHECK_FALSE(has(faultsOf(draft), FormCause::coverageFactorInvalid, "k"));
}

TEST_CASE("points out of order and equal points are told apart and never sorted", "[instruments]") {
    auto draft = good();
    std::swap(draft.points[0], draft.points[1]);
    CHECK(has(faultsOf(draft), FormCause::pointOutOfOrder, "point.2.at"));
    draft = good();
    draft.points[1].at = "212.0";
    CHECK(has(faultsOf(draft), FormCause::pointTwice, "point.2.at"));
}

TEST_CASE("U must be above 0 and the due day not before the day itself", "[instruments]") {
    auto draft = good();
    draft.points[0].uncertainty = "0";
    draft.points[1].uncertainty = "-0.5";
    draft.due = "2026-02-28";
    const auto faults = faultsOf(draft);
    CHECK(has(faults, FormCause::uncertaintyInvalid, "point.1.u"));
    CHECK(has(faults, FormCause::uncertaintyInvalid, "point.2.u"));
    CHECK(has(faults, FormCause::dueBeforeDate, "due"));
}

TEST_CASE("every fault of a certificate is told at once, each once and in a full sentence", "[instruments]") {
    CertificateDraft draft;
    draft.date = "2026-02-30";
    draft.due = "";
    draft.points = {{"hot", "", "nan"}};
    const auto faults = faultsOf(draft);
    CHECK(has(faults, FormCause::notADate, "date"));
    CHECK(has(faults, FormCause::dateMissing, "due"));
    CHECK(has(faults, FormCause::coverageFactorInvalid, "k"));
    CHECK(has(faults, FormCause::notANumber, "point.1.at"));
    CHECK(has(faults, FormCause::valueMissing, "point.1.correction"));
    CHECK(has(faults, FormCause::notANumber, "point.1.u"));
    CHECK(faults.size() == 6);
    for (const auto& fault : faults) {
        const auto said = wording::sentence(fault, {});
        CHECK(said.find("[") == std::string::npos);
        CHECK(said.find("{") == std::string::npos);
    }
}

TEST_CASE("a certificate without points, or of a day to come, is refused", "[instruments]") {
    auto draft = good();
    draft.points.clear();
    draft.date = "2026-11-26";
    CHECK(has(faultsOf(draft), FormCause::noPoint, "points"));
    CHECK(has(faultsOf(draft), FormCause::dateAhead, "date"));
    draft = good();
    draft.date = "2026-11-25"; // today counts
    CHECK(faultsOf(draft).empty());
}
