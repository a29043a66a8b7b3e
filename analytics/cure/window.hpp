#pragma once

#include "analytics/cure/reason.hpp"
#include "analytics/cure/run_plan.hpp"
#include "analytics/metrology/calibration.hpp"

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

/// What one layer asks. With pairs `cure.limit` is the cooler temperature T2, and its guard is taken at T1.
struct LayerRequirement final {
    int position = 1;
    GuardedLimit cure;
    Duration hold{0};
    std::optional<EqualCurePairs> pairs;
    BleedResistance need = BleedResistance::none; ///< of its colour on this fabric
    bool atRisk = false;
    bool bleeds = false; ///< its ink resists less than the need
};

enum class CulpritKind { layer, fabric };
struct Culprit final {
    CulpritKind kind = CulpritKind::layer;
    std::optional<int> position; ///< of the layer
    std::string name;            ///< colour of the layer, or name of the fabric
    Temperature limit = Temperature::fromCelsius(0);
};

struct LayerChange final {
    int position = 1;
    std::string from;
    std::string to;
};

struct WayOut final {
    std::vector<LayerChange> changes;
    std::optional<std::string> instrument; ///< another instrument, if that is part of it
    Temperature lower = Temperature::fromCelsius(0);
    std::optional<Temperature> upper;
    bool bleedProvable = true;
};

enum class Advice { printWithBleedWatch, anotherCloth };

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
    int waysOutLeftOut = 0;
    std::vector<Advice> advice;
    std::vector<Reason> whyNotProvable;
    std::vector<std::string> couldProve; ///< instruments in date that could
};

/// What may be chosen from when looking for a way out.
struct Choices final {
    std::vector<InkFamily> families;      ///< newest revisions
    std::vector<Calibration> instruments; ///< the shop's, as of today
};

/// The window alone: limits, state, culprits. Fails with every fault of the plan when it cannot be used.
[[nodiscard]] tl::expected<RunWindow, std::vector<WindowFault>>
windowOf(const RunPlan& plan, const Calibration* instrument = nullptr, const GuardSetting& guard = {});

/// The same, with ways out searched among the choices when it is not open.
[[nodiscard]] tl::expected<RunWindow, std::vector<WindowFault>> windowWithWaysOut(const RunPlan& plan,
                                                                                  const Calibration* instrument,
                                                                                  const Choices& choices,
                                                                                  const GuardSetting& guard = {});

/// Several runs on one belt: the belt's window is the intersection. Empty list: absent.
[[nodiscard]] std::optional<RunWindow> intersectionOf(const std::vector<RunWindow>& windows);

} // namespace holdfast::analytics
