#pragma once

#include "kiosk/shop/trending/terms.hpp"

namespace holdfast::kiosk::shop::trending {

/// A print that went through the wash: its lot's margin and whether it held.
struct WashPoint final {
    FactIndex print = kNoFact;
    FactIndex lot = kNoFact;
    FactIndex run = kNoFact;
    analytics::TemperatureDifference margin{}; ///< mean of the lot's drawn readings
    bool held = false;                         ///< to the last cycle asked; failed: at any
};

struct WashCurve final {
    double intercept = 0.0;  ///< log odds of holding at no margin
    double aKelvin = 0.0;    ///< log odds of holding a kelvin of margin
    double aKelvinLow = 0.0; ///< 95 %, profile likelihood
    double aKelvinHigh = 0.0;
    [[nodiscard]] double holdsAt(analytics::TemperatureDifference margin) const noexcept;
};

/// The margin at which a share holds.
struct MarginFor final {
    double share = 0.0;
    analytics::TemperatureDifference margin{};
    std::optional<analytics::TemperatureDifference> low{}; ///< 95 %; absent: no limit on that side
    std::optional<analytics::TemperatureDifference> high{};
    bool beyondSeen = false; ///< no print with that margin was washed
};

struct WashMargin final {
    std::vector<WashPoint> points{}; ///< by time
    std::int64_t held = 0;
    std::int64_t failed = 0;
    std::int64_t lotsHeld = 0;
    std::int64_t lotsFailed = 0;
    Figure<WashCurve> curve{tl::unexpected(Refusal{})};
    std::vector<MarginFor> margins{}; ///< for 95 and 99 in a hundred; none where the curve is refused or does not rise
    /// A cure ladder would tell sooner: twelve squares from raw to cured, washed together.
    bool offerCureLadder = true;
};

/// Ten failures and ten survivals, each from five lots, are asked for (decisions 6).
inline constexpr std::int64_t kWashEvents = 10;
inline constexpr std::int64_t kWashLots = 5;
inline constexpr int kLadderSquares = 12;

/// Firth's logistic of holding on margin, profile limits. Void loads count for nothing.
[[nodiscard]] WashMargin washMargin(const TrendFacts& facts, const TrendFilter& filter);

} // namespace holdfast::kiosk::shop::trending
