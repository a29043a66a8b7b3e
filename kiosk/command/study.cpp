#include "kiosk/command/study.hpp"

#include "analytics/statistics/counts/proportion.hpp"

#include <charconv>
#include <ostream>

namespace holdfast::kiosk::command {

namespace {

namespace st = analytics::statistics;

/// "3/20".
std::optional<st::CountOf> countFrom(std::string_view text) {
    st::CountOf count;
    const auto slash = text.find('/');
    const auto whole = [](std::string_view part, std::int64_t& into) {
        const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), into);
        return !part.empty() && error == std::errc{} && end == part.data() + part.size();
    };
    if (slash == std::string_view::npos || !whole(text.substr(0, slash), count.hits) ||
        !whole(text.substr(slash + 1), count.of)) {
        return std::nullopt;
    }
    return count;
}

tl::expected<st::CountOf, CommandFault> countOf(const StudyTyped& typed, LeftOut& leftOut) {
    if (!typed.count.empty()) {
        const auto typedCount = countFrom(typed.count);
        if (!typedCount) {
            return tl::unexpected(CommandFault{"count-unreadable", {{"text", typed.count}}});
        }
        return *typedCount;
    }
    const auto file = DataFile::read(typed.input, typed.file);
    if (!file) {
        return tl::unexpected(file.error());
    }
    st::CountOf counted;
    if (!typed.total.empty()) {
        const auto columns = numbersOf(*file, {typed.failed.empty() ? typed.value : typed.failed, typed.total});
        if (!columns) {
            return tl::unexpected(columns.error());
        }
        leftOut = columns->leftOut;
        double hits = 0.0;
        double of = 0.0;
        for (std::size_t i = 0; i < columns->columns[0].size(); ++i) {
            hits += columns->columns[0][i];
            of += columns->columns[1][i];
        }
        constexpr double kMost = 1e12;
        if (!(hits >= 0.0 && hits <= of && of <= kMost) ||
            hits != static_cast<double>(static_cast<std::int64_t>(hits)) ||
            of != static_cast<double>(static_cast<std::int64_t>(of))) {
            return tl::unexpected(CommandFault{"rate-not-counts", {{"path", file->path()}}});
        }
        return st::CountOf{static_cast<std::int64_t>(hits), static_cast<std::int64_t>(of)};
    }
    const auto outcomes = outcomesOf(*file, typed, {});
    if (!outcomes) {
        return tl::unexpected(outcomes.error());
    }
    leftOut = outcomes->leftOut;
    for (const char failed : outcomes->failed) {
        counted.hits += failed;
        ++counted.of;
    }
    return counted;
}

Json sharesJson(const st::ShareLimits& limits) {
    return {{"lower", figure(limits.lower)}, {"upper", figure(limits.upper)}};
}

} // namespace

tl::expected<Outcomes, CommandFault> outcomesOf(const DataFile& file, const StudyTyped& typed,
                                                const std::string& beside) {
    const auto& asked = typed.failed.empty() ? typed.survived : typed.failed;
    if (asked.empty()) {
        return tl::unexpected(CommandFault{"failed-column-missing", {{"path", file.path()}}});
    }
    std::vector<std::size_t> places;
    for (const auto& name : {asked, beside, typed.lot}) {
        if (!name.empty()) {
            const auto place = file.column(name);
            if (!place) {
                return tl::unexpected(place.error());
            }
            places.push_back(*place);
        }
    }
    Outcomes outcomes;
    Labels lots;
    std::optional<CommandFault> strange;
    file.forEach(places, [&](std::size_t line, DataFile::Cells cells) {
        const auto truth = truthOf(cells[0]);
        const auto number = beside.empty() ? NumberCell{0.0, false} : file.number(cells[1]);
        if (!truth && !file.isMissing(cells[0]) && !strange) {
            strange =
                CommandFault{"failed-unreadable",
                             {{"text", std::string{cells[0]}}, {"line", std::to_string(line)}, {"column", asked}}};
        }
        if (!truth || !number.value) {
            ++(number.unreadable ? outcomes.leftOut.unreadable : outcomes.leftOut.missing);
            auto& first = outcomes.leftOut.firstUnreadable;
            first = number.unreadable && first == 0 ? line : first;
            return;
        }
        outcomes.failed.push_back((typed.failed.empty() ? !*truth : *truth) ? 1 : 0);
        if (!beside.empty()) {
            outcomes.beside.push_back(*number.value);
        }
        if (!typed.lot.empty()) {
            outcomes.lots.push_back(lots.of(cells.back()));
        }
    });
    if (strange) {
        return tl::unexpected(*strange);
    }
    if (outcomes.failed.empty()) {
        return tl::unexpected(CommandFault{"data-no-numbers", {{"path", file.path()}, {"column", asked}}});
    }
    outcomes.lotCount = typed.lot.empty() ? outcomes.failed.size() : lots.names().size();
    return outcomes;
}

Answered studyRate(const StudyTyped& typed) {
    LeftOut leftOut;
    const auto counted = countOf(typed, leftOut);
    if (!counted) {
        return tl::unexpected(counted.error());
    }
    const auto exact = st::clopperPearson(*counted, typed.confidence);
    const auto score = st::wilson(*counted, typed.confidence);
    const auto above = st::clopperPearson(*counted, typed.confidence, st::LimitSide::UpperOnly);
    if (!exact || !score || !above) {
        return tl::unexpected(faultOf(!exact ? exact.error() : !score ? score.error() : above.error()));
    }
    const double share = static_cast<double>(counted->hits) / static_cast<double>(counted->of);
    Answer answer;
    answer.json = {{"study", "rate"},
                   {"failed", counted->hits},
                   {"of", counted->of},
                   {"share", figure(share)},
                   {"confidence", typed.confidence},
                   {"clopper_pearson", sharesJson(*exact)},
                   {"wilson", sharesJson(*score)},
                   {"at_most", figure(above->upper)}};
    answer.say("rate", {{"failed", count(counted->hits)},
                        {"of", count(counted->of)},
                        {"share", shown(100.0 * share)},
                        {"lower", shown(100.0 * exact->lower)},
                        {"upper", shown(100.0 * exact->upper)},
                        {"confidence", shown(100.0 * typed.confidence)}});
    answer.say("rate-wilson", {{"lower", shown(100.0 * score->lower)}, {"upper", shown(100.0 * score->upper)}});
    if (counted->hits == 0) {
        answer.say("rate-none",
                   {{"upper", shown(100.0 * above->upper)}, {"confidence", shown(100.0 * typed.confidence)}});
    }
    if (typed.missed) {
        const auto rate = st::rateWithMissed(counted->hits, counted->of, *typed.missed, typed.confidence);
        if (!rate) {
            return tl::unexpected(faultOf(rate.error()));
        }
        answer.json["with_missed"] = {{"missed", *typed.missed},
                                      {"lowest", figure(rate->lowest)},
                                      {"highest", figure(rate->highest)},
                                      {"lower", figure(rate->limits.lower)},
                                      {"upper", figure(rate->limits.upper)}};
        answer.say("rate-missed", {{"missed", count(*typed.missed)},
                                   {"lowest", shown(100.0 * rate->lowest)},
                                   {"highest", shown(100.0 * rate->highest)}});
    }
    addLeftOut(answer, leftOut);
    return answer;
}

int runStudy(const StudyTyped& typed, std::ostream& out, std::ostream& err) {
    using Study = Answered (*)(const DataFile&, const StudyTyped&);
    constexpr std::pair<std::string_view, Study> kStudies[] = {{"drift", studyDrift},
                                                               {"change", studyChange},
                                                               {"capability", studyCapability},
                                                               {"tolerance", studyTolerance},
                                                               {"normality", studyNormality},
                                                               {"survival", studySurvival},
                                                               {"wash", studyWash}};
    if (typed.input.empty() && (typed.what != "rate" || typed.count.empty())) {
        return tell(tl::unexpected(CommandFault{"study-needs-input", {{"what", typed.what}}}), typed.json, out, err);
    }
    if (!(typed.confidence > 0.0 && typed.confidence < 1.0)) {
        return tell(tl::unexpected(CommandFault{"confidence-unusable", {}}), typed.json, out, err);
    }
    if (typed.what == "rate") {
        return tell(studyRate(typed), typed.json, out, err);
    }
    for (const auto& [name, study] : kStudies) {
        if (name == typed.what) {
            const auto file = DataFile::read(typed.input, typed.file);
            return tell(file ? study(*file, typed) : tl::unexpected(file.error()), typed.json, out, err);
        }
    }
    return tell(tl::unexpected(CommandFault{"study-unknown", {{"what", typed.what}}}), typed.json, out, err);
}

} // namespace holdfast::kiosk::command
