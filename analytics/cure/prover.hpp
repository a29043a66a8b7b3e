#pragma once

#include "analytics/cure/window.hpp"

#include <optional>
#include <vector>

/// What one instrument can prove of a window. Made so that, beside given ceilings, each layer can be asked alone: a run
/// is provable exactly if each of its layers is.
namespace holdfast::analytics {

/// The ceilings of a run that count, each with its guard.
struct Ceilings final {
    std::optional<GuardedLimit> hard;
    std::optional<GuardedLimit> bleed;
};

/// The lowest reading that proves a layer's lower limit, as a sustained peak (a strip: as the edge `lo` of its
/// interval).
struct Reach final {
    bool possible = true; ///< false: no reading of this instrument proves the layer, whatever the ceilings
    Temperature at = Temperature::fromCelsius(0);
};

/// What the ceilings leave; infinite where nothing limits, minus infinite where nothing is left.
struct Caps final {
    Temperature proves = Temperature::fromCelsius(0); ///< highest reach that can still be proven
    Temperature overheats =
        Temperature::fromCelsius(0); ///< a reach from here on would be overheated by the bleed ceiling
    Temperature showsBleed = Temperature::fromCelsius(0); ///< highest reach that also shows the bleed ceiling kept
};

class Prover final {
public:
    /// No instrument: guards are 0 and everything can be proven up to the ceilings.
    Prover(const Calibration* instrument, const GuardSetting& guard, const WindowRules& rules) noexcept;

    [[nodiscard]] bool hasInstrument() const noexcept { return m_instrument != nullptr; }
    [[nodiscard]] bool isStrip() const noexcept { return isKind(InstrumentKind::strip); }
    /// How far a held maximum may stand above the sustained peak; 0 but for a spot.
    [[nodiscard]] TemperatureDifference shortfall() const noexcept;

    /// z·u; of a strip, the tolerance of its steps besides.
    [[nodiscard]] TemperatureDifference guardAt(Temperature limit) const noexcept;
    [[nodiscard]] GuardedLimit guarded(Temperature limit) const noexcept { return {limit, guardAt(limit)}; }
    /// What an ink asks of this instrument; position, colour and bleed are the caller's.
    [[nodiscard]] LayerRequirement requirementOf(const InkFamily& ink) const noexcept;

    [[nodiscard]] Reach reachOf(const LayerRequirement& layer) const noexcept;
    [[nodiscard]] Caps capsOf(const Ceilings& ceilings) const;
    [[nodiscard]] static bool proves(const Reach& reach, const Caps& caps) noexcept;
    [[nodiscard]] static bool showsBleed(const Reach& reach, const Caps& caps) noexcept;

    /// Pairs of steps that would prove a lower limit under these ceilings, ascending.
    [[nodiscard]] std::vector<AcceptedSteps> acceptedSteps(const Ceilings& ceilings, Temperature lower) const;

    /// Why nothing can be proven, the instrument's own faults first; empty if something can.
    [[nodiscard]] std::vector<Reason> whyNot(const std::vector<LayerRequirement>& layers, const Ceilings& ceilings,
                                             const GuardedLimit& lower) const;

private:
    [[nodiscard]] bool isKind(InstrumentKind kind) const noexcept {
        return m_instrument && m_instrument->instrument().kind == kind;
    }
    [[nodiscard]] bool seesNoTime() const noexcept { return isStrip() || isKind(InstrumentKind::spot); }
    [[nodiscard]] bool reachesRange(Temperature reach) const noexcept;
    [[nodiscard]] Caps stripCapsOf(const Ceilings& ceilings) const;
    void addFaults(std::vector<Reason>& reasons, const std::vector<LayerRequirement>& layers,
                   const Ceilings& ceilings) const;
    void addLayerReasons(std::vector<Reason>& reasons, const LayerRequirement& layer) const;
    [[nodiscard]] Reason capReason(const Ceilings& ceilings, const GuardedLimit& lower) const;

    const Calibration* m_instrument;
    GuardSetting m_guard;
    WindowRules m_rules;
};

} // namespace holdfast::analytics
