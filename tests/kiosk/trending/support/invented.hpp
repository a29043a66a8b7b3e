#pragma once

#include "kiosk/records/trend_queries.hpp"
#include "kiosk/shop/trending/terms.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::shop::trending::testing {

inline constexpr std::int64_t kHourMs = 3'600'000;
/// Monday 2026-03-02, midnight UTC.
inline constexpr std::int64_t kMonday = 1'772'409'600'000;

/// A book by hand: two dryers, two probes and a strip, lots with readings where the case puts them.
class Invented final {
public:
    Invented();

    records::TrendFacts facts{};

    void turn(records::FloorAction action, std::int64_t at, FactIndex dryer = 0);
    FactIndex bucket(std::int64_t number, const std::vector<FactIndex>& parts = {}, std::int64_t at = kMonday);
    /// A run with its one lot of 100 pieces.
    FactIndex lot(std::int64_t at, FactIndex dryer = 0, const std::vector<FactIndex>& buckets = {},
                  const std::string& family = "standard", const std::string& clothLot = {});
    FactIndex reading(FactIndex lot, std::int64_t at, double margin,
                      records::ReadingReason reason = records::ReadingReason::drawn, FactIndex instrument = 0);
    FactIndex strip(FactIndex lot, std::int64_t at, std::optional<double> low, std::optional<double> high);
    FactIndex print(FactIndex lot, const std::string& shelf = {});
    FactIndex load(std::int64_t number, records::LoadWord word = records::LoadWord::valid);
    FactIndex wash(FactIndex print, std::int64_t at, records::TestOutcome outcome, FactIndex load = kNoFact);
    FactIndex complaint(FactIndex lot, std::int64_t at,
                        records::ComplaintKind what = records::ComplaintKind::washedOut);
    records::TrendHold& hold(FactIndex lot, records::HoldCause cause, const std::string& because);
    void ship(FactIndex lot, std::int64_t at, int pieces);
    /// A started dryer, a lot and one reading of that margin, a day after another from Monday on.
    void days(const std::vector<double>& margins, FactIndex dryer = 0);
};

/// Beyond what a guard of 2 °C leaves in doubt.
[[nodiscard]] analytics::Word wordOf(double margin);

} // namespace holdfast::kiosk::shop::trending::testing
