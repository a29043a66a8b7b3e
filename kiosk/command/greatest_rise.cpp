#include "kiosk/command/greatest_rise.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::command {

namespace {

using analytics::CleanSample;
using analytics::Duration;

/// The straight lines of one stretch, asked at times that only go forward.
class StretchLine final {
public:
    StretchLine(const CleanSample* first, const CleanSample* last) : m_at{first}, m_last{last} {}

    double celsiusAt(double time) {
        while (m_at != m_last && (m_at + 1)->at.count() < time) {
            ++m_at;
        }
        if (m_at == m_last) {
            return m_at->t.celsius();
        }
        const CleanSample& a = *m_at;
        const CleanSample& b = *(m_at + 1);
        const double step = (b.at - a.at).count();
        const double share = step > 0.0 ? std::clamp((time - a.at.count()) / step, 0.0, 1.0) : 1.0;
        return a.t.celsius() + share * (b.t - a.t).celsius();
    }

private:
    const CleanSample* m_at;
    const CleanSample* m_last;
};

/// T(t + span) − T(t) is itself made of straight lines, so its largest value stands where t or t + span is a sample.
void searchStretch(const CleanSample* first, const CleanSample* last, double span, std::optional<double>& best) {
    const double latest = last->at.count() - span;
    if (first->at.count() > latest + analytics::kDecisionTolerance) {
        return;
    }
    StretchLine low{first, last};
    StretchLine high{first, last};
    const CleanSample* asStart = first;
    const CleanSample* asEnd = first;
    while (asStart <= last || asEnd <= last) {
        const bool takeStart = asEnd > last || (asStart <= last && asStart->at.count() <= asEnd->at.count() - span);
        const double t = takeStart ? (asStart++)->at.count() : (asEnd++)->at.count() - span;
        if (t < first->at.count() - analytics::kDecisionTolerance || t > latest + analytics::kDecisionTolerance) {
            continue;
        }
        const double rise = high.celsiusAt(t + span) - low.celsiusAt(t);
        best = best ? std::max(*best, rise) : rise;
    }
}

} // namespace

std::optional<analytics::HeatingRate> greatestRise(const analytics::Pass& pass, Duration span) {
    std::optional<double> best;
    std::size_t from = 0;
    for (std::size_t i = 0; i < pass.samples.size(); ++i) {
        if (i + 1 == pass.samples.size() || pass.joins[i] != analytics::Join::line) {
            searchStretch(&pass.samples[from], &pass.samples[i], span.count(), best);
            from = i + 1;
        }
    }
    if (!best) {
        return std::nullopt;
    }
    return analytics::HeatingRate::fromCelsiusPerSecond(*best / span.count());
}

} // namespace holdfast::kiosk::command
