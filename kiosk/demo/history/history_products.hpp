#pragma once

#include "kiosk/demo/history/chance.hpp"
#include "kiosk/demo/history/history_facts.hpp"

#include <vector>

/// What the shop prints: all of it invented.
namespace holdfast::kiosk::demo::making {

struct Product final {
    DemoDryer dryer = DemoDryer::north;
    double share = 0.0; ///< of the dryer's runs
    Cloth cloth = Cloth::cotton;
    Ink ink = Ink::standard;
    std::vector<const char*> colours{}; ///< bottom first; the first of two is the underbase
    const char* garment = "";
    bool hasBuckets = true; ///< else it is stirred fresh and not labelled
};

/// One of the dryer's, by its share; only such as ask what the dryer is usually set to if `usual`.
[[nodiscard]] const Product& productFor(DemoDryer dryer, bool usual, Chance& chance);

struct Order final {
    const char* title;
    const char* customer;
};
[[nodiscard]] const Order& orderFor(Chance& chance);

/// What a dryer is set to for a cure.
[[nodiscard]] analytics::Temperature setPointOf(DemoDryer dryer, analytics::Temperature cure) noexcept;
[[nodiscard]] analytics::Temperature usualCureOf(DemoDryer dryer) noexcept;

/// Where the film is overheated: the lower of the cloth's two ceilings.
[[nodiscard]] analytics::Temperature ceilingOf(Cloth cloth) noexcept;
/// The one above which the cloth itself is spoiled.
[[nodiscard]] analytics::Temperature hardCeilingOf(Cloth cloth) noexcept;

} // namespace holdfast::kiosk::demo::making
