#include "kiosk/shop/deciding/pieces.hpp"

#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::deciding {
namespace {

using records::MoveRow;
using records::PiecePlace;

const MoveRow* rowOf(const std::vector<MoveRow>& moves, const std::string& entry) {
    const auto found = std::find_if(moves.begin(), moves.end(), [&](const MoveRow& row) { return row.entry == entry; });
    return found == moves.end() ? nullptr : &*found;
}

bool standsUncorrected(const std::vector<records::CountRow>& counts, const std::string& entry) {
    const bool known = std::any_of(counts.begin(), counts.end(), [&](const auto& row) { return row.entry == entry; });
    return known &&
           std::none_of(counts.begin(), counts.end(), [&](const auto& row) { return row.counted.corrects == entry; });
}

std::int64_t goneOf(const records::PiecesOfLot& pieces) {
    return std::int64_t{pieces.shipped} + pieces.retained + pieces.tested + pieces.scrapped;
}

} // namespace

tl::expected<MoveKept, Faults> moveFrom(const MoveDraft& draft, const LotOfPieces& lot) {
    Fields fields;
    MoveKept kept;
    auto& move = kept.move;
    move.lot = lot.lot;
    move.to = draft.to;
    move.corrects = draft.corrects;
    const auto count = draft.corrects ? fields.count(draft.count, "count") : fields.countOfSome(draft.count, "count");
    if (draft.corrects && trimmed(draft.count).empty()) {
        fields.fault(Cause::countMissing, "count");
    }
    move.count = count.value_or(0);
    move.day = fields.day(draft.day, "day");
    if (draft.to == PiecePlace::shipped) {
        move.customer = fields.text(draft.customer, "customer");
        move.cartons = fields.names(draft.cartons, "cartons");
        if (move.customer.empty() && move.count > 0) {
            fields.fault(Cause::customerMissing, "customer");
        }
    }
    const auto* before = draft.corrects ? rowOf(lot.moves, *draft.corrects) : nullptr;
    if (draft.corrects && (before == nullptr || before->corrected)) {
        fields.fault(Cause::entryCorrected);
    }
    if (lot.scrapped && draft.to != PiecePlace::scrapped && move.count > 0) {
        fields.fault(Cause::lotScrapped);
    }
    if (!fields.faults().empty()) {
        return tl::unexpected(fields.faults());
    }
    const std::int64_t gone = goneOf(lot.pieces) - (before != nullptr ? before->moved.count : 0) + move.count;
    kept.said.moreThanMade = lot.pieces.made && gone > *lot.pieces.made;
    kept.said.fromHeldLot = lot.held && draft.to == PiecePlace::shipped && move.count > 0;
    return kept;
}

MoveDraft correctionOf(const MoveRow& row) {
    MoveDraft draft;
    draft.to = row.moved.to;
    draft.count = std::to_string(row.moved.count);
    draft.day = row.moved.day ? records::toText(*row.moved.day) : std::string{};
    draft.customer = row.moved.customer;
    draft.cartons = namesJoined(row.moved.cartons);
    draft.corrects = row.entry;
    return draft;
}

CountDraft correctionOf(const records::CountRow& row) {
    const auto typed = [](const std::optional<int>& count) { return count ? std::to_string(*count) : std::string{}; };
    return {typed(row.counted.made), typed(row.counted.here), row.entry};
}

tl::expected<records::PiecesCounted, Faults> countFrom(const CountDraft& draft, const LotOfPieces& lot) {
    Fields fields;
    records::PiecesCounted counted;
    counted.lot = lot.lot;
    counted.made = fields.count(draft.made, "made");
    counted.here = fields.count(draft.here, "here");
    counted.corrects = draft.corrects;
    if (trimmed(draft.made).empty() && trimmed(draft.here).empty()) {
        fields.fault(Cause::countMissing, "made");
    }
    if (draft.corrects && !standsUncorrected(lot.counts, *draft.corrects)) {
        fields.fault(Cause::entryCorrected);
    }
    const auto least = draft.corrects    ? std::optional<std::int64_t>{goneOf(lot.pieces)}
                       : lot.pieces.made ? std::optional<std::int64_t>{*lot.pieces.made}
                                         : std::nullopt;
    if (counted.made && least && *counted.made < *least) {
        fields.fault(Cause::countRunsBackwards, "made", std::to_string(*least));
    }
    if (!fields.faults().empty()) {
        return tl::unexpected(fields.faults());
    }
    return counted;
}

std::optional<PiecesSum> sumOf(const records::PiecesOfLot& pieces) {
    if (!pieces.made) {
        return std::nullopt;
    }
    PiecesSum sum;
    sum.hereCounted = pieces.here.has_value();
    const auto left = *pieces.made - goneOf(pieces);
    sum.pieces = {
        *pieces.made,    pieces.shipped, pieces.here.value_or(static_cast<int>(std::max<std::int64_t>(left, 0))),
        pieces.retained, pieces.tested,  pieces.scrapped};
    const auto balance = analytics::balanceOf(sum.pieces);
    if (!balance) {
        return std::nullopt;
    }
    sum.balance = *balance;
    return sum;
}

std::vector<MoveHistory> historiesOf(const std::vector<MoveRow>& moves) {
    std::vector<MoveHistory> all;
    for (const auto& row : moves) {
        const auto& corrects = row.moved.corrects;
        const auto known = std::find_if(all.begin(), all.end(), [&](const MoveHistory& history) {
            return corrects && history.chain.front().entry == *corrects;
        });
        if (known != all.end()) {
            known->chain.insert(known->chain.begin(), row);
        } else {
            all.push_back({{row}});
        }
    }
    return all;
}

} // namespace holdfast::kiosk::shop::deciding
