#include "analytics/statistics/models/logistic_design.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace holdfast::analytics::statistics {

namespace {

double xLogX(double x) {
    return x > 0.0 ? x * std::log(x) : 0.0;
}

double trialsOf(const LogisticData& data, std::size_t row) {
    return data.trials.empty() ? 1.0 : data.trials[row];
}

bool allFinite(const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
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

/// Rows with trials, those with equal covariates next to each other.
std::vector<std::size_t> groupedOrder(const LogisticData& data) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < data.events.size(); ++i) {
        if (trialsOf(data, i) > 0.0) {
            order.push_back(i);
        }
    }
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        for (const auto& column : data.covariates) {
            if (column[a] != column[b]) {
                return column[a] < column[b];
            }
        }
        return false;
    });
    return order;
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
    m_centre.assign(1, 0.0);
    m_scale.assign(1, 1.0);
    for (const auto& column : data.covariates) {
        double mean = 0.0;
        double squares = 0.0;
        double weight = 0.0;
        for (std::size_t i = 0; i < column.size(); ++i) {
            const double trials = trialsOf(data, i);
            if (trials > 0.0) {
                weight += trials;
                const double step = column[i] - mean;
                mean += step * trials / weight;
                squares += trials * step * (column[i] - mean);
            }
        }
        m_centre.push_back(mean);
        m_scale.push_back(std::sqrt(squares / weight));
    }
}

void LogisticDesign::fillRows(const LogisticData& data) {
    const auto order = groupedOrder(data);
    std::size_t previous = data.events.size();
    m_x.reserve(order.size() * coefficients());
    for (const std::size_t i : order) {
        const bool same = previous < data.events.size() &&
                          std::all_of(data.covariates.begin(), data.covariates.end(),
                                      [&](const auto& column) { return column[i] == column[previous]; });
        if (same) {
            m_events.back() += data.events[i];
            m_trials.back() += trialsOf(data, i);
        } else {
            m_x.push_back(1.0);
            for (std::size_t j = 1; j < coefficients(); ++j) {
                m_x.push_back((data.covariates[j - 1][i] - m_centre[j]) / m_scale[j]);
            }
            m_events.push_back(data.events[i]);
            m_trials.push_back(trialsOf(data, i));
        }
        previous = i;
    }
}

void LogisticDesign::sumUp(const LogisticData& data) {
    for (std::size_t i = 0; i < data.events.size(); ++i) {
        const double trials = trialsOf(data, i);
        m_saturated += xLogX(data.events[i]) + xLogX(trials - data.events[i]) - xLogX(trials);
    }
    const double events = std::accumulate(m_events.begin(), m_events.end(), 0.0);
    const double trials = std::accumulate(m_trials.begin(), m_trials.end(), 0.0);
    m_constantOnly = xLogX(events) + xLogX(trials - events) - xLogX(trials);
    m_startLogOdds = std::log((events + 0.5) / (trials - events + 0.5));
}

void LogisticDesign::recentre(std::size_t coefficient, double centre) noexcept {
    const double shift = (m_centre[coefficient] - centre) / m_scale[coefficient];
    for (std::size_t i = 0; i < rows(); ++i) {
        m_x[i * coefficients() + coefficient] += shift;
    }
    m_centre[coefficient] = centre;
}

bool LogisticDesign::isCollinear() const {
    SmallSymmetric products{coefficients()};
    for (std::size_t i = 0; i < rows(); ++i) {
        for (std::size_t a = 0; a < coefficients(); ++a) {
            for (std::size_t b = 0; b <= a; ++b) {
                products.at(a, b) += m_trials[i] * row(i)[a] * row(i)[b];
            }
        }
    }
    return !Cholesky::of(products, 1e-10);
}

} // namespace holdfast::analytics::statistics
