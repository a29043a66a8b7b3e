#include "kiosk/wording/language.hpp"
#include "tests/kiosk/wording/support/tables.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast::kiosk::wording;
using namespace holdfast::wording_test;

namespace {

/// Said alike in both languages: units, names and words that are the same in both.
const std::set<std::string> kSaidAlike{
    "inks.chemistry.plastisol",
    "inks.hours",
    "inks.hours-minutes",
    "inks.minutes",
    "instruments.check.fact-error",
    "instruments.check.foot",
    "instruments.check.metre",
    "instruments.check.unit-hpa",
    "instruments.check.unit-inhg",
    "instruments.check.unit-kpa",
    "instruments.check.unit-mmhg",
    "readings.dryer.belt-value",
    "readings.dryer.metres",
    "reports.demo",
    "runs.no",
    "scale.gel",
    "shop.no",
    "shop.people.field.pin",
    "shop.people.roles",
    "shop.section.roles",
    "shop.settings.language.en",
    "shop.settings.language.es",
    "shop.settings.unit.C",
    "shop.settings.unit.F",
    "shop.sign.pin",
    "shop.settings.sheet_paper.a4",
    "tests.no",
    "trends.page.usual",
};

} // namespace

TEST_CASE("each English table has its Spanish one with the same keys, none less and none more", "[wording][spanish]") {
    REQUIRE(tablesOf("en") == tablesOf("es"));
    for (const auto& name : tablesOf("en")) {
        INFO("table: " << name);
        const auto english = tableOf("en", name);
        const auto spanish = tableOf("es", name);
        for (const auto& [key, sentence] : english) {
            INFO(key << ": " << sentence);
            CHECK(spanish.count(key) == 1);
        }
        for (const auto& [key, sentence] : spanish) {
            INFO(key << ": " << sentence);
            CHECK(english.count(key) == 1);
        }
    }
}

TEST_CASE("the kiosk says in Spanish what the Spanish tables hold", "[wording][spanish]") {
    for (const auto& [key, english, spanish] : pairs()) {
        INFO(key);
        CHECK(Language::ofCode("es").text(key) == spanish);
        CHECK(Language::ofCode("en").text(key) == english);
    }
}

TEST_CASE("a Spanish sentence has the arguments of the English one", "[wording][spanish]") {
    for (const auto& [key, english, spanish] : pairs()) {
        INFO(key << ": " << english << " | " << spanish);
        CHECK(argumentsOf(spanish) == argumentsOf(english));
        CHECK(timesIn(spanish, "{") == timesIn(spanish, "}"));
    }
}

TEST_CASE("no Spanish sentence is empty or still English", "[wording][spanish]") {
    for (const auto& [key, english, spanish] : pairs()) {
        INFO(key << ": " << english << " | " << spanish);
        CHECK(spanish.find_first_not_of(" \t\n") != std::string::npos);
        if (hasLetters(english)) {
            CHECK((spanish == english) == (kSaidAlike.count(key) == 1));
        }
    }
    for (const auto& key : kSaidAlike) {
        INFO(key);
        CHECK(Language::spanish().has(key));
    }
}

TEST_CASE("a Spanish sentence has the figures and signs of the English one and ends as it does", "[wording][spanish]") {
    for (const auto& [key, english, spanish] : pairs()) {
        INFO(key << ": " << english << " | " << spanish);
        CHECK(figuresOf(spanish) == figuresOf(english));
        for (const auto* sign : {"°", "±", "−", "–", "·", "…", "?", "\n"}) {
            INFO("sign: " << sign);
            CHECK(timesIn(spanish, sign) == timesIn(english, sign));
        }
        CHECK(endOf(spanish) == endOf(english));
    }
}

TEST_CASE("Spanish opens its questions and uses no straight quotes", "[wording][spanish]") {
    for (const auto& [key, english, spanish] : pairs()) {
        INFO(key << ": " << spanish);
        CHECK(timesIn(spanish, "¿") == timesIn(spanish, "?"));
        CHECK(timesIn(spanish, "¡") == timesIn(spanish, "!"));
        CHECK(timesIn(spanish, "“") == timesIn(spanish, "”"));
        CHECK(spanish.find_first_of("\"'") == std::string::npos);
    }
}

TEST_CASE("a button, card or sentence named in a Spanish sentence is named as it stands", "[wording][spanish]") {
    std::map<std::string, std::set<std::string>> names; // small English text → the Spanish ones
    const auto bare = [](const std::string& text) {
        return small(endOf(text) == "." ? text.substr(0, text.size() - 1) : text);
    };
    for (const auto& [key, english, spanish] : pairs()) {
        names[bare(english)].insert(bare(spanish));
    }
    int named = 0;
    for (const auto& [key, english, spanish] : pairs()) {
        const auto quoted = between(english, "“", "”");
        const auto saidInSpanish = between(spanish, "“", "”");
        // The commands' own words stay English.
        if (startsWith(key, "command.") || quoted.size() != saidInSpanish.size()) {
            continue;
        }
        for (std::size_t i = 0; i < quoted.size(); ++i) {
            if (const auto found = names.find(bare(quoted[i])); found != names.end()) {
                INFO(key << ": " << spanish);
                CHECK(found->second.count(bare(saidInSpanish[i])) == 1);
                ++named;
            }
        }
    }
    CHECK(named >= 8);
}

TEST_CASE("nothing unproven sounds proven or cured in Spanish", "[wording][spanish]") {
    const std::set<std::string> english{"cannot", "neither", "never", "no", "nobody", "none", "not", "nothing"};
    const std::set<std::string> spanish{"nada", "nadie", "ni", "ninguna", "ningún", "no", "nunca", "sin"};
    int denied = 0;
    for (const auto& [key, said, saidInSpanish] : pairs()) {
        if (denies(said, english, {"proof", "prov"}) || denies(said, english, {"cured"}) ||
            said.find("nproven") != std::string::npos) {
            INFO(key << ": " << said << " | " << saidInSpanish);
            CHECK(denies(saidInSpanish, spanish, {"curad", "demostr", "demuestr"}));
            ++denied;
        }
    }
    CHECK(denied >= 25);
}

TEST_CASE("the verdicts cannot be taken for one another in Spanish", "[wording][spanish]") {
    const auto& language = Language::spanish();
    std::set<std::string> verdicts;
    for (const auto* key : {"word.cured", "word.under-cured", "word.overheated", "word.not-proven", "word.refused",
                            "word.window-closed", "word.probe-lost", "word.no-probe", "word.not-written"}) {
        const auto word = language.text(key);
        INFO(key << ": " << word);
        CHECK(verdicts.insert(word).second);
        const auto parts = wordsOf(word);
        const bool saysCured =
            std::find(parts.begin(), parts.end(), wordsOf(language.text("word.cured")).front()) != parts.end();
        CHECK(saysCured == (std::string{key} == "word.cured"));
    }
    CHECK(verdicts.count(language.text("lot.cleared")) == 0);
    CHECK(language.text("lot.unproven") == language.text("word.not-proven"));
    CHECK(language.text("readings.flash.word.not-proven") == language.text("word.not-proven"));
}

TEST_CASE("the pad of Spanish has each letter of the language once, and those of English", "[wording][spanish]") {
    const auto letters = Language::spanish().text("pad.letters");
    for (char c = 'a'; c <= 'z'; ++c) {
        CHECK(timesIn(letters, std::string(1, c)) == 1);
    }
    for (const auto* letter : {"ñ", "á", "é", "í", "ó", "ú", "ü"}) {
        INFO(letter);
        CHECK(timesIn(letters, letter) == 1);
    }
    CHECK(letters.size() == 26 + 7 * 2); // of two bytes each in UTF-8
}
