#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

/// Count, mean, standard deviation and extremes of values that come one by one and are not kept: Boost.Accumulators
/// with tag::mean and tag::variance, the variance that is updated from the distance to the mean (not lazy_variance,
/// the mean square less the squared mean, which has no correct digit on NIST StRD NumAcc3 and NumAcc4).
///
/// Certified digits kept, of 15: mean at least 13 on all nine NIST StRD univariate sets; standard deviation at least 12
/// on PiDigits, Lottery, Lew, Mavro, NumAcc1 and NumAcc2, 11 on Michelso, 9 on NumAcc3 and 8 on NumAcc4. Where the
/// values are at hand, moments() keeps all of them.
class RunningMoments final {
public:
    RunningMoments();
    ~RunningMoments();
    RunningMoments(RunningMoments&&) noexcept;
    RunningMoments& operator=(RunningMoments&&) noexcept;
    RunningMoments(const RunningMoments&) = delete;
    RunningMoments& operator=(const RunningMoments&) = delete;

    /// NotFinite for a value that is no number; it is not taken in.
    tl::expected<void, StatisticsFault> add(double value);
    [[nodiscard]] std::size_t count() const;
    [[nodiscard]] std::optional<double> mean() const; ///< absent before the first value, as min and max
    [[nodiscard]] std::optional<double> sd() const;   ///< n − 1; absent below two values
    [[nodiscard]] std::optional<double> min() const;
    [[nodiscard]] std::optional<double> max() const;

private:
    struct State;
    std::unique_ptr<State> m_state;
};

} // namespace holdfast::analytics::statistics
