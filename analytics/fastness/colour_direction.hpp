#pragma once

#include "analytics/fastness/colour.hpp"
#include "analytics/quantity/probability.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

/// Which way a colour moved, and whether it moved at all.
namespace holdfast::analytics {

/// Readings of one spot, the instrument lifted and set down between them; n ≥ 2 says something about its spread.
using RepeatReadings = std::vector<Lab>;

enum class RepeatFault {
    invalidColour,
    tooFewRepeats, ///< fewer than kFewestFreedoms degrees of freedom
    riskInvalid,   ///< outside 0.1 % to 20 %
    spreadInvalid  ///< a spread or step that is negative or not finite
};

inline constexpr std::size_t kFewestFreedoms = 4; ///< Σ(n − 1) over the spots; from memory

struct RepeatSpread final {
    /// √(s_L² + s_a² + s_b²), each pooled over the spots: s² = Σ(x − spot's mean)²/Σ(n − 1).
    double total = 0.0;
    std::size_t freedoms = 0; ///< Σ(n − 1); spots with one reading add nothing
};

/// Pooled within-spot spread (ISO 5725-2, repeatability; NIST e-Handbook 7.4.3).
[[nodiscard]] tl::expected<RepeatSpread, RepeatFault> repeatSpread(std::span<const RepeatReadings> spots);

/// Largest ΔE*ab two colours that are the same may show, at most at the risk α: t(ν, 1 − α/2)·total·√(1/n1 + 1/n2),
/// where n1 and n2 are the readings averaged for each colour. Of all ways the spread can lie in the three axes, all
/// along one line is the worst (Székely and Bakirov, Probab. Theory Relat. Fields 126, 2003), and there it is Student's
/// t; α is kept in every other. total counts as no less than the
/// step/√12 of each of the three figures of the instrument's display, together step/2.
struct ChangeLimitRequest final {
    RepeatSpread spread;
    std::size_t referenceReadings = 1; ///< n1; 0 counts as 1
    std::size_t sampleReadings = 1;    ///< n2
    double step = 0.01;                ///< of the instrument's display, in L*, a*, b*
    Probability risk = Probability::fromPercent(5);
};
[[nodiscard]] tl::expected<double, RepeatFault> changeLimit(const ChangeLimitRequest& request) noexcept;

enum class ColourMove {
    noChangeShown, ///< ΔE*ab not above the limit
    towardGarment, ///< bleed
    towardYellow,  ///< heat or fumes
    towardGrey,    ///< soil or wear
    undecided
};

enum class MoveDoubt {
    none,
    noDirectionNear,        ///< no direction within the angle limit
    twoDirectionsNear,      ///< the two nearest lie within the tie angle of each other
    projectionNotAboveLimit ///< what points that way is no more than repeats give
};

/// Settings, from memory; the shop may change them.
struct MoveRules final {
    double angleLimitDegrees = 30.0;
    double tieDegrees = 5.0;
};

/// One of the three directions as seen from the change.
struct MoveCandidate final {
    ColourMove move = ColourMove::undecided;
    bool defined = true;       ///< false: the start already is the colour pointed at, within the limit
    double projection = 0.0;   ///< of the change on the unit direction, in CIELAB units; negative is away from it
    double angleDegrees = 0.0; ///< between the change and the direction, 0 to 180
};

struct ColourMoveRequest final {
    Lab before;
    Lab after;
    Lab garment;        ///< the garment's own colour
    double limit = 0.0; ///< from changeLimit(), or the shop's own
    MoveRules rules{};
};

struct ColourMoveFinding final {
    ColourMove move = ColourMove::noChangeShown;
    MoveDoubt doubt = MoveDoubt::none;
    double difference = 0.0;                   ///< ΔE*ab
    std::array<MoveCandidate, 3> candidates{}; ///< garment, yellow, grey; filled in once a change is shown
};

/// d = after − before in (L*, a*, b*). Not above the limit (equality counts as no change): no change shown. Else for
/// each direction, as a unit vector e from `before`: toward the garment's colour; toward yellow (0, 0, 1); toward the
/// mid grey (50, 0, 0). Projection d·e; angle = arccos(d·e/|d|). A direction whose target lies no farther from `before`
/// than the limit is not defined and left out. The nearest direction within the angle limit (met when equal) is the
/// answer, if its projection is above the limit and the second nearest one is more than the tie angle farther off;
/// otherwise undecided, with the reason. So a print on a grey garment, whose bleed and soil point the same way, stays
/// undecided. Refused: an invalid colour, a limit below 0 or not finite (differenceOutOfRange), angles outside 0 to 90
/// (settingInvalid).
[[nodiscard]] tl::expected<ColourMoveFinding, ColourFault> colourMove(const ColourMoveRequest& request) noexcept;

} // namespace holdfast::analytics
