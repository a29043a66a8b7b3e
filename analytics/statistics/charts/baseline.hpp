#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <map>
#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace holdfast::analytics::statistics {

enum class ChartKind {
    Individuals,
    MeanRange,
    MeanSd,
    P,      ///< share nonconforming
    Np,     ///< number nonconforming
    C,      ///< faults, the same chance for each
    U,      ///< faults a unit
    LaneyP, ///< p′: p with the spread between the periods
    LaneyU, ///< u′
};

/// What is to be said beside a chart's figures.
enum class ChartCaveat {
    FewPoints,     ///< limits from fewer than kUsualPoints: they may lie far from where they would settle
    NoSpread,      ///< the stretch has no spread: there are no limits, and the rules that need them are off
    Correlated,    ///< neighbours are alike: limits from moving ranges are too narrow, expect false alarms
    SmallCounts,   ///< so few are expected somewhere that the normal limits are a poor guide
    OverDispersed, ///< periods differ by more than chance within them: plain p or u limits are too narrow
    EmptyPeriods,  ///< periods without an inspected piece have no point
};

/// Points from which limits are usually set: Montgomery, Introduction to Statistical Quality Control, 7th ed., 6.2.1
/// (20 to 25 samples); C. P. Quesenberry, Journal of Quality Technology 25 (1993), shows that it takes 100 subgroups,
/// or 300 individuals, until such limits behave like known ones.
inline constexpr std::size_t kUsualPoints = 20;

struct Limits final {
    double lower = 0.0;
    double center = 0.0;
    double upper = 0.0;
};

/// Limits taken from a chosen stretch, frozen to be applied to later points.
struct Baseline final {
    std::string name;
    ChartKind kind = ChartKind::Individuals;
    double center = 0.0;
    double sigma = 0.0;      ///< of a single value, in the unit of the values; 0 for charts of counts
    double dispersion = 1.0; ///< Laney's σz for p′ and u′; 1 for p, np, c, u
    std::size_t subgroup = 1;
    std::size_t points = 0;
    /// Relative standard error of `sigma`: how far off the limits' width may be. 0 where there is no sigma.
    double spreadError = 0.0;
    std::vector<ChartCaveat> caveats;

    [[nodiscard]] bool says(ChartCaveat caveat) const;
};

/// Baselines by name.
class Baselines final {
public:
    /// OutOfDomain for a name that is empty or taken: what is frozen does not change under its name.
    tl::expected<void, StatisticsFault> keep(Baseline baseline);
    /// Null for a name nobody kept.
    [[nodiscard]] const Baseline* find(const std::string& name) const;
    [[nodiscard]] std::size_t count() const { return m_kept.size(); }

private:
    std::map<std::string, Baseline> m_kept;
};

} // namespace holdfast::analytics::statistics
