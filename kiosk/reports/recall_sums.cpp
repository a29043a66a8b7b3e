#include "kiosk/reports/recall_list.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

namespace holdfast::kiosk::reports {

namespace {

std::optional<int> leftHere(const records::PiecesOfLot& pieces) {
    if (pieces.here) {
        return pieces.here;
    }
    if (!pieces.made) {
        return std::nullopt;
    }
    return std::max(0, *pieces.made - pieces.shipped - pieces.retained - pieces.tested - pieces.scrapped);
}

bool goesOut(const records::PiecesMoved& moved) {
    return moved.to == records::PiecePlace::shipped && moved.count > 0;
}

void finish(RecallCustomer& customer) {
    std::stable_sort(customer.lines.begin(), customer.lines.end(), [](const RecallLine& a, const RecallLine& b) {
        return std::tie(a.day, a.run, a.lot) < std::tie(b.day, b.run, b.lot);
    });
    std::set<std::string> cartons;
    for (const auto& line : customer.lines) {
        cartons.insert(line.cartons.begin(), line.cartons.end());
        customer.pieces += line.pieces;
    }
    customer.cartons = static_cast<int>(cartons.size());
}

} // namespace

RecallList recallListOf(const RecallSubject& subject, const std::vector<RecallLot>& lots) {
    RecallList list;
    list.subject = subject;
    std::map<std::string, RecallCustomer> customers;
    std::set<std::pair<std::int64_t, int>> seen;
    for (const auto& lot : lots) {
        if (!seen.emplace(lot.run, lot.lot).second) {
            continue;
        }
        bool out = false;
        for (const auto& moved : lot.shipped) {
            if (goesOut(moved)) {
                out = true;
                auto& customer = customers[moved.customer];
                customer.name = moved.customer;
                customer.lines.push_back({moved.cartons, moved.count, moved.day, lot.run, lot.lot, lot.state});
            }
        }
        const auto left = leftHere(lot.pieces);
        if (!out || left.value_or(0) > 0) {
            list.here.push_back({lot.run, lot.runTitle, lot.lot, lot.state, left, !out});
        }
    }
    for (auto& [name, customer] : customers) {
        finish(customer);
        list.pieces += customer.pieces;
        list.cartons += customer.cartons;
        list.customers.push_back(std::move(customer));
    }
    list.lots = static_cast<int>(seen.size());
    return list;
}

} // namespace holdfast::kiosk::reports
