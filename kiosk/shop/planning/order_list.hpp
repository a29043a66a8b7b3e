#pragma once

#include "kiosk/shop/planning/plan_draft.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// An order list as other programs write it: a table in CSV (RFC 4180), separated by commas, semicolons or tabs, with
/// its columns named in the first line.
namespace holdfast::kiosk::shop {

enum class OrderFaultCause {
    empty,         ///< nothing in it
    notText,       ///< no UTF-8, or zero bytes: saved in another encoding; line
    tooManyRows,   ///< more than `kMostOrders`; nothing is taken over
    columnMissing, ///< text: its name
    columnTwice,   ///< text
    rowOfOtherLength,
    unclosedQuote,
    formula,          ///< text: begins with = + - or @, as a spreadsheet would run it
    referenceTwice,   ///< text: in this list or already planned
    layersUnreadable, ///< text: not "colour: ink / colour: ink"
    plan,             ///< `fault` says what
};

struct OrderFault final {
    OrderFaultCause cause{};
    int line = 0; ///< of the file, from 1; 0: the whole file
    std::string text{};
    std::optional<PlanFault> fault{};
};

struct OrderList final {
    std::vector<records::RunPlanned> plans{}; ///< without id and number
    std::vector<OrderFault> faults{};         ///< in the order of the lines
    int rows = 0;                             ///< under the first line, blank ones left out
};

inline constexpr int kMostOrders = 5'000;

/// Columns, in any order and case, English or Spanish: title, fabric, layers (bottom first) are needed; reference,
/// customer, pieces, garment, cloth lot, finish, children may be there; others are left alone. A bad row is left out
/// and told; the good ones are given. `known` are references that stand in the book.
[[nodiscard]] OrderList readOrders(std::string_view bytes, const Stock& stock, const std::vector<std::string>& known);

} // namespace holdfast::kiosk::shop
