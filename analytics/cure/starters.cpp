#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink_family.hpp"

namespace holdfast::analytics {
namespace {

constexpr Temperature fahrenheit(double degrees) {
    return Temperature::fromFahrenheit(degrees);
}

constexpr Duration hours(double n) {
    return Duration{n * 3600.0};
}

constexpr const char* kTrade = "common practice of the trade; rest from memory; ask the ink's data sheet";
constexpr const char* kMemory = "from memory; ask the ink's data sheet";
constexpr const char* kClothMemory = "from memory; ask the garment's care label";

InkFamily plastisol(const char* name, GelRange gel, double cureF, BleedResistance resistance, int ease) {
    InkFamily family;
    family.name = name;
    family.gel = gel;
    family.cure = fahrenheit(cureF);
    family.bleedResistance = resistance;
    family.ease = ease;
    family.restBeforeTest = hours(24);
    family.mark = Mark::commonPractice;
    family.source = kTrade;
    return family;
}

InkFamily held(const char* name, Chemistry chemistry, double cureF, Duration hold, int ease) {
    InkFamily family;
    family.name = name;
    family.chemistry = chemistry;
    family.cure = fahrenheit(cureF);
    family.hold = hold;
    family.ease = ease;
    family.restBeforeTest = hours(24);
    family.mark = Mark::fromMemory;
    family.source = kMemory;
    return family;
}

Fabric cloth(const char* name, double hardF, std::optional<double> bleedF, BleedResistance need) {
    Fabric fabric;
    fabric.name = name;
    fabric.hardCeiling = fahrenheit(hardF);
    if (bleedF) {
        fabric.bleedCeiling = fahrenheit(*bleedF);
    }
    fabric.needOfAtRiskColour = need;
    fabric.mark = Mark::fromMemory;
    fabric.source = kClothMemory;
    return fabric;
}

} // namespace

std::vector<InkFamily> starterFamilies() {
    const GelRange standardGel{fahrenheit(280), fahrenheit(280)};
    const GelRange lowGel{fahrenheit(250), fahrenheit(260)};
    auto discharge = held("discharge", Chemistry::discharge, 320, Duration{90}, 5);
    discharge.potLife = hours(4);
    auto silicone = held("silicone", Chemistry::silicone, 265, Duration{60}, 6);
    silicone.bleedResistance = BleedResistance::high;
    silicone.potLife = hours(4);
    return {plastisol("standard", standardGel, 320, BleedResistance::none, 1),
            plastisol("blend", lowGel, 285, BleedResistance::low, 2),
            plastisol("low-cure", lowGel, 285, BleedResistance::high, 3),
            held("water-based", Chemistry::waterBased, 320, Duration{90}, 4),
            std::move(discharge),
            std::move(silicone)};
}

std::vector<Fabric> starterFabrics() {
    return {cloth("100% cotton", 350, std::nullopt, BleedResistance::none),
            cloth("50/50 blend", 340, 330, BleedResistance::low),
            cloth("100% polyester", 340, 300, BleedResistance::high),
            cloth("100% polyester, sublimated or dark red", 340, 275, BleedResistance::high)};
}

} // namespace holdfast::analytics
