#include "kiosk/shop/testing/print_draft.hpp"

#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/testing/test_reader.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using Cause = TestFaultCause;

constexpr std::int64_t kFieldMinute = 60'000;

std::optional<records::RetainedPlace> placeFrom(const RetainedDraft& draft, TestReader& read) {
    if (!draft.retained) {
        return std::nullopt;
    }
    records::RetainedPlace place;
    place.shelf = read.name(draft.shelf, "shelf", Cause::shelfMissing);
    place.until = read.date(draft.until, "until");
    place.reprintAllowed = draft.reprintAllowed;
    return place;
}

const records::LotRow* lotOf(const PrintDraft& draft, const PrintContext& context) {
    if (context.lots.empty()) {
        return nullptr;
    }
    const auto found = std::find_if(context.lots.begin(), context.lots.end(),
                                    [&](const auto& one) { return draft.lot && one.id == *draft.lot; });
    return found == context.lots.end() ? &context.lots.back() : &*found;
}

void readRun(const PrintDraft& draft, const PrintContext& context, TestReader& read, records::PrintNamed& named) {
    const auto typed = trimmed(draft.run);
    if (typed.empty()) {
        read.fault({Cause::runMissing, "run"});
    } else if (!context.run) {
        read.fault({Cause::runUnknown, "run", firstSigns(typed)});
    } else if (const auto* lot = lotOf(draft, context)) {
        named.run = *context.run;
        named.lot = lot->id;
    } else {
        read.fault({Cause::lotMissing, "run", firstSigns(typed)});
    }
}

void readTime(const PrintDraft& draft, const PrintContext& context, TestReader& read, records::PrintNamed& named) {
    const auto at = read.time(draft.printed, "printed", context.now, context.utcOffsetMinutes);
    named.printedAt = at.value_or(context.now);
    const auto* lot = lotOf(draft, context);
    if (named.printedAt > context.now) {
        read.fault({Cause::printedInFuture, "printed"});
    } else if (at && lot != nullptr && named.printedAt + kFieldMinute <= lot->openedAt) { // the field has whole minutes
        read.fault({Cause::printedBeforeLot, "printed", {}, {}, lot->openedAt});
    }
}

bool takeNumber(const PrintContext& context, TestReader& read, records::PrintNamed& named) {
    named.print = context.printId;
    named.number = context.nextNumber;
    if (context.nextNumber < 0 || context.nextNumber >= records::kMostPrints) {
        read.fault({Cause::noNumberLeft});
        return false;
    }
    return true;
}

} // namespace

tl::expected<PrintToKeep, TestFaults> printFrom(const PrintDraft& draft, const PrintContext& context) {
    TestReader read;
    PrintToKeep made;
    readRun(draft, context, read, made.named);
    made.named.piece = read.whole(draft.piece, "piece");
    if (made.named.piece && *made.named.piece < 1) {
        read.fault({Cause::pieceNotPositive, "piece", firstSigns(trimmed(draft.piece))});
    }
    made.named.position = draft.position;
    readTime(draft, context, read, made.named);
    made.named.retained = placeFrom(draft.retained, read);
    takeNumber(context, read, made.named);
    if (!read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    records::PiecesMoved moved;
    moved.lot = made.named.lot;
    moved.to = made.named.retained ? records::PiecePlace::retained : records::PiecePlace::tested;
    moved.count = 1;
    made.moved = std::move(moved);
    return made;
}

tl::expected<PrintToKeep, TestFaults> halfOf(const records::PrintRow& whole, const PrintContext& context) {
    TestReader read;
    PrintToKeep made;
    made.named = whole.named;
    made.named.halfOf = whole.named.print;
    made.named.retained.reset();
    if (whole.ended) {
        read.fault({Cause::printEnded});
    }
    if (!takeNumber(context, read, made.named) || !read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    return made;
}

tl::expected<records::PrintChanged, TestFaults> shelfFrom(const RetainedDraft& draft, const records::PrintRow& print) {
    TestReader read;
    records::PrintChanged changed;
    changed.print = print.named.print;
    changed.retained = placeFrom(draft, read);
    if (print.ended) {
        read.fault({Cause::printEnded});
    }
    if (!read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    return changed;
}

tl::expected<records::PrintChanged, TestFaults> ended(const records::PrintRow& print, records::PrintEnd end) {
    if (print.ended) {
        return tl::unexpected(TestFaults{{Cause::printEnded}});
    }
    records::PrintChanged changed;
    changed.print = print.named.print;
    changed.retained = print.named.retained;
    changed.ended = end;
    return changed;
}

RetainedDraft draftOf(const std::optional<records::RetainedPlace>& place) {
    return place ? RetainedDraft{true, place->shelf, place->until ? records::toText(*place->until) : std::string{},
                                 place->reprintAllowed}
                 : RetainedDraft{};
}

bool isPastItsTime(const records::PrintRow& print, analytics::Date today) {
    const auto& place = print.named.retained;
    return place && place->until && *place->until < today;
}

} // namespace holdfast::kiosk::shop
