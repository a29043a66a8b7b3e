#pragma once

#include "kiosk/shop/tracing/not_tested.hpp"

#include <variant>

/// One order on one page, in the order an auditor asks.
namespace holdfast::kiosk::shop::tracing {

enum class Deed { stood, tested, decided, found };

/// Somebody who put a name to something about this run.
struct PersonTraced final {
    std::int64_t person = 0;
    std::vector<Deed> deeds{}; ///< each once, in the order above
    bool operator==(const PersonTraced&) const = default;
};

/// One bucket in the tree under a layer, depth first.
struct BatchLine final {
    int layer = 1;
    std::string colour{}; ///< of the layer, at its first line only
    int depth = 0;
    std::int64_t bucket = 0;
    std::string name{};
    std::string batch{}; ///< the maker's; may be empty
    bool isMix = false;
    double share = 1.0; ///< of the layer's ink
    std::optional<analytics::Date> expiry{};
};

/// Something that happened, with the number of its lot (0: of the run).
struct TrailLine final {
    std::int64_t at = 0; ///< wall milliseconds
    int lot = 0;
    std::variant<records::ReadingRow, records::MissedRow, records::TestRow, records::HoldRow, records::DecisionRow,
                 records::MoveRow, records::ComplaintRow>
        what{};
};

struct Counts final {
    int readings = 0; ///< that count
    int cured = 0;
    int bad = 0; ///< under-cured or overheated
    int notProven = 0;
    int struck = 0;
    int refused = 0;
    int missed = 0;
    int tests = 0; ///< passed, failed or noted
    int failedTests = 0;
    int voidTests = 0;
    int openHolds = 0;
    int shipped = 0; ///< pieces
    int cartons = 0; ///< different marks
};

struct TracePage final {
    Counts counts{};
    std::vector<PersonTraced> people{}; ///< by number
    int unnamed = 0;                    ///< most hands without a number in a crew that took a reading
    std::vector<BatchLine> batches{};
    std::vector<TrailLine> trail{};            ///< oldest first
    std::vector<records::PrintRow> retained{}; ///< by shelf
    std::vector<std::string> pictures{};       ///< SHA-256, each once, as the tests name them
    std::vector<NotTested> notTested{};
    std::vector<std::string> makersBatches{}; ///< each once, as they stand in the tree
};

[[nodiscard]] TracePage tracePage(const TraceFacts& facts);

} // namespace holdfast::kiosk::shop::tracing
