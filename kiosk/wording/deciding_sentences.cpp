#include "kiosk/wording/deciding_sentences.hpp"

#include "kiosk/wording/instrument_sentences.hpp"

namespace holdfast::kiosk::wording {
namespace {

using shop::deciding::ComplaintEffect;
using shop::tracing::Gap;

std::string nameOf(records::HoldCause cause) {
    switch (cause) {
    case records::HoldCause::reading:
        return "reading";
    case records::HoldCause::test:
        return "test";
    case records::HoldCause::complaint:
        return "complaint";
    case records::HoldCause::instrument:
        return "instrument";
    case records::HoldCause::missedReading:
        return "missed-reading";
    case records::HoldCause::beltStopped:
        return "belt-stopped";
    }
    return {};
}

std::string nameOf(analytics::LotStanding standing) {
    using Standing = analytics::LotStanding;
    switch (standing) {
    case Standing::settingUp:
        return "setting-up";
    case Standing::open:
        return "open";
    case Standing::cleared:
        return "cleared";
    case Standing::unproven:
        return "unproven";
    case Standing::onHold:
        return "on-hold";
    case Standing::released:
        return "released";
    case Standing::reRun:
        return "re-run";
    case Standing::scrapped:
        return "scrapped";
    }
    return {};
}

std::string nameOf(records::TestKind kind) {
    using Kind = records::TestKind;
    switch (kind) {
    case Kind::stretch:
        return "stretch";
    case Kind::rub:
        return "rub";
    case Kind::wash:
        return "wash";
    case Kind::bleedWatch:
        return "bleed-watch";
    case Kind::shrink:
        return "shrink";
    case Kind::waterDrop:
        return "water-drop";
    case Kind::tape:
        return "tape";
    case Kind::solventRub:
        return "solvent-rub";
    case Kind::split:
        return "split";
    case Kind::own:
        return "own";
    }
    return {};
}

std::string decisionFault(shop::deciding::Cause cause) {
    using Cause = shop::deciding::Cause;
    switch (cause) {
    case Cause::noWord:
        return "no-word";
    case Cause::nothingToDecide:
        return "nothing-to-decide";
    case Cause::scrappedIsFinal:
        return "scrapped-is-final";
    case Cause::childrensWearUnderCured:
        return "childrens-wear-under-cured";
    case Cause::childrensWearNotProven:
        return "childrens-wear-not-proven";
    case Cause::needsReason:
        return "needs-reason";
    case Cause::needsEntitledSigner:
        return "needs-entitled-signer";
    case Cause::needsSecondEntitledSigner:
        return "needs-second-entitled-signer";
    case Cause::laboratoryReportMissing:
        return "laboratory-report-missing";
    case Cause::holdGone:
        return "hold-gone";
    case Cause::noHoldChosen:
        return "no-hold-chosen";
    case Cause::nothingShipped:
        return "nothing-shipped";
    default:
        return {};
    }
}

std::string nameOf(shop::deciding::Cause cause) {
    using Cause = shop::deciding::Cause;
    switch (cause) {
    case Cause::textTooLong:
        return "text-too-long";
    case Cause::controlSign:
        return "control-sign";
    case Cause::notADay:
        return "not-a-day";
    case Cause::countMissing:
        return "count-missing";
    case Cause::notACount:
        return "not-a-count";
    case Cause::countBelowZero:
        return "count-below-zero";
    case Cause::countOfNone:
        return "count-of-none";
    case Cause::countTooLarge:
        return "count-too-large";
    case Cause::countRunsBackwards:
        return "count-runs-backwards";
    case Cause::lotScrapped:
        return "lot-scrapped";
    case Cause::entryCorrected:
        return "entry-corrected";
    case Cause::customerMissing:
        return "customer-missing";
    case Cause::whatMissing:
        return "what-missing";
    case Cause::complaintClosed:
        return "complaint-closed";
    case Cause::causeMissing:
        return "cause-missing";
    case Cause::tooManyPictures:
        return "too-many-pictures";
    case Cause::alreadyStruck:
        return "already-struck";
    case Cause::refusedReading:
        return "refused-reading";
    case Cause::nothingSeen:
        return "nothing-seen";
    default:
        return decisionFault(cause);
    }
}

std::string nameOf(Gap gap) {
    switch (gap) {
    case Gap::noReading:
        return "no-reading";
    case Gap::readingMissed:
        return "reading-missed";
    case Gap::kindNever:
        return "kind-never";
    case Gap::methodMissing:
        return "method-missing";
    case Gap::cyclesMissing:
        return "cycles-missing";
    case Gap::noRetainedPiece:
        return "no-retained-piece";
    case Gap::chemicalContent:
        return "chemical-content";
    }
    return {};
}

std::string nameOf(ComplaintEffect effect) {
    switch (effect) {
    case ComplaintEffect::none:
        return "none";
    case ComplaintEffect::holds:
        return "holds";
    case ComplaintEffect::recallToDecide:
        return "recall";
    case ComplaintEffect::heldAlready:
        return "held-already";
    case ComplaintEffect::lotScrapped:
        return "lot-scrapped";
    case ComplaintEffect::tiedToNone:
        return "tied-to-none";
    }
    return {};
}

std::string numbers(const std::vector<std::int64_t>& all) {
    std::string text;
    for (const auto number : all) {
        text += (text.empty() ? "" : ", ") + std::to_string(number);
    }
    return text;
}

} // namespace

std::string nameOf(records::PiecePlace place) {
    switch (place) {
    case records::PiecePlace::shipped:
        return "shipped";
    case records::PiecePlace::retained:
        return "retained";
    case records::PiecePlace::tested:
        return "tested";
    case records::PiecePlace::scrapped:
        return "scrapped";
    }
    return {};
}

std::string nameOf(records::DecisionWord word) {
    switch (word) {
    case records::DecisionWord::released:
        return "released";
    case records::DecisionWord::reRun:
        return "re-run";
    case records::DecisionWord::scrapped:
        return "scrapped";
    case records::DecisionWord::recalled:
        return "recalled";
    }
    return {};
}

std::string nameOf(records::ComplaintKind kind) {
    using Kind = records::ComplaintKind;
    switch (kind) {
    case Kind::washedOut:
        return "washed-out";
    case Kind::cracked:
        return "cracked";
    case Kind::peeled:
        return "peeled";
    case Kind::bled:
        return "bled";
    case Kind::scorched:
        return "scorched";
    case Kind::rubbedOff:
        return "rubbed-off";
    case Kind::feel:
        return "feel";
    case Kind::other:
        return "other";
    }
    return {};
}

std::string nameOf(records::StruckCause cause) {
    switch (cause) {
    case records::StruckCause::probeFellOut:
        return "probe-fell-out";
    case records::StruckCause::wrongPrint:
        return "wrong-print";
    case records::StruckCause::leadCaught:
        return "lead-caught";
    case records::StruckCause::garbledTrace:
        return "garbled-trace";
    }
    return {};
}

std::string word(records::HoldCause cause, const Speech& speech) {
    return speech.text("holds.cause." + nameOf(cause));
}

std::string sentence(records::HoldCause cause, const Speech& speech) {
    return speech.text("holds.cause-long." + nameOf(cause));
}

std::string word(records::DecisionWord word, const Speech& speech) {
    return speech.text("holds.word." + nameOf(word));
}

std::string chosenText(records::DecisionWord word, const Speech& speech) {
    return speech.text("holds.choose." + nameOf(word));
}

std::string word(analytics::LotStanding standing, const Speech& speech) {
    return speech.text("holds.standing." + nameOf(standing));
}

std::string word(records::ComplaintKind kind, const Speech& speech) {
    return speech.text("holds.complaint.kind." + nameOf(kind));
}

std::string word(records::StruckCause cause, const Speech& speech) {
    return speech.text("holds.struck." + nameOf(cause));
}

std::string word(records::BeltPosition position, const Speech& speech) {
    return speech.text(position == records::BeltPosition::left    ? "holds.where.left"
                       : position == records::BeltPosition::right ? "holds.where.right"
                                                                  : "holds.where.centre");
}

std::string kindText(records::TestKind kind, const Speech& speech) {
    return speech.text("holds.kind." + nameOf(kind));
}

std::string deedText(shop::tracing::Deed deed, const Speech& speech) {
    return speech.text(deed == shop::tracing::Deed::stood     ? "holds.trace.deed.stood"
                       : deed == shop::tracing::Deed::tested  ? "holds.trace.deed.tested"
                       : deed == shop::tracing::Deed::decided ? "holds.trace.deed.decided"
                                                              : "holds.trace.deed.found");
}

std::string sentence(const shop::deciding::Fault& fault, const Speech& speech) {
    return speech.text("holds.fault." + nameOf(fault.cause), {{"text", fault.text}});
}

std::string sentence(const shop::tracing::NotTested& gap, const std::string& method, const std::string& print,
                     const Speech& speech) {
    return speech.text("holds.trace.gap." + nameOf(gap.gap), {{"lot", std::to_string(gap.lot)},
                                                              {"kind", kindText(gap.kind, speech)},
                                                              {"method", method},
                                                              {"print", print},
                                                              {"done", std::to_string(gap.done)},
                                                              {"count", std::to_string(gap.count)}});
}

std::string sentence(ComplaintEffect effect, int lot, const Speech& speech) {
    return speech.text("holds.complaint.effect." + nameOf(effect), {{"lot", std::to_string(lot)}});
}

std::string piecesText(const records::HoldPlaced& hold, const std::optional<int>& made, const Speech& speech) {
    const auto count = hold.count ? hold.count : hold.pieces && !hold.pieces->last ? std::nullopt : made;
    if (!hold.pieces) {
        return count ? speech.text("holds.pieces.whole-count", {{"count", std::to_string(*count)}})
                     : speech.text("holds.pieces.whole");
    }
    const auto first = std::to_string(hold.pieces->first);
    if (!hold.pieces->last) {
        return speech.text("holds.pieces.open", {{"first", first}});
    }
    const int pieces = hold.count.value_or(*hold.pieces->last - hold.pieces->first + 1);
    return speech.text(
        "holds.pieces.range",
        {{"first", first}, {"last", std::to_string(*hold.pieces->last)}, {"count", std::to_string(pieces)}});
}

std::string balanceText(const std::optional<shop::deciding::PiecesSum>& sum, const Speech& speech) {
    if (!sum) {
        return speech.text("holds.pieces.no-balance");
    }
    const auto difference = sum->balance.difference;
    return difference == 0 ? speech.text("holds.pieces.balances")
                           : speech.text(difference > 0 ? "holds.pieces.missing" : "holds.pieces.too-many",
                                         {{"count", std::to_string(difference > 0 ? difference : -difference)}});
}

std::string moveText(const records::PiecesMoved& move, const Speech& speech) {
    if (move.count == 0) {
        return speech.text("holds.move.taken-back");
    }
    return speech.text("holds.move." + nameOf(move.to),
                       {{"count", std::to_string(move.count)},
                        {"customer", move.customer.empty() ? speech.text("holds.recall.no-customer") : move.customer}});
}

std::string recallSumText(int pieces, int cartons, int customers, int lots, const Speech& speech) {
    const auto part = [&](const char* what, int count) {
        return speech.text(std::string{"holds.count-of."} + what, {{"count", std::to_string(count)}});
    };
    return speech.text("holds.recall.sum", {{"parts", part("pieces", pieces) + ", " + part("cartons", cartons) + ", " +
                                                          part("customers", customers) + ", " + part("lots", lots)}});
}

std::string countText(const records::PiecesCounted& count, const Speech& speech) {
    const auto made = std::to_string(count.made.value_or(0));
    const auto here = std::to_string(count.here.value_or(0));
    const auto* key = count.made && count.here ? "holds.count.both"
                      : count.made             ? "holds.count.made"
                                               : "holds.count.here";
    return speech.text(key, {{"made", made}, {"here", here}});
}

std::string shelfText(const shop::deciding::ShelfSum& sum, const Speech& speech) {
    std::string text;
    if (!sum.missing.empty()) {
        text = speech.text("holds.shelf.missing", {{"bins", numbers(sum.missing)}});
    }
    if (!sum.differing.empty()) {
        text += (text.empty() ? "" : " ") + speech.text("holds.shelf.differing", {{"bins", numbers(sum.differing)}});
    }
    return text;
}

std::string dayOf(std::int64_t wallMilliseconds, int utcOffsetMinutes) {
    return dateText(drivers::localDay({wallMilliseconds, utcOffsetMinutes}));
}

std::string whenText(std::int64_t wallMilliseconds, int utcOffsetMinutes) {
    return dayOf(wallMilliseconds, utcOffsetMinutes) + " " + clockText(wallMilliseconds, utcOffsetMinutes);
}

} // namespace holdfast::kiosk::wording
