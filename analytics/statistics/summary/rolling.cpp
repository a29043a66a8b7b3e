#include "analytics/statistics/summary/rolling.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

struct Part final {
    std::size_t count = 0;
    double mean = 0.0;
    double squares = 0.0; ///< Σ(x − mean)²
};

Part joined(const Part& a, const Part& b) {
    if (a.count == 0) {
        return b;
    }
    if (b.count == 0) {
        return a;
    }
    const auto na = static_cast<double>(a.count);
    const auto nb = static_cast<double>(b.count);
    const double apart = b.mean - a.mean;
    return {a.count + b.count, a.mean + apart * (nb / (na + nb)),
            a.squares + b.squares + apart * apart * (na * nb / (na + nb))};
}

/// A window over a column whose two ends only move forward.
class Window final {
public:
    explicit Window(std::span<const double> values) : m_values{values} {}

    void takeIn() { m_back = joined(m_back, {1, m_values[m_end++], 0.0}); }

    void dropBefore(std::size_t begin) {
        while (m_begin < begin) {
            if (m_front.empty()) {
                turn();
            }
            m_front.pop_back();
            ++m_begin;
        }
    }

    [[nodiscard]] RollingPoint point() const {
        const auto all = m_front.empty() ? m_back : joined(m_front.back(), m_back);
        RollingPoint result;
        result.count = all.count;
        result.mean = all.mean;
        if (all.count > 1) {
            result.sd = std::sqrt(all.squares / static_cast<double>(all.count - 1));
        }
        return result;
    }

private:
    void turn() {
        Part part;
        for (std::size_t i = m_end; i > m_begin; --i) {
            part = joined({1, m_values[i - 1], 0.0}, part);
            m_front.push_back(part);
        }
        m_back = {};
    }

    std::span<const double> m_values;
    std::vector<Part> m_front; ///< parts that reach to the middle, the longest last
    Part m_back;
    std::size_t m_begin = 0;
    std::size_t m_end = 0;
};

std::optional<StatisticsFault> faultOf(std::span<const double> values) {
    if (values.empty()) {
        return StatisticsFault::NoValues;
    }
    const bool finite = std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
    return finite ? std::nullopt : std::optional{StatisticsFault::NotFinite};
}

tl::expected<std::vector<RollingPoint>, StatisticsFault> checked(std::vector<RollingPoint> points) {
    for (const auto& point : points) {
        if (!std::isfinite(point.mean) || !std::isfinite(point.sd.value_or(0.0))) {
            return tl::unexpected{StatisticsFault::OutOfDomain};
        }
    }
    return points;
}

} // namespace

tl::expected<std::vector<RollingPoint>, StatisticsFault> rolling(std::span<const double> values, std::size_t length) {
    if (const auto fault = faultOf(values)) {
        return tl::unexpected{*fault};
    }
    if (length == 0) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    std::vector<RollingPoint> points;
    points.reserve(values.size());
    Window window{values};
    for (std::size_t i = 0; i < values.size(); ++i) {
        window.takeIn();
        window.dropBefore(i + 1 > length ? i + 1 - length : 0);
        points.push_back(window.point());
    }
    return checked(std::move(points));
}

tl::expected<std::vector<RollingPoint>, StatisticsFault> rollingInTime(std::span<const double> times,
                                                                       std::span<const double> values, double width) {
    if (times.size() != values.size()) {
        return tl::unexpected{StatisticsFault::UnequalLengths};
    }
    for (const auto column : {times, values}) {
        if (const auto fault = faultOf(column)) {
            return tl::unexpected{*fault};
        }
    }
    if (!std::is_sorted(times.begin(), times.end())) {
        return tl::unexpected{StatisticsFault::OutOfOrder};
    }
    if (!(width > 0.0)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    std::vector<RollingPoint> points;
    points.reserve(values.size());
    Window window{values};
    std::size_t begin = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        window.takeIn();
        while (times[i] - times[begin] >= width) {
            ++begin;
        }
        window.dropBefore(begin);
        points.push_back(window.point());
    }
    return checked(std::move(points));
}

} // namespace holdfast::analytics::statistics
