#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/shop_records.hpp"
#include "kiosk/records/stock_queries.hpp"
#include "kiosk/records/test_queries.hpp"

#include <string>
#include <vector>

/// Everything that the book has about one run, as the queries give it.
namespace holdfast::kiosk::shop::tracing {

struct LotTraced final {
    records::LotRow lot{};
    records::PiecesOfLot pieces{};
    std::vector<records::HoldRow> holds{};
    std::vector<records::DecisionRow> decisions{};
    std::vector<records::MoveRow> moves{};
    std::vector<records::MissedRow> missed{};
    std::vector<records::FindingSigned> findings{};
};

/// A bucket that a layer was printed from.
struct LayerBucket final {
    int layer = 1; ///< position from 1 at the bottom
    std::string colour{};
    records::BucketTree tree{};
};

struct TraceFacts final {
    records::RunPlanned plan{};
    bool finished = false;
    std::vector<LotTraced> lots{}; ///< oldest first
    std::vector<records::ReadingRow> readings{};
    std::vector<records::CrewChanged> crews{}; ///< who stood at the dryer, of each reading whose crew is known
    std::vector<records::PrintRow> prints{};
    std::vector<records::TestRow> tests{};
    std::vector<records::MethodDescribed> methods{}; ///< in use
    std::vector<records::ComplaintRow> complaints{};
    std::vector<LayerBucket> buckets{};
    bool bleedWatchDue = false; ///< a reading or the window asks for one
    std::int64_t entries = 0;   ///< of the book
    std::string head{};         ///< hash of its newest entry
};

} // namespace holdfast::kiosk::shop::tracing
