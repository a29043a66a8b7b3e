#pragma once

#include "analytics/cure/reason.hpp"
#include "analytics/cure/run_plan.hpp"
#include "analytics/metrology/calibration.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace holdfast::analytics {

enum class WindowState { open, notProvable, closed };

/// Drawn, stored and used alike: a limit and the guard an instrument needs there, fixed once per window and
/// calibration.
struct GuardedLimit final {
    Temperature limit = Temperature::fromCelsius(0);
    TemperatureDifference guard;
};

/// Settings of the window's rules, from memory (MEM), kept as data.
struct WindowRules final {
    TemperatureDifference leastBleedRoom = TemperatureDifference::fromCelsius(2.0); ///< less than this: closed
    TemperatureDifference narrowBelow = TemperatureDifference::fromCelsius(2.0);    ///< acceptance zone
    TemperatureDifference spotShortfall = TemperatureDifference::fromCelsius(1.5);  ///< held maximum − sustained peak
};

/// What one layer asks. With pairs `cure.limit` is the cooler temperature T2, its guard is taken at T1, and `hold` is
/// 0: the layer is judged by dose.
struct LayerRequirement final {
    int position = 1;
    GuardedLimit cure;
    Duration hold{0};
    std::optional<EqualCurePairs> pairs;
    BleedResistance need = BleedResistance::none; ///< of its colour on this fabric
    bool atRisk = false;
    bool bleeds = false; ///< its ink resists less than the need
    std::string colour;
};

/// Below: asks more heat than the ceilings leave. Above: its ceiling leaves less than the layers ask.
enum class CulpritSide { below, above };

enum class CulpritKind { layer, fabric };
/// A fabric is named once, with the lower of its offending ceilings; a layer may stand on both sides.
struct Culprit final {
    CulpritKind kind = CulpritKind::layer;
    std::optional<int> position; ///< of the layer
    std::string name;            ///< colour of the layer, or name of the fabric
    Temperature limit = Temperature::fromCelsius(0);
    CulpritSide side = CulpritSide::below;
};

/// One ceiling of the run: a layer's own, or one of its fabric's two (the bleed ceiling only if a layer is at risk).
struct Ceiling final {
    CulpritKind kind = CulpritKind::fabric;
    std::optional<int> position; ///< of the layer
    std::string name;            ///< colour of the layer, or name of the fabric
    bool bleed = false;
    GuardedLimit at;
};

/// Sustained peaks that prove the run cured; no ceiling, no end.
struct AcceptanceZone final {
    Temperature low = Temperature::fromCelsius(0);
    std::optional<Temperature> high;      ///< below the hard ceiling
    std::optional<Temperature> highBleed; ///< also shown below the bleed ceiling
};

/// Two neighbouring steps of a strip: `dark` the last fully dark one, `light` the first untouched (absent: top step
/// dark).
struct AcceptedSteps final {
    Temperature dark = Temperature::fromCelsius(0);
    std::optional<Temperature> light;
    bool belowBleed = true; ///< also shown below the bleed ceiling
    bool operator==(const AcceptedSteps&) const = default;
};

struct LayerChange final {
    int position = 1;
    std::string from;
    std::string to;
};

/// `lower` and `upper` are those of the run after the changes; `upper` is the smaller of both ceilings.
struct WayOut final {
    std::vector<LayerChange> changes;      ///< bottom first; empty: only the instrument changes
    std::optional<std::string> instrument; ///< another instrument, if that is part of it
    Temperature lower = Temperature::fromCelsius(0);
    std::optional<Temperature> upper;
    bool bleedProvable = true;
};

enum class Advice { printWithBleedWatch, anotherCloth };

/// familyFaulty: a family of a layer has a fault of its own, or a layer's ink has no family.
enum class WindowFault { emptyLayerList, familyFaulty, fabricFaulty };

/// The window the layers and the fabric make together, for one instrument or (no instrument: guards 0, no aim) for
/// none.
struct RunWindow final {
    WindowState state = WindowState::open;
    bool narrow = false;           ///< acceptance zone under 2 °C
    bool bleedNotProvable = false; ///< only the bleed ceiling is too near
    Temperature lower = Temperature::fromCelsius(0);
    int lowerLayer = 1; ///< position of the layer that asks it
    Duration hold{0};
    std::optional<int> holdLayer;
    std::optional<GuardedLimit> upperHard;
    std::optional<int> upperHardLayer; ///< the layer whose ceiling it is; absent: the fabric's
    std::optional<GuardedLimit> upperBleed;
    std::optional<Temperature> upper; ///< the smaller of both
    std::optional<Temperature> aim;
    bool aimIsMiddle = false;
    std::vector<LayerRequirement> layers; ///< bottom first
    std::vector<int> bleeds;              ///< positions marked *bleeds*
    std::vector<Culprit> culprits;
    std::vector<WayOut> waysOut; ///< at most 20
    int waysOutLeftOut = 0;      ///< stops at the largest int
    std::vector<Advice> advice;
    std::vector<Reason> whyNotProvable;
    std::vector<std::string> couldProve;      ///< instruments in date that could
    std::vector<Ceiling> ceilings;            ///< every one, layers bottom first, then the fabric's
    std::optional<AcceptanceZone> acceptance; ///< absent unless open, and with a strip
    std::vector<AcceptedSteps> acceptedSteps; ///< of a strip, ascending
    bool readByStrip = false;
};

/// What may be chosen from when looking for a way out.
struct Choices final {
    std::vector<InkFamily> families;      ///< newest revisions
    std::vector<Calibration> instruments; ///< the shop's, as of today
};

/// The window alone: limits, state, culprits, advice. Fails with every fault of the plan when it cannot be used.
/// Decisions 1. A ceiling that equals the cure leaves it open (narrow); ties of lower and hold name the lowest layer, a
/// tie of the hard upper the fabric. A spot's acceptance zone is narrower by its shortfall; a strip is judged by its
/// steps, its guard being tolerance + z·u_p. A gun proves nothing cured; strip and spot prove no hold and no dose.
[[nodiscard]] tl::expected<RunWindow, std::vector<WindowFault>> windowOf(const RunPlan& plan,
                                                                         const Calibration* instrument = nullptr,
                                                                         const GuardSetting& guard = {},
                                                                         const WindowRules& rules = {});

/// The same, with ways out searched among the choices when it is not open (decisions 1, Ways out), and the instruments
/// that could prove it as it stands. Faulty families and those of another chemistry are passed over; of several
/// revisions of one name the newest counts. Worst and sum of ease are those of the families changed to; the last tie is
/// settled by the names changed to, bottom first, then positions, then the instrument. Without an instrument only
/// layers are changed.
[[nodiscard]] tl::expected<RunWindow, std::vector<WindowFault>>
windowWithWaysOut(const RunPlan& plan, const Calibration* instrument, const Choices& choices,
                  const GuardSetting& guard = {}, const WindowRules& rules = {});

/// Several runs on one belt: the belt's window is the intersection. Layers and ceilings stand in the order of the list
/// and are numbered on through it, so that position n of the belt is the n-th layer of all. Not provable if a run is,
/// or if nothing is left to accept. No ways out: those are found run by run. Empty list: absent.
[[nodiscard]] std::optional<RunWindow> intersectionOf(const std::vector<RunWindow>& windows,
                                                      const WindowRules& rules = {});

} // namespace holdfast::analytics
