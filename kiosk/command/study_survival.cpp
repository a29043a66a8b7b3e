// Whether prints held: against their margin, and by number of washes.
#include "kiosk/command/study.hpp"

#include "analytics/statistics/counts/survival.hpp"
#include "analytics/statistics/models/margin_survival.hpp"

namespace holdfast::kiosk::command {

namespace {

namespace st = analytics::statistics;

Json coefficientJson(const st::LogisticCoefficient& one) {
    return {{"estimate", figure(one.runsAway == 0 ? one.estimate : std::numeric_limits<double>::infinity())},
            {"standard_error", figure(one.runsAway == 0 ? one.standardError : std::numeric_limits<double>::infinity())},
            {"lower", figure(one.lower)},
            {"upper", figure(one.upper)},
            {"chi_square", figure(one.chiSquare)},
            {"p", figure(one.p)},
            {"runs_away", one.runsAway}};
}

st::SurvivalCounts countsOf(const Outcomes& outcomes, std::vector<st::MarginTest>& tests) {
    tests.reserve(outcomes.failed.size());
    for (std::size_t i = 0; i < outcomes.failed.size(); ++i) {
        const auto lot = outcomes.lots.empty() ? static_cast<std::int64_t>(i) : std::int64_t{outcomes.lots[i]};
        tests.push_back({outcomes.beside[i], outcomes.failed[i] == 0, lot});
    }
    return st::countSurvival(tests);
}

/// The value for a chance of holding, or why none is given.
void addChance(Answer& answer, const StudyTyped& typed, const std::vector<st::MarginTest>& tests) {
    const auto found = st::marginForChance(tests, *typed.chance, typed.confidence);
    if (!found) {
        if (!found->lower && !found->upper) { // the slope may be none: any figure would do
            answer.json["value_for"] = {{"chance", *typed.chance}, {"value", Json()}, {"why_not", "no-slope"}};
            answer.say("chance-no-slope", {{"chance", shown(100.0 * *typed.chance)}});
            return;
        }
        answer.json["value_for"] = {{"chance", *typed.chance}, {"value", Json()}, {"why_not", nameOf(found.error())}};
        answer.say(found.error() == st::StatisticsFault::TooFewEvents ? "chance-few" : "chance-not",
                   {{"chance", shown(100.0 * *typed.chance)},
                    {"tests", count(st::SurvivalCounts::kTests)},
                    {"lots", count(st::SurvivalCounts::kLots)},
                    {"why", faultOf(found.error()).sentence(wording::Language::english())}});
        return;
    }
    answer.json["value_for"] = {{"chance", *typed.chance},       {"value", figure(found->value)},
                                {"lower", figure(found->lower)}, {"upper", figure(found->upper)},
                                {"rises", found->rises},         {"extrapolated", found->extrapolated}};
    answer.say(found->extrapolated ? "chance-beyond" : "chance-at",
               {{"chance", shown(100.0 * *typed.chance)},
                {"value", shown(found->value)},
                {"lower", found->lower ? shown(*found->lower) : said("no-limit")},
                {"upper", found->upper ? shown(*found->upper) : said("no-limit")}});
}

} // namespace

Answered studySurvival(const DataFile& file, const StudyTyped& typed) {
    const auto outcomes = outcomesOf(file, typed, typed.value);
    if (!outcomes) {
        return tl::unexpected(outcomes.error());
    }
    std::vector<st::MarginTest> tests;
    const auto counts = countsOf(*outcomes, tests);
    const bool ofSurvival = typed.failed.empty(); // the event is what the named column says
    if (counts.failures == 0 || counts.survivals == 0) {
        return tl::unexpected(CommandFault{counts.failures == 0 ? "survival-all-held" : "survival-all-failed",
                                           {{"count", count(outcomes->failed.size())}}});
    }
    st::LogisticData data;
    data.covariates = {outcomes->beside};
    for (const char failed : outcomes->failed) {
        data.events.push_back((failed != 0) != ofSurvival ? 1.0 : 0.0);
    }
    st::LogisticOptions options;
    options.penalty = typed.penalty == "none" ? st::Penalty::None : st::Penalty::Firth;
    options.level = typed.confidence;
    const auto fit = st::fitLogistic(data, options);
    if (!fit) {
        return tl::unexpected(faultOf(fit.error(), file));
    }
    constexpr const char* kSeparations[] = {"none", "quasi", "complete"};
    const auto& slope = fit->coefficients[1];
    Answer answer;
    answer.json = {{"study", "survival"},
                   {"event", ofSurvival ? "survived" : "failed"},
                   {"penalty", typed.penalty},
                   {"failures", counts.failures},
                   {"survivals", counts.survivals},
                   {"lots", outcomes->lots.empty() ? Json() : Json(outcomes->lotCount)},
                   {"confidence", typed.confidence},
                   {"intercept", coefficientJson(fit->coefficients[0])},
                   {"slope", coefficientJson(slope)},
                   {"log_likelihood", figure(fit->logLikelihood)},
                   {"deviance", figure(fit->deviance)},
                   {"null_deviance", figure(fit->nullDeviance)},
                   {"separation", kSeparations[static_cast<std::size_t>(fit->separation)]}};
    answer.say("survival-counts", {{"failures", count(counts.failures)}, {"survivals", count(counts.survivals)}});
    if (slope.runsAway != 0) {
        answer.say("survival-separated");
    } else {
        answer.say(ofSurvival ? "survival-slope-held" : "survival-slope-failed",
                   {{"odds", shown(std::exp(slope.estimate))},
                    {"lower", slope.lower ? shown(std::exp(*slope.lower)) : said("no-limit")},
                    {"upper", slope.upper ? shown(std::exp(*slope.upper)) : said("no-limit")},
                    {"p", chanceShown(slope.p)},
                    {"confidence", shown(100.0 * typed.confidence)}});
    }
    if (outcomes->lots.empty()) {
        answer.say("survival-independent");
    }
    if (typed.chance) {
        addChance(answer, typed, tests);
    }
    addLeftOut(answer, outcomes->leftOut);
    return answer;
}

Answered studyWash(const DataFile& file, const StudyTyped& typed) {
    const auto outcomes = outcomesOf(file, typed, typed.value);
    if (!outcomes) {
        return tl::unexpected(outcomes.error());
    }
    std::vector<st::WashOutcome> washes;
    for (std::size_t i = 0; i < outcomes->failed.size(); ++i) {
        washes.push_back({outcomes->beside[i], outcomes->failed[i] != 0, 1});
    }
    const auto curve = st::kaplanMeier(washes, typed.confidence);
    if (!curve) {
        return tl::unexpected(faultOf(curve.error(), file));
    }
    Json steps = Json::array();
    for (const auto& step : curve->steps) {
        steps.push_back({{"cycles", figure(step.cycles)},
                         {"at_risk", step.atRisk},
                         {"failed", step.failed},
                         {"survival", figure(step.survival)},
                         {"standard_error", figure(step.standardError)},
                         {"lower", figure(step.lower)},
                         {"upper", figure(step.upper)}});
    }
    Answer answer;
    answer.json = {{"study", "wash"},
                   {"pieces", curve->pieces},
                   {"followed_to", figure(curve->followedTo)},
                   {"median", figure(curve->median())},
                   {"confidence", typed.confidence},
                   {"steps", steps}};
    answer.say(curve->steps.empty() ? "wash-none" : "wash",
               {{"pieces", count(curve->pieces)}, {"followed", shown(curve->followedTo)}});
    constexpr std::size_t kSaid = 12;
    for (std::size_t i = 0; i < std::min(kSaid, curve->steps.size()); ++i) {
        const auto& step = curve->steps[i];
        answer.say("wash-step", {{"cycles", shown(step.cycles)},
                                 {"share", shown(100.0 * step.survival)},
                                 {"lower", shown(100.0 * step.lower)},
                                 {"upper", shown(100.0 * step.upper)}});
    }
    if (curve->steps.size() > kSaid) {
        answer.say("wash-more", {{"count", count(curve->steps.size() - kSaid)}});
    }
    addLeftOut(answer, outcomes->leftOut);
    return answer;
}

} // namespace holdfast::kiosk::command
