#include "kiosk/wording/risk_sentences.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using analytics::statistics::BadPieces;
using shop::trending::CureCause;

namespace {

const wording::Speech kEnglish{};

} // namespace

TEST_CASE("bad pieces are said with their range, never as a certainty that is none", "[wording][risk]") {
    CHECK(wording::badText({1, 9, 3.2, 0.99}, 36, kEnglish) == "about 3 of 36, between 1 and 9");
    CHECK(wording::badText({0, 2, 0.3, 0.2}, 36, kEnglish) == "most likely none of 36, at most 2");
    CHECK(wording::badText({0, 4, 1.4, 0.7}, 36, kEnglish) == "about 1 of 36, between 0 and 4");
    CHECK(wording::badText({0, 0, 0.01, 0.01}, 36, kEnglish) == "none of 36 to be expected");
    CHECK(wording::badText({36, 36, 35.9, 1.0}, 36, kEnglish) == "36 of 36");
    CHECK(wording::badText({2, 9, 1.2, 0.9}, 36, kEnglish) == "about 2 of 36, between 2 and 9"); // inside its range
}

TEST_CASE("chance is said in words that its size allows", "[wording][risk]") {
    CHECK(wording::chanceText(0.0001, kEnglish).find("less than once in 1000") != std::string::npos);
    CHECK(wording::chanceText(0.004, kEnglish).find("about once in 250") != std::string::npos); // 1/0.004
    CHECK(wording::chanceText(0.4, kEnglish).find("in 40 of 100") != std::string::npos);
    CHECK(wording::chanceText(1.0, kEnglish).find("in 100 of 100") != std::string::npos);
    CHECK(wording::chanceText(0.998, kEnglish).find("in >99 of 100") != std::string::npos);
}

TEST_CASE("every cause has a word and what decides it, in both languages", "[wording][risk]") {
    wording::Speech spanish;
    spanish.language = &wording::Language::spanish();
    for (std::size_t i = 0; i < shop::trending::kCureCauses; ++i) {
        const auto cause = static_cast<CureCause>(i);
        for (const auto* speech : std::initializer_list<const wording::Speech*>{&kEnglish, &spanish}) {
            CHECK(wording::word(cause, *speech).find('[') == std::string::npos);
            CHECK(wording::decidesText(cause, *speech).find('[') == std::string::npos);
        }
        CHECK(wording::word(cause, kEnglish) != wording::decidesText(cause, kEnglish));
    }
    CHECK(wording::causeText("bad-mix: pot life", CureCause::badMix, kEnglish) == "bad mix: pot life");
    CHECK(wording::causeText("bad-mix", CureCause::badMix, kEnglish) == "bad mix");
    CHECK(wording::causeText("what: ever", CureCause::other, kEnglish) == "what: ever");
}

TEST_CASE("every reason for having no figure is a full sentence, in both languages", "[wording][risk]") {
    wording::Speech spanish;
    spanish.language = &wording::Language::spanish();
    for (int i = 0; i <= static_cast<int>(shop::trending::NoFigure::tooEarly); ++i) {
        const shop::trending::Refusal refusal{static_cast<shop::trending::NoFigure>(i), 2, 8};
        for (const auto* speech : std::initializer_list<const wording::Speech*>{&kEnglish, &spanish}) {
            const auto text = wording::whyText(refusal, *speech);
            INFO(text);
            CHECK(text.back() == '.');
            CHECK(text.find('[') == std::string::npos);
            CHECK(text.find('{') == std::string::npos);
        }
    }
}

TEST_CASE("missed readings are said beside those that stayed not proven", "[wording][risk]") {
    shop::trending::Evidence evidence;
    evidence.kind = shop::trending::EvidenceKind::itsReadingsUnproven;
    evidence.count = 1;
    evidence.of = 3;
    evidence.missed = 2;
    CHECK(wording::evidenceText(evidence, kEnglish) ==
          "1 of its 3 readings stayed not proven; 2 due readings were not taken");
    evidence.count = 0;
    evidence.of = 0;
    evidence.missed = 1;
    CHECK(wording::evidenceText(evidence, kEnglish) == "1 due reading was not taken");
}

TEST_CASE("since when is a set of days, never one hour", "[wording][risk]") {
    constexpr std::int64_t kDay = 86'400'000;
    shop::trending::SinceWhen since;
    since.possible = {{0, 3 * kDay}, {5 * kDay, 5 * kDay + 3'600'000}};
    since.before = 0.02;
    since.after = 0.5;
    const auto text = wording::sinceText(since, 0, kEnglish);
    INFO(text);
    CHECK(text.find("between 1970-01-01 and 1970-01-04 or on 1970-01-06") != std::string::npos);
    CHECK(text.find("about 2 of 100") != std::string::npos);
    CHECK(text.find("about 50.") != std::string::npos);
}
