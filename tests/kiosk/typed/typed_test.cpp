#include "kiosk/shop/typed/typed.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::shop;

TEST_CASE("typed numbers: a point or a comma, no sign for thousands, nothing infinite", "[typed]") {
    CHECK(numberFrom(" 280 ") == 280.0);
    CHECK(numberFrom("99,8") == 99.8);
    CHECK(numberFrom("+2") == 2.0);
    CHECK(numberFrom("-0.5") == -0.5);
    for (const auto* typed : {"", "1,600", "1.600,5", "inf", "nan", "1e3", "0x10", "2 2", "+-2", "--2", "-"}) {
        CAPTURE(typed);
        CHECK_FALSE(numberFrom(typed));
    }
    CHECK(stepTyped("212") == 1.0);
    CHECK(stepTyped("99.85") == Approx(0.01));
    CHECK(numberTyped(280.0) == "280");
    CHECK(numberTyped(-0.5) == "-0.5");
}

TEST_CASE("a text cut for a sentence never ends within a letter", "[typed]") {
    const std::string begin(39, 'x');
    CHECK(firstSigns(begin + "\u00F1\u00F1") == begin + "\u00F1"); // two bytes each in UTF-8, RFC 3629
    CHECK(firstSigns(begin + "\u20AC\u20AC") == begin + "\u20AC"); // three bytes each
    CHECK(firstSigns("a\u00F1o") == "a\u00F1o");
    CHECK(firstSigns("").empty());
}

TEST_CASE("a text may be 200 characters long, whatever bytes they take", "[typed]") {
    const auto repeated = [](const std::string& character, std::size_t count) {
        std::string text;
        for (std::size_t i = 0; i < count; ++i) {
            text += character;
        }
        return text;
    };
    for (const std::string character : {"x", "\u00F1", "\u20AC", "\U0001F600"}) { // 1 to 4 bytes, RFC 3629, 3
        CAPTURE(character);
        CHECK(charactersIn(repeated(character, 200)) == 200);
        CHECK_FALSE(textFault(repeated(character, 200)));
        CHECK(textFault(repeated(character, 201)) == TextFault::tooLong);
    }
    CHECK(charactersIn("") == 0);
}

TEST_CASE("bytes that are part of no character count each, so that no text is endless", "[typed]") {
    CHECK(charactersIn(std::string(300, '\x80')) == 300);      // continuations without a lead
    CHECK(charactersIn("\xC3") == 1);                          // cut off
    CHECK(charactersIn("\xE2\x82x") == 3);                     // three bytes announced, two there
    CHECK(charactersIn(std::string(2, '\xFF') + "\xC0") == 3); // never in UTF-8
    CHECK(textFault(std::string(201, '\x80')) == TextFault::tooLong);
}

TEST_CASE("an authored figure keeps its digits in its own unit", "[typed]") {
    using analytics::TemperatureUnit;
    const std::optional t{analytics::AuthoredTemperature{285, TemperatureUnit::fahrenheit}};
    CHECK(authoredTyped(t, TemperatureUnit::fahrenheit) == "285");
    CHECK(authoredTyped(t, TemperatureUnit::celsius) == "140.5556"); // (285 - 32) x 5/9 = 140.55556, by hand
    const std::optional d{analytics::AuthoredDifference{1.5, TemperatureUnit::celsius}};
    CHECK(authoredTyped(d, TemperatureUnit::fahrenheit) == "2.7"); // differences by 9/5 alone, decisions 0
    CHECK(authoredTyped(std::optional<analytics::AuthoredTemperature>{}, TemperatureUnit::celsius).empty());
}

TEST_CASE("names parted by commas are each taken once, without blanks and without empty ones", "[typed]") {
    CHECK(namesTyped("").empty());
    CHECK(namesTyped(" , ,").empty());
    CHECK(namesTyped("black") == std::vector<std::string>{"black"});
    CHECK(namesTyped(" light grey,sand , SAND,sand") == std::vector<std::string>{"light grey", "sand"});
    CHECK(namesJoined(namesTyped("a,b ,c")) == "a, b, c");
    CHECK(namesJoined({}).empty());
}
