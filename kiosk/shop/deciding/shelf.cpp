#include "kiosk/shop/deciding/shelf.hpp"

#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::deciding {
namespace {

/// What stands in one bin, as told; nothing if it cannot be read.
std::optional<int> toldOf(const std::string& typed, const Bin& bin, Fields& fields) {
    if (!trimmed(typed).empty()) {
        return fields.count(typed, bin.hold);
    }
    if (!bin.pieces) {
        fields.fault(Cause::countMissing, bin.hold);
    }
    return bin.pieces;
}

void add(ShelfSum& sum, const Bin& bin, const std::optional<int>& found) {
    ++sum.bins;
    sum.expected += bin.pieces.value_or(0);
    if (!found) {
        sum.missing.push_back(bin.number);
        return;
    }
    ++sum.ticked;
    sum.counted += *found;
    if (bin.pieces && *found != *bin.pieces) {
        sum.differing.push_back(bin.number);
    }
}

} // namespace

void tick(ShelfDraft& draft, const std::string& hold) {
    if (draft.found.erase(hold) == 0) {
        draft.found.emplace(hold, std::string{});
    }
}

tl::expected<ShelfKept, Faults> shelfFrom(const ShelfDraft& draft, const std::vector<Bin>& bins) {
    Fields fields;
    ShelfKept kept;
    for (const auto& bin : bins) {
        const auto found = draft.found.find(bin.hold);
        const auto told = found == draft.found.end() ? std::nullopt : toldOf(found->second, bin, fields);
        if (told) {
            kept.counted.bins.push_back({bin.hold, *told});
        }
    }
    if (!fields.faults().empty()) {
        return tl::unexpected(fields.faults());
    }
    kept.sum = sumOf(kept.counted, bins);
    return kept;
}

ShelfSum sumOf(const ShelfDraft& draft, const std::vector<Bin>& bins) {
    Fields unread;
    ShelfSum sum;
    for (const auto& bin : bins) {
        const auto found = draft.found.find(bin.hold);
        add(sum, bin,
            found == draft.found.end() ? std::nullopt : std::optional{toldOf(found->second, bin, unread).value_or(0)});
    }
    return sum;
}

ShelfSum sumOf(const records::ShelfCounted& counted, const std::vector<Bin>& bins) {
    ShelfSum sum;
    for (const auto& bin : bins) {
        const auto found = std::find_if(counted.bins.begin(), counted.bins.end(),
                                        [&](const records::BinCount& one) { return one.hold == bin.hold; });
        add(sum, bin, found == counted.bins.end() ? std::nullopt : std::optional{found->pieces});
    }
    return sum;
}

} // namespace holdfast::kiosk::shop::deciding
