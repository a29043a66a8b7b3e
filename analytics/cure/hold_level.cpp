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
        const double share = (high - level) / (high - low); // of a level line not asked
        return seconds * (level <= low ? 1.0 : std::max(share, 0.0));
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
            if (pass.joins[i] != Join::line || std::max(a, b) <= kept) {
                continue;
            }
            const double seconds = (pass.samples[i + 1].at - pass.samples[i].at).count();
            if (std::min(a, b) >= lost) {
                m_settled += seconds;
            } else {
                m_lines.push_back({std::min(a, b), std::max(a, b), seconds});
            }
        }
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

/// Where a sample stands towards two levels.
enum class Side : std::uint8_t { below, between, above };

/// The pass without the samples that make no difference to a spell at any level strictly between the two: of those
/// that follow each other above, the first and the last stay; below, the coldest too.
Pass thinned(const Pass& pass, double kept, double lost) {
    const auto& samples = pass.samples;
    const auto sideOf = [&](std::size_t i) {
        const double t = samples[i].t.celsius();
        return t >= lost ? Side::above : t < kept - kDecisionTolerance ? Side::below : Side::between;
    };
    Pass thin;
    thin.samples.reserve(samples.size());
    thin.joins.reserve(samples.size());
    const auto take = [&](std::size_t i, Join before) {
        if (!thin.samples.empty()) {
            thin.joins.push_back(before);
        }
        thin.samples.push_back(samples[i]);
    };
    for (std::size_t from = 0; from < samples.size();) {
        const Side side = sideOf(from);
        std::size_t last = from;
        std::size_t coldest = from;
        while (side != Side::between && last + 1 < samples.size() && pass.joins[last] == Join::line &&
               sideOf(last + 1) == side) {
            ++last;
            coldest = samples[last].t < samples[coldest].t ? last : coldest;
        }
        take(from, from > 0 ? pass.joins[from - 1] : Join::line);
        if (side == Side::below && coldest > from && coldest < last) {
            take(coldest, Join::line);
        }
        if (last > from) {
            take(last, Join::line);
        }
        from = last + 1;
    }
    return thin;
}

} // namespace

std::optional<Temperature> highestLevelKept(const Pass& pass, Duration hold, KnownLevel known) {
    if (pass.samples.empty()) {
        return std::nullopt;
    }
    double kept = known.level.celsius();
    double lost = std::numeric_limits<double>::infinity();
    if (!known.kept) {
        const auto span = spanOf(pass);
        if (!atLeast(timeAtOrAbove(pass, Temperature::fromCelsius(span->coldest)).total, hold)) {
            return std::nullopt;
        }
        kept = span->coldest;
        lost = std::min(span->hottest + 1.0, known.level.celsius());
    }
    return Temperature::fromCelsius(LevelSearch{pass, hold.count() - kDecisionTolerance, kept, lost}.run());
}

std::optional<Temperature> highestLevelKeptUnbroken(const Pass& pass, Duration hold, TemperatureDifference guard,
                                                    KnownLevel known) {
    const auto isKept = [&](const Pass& part, double level) {
        return atLeast(longestSpellBridgingDips(part, Temperature::fromCelsius(level), guard, false), hold);
    };
    const auto span = spanOf(pass);
    if (!span || (!known.kept && !isKept(pass, span->coldest))) {
        return std::nullopt;
    }
    double kept = known.kept ? known.level.celsius() : span->coldest;
    double lost = known.kept ? span->hottest + 1.0 : std::min(span->hottest + 1.0, known.level.celsius());
    constexpr double kResolved = 1e-7; // °C
    Pass part = thinned(pass, kept, lost);
    while (lost - kept > kResolved) {
        const double middle = (kept + lost) / 2.0;
        (isKept(part, middle) ? kept : lost) = middle;
        part = thinned(part, kept, lost);
    }
    return Temperature::fromCelsius(kept);
}

} // namespace holdfast::analytics
