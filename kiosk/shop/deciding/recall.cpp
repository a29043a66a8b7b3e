#include "kiosk/shop/deciding/recall.hpp"

#include "kiosk/records/json_object.hpp"

#include <algorithm>
#include <set>
#include <tuple>

namespace holdfast::kiosk::shop::deciding {
namespace {

void finish(RecallList& list) {
    std::stable_sort(list.lines.begin(), list.lines.end(), [](const RecallLine& one, const RecallLine& other) {
        return std::tie(one.customer, one.day, one.runNumber, one.lotNumber) <
               std::tie(other.customer, other.day, other.runNumber, other.lotNumber);
    });
    std::set<std::string> customers;
    std::set<std::pair<std::string, std::string>> cartons; // two customers may count their cartons alike
    for (const auto& line : list.lines) {
        customers.insert(line.customer);
        for (const auto& carton : line.cartons) {
            cartons.emplace(line.customer, carton);
        }
        list.pieces += line.pieces;
    }
    list.customers = static_cast<int>(customers.size());
    list.cartons = static_cast<int>(cartons.size());
}

} // namespace

RecallList recallOf(const std::vector<records::ReachedCarton>& reached) {
    RecallList list;
    std::set<std::string> lots;
    std::set<std::string> shipped;
    for (const auto& one : reached) {
        lots.insert(one.lot);
        if (one.pieces <= 0) {
            continue;
        }
        shipped.insert(one.lot);
        list.lines.push_back(
            {one.customer, one.cartons, one.pieces, one.runNumber, one.lotNumber, one.run, one.lot, one.day});
    }
    list.lots = static_cast<int>(lots.size());
    list.lotsHere = static_cast<int>(lots.size() - shipped.size());
    finish(list);
    return list;
}

RecallList recallOf(const std::vector<records::MoveRow>& moves, const std::string& run, std::int64_t runNumber,
                    const std::string& lot, int lotNumber) {
    RecallList list;
    list.lots = 1;
    for (const auto& row : moves) {
        const auto& move = row.moved;
        if (!row.corrected && move.to == records::PiecePlace::shipped && move.count > 0) {
            list.lines.push_back({move.customer, move.cartons, move.count, runNumber, lotNumber, run, lot, move.day});
        }
    }
    list.lotsHere = list.lines.empty() ? 1 : 0;
    finish(list);
    return list;
}

} // namespace holdfast::kiosk::shop::deciding
