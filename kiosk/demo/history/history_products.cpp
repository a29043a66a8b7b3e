#include "kiosk/demo/history/history_products.hpp"

#include <array>

namespace holdfast::kiosk::demo::making {
namespace {

using analytics::Temperature;

const std::vector<Product>& products() {
    static const std::vector<Product> all{
        {kNorth, 0.16, Cloth::cotton, Ink::standard, {"black"}, "natural"},
        {kNorth, 0.12, Cloth::cotton, Ink::standard, {"red"}, "white"},
        {kNorth, 0.10, Cloth::cotton, Ink::standard, {"yellow"}, "grey"},
        {kNorth, 0.08, Cloth::cotton, Ink::standard, {"orange"}, "white"},
        {kNorth, 0.12, Cloth::cotton, Ink::standard, {"white"}, "black"},
        {kNorth, 0.12, Cloth::cotton, Ink::standard, {"white", "red"}, "black"},
        {kNorth, 0.06, Cloth::cotton, Ink::standard, {"white", "yellow"}, "navy"},
        {kNorth, 0.12, Cloth::half, Ink::blend, {"white"}, "navy"},
        {kNorth, 0.06, Cloth::half, Ink::blend, {"white", "gold"}, "red"},
        {kNorth, 0.06, Cloth::half, Ink::lowCure, {"spring green"}, "sand"},
        {kSouth, 0.30, Cloth::polyester, Ink::lowCure, {"white"}, "red"},
        {kSouth, 0.20, Cloth::polyester, Ink::lowCure, {"black"}, "yellow"},
        {kSouth, 0.12, Cloth::polyester, Ink::lowCure, {"royal blue"}, "white"},
        {kSouth, 0.14, Cloth::polyester, Ink::lowCure, {"white", "yellow"}, "royal blue"},
        {kSouth, 0.10, Cloth::polyester, Ink::lowCure, {"white", "black"}, "green"},
        {kSouth, 0.06, Cloth::polyester, Ink::lowCure, {"spring green"}, "black"},
        {kSouth, 0.08, Cloth::half, Ink::blend, {"white"}, "grey"},
        {kWest, 0.36, Cloth::cotton, Ink::waterBased, {"navy"}, "natural"},
        {kWest, 0.28, Cloth::cotton, Ink::waterBased, {"green"}, "white"},
        {kWest, 0.20, Cloth::cotton, Ink::waterBased, {"teal"}, "sand"},
        {kWest, 0.08, Cloth::cotton, Ink::discharge, {"bone"}, "black", false},
        {kWest, 0.08, Cloth::polyester, Ink::silicone, {"white"}, "black", false},
    };
    return all;
}

constexpr std::array<Order, 30> kOrders{{
    {"market aprons", "Garden market"},
    {"team jerseys", "Night runners"},
    {"canvas bags", "Town library"},
    {"staff tees", "Corner bakery"},
    {"crew hoodies", "Ferry company"},
    {"marathon vests", "Night runners"},
    {"exhibition tees", "Old mill museum"},
    {"concert shirts", "Harbour choir"},
    {"climbing shirts", "Quarry climbing club"},
    {"soft-hand tees", "Ceramics studio"},
    {"festival tees", "Lakeside festival"},
    {"skating tops", "Skating rink"},
    {"faded tees", "Radio club"},
    {"club scarves", "Rowing club"},
    {"relay shirts", "Night runners"},
    {"workshop tees", "Bicycle workshop"},
    {"garden bags", "Allotment society"},
    {"usher tees", "Puppet theatre"},
    {"sailing shirts", "Sailing school"},
    {"harvest tees", "Harvest fair"},
    {"choir polos", "Tram depot choir"},
    {"camp shirts", "Village fire brigade"},
    {"training tops", "Rowing club"},
    {"museum bags", "Old mill museum"},
    {"school tees", "Hill school"},
    {"scout shirts", "Hill scouts"},
    {"keeper tops", "Valley school"},
    {"delivery tees", "Corner bakery"},
    {"dance tops", "Juggling troupe"},
    {"reading tees", "Book fair"},
}};

} // namespace

const Product& productFor(DemoDryer dryer, bool usual, Chance& chance) {
    const auto fits = [&](const Product& one) {
        return one.dryer == dryer && (!usual || cureOf(one.ink) == usualCureOf(dryer));
    };
    double all = 0.0;
    for (const auto& one : products()) {
        all += fits(one) ? one.share : 0.0;
    }
    double left = chance.uniform() * all;
    const Product* last = nullptr;
    for (const auto& one : products()) {
        if (fits(one)) {
            last = &one;
            left -= one.share;
            if (left < 0.0) {
                break;
            }
        }
    }
    return *last;
}

const Order& orderFor(Chance& chance) {
    return kOrders[chance.pick(kOrders.size())];
}

Temperature setPointOf(DemoDryer dryer, Temperature cure) noexcept {
    constexpr std::array kUsual{360.0, 335.0, 345.0}; // as the dryers are described on the first of the twelve days
    constexpr double kShare = 1.1;                    // the air is hotter than the film by a tenth of the difference
    const double usual = kUsual[static_cast<std::size_t>(dryer)];
    const double cooler = (usualCureOf(dryer) - cure).fahrenheit() * kShare;
    return Temperature::fromFahrenheit(usual - 5.0 * static_cast<double>(static_cast<int>(cooler / 5.0)));
}

Temperature usualCureOf(DemoDryer dryer) noexcept {
    return cureOf(dryer == kNorth ? Ink::standard : dryer == kSouth ? Ink::lowCure : Ink::waterBased);
}

Temperature ceilingOf(Cloth cloth) noexcept {
    constexpr std::array kFahrenheit{350.0, 330.0, 300.0};
    return Temperature::fromFahrenheit(kFahrenheit[static_cast<std::size_t>(cloth)]);
}

Temperature hardCeilingOf(Cloth cloth) noexcept {
    return Temperature::fromFahrenheit(cloth == Cloth::cotton ? 350.0 : 340.0);
}

} // namespace holdfast::kiosk::demo::making
