#include "analytics/cure/names.hpp"
#include "kiosk/wording/notices.hpp"
#include "kiosk/wording/sentences.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;
using namespace holdfast::kiosk;

namespace {

/// Every enumerator that has a name, from 0 on.
template <class Enum>
std::vector<Enum> all() {
    std::vector<Enum> values;
    for (int i = 0; nameOf(static_cast<Enum>(i)) != "unknown"; ++i) {
        values.push_back(static_cast<Enum>(i));
    }
    return values;
}

Reason fullReason(ReasonCode code) {
    Reason reason;
    reason.code = code;
    reason.layer = 2;
    reason.subject = "P-3";
    reason.value = Temperature::fromFahrenheit(286);
    reason.limit = Temperature::fromFahrenheit(285);
    reason.other = Temperature::fromFahrenheit(300);
    reason.guard = TemperatureDifference::fromFahrenheit(5);
    reason.difference = TemperatureDifference::fromFahrenheit(6);
    reason.duration = Duration{7};
    reason.needed = Duration{90};
    reason.at = Duration{34};
    reason.count = 3;
    return reason;
}

} // namespace

TEST_CASE("every reason is a sentence with all its figures", "[wording]") {
    wording::Speech speech;
    speech.layers = {"white", "black"};
    const auto codes = all<ReasonCode>();
    REQUIRE(codes.size() > 60);
    for (const auto code : codes) {
        const auto text = wording::sentence(fullReason(code), speech);
        INFO(nameOf(code) << ": " << text);
        CHECK(text.find('[') == std::string::npos);
        CHECK(text.find('{') == std::string::npos);
        CHECK((text.back() == '.' || text.back() == '?'));
    }
}

TEST_CASE("every remedy, verdict word and window fault has its text", "[wording]") {
    const wording::Speech speech;
    for (const auto remedy : all<Remedy>()) {
        CHECK(wording::sentence(remedy, speech).find('[') == std::string::npos);
    }
    for (const auto value : all<Word>()) {
        CHECK(wording::word(value, speech).find('[') == std::string::npos);
    }
    for (const auto advice : all<Advice>()) {
        CHECK(wording::sentence(advice, speech).find('[') == std::string::npos);
    }
    for (const auto fault : all<WindowFault>()) {
        CHECK(wording::sentence(fault, speech).find('[') == std::string::npos);
    }
}

TEST_CASE("every failure, refusal and probe trouble says what happened, what was kept, what to do", "[wording]") {
    const wording::Speech speech;
    const auto complete = [](const wording::Notice& notice) {
        INFO(notice.line());
        CHECK(notice.line().find('[') == std::string::npos);
        CHECK(notice.line().find('{') == std::string::npos);
        CHECK_FALSE(notice.happened.empty());
        CHECK_FALSE(notice.kept.empty());
        CHECK_FALSE(notice.toDo.empty());
    };
    for (int i = 0; i <= static_cast<int>(ledger::FailureCode::inputOutput); ++i) {
        complete(wording::noticeOf(ledger::Failure{static_cast<ledger::FailureCode>(i), "log"}, wording::Kept::book,
                                   speech));
    }
    for (int i = 0; i <= static_cast<int>(shop::RefusalCause::flashDoesNotApply); ++i) {
        complete(wording::noticeOf(shop::Refusal{static_cast<shop::RefusalCause>(i), "R1", 7}, speech));
    }
    for (int i = 0; i <= static_cast<int>(shop::ProbeTrouble::notDescribed); ++i) {
        complete(wording::noticeOf(static_cast<shop::ProbeTrouble>(i), speech));
    }
}

TEST_CASE("a strip's interval names the end that is known", "[wording]") {
    const wording::Speech speech;
    auto reason = fullReason(ReasonCode::stripInterval);
    CHECK(wording::sentence(reason, speech).find("between") != std::string::npos);
    reason.limit.reset();
    CHECK(wording::sentence(reason, speech).find("or more") != std::string::npos);
    reason.limit = reason.value;
    reason.value.reset();
    CHECK(wording::sentence(reason, speech).find("or less") != std::string::npos);
}

TEST_CASE("a layer without a colour is called by its place", "[wording]") {
    wording::Speech speech;
    speech.layers = {"white", ""};
    CHECK(speech.layer(1) == "white");
    CHECK(speech.layer(2) == "layer 2");
    CHECK(speech.layer(9) == "layer 9");
    CHECK(speech.layer(std::nullopt) == "the film");
}
