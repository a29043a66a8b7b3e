#include "kiosk/shop/testing/method_draft.hpp"

#include "kiosk/records/words.hpp"
#include "kiosk/shop/testing/starters.hpp"
#include "kiosk/shop/testing/test_draft.hpp"
#include "kiosk/shop/testing/test_reader.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using records::MethodDescribed;
using records::TestKind;
using Cause = TestFaultCause;

std::string listTyped(const std::vector<double>& values) {
    std::string all;
    for (const double value : values) {
        all += (all.empty() ? "" : ", ") + numberTyped(value);
    }
    return all;
}

std::string limitTyped(const analytics::TestValue& value) {
    struct Visitor {
        std::string operator()(analytics::Grade grade) const { return numberTyped(grade.number()); }
        std::string operator()(analytics::CrackClass seen) const { return std::string{records::toWord(seen)}; }
        std::string operator()(analytics::RelativeLength length) const { return numberTyped(length.percent()); }
        std::string operator()(double number) const { return numberTyped(number); }
        std::string operator()(bool yes) const { return yes ? "yes" : "no"; }
    };
    return std::visit(Visitor{}, value);
}

std::optional<analytics::TestValue> limitFrom(const CriterionDraft& row, const std::string& field, TestReader& read) {
    const auto typed = trimmed(row.limit);
    switch (analytics::valueKindOf(row.quantity)) {
    case analytics::ValueKind::grade:
        if (const auto grade = typed.empty() ? std::nullopt : read.grade(typed, field)) {
            return *grade;
        }
        break;
    case analytics::ValueKind::crackClass:
        if (const auto seen = records::fromWord<analytics::CrackClass>(typed)) {
            return *seen;
        }
        break;
    case analytics::ValueKind::relativeLength:
        if (const auto percent = numberFrom(typed)) {
            return analytics::RelativeLength::fromPercent(*percent);
        }
        break;
    case analytics::ValueKind::number:
        if (const auto number = numberFrom(typed)) {
            return *number;
        }
        break;
    case analytics::ValueKind::yesNo:
        if (typed == "yes" || typed == "no") {
            return typed == "yes";
        }
        break;
    }
    return std::nullopt;
}

std::optional<analytics::Criterion> criterionFrom(const CriterionDraft& row, const std::string& field,
                                                  TestReader& read) {
    analytics::Criterion criterion;
    criterion.quantity = row.quantity;
    criterion.bound = row.bound;
    criterion.onlyThere = row.onlyThere;
    criterion.ownName = read.text(row.ownName, field + ".name");
    criterion.place.cycle = read.whole(row.cycle, field + ".cycle");
    if (const auto percent = read.number(row.elongation, field + ".elongation")) {
        criterion.place.elongation = analytics::RelativeLength::fromPercent(*percent);
    }
    const auto before = read.faults().size();
    const auto limit = limitFrom(row, field + ".limit", read);
    if (!limit) {
        if (read.faults().size() == before) {
            read.fault({Cause::limitUnreadable, field + ".limit", firstSigns(trimmed(row.limit))});
        }
        return std::nullopt;
    }
    criterion.limit = *limit;
    return criterion;
}

Cause causeOf(analytics::RuleFault fault) {
    switch (fault) {
    case analytics::RuleFault::boundOfAnotherKind:
        return Cause::boundUnfit;
    case analytics::RuleFault::placeInvalid:
        return Cause::placeUnfit;
    case analytics::RuleFault::nameMissing:
        return Cause::quantityNameMissing;
    case analytics::RuleFault::noCriterion:
    case analytics::RuleFault::limitOfAnotherKind:
    case analytics::RuleFault::limitNotFinite:
        break;
    }
    return Cause::limitUnreadable;
}

std::string fieldOf(const analytics::RuleFaultAt& fault) {
    const auto row = "rule." + std::to_string(fault.index);
    switch (fault.fault) {
    case analytics::RuleFault::placeInvalid:
        return row + ".cycle";
    case analytics::RuleFault::nameMissing:
        return row + ".name";
    default:
        return row + ".limit";
    }
}

void readRule(const MethodDraft& draft, TestReader& read, MethodDescribed& method) {
    analytics::PassRule rule;
    const auto before = read.faults().size();
    for (std::size_t i = 0; i < draft.rule.size(); ++i) {
        if (auto criterion = criterionFrom(draft.rule[i], "rule." + std::to_string(i), read)) {
            rule.criteria.push_back(std::move(*criterion));
        }
    }
    if (rule.criteria.empty() || read.faults().size() != before) {
        return;
    }
    for (const auto& fault : analytics::faultsOf(rule)) {
        read.fault({causeOf(fault.fault), fieldOf(fault)});
    }
    method.rule = std::move(rule);
}

void readProgramme(const MethodDraft& draft, TestReader& read, MethodDescribed& method) {
    if (draft.kind != TestKind::wash) {
        return;
    }
    records::WashProgramme programme;
    const auto cycles = read.whole(draft.cycles, "cycles");
    if (!cycles || *cycles < 1 || *cycles > kMostCycles) {
        read.fault({Cause::cyclesNotPositive, "cycles", {}, kMostCycles});
    }
    programme.cycles = cycles.value_or(1);
    programme.minutes = read.whole(draft.minutes, "minutes");
    if (programme.minutes && *programme.minutes < 1) {
        read.fault({Cause::notWhole, "minutes", firstSigns(trimmed(draft.minutes))});
    }
    const auto& was = draft.before ? draft.before->programme : std::optional<records::WashProgramme>{};
    if (was && was->temperature && trimmed(draft.temperature) == authoredTyped(was->temperature, draft.unit)) {
        programme.temperature = was->temperature;
    } else if (const auto value = read.number(draft.temperature, "temperature")) {
        programme.temperature = analytics::AuthoredTemperature{*value, draft.unit};
        const auto celsius = programme.temperature->temperature().celsius();
        if (celsius < 5.0 || celsius > 100.0) { // liquid water in a machine
            read.fault({Cause::temperatureUnlikely, "temperature", firstSigns(trimmed(draft.temperature))});
        }
    }
    programme.tumble = draft.tumble;
    method.programme = programme;
}

std::vector<std::string> linesFrom(const std::vector<std::string>& typed, const std::string& field, TestReader& read) {
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < typed.size(); ++i) {
        auto line = read.text(typed[i], field + "." + std::to_string(i));
        if (!line.empty()) {
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

void readName(const MethodDraft& draft, const std::vector<std::string>& names, TestReader& read,
              MethodDescribed& method) {
    if (draft.before && isStarter(draft.before->key)) {
        return; // it is called what the language calls it
    }
    method.name = read.name(draft.name, "name");
    const bool taken =
        std::any_of(names.begin(), names.end(), [&](const auto& one) { return sameName(one, method.name); });
    if (!method.name.empty() && taken) {
        read.fault({Cause::nameTaken, "name", firstSigns(method.name)});
    }
}

} // namespace

MethodDraft draftOf(const MethodDescribed& method, analytics::TemperatureUnit unit) {
    MethodDraft draft;
    draft.before = method;
    draft.unit = unit;
    draft.name = method.name;
    draft.kind = method.kind;
    draft.mark = method.mark;
    draft.source = method.source;
    draft.chemistries = method.chemistries;
    draft.rest = method.restHours > 0.0 ? numberTyped(method.restHours) : std::string{};
    draft.due = listTyped(method.dueHours);
    draft.pulls = listTyped(method.pullPercent);
    draft.steps = method.steps;
    draft.cautions = method.cautions;
    draft.eachLot = method.eachLot;
    if (method.programme) {
        draft.cycles = std::to_string(method.programme->cycles);
        draft.minutes = method.programme->minutes ? std::to_string(*method.programme->minutes) : std::string{};
        draft.temperature = authoredTyped(method.programme->temperature, unit);
        draft.tumble = method.programme->tumble;
    }
    for (const auto& one : method.rule ? method.rule->criteria : std::vector<analytics::Criterion>{}) {
        draft.rule.push_back({one.quantity, one.ownName, one.bound, limitTyped(one.limit),
                              one.place.cycle ? std::to_string(*one.place.cycle) : std::string{},
                              one.place.elongation ? numberTyped(one.place.elongation->percent()) : std::string{},
                              one.onlyThere});
    }
    return draft;
}

tl::expected<MethodDescribed, TestFaults> methodFrom(const MethodDraft& draft, const std::vector<std::string>& names,
                                                     const std::string& key) {
    TestReader read;
    MethodDescribed method;
    method.key = draft.before ? draft.before->key : key;
    method.revision = draft.before ? draft.before->revision + 1 : 1;
    method.kind = draft.kind;
    method.mark = draft.mark;
    method.chemistries = draft.chemistries;
    method.eachLot = draft.eachLot;
    readName(draft, names, read, method);
    method.source = read.text(draft.source, "source");
    const auto rest = read.number(draft.rest, "rest");
    method.restHours = rest.value_or(0.0);
    if (rest && *rest < 0.0) {
        read.fault({Cause::hoursNotAscending, "rest", firstSigns(trimmed(draft.rest))});
    }
    method.dueHours = read.rising(draft.due, "due", 0.0, Cause::hoursNotAscending);
    if (draft.kind == TestKind::stretch) {
        constexpr double kLeastPull = 0.1; // per cent: less is no pull
        method.pullPercent = read.rising(draft.pulls, "pulls", kLeastPull, Cause::pullsNotAscending);
    }
    readProgramme(draft, read, method);
    method.steps = linesFrom(draft.steps, "steps", read);
    method.cautions = linesFrom(draft.cautions, "cautions", read);
    if (method.steps.empty() && !isStarter(method.key)) {
        read.fault({Cause::stepsMissing, "steps.0"});
    }
    readRule(draft, read, method);
    if (!read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    return method;
}

MethodDescribed withdrawn(const MethodDescribed& method) {
    auto next = method;
    ++next.revision;
    next.withdrawn = true;
    return next;
}

MethodDescribed usedAgain(const MethodDescribed& method) {
    auto next = method;
    ++next.revision;
    next.withdrawn = false;
    return next;
}

tl::expected<MethodDescribed, TestFaults> deleted(const MethodDescribed& method, bool used) {
    if (used) {
        return tl::unexpected(TestFaults{{Cause::methodInUse, {}, method.name}});
    }
    if (isStarter(method.key)) {
        return tl::unexpected(TestFaults{{Cause::methodOfProgram, {}, method.name}});
    }
    return withdrawn(method);
}

} // namespace holdfast::kiosk::shop
