#pragma once

#include "analytics/lots/lot_standing.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// Who may decide what about a lot (decisions 5).
namespace holdfast::analytics {

/// What stands against a lot, as far as a decision turns on it.
struct LotAtIssue final {
    LotStanding standing = LotStanding::onHold;
    bool childrensWear = false;
    bool underCured = false; ///< a valid reading says so, of the pieces to be decided
    bool notProven = false;  ///< a due reading was missed or stayed not proven
    bool belowLimit = false; ///< a valid reading or test lies below its limit
    int entitledInShop = 0;  ///< people who may decide and still work here
};

struct Signer final {
    std::int64_t person = 0; ///< number
    bool entitled = false;   ///< may decide about lots
};

struct DecisionAsked final {
    LotDecision what = LotDecision::released;
    std::string reason;           ///< as typed
    std::vector<Signer> signers;  ///< in the order they signed
    std::string laboratoryReport; ///< its number, as typed
};

enum class DecisionRefusal {
    nothingToDecide, ///< cleared, open or setting up: no cause and nothing missing; scrapping is always possible
    scrappedIsFinal, ///< nothing more can be decided about it
    childrensWearUnderCured, ///< never released
    childrensWearNotProven,  ///< never released
    needsReason,
    needsEntitledSigner,
    needsSecondEntitledSigner, ///< another person than the first
    laboratoryReportMissing
};

/// Every refusal at once, in the order above; empty: it may be signed. A decision needs a reason (not only spaces) and
/// an entitled signer; releasing below the limit, and any release of children's wear, needs two different ones where
/// the shop has two. Children's wear under-cured or not proven is never released, and its release needs the number of
/// the laboratory's report.
[[nodiscard]] std::vector<DecisionRefusal> refusalsOf(const DecisionAsked& asked, const LotAtIssue& lot);

/// Whether this decision takes two signatures in this shop.
[[nodiscard]] bool needsTwo(LotDecision what, const LotAtIssue& lot) noexcept;

} // namespace holdfast::analytics
