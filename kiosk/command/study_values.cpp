// Capability, tolerance, normality.
#include "kiosk/command/study.hpp"

#include "analytics/statistics/charts/capability.hpp"
#include "analytics/statistics/charts/normality.hpp"
#include "analytics/statistics/charts/random_effects.hpp"
#include "analytics/statistics/charts/tolerance.hpp"
#include "analytics/statistics/summary/moments.hpp"

namespace holdfast::kiosk::command {

namespace {

namespace st = analytics::statistics;

Json indexJson(const std::optional<st::CapabilityIndex>& index) {
    return index ? Json{{"value", figure(index->value)}, {"lower", figure(index->low)}, {"upper", figure(index->high)}}
                 : Json();
}

/// Into the JSON and, if it can be said, as a sentence; true where the values are hardly normal.
bool addNormality(Answer& answer, std::span<const double> values) {
    const auto test = st::andersonDarling(values);
    if (!test) {
        answer.json["anderson_darling"] = {{"why_not", nameOf(test.error())}};
        answer.say("normality-not", {{"why", faultOf(test.error()).sentence(wording::Language::english())}});
        return false;
    }
    constexpr double kDoubt = 0.05;
    answer.json["anderson_darling"] = {
        {"statistic", figure(test->statistic)}, {"adjusted", figure(test->adjusted)}, {"p", figure(test->p)}};
    answer.say(test->p < kDoubt ? "normality-doubt" : "normality-fits",
               {{"statistic", shown(test->statistic)}, {"p", chanceShown(test->p)}});
    return test->p < kDoubt;
}

void addMoments(Answer& answer, const st::Moments& moments) {
    answer.json["count"] = moments.count;
    answer.json["mean"] = figure(moments.mean);
    answer.json["sd"] = figure(moments.sd);
}

/// Rows by label, in the order in which labels come.
tl::expected<std::vector<std::vector<double>>, CommandFault> groups(const DataFile& file, const StudyTyped& typed,
                                                                    LeftOut& leftOut) {
    const auto value = file.column(typed.value);
    const auto by = file.column(typed.by);
    if (!value || !by) {
        return tl::unexpected(!value ? value.error() : by.error());
    }
    Labels labels;
    std::vector<std::vector<double>> out;
    file.forEach({*value, *by}, [&](std::size_t line, DataFile::Cells cells) {
        const auto cell = file.number(cells[0]);
        if (!cell.value) {
            ++(cell.unreadable ? leftOut.unreadable : leftOut.missing);
            leftOut.firstUnreadable = cell.unreadable && leftOut.firstUnreadable == 0 ? line : leftOut.firstUnreadable;
            return;
        }
        const auto place = static_cast<std::size_t>(labels.of(cells[1]));
        out.resize(std::max(out.size(), place + 1));
        out[place].push_back(*cell.value);
    });
    if (out.empty()) {
        return tl::unexpected(CommandFault{"data-no-numbers", {{"path", file.path()}, {"column", typed.value}}});
    }
    return out;
}

Json boundJson(const st::ToleranceBound& bound) {
    constexpr std::string_view kCaveats[] = {"no-spread", "few-groups", "no-within-spread"};
    return {{"bound", figure(bound.bound)},
            {"mean", figure(bound.mean)},
            {"sd", figure(bound.sd)},
            {"factor", figure(bound.factor)},
            {"caveat", bound.caveat ? Json(kCaveats[static_cast<std::size_t>(*bound.caveat)]) : Json()}};
}

void sayBound(Answer& answer, const StudyTyped& typed, const st::ToleranceBound& bound) {
    answer.say(typed.side == "upper" ? "tolerance-upper" : "tolerance-lower",
               {{"bound", shown(bound.bound)},
                {"content", shown(100.0 * typed.content)},
                {"confidence", shown(100.0 * typed.confidence)},
                {"mean", shown(bound.mean)},
                {"sd", shown(bound.sd)},
                {"factor", shown(bound.factor)}});
    if (bound.caveat) {
        constexpr const char* kKeys[] = {"tolerance-no-spread", "tolerance-few-groups", "tolerance-no-within"};
        answer.say(kKeys[static_cast<std::size_t>(*bound.caveat)], {{"need", count(st::kUsualGroups)}});
    }
}

} // namespace

Answered studyCapability(const DataFile& file, const StudyTyped& typed) {
    const auto data = numbersOf(file, {typed.value});
    if (!data) {
        return tl::unexpected(data.error());
    }
    const auto& values = data->columns.front();
    const auto found = st::capability(values, {typed.lower, typed.upper}, typed.confidence);
    if (!found) {
        return tl::unexpected(!typed.lower && !typed.upper ? CommandFault{"capability-no-limits", {}}
                                                           : faultOf(found.error(), file));
    }
    Answer answer;
    answer.json = {{"study", "capability"},
                   {"count", found->count},
                   {"mean", figure(found->mean)},
                   {"sd", figure(found->sd)},
                   {"lower", figure(typed.lower)},
                   {"upper", figure(typed.upper)},
                   {"confidence", typed.confidence},
                   {"cp", indexJson(found->cp)},
                   {"cpl", indexJson(found->cpl)},
                   {"cpu", indexJson(found->cpu)},
                   {"cpk", indexJson(found->cpk)},
                   {"k", figure(found->k)},
                   {"share_outside", figure(found->shareOutside)},
                   {"few_values", found->fewValues},
                   {"not_normal", found->notNormal}};
    answer.say("capability", {{"cpk", shown(found->cpk.value)},
                              {"lower", shown(found->cpk.low)},
                              {"upper", shown(found->cpk.high)},
                              {"confidence", shown(100.0 * typed.confidence)},
                              {"count", count(found->count)},
                              {"mean", shown(found->mean)},
                              {"sd", shown(found->sd)}});
    if (found->cp) {
        answer.say(
            "capability-cp",
            {{"cp", shown(found->cp->value)}, {"lower", shown(found->cp->low)}, {"upper", shown(found->cp->high)}});
    }
    (void)addNormality(answer, values);
    if (found->notNormal) {
        answer.say("capability-not-normal");
    } else {
        answer.say("capability-outside", {{"share", shown(100.0 * found->shareOutside)}});
    }
    if (found->fewValues) {
        answer.say("capability-few", {{"count", count(found->count)}});
    }
    addLeftOut(answer, data->leftOut);
    return answer;
}

Answered studyTolerance(const DataFile& file, const StudyTyped& typed) {
    const st::ToleranceAim aim{typed.content, typed.confidence,
                               typed.side == "upper" ? st::BoundSide::Upper : st::BoundSide::Lower};
    Answer answer;
    answer.json = {
        {"study", "tolerance"}, {"side", typed.side}, {"content", typed.content}, {"confidence", typed.confidence}};
    if (!typed.by.empty()) {
        LeftOut leftOut;
        const auto grouped = groups(file, typed, leftOut);
        if (!grouped) {
            return tl::unexpected(grouped.error());
        }
        const auto bound = st::randomEffectsBound(*grouped, aim);
        if (!bound) {
            return tl::unexpected(faultOf(bound.error(), file));
        }
        std::size_t values = 0;
        for (const auto& group : *grouped) {
            values += group.size();
        }
        answer.json["model"] = "random-effects";
        answer.json["groups"] = grouped->size();
        answer.json["count"] = values;
        answer.json.update(boundJson(*bound));
        answer.say("tolerance-groups", {{"groups", count(grouped->size())}, {"count", count(values)}});
        sayBound(answer, typed, *bound);
        addLeftOut(answer, leftOut);
        return answer;
    }
    const auto data = numbersOf(file, {typed.value});
    if (!data) {
        return tl::unexpected(data.error());
    }
    const auto& values = data->columns.front();
    const auto bound = st::toleranceBound(values, aim);
    if (!bound) {
        return tl::unexpected(faultOf(bound.error(), file));
    }
    answer.json["model"] = "independent";
    answer.json["count"] = values.size();
    answer.json.update(boundJson(*bound));
    if (const auto factor = st::toleranceFactor(values.size(), aim)) {
        answer.json["factor"] = figure(*factor);
    }
    sayBound(answer, typed, *bound);
    if (addNormality(answer, values)) {
        answer.say("tolerance-not-normal");
    }
    addLeftOut(answer, data->leftOut);
    return answer;
}

Answered studyNormality(const DataFile& file, const StudyTyped& typed) {
    const auto data = numbersOf(file, {typed.value});
    if (!data) {
        return tl::unexpected(data.error());
    }
    const auto& values = data->columns.front();
    const auto moments = st::moments(values);
    if (!moments) {
        return tl::unexpected(faultOf(moments.error(), file));
    }
    Answer answer;
    answer.json["study"] = "normality";
    addMoments(answer, *moments);
    answer.say("moments", {{"count", count(moments->count)},
                           {"mean", shown(moments->mean)},
                           {"sd", moments->sd ? shown(*moments->sd) : said("no-figure")}});
    (void)addNormality(answer, values);
    addLeftOut(answer, data->leftOut);
    return answer;
}

} // namespace holdfast::kiosk::command
