#include "analytics/statistics/models/logistic_design.hpp"

#include "analytics/statistics/models/plain_figures.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <numeric>

namespace holdfast::analytics::statistics {

namespace {

double trialsOf(const LogisticData& data, std::size_t row) {
    return data.trials.empty() ? 1.0 : data.trials[row];
}

std::optional<StatisticsFault> faultOf(const LogisticData& data) {
    const std::size_t n = data.events.size();
    if (n == 0) {
        return StatisticsFault::NoValues;
    }
    if (data.covariates.size() + 1 > kMostCoefficients) {
        return StatisticsFault::OutOfDomain;
    }
    bool unequal = !data.trials.empty() && data.trials.size() != n;
    bool finite = allFinite(data.events) && allFinite(data.trials);
    for (const auto& column : data.covariates) {
        unequal = unequal || column.size() != n;
        finite = finite && allFinite(column);
    }
    if (unequal || !finite) {
        return unequal ? StatisticsFault::UnequalLengths : StatisticsFault::NotFinite;
    }
    std::size_t informative = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const double trials = trialsOf(data, i);
        if (data.events[i] < 0.0 || data.events[i] > trials) {
            return StatisticsFault::OutOfDomain;
        }
        informative += trials > 0.0 ? 1 : 0;
    }
    if (informative == 0) {
        return StatisticsFault::NoValues;
    }
    return informative < data.covariates.size() + 1 ? std::optional{StatisticsFault::TooFewValues} : std::nullopt;
}

/// Which rows have the same covariates.
class Groups final {
public:
    /// For so many rows.
    Groups(const LogisticData& data, std::size_t rows) : m_data{data} {
        std::size_t size = 16;
        while (size < 2 * rows) {
            size *= 2;
        }
        m_table.assign(size, kNone);
    }
    /// The number of a row's group, in the order of their first rows.
    std::size_t of(std::size_t row) {
        std::size_t slot = hashOf(row) & (m_table.size() - 1);
        while (m_table[slot] != kNone && !same(m_firsts[m_table[slot]], row)) {
            slot = (slot + 1) & (m_table.size() - 1);
        }
        if (m_table[slot] == kNone) {
            m_table[slot] = static_cast<std::uint32_t>(m_firsts.size());
            m_firsts.push_back(row);
        }
        return m_table[slot];
    }
    [[nodiscard]] const std::vector<std::size_t>& firsts() const noexcept { return m_firsts; }

private:
    static constexpr std::uint32_t kNone = 0xffffffff;

    [[nodiscard]] bool same(std::size_t a, std::size_t b) const noexcept {
        return std::all_of(m_data.covariates.begin(), m_data.covariates.end(),
                           [a, b](const auto& column) { return column[a] == column[b]; });
    }
    [[nodiscard]] std::size_t hashOf(std::size_t row) const noexcept {
        std::uint64_t hash = 0;
        for (const auto& column : m_data.covariates) {
            const double value = column[row] + 0.0; // −0 is 0
            std::uint64_t bits = 0;
            std::memcpy(&bits, &value, sizeof bits);
            hash = (hash ^ bits) * 0x9e3779b97f4a7c15U;
            hash ^= hash >> 32U;
        }
        return hash;
    }

    const LogisticData& m_data;
    std::vector<std::uint32_t> m_table; ///< open addressing
    std::vector<std::size_t> m_firsts;
};

/// Whether putting equal rows together is worth its search: of the first thousand at least half have been seen before.
bool rowsRepeat(const LogisticData& data) {
    const std::size_t tried = std::min<std::size_t>(data.events.size(), 1'000);
    Groups groups{data, tried};
    for (std::size_t i = 0; i < tried; ++i) {
        (void)groups.of(i);
    }
    return groups.firsts().size() <= tried / 2;
}

} // namespace

tl::expected<LogisticDesign, StatisticsFault> LogisticDesign::of(const LogisticData& data) {
    if (const auto fault = faultOf(data)) {
        return tl::unexpected{*fault};
    }
    LogisticDesign design;
    design.standardize(data);
    for (std::size_t j = 1; j < design.coefficients(); ++j) {
        if (!std::isfinite(design.m_scale[j])) {
            return tl::unexpected{StatisticsFault::NotFinite};
        }
        if (!(design.m_scale[j] > 1e-13 * std::abs(design.m_centre[j]))) {
            return tl::unexpected{StatisticsFault::Collinear};
        }
    }
    design.fillRows(data);
    design.sumUp(data);
    if (design.isCollinear()) {
        return tl::unexpected{StatisticsFault::Collinear};
    }
    return design;
}

void LogisticDesign::standardize(const LogisticData& data) {
    const std::size_t n = data.events.size();
    double weight = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        weight += trialsOf(data, i);
    }
    m_centre.assign(1, 0.0);
    m_scale.assign(1, 1.0);
    for (const auto& column : data.covariates) {
        std::size_t first = 0;
        while (!(trialsOf(data, first) > 0.0)) {
            ++first;
        }
        double sum = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            sum += trialsOf(data, i) > 0.0 ? trialsOf(data, i) * (column[i] - column[first]) : 0.0;
        }
        const double mean = column[first] + sum / weight;
        double squares = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            const double off = column[i] - mean;
            squares += trialsOf(data, i) > 0.0 ? trialsOf(data, i) * off * off : 0.0;
        }
        m_centre.push_back(mean);
        m_scale.push_back(std::sqrt(squares / weight));
    }
}

void LogisticDesign::fillRows(const LogisticData& data) {
    const std::size_t n = data.events.size();
    const bool repeats = rowsRepeat(data);
    Groups groups{data, repeats ? n : 0};
    std::vector<std::size_t> firsts;
    if (!repeats) {
        firsts.reserve(n);
        m_events.reserve(n + 1);
        m_trials.reserve(n + 1);
    }
    for (std::size_t i = 0; i < n; ++i) {
        if (!(trialsOf(data, i) > 0.0)) {
            continue;
        }
        const std::size_t group = repeats ? groups.of(i) : firsts.size();
        if (group == firsts.size()) {
            firsts.push_back(i);
            m_events.push_back(0.0);
            m_trials.push_back(0.0);
        }
        m_events[group] += data.events[i];
        m_trials[group] += trialsOf(data, i);
    }
    m_rows = m_events.size();
    const std::size_t padded = (m_rows + kLanes - 1) / kLanes * kLanes;
    m_events.resize(padded);
    m_trials.resize(padded);
    m_x.resize(padded * coefficients());
    for (std::size_t row = 0; row < m_rows; ++row) {
        double* x = &m_x[row / kLanes * coefficients() * kLanes + row % kLanes];
        *x = 1.0;
        for (std::size_t j = 1; j < coefficients(); ++j) {
            x[j * kLanes] = (data.covariates[j - 1][firsts[row]] - m_centre[j]) / m_scale[j];
        }
    }
}

void LogisticDesign::sumUp(const LogisticData& data) {
    for (std::size_t i = 0; i < data.events.size(); ++i) {
        const double trials = trialsOf(data, i);
        const double events = data.events[i];
        if (events > 0.0 && events < trials) {
            m_saturated += xLogX(events) + xLogX(trials - events) - xLogX(trials);
        }
    }
    const double events = std::accumulate(m_events.begin(), m_events.end(), 0.0);
    const double trials = std::accumulate(m_trials.begin(), m_trials.end(), 0.0);
    m_constantOnly = xLogX(events) + xLogX(trials - events) - xLogX(trials);
    m_startLogOdds = std::log((events + 0.5) / (trials - events + 0.5));
}

void LogisticDesign::recentre(std::size_t coefficient, double centre) noexcept {
    const double shift = (m_centre[coefficient] - centre) / m_scale[coefficient];
    for (std::size_t i = 0; i < pairs(); ++i) {
        double* x = &m_x[(i * coefficients() + coefficient) * kLanes];
        storeLanes(x, loadLanes(x) + shift);
    }
    m_centre[coefficient] = centre;
}

LogisticDesign LogisticDesign::thinned(std::size_t every) const {
    LogisticDesign thin;
    thin.m_centre = m_centre;
    thin.m_scale = m_scale;
    for (std::size_t i = 0; i < pairs(); i += every) {
        thin.m_x.insert(thin.m_x.end(), pair(i), pair(i) + coefficients() * kLanes);
        thin.m_events.insert(thin.m_events.end(), &m_events[i * kLanes], &m_events[i * kLanes] + kLanes);
        thin.m_trials.insert(thin.m_trials.end(), &m_trials[i * kLanes], &m_trials[i * kLanes] + kLanes);
    }
    thin.m_rows = thin.m_events.size();
    return thin;
}

bool LogisticDesign::isCollinear() const {
    LaneProducts products{coefficients()};
    for (std::size_t i = 0; i < pairs(); ++i) {
        products.add(pairTrials(i), pair(i));
    }
    return !Cholesky::of(products.total(), 1e-10);
}

} // namespace holdfast::analytics::statistics
