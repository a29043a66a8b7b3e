#include "analytics/cure/ways_out_search.hpp"

#include "analytics/cure/plain_text.hpp"
#include "analytics/cure/prover.hpp"

#include <algorithm>
#include <limits>

namespace holdfast::analytics {
namespace {

/// What one instrument needs to know of an ink, once for all ceilings.
struct Candidate final {
    const InkFamily* family = nullptr;
    Temperature limit = Temperature::fromCelsius(0);
    Reach reach;
};

/// One layer as the search sees it: what it is now, and which families it may take.
struct Place final {
    int position = 1;
    Candidate now;
    std::vector<std::size_t> allowed; ///< indices into the candidates
};

Candidate candidateOf(const InkFamily& family, const Prover& prover) {
    const auto asked = prover.requirementOf(family);
    return {&family, asked.cure.limit, prover.reachOf(asked)};
}

bool mayTake(const Layer& layer, BleedResistance need, const InkFamily& family) {
    const bool staysTheSame = !layer.ink.isMix() && sameName(layer.ink.requirement.name, family.name);
    return family.chemistry == layer.ink.requirement.chemistry && family.bleedResistance >= need && !staysTheSame;
}

/// Every value the hard upper can take: the fabric's (absent: none) and each lower ceiling of an ink.
std::vector<std::optional<Temperature>> hardUppers(const RunPlan& plan, const std::vector<InkFamily>& families) {
    std::vector<std::optional<Temperature>> uppers;
    const auto& fabrics = plan.fabric.hardCeiling;
    const auto add = [&](const std::optional<Temperature>& ceiling) {
        if (ceiling && (!fabrics || *ceiling < *fabrics)) {
            uppers.push_back(ceiling);
        }
    };
    for (const auto& layer : plan.layers) {
        add(layer.ink.requirement.ceiling);
    }
    for (const auto& family : families) {
        add(family.ceiling);
    }
    std::sort(uppers.begin(), uppers.end());
    uppers.erase(std::unique(uppers.begin(), uppers.end()), uppers.end());
    uppers.push_back(fabrics);
    return uppers;
}

/// The search with one instrument; `bundlesUnder` is asked for each value of the hard upper.
class InstrumentSearch final {
public:
    InstrumentSearch(const RunPlan& plan, const Calibration* instrument, bool another,
                     const std::vector<InkFamily>& families, const GuardSetting& guard, const WindowRules& rules)
        : m_plan{plan}, m_rules{rules}, m_prover{instrument, guard, rules} {
        if (another) {
            m_another = instrument->instrument().name;
        }
        for (const auto& family : families) {
            m_candidates.push_back(candidateOf(family, m_prover));
        }
        for (const auto& layer : plan.layers) {
            addPlace(layer, families);
        }
    }

    /// Bundles of the smallest size for this hard upper: the layers that must change, and if none of the layers would
    /// then carry the hard upper, one more that does.
    [[nodiscard]] std::vector<Bundle> bundlesUnder(const std::optional<Temperature>& hard) const {
        const Beside beside = besideOf(hard);
        std::vector<bool> changed;
        for (const auto& place : m_places) {
            changed.push_back(!opens(place.now, beside));
        }
        auto forced = bundleOf(changed, beside, std::nullopt);
        if (!forced) {
            return {};
        }
        if (canCarry(*forced)) {
            return {std::move(*forced)};
        }
        std::vector<Bundle> bundles;
        for (std::size_t extra = 0; extra < m_places.size(); ++extra) {
            if (!changed[extra]) {
                auto more = changed;
                more[extra] = true;
                if (auto bundle = bundleOf(more, beside, extra)) {
                    bundles.push_back(std::move(*bundle));
                }
            }
        }
        return bundles;
    }

private:
    struct Beside final {
        std::optional<Temperature> hard;
        bool fabricCarries = false;
        Ceilings ceilings;
        Caps caps;
    };

    void addPlace(const Layer& layer, const std::vector<InkFamily>& families) {
        Place place{static_cast<int>(m_places.size()) + 1, candidateOf(layer.ink.requirement, m_prover), {}};
        const auto need = m_plan.fabric.needOf(layer.colour);
        m_anyAtRisk = m_anyAtRisk || need > BleedResistance::none;
        for (std::size_t i = 0; i < families.size(); ++i) {
            if (mayTake(layer, need, families[i])) {
                place.allowed.push_back(i);
            }
        }
        m_places.push_back(std::move(place));
    }

    [[nodiscard]] Beside besideOf(const std::optional<Temperature>& hard) const {
        Beside beside{hard, hard == m_plan.fabric.hardCeiling, {}, {}};
        if (hard) {
            beside.ceilings.hard = m_prover.guarded(*hard);
        }
        if (m_anyAtRisk && m_plan.fabric.bleedCeiling) {
            beside.ceilings.bleed = m_prover.guarded(*m_plan.fabric.bleedCeiling);
        }
        beside.caps = m_prover.capsOf(beside.ceilings);
        return beside;
    }

    /// Whether this ink leaves a window open whose hard upper is the given one, as far as it depends on this ink.
    [[nodiscard]] bool opens(const Candidate& candidate, const Beside& beside) const {
        const auto& ceilings = beside.ceilings;
        const bool keepsUpper =
            !candidate.family->ceiling || (beside.hard && *candidate.family->ceiling >= *beside.hard);
        const bool belowHard = !ceilings.hard || atMost(candidate.limit, ceilings.hard->limit);
        const bool belowBleed =
            !ceilings.bleed || atMost(candidate.limit + m_rules.leastBleedRoom, ceilings.bleed->limit);
        return keepsUpper && belowHard && belowBleed && Prover::proves(candidate.reach, beside.caps);
    }

    [[nodiscard]] static bool carries(const Candidate& candidate, const Beside& beside) {
        return beside.hard && candidate.family->ceiling == beside.hard;
    }

    [[nodiscard]] std::vector<Option> optionsFor(const Place& place, const Beside& beside, bool onlyCarriers) const {
        std::vector<Option> options;
        for (const auto index : place.allowed) {
            const auto& candidate = m_candidates[index];
            if (opens(candidate, beside) && (!onlyCarriers || carries(candidate, beside))) {
                options.push_back({&candidate.family->name, candidate.family->ease, candidate.limit,
                                   carries(candidate, beside), Prover::showsBleed(candidate.reach, beside.caps)});
            }
        }
        return options;
    }

    /// Absent if a layer that must change has nothing to change to.
    [[nodiscard]] std::optional<Bundle> bundleOf(const std::vector<bool>& changed, const Beside& beside,
                                                 std::optional<std::size_t> carrier) const {
        Bundle bundle;
        bundle.instrument = m_another;
        bundle.hardUpper = beside.hard;
        bundle.upper = beside.hard;
        if (beside.ceilings.bleed && (!bundle.upper || beside.ceilings.bleed->limit < *bundle.upper)) {
            bundle.upper = beside.ceilings.bleed->limit;
        }
        bundle.keptCarriesHardUpper = beside.fabricCarries;
        for (std::size_t i = 0; i < m_places.size(); ++i) {
            const auto& place = m_places[i];
            if (!changed[i]) {
                keep(bundle, place.now, beside);
                continue;
            }
            bundle.positions.push_back(place.position);
            bundle.options.push_back(optionsFor(place, beside, carrier == i));
            if (bundle.options.back().empty()) {
                return std::nullopt;
            }
        }
        return bundle;
    }

    static void keep(Bundle& bundle, const Candidate& now, const Beside& beside) {
        bundle.keptLower = bundle.keptLower ? std::max(*bundle.keptLower, now.limit) : now.limit;
        bundle.keptCarriesHardUpper = bundle.keptCarriesHardUpper || carries(now, beside);
        bundle.keptShowsBleed = bundle.keptShowsBleed && Prover::showsBleed(now.reach, beside.caps);
    }

    [[nodiscard]] static bool canCarry(const Bundle& bundle) {
        return bundle.keptCarriesHardUpper ||
               std::any_of(bundle.options.begin(), bundle.options.end(), [](const std::vector<Option>& options) {
                   return std::any_of(options.begin(), options.end(),
                                      [](const Option& option) { return option.carriesHardUpper; });
               });
    }

    const RunPlan& m_plan;
    WindowRules m_rules;
    Prover m_prover;
    std::optional<std::string> m_another;
    std::vector<Candidate> m_candidates;
    std::vector<Place> m_places;
    bool m_anyAtRisk = false;
};

std::size_t sizeOf(const Bundle& bundle) {
    return bundle.positions.size() + (bundle.instrument ? 1 : 0);
}

/// Keeps the smallest seen so far.
class Smallest final {
public:
    void add(std::vector<Bundle> bundles) {
        for (auto& bundle : bundles) {
            const auto size = sizeOf(bundle);
            if (size < m_size) {
                m_kept.clear();
                m_size = size;
            }
            if (size == m_size) {
                m_kept.push_back(std::move(bundle));
            }
        }
    }
    [[nodiscard]] std::vector<Bundle> take() { return std::move(m_kept); }

private:
    std::size_t m_size = std::numeric_limits<std::size_t>::max();
    std::vector<Bundle> m_kept;
};

} // namespace

std::vector<Bundle> smallestBundles(const RunPlan& plan, const Calibration* instrument,
                                    const std::vector<InkFamily>& families, const std::vector<Calibration>& instruments,
                                    const GuardSetting& guard, const WindowRules& rules) {
    Smallest smallest;
    const auto uppers = hardUppers(plan, families);
    const auto searchWith = [&](const Calibration* with, bool another) {
        const InstrumentSearch search{plan, with, another, families, guard, rules};
        for (const auto& hard : uppers) {
            smallest.add(search.bundlesUnder(hard));
        }
    };
    searchWith(instrument, false);
    for (const auto& other : instruments) {
        searchWith(&other, true);
    }
    return smallest.take();
}

} // namespace holdfast::analytics
