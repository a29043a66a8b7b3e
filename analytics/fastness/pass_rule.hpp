#pragma once

#include "analytics/fastness/extension.hpp"
#include "analytics/fastness/grade.hpp"
#include "analytics/fastness/stretch.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

/// When a print passes a test: a rule as data, so that a shop's own method needs no code.
namespace holdfast::analytics {

/// What a test gives. The kind of its value stands beside it.
enum class Quantity {
    changeGrade,      ///< Grade
    stainingGrade,    ///< Grade
    rubDryGrade,      ///< Grade
    rubWetGrade,      ///< Grade
    crackClass,       ///< CrackClass
    elongationHeld,   ///< RelativeLength
    recovery,         ///< RelativeLength
    growth,           ///< RelativeLength
    changeLengthwise, ///< RelativeLength, dimensional change
    changeWidthwise,  ///< RelativeLength
    colourDifference, ///< double, ΔE00
    lifted,           ///< bool, and so are all below up to waterStands
    cracked,
    peeled, ///< came away with the tape, or layer from layer
    tacky,
    colourTransferred, ///< on the swatch or the solvent cloth
    bled,
    filmSoftened,   ///< by the solvent
    waterStands,    ///< a drop stands on the blank cloth: a repellent finish
    fibresStanding, ///< bool: fibres stand through an intact film, the commonest false wash-out
    ownGrade,       ///< Grade of a method of the shop's own, told apart by its name
    ownNumber,      ///< double
    ownYesNo        ///< bool
};

using TestValue = std::variant<Grade, CrackClass, RelativeLength, double, bool>;

/// What sort of value a quantity has, in the order of TestValue.
enum class ValueKind { grade, crackClass, relativeLength, number, yesNo };

[[nodiscard]] ValueKind valueKindOf(Quantity quantity) noexcept;

/// Whether it belongs to a method of the shop's own and needs a name.
[[nodiscard]] bool isOwn(Quantity quantity) noexcept;

/// Where in a test a value was taken. Both absent: the test has one place only.
struct TestPlace final {
    std::optional<int> cycle; ///< wash cycles done, 1 and up (0: before the first)
    std::optional<RelativeLength> elongation;
    bool operator==(const TestPlace&) const = default;
};

struct TestResult final {
    Quantity quantity = Quantity::changeGrade;
    std::string ownName; ///< of an own quantity
    TestValue value = Grade::best();
    TestPlace place{};
};

enum class Bound {
    atLeast,
    atMost, ///< of crack classes: no worse than
    within, ///< |value| ≤ |limit|; lengths and numbers only
    is      ///< yes or no
};

/// What one criterion asks. With a place, everything found up to that place has to meet the limit (fastness is not won
/// back by more washing or pulling), and something has to have been found there or, if that meets the limit, beyond.
/// With onlyThere just what was found at that very place counts. Without a place every value counts, each has to meet
/// the limit, and one at least is needed.
struct Criterion final {
    Quantity quantity = Quantity::changeGrade;
    std::string ownName;
    Bound bound = Bound::atLeast;
    TestValue limit = Grade::best();
    TestPlace place{};
    bool onlyThere = false;
};

struct PassRule final {
    std::vector<Criterion> criteria;
};

enum class RuleFault {
    noCriterion,
    limitOfAnotherKind, ///< a grade's limit that is a length, and so on
    boundOfAnotherKind, ///< "at least" of a yes or no
    limitNotFinite,
    placeInvalid, ///< a cycle below 0, an elongation not above 0 or not finite
    nameMissing   ///< an own quantity without a name
};

/// A fault and the criterion or result it is found in, by its place in the list.
struct RuleFaultAt final {
    RuleFault fault = RuleFault::noCriterion;
    std::size_t index = 0;
    bool operator==(const RuleFaultAt&) const = default;
};

/// Every fault at once, in order; empty if the rule can be used.
[[nodiscard]] std::vector<RuleFaultAt> faultsOf(const PassRule& rule);

enum class CriterionOutcome {
    met,
    failed,
    missing,        ///< nothing found there
    hiddenByFibres, ///< below the limit, but at that place fibres stand through a film seen neither cracked nor lifted
    remarked        ///< fibresStanding itself: noted, never a failure of the film
};

struct CriterionFinding final {
    std::size_t criterion = 0; ///< its place in the rule
    CriterionOutcome outcome = CriterionOutcome::missing;
    /// What decided: the worst value that failed or was hidden, else the worst that met it; absent if missing.
    std::optional<TestResult> result;
};

enum class TestVerdict { passed, failed, notJudged };

struct Judgement final {
    TestVerdict verdict = TestVerdict::notJudged;
    std::vector<CriterionFinding> findings; ///< one a criterion, in the rule's order
};

enum class ResultFault {
    valueOfAnotherKind,
    valueNotFinite,
    placeInvalid,
    nameMissing,
    ruleInvalid ///< faultsOf(rule) says why
};

struct ResultFaultAt final {
    ResultFault fault = ResultFault::ruleInvalid;
    std::size_t index = 0;
    bool operator==(const ResultFaultAt&) const = default;
};

/// Failed if any criterion failed; else not judged if any is missing or hidden by fibres (take the fibres off and grade
/// again), or if nothing but fibres was asked for; else passed. A change grade or colour difference beyond its limit is
/// hidden by fibres only where at that very place fibresStanding is yes and both lifted and cracked were looked at and
/// are no: without that look it fails. Graded again there and met, it is met. Limits are met when equal (within 1e-9).
[[nodiscard]] tl::expected<Judgement, ResultFaultAt> judge(std::span<const TestResult> results, const PassRule& rule);

} // namespace holdfast::analytics
