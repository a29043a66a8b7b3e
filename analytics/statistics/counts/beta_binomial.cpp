#include "analytics/statistics/counts/beta_binomial.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <boost/math/special_functions/gamma.hpp>
#include <boost/math/tools/minima.hpp>

#include <algorithm>
#include <cmath>
#include <exception>
#include <utility>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

constexpr std::int64_t kMostReadings = 1'000'000;
constexpr double kSmallestLog = -20.0; ///< of ln θ: below it the law is binomial to every printed digit
constexpr double kLargestLog = 9.0;

struct LotTotals {
    double bad = 0.0;
    double read = 0.0;
    double lots = 0.0;
    std::int64_t largest = 0;

    [[nodiscard]] double share() const noexcept { return bad / read; }
};

tl::expected<LotTotals, StatisticsFault> lotTotals(std::span<const CountOf> lots) noexcept {
    LotTotals totals;
    for (const auto& lot : lots) {
        const auto fault = faultOfShare(lot.hits, lot.of);
        if (fault == StatisticsFault::OutOfDomain)
            return tl::unexpected(*fault);
        totals.bad += static_cast<double>(lot.hits);
        totals.read += static_cast<double>(lot.of);
        totals.lots += lot.of > 0 ? 1.0 : 0.0;
        totals.largest = std::max(totals.largest, lot.of);
    }
    if (totals.lots == 0.0)
        return tl::unexpected(StatisticsFault::NoValues);
    return totals;
}

/// What stands in where there is nothing to fit.
std::optional<LotModel> withoutFit(const LotTotals& totals) noexcept {
    const double one = 1.0 / (2.0 + totals.read);
    if (totals.bad == 0.0)
        return LotModel{0.5 / (1.0 + totals.read), one, LotModelCaveat::NothingBad};
    if (totals.bad == totals.read)
        return LotModel{1.0 - 0.5 / (1.0 + totals.read), one, LotModelCaveat::EverythingBad};
    if (totals.largest < 2)
        return LotModel{totals.share(), 0.0, LotModelCaveat::NothingRepeated};
    return std::nullopt;
}

LotModel modelOf(double mean, double intraclass, const LotTotals& totals) noexcept {
    LotModel model{mean, intraclass, LotModelCaveat::None};
    if (totals.lots < static_cast<double>(kFewLots))
        model.caveat = LotModelCaveat::FewLots;
    else if (intraclass <= 0.0)
        model.caveat = LotModelCaveat::LotsAlike;
    return model;
}

/// Lots with more than j bad, good and read, for every j.
struct Exceedances {
    std::vector<double> bad, good, read;

    explicit Exceedances(std::span<const CountOf> lots, std::int64_t largest) {
        const auto size = static_cast<std::size_t>(largest) + 1;
        bad.assign(size, 0.0);
        good = read = bad;
        for (const auto& lot : lots) {
            bad[static_cast<std::size_t>(lot.hits)] += 1.0;
            good[static_cast<std::size_t>(lot.of - lot.hits)] += 1.0;
            read[static_cast<std::size_t>(lot.of)] += 1.0;
        }
        for (auto* counts : {&bad, &good, &read}) {
            double above = 0.0;
            for (std::size_t j = counts->size(); j-- > 0;)
                above += std::exchange((*counts)[j], above);
        }
    }

    [[nodiscard]] double logLikelihood(double mean, double theta) const noexcept {
        double sum = 0.0;
        for (std::size_t j = 0; j < read.size() && read[j] > 0.0; ++j) {
            const double step = static_cast<double>(j) * theta;
            sum += (bad[j] > 0.0 ? bad[j] * std::log(mean + step) : 0.0) +
                   (good[j] > 0.0 ? good[j] * std::log(1.0 - mean + step) : 0.0) - read[j] * std::log1p(step);
        }
        return sum;
    }

    /// The likeliest mean at this θ.
    [[nodiscard]] double meanAt(double theta, double mean) const noexcept {
        double low = 0.0;
        double high = 1.0;
        for (int round = 0; round < 100; ++round) {
            double slope = 0.0;
            double bend = 0.0;
            for (std::size_t j = 0; j < read.size() && read[j] > 0.0; ++j) {
                const double step = static_cast<double>(j) * theta;
                slope += bad[j] / (mean + step) - good[j] / (1.0 - mean + step);
                bend +=
                    bad[j] / ((mean + step) * (mean + step)) + good[j] / ((1.0 - mean + step) * (1.0 - mean + step));
            }
            (slope > 0.0 ? low : high) = mean;
            double next = mean + slope / bend;
            if (!(next > low && next < high))
                next = (low + high) / 2.0;
            const double moved = std::abs(next - mean);
            mean = next;
            if (moved <= 1e-15 + 1e-14 * mean)
                break;
        }
        return mean;
    }
};

/// The likeliest ln θ: the best of a coarse grid, then Brent's search between its neighbours.
double likeliestLog(const Exceedances& counts, double share) {
    const auto miss = [&](double logTheta) {
        const double theta = std::exp(logTheta);
        return -counts.logLikelihood(counts.meanAt(theta, share), theta);
    };
    double best = kSmallestLog;
    double least = miss(best);
    for (double at = kSmallestLog + 1.0; at <= kLargestLog; at += 1.0)
        if (const double here = miss(at); here < least) {
            least = here;
            best = at;
        }
    return boost::math::tools::brent_find_minima(miss, best - 1.0, best + 1.0, 40).first;
}

} // namespace

tl::expected<LotModel, StatisticsFault> fitLotsByMoments(std::span<const CountOf> lots) {
    const auto totals = lotTotals(lots);
    if (!totals)
        return tl::unexpected(totals.error());
    if (const auto model = withoutFit(*totals))
        return *model;
    const double share = totals->share();
    double squares = 0.0;
    double weight = 0.0;
    for (const auto& lot : lots) {
        if (lot.of == 0)
            continue;
        const auto n = static_cast<double>(lot.of);
        const double distance = static_cast<double>(lot.hits) / n - share;
        squares += n * distance * distance;
        weight += (1.0 - n / totals->read) * (n - 1.0);
    }
    const double excess = squares / (share * (1.0 - share)) - (totals->lots - 1.0);
    return modelOf(share, weight > 0.0 ? std::clamp(excess / weight, 0.0, 1.0 - 1e-9) : 0.0, *totals);
}

tl::expected<LotModel, StatisticsFault> fitLots(std::span<const CountOf> lots) {
    const auto totals = lotTotals(lots);
    if (!totals)
        return tl::unexpected(totals.error());
    if (totals->largest > kMostReadings)
        return tl::unexpected(StatisticsFault::OutOfDomain);
    if (const auto model = withoutFit(*totals))
        return *model;
    const Exceedances counts{lots, totals->largest};
    const double logTheta = likeliestLog(counts, totals->share());
    const double theta = std::exp(logTheta);
    const double mean = counts.meanAt(theta, totals->share());
    if (counts.logLikelihood(totals->share(), 0.0) >= counts.logLikelihood(mean, theta) - 1e-9)
        return modelOf(totals->share(), 0.0, *totals);
    return modelOf(mean, theta / (1.0 + theta), *totals);
}

tl::expected<OverDispersion, StatisticsFault> overDispersion(std::span<const CountOf> lots) {
    const auto totals = lotTotals(lots);
    if (!totals)
        return tl::unexpected(totals.error());
    if (totals->lots < 2.0)
        return tl::unexpected(StatisticsFault::TooFewValues);
    const double share = totals->share();
    if (!(share > 0.0 && share < 1.0))
        return tl::unexpected(StatisticsFault::NoSpread);
    OverDispersion result;
    for (const auto& lot : lots) {
        if (lot.of == 0)
            continue;
        const auto n = static_cast<double>(lot.of);
        const double distance = static_cast<double>(lot.hits) - n * share;
        result.pearson += distance * distance / (n * share * (1.0 - share));
    }
    result.freedoms = totals->lots - 1.0;
    result.factor = result.pearson / result.freedoms;
    try {
        result.greaterP = boost::math::gamma_q(result.freedoms / 2.0, result.pearson / 2.0);
    } catch (const std::exception&) {
        return tl::unexpected(StatisticsFault::NoConvergence);
    }
    return result;
}

} // namespace holdfast::analytics::statistics
