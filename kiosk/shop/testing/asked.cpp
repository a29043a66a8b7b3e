#include "kiosk/shop/testing/asked.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using analytics::Quantity;
using records::TestKind;

std::vector<AskedResult> askedByKind(const records::MethodDescribed& method) {
    switch (method.kind) {
    case TestKind::rub:
        return {{Quantity::rubDryGrade}, {Quantity::rubWetGrade}};
    case TestKind::wash:
        return {{Quantity::changeGrade},
                {Quantity::stainingGrade},
                {Quantity::cracked},
                {Quantity::lifted},
                {Quantity::fibresStanding}};
    case TestKind::bleedWatch:
        return method.dueHours.empty()
                   ? std::vector<AskedResult>{{Quantity::colourTransferred}, {Quantity::stainingGrade}}
                   : std::vector<AskedResult>{{Quantity::bled}, {Quantity::changeGrade}};
    case TestKind::waterDrop:
        return {{Quantity::waterStands}};
    case TestKind::tape:
        return {{Quantity::peeled, kOneLayer}, {Quantity::peeled, kTwoLayers}};
    case TestKind::solventRub:
        return {{Quantity::colourTransferred}, {Quantity::filmSoftened}};
    case TestKind::split:
        return {{Quantity::ownYesNo, kOtherSurvived}, {Quantity::ownYesNo, kReCuredSurvived}};
    case TestKind::stretch:
    case TestKind::shrink:
    case TestKind::own:
        break;
    }
    return {};
}

/// Comes out of lengths, pulls or measured colours, and is not asked.
bool isMeasured(const AskedResult& asked, TestKind kind) {
    switch (asked.quantity) {
    case Quantity::crackClass:
    case Quantity::elongationHeld:
    case Quantity::recovery:
    case Quantity::growth:
        return kind == TestKind::stretch;
    case Quantity::changeLengthwise:
    case Quantity::changeWidthwise:
        return kind == TestKind::shrink;
    case Quantity::colourDifference:
        return true;
    default:
        return false;
    }
}

} // namespace

std::vector<AskedResult> askedOf(const records::MethodDescribed& method) {
    auto asked = askedByKind(method);
    for (const auto& criterion : method.rule ? method.rule->criteria : std::vector<analytics::Criterion>{}) {
        const AskedResult one{criterion.quantity, criterion.ownName};
        if (!isMeasured(one, method.kind) && std::find(asked.begin(), asked.end(), one) == asked.end()) {
            asked.push_back(one);
        }
    }
    return asked;
}

bool isNeeded(const AskedResult& asked, const records::MethodDescribed& method) {
    return method.rule && asked.quantity != Quantity::fibresStanding &&
           std::any_of(method.rule->criteria.begin(), method.rule->criteria.end(),
                       [&](const auto& one) { return one.quantity == asked.quantity && one.ownName == asked.ownName; });
}

bool isSeries(const records::MethodDescribed& method) noexcept {
    return method.kind == TestKind::wash || (method.kind == TestKind::bleedWatch && !method.dueHours.empty());
}

} // namespace holdfast::kiosk::shop
