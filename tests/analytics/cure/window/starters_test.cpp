#include "window_support.hpp"

using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

TEST_CASE("every starter family and fabric may be used as it stands", "[cure][starters]") {
    for (const auto& family : starterFamilies()) {
        INFO(family.name);
        CHECK(faultsOf(family).empty());
        CHECK_FALSE(family.source.empty());
    }
    for (const auto& fabric : starterFabrics()) {
        INFO(fabric.name);
        CHECK(faultsOf(fabric).empty());
        CHECK_FALSE(fabric.source.empty());
    }
}

TEST_CASE("the starter families are those of the table", "[cure][starters]") {
    struct Row {
        const char* name;
        Chemistry chemistry;
        double cureF;
        double holdS;
        BleedResistance resistance;
        int ease;
        Mark mark;
    };
    // contracts, Starters; marks as in job.md, "Heat, ink and fabric".
    const Row rows[] = {{"standard", Chemistry::plastisol, 320, 0, BleedResistance::none, 1, Mark::commonPractice},
                        {"blend", Chemistry::plastisol, 285, 0, BleedResistance::low, 2, Mark::commonPractice},
                        {"low-cure", Chemistry::plastisol, 285, 0, BleedResistance::high, 3, Mark::commonPractice},
                        {"water-based", Chemistry::waterBased, 320, 90, BleedResistance::none, 4, Mark::fromMemory},
                        {"discharge", Chemistry::discharge, 320, 90, BleedResistance::none, 5, Mark::fromMemory},
                        {"silicone", Chemistry::silicone, 265, 60, BleedResistance::high, 6, Mark::fromMemory}};
    REQUIRE(starterFamilies().size() == std::size(rows));
    for (const auto& row : rows) {
        INFO(row.name);
        const auto family = starter(row.name);
        CHECK(family.chemistry == row.chemistry);
        CHECK(family.cure.fahrenheit() == Approx(row.cureF).margin(1e-9));
        CHECK(family.hold.count() == row.holdS);
        CHECK_FALSE(family.unbroken);
        CHECK(family.bleedResistance == row.resistance);
        CHECK(family.ease == row.ease);
        CHECK(family.mark == row.mark);
    }
    CHECK(starter("standard").gelLow().fahrenheit() == Approx(280));
    CHECK(starter("low-cure").gelLow().fahrenheit() == Approx(250));
    CHECK(starter("blend").gel->high.fahrenheit() == Approx(260));
    CHECK(starter("water-based").gelLow().celsius() == 60.0); // contracts, Shop file: without gel 60 °C
}

TEST_CASE("the starter fabrics are those of the table", "[cure][starters]") {
    // contracts, Starters.
    CHECK(cloth("100% cotton").hardCeiling->fahrenheit() == Approx(350));
    CHECK_FALSE(cloth("100% cotton").bleedCeiling);
    CHECK(cloth("50/50 blend").hardCeiling->fahrenheit() == Approx(340));
    CHECK(cloth("50/50 blend").bleedCeiling->fahrenheit() == Approx(330));
    CHECK(cloth("100% polyester").bleedCeiling->fahrenheit() == Approx(300));
    CHECK(cloth("100% polyester, sublimated or dark red").bleedCeiling->fahrenheit() == Approx(275));
    CHECK(cloth("100% cotton").needOf("white") == BleedResistance::none);
    CHECK(cloth("50/50 blend").needOf("white") == BleedResistance::low);
    CHECK(cloth("100% polyester").needOf("white") == BleedResistance::high);
}

TEST_CASE("black and listed colours need no resistance, an unnamed colour does", "[cure][fabric]") {
    auto fabric = cloth("100% polyester");
    fabric.coloursNotAtRisk = {"Navy blue", " "};
    CHECK(fabric.needOf("black") == BleedResistance::none); // contracts, Command line
    CHECK(fabric.needOf(" BLACK ") == BleedResistance::none);
    CHECK(fabric.needOf("navy Blue") == BleedResistance::none);
    CHECK(fabric.needOf("navy") == BleedResistance::high);
    CHECK(fabric.needOf("off-black") == BleedResistance::high);
    CHECK(fabric.needOf("") == BleedResistance::high);
}

TEST_CASE("a fabric lists every fault at once", "[cure][fabric]") {
    auto fabric = plainCloth(f(300), f(310));
    fabric.name = " \t";
    CHECK(faultsOf(fabric) == std::vector{FabricFault::nameEmpty, FabricFault::bleedAboveHard});
    fabric = plainCloth(f(300), Temperature::fromCelsius(NAN));
    CHECK(faultsOf(fabric) == std::vector{FabricFault::notFinite});
    CHECK(faultsOf(plainCloth(f(300), f(300))).empty());
    CHECK(faultsOf(plainCloth(std::nullopt)).empty());
}
