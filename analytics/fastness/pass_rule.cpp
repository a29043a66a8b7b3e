#include "analytics/fastness/pass_rule.hpp"

#include "analytics/fastness/test_value.hpp"

namespace holdfast::analytics {
namespace {

bool boundFits(ValueKind kind, Bound bound) noexcept {
    switch (kind) {
    case ValueKind::yesNo:
        return bound == Bound::is;
    case ValueKind::crackClass:
        return bound == Bound::atMost;
    case ValueKind::grade:
        return bound == Bound::atLeast || bound == Bound::atMost;
    case ValueKind::relativeLength:
    case ValueKind::number:
        return bound != Bound::is;
    }
    return false;
}

void addFaults(const Criterion& criterion, std::size_t index, std::vector<RuleFaultAt>& faults) {
    const auto kind = valueKindOf(criterion.quantity);
    if (kindOf(criterion.limit) != kind)
        faults.push_back({RuleFault::limitOfAnotherKind, index});
    if (!boundFits(kind, criterion.bound))
        faults.push_back({RuleFault::boundOfAnotherKind, index});
    if (!isFinite(criterion.limit))
        faults.push_back({RuleFault::limitNotFinite, index});
    if (!isPossible(criterion.place))
        faults.push_back({RuleFault::placeInvalid, index});
    if (isOwn(criterion.quantity) && criterion.ownName.empty())
        faults.push_back({RuleFault::nameMissing, index});
}

} // namespace

ValueKind valueKindOf(Quantity quantity) noexcept {
    switch (quantity) {
    case Quantity::changeGrade:
    case Quantity::stainingGrade:
    case Quantity::rubDryGrade:
    case Quantity::rubWetGrade:
    case Quantity::ownGrade:
        return ValueKind::grade;
    case Quantity::crackClass:
        return ValueKind::crackClass;
    case Quantity::elongationHeld:
    case Quantity::recovery:
    case Quantity::growth:
    case Quantity::changeLengthwise:
    case Quantity::changeWidthwise:
        return ValueKind::relativeLength;
    case Quantity::colourDifference:
    case Quantity::ownNumber:
        return ValueKind::number;
    case Quantity::lifted:
    case Quantity::cracked:
    case Quantity::peeled:
    case Quantity::tacky:
    case Quantity::colourTransferred:
    case Quantity::bled:
    case Quantity::filmSoftened:
    case Quantity::waterStands:
    case Quantity::fibresStanding:
    case Quantity::ownYesNo:
        return ValueKind::yesNo;
    }
    return ValueKind::yesNo;
}

bool isOwn(Quantity quantity) noexcept {
    return quantity == Quantity::ownGrade || quantity == Quantity::ownNumber || quantity == Quantity::ownYesNo;
}

std::vector<RuleFaultAt> faultsOf(const PassRule& rule) {
    if (rule.criteria.empty())
        return {RuleFaultAt{}};
    std::vector<RuleFaultAt> faults;
    for (std::size_t i = 0; i < rule.criteria.size(); ++i)
        addFaults(rule.criteria[i], i, faults);
    return faults;
}

} // namespace holdfast::analytics
