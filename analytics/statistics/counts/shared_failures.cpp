#include "analytics/statistics/counts/shared_failures.hpp"

#include "analytics/statistics/counts/false_discovery.hpp"
#include "analytics/statistics/counts/level_permutation.hpp"

#include <algorithm>
#include <tuple>

namespace holdfast::analytics::statistics {
namespace {

bool inDomain(const SharedFailureSettings& settings) noexcept {
    return isInnerProbability(settings.confidence) && settings.permutations >= 0 && settings.stopAfter >= 1 &&
           settings.enumerateUpTo >= 0;
}

LevelPermutationSettings permutationSettings(const LotTable& table, const SharedFailureSettings& settings) noexcept {
    const auto chosen = std::clamp<std::int64_t>(100 * static_cast<std::int64_t>(table.levels()) - 1, 9'999, 99'999);
    return {settings.seed, settings.permutations > 0 ? settings.permutations : chosen, settings.stopAfter,
            settings.enumerateUpTo};
}

SharedFailureCaveat caveatOf(const LotDesign& design) noexcept {
    if (design.failures == 0)
        return SharedFailureCaveat::NothingFailed;
    if (design.failures == design.lots())
        return SharedFailureCaveat::EverythingFailed;
    const bool moves =
        std::any_of(design.strata.begin(), design.strata.end(), [](const auto& s) { return s.size() > 1; });
    return moves ? SharedFailureCaveat::None : SharedFailureCaveat::OneEpisode;
}

LevelFinding countsOf(const LotTable& table, const LotDesign& design, LevelId level) {
    LevelFinding finding;
    finding.level = level;
    finding.factor = table.factorOf(level);
    std::int32_t episode = -1;
    for (const std::int32_t lot : design.columns[static_cast<std::size_t>(level)]) {
        finding.with.hits += design.failed[static_cast<std::size_t>(lot)] ? 1 : 0;
        finding.episodes += design.episodeOf[static_cast<std::size_t>(lot)] != episode ? 1 : 0;
        episode = design.episodeOf[static_cast<std::size_t>(lot)];
        ++finding.with.of;
    }
    finding.without = {design.failures - finding.with.hits, design.lots() - finding.with.of};
    if (finding.with.of == 0 || finding.without.of == 0)
        finding.caveat = LevelCaveat::NoContrast;
    else if (finding.episodes == 1)
        finding.caveat = LevelCaveat::OneEpisode;
    return finding;
}

/// Fisher's p, odds and the p by episodes of a level that has a contrast.
std::optional<StatisticsFault> testLevel(LevelFinding& finding, LevelPermutation& permutation, double confidence) {
    const FourfoldTable lots{finding.with.hits, finding.with.of - finding.with.hits, finding.without.hits,
                             finding.without.of - finding.without.hits};
    const auto fisher = fisherExact(lots);
    if (!fisher)
        return fisher.error();
    const auto odds = conditionalOddsRatio(lots, confidence);
    if (!odds)
        return odds.error();
    const auto moved = permutation.test(finding.level);
    finding.fisherP = fisher->greater;
    finding.odds = *odds;
    finding.permutationP = moved.p;
    finding.arrangements = moved.arrangements;
    finding.exact = moved.exact;
    return std::nullopt;
}

/// The level whose results a level takes over because it was in the very same lots.
std::vector<LevelId> firstTwins(const std::vector<std::vector<TwinLevel>>& classes, std::size_t levels) {
    std::vector<LevelId> first(levels);
    for (std::size_t i = 0; i < levels; ++i)
        first[i] = static_cast<LevelId>(i);
    for (const auto& twins : classes)
        for (const bool complement : {false, true}) {
            const auto head = std::find_if(twins.begin(), twins.end(),
                                           [&](const TwinLevel& twin) { return twin.complement == complement; });
            for (auto twin = head; twin != twins.end(); ++twin)
                if (twin->complement == complement)
                    first[static_cast<std::size_t>(twin->level)] = head->level;
        }
    return first;
}

void adjust(std::vector<LevelFinding>& findings, const std::vector<LevelId>& first) {
    std::vector<double> p;
    std::vector<std::size_t> place(findings.size(), 0);
    for (std::size_t i = 0; i < findings.size(); ++i)
        if (findings[i].caveat != LevelCaveat::NoContrast && first[i] == findings[i].level) {
            place[i] = p.size();
            p.push_back(findings[i].permutationP);
        }
    const auto q = benjaminiHochberg(p);
    if (!q)
        return;
    for (std::size_t i = 0; i < findings.size(); ++i)
        if (findings[i].caveat != LevelCaveat::NoContrast)
            findings[i].q = (*q)[place[static_cast<std::size_t>(first[i])]];
}

std::optional<StatisticsFault> testLevels(std::vector<LevelFinding>& findings, const std::vector<LevelId>& first,
                                          LevelPermutation permutation, double confidence) {
    for (std::size_t i = 0; i < findings.size(); ++i) {
        auto& finding = findings[i];
        if (finding.caveat == LevelCaveat::NoContrast)
            continue;
        if (first[i] == finding.level) {
            if (const auto fault = testLevel(finding, permutation, confidence))
                return fault;
            continue;
        }
        const auto& twin = findings[static_cast<std::size_t>(first[i])];
        finding.fisherP = twin.fisherP;
        finding.odds = twin.odds;
        finding.permutationP = twin.permutationP;
        finding.arrangements = twin.arrangements;
        finding.exact = twin.exact;
    }
    return std::nullopt;
}

void rank(std::vector<LevelFinding>& findings) {
    const auto key = [](const LevelFinding& finding) {
        return std::tuple{finding.caveat == LevelCaveat::NoContrast, finding.permutationP, finding.fisherP,
                          finding.level};
    };
    std::sort(findings.begin(), findings.end(), [&](const auto& l, const auto& r) { return key(l) < key(r); });
}

} // namespace

tl::expected<SharedFailures, StatisticsFault> rankSharedFailures(const LotTable& table,
                                                                 const SharedFailureSettings& settings) {
    if (!inDomain(settings))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    if (table.lots() == 0)
        return tl::unexpected(StatisticsFault::NoValues);
    const LotDesign design = designOf(table);
    SharedFailures result;
    result.lots = table.lots();
    result.failed = design.failures;
    result.episodes = design.stratumOf.size();
    result.caveat = caveatOf(design);
    result.classes = levelsNotToldApart(table, design);
    const auto first = firstTwins(result.classes, table.levels());
    for (std::size_t i = 0; i < table.levels(); ++i)
        result.ranked.push_back(countsOf(table, design, static_cast<LevelId>(i)));
    for (std::size_t i = 0; i < result.classes.size(); ++i)
        for (const auto& twin : result.classes[i])
            result.ranked[static_cast<std::size_t>(twin.level)].twins = i;
    LevelPermutation permutation{design, permutationSettings(table, settings)};
    if (const auto fault = testLevels(result.ranked, first, std::move(permutation), settings.confidence))
        return tl::unexpected(*fault);
    adjust(result.ranked, first);
    rank(result.ranked);
    std::vector<LevelId> top;
    for (const auto& finding : result.ranked)
        if (top.size() < settings.dependenceAmong && finding.caveat != LevelCaveat::NoContrast &&
            first[static_cast<std::size_t>(finding.level)] == finding.level)
            top.push_back(finding.level);
    result.dependences = linearDependences(table, design, top);
    return result;
}

} // namespace holdfast::analytics::statistics
