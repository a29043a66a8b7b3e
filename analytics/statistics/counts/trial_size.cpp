#include "analytics/statistics/counts/trial_size.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

constexpr std::int64_t kMostExactPerArm = 2'000;
constexpr std::int64_t kMostSearched = 500;

bool inDomain(const TrialQuestion& question) noexcept {
    return isProbability(question.shareOne) && isProbability(question.shareTwo) &&
           question.shareOne != question.shareTwo && isInnerProbability(question.power) &&
           isInnerProbability(question.risk) && question.power > question.risk;
}

double upperZ(double tail) {
    return boost::math::quantile(boost::math::complement(boost::math::normal_distribution<>(), tail));
}

std::vector<double> logFactorials(std::size_t most) {
    std::vector<double> table(most + 1, 0.0);
    for (std::size_t i = 2; i <= most; ++i)
        table[i] = table[i - 1] + std::log(static_cast<double>(i));
    return table;
}

std::vector<double> binomial(std::size_t n, double p, const std::vector<double>& factorials) {
    std::vector<double> chances(n + 1, 0.0);
    if (p <= 0.0 || p >= 1.0) {
        chances[p <= 0.0 ? 0 : n] = 1.0;
        return chances;
    }
    for (std::size_t x = 0; x <= n; ++x)
        chances[x] = std::exp(factorials[n] - factorials[x] - factorials[n - x] + static_cast<double>(x) * std::log(p) +
                              static_cast<double>(n - x) * std::log1p(-p));
    return chances;
}

/// The smallest x of `failed` in one arm of n that is significant, or one more than there can be.
std::size_t critical(std::size_t n, std::size_t failed, double tail, const std::vector<double>& factorials) {
    const std::size_t lowest = failed > n ? failed - n : 0;
    std::size_t x = std::min(n, failed) + 1;
    const auto choose = [&](std::size_t of, std::size_t k) {
        return factorials[of] - factorials[k] - factorials[of - k];
    };
    double sum = 0.0;
    while (x > lowest) {
        sum += std::exp(choose(n, x - 1) + choose(n, failed - (x - 1)) - choose(2 * n, failed));
        if (sum > tail * (1.0 + 1e-9))
            break;
        --x;
    }
    return x;
}

double powerOf(const TrialQuestion& question, std::size_t n) {
    const auto factorials = logFactorials(2 * n);
    const auto one = binomial(n, question.shareOne, factorials);
    const auto two = binomial(n, question.shareTwo, factorials);
    double power = 0.0;
    for (std::size_t failed = 0; failed <= 2 * n; ++failed) {
        const std::size_t highest = std::min(n, failed);
        for (std::size_t x = critical(n, failed, question.risk / 2.0, factorials); x <= highest; ++x)
            power += one[x] * two[failed - x] + one[failed - x] * two[x];
    }
    return std::min(power, 1.0);
}

} // namespace

tl::expected<double, StatisticsFault> approximateTrialSize(const TrialQuestion& question) noexcept {
    if (!inDomain(question))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const double middle = (question.shareOne + question.shareTwo) / 2.0;
    const double common = std::sqrt(2.0 * middle * (1.0 - middle));
    const double own =
        std::sqrt(question.shareOne * (1.0 - question.shareOne) + question.shareTwo * (1.0 - question.shareTwo));
    if (!isInnerProbability(1.0 - question.power) || !isInnerProbability(1.0 - question.risk / 2.0))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const double root = upperZ(question.risk / 2.0) * common + upperZ(1.0 - question.power) * own;
    const double size = std::pow(root / (question.shareOne - question.shareTwo), 2);
    if (!(size <= static_cast<double>(kLargestCount)))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    return size;
}

tl::expected<double, StatisticsFault> fisherPower(const TrialQuestion& question, std::int64_t perArm) {
    if (!inDomain(question) || perArm < 1 || perArm > kMostExactPerArm)
        return tl::unexpected(StatisticsFault::OutOfDomain);
    return powerOf(question, static_cast<std::size_t>(perArm));
}

tl::expected<TrialSize, StatisticsFault> smallestTrial(const TrialQuestion& question) {
    const auto rough = approximateTrialSize(question);
    if (!rough)
        return tl::unexpected(rough.error());
    const double distance = std::abs(question.shareOne - question.shareTwo);
    const double corrected = *rough / 4.0 * std::pow(1.0 + std::sqrt(1.0 + 4.0 / (*rough * distance)), 2);
    if (corrected <= static_cast<double>(kMostSearched))
        for (auto n = std::max<std::int64_t>(2, static_cast<std::int64_t>(0.9 * *rough)); n <= kMostExactPerArm; ++n) {
            const double power = powerOf(question, static_cast<std::size_t>(n));
            if (power >= question.power)
                return TrialSize{n, power, true};
        }
    return TrialSize{static_cast<std::int64_t>(std::ceil(corrected)), question.power, false};
}

} // namespace holdfast::analytics::statistics
