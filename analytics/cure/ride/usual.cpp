#include "analytics/cure/ride/usual.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

/// 1/Φ⁻¹(3/4): makes the median distance a standard deviation for normal values.
constexpr double kMadToSigma = 1.4826;

double medianOf(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    const std::size_t n = values.size();
    return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2.0;
}

struct Middle final {
    double middle = 0.0;
    double spread = 0.0;
};

Middle middleOf(const std::vector<double>& values) {
    Middle result;
    result.middle = medianOf(values);
    std::vector<double> distances;
    for (const double value : values) {
        distances.push_back(std::abs(value - result.middle));
    }
    result.spread = kMadToSigma * medianOf(std::move(distances));
    return result;
}

} // namespace

std::optional<Usual> usualOf(const std::vector<UsualRide>& rides, std::optional<Temperature> setPointNow,
                             const UsualRules& rules) {
    std::vector<double> taus;
    std::vector<double> airs;
    std::vector<double> rates;
    std::vector<double> flutters;
    for (const auto& ride : rides) {
        if (setPointNow && !ride.setPoint) {
            continue;
        }
        const auto moved = setPointNow ? *setPointNow - *ride.setPoint : TemperatureDifference{};
        taus.push_back(ride.fit.curve.tau.count());
        airs.push_back((ride.fit.curve.air + moved).celsius());
        rates.push_back(ride.fit.rate.celsiusPerSecond() + (moved / ride.fit.curve.tau).celsiusPerSecond());
        flutters.push_back(ride.fit.flutter.celsius());
    }
    if (taus.empty() || static_cast<int>(taus.size()) < rules.leastRides) {
        return std::nullopt;
    }
    const auto tau = middleOf(taus);
    const auto air = middleOf(airs);
    const auto rate = middleOf(rates);
    Usual usual;
    usual.rides = static_cast<int>(taus.size());
    usual.tau = {Duration{tau.middle}, Duration{tau.spread}};
    usual.air = {Temperature::fromCelsius(air.middle), TemperatureDifference::fromCelsius(air.spread)};
    usual.rate = {HeatingRate::fromCelsiusPerSecond(rate.middle), HeatingRate::fromCelsiusPerSecond(rate.spread)};
    usual.flutter = TemperatureDifference::fromCelsius(medianOf(flutters));
    return usual;
}

} // namespace holdfast::analytics
