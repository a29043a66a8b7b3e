#pragma once

#include "analytics/metrology/instrument.hpp"
#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/temperature.hpp"
#include "drivers/clock/clock.hpp"
#include "kiosk/records/print_records.hpp"
#include "kiosk/reports/report.hpp"

#include <optional>
#include <string>
#include <vector>

/// What sticks to things and people. Texts may be empty: their line is then left out.
namespace holdfast::kiosk::reports {

struct MixedOf final {
    std::string name{};
    double share = 0; ///< of the whole, by mass, 0 to 1
};

struct BucketLabel final {
    std::int64_t number = 0;
    std::string name{}; ///< the family's or the mix's
    std::string colour{};
    std::string batch{};
    std::optional<analytics::Date> expiry{};
    std::optional<analytics::Temperature> cure{};
    analytics::Duration hold{0};
    std::optional<drivers::WallTime> potLifeUntil{};
    std::vector<MixedOf> parts{}; ///< of a mix; the first six are named
};

/// Of the pieces that wait for a decision.
struct BinLabel final {
    std::int64_t number = 0;
    std::int64_t run = 0;
    std::string runTitle{};
    int lot = 1;
    std::optional<int> firstPiece{};
    std::optional<int> lastPiece{};
    std::optional<int> count{};
    std::string reason{}; ///< a full sentence of kiosk/wording
    analytics::Date date{};
};

/// Of a print under test; it is fixed beside the print, which wears the five signs in laundry pen.
struct PrintLabel final {
    std::int64_t number = 0; ///< below records::kMostPrints
    std::int64_t run = 0;
    std::string runTitle{};
    int lot = 1;
    std::optional<int> piece{};
    std::optional<records::BeltPosition> position{};
    std::optional<records::RetainedPlace> retained{};
    analytics::Date printedOn{};
};

struct PersonBadge final {
    std::int64_t number = 0;
    std::string name{};
    std::string role{};
    std::string shop{};
};

struct InstrumentLabel final {
    std::int64_t number = 0;
    std::string name{};
    std::string kind{}; ///< "Probe", a word of kiosk/wording
    std::optional<analytics::Date> certificateDue{};
};

[[nodiscard]] Reported bucketLabel(const BucketLabel& label, const ReportStyle& style);         ///< K…
[[nodiscard]] Reported binLabel(const BinLabel& label, const ReportStyle& style);               ///< L…
[[nodiscard]] Reported printLabel(const PrintLabel& label, const ReportStyle& style);           ///< T…
[[nodiscard]] Reported personBadge(const PersonBadge& badge, const ReportStyle& style);         ///< P…
[[nodiscard]] Reported instrumentLabel(const InstrumentLabel& label, const ReportStyle& style); ///< N…

} // namespace holdfast::kiosk::reports
