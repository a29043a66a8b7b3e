#include "kiosk/records/ink_records.hpp"

#include <cmath>

namespace holdfast::kiosk::records {
namespace {

using analytics::AuthoredTemperature;
using analytics::Temperature;
using analytics::TemperatureUnit;

std::optional<Temperature> plain(const std::optional<AuthoredTemperature>& t) {
    return t ? std::optional{t->temperature()} : std::nullopt;
}

AuthoredTemperature authored(Temperature t, TemperatureUnit unit) {
    constexpr double kSteps = 1e9;
    return {std::round(t.in(unit)*kSteps) / kSteps, unit};
}

std::optional<AuthoredTemperature> authored(const std::optional<Temperature>& t, TemperatureUnit unit) {
    return t ? std::optional{authored(*t, unit)} : std::nullopt;
}

} // namespace

analytics::InkFamily toFamily(const FamilyRecord& record) {
    analytics::InkFamily family;
    family.name = record.name;
    family.revision = record.revision;
    family.chemistry = record.chemistry;
    if (record.gel) {
        family.gel = analytics::GelRange{record.gel->low.temperature(), record.gel->high.temperature()};
    }
    family.cure = record.cure.temperature();
    family.hold = record.hold;
    family.unbroken = record.unbroken;
    family.ceiling = plain(record.ceiling);
    family.bleedResistance = record.bleedResistance;
    family.ease = record.ease;
    if (record.pairs) {
        const auto& [hotter, cooler] = *record.pairs;
        family.pairs = analytics::EqualCurePairs{{hotter.time, hotter.temperature.temperature()},
                                                 {cooler.time, cooler.temperature.temperature()}};
    }
    family.potLife = record.potLife;
    family.additiveBand = record.additiveBand;
    family.restBeforeTest = record.restBeforeTest;
    family.mark = record.mark;
    family.source = record.source;
    return family;
}

analytics::Fabric toFabric(const FabricRecord& record) {
    analytics::Fabric fabric;
    fabric.name = record.name;
    fabric.revision = record.revision;
    fabric.hardCeiling = plain(record.hardCeiling);
    fabric.bleedCeiling = plain(record.bleedCeiling);
    fabric.needOfAtRiskColour = record.needOfAtRiskColour;
    fabric.coloursNotAtRisk = record.coloursNotAtRisk;
    fabric.mark = record.mark;
    fabric.source = record.source;
    return fabric;
}

FamilyRecord recordOf(const analytics::InkFamily& family, TemperatureUnit unit) {
    FamilyRecord record;
    record.name = family.name;
    record.revision = family.revision;
    record.chemistry = family.chemistry;
    if (family.gel) {
        record.gel = AuthoredGel{authored(family.gel->low, unit), authored(family.gel->high, unit)};
    }
    record.cure = authored(family.cure, unit);
    record.hold = family.hold;
    record.unbroken = family.unbroken;
    record.ceiling = authored(family.ceiling, unit);
    record.bleedResistance = family.bleedResistance;
    record.ease = family.ease;
    if (family.pairs) {
        const auto& [hotter, cooler] = *family.pairs;
        record.pairs = AuthoredPairs{{hotter.time, authored(hotter.temperature, unit)},
                                     {cooler.time, authored(cooler.temperature, unit)}};
    }
    record.potLife = family.potLife;
    record.additiveBand = family.additiveBand;
    record.restBeforeTest = family.restBeforeTest;
    record.mark = family.mark;
    record.source = family.source;
    return record;
}

FabricRecord recordOf(const analytics::Fabric& fabric, TemperatureUnit unit) {
    FabricRecord record;
    record.name = fabric.name;
    record.revision = fabric.revision;
    record.hardCeiling = authored(fabric.hardCeiling, unit);
    record.bleedCeiling = authored(fabric.bleedCeiling, unit);
    record.needOfAtRiskColour = fabric.needOfAtRiskColour;
    record.coloursNotAtRisk = fabric.coloursNotAtRisk;
    record.mark = fabric.mark;
    record.source = fabric.source;
    return record;
}

} // namespace holdfast::kiosk::records
