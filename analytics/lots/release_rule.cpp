#include "analytics/lots/release_rule.hpp"

#include <algorithm>
#include <set>

namespace holdfast::analytics {
namespace {

constexpr int kTwo = 2;

bool isBlank(const std::string& text) noexcept {
    return text.find_first_not_of(" \t\r\n") == std::string::npos;
}

int entitledSigners(const std::vector<Signer>& signers) {
    std::set<std::int64_t> entitled;
    for (const auto& signer : signers) {
        if (signer.entitled) {
            entitled.insert(signer.person);
        }
    }
    return static_cast<int>(entitled.size());
}

bool isUndisputed(LotStanding standing) noexcept {
    return standing == LotStanding::cleared || standing == LotStanding::open || standing == LotStanding::settingUp;
}

} // namespace

bool needsTwo(LotDecision what, const LotAtIssue& lot) noexcept {
    const bool grave = lot.belowLimit || lot.underCured || lot.childrensWear;
    return what == LotDecision::released && grave && lot.entitledInShop >= kTwo;
}

std::vector<DecisionRefusal> refusalsOf(const DecisionAsked& asked, const LotAtIssue& lot) {
    std::vector<DecisionRefusal> refusals;
    const auto refuseIf = [&](bool refused, DecisionRefusal refusal) {
        if (refused) {
            refusals.push_back(refusal);
        }
    };
    const bool release = asked.what == LotDecision::released;
    const bool childrens = release && lot.childrensWear;
    const bool childrensLab =
        childrens && lot.standing == LotStanding::cleared; // with the report, it may be signed for
    refuseIf(isUndisputed(lot.standing) && asked.what != LotDecision::scrapped && !childrensLab,
             DecisionRefusal::nothingToDecide);
    refuseIf(lot.standing == LotStanding::scrapped, DecisionRefusal::scrappedIsFinal);
    refuseIf(childrens && lot.underCured, DecisionRefusal::childrensWearUnderCured);
    refuseIf(childrens && (lot.notProven || lot.standing == LotStanding::unproven),
             DecisionRefusal::childrensWearNotProven);
    refuseIf(isBlank(asked.reason), DecisionRefusal::needsReason);
    const int signers = entitledSigners(asked.signers);
    refuseIf(signers == 0, DecisionRefusal::needsEntitledSigner);
    refuseIf(signers == 1 && needsTwo(asked.what, lot), DecisionRefusal::needsSecondEntitledSigner);
    refuseIf(childrens && isBlank(asked.laboratoryReport), DecisionRefusal::laboratoryReportMissing);
    return refusals;
}

} // namespace holdfast::analytics
