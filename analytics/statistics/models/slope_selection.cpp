#include "analytics/statistics/models/slope_selection.hpp"

#include "analytics/statistics/models/inversions.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <numeric>

namespace holdfast::analytics::statistics {

namespace {

template <class Same>
std::int64_t pairsOfEqualNeighbours(std::size_t n, Same&& same) {
    std::int64_t pairs = 0;
    std::int64_t run = 0;
    for (std::size_t i = 1; i < n; ++i) {
        run = same(i - 1, i) ? run + 1 : 0;
        pairs += run;
    }
    return pairs;
}

/// Lists the pairs that change places between two orders; stops at `most`.
class ChangedPairs final {
public:
    ChangedPairs(std::vector<std::size_t> sequence, const std::vector<std::size_t>& place, std::size_t most)
        : m_sequence{std::move(sequence)}, m_scratch(m_sequence.size()), m_place{place}, m_most{most} {
        sort(0, m_sequence.size());
    }
    [[nodiscard]] const std::vector<std::pair<std::size_t, std::size_t>>& pairs() const noexcept { return m_pairs; }

private:
    void sort(std::size_t begin, std::size_t end) {
        if (end - begin < 2 || m_pairs.size() >= m_most) {
            return;
        }
        const std::size_t middle = begin + (end - begin) / 2;
        sort(begin, middle);
        sort(middle, end);
        std::size_t left = begin;
        std::size_t out = begin;
        for (std::size_t right = middle; right < end; ++right) {
            while (left < middle && m_place[m_sequence[left]] < m_place[m_sequence[right]]) {
                m_scratch[out++] = m_sequence[left++];
            }
            for (std::size_t passed = left; passed < middle && m_pairs.size() < m_most; ++passed) {
                m_pairs.emplace_back(m_sequence[passed], m_sequence[right]);
            }
            m_scratch[out++] = m_sequence[right];
        }
        std::copy(m_sequence.begin() + static_cast<std::ptrdiff_t>(left),
                  m_sequence.begin() + static_cast<std::ptrdiff_t>(middle),
                  m_scratch.begin() + static_cast<std::ptrdiff_t>(out));
        std::copy(m_scratch.begin() + static_cast<std::ptrdiff_t>(begin),
                  m_scratch.begin() + static_cast<std::ptrdiff_t>(end),
                  m_sequence.begin() + static_cast<std::ptrdiff_t>(begin));
    }

    std::vector<std::size_t> m_sequence;
    std::vector<std::size_t> m_scratch;
    const std::vector<std::size_t>& m_place;
    std::size_t m_most;
    std::vector<std::pair<std::size_t, std::size_t>> m_pairs;
};

} // namespace

void SlopeSelection::Bracket::narrow(double slope, std::int64_t count, std::int64_t rank) noexcept {
    if (count >= rank) {
        high = slope;
        upToHigh = std::max(count, upToLow + 1);
    } else {
        low = slope;
        upToLow = std::min(count, upToHigh - 1);
    }
}

double SlopeSelection::Bracket::at(double rank) const noexcept {
    const double share = (rank - static_cast<double>(upToLow)) / static_cast<double>(inside());
    return low + (high - low) * std::clamp(share, 0.0, 1.0);
}

SlopeSelection::SlopeSelection(const std::vector<double>& x, const std::vector<double>& y) : m_points(x.size()) {
    assert(x.size() == y.size() && x.size() > 1);
    for (std::size_t i = 0; i < x.size(); ++i) {
        m_points[i] = {x[i], y[i]};
    }
    std::sort(m_points.begin(), m_points.end());
    const auto [lowest, highest] =
        std::minmax_element(y.begin(), y.end()); // halves before the sum: the sum may overflow
    const double middleX = m_points.front().first / 2.0 + m_points.back().first / 2.0;
    const double middleY = *lowest / 2.0 + *highest / 2.0;
    for (const auto& point : m_points) {
        m_x.push_back(point.first - middleX);
        m_y.push_back(point.second - middleY);
    }
    const auto n = static_cast<std::int64_t>(x.size());
    m_listed = std::clamp<std::int64_t>(4 * n, 1'000, 400'000);
    m_slopes = n * (n - 1) / 2 - pairsOfEqualNeighbours(x.size(), [this](std::size_t i, std::size_t j) {
                   return m_points[i].first == m_points[j].first;
               });
    m_identical =
        pairsOfEqualNeighbours(x.size(), [this](std::size_t i, std::size_t j) { return m_points[i] == m_points[j]; });
    m_smallest =
        1e-15 * (*highest / 2.0 - *lowest / 2.0) / (m_points.back().first / 2.0 - m_points.front().first / 2.0);
    double closest = m_x.back() - m_x.front();
    for (std::size_t i = 1; i < m_x.size(); ++i) {
        closest = m_x[i] > m_x[i - 1] ? std::min(closest, m_x[i] - m_x[i - 1]) : closest;
    }
    m_steepest = 2.0 * (*highest - *lowest) / closest;
    takeSample();
}

void SlopeSelection::takeSample() {
    std::mt19937_64 random{20240229};
    const std::size_t n = m_points.size();
    std::uniform_int_distribution<std::size_t> any{0, n - 1};
    const std::size_t wanted = std::clamp<std::size_t>(4 * n, 2'000, 400'000);
    for (std::size_t i = 0; i < wanted; ++i) {
        const auto [low, high] = std::minmax({any(random), any(random)});
        if (m_points[low].first < m_points[high].first) {
            m_sample.push_back(slopeOf(low, high));
        }
    }
    m_sample.push_back(slopeOf(0, n - 1));
    std::sort(m_sample.begin(), m_sample.end());
}

double SlopeSelection::slopeOf(std::size_t i, std::size_t j) const noexcept {
    return (m_points[j].second - m_points[i].second) / (m_points[j].first - m_points[i].first);
}

std::int64_t SlopeSelection::countUpTo(double slope) {
    m_values.resize(m_points.size());
    for (std::size_t i = 0; i < m_points.size(); ++i) {
        m_values[i] = m_y[i] - slope * m_x[i];
    }
    const std::int64_t count = countInversions(m_values, m_scratch, Inversion::FallingOrEqual) - m_identical;
    return std::clamp<std::int64_t>(count, 0, m_slopes);
}

SlopeSelection::Bracket SlopeSelection::bracketFromSample(std::int64_t rank) {
    const auto size = static_cast<double>(m_sample.size());
    const double share = (static_cast<double>(rank) - 0.5) / static_cast<double>(m_slopes);
    const double reach = 3.0 * std::sqrt(size * share * (1.0 - share)) + 1.0;
    const auto place = [&](double at) {
        return m_sample[static_cast<std::size_t>(std::clamp(std::round(at), 0.0, size - 1.0))];
    };
    const double spread = m_sample.back() - m_sample.front() + m_smallest + std::numeric_limits<double>::min();
    Bracket bracket;
    bracket.low = std::nextafter(place(size * share - reach), -std::numeric_limits<double>::infinity());
    bracket.high = place(size * share + reach);
    // rounding may keep a few pairs on the wrong side for ever: beyond the steepest slope counts are known
    double step = spread * 1e-3;
    while ((bracket.upToLow = bracket.low > -m_steepest ? countUpTo(bracket.low) : 0) >= rank) {
        bracket.high = bracket.low;
        bracket.low = std::max(bracket.low - step, -m_steepest);
        step *= 8.0;
    }
    step = spread * 1e-3;
    while ((bracket.upToHigh = bracket.high < m_steepest ? countUpTo(bracket.high) : m_slopes) < rank) {
        bracket.low = bracket.high;
        bracket.upToLow = bracket.upToHigh;
        bracket.high = std::min(bracket.high + step, m_steepest);
        step *= 8.0;
    }
    return bracket;
}

void SlopeSelection::shrink(Bracket& bracket, std::int64_t rank) {
    const auto tooWide = [&] {
        const double rounding = m_smallest + 4e-16 * std::max(std::abs(bracket.low), std::abs(bracket.high));
        return bracket.inside() > m_listed && bracket.high - bracket.low > rounding;
    };
    if (bracket.low < 0.0 && bracket.high > 0.0 && tooWide()) {
        bracket.narrow(0.0, countUpTo(0.0), rank); // whole numbers tie at no slope more than anywhere else
    }
    while (tooWide()) {
        const std::int64_t before = bracket.inside();
        const double margin = std::max(0.004 * static_cast<double>(before), 0.25 * static_cast<double>(m_listed));
        for (const double side : {-margin, margin}) {
            if (tooWide()) {
                const double slope = bracket.at(static_cast<double>(rank) + side);
                bracket.narrow(slope, countUpTo(slope), rank);
            }
        }
        if (tooWide() && bracket.inside() > before / 2) {
            const double slope = bracket.low + (bracket.high - bracket.low) / 2.0;
            bracket.narrow(slope, countUpTo(slope), rank);
        }
    }
}

/// The points from low to high y − s·x; equal ones from the right, as they stand just beyond s.
std::vector<std::size_t> SlopeSelection::orderAt(double slope) const {
    std::vector<std::pair<double, std::size_t>> keyed(m_points.size());
    for (std::size_t i = 0; i < keyed.size(); ++i) {
        keyed[i] = {m_y[i] - slope * m_x[i], i};
    }
    std::sort(keyed.begin(), keyed.end(), [](const auto& a, const auto& b) {
        return a.first < b.first || (a.first == b.first && a.second > b.second);
    });
    std::vector<std::size_t> order(keyed.size());
    std::transform(keyed.begin(), keyed.end(), order.begin(), [](const auto& key) { return key.second; });
    return order;
}

std::vector<double> SlopeSelection::slopesInside(const Bracket& bracket) const {
    const auto after = orderAt(bracket.high);
    std::vector<std::size_t> place(after.size());
    for (std::size_t i = 0; i < after.size(); ++i) {
        place[after[i]] = i;
    }
    const ChangedPairs changed{orderAt(bracket.low), place, static_cast<std::size_t>(2 * m_listed)};
    std::vector<double> slopes;
    for (const auto& [a, b] : changed.pairs()) {
        const auto [left, right] = std::minmax(a, b);
        if (m_points[left].first < m_points[right].first) {
            slopes.push_back(slopeOf(left, right));
        }
    }
    return slopes;
}

double SlopeSelection::ranked(std::int64_t rank) {
    assert(rank >= 1 && rank <= m_slopes);
    Bracket bracket = bracketFromSample(rank);
    shrink(bracket, rank);
    auto slopes = slopesInside(bracket);
    if (slopes.empty()) {
        return bracket.high;
    }
    const double share = static_cast<double>(rank - bracket.upToLow) / static_cast<double>(bracket.inside());
    const bool all = bracket.inside() <= m_listed;
    const double place =
        all ? static_cast<double>(rank - bracket.upToLow - 1) : share * static_cast<double>(slopes.size() - 1);
    const auto at = static_cast<std::ptrdiff_t>(std::clamp(place, 0.0, static_cast<double>(slopes.size() - 1)));
    std::nth_element(slopes.begin(), slopes.begin() + at, slopes.end());
    return slopes[static_cast<std::size_t>(at)];
}

} // namespace holdfast::analytics::statistics
