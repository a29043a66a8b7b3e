#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/shop/trending/at_risk.hpp"
#include "kiosk/shop/trending/fix_worked.hpp"

#include <memory>
#include <optional>
#include <stop_token>
#include <string>

/// What is worked out of a complaint beside the screen.
namespace holdfast::kiosk::screens {

struct RiskAsked final {
    std::string complaint{};                              ///< id
    std::string run{};                                    ///< id
    std::optional<std::string> lot{};                     ///< id
    std::optional<shop::trending::FactorLevel> suspect{}; ///< absent: the strongest
    std::int64_t now = 0;                                 ///< wall milliseconds
    std::shared_ptr<const records::TrendFacts> facts{};   ///< as read before; absent: to be read
    bool operator==(const RiskAsked&) const = default;
};

/// What was done about it, and whether it worked.
struct FixSeen final {
    std::int64_t at = 0;
    std::string action{};
    shop::trending::Figure<shop::trending::FixVerdict> verdict{tl::unexpected(shop::trending::Refusal{})};
};

struct RiskFound final {
    std::shared_ptr<const records::TrendFacts> facts{};
    shop::trending::Figure<shop::trending::AtRisk> risk{tl::unexpected(shop::trending::Refusal{})};
    std::optional<FixSeen> fix{}; ///< absent: no finding says that anything was done
};

/// Compared with: lots from so long before the run's first on.
inline constexpr std::int64_t kLookBackWeeks = 26;

/// Null: it was asked to stop. Takes up to seconds.
[[nodiscard]] ledger::Result<std::shared_ptr<const RiskFound>>
studyRisk(const SQLite::Database& reader, const RiskAsked& asked, const std::stop_token& stop);

} // namespace holdfast::kiosk::screens
