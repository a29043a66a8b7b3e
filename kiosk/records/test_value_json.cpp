#include "kiosk/records/test_value_json.hpp"

#include "analytics/fastness/test_value.hpp"
#include "kiosk/records/record_json.hpp"

namespace holdfast::kiosk::records {
namespace {

using analytics::RelativeLength;
using analytics::TestPlace;
using analytics::TestValue;
using analytics::ValueKind;

void setValue(Json& json, const TestValue& value) {
    struct Visitor {
        Json& json;
        void operator()(analytics::Grade grade) const { json["grade"] = grade.number(); }
        void operator()(analytics::CrackClass seen) const { json["crack"] = wordJson(seen); }
        void operator()(RelativeLength length) const { json["fraction"] = length.fraction(); }
        void operator()(double number) const { json["number"] = number; }
        void operator()(bool yes) const { json["yes"] = yes; }
    };
    std::visit(Visitor{json}, value);
}

TestValue readValue(ObjectReader& from, ValueKind kind) {
    switch (kind) {
    case ValueKind::grade:
        return readGrade(from, "grade");
    case ValueKind::crackClass:
        return from.word<analytics::CrackClass>("crack");
    case ValueKind::relativeLength:
        return RelativeLength::fromFraction(from.number("fraction"));
    case ValueKind::number:
        return from.number("number");
    case ValueKind::yesNo:
        break;
    }
    return from.flag("yes");
}

void setPlace(Json& json, const TestPlace& place) {
    setIf(json, "cycle", place.cycle);
    if (place.elongation) {
        json["elongation_fraction"] = place.elongation->fraction();
    }
}

TestPlace readPlace(ObjectReader& from) {
    TestPlace place;
    place.cycle = from.optionalCount("cycle");
    if (const auto fraction = optionalPositive(from, "elongation_fraction")) {
        place.elongation = RelativeLength::fromFraction(*fraction);
    }
    return place;
}

const char* textOf(analytics::RuleFault fault) {
    switch (fault) {
    case analytics::RuleFault::noCriterion:
        return "a rule needs a criterion";
    case analytics::RuleFault::limitOfAnotherKind:
        return "the limit is of another kind than the quantity";
    case analytics::RuleFault::boundOfAnotherKind:
        return "the bound does not suit the quantity";
    case analytics::RuleFault::limitNotFinite:
        return "the limit is not finite";
    case analytics::RuleFault::placeInvalid:
        return "there is no such cycle or elongation";
    case analytics::RuleFault::nameMissing:
        return "an own quantity needs a name";
    }
    return "";
}

analytics::Criterion readCriterion(ObjectReader& from) {
    analytics::Criterion criterion;
    criterion.quantity = from.word<analytics::Quantity>("quantity");
    criterion.ownName = from.textOr("name");
    criterion.bound = from.word<analytics::Bound>("bound");
    criterion.limit = readValue(from, analytics::valueKindOf(criterion.quantity));
    criterion.place = readPlace(from);
    criterion.onlyThere = from.flagOr("only_there");
    return criterion;
}

} // namespace

analytics::Grade readGrade(ObjectReader& from, const char* key) {
    const double number = from.number(key);
    const auto grade = analytics::Grade::fromNumber(number);
    if (!grade && from.has(key)) {
        from.fault(FaultCode::badValue, key, "a grade is 1 to 5 in half steps");
    }
    return grade.value_or(analytics::Grade::worst());
}

Json toJson(const analytics::TestResult& result) {
    Json json{{"quantity", wordJson(result.quantity)}};
    setIf(json, "name", result.ownName);
    setValue(json, result.value);
    setPlace(json, result.place);
    return json;
}

analytics::TestResult readTestResult(ObjectReader& from) {
    analytics::TestResult result;
    result.quantity = from.word<analytics::Quantity>("quantity");
    result.ownName = from.textOr("name");
    result.value = readValue(from, analytics::valueKindOf(result.quantity));
    result.place = readPlace(from);
    if (analytics::isOwn(result.quantity) && result.ownName.empty()) {
        from.fault(FaultCode::missingKey, "name", "an own quantity needs a name");
    }
    return result;
}

Json toJson(const analytics::PassRule& rule) {
    Json criteria = Json::array();
    for (const auto& criterion : rule.criteria) {
        Json json{{"quantity", wordJson(criterion.quantity)}};
        setIf(json, "name", criterion.ownName);
        json["bound"] = wordJson(criterion.bound);
        setValue(json, criterion.limit);
        setPlace(json, criterion.place);
        setIf(json, "only_there", criterion.onlyThere);
        criteria.push_back(std::move(json));
    }
    return Json{{"criteria", std::move(criteria)}};
}

analytics::PassRule readPassRule(ObjectReader& from) {
    const auto before = from.faults().size();
    analytics::PassRule rule;
    from.list("criteria", [&](ObjectReader& one) { rule.criteria.push_back(readCriterion(one)); });
    if (from.faults().size() == before) {
        for (const auto& found : analytics::faultsOf(rule)) {
            from.fault(FaultCode::inconsistent, ("criteria[" + std::to_string(found.index) + "]").c_str(),
                       textOf(found.fault));
        }
    }
    return rule;
}

Json toJson(const analytics::Lab& colour) {
    return Json{{"l", colour.l}, {"a", colour.a}, {"b", colour.b}};
}

std::optional<analytics::Lab> optionalLab(ObjectReader& from, const char* key) {
    const auto before = from.faults().size();
    std::optional<analytics::Lab> colour;
    from.optionalObject(key, [&](ObjectReader& one) {
        colour = analytics::Lab{one.number("l"), one.number("a"), one.number("b")};
    });
    if (colour && from.faults().size() == before && analytics::faultOf(*colour)) {
        from.fault(FaultCode::badValue, key, "no surface has this colour");
    }
    return colour;
}

} // namespace holdfast::kiosk::records
