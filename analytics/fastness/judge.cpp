#include "analytics/fastness/same.hpp"
#include "analytics/fastness/test_value.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

using Results = std::span<const TestResult>;

std::optional<ResultFault> faultOf(const TestResult& result) noexcept {
    if (kindOf(result.value) != valueKindOf(result.quantity))
        return ResultFault::valueOfAnotherKind;
    if (!isFinite(result.value))
        return ResultFault::valueNotFinite;
    if (!isPossible(result.place))
        return ResultFault::placeInvalid;
    if (isOwn(result.quantity) && result.ownName.empty())
        return ResultFault::nameMissing;
    return std::nullopt;
}

/// How far the value is from its limit, on the good side positive; only its order counts for a yes or no.
double margin(const Criterion& criterion, const TestValue& value) noexcept {
    const double limit = onLine(criterion.limit);
    const double found = onLine(value);
    switch (criterion.bound) {
    case Bound::atLeast:
        return found - limit;
    case Bound::atMost:
        return limit - found;
    case Bound::within:
        return std::abs(limit) - std::abs(found);
    case Bound::is:
        return found == limit ? 0.0 : -1.0;
    }
    return -1.0;
}

bool meets(const Criterion& criterion, const TestValue& value) noexcept {
    return margin(criterion, value) >= -kSame;
}

/// Where a result lies as seen from what a criterion asks; `aside` is neither, or lacks the coordinate asked for.
enum class Reach { before, there, beyond, aside };

Reach reachOf(double found, double asked) noexcept {
    if (std::abs(found - asked) <= kSame)
        return Reach::there;
    return found < asked ? Reach::before : Reach::beyond;
}

Reach joined(Reach x, Reach y) noexcept {
    if (x == y || y == Reach::there)
        return x;
    return x == Reach::there ? y : Reach::aside;
}

Reach reachOf(const TestPlace& found, const TestPlace& asked) noexcept {
    Reach reach = Reach::there;
    if (asked.cycle)
        reach = found.cycle ? reachOf(*found.cycle, *asked.cycle) : Reach::aside;
    if (!asked.elongation)
        return reach;
    if (!found.elongation)
        return Reach::aside;
    return joined(reach, reachOf(found.elongation->fraction(), asked.elongation->fraction()));
}

/// Whether a yes or no was seen at that very place; absent if nobody looked. Any yes counts.
std::optional<bool> seenAt(Results results, Quantity quantity, const TestPlace& place) noexcept {
    std::optional<bool> seen;
    for (const auto& result : results)
        if (result.quantity == quantity && result.place == place)
            seen = seen.value_or(false) || onLine(result.value) != 0.0;
    return seen;
}

bool fibresHide(Results results, const TestResult& found) noexcept {
    if (found.quantity != Quantity::changeGrade && found.quantity != Quantity::colourDifference)
        return false;
    return seenAt(results, Quantity::fibresStanding, found.place) == true &&
           seenAt(results, Quantity::lifted, found.place) == false &&
           seenAt(results, Quantity::cracked, found.place) == false;
}

/// Somebody took the fibres off, looked again at that very place and found the limit met.
bool gradedAgain(const Criterion& criterion, Results results, const TestResult& hidden) noexcept {
    return std::any_of(results.begin(), results.end(), [&](const TestResult& other) {
        return other.quantity == hidden.quantity && other.place == hidden.place && meets(criterion, other.value);
    });
}

/// The worst of each kind seen so far.
struct Sorted {
    const TestResult* failed = nullptr;
    const TestResult* hidden = nullptr;
    const TestResult* met = nullptr;
};

void keepWorse(const Criterion& criterion, const TestResult& result, const TestResult*& kept) noexcept {
    if (kept == nullptr || margin(criterion, result.value) < margin(criterion, kept->value))
        kept = &result;
}

Sorted sortFor(const Criterion& criterion, Results results) noexcept {
    Sorted sorted;
    for (const auto& result : results) {
        if (result.quantity != criterion.quantity || result.ownName != criterion.ownName)
            continue;
        const auto reach = reachOf(result.place, criterion.place);
        const bool met = meets(criterion, result.value);
        const bool asked = reach == Reach::there || (!criterion.onlyThere && reach == Reach::before);
        const bool shows = reach == Reach::there || (!criterion.onlyThere && reach == Reach::beyond);
        if (met && shows)
            keepWorse(criterion, result, sorted.met);
        if (met || !asked)
            continue;
        if (!fibresHide(results, result))
            keepWorse(criterion, result, sorted.failed);
        else if (!gradedAgain(criterion, results, result))
            keepWorse(criterion, result, sorted.hidden);
    }
    return sorted;
}

CriterionFinding findingFor(const Criterion& criterion, std::size_t index, Results results) {
    const auto sorted = sortFor(criterion, results);
    const auto finding = [&](CriterionOutcome outcome, const TestResult* result) {
        return CriterionFinding{index, outcome, result == nullptr ? std::nullopt : std::optional{*result}};
    };
    if (criterion.quantity == Quantity::fibresStanding && (sorted.failed != nullptr || sorted.met != nullptr))
        return finding(CriterionOutcome::remarked, sorted.failed != nullptr ? sorted.failed : sorted.met);
    if (sorted.failed != nullptr)
        return finding(CriterionOutcome::failed, sorted.failed);
    if (sorted.hidden != nullptr)
        return finding(CriterionOutcome::hiddenByFibres, sorted.hidden);
    return finding(sorted.met == nullptr ? CriterionOutcome::missing : CriterionOutcome::met, sorted.met);
}

TestVerdict verdictOf(const std::vector<CriterionFinding>& findings) noexcept {
    const auto any = [&](CriterionOutcome outcome) {
        return std::any_of(findings.begin(), findings.end(), [&](const auto& f) { return f.outcome == outcome; });
    };
    if (any(CriterionOutcome::failed))
        return TestVerdict::failed;
    const bool open = any(CriterionOutcome::missing) || any(CriterionOutcome::hiddenByFibres);
    return open || !any(CriterionOutcome::met) ? TestVerdict::notJudged : TestVerdict::passed;
}

} // namespace

tl::expected<Judgement, ResultFaultAt> judge(std::span<const TestResult> results, const PassRule& rule) {
    if (!faultsOf(rule).empty())
        return tl::unexpected(ResultFaultAt{ResultFault::ruleInvalid, 0});
    for (std::size_t i = 0; i < results.size(); ++i)
        if (const auto fault = faultOf(results[i]))
            return tl::unexpected(ResultFaultAt{*fault, i});
    Judgement judgement;
    for (std::size_t i = 0; i < rule.criteria.size(); ++i)
        judgement.findings.push_back(findingFor(rule.criteria[i], i, results));
    judgement.verdict = verdictOf(judgement.findings);
    return judgement;
}

} // namespace holdfast::analytics
