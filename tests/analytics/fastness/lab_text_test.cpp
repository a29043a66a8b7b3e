#include "analytics/fastness/lab_text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace holdfast::analytics;

namespace {

const Lab kColour{52.31, 4.20, -3.05};

Lab read(std::string_view line) {
    CAPTURE(std::string{line});
    const auto colour = labFromText(line);
    REQUIRE(colour);
    return *colour;
}
LabTextFault fault(std::string_view line) {
    CAPTURE(std::string{line});
    const auto colour = labFromText(line);
    REQUIRE_FALSE(colour);
    REQUIRE(std::holds_alternative<LabTextFault>(colour.error()));
    return std::get<LabTextFault>(colour.error());
}

} // namespace

TEST_CASE("three numbers are read in the order L a b", "[fastness][colour]") {
    for (const char* line :
         {"52.31 4.20 -3.05", "52.31,4.20,-3.05", "52.31;4.20;-3.05", "52.31\t4.2\t-3.05\r\n", "52.31, 4.20, -3.05",
          " +52.31 +4.20 −3.05 ", "Lab 52.31 4.20 -3.05", "Sample01: 52.31 / 4.20 / -3.05"})
        CHECK(read(line) == kColour);
    CHECK(read("52 4 -3") == Lab{52, 4, -3});
    CHECK(read("52,4,-3") == Lab{52, 4, -3});
    CHECK(read("52,31,4") == Lab{52, 31, 4});
    CHECK(read("100 0 .5") == Lab{100, 0, 0.5});
}

TEST_CASE("a comma is the decimal sign where something else parts the numbers", "[fastness][colour]") {
    CHECK(read("52,31 4,20 -3,05") == kColour);
    CHECK(read("52,31; 4,20; -3,05") == kColour);
    CHECK(read("52,31\t4,20\t-3,05") == kColour);
    CHECK(read("52,31, 4,20, -3,05") == kColour);
    CHECK(fault("52,31,4,20,-3,05") == LabTextFault::commasUnclear);
    CHECK(fault("52,31,4,2,3") == LabTextFault::commasUnclear);
}

TEST_CASE("numbers behind their letters may come in any order with others between", "[fastness][colour]") {
    for (const char* line : {"L*=52.31 a*=4.20 b*=-3.05", "L 52.31 a 4.20 b -3.05", "a 4.2, b -3.05, L 52.31",
                             "L52.31 a4.20 b-3.05", "L*=52,31; a*=4,20; b*=-3,05", "L*: 52,31, a*: 4,20, b*: -3,05",
                             "L* 52.31 a* 4.20 b* -3.05 C* 5.19 h 324.0", "D65/10 dE00 2.1 L 52.31 A 4.2 B -3.05"})
        CHECK(read(line) == kColour);
}

TEST_CASE("a line that is no colour says why", "[fastness][colour][hostile]") {
    CHECK(fault("") == LabTextFault::empty);
    CHECK(fault(" ,; \t") == LabTextFault::empty);
    CHECK(fault("52.31 4.20") == LabTextFault::notThreeNumbers);
    CHECK(fault("52.31 4.20 -3.05 7") == LabTextFault::notThreeNumbers);
    CHECK(fault("no reading") == LabTextFault::notThreeNumbers);
    CHECK(fault("nan nan nan") == LabTextFault::notThreeNumbers);
    CHECK(fault("L 52.31 a 4.20") == LabTextFault::letterMissing);
    CHECK(fault("L -- a 4.20 b 3") == LabTextFault::letterMissing);
    CHECK(fault("L a b") == LabTextFault::letterMissing);
    CHECK(fault("L 52 a 4 b 3 L 53") == LabTextFault::letterTwice);
    std::string beyondAnyNumber(400, '9');
    beyondAnyNumber.append(" 4 3");
    CHECK(fault(beyondAnyNumber) == LabTextFault::notANumber);
}

TEST_CASE("a line that reads as a colour no surface has is refused as one", "[fastness][colour][hostile]") {
    const auto causes = [](std::string_view line) { return std::get<ColourFault>(labFromText(line).error()); };
    CHECK(causes("520.31 4.20 -3.05") == ColourFault::lightnessOutOfRange);
    CHECK(causes("L 50 a 200 b 0") == ColourFault::chromaticOutOfRange);
    CHECK(causes("-1 0 0") == ColourFault::lightnessOutOfRange);
}

TEST_CASE("no line of bytes does harm", "[fastness][colour][hostile]") {
    std::string bytes;
    for (int i = 0; i < 512; ++i) {
        bytes += static_cast<char>((i * 37) % 256);
        const auto colour = labFromText(bytes);
        CHECK((!colour || !faultOf(*colour)));
    }
}
