#include "kiosk/shop/deciding/complaint.hpp"

#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::deciding {

ComplaintDraft draftOf(const records::ComplaintTaken& taken) {
    ComplaintDraft draft;
    draft.complaint = taken.complaint;
    draft.number = taken.number;
    draft.customer = taken.customer;
    draft.what = taken.what;
    draft.words = taken.words;
    draft.pieces = taken.pieces ? std::to_string(*taken.pieces) : std::string{};
    draft.clue = taken.clue;
    draft.received = taken.received ? records::toText(*taken.received) : std::string{};
    draft.run = taken.run;
    draft.lot = taken.lot;
    draft.pictures = taken.pictures;
    return draft;
}

ComplaintEffect effectOf(const ComplaintDraft& draft, const ComplaintFacts& facts) {
    if (!draft.what || !records::isPrintFailure(*draft.what)) {
        return ComplaintEffect::none;
    }
    if (!draft.lot || !facts.lot) {
        return ComplaintEffect::tiedToNone;
    }
    const auto& holders = facts.lot->complaintsThatHold;
    if (!draft.complaint.empty() && std::find(holders.begin(), holders.end(), draft.complaint) != holders.end()) {
        return ComplaintEffect::heldAlready;
    }
    if (facts.lot->standing == analytics::LotStanding::scrapped) {
        return ComplaintEffect::lotScrapped;
    }
    return facts.lot->shipped > 0 ? ComplaintEffect::recallToDecide : ComplaintEffect::holds;
}

tl::expected<std::vector<records::Record>, Faults> complaintFrom(const ComplaintDraft& draft,
                                                                 const ComplaintFacts& facts, const ComplaintIds& ids) {
    Fields fields;
    records::ComplaintTaken taken;
    taken.complaint = draft.complaint.empty() ? ids.complaint : draft.complaint;
    taken.number = draft.complaint.empty() ? facts.nextNumber : draft.number;
    taken.customer = fields.text(draft.customer, "customer");
    if (taken.customer.empty()) {
        fields.fault(Cause::customerMissing, "customer");
    }
    if (draft.what) {
        taken.what = *draft.what;
    } else {
        fields.fault(Cause::whatMissing, "what");
    }
    taken.words = fields.text(draft.words, "words");
    taken.pieces = trimmed(draft.pieces).empty() ? std::nullopt : fields.countOfSome(draft.pieces, "pieces");
    taken.clue = fields.text(draft.clue, "clue");
    taken.received = fields.day(draft.received, "received");
    taken.run = draft.run;
    taken.lot = draft.lot;
    taken.pictures = draft.pictures;
    if (draft.pictures.size() > kMostPictures) {
        fields.fault(Cause::tooManyPictures, "pictures", std::to_string(kMostPictures));
    }
    if (facts.closed) {
        fields.fault(Cause::complaintClosed);
    }
    if (!fields.faults().empty()) {
        return tl::unexpected(fields.faults());
    }
    const auto effect = effectOf(draft, facts);
    std::vector<records::Record> list;
    const auto complaint = taken.complaint;
    list.emplace_back(std::move(taken));
    if (effect == ComplaintEffect::holds || effect == ComplaintEffect::recallToDecide) {
        records::HoldPlaced hold;
        hold.hold = ids.hold;
        hold.lot = facts.lot->lot;
        hold.cause = records::HoldCause::complaint;
        hold.because = complaint;
        hold.count = facts.lot->made;
        hold.bin = facts.nextBin;
        list.emplace_back(std::move(hold));
    }
    return list;
}

tl::expected<records::FindingSigned, Faults> findingFrom(const FindingDraft& draft,
                                                         const records::ComplaintTaken& taken, bool closed,
                                                         const std::vector<std::int64_t>& signers) {
    Fields fields;
    records::FindingSigned finding;
    finding.complaint = taken.complaint;
    finding.lot = taken.lot.value_or(std::string{});
    finding.cause = fields.text(draft.cause, "cause");
    finding.action = fields.text(draft.action, "action");
    finding.provenLater = draft.provenLater;
    finding.signers = signers;
    if (finding.cause.empty()) {
        fields.fault(Cause::causeMissing, "cause");
    }
    if (closed) {
        fields.fault(Cause::complaintClosed);
    }
    if (signers.empty()) {
        fields.fault(Cause::needsEntitledSigner);
    }
    if (!fields.faults().empty()) {
        return tl::unexpected(fields.faults());
    }
    return finding;
}

} // namespace holdfast::kiosk::shop::deciding
