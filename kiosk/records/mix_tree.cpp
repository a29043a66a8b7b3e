#include "kiosk/records/mix_tree.hpp"

#include <map>
#include <set>

namespace holdfast::kiosk::records {
namespace {

using analytics::Ink;

/// Mixes are settled in rounds: each round mixes those all of whose parts are known. What is left when a round settles
/// nothing contains itself, or something that could not be mixed.
class MixTree final {
public:
    MixTree(const ShopFile& file, Faults& faults) : m_file{file}, m_faults{faults} {
        for (const auto& family : file.families) {
            m_families.emplace(family.name, analytics::pureInk(toFamily(family)));
        }
        for (std::size_t i = 0; i < file.mixes.size(); ++i) {
            m_index.emplace(file.mixes[i].name, i);
        }
        m_states.resize(file.mixes.size());
    }

    std::vector<Ink> settle() {
        for (std::size_t i = 0; i < m_file.mixes.size(); ++i) {
            noteUnknownParts(i);
        }
        while (settleRound()) {
        }
        std::vector<Ink> mixes;
        for (std::size_t i = 0; i < m_states.size(); ++i) {
            if (m_states[i].ink) {
                mixes.push_back(*m_states[i].ink);
            } else if (!m_states[i].bad && !waitsForBad(i)) {
                fault(i, "parts", "the mix contains itself");
            }
        }
        return mixes;
    }

private:
    struct State {
        std::optional<Ink> ink;
        bool bad = false; ///< a fault of its own is noted
    };

    void fault(std::size_t mix, const std::string& key, const std::string& what) {
        m_faults.push_back({FaultCode::inconsistent, "mixes[" + std::to_string(mix) + "]." + key, what});
    }

    void noteUnknownParts(std::size_t mix) {
        const auto& parts = m_file.mixes[mix].parts;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            const bool known = parts[i].isMix ? m_index.contains(parts[i].name) : m_families.contains(parts[i].name);
            if (!known) {
                fault(mix, "parts[" + std::to_string(i) + "]", "there is no such ink: " + parts[i].name);
                m_states[mix].bad = true;
            }
        }
    }

    const Ink* inkOf(const MixPartSpec& part) const {
        if (!part.isMix) {
            return &m_families.at(part.name);
        }
        const auto& state = m_states[m_index.at(part.name)];
        return state.ink ? &*state.ink : nullptr;
    }

    bool settleRound() {
        bool settled = false;
        for (std::size_t i = 0; i < m_states.size(); ++i) {
            settled = (!m_states[i].ink && !m_states[i].bad && settleOne(i)) || settled;
        }
        return settled;
    }

    bool settleOne(std::size_t mix) {
        std::vector<analytics::MixPart> parts;
        for (const auto& part : m_file.mixes[mix].parts) {
            const Ink* ink = inkOf(part);
            if (ink == nullptr) {
                return false;
            }
            parts.push_back({*ink, part.mass});
        }
        auto mixed = analytics::mixInks(m_file.mixes[mix].name, parts);
        if (mixed) {
            m_states[mix].ink = std::move(*mixed);
            return true;
        }
        m_states[mix].bad = true;
        fault(mix, "parts",
              mixed.error() == analytics::MixFault::chemistriesDiffer ? "its parts are of several chemistries"
                                                                      : "no part has a mass above 0");
        return false;
    }

    /// True if a bad mix is among its parts, or theirs: then that one is the fault.
    bool waitsForBad(std::size_t mix) const {
        std::set<std::size_t> seen;
        std::vector<std::size_t> open{mix};
        while (!open.empty()) {
            const auto at = open.back();
            open.pop_back();
            if (m_states[at].bad) {
                return true;
            }
            if (!seen.insert(at).second) {
                continue;
            }
            for (const auto& part : m_file.mixes[at].parts) {
                if (part.isMix && m_index.contains(part.name)) {
                    open.push_back(m_index.at(part.name));
                }
            }
        }
        return false;
    }

    const ShopFile& m_file;
    Faults& m_faults;
    std::map<std::string, Ink> m_families;
    std::map<std::string, std::size_t> m_index;
    std::vector<State> m_states;
};

} // namespace

std::vector<Ink> mixesOf(const ShopFile& file, Faults& faults) {
    return MixTree{file, faults}.settle();
}

void noteMixFaults(const ShopFile& file, Faults& faults) {
    (void)mixesOf(file, faults);
}

} // namespace holdfast::kiosk::records
