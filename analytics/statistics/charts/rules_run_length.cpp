#include "analytics/statistics/charts/quadrature.hpp"
#include "analytics/statistics/charts/run_length.hpp"

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <map>
#include <optional>
#include <tuple>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

constexpr std::size_t kMostStates = 4000;

/// What of the past can still help to complete a rule; one bit a point, the latest lowest.
struct State final {
    std::uint8_t up2 = 0, down2 = 0; ///< the last two points
    std::uint8_t up1 = 0, down1 = 0; ///< the last four points
    int side = 0;                    ///< points in a row above (positive) or below (negative)
    int within = 0;                  ///< in a row within 1σ
    int beyond = 0;                  ///< in a row beyond 1σ, at most seven
    std::uint8_t beyondSides = 0;    ///< 1 above, 2 below, 3 both among them

    [[nodiscard]] auto key() const { return std::tie(up2, down2, up1, down1, side, within, beyond, beyondSides); }
    bool operator<(const State& other) const { return key() < other.key(); }
};

/// Four of five: a flag is dropped once too few points are left to make four with it.
std::uint8_t alive(std::uint8_t flags) {
    if ((flags & 8U) != 0 && std::popcount(static_cast<unsigned>(flags) & 15U) < 3) {
        flags = static_cast<std::uint8_t>(flags & 7U);
    }
    if ((flags & 4U) != 0 && std::popcount(static_cast<unsigned>(flags) & 7U) < 2) {
        flags = static_cast<std::uint8_t>(flags & 11U);
    }
    return flags;
}

/// The zones of a point, by σ: lower edges −∞, −3, −2, −1, 0, 1, 2, 3.
struct Zone final {
    int sign = 0;
    int beyond = 0; ///< 0 within 1σ, 1, 2, 3
};
constexpr std::array<Zone, 8> kZones{{{-1, 3}, {-1, 2}, {-1, 1}, {-1, 0}, {1, 0}, {1, 1}, {1, 2}, {1, 3}}};

class Chain final {
public:
    explicit Chain(RuleSet rules) : m_rules{rules} {}

    /// The state after a point, or none if a rule is met.
    [[nodiscard]] std::optional<State> next(const State& state, Zone zone) const {
        if (m_rules.has(NelsonRule::BeyondThreeSigma) && zone.beyond == 3) {
            return std::nullopt;
        }
        State after;
        const bool met = takeSide(state, zone, after) || takeTwo(state, zone, after) || takeFour(state, zone, after) ||
                         takeWithin(state, zone, after) || takeBeyond(state, zone, after);
        return met ? std::nullopt : std::optional{after};
    }

private:
    bool takeSide(const State& state, Zone zone, State& after) const {
        if (!m_rules.has(NelsonRule::OneSide)) {
            return false;
        }
        after.side = state.side * zone.sign > 0 ? state.side + zone.sign : zone.sign;
        return std::abs(after.side) >= m_rules.oneSideRun();
    }

    bool takeTwo(const State& state, Zone zone, State& after) const {
        if (!m_rules.has(NelsonRule::TwoOfThree)) {
            return false;
        }
        const bool up = zone.sign > 0 && zone.beyond >= 2;
        const bool down = zone.sign < 0 && zone.beyond >= 2;
        after.up2 = static_cast<std::uint8_t>((state.up2 << 1U | static_cast<unsigned>(up)) & 3U);
        after.down2 = static_cast<std::uint8_t>((state.down2 << 1U | static_cast<unsigned>(down)) & 3U);
        return (up && state.up2 != 0) || (down && state.down2 != 0);
    }

    bool takeFour(const State& state, Zone zone, State& after) const {
        if (!m_rules.has(NelsonRule::FourOfFive)) {
            return false;
        }
        const bool up = zone.sign > 0 && zone.beyond >= 1;
        const bool down = zone.sign < 0 && zone.beyond >= 1;
        after.up1 = alive(static_cast<std::uint8_t>((state.up1 << 1U | static_cast<unsigned>(up)) & 15U));
        after.down1 = alive(static_cast<std::uint8_t>((state.down1 << 1U | static_cast<unsigned>(down)) & 15U));
        return (up && std::popcount(static_cast<unsigned>(state.up1)) >= 3) ||
               (down && std::popcount(static_cast<unsigned>(state.down1)) >= 3);
    }

    bool takeWithin(const State& state, Zone zone, State& after) const {
        if (!m_rules.has(NelsonRule::FifteenWithin)) {
            return false;
        }
        after.within = zone.beyond == 0 ? state.within + 1 : 0;
        return after.within >= 15;
    }

    bool takeBeyond(const State& state, Zone zone, State& after) const {
        if (!m_rules.has(NelsonRule::EightBeyond) || zone.beyond == 0) {
            return false;
        }
        after.beyondSides = static_cast<std::uint8_t>(state.beyondSides | (zone.sign > 0 ? 1U : 2U));
        after.beyond = std::min(7, state.beyond + 1);
        return state.beyond >= 7 && after.beyondSides == 3;
    }

    RuleSet m_rules;
};

std::array<double, 8> chances(double shift) {
    constexpr std::array<double, 7> kEdges{-3, -2, -1, 0, 1, 2, 3};
    std::array<double, 8> chance{};
    chance.front() = normalBelow(kEdges.front() - shift);
    for (std::size_t i = 1; i < kEdges.size(); ++i) {
        chance[i] = normalBelow(kEdges[i] - shift) - normalBelow(kEdges[i - 1] - shift);
    }
    chance.back() = normalBelow(shift - kEdges.back());
    return chance;
}

bool canBeRead(RuleSet rules) {
    bool any = false;
    for (unsigned rule = 1; rule <= 8; ++rule) {
        any = any || rules.has(static_cast<NelsonRule>(rule));
    }
    return any && !rules.has(NelsonRule::Trend) && !rules.has(NelsonRule::Alternating);
}

struct Move final {
    std::size_t from = 0;
    std::size_t to = 0;
    double chance = 0.0;
};

/// Every state that can be reached, the start first, and the moves between them that meet no rule.
struct Reached final {
    std::size_t states = 0;
    std::vector<Move> moves;
};

std::optional<Reached> reachedBy(const Chain& chain, const std::array<double, 8>& chance) {
    std::map<State, std::size_t> known{{State{}, 0}};
    std::vector<State> states{State{}};
    Reached reached;
    for (std::size_t from = 0; from < states.size(); ++from) {
        for (std::size_t zone = 0; zone < kZones.size(); ++zone) {
            const auto after = chain.next(states[from], kZones[zone]);
            if (!after) {
                continue;
            }
            const auto [place, isNew] = known.emplace(*after, states.size());
            if (isNew) {
                states.push_back(*after);
            }
            reached.moves.push_back({from, place->second, chance[zone]});
        }
        if (states.size() > kMostStates) {
            return std::nullopt;
        }
    }
    reached.states = states.size();
    return reached;
}

} // namespace

tl::expected<double, StatisticsFault> rulesRunLength(RuleSet rules, double shift) {
    if (!canBeRead(rules) || !std::isfinite(shift)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const auto reached = reachedBy(Chain{rules}, chances(shift));
    if (!reached) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    std::vector<double> matrix(reached->states * reached->states, 0.0);
    std::vector<double> right(reached->states, 1.0);
    for (std::size_t i = 0; i < reached->states; ++i) {
        matrix[i * reached->states + i] = 1.0;
    }
    for (const auto& move : reached->moves) {
        matrix[move.from * reached->states + move.to] -= move.chance;
    }
    if (!solveLinear(matrix, right) || !(right[0] >= 1.0 - 1e-9 && right[0] <= 1e12)) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    return right[0];
}

} // namespace holdfast::analytics::statistics
