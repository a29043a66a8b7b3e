#pragma once

#include "kiosk/shop/trending/failure_trend.hpp"
#include "kiosk/shop/trending/instruments_compared.hpp"
#include "kiosk/shop/trending/margin_trend.hpp"
#include "kiosk/shop/trending/suspects.hpp"
#include "kiosk/shop/trending/wash_margin.hpp"

#include <memory>
#include <stop_token>

/// What Trends asks, and everything that it shows for it, worked out in one go beside the screen.
namespace holdfast::kiosk::screens {

namespace trending = shop::trending;

/// How far back margins and failures look, up to now. What failures share, the wash and the instruments look back a
/// year at least: they need many lots.
enum class TrendsSpan { quarter, halfYear, year, all };

struct TrendsQuestion final {
    std::optional<std::string> dryer{};   ///< id; empty: all of them; absent: the one that `home` names
    std::optional<std::string> family{};  ///< name
    std::optional<std::int64_t> bucket{}; ///< number
    std::optional<records::BeltPosition> position{};
    std::optional<std::string> instrument{}; ///< id
    TrendsSpan span = TrendsSpan::quarter;
    bool operator==(const TrendsQuestion&) const = default;
};

/// The first lots, episodes and weeks of a suspect and since when lots with it fail more.
struct TrendsSuspect final {
    trending::Suspect suspect{};
    trending::Figure<trending::SinceWhen> since{tl::unexpected(trending::Refusal{})};
    std::vector<trending::FactIndex> lots{}; ///< with it, of those asked about, latest first
};

struct TrendsFound final {
    TrendsQuestion question{};
    std::int64_t sequence = -1; ///< newest entry of the book it rests on, at least
    std::shared_ptr<const trending::TrendFacts> facts{};
    trending::TrendFilter filter{}; ///< of margins and failures
    trending::FactIndex dryer = trending::kNoFact;
    std::vector<trending::LotOutcome> outcomes{}; ///< of the lots that the filter holds
    std::vector<char> failed{};                   ///< by lot of the facts, of every dryer
    std::int64_t askedAt = 0;                     ///< wall milliseconds
    std::int64_t firstAt = 0;                     ///< of those lots; 0: none
    std::int64_t lastAt = 0;
    int runs = 0; ///< that they belong to
    trending::MarginTrend margin{};
    trending::FailureTrend failures{};
    trending::Figure<trending::Suspects> suspects{tl::unexpected(trending::Refusal{})}; ///< of all dryers
    std::vector<TrendsSuspect> named{}; ///< those shown, strongest first
    trending::WashMargin wash{};        ///< of all dryers
    trending::Figure<std::vector<trending::InstrumentOffset>> instruments{tl::unexpected(trending::Refusal{})};
};

struct TrendsStudy final {
    TrendsQuestion question{};
    std::string home{}; ///< id of the kiosk's own dryer; empty or without lots: the one with most lots
    std::int64_t now = 0;
    std::int64_t sequence = -1;
    /// Facts read before; absent: they are read.
    std::shared_ptr<const trending::TrendFacts> facts{};
};

/// So many suspects are looked at more closely; the rest stand on the list of all.
inline constexpr std::size_t kSuspectsShown = 3;

/// Null: it was asked to stop. Lots of minutes of reading and arithmetic go in; takes up to seconds.
[[nodiscard]] ledger::Result<std::shared_ptr<const TrendsFound>>
studyTrends(const SQLite::Database& reader, const TrendsStudy& study, const std::stop_token& stop);

/// Since when, in wall milliseconds; INT64_MIN for all.
[[nodiscard]] std::int64_t beginOf(TrendsSpan span, std::int64_t now) noexcept;

} // namespace holdfast::kiosk::screens
