#pragma once

#include "analytics/fastness/colour_direction.hpp"
#include "analytics/fastness/grey_scale.hpp"

#include <optional>
#include <vector>

/// What two measured colours say, beside the grade somebody gave by eye.
namespace holdfast::kiosk::shop {

enum class ColourScale {
    change,  ///< of the print itself, ISO 105-A05
    staining ///< of the cloth beside it, ISO 105-A04
};

/// Largest ΔE*ab that two readings of one patch may show where nobody has taken repeats; from memory.
inline constexpr double kRepeatLimit = 1.0;

struct RepeatLimit final {
    double value = kRepeatLimit;
    bool fromRepeats = false; ///< else the shop's, from memory
};

/// From the repeats taken of both patches, if they say enough (four degrees of freedom); the mean of each patch counts
/// as one colour of so many readings.
[[nodiscard]] RepeatLimit repeatLimit(const std::vector<analytics::Lab>& before,
                                      const std::vector<analytics::Lab>& after);

/// The mean of readings of one patch; nothing of none.
[[nodiscard]] std::optional<analytics::Lab> meanOf(const std::vector<analytics::Lab>& readings);

struct ColourFinding final {
    analytics::Grade grade = analytics::Grade::best(); ///< by the scale asked for
    double rating = 5.0;                               ///< GS of A05, SSR of A04
    double cielab = 0.0;                               ///< ΔE*ab
    double ciede2000 = 0.0;                            ///< ΔE00
    analytics::ColourMoveFinding move{};               ///< of a change; of staining it says nothing
};

/// Without the garment's colour, a change towards it cannot be told and is left out.
[[nodiscard]] tl::expected<ColourFinding, analytics::ColourFault>
colourFound(const analytics::Lab& before, const analytics::Lab& after, const std::optional<analytics::Lab>& garment,
            ColourScale scale, double repeatLimit);

/// A colour as a screen shows it, 0 to 255.
struct PatchColour final {
    int red = 0;
    int green = 0;
    int blue = 0;
    bool clipped = false; ///< more colourful than the screen can show
    bool operator==(const PatchColour&) const = default;
};

/// CIELAB under D65 (textile instruments give D65 with the 10° observer; the screen's 2° is taken for it, which is good
/// for showing, not for measuring) to sRGB, IEC 61966-2-1; white (0.95047, 1, 1.08883).
[[nodiscard]] PatchColour patchOf(const analytics::Lab& colour) noexcept;

} // namespace holdfast::kiosk::shop
