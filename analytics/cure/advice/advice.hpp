#pragma once

#include "analytics/cure/window.hpp"

#include <optional>
#include <string>
#include <vector>

/// Advice while planning: for a cloth, a garment colour and the print colours, the easiest family that is enough for
/// each layer, and what it costs. All of it from the shop's own data.
namespace holdfast::analytics {

/// Which colours hide a dark garment and which garments are dark; common practice as starters, kept as data.
struct PrintingHabits final {
    std::vector<std::string> coveringColours{"black"}; ///< need no white under them on a dark garment
    std::vector<std::string> lightGarments{"white", "natural", "ash", "cream", "yellow", "light grey", "sand"};
};

/// What a family costs against the easiest family of the shop that cures at all (ease 1 is the easiest).
struct FamilyCost final {
    int harderBy = 0;           ///< ranks of ease
    bool needsHold = false;     ///< the heat must last
    bool hasPotLife = false;    ///< a bucket of it dies
    bool lowersCeiling = false; ///< its own ceiling is the run's
};

struct FamilyChoice final {
    std::string family;
    Temperature cure = Temperature::fromCelsius(0);
    FamilyCost cost;
};

struct LayerAdvice final {
    std::string colour;
    bool underbase = false; ///< a white laid under the others, not asked for by the customer
    BleedResistance need = BleedResistance::none;
    std::optional<FamilyChoice> choice; ///< absent: no family of the shop will do
    std::vector<FamilyChoice> others;   ///< that would do in its place, easiest first
    std::optional<GelRange> flash;      ///< to gel it between screens; absent: the last layer, or no gel range
};

struct PlanAdvice final {
    std::vector<LayerAdvice> layers; ///< bottom first, the underbase first of all
    std::optional<RunWindow> window; ///< of the choices; absent: no choice for some layer
    bool bleedWatchDue = false;      ///< a layer's ink resists less than its colour needs, or the room is narrow
};

/// `colours` bottom first, as they will be seen. An underbase is laid if the garment is not light and a colour does not
/// cover by itself; nothing is said of a garment whose colour is empty. Families: the newest revisions, faulty ones
/// passed over. One chemistry for all layers: the one whose worst ease is lowest, then the sum, then the first in the
/// families' order. Within it the easiest families that resist bleed enough and leave the window open together; if none
/// does, those that leave it open without the resistance, with a bleed watch; if none does, no choice at all.
/// No colours: no layers.
[[nodiscard]] PlanAdvice adviseRun(const Fabric& fabric, const std::string& garmentColour,
                                   const std::vector<std::string>& colours, const std::vector<InkFamily>& families,
                                   const PrintingHabits& habits = {});

} // namespace holdfast::analytics
