#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/reports/report.hpp"

#include <optional>
#include <string>
#include <vector>

/// Whom to call about which cartons.
namespace holdfast::kiosk::reports {

/// A lot that the recall reaches, as the book has it.
struct RecallLot final {
    std::int64_t run = 0;
    std::string runTitle{};
    int lot = 1;
    records::LotState state = records::LotState::open;
    records::PiecesOfLot pieces{};
    std::vector<records::PiecesMoved> shipped{}; ///< uncorrected moves out of the house
};

enum class RecallReach { lot, batch, bucket, run, complaint };
struct RecallSubject final {
    RecallReach reach = RecallReach::lot;
    std::string batch{};  ///< the maker's; of a bucket its number
    std::int64_t run = 0; ///< of a lot or run; of a complaint its own number
    int lot = 0;          ///< of a lot
};

struct RecallLine final {
    std::vector<std::string> cartons{};
    int pieces = 0;
    std::optional<analytics::Date> day{};
    std::int64_t run = 0;
    int lot = 1;
    records::LotState state = records::LotState::open;
};
struct RecallCustomer final {
    std::string name{};              ///< empty: not written down
    std::vector<RecallLine> lines{}; ///< by day, run and lot; those without a day first
    int pieces = 0;
    int cartons = 0; ///< different marks
};
/// What did not go out. `pieces` is what the shelf count says, else made less what went elsewhere; absent: nobody said.
struct RecallHere final {
    std::int64_t run = 0;
    std::string runTitle{};
    int lot = 1;
    records::LotState state = records::LotState::open;
    std::optional<int> pieces{};
    bool nothingShipped = false;
};

struct RecallList final {
    RecallSubject subject{};
    std::string shop{};
    drivers::WallTime printed{};
    std::vector<RecallCustomer> customers{}; ///< by name
    std::vector<RecallHere> here{};
    int pieces = 0;  ///< shipped
    int cartons = 0; ///< different marks, customer by customer
    int lots = 0;
};

/// Moves of nothing or less count for nothing; lots named twice are taken once. A lot stands under `here` if nothing of
/// it was shipped, or some of it is left as far as anybody said.
[[nodiscard]] RecallList recallListOf(const RecallSubject& subject, const std::vector<RecallLot>& lots);

[[nodiscard]] Reported recallList(const RecallList& list, const ReportStyle& style);
/// One line for each carton; a move's pieces stand in its first. What is here follows with an empty customer and the
/// place said.
[[nodiscard]] std::string csvOf(const RecallList& list, const wording::Speech& speech);

} // namespace holdfast::kiosk::reports
