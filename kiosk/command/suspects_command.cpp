#include "kiosk/command/suspects_command.hpp"

#include "analytics/statistics/counts/shared_failures.hpp"
#include "kiosk/command/book_trends.hpp"
#include "kiosk/shop/trending/suspects.hpp"

#include <algorithm>
#include <cmath>
#include <ostream>
#include <set>

namespace holdfast::kiosk::command {

namespace {

namespace st = analytics::statistics;
using shop::trending::Strength;

constexpr std::size_t kMostLevels = 10'000; ///< of one factor

/// The columns that are looked at, with what stands in them.
struct Factors final {
    std::vector<std::string> names{};
    std::vector<std::size_t> places{};
    std::vector<Labels> labels{};
    std::vector<std::vector<std::int32_t>> rows{}; ///< by factor; −1: nothing stands there
    std::vector<std::string> leftOut{};            ///< columns with nearly as many values as rows
    std::vector<std::string> measured{};           ///< columns of measured figures
};

struct Table final {
    Factors factors{};
    std::vector<char> failed{};
    std::vector<std::int32_t> episodes{};
    std::vector<std::int32_t> strata{};
    LeftOut leftOut{};
};

tl::expected<std::vector<std::size_t>, CommandFault> placesOf(const DataFile& file, const SuspectsTyped& typed,
                                                              Factors& factors) {
    std::vector<std::size_t> places;
    for (const auto& name : {typed.failed, typed.episode, typed.stratum}) {
        if (!name.empty()) {
            const auto place = file.column(name);
            if (!place) {
                return tl::unexpected(place.error());
            }
            places.push_back(*place);
        }
    }
    auto asked = typed.factors;
    for (std::size_t i = 0; typed.factors.empty() && i < file.names().size(); ++i) {
        if (std::find(places.begin(), places.end(), i) == places.end()) {
            factors.places.push_back(i);
            factors.names.push_back(file.names()[i]);
        }
    }
    for (const auto& name : asked) {
        const auto place = file.column(name);
        if (!place) {
            return tl::unexpected(place.error());
        }
        factors.places.push_back(*place);
        factors.names.push_back(file.names()[*place]);
    }
    places.insert(places.end(), factors.places.begin(), factors.places.end());
    factors.labels.resize(factors.places.size());
    factors.rows.resize(factors.places.size());
    return places;
}

tl::expected<Table, CommandFault> read(const DataFile& file, const SuspectsTyped& typed) {
    Table table;
    const auto places = placesOf(file, typed, table.factors);
    if (!places) {
        return tl::unexpected(places.error());
    }
    const std::size_t before = places->size() - table.factors.places.size();
    Labels episodes;
    Labels strata;
    std::optional<CommandFault> strange;
    file.forEach(*places, [&](std::size_t line, DataFile::Cells cells) {
        const auto failed = truthOf(cells[0]);
        if (!failed) {
            if (!file.isMissing(cells[0]) && !strange) {
                strange = CommandFault{
                    "failed-unreadable",
                    {{"text", std::string{cells[0]}}, {"line", std::to_string(line)}, {"column", typed.failed}}};
            }
            ++table.leftOut.missing;
            return;
        }
        table.failed.push_back(*failed ? 1 : 0);
        table.episodes.push_back(typed.episode.empty() ? static_cast<std::int32_t>(table.failed.size())
                                                       : episodes.of(cells[1]));
        table.strata.push_back(typed.stratum.empty() ? 0 : strata.of(cells[before - 1]));
        for (std::size_t i = 0; i < table.factors.places.size(); ++i) {
            const auto cell = cells[before + i];
            table.factors.rows[i].push_back(file.isMissing(cell) ? -1 : table.factors.labels[i].of(cell));
        }
    });
    if (strange) {
        return tl::unexpected(*strange);
    }
    if (table.failed.empty()) {
        return tl::unexpected(CommandFault{"data-no-numbers", {{"path", file.path()}, {"column", typed.failed}}});
    }
    return table;
}

std::vector<std::string> with(std::vector<std::string> names, const std::vector<std::string>& more) {
    names.insert(names.end(), more.begin(), more.end());
    return names;
}

/// Numbers, and not only whole ones.
bool isMeasured(const DataFile& file, const std::vector<std::string>& levels) {
    bool fraction = false;
    for (const auto& level : levels) {
        const auto number = file.number(level).value;
        if (!number) {
            return false;
        }
        fraction = fraction || *number != std::floor(*number);
    }
    return fraction;
}

/// A column with nearly as many values as rows names the rows, and is no factor; one of measured figures is none
/// either.
tl::expected<void, CommandFault> drop(const DataFile& file, Factors& factors, std::size_t rows, bool named) {
    constexpr std::size_t kAlways = 20;
    Factors kept;
    for (std::size_t i = 0; i < factors.names.size(); ++i) {
        const auto levels = factors.labels[i].names().size();
        if (levels > kMostLevels && named) {
            return tl::unexpected(
                CommandFault{"factor-too-many", {{"name", factors.names[i]}, {"count", count(levels)}}});
        }
        if (levels > kMostLevels || (!named && levels > kAlways && levels > rows / 2)) {
            kept.leftOut.push_back(factors.names[i]);
            continue;
        }
        if (!named && levels > kAlways && isMeasured(file, factors.labels[i].names())) {
            kept.measured.push_back(factors.names[i]);
            continue;
        }
        kept.names.push_back(factors.names[i]);
        kept.places.push_back(factors.places[i]);
        kept.labels.push_back(std::move(factors.labels[i]));
        kept.rows.push_back(std::move(factors.rows[i]));
    }
    factors = std::move(kept);
    return {};
}

/// Levels of all factors, numbered together.
struct Levels final {
    std::vector<st::FactorId> factorOf{};
    std::vector<std::string> names{};
    std::vector<std::size_t> first{}; ///< level of each factor's first label
};

Levels levelsOf(const Factors& factors) {
    Levels levels;
    for (std::size_t i = 0; i < factors.names.size(); ++i) {
        levels.first.push_back(levels.names.size());
        for (const auto& name : factors.labels[i].names()) {
            levels.names.push_back(name);
            levels.factorOf.push_back(static_cast<st::FactorId>(i));
        }
    }
    return levels;
}

/// As the owner's page has it (suspects.hpp).
Strength strengthOf(const st::LevelFinding& finding) {
    using namespace shop::trending;
    if (finding.q <= kStrongQ && finding.with.hits >= kStrongFailures && finding.episodes >= kStrongEpisodes) {
        return Strength::strong;
    }
    return finding.q <= kWeakQ && finding.with.hits >= kWeakFailures ? Strength::weak : Strength::byChance;
}

std::string_view strengthWord(Strength strength) {
    return strength == Strength::strong ? "strong" : strength == Strength::weak ? "weak" : "by-chance";
}

std::string_view caveatName(st::SharedFailureCaveat caveat) {
    switch (caveat) {
    case st::SharedFailureCaveat::NothingFailed:
        return "nothing-failed";
    case st::SharedFailureCaveat::EverythingFailed:
        return "everything-failed";
    case st::SharedFailureCaveat::OneEpisode:
        return "one-episode";
    case st::SharedFailureCaveat::None:
        break;
    }
    return "";
}

std::string_view caveatName(st::LevelCaveat caveat) {
    return caveat == st::LevelCaveat::NoContrast   ? "no-contrast"
           : caveat == st::LevelCaveat::OneEpisode ? "one-episode"
                                                   : "";
}

Json named(std::string_view name) {
    return name.empty() ? Json() : Json(name);
}

Json findingJson(const st::LevelFinding& finding, const Factors& factors, const Levels& levels,
                 const st::SharedFailures& found) {
    const auto factorName = [&](st::LevelId level) {
        return factors.names[static_cast<std::size_t>(levels.factorOf[static_cast<std::size_t>(level)])];
    };
    Json twins = Json::array();
    if (finding.twins) {
        for (const auto& twin : found.classes[*finding.twins]) {
            if (twin.level != finding.level) {
                twins.push_back({{"factor", factorName(twin.level)},
                                 {"level", levels.names[static_cast<std::size_t>(twin.level)]}});
            }
        }
    }
    return {{"factor", factorName(finding.level)},
            {"level", levels.names[static_cast<std::size_t>(finding.level)]},
            {"strength", strengthWord(strengthOf(finding))},
            {"failed_with", finding.with.hits},
            {"with", finding.with.of},
            {"failed_without", finding.without.hits},
            {"without", finding.without.of},
            {"episodes", finding.episodes},
            {"p", figure(finding.permutationP)},
            {"exact", finding.exact},
            {"fisher_p", figure(finding.fisherP)},
            {"q", figure(finding.q)},
            {"odds", figure(finding.odds.ratio)},
            {"odds_lower", finding.odds.ratio ? figure(finding.odds.lower) : Json()},
            {"odds_upper", finding.odds.ratio ? figure(finding.odds.upper) : Json()},
            {"cannot_be_told_apart_from", twins},
            {"caveat", named(caveatName(finding.caveat))}};
}

void sayFinding(Answer& answer, const Json& finding) {
    const auto text = [&](const char* key) { return finding[key].template get<std::string>(); };
    const auto number = [&](const char* key) { return count(finding[key].template get<std::int64_t>()); };
    answer.say("suspect", {{"factor", text("factor")},
                           {"level", text("level")},
                           {"strength", said("strength." + text("strength"))},
                           {"failed-with", number("failed_with")},
                           {"with", number("with")},
                           {"failed-without", number("failed_without")},
                           {"without", number("without")},
                           {"q", chanceShown(finding["q"].get<double>())}});
    const auto& twins = finding["cannot_be_told_apart_from"];
    std::string others;
    for (const auto& twin : twins) {
        others +=
            (others.empty() ? "" : ", ") + twin["factor"].get<std::string>() + " " + twin["level"].get<std::string>();
    }
    if (!others.empty()) {
        answer.say("suspect-twins", {{"others", others}});
    }
}

void sayAll(Answer& answer, const SuspectsTyped& typed, const Factors& factors) {
    const auto& ranked = answer.json["ranked"];
    std::size_t told = 0;
    for (const auto& finding : ranked) {
        if (finding["strength"] != "by-chance") {
            sayFinding(answer, finding);
            ++told;
        }
    }
    if (told == 0) {
        answer.say("suspects-chance");
        if (!ranked.empty()) {
            sayFinding(answer, ranked.front());
        }
    } else {
        answer.say("suspects-sharing");
    }
    if (typed.episode.empty()) {
        answer.say("suspects-no-episodes");
    }
    for (const auto& name : factors.leftOut) {
        answer.say("factor-left-out", {{"name", name}});
    }
    for (const auto& name : factors.measured) {
        answer.say("factor-measured", {{"name", name}});
    }
}

} // namespace

Answered suspectsOf(const DataFile& file, const SuspectsTyped& typed) {
    if (typed.failed.empty()) {
        return tl::unexpected(CommandFault{"failed-column-missing", {{"path", file.path()}}});
    }
    auto table = read(file, typed);
    if (!table) {
        return tl::unexpected(table.error());
    }
    if (const auto kept = drop(file, table->factors, table->failed.size(), !typed.factors.empty()); !kept) {
        return tl::unexpected(kept.error());
    }
    const auto& factors = table->factors;
    if (factors.names.empty()) {
        return tl::unexpected(CommandFault{"factors-none", {{"path", file.path()}}});
    }
    const auto levels = levelsOf(factors);
    st::LotTable lots{levels.factorOf};
    std::vector<st::LevelId> own;
    for (std::size_t row = 0; row < table->failed.size(); ++row) {
        own.clear();
        for (std::size_t i = 0; i < factors.names.size(); ++i) {
            if (factors.rows[i][row] >= 0) {
                own.push_back(static_cast<st::LevelId>(levels.first[i]) + factors.rows[i][row]);
            }
        }
        if (const auto added = lots.add(table->failed[row] != 0, table->episodes[row], own, table->strata[row]);
            !added) {
            return tl::unexpected(faultOf(added.error(), file));
        }
    }
    const auto found = st::rankSharedFailures(lots);
    if (!found) {
        return tl::unexpected(faultOf(found.error(), file));
    }
    Answer answer;
    answer.json = {{"lots", found->lots},
                   {"failed", found->failed},
                   {"episodes", found->episodes},
                   {"looked_at", found->ranked.size()},
                   {"caveat", named(caveatName(found->caveat))},
                   {"columns_left_out", with(factors.leftOut, factors.measured)}};
    Json ranked = Json::array();
    for (std::size_t i = 0; i < std::min(typed.most, found->ranked.size()); ++i) {
        ranked.push_back(findingJson(found->ranked[i], factors, levels, *found));
    }
    answer.json["ranked"] = std::move(ranked);
    answer.say("suspects", {{"failed", count(found->failed)},
                            {"lots", count(found->lots)},
                            {"episodes", count(found->episodes)},
                            {"looked", count(found->ranked.size())}});
    if (found->caveat != st::SharedFailureCaveat::None) {
        answer.say("suspects." + std::string{caveatName(found->caveat)});
    } else {
        sayAll(answer, typed, factors);
    }
    addLeftOut(answer, table->leftOut);
    return answer;
}

int runSuspects(const SuspectsTyped& typed, const std::filesystem::path& data, std::ostream& out, std::ostream& err) {
    if (typed.input.empty()) {
        return runBookSuspects(typed, data, out, err);
    }
    const auto file = DataFile::read(typed.input, typed.file);
    return tell(file ? suspectsOf(*file, typed) : tl::unexpected(file.error()), typed.json, out, err);
}

} // namespace holdfast::kiosk::command
