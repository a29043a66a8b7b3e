#include "kiosk/shop/deciding/decision.hpp"

#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <array>

namespace holdfast::kiosk::shop::deciding {
namespace {

using analytics::DecisionRefusal;
using records::DecisionWord;

Cause causeOf(DecisionRefusal refusal) {
    switch (refusal) {
    case DecisionRefusal::nothingToDecide:
        return Cause::nothingToDecide;
    case DecisionRefusal::scrappedIsFinal:
        return Cause::scrappedIsFinal;
    case DecisionRefusal::childrensWearUnderCured:
        return Cause::childrensWearUnderCured;
    case DecisionRefusal::childrensWearNotProven:
        return Cause::childrensWearNotProven;
    case DecisionRefusal::needsReason:
        return Cause::needsReason;
    case DecisionRefusal::needsEntitledSigner:
        return Cause::needsEntitledSigner;
    case DecisionRefusal::needsSecondEntitledSigner:
        return Cause::needsSecondEntitledSigner;
    case DecisionRefusal::laboratoryReportMissing:
        return Cause::laboratoryReportMissing;
    }
    return Cause::nothingToDecide;
}

std::string fieldOf(DecisionRefusal refusal) {
    return refusal == DecisionRefusal::needsReason               ? "reason"
           : refusal == DecisionRefusal::laboratoryReportMissing ? "laboratory"
                                                                 : "";
}

/// A recall binds the pieces that are out as a re-run binds those that are here.
analytics::LotDecision asked(DecisionWord word) {
    switch (word) {
    case DecisionWord::released:
        return analytics::LotDecision::released;
    case DecisionWord::scrapped:
        return analytics::LotDecision::scrapped;
    case DecisionWord::reRun:
    case DecisionWord::recalled:
        break;
    }
    return analytics::LotDecision::reRun;
}

bool isEntitled(const LotFacts& facts, std::int64_t person) {
    return std::find(facts.entitled.begin(), facts.entitled.end(), Entitled{person}) != facts.entitled.end();
}

analytics::DecisionAsked askedOf(const DecisionDraft& draft, const LotFacts& facts, DecisionWord word) {
    analytics::DecisionAsked what;
    what.what = asked(word);
    what.reason = draft.reason;
    what.laboratoryReport = draft.laboratoryReport;
    for (const auto person : draft.signers) {
        what.signers.push_back({person, isEntitled(facts, person)});
    }
    return what;
}

/// Pieces of a scrapped lot that are out may still be called back.
std::vector<DecisionRefusal> refusalsFor(const DecisionDraft& draft, const LotFacts& facts, DecisionWord word) {
    auto refusals = analytics::refusalsOf(askedOf(draft, facts, word), atIssue(facts));
    if (word == DecisionWord::recalled) {
        std::erase(refusals, DecisionRefusal::scrappedIsFinal);
    }
    return refusals;
}

bool isOfSigning(Cause cause) noexcept {
    return cause == Cause::needsEntitledSigner || cause == Cause::needsSecondEntitledSigner;
}

void addHoldFaults(const DecisionDraft& draft, const LotFacts& facts, Fields& fields) {
    const auto open = openHoldsOf(facts);
    for (const auto& hold : draft.holds) {
        if (std::find(open.begin(), open.end(), hold) == open.end()) {
            fields.fault(Cause::holdGone, "holds");
            return;
        }
    }
    if (draft.holds.empty() && !open.empty() && draft.word != DecisionWord::recalled) {
        fields.fault(Cause::noHoldChosen, "holds");
    }
}

/// The lowest piece of the brackets that are run again; nothing where a whole lot is.
std::optional<int> firstPieceOf(const std::vector<std::string>& holds, const LotFacts& facts) {
    std::optional<int> first;
    for (const auto& hold : facts.holds) {
        const bool named = std::find(holds.begin(), holds.end(), hold.placed.hold) != holds.end();
        if (named && hold.placed.pieces) {
            first = std::min(first.value_or(hold.placed.pieces->first), hold.placed.pieces->first);
        }
    }
    return first;
}

/// Each of them once, in the order they signed.
std::vector<std::int64_t> signersOf(const DecisionDraft& draft, const LotFacts& facts) {
    std::vector<std::int64_t> signers;
    for (const auto person : draft.signers) {
        const bool twice = std::find(signers.begin(), signers.end(), person) != signers.end();
        if (!twice && isEntitled(facts, person)) {
            signers.push_back(person);
        }
    }
    return signers;
}

} // namespace

Faults faultsOf(const DecisionDraft& draft, const LotFacts& facts) {
    Fields fields;
    (void)fields.text(draft.reason, "reason");
    (void)fields.text(draft.laboratoryReport, "laboratory");
    if (!draft.word) {
        fields.fault(Cause::noWord, "word");
        return fields.faults();
    }
    if (draft.word == DecisionWord::recalled && facts.shipped == 0) {
        fields.fault(Cause::nothingShipped, "word");
    }
    addHoldFaults(draft, facts, fields);
    for (const auto refusal : refusalsFor(draft, facts, *draft.word)) {
        fields.fault(causeOf(refusal), fieldOf(refusal));
    }
    return fields.faults();
}

Faults faultsBeforeSigning(const DecisionDraft& draft, const LotFacts& facts) {
    auto faults = faultsOf(draft, facts);
    std::erase_if(faults, [](const Fault& fault) { return isOfSigning(fault.cause); });
    return faults;
}

bool takesTwo(const DecisionDraft& draft, const LotFacts& facts) {
    return draft.word && analytics::needsTwo(asked(*draft.word), atIssue(facts));
}

std::vector<DecisionWord> wordsFor(const LotFacts& facts) {
    constexpr std::array kAll{DecisionWord::released, DecisionWord::reRun, DecisionWord::scrapped,
                              DecisionWord::recalled};
    std::vector<DecisionWord> words;
    for (const auto word : kAll) {
        const auto refusals = refusalsFor({}, facts, word);
        const bool never = std::any_of(refusals.begin(), refusals.end(), [](DecisionRefusal refusal) {
            return refusal == DecisionRefusal::nothingToDecide || refusal == DecisionRefusal::scrappedIsFinal ||
                   refusal == DecisionRefusal::childrensWearUnderCured ||
                   refusal == DecisionRefusal::childrensWearNotProven;
        });
        if (!never && (word != DecisionWord::recalled || facts.shipped > 0)) {
            words.push_back(word);
        }
    }
    return words;
}

tl::expected<std::vector<records::Record>, Faults> decisionFrom(const DecisionDraft& draft, const LotFacts& facts,
                                                                const DecisionIds& ids) {
    auto faults = faultsOf(draft, facts);
    if (!faults.empty()) {
        return tl::unexpected(std::move(faults));
    }
    std::vector<records::Record> list;
    records::DecisionSigned decision;
    decision.decision = ids.decision;
    decision.lot = facts.lot;
    decision.word = *draft.word;
    if (decision.word != DecisionWord::recalled) {
        decision.holds = draft.holds;
    }
    decision.reason = trimmed(draft.reason);
    decision.signers = signersOf(draft, facts);
    decision.corrects = draft.corrects;
    if (decision.word == DecisionWord::released) {
        decision.belowLimit = atIssue(facts).belowLimit;
        decision.laboratoryReport = trimmed(draft.laboratoryReport);
    }
    if (decision.word == DecisionWord::reRun) {
        auto lot = facts.reRun;
        lot.lot = ids.reRunLot;
        lot.firstPiece = firstPieceOf(decision.holds, facts);
        decision.reRunLot = lot.lot;
        list.emplace_back(std::move(lot));
    }
    list.emplace_back(std::move(decision));
    return list;
}

std::vector<std::string> frequentReasons(const std::vector<std::string>& earlier, std::size_t most) {
    struct Seen final {
        std::string reason;
        int times = 0;
    };
    std::vector<Seen> seen;
    for (const auto& one : earlier) {
        const auto reason = trimmed(one);
        const auto known =
            std::find_if(seen.begin(), seen.end(), [&](const Seen& other) { return sameName(other.reason, reason); });
        if (known != seen.end()) {
            ++known->times;
        } else if (!reason.empty()) {
            seen.push_back({reason, 1});
        }
    }
    std::stable_sort(seen.begin(), seen.end(),
                     [](const Seen& one, const Seen& other) { return one.times > other.times; });
    std::vector<std::string> reasons;
    for (std::size_t i = 0; i < seen.size() && i < most; ++i) {
        reasons.push_back(seen[i].reason);
    }
    return reasons;
}

} // namespace holdfast::kiosk::shop::deciding
