#include "analytics/statistics/counts/lot_prediction.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

constexpr double kCut = 1e-12;

/// Chances of `first`, first + 1, … bad pieces.
struct Chances {
    std::int64_t first = 0;
    std::vector<double> values{1.0};
};

bool inDomain(const LotModel& model, double coverage) noexcept {
    return isInnerProbability(model.mean) && model.intraclass >= 0.0 && model.intraclass < 1.0 &&
           isInnerProbability(coverage);
}

bool inDomain(const LotAsked& lot) noexcept {
    return faultOfShare(lot.own.hits, lot.own.of) != StatisticsFault::OutOfDomain && lot.own.of <= lot.pieces &&
           lot.pieces <= kMostPieces;
}

/// ln of the chance that none of `open` pieces is bad, and of a step from x to x + 1 bad ones.
class Law final {
public:
    Law(const LotModel& model, const LotAsked& lot) : m_open{static_cast<double>(lot.pieces - lot.own.of)} {
        m_binomial = model.intraclass <= 1e-12;
        m_share = model.mean;
        if (m_binomial)
            return;
        m_a = model.alpha() + static_cast<double>(lot.own.hits);
        m_b = model.beta() + static_cast<double>(lot.own.of - lot.own.hits);
        m_share = m_a / (m_a + m_b);
    }
    /// Product of the chances that the next piece is good, however large a + b is.
    [[nodiscard]] double logNone() const noexcept {
        if (m_binomial)
            return m_open * std::log1p(-m_share);
        double sum = 0.0;
        for (double i = 0.0; i < m_open; i += 1.0)
            sum += m_a < m_b + i ? std::log1p(-m_a / (m_a + m_b + i)) : std::log((m_b + i) / (m_a + m_b + i));
        return sum;
    }
    [[nodiscard]] double logStep(double x) const noexcept {
        const double ways = (m_open - x) / (x + 1.0);
        return m_binomial ? std::log(ways * m_share / (1.0 - m_share))
                          : std::log(ways * (m_a + x) / (m_b + m_open - x - 1.0));
    }
    [[nodiscard]] double mean() const noexcept { return m_open * m_share; }
    [[nodiscard]] double open() const noexcept { return m_open; }

private:
    double m_open;
    double m_share = 0.0;
    double m_a = 0.0;
    double m_b = 0.0;
    bool m_binomial = true;
};

void trim(Chances& chances) {
    double total = 0.0;
    for (const double value : chances.values)
        total += value;
    double head = 0.0;
    std::size_t from = 0;
    while (from + 1 < chances.values.size() && head + chances.values[from] < kCut * total)
        head += chances.values[from++];
    double tail = 0.0;
    std::size_t to = chances.values.size();
    while (to > from + 1 && tail + chances.values[to - 1] < kCut * total)
        tail += chances.values[--to];
    chances.values.assign(chances.values.begin() + static_cast<std::ptrdiff_t>(from),
                          chances.values.begin() + static_cast<std::ptrdiff_t>(to));
    chances.first += static_cast<std::int64_t>(from);
    for (double& value : chances.values)
        value /= total;
}

Chances chancesOf(const LotModel& model, const LotAsked& lot) {
    const Law law{model, lot};
    Chances chances{lot.own.hits, {}};
    double logarithm = law.logNone();
    chances.values.push_back(std::exp(logarithm));
    for (double x = 0.0; x < law.open(); x += 1.0) {
        logarithm += law.logStep(x);
        chances.values.push_back(std::exp(logarithm));
    }
    trim(chances);
    return chances;
}

Chances together(const Chances& left, const Chances& right) {
    Chances sum{left.first + right.first, std::vector<double>(left.values.size() + right.values.size() - 1, 0.0)};
    for (std::size_t i = 0; i < left.values.size(); ++i)
        for (std::size_t j = 0; j < right.values.size(); ++j)
            sum.values[i + j] += left.values[i] * right.values[j];
    trim(sum);
    return sum;
}

std::int64_t reached(const Chances& chances, double chance) noexcept {
    double sum = 0.0;
    for (std::size_t i = 0; i < chances.values.size(); ++i) {
        sum += chances.values[i];
        if (sum >= chance)
            return chances.first + static_cast<std::int64_t>(i);
    }
    return chances.first + static_cast<std::int64_t>(chances.values.size()) - 1;
}

} // namespace

tl::expected<BadPieces, StatisticsFault> predictBadTogether(const LotModel& model, std::span<const LotAsked> lots,
                                                            double coverage) {
    if (!inDomain(model, coverage) || !std::all_of(lots.begin(), lots.end(), [](const auto& l) { return inDomain(l); }))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    std::int64_t pieces = 0;
    for (const auto& lot : lots)
        if ((pieces += lot.pieces) > kMostPieces)
            return tl::unexpected(StatisticsFault::OutOfDomain);
    Chances all;
    BadPieces bad;
    double logNone = 0.0;
    bool found = false;
    for (const auto& lot : lots) {
        const Law law{model, lot};
        logNone += law.logNone();
        bad.expected += static_cast<double>(lot.own.hits) + law.mean();
        found = found || lot.own.hits > 0;
        all = together(all, chancesOf(model, lot));
    }
    bad.lower = reached(all, (1.0 - coverage) / 2.0);
    bad.upper = reached(all, 1.0 - (1.0 - coverage) / 2.0);
    bad.anyBad = found ? 1.0 : std::clamp(-std::expm1(logNone), 0.0, 1.0);
    return bad;
}

tl::expected<BadPieces, StatisticsFault> predictBad(const LotModel& model, const LotAsked& lot, double coverage) {
    return predictBadTogether(model, {&lot, 1}, coverage);
}

} // namespace holdfast::analytics::statistics
