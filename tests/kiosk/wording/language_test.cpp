#include "kiosk/wording/language.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::wording;

TEST_CASE("braces are filled, large first letters made, unknown braces left to be seen", "[wording]") {
    const auto language = Language::parse(R"({"a": "{Layer} needs {limit}, {other}."})");
    REQUIRE(language);
    CHECK(language->text("a", {{"layer", "black"}, {"limit", "285 °F"}}) == "Black needs 285 °F, {other}.");
    CHECK(language->text("a", {{"layer", "ámbar"}, {"limit", "1"}, {"other", "2"}}) == "Ámbar needs 1, 2.");
    CHECK(language->text("missing") == "[missing]");
}

TEST_CASE("one of a thing has its own form", "[wording]") {
    const auto language = Language::parse(R"({"lots": "{count} lots", "lots.one": "1 lot"})");
    REQUIRE(language);
    CHECK(language->text("lots", {{"count", "1"}}) == "1 lot");
    CHECK(language->text("lots", {{"count", "3"}}) == "3 lots");
}

TEST_CASE("values that hold braces or quotes are not filled again", "[wording]") {
    const auto language = Language::parse(R"({"a": "“{text}” is no code."})");
    REQUIRE(language);
    CHECK(language->text("a", {{"text", "{text}\"'{x}"}}) == "“{text}\"'{x}” is no code.");
}

TEST_CASE("a language that is not a table of texts is refused with a cause", "[wording]") {
    for (const auto* text : {"", "[]", "{\"a\": 1}", "{\"a\":", "nonsense"}) {
        INFO(text);
        CHECK_FALSE(Language::parse(text));
    }
}

TEST_CASE("every English sentence is full, and no brace is left open", "[wording]") {
    const auto& english = Language::english();
    REQUIRE(english.keys().size() > 200);
    for (const auto& key : english.keys()) {
        const auto text = english.text(key);
        INFO(key << ": " << text);
        CHECK_FALSE(text.empty());
        CHECK(std::count(text.begin(), text.end(), '{') == std::count(text.begin(), text.end(), '}'));
        if (key.rfind("reason.", 0) == 0 || key.rfind("do.", 0) == 0 || key.rfind("refusal.", 0) == 0 ||
            key.rfind("failure.", 0) == 0 || key.rfind("probe.", 0) == 0) {
            CHECK((text.back() == '.' || text.back() == '?'));
        }
    }
}
