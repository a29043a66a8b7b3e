#pragma once

#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink_family.hpp"

#include <optional>
#include <string>
#include <vector>

/// Inks and cloths as authored: every temperature keeps the number and unit that was typed. The same objects stand in
/// the book (family.revised, fabric.revised) and in the shop file.
namespace holdfast::kiosk::records {

struct AuthoredGel final {
    analytics::AuthoredTemperature low;
    analytics::AuthoredTemperature high;
    bool operator==(const AuthoredGel&) const = default;
};

struct AuthoredCurePoint final {
    analytics::Duration time{0};
    analytics::AuthoredTemperature temperature;
    bool operator==(const AuthoredCurePoint&) const = default;
};

struct AuthoredPairs final {
    AuthoredCurePoint hotter;
    AuthoredCurePoint cooler;
    bool operator==(const AuthoredPairs&) const = default;
};

/// Body of family.revised, and a family of the shop file.
struct FamilyRecord final {
    std::string name;
    int revision = 1;
    analytics::Chemistry chemistry = analytics::Chemistry::plastisol;
    std::optional<AuthoredGel> gel;
    analytics::AuthoredTemperature cure;
    analytics::Duration hold{0};
    bool unbroken = false;
    std::optional<analytics::AuthoredTemperature> ceiling;
    analytics::BleedResistance bleedResistance = analytics::BleedResistance::none;
    int ease = 1;
    std::optional<AuthoredPairs> pairs;
    std::optional<analytics::Duration> potLife;
    std::optional<analytics::AdditiveBand> additiveBand;
    std::optional<analytics::Duration> restBeforeTest;
    analytics::Mark mark = analytics::Mark::fromMemory;
    std::string source;
};

/// Body of fabric.revised, and a fabric of the shop file.
struct FabricRecord final {
    std::string name;
    int revision = 1;
    std::optional<analytics::AuthoredTemperature> hardCeiling;
    std::optional<analytics::AuthoredTemperature> bleedCeiling;
    analytics::BleedResistance needOfAtRiskColour = analytics::BleedResistance::none;
    std::vector<std::string> coloursNotAtRisk;
    analytics::Mark mark = analytics::Mark::fromMemory;
    std::string source;
};

[[nodiscard]] analytics::InkFamily toFamily(const FamilyRecord& record);
[[nodiscard]] analytics::Fabric toFabric(const FabricRecord& record);
/// Written in `unit`, rounded to 1e-9 of a degree so that 285 °F stays 285.
[[nodiscard]] FamilyRecord recordOf(const analytics::InkFamily& family, analytics::TemperatureUnit unit);
[[nodiscard]] FabricRecord recordOf(const analytics::Fabric& fabric, analytics::TemperatureUnit unit);

} // namespace holdfast::kiosk::records
