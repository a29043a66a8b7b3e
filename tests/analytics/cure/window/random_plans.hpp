#pragma once

#include "window_support.hpp"

#include <random>

namespace holdfast::analytics::support {

/// Small plans, families and instruments from coarse grids, so that ties and equalities are common; always sound.
class RandomPlans final {
public:
    explicit RandomPlans(unsigned seed) : m_engine{seed} {}

    int upTo(int most) { return std::uniform_int_distribution<int>{0, most}(m_engine); }
    bool once(int in) { return upTo(in - 1) == 0; }

    InkFamily family(const std::string& name) {
        auto made = ink(name, c(130 + 5 * upTo(8)), 1 + upTo(2));
        made.bleedResistance = static_cast<BleedResistance>(upTo(2));
        made.chemistry = once(6) ? Chemistry::silicone : Chemistry::plastisol;
        if (once(3)) {
            made.ceiling = made.cure + k(5 * upTo(6));
        }
        if (once(6)) {
            made.hold = Duration{30};
        }
        if (once(8) && !made.ceiling) {
            made = withPairs(made, {Duration{20}, made.cure + k(10)}, {Duration{60}, made.cure - k(5)});
        }
        return made;
    }

    std::vector<InkFamily> families(int most) {
        std::vector<InkFamily> made;
        for (int i = 0, n = upTo(most); i < n; ++i) {
            made.push_back(family(std::string(1, static_cast<char>('a' + upTo(7)))));
            made.back().revision = 1 + i;
        }
        return made;
    }

    RunPlan plan(int layers) {
        RunPlan made{{}, plainCloth(std::nullopt)};
        for (int i = 0, n = 1 + upTo(layers - 1); i < n; ++i) {
            const auto one = pureInk(family(std::string(1, static_cast<char>('a' + upTo(7)))));
            const auto two = pureInk(family("second"));
            const auto mix = mixInks("mix", {{one, 1}, {two, 1}});
            made.layers.push_back({once(2) ? "black" : "white", once(4) && mix ? *mix : one, {}});
        }
        if (!once(5)) {
            made.fabric.hardCeiling = c(145 + 5 * upTo(8));
        }
        if (!once(3)) {
            const auto bleed = c(140 + 4 * upTo(8));
            made.fabric.bleedCeiling = made.fabric.hardCeiling ? std::min(bleed, *made.fabric.hardCeiling) : bleed;
        }
        made.fabric.needOfAtRiskColour = static_cast<BleedResistance>(upTo(2));
        return made;
    }

    Calibration instrument(const std::string& name) {
        switch (upTo(6)) {
        case 0:
            return strip({c(136), c(142), c(150), c(156), c(164)}, k(1), k(upTo(2)), name);
        case 1:
            return withGuard(InstrumentKind::gun, k(1), name);
        case 2:
            return withGuard(InstrumentKind::spot, k(upTo(3)), name);
        case 3:
            return nearPointOnly(name);
        default:
            return withGuard(InstrumentKind::probe, k(upTo(8)), name);
        }
    }

    std::vector<Calibration> instruments(int most) {
        std::vector<Calibration> made;
        for (int i = 0, n = upTo(most); i < n; ++i) {
            made.push_back(instrument("instrument " + std::to_string(i)));
        }
        return made;
    }

private:
    /// Good near one certificate point, coarse or proving nothing beyond 25 °C from it.
    Calibration nearPointOnly(const std::string& name) {
        auto made = withGuard(InstrumentKind::probe, k(1)).instrument();
        made.name = name;
        made.statedTolerance = k(4);
        made.certificates = {{kToday, kToday, 2.0, {{c(110 + 10 * upTo(3)), k(once(2) ? 6 : 0), k(0.5)}}}};
        return {made, kToday};
    }

    std::mt19937 m_engine;
};

} // namespace holdfast::analytics::support
