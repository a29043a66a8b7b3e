#pragma once

#include "analytics/metrology/instrument.hpp"
#include "analytics/quantity/temperature.hpp"
#include "kiosk/reports/report.hpp"
#include "kiosk/shop/proving/action_card.hpp"

#include <optional>
#include <string>
#include <vector>

/// Sheets of several cards or labels, to be cut.
namespace holdfast::kiosk::reports {

/// A card for a number of pieces pulled off the belt's end.
struct PulledCard final {
    std::uint64_t number = 0; ///< behind its code A…
    int pieces = 0;
};

struct ActionCards final {
    std::vector<shop::ActionCard> dryer{shop::ActionCard::beltSlower,  shop::ActionCard::beltFaster,
                                        shop::ActionCard::hotter,      shop::ActionCard::cooler,
                                        shop::ActionCard::feedStopped, shop::ActionCard::started,
                                        shop::ActionCard::pulled,      shop::ActionCard::problem,
                                        shop::ActionCard::alsoOnBelt,  shop::ActionCard::takenOver};
    std::vector<shop::ActionCard> readings{
        shop::ActionCard::setUp, shop::ActionCard::ready,    shop::ActionCard::retake, shop::ActionCard::next,
        shop::ActionCard::drawn, shop::ActionCard::worry,    shop::ActionCard::stop,   shop::ActionCard::tryAgain,
        shop::ActionCard::wipe,  shop::ActionCard::keepStrip};
    std::vector<shop::ActionCard> positions{shop::ActionCard::left, shop::ActionCard::centre, shop::ActionCard::right};
    std::vector<analytics::Temperature> stripSteps{}; ///< ascending, at most kMostStripSteps; none: no strip cards
    std::vector<PulledCard> pulled{};
};

/// The single strips of a pack, each with its own N….
struct StripLabels final {
    std::string name{}; ///< of the strip
    std::string batch{};
    std::optional<analytics::Date> expiry{};
    std::int64_t firstNumber = 0;
    int count = 0; ///< of more than 2000 the first 2000 are printed
};

[[nodiscard]] Reported actionCards(const ActionCards& cards, const ReportStyle& style);
[[nodiscard]] Reported stripLabels(const StripLabels& labels, const ReportStyle& style);

} // namespace holdfast::kiosk::reports
