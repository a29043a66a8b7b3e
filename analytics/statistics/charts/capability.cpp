#include "analytics/statistics/charts/capability.hpp"

#include "analytics/statistics/charts/non_central_t.hpp"
#include "analytics/statistics/charts/normality.hpp"
#include "analytics/statistics/charts/quadrature.hpp"
#include "analytics/statistics/charts/root.hpp"
#include "analytics/statistics/summary/moments.hpp"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <exception>

namespace holdfast::analytics::statistics {
namespace {

constexpr std::size_t kFewValues = 30;
constexpr double kNotNormal = 0.05;
constexpr double kLargestIndex = 1e6; ///< beyond it the spread is none to speak of

using Index = tl::expected<CapabilityIndex, StatisticsFault>;

Index cpOf(double value, double degrees, double tail) {
    try {
        const boost::math::chi_squared chi{degrees};
        return CapabilityIndex{value, value * std::sqrt(boost::math::quantile(chi, tail) / degrees),
                               value * std::sqrt(boost::math::quantile(boost::math::complement(chi, tail)) / degrees)};
    } catch (const std::exception&) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
}

/// Cpu or Cpl: the non-centralities under which as much, or as little, would be met only with chance `tail`.
Index oneSided(double value, double count, double tail) {
    if (!(std::abs(value) < kLargestIndex)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const double t = 3.0 * std::sqrt(count) * value;
    const double degrees = count - 1.0;
    // How far the non-centrality may lie from t, in its own standard deviations.
    const double per = std::sqrt(1.0 + t * t / (2.0 * degrees));
    const auto at = [&](double wanted) {
        return rootOfRising([&](double far) { return wanted - nonCentralTBelow(t, degrees, t + far * per); });
    };
    const auto low = at(1.0 - tail);
    const auto high = at(tail);
    if (!low || !high) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    const double unit = 3.0 * std::sqrt(count);
    return CapabilityIndex{value, (t + *low * per) / unit, (t + *high * per) / unit};
}

CapabilityIndex bissell(double value, double count, double tail) {
    const double reach = -normalQuantile(tail) * std::sqrt(1.0 / (9.0 * count) + value * value / (2.0 * (count - 1.0)));
    return {value, value - reach, value + reach};
}

std::optional<StatisticsFault> faultOf(std::size_t count, double mean, double sd, const Specification& specification,
                                       double confidence) {
    const bool finite = std::isfinite(mean) && std::isfinite(sd) && std::isfinite(specification.lower.value_or(0.0)) &&
                        std::isfinite(specification.upper.value_or(0.0));
    if (!finite) {
        return StatisticsFault::NotFinite;
    }
    if (count < 2) {
        return StatisticsFault::TooFewValues;
    }
    const bool wrongWay = specification.lower && specification.upper && !(*specification.lower < *specification.upper);
    if ((!specification.lower && !specification.upper) || wrongWay || !(confidence > 0.0 && confidence < 1.0) ||
        sd < 0.0) {
        return StatisticsFault::OutOfDomain;
    }
    return sd > 0.0 ? std::nullopt : std::optional{StatisticsFault::NoSpread};
}

/// The indices that need both limits, once Cpu and Cpl are there.
std::optional<StatisticsFault> addBoth(Capability& result, const Specification& specification, double tail) {
    const auto n = static_cast<double>(result.count);
    const double width = *specification.upper - *specification.lower;
    const auto cp = cpOf(width / (6.0 * result.sd), n - 1.0, tail);
    if (!cp) {
        return cp.error();
    }
    result.cp = *cp;
    result.cpk = bissell(std::min(result.cpu->value, result.cpl->value), n, tail);
    result.k = std::abs(0.5 * (*specification.upper + *specification.lower) - result.mean) / (0.5 * width);
    return std::nullopt;
}

} // namespace

tl::expected<Capability, StatisticsFault> capability(std::size_t count, double mean, double sd,
                                                     const Specification& specification, double confidence) {
    if (const auto fault = faultOf(count, mean, sd, specification, confidence)) {
        return tl::unexpected{*fault};
    }
    const auto n = static_cast<double>(count);
    const double tail = 0.5 * (1.0 - confidence);
    Capability result;
    result.count = count;
    result.mean = mean;
    result.sd = sd;
    result.fewValues = count < kFewValues;
    if (specification.upper) {
        const auto index = oneSided((*specification.upper - mean) / (3.0 * sd), n, tail);
        if (!index) {
            return tl::unexpected{index.error()};
        }
        result.cpu = *index;
        result.cpk = *index;
        result.shareOutside += normalBelow(-3.0 * index->value);
    }
    if (specification.lower) {
        const auto index = oneSided((mean - *specification.lower) / (3.0 * sd), n, tail);
        if (!index) {
            return tl::unexpected{index.error()};
        }
        result.cpl = *index;
        result.cpk = *index;
        result.shareOutside += normalBelow(-3.0 * index->value);
    }
    if (specification.lower && specification.upper) {
        if (const auto fault = addBoth(result, specification, tail)) {
            return tl::unexpected{*fault};
        }
    }
    return result;
}

tl::expected<Capability, StatisticsFault> capability(std::span<const double> values, const Specification& specification,
                                                     double confidence) {
    const auto of = moments(values);
    if (!of) {
        return tl::unexpected{of.error()};
    }
    auto result = capability(of->count, of->mean, of->sd.value_or(0.0), specification, confidence);
    if (result) {
        const auto normal = andersonDarling(values);
        result->notNormal = normal && normal->p < kNotNormal;
    }
    return result;
}

} // namespace holdfast::analytics::statistics
