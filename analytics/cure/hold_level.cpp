#include "analytics/cure/hold_level.hpp"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <vector>

namespace holdfast::analytics {
namespace {

/// One joined line: its two ends in °C, cooler first, and how long it takes.
struct Line final {
    double low = 0.0;
    double high = 0.0;
    double seconds = 0.0;

    [[nodiscard]] double secondsAtOrAbove(double level) const noexcept {
        if (level <= low) {
            return seconds;
        }
        return level > high ? 0.0 : seconds * (high - level) / (high - low);
    }
};

/// Search for the level between `kept`, which is kept long enough, and `lost`, which is not. Lines wholly at or above
/// `lost` are in `settled`; lines wholly below `kept` are gone.
class LevelSearch final {
public:
    LevelSearch(const Pass& pass, double hold, double kept, double lost) : m_hold{hold}, m_kept{kept}, m_lost{lost} {
        m_lines.reserve(pass.samples.size());
        for (std::size_t i = 0; i + 1 < pass.samples.size(); ++i) {
            const double a = pass.samples[i].t.celsius();
            const double b = pass.samples[i + 1].t.celsius();
            if (pass.joins[i] == Join::line && std::max(a, b) > kept) {
                m_lines.push_back(
                    {std::min(a, b), std::max(a, b), (pass.samples[i + 1].at - pass.samples[i].at).count()});
            }
        }
        narrow();
    }

    [[nodiscard]] double run() {
        while (const auto pivot = nextPivot()) {
            (total(*pivot) >= m_hold ? m_kept : m_lost) = *pivot;
            narrow();
        }
        return solveStraight();
    }

private:
    [[nodiscard]] double total(double level) const noexcept {
        double sum = m_settled;
        for (const auto& line : m_lines) {
            sum += line.secondsAtOrAbove(level);
        }
        return sum;
    }

    /// Drops what lies wholly outside the two levels; what lies above them goes on counting.
    void narrow() {
        std::erase_if(m_lines, [this](const Line& line) {
            if (line.low >= m_lost) {
                m_settled += line.seconds;
                return true;
            }
            return line.high <= m_kept;
        });
    }

    [[nodiscard]] bool isInside(double level) const noexcept { return level > m_kept && level < m_lost; }

    /// An end of some line strictly between the two levels; none when the total is straight between them.
    [[nodiscard]] std::optional<double> nextPivot() noexcept {
        const std::size_t n = m_lines.size();
        m_dice = m_dice * 6364136223846793005U + 1442695040888963407U; // Knuth's multiplier: any start will do
        const std::size_t start = n == 0 ? 0 : static_cast<std::size_t>(m_dice >> 33U) % n;
        for (std::size_t i = 0; i < n; ++i) {
            const auto& line = m_lines[(start + i) % n];
            if (isInside(line.low)) {
                return line.low;
            }
            if (isInside(line.high)) {
                return line.high;
            }
        }
        return std::nullopt;
    }

    /// Every line left spans both levels, so the total is a straight line between them.
    [[nodiscard]] double solveStraight() const noexcept {
        double atLost = m_settled;
        double perDegree = 0.0;
        for (const auto& line : m_lines) {
            atLost += line.secondsAtOrAbove(m_lost);
            perDegree += line.seconds / (line.high - line.low);
        }
        if (perDegree <= 0.0) {
            return m_kept;
        }
        return std::clamp(m_lost - (m_hold - atLost) / perDegree, m_kept, m_lost);
    }

    double m_hold;
    double m_kept;
    double m_lost;
    double m_settled = 0.0;
    std::vector<Line> m_lines;
    std::uint64_t m_dice = 1;
};

struct Span final {
    double coldest = 0.0;
    double hottest = 0.0;
};

std::optional<Span> spanOf(const Pass& pass) noexcept {
    if (pass.samples.empty()) {
        return std::nullopt;
    }
    Span span{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    for (const auto& sample : pass.samples) {
        span.coldest = std::min(span.coldest, sample.t.celsius());
        span.hottest = std::max(span.hottest, sample.t.celsius());
    }
    return span;
}

} // namespace

std::optional<Temperature> highestLevelKept(const Pass& pass, Duration hold, KnownLevel known) {
    const auto span = spanOf(pass);
    if (!span) {
        return std::nullopt;
    }
    double kept = span->coldest;
    double lost = span->hottest + 1.0;
    if (known.kept) {
        kept = std::max(kept, known.level.celsius());
    } else {
        if (!atLeast(timeAtOrAbove(pass, Temperature::fromCelsius(kept)).total, hold)) {
            return std::nullopt;
        }
        lost = std::min(lost, known.level.celsius());
    }
    return Temperature::fromCelsius(LevelSearch{pass, hold.count() - kDecisionTolerance, kept, lost}.run());
}

std::optional<Temperature> highestLevelKeptUnbroken(const Pass& pass, Duration hold, TemperatureDifference guard,
                                                    KnownLevel known) {
    const auto span = spanOf(pass);
    const auto isKept = [&](double level) {
        return atLeast(longestSpellBridgingDips(pass, Temperature::fromCelsius(level), guard, false), hold);
    };
    if (!span || (!known.kept && !isKept(span->coldest))) {
        return std::nullopt;
    }
    double kept = known.kept ? known.level.celsius() : span->coldest;
    double lost = known.kept ? span->hottest + 1.0 : std::min(span->hottest + 1.0, known.level.celsius());
    constexpr double kResolved = 1e-7; // °C
    while (lost - kept > kResolved) {
        const double middle = (kept + lost) / 2.0;
        (isKept(middle) ? kept : lost) = middle;
    }
    return Temperature::fromCelsius(kept);
}

} // namespace holdfast::analytics
