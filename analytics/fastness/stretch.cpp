#include "analytics/fastness/stretch.hpp"

#include "analytics/fastness/same.hpp"

#include <algorithm>
#include <vector>

namespace holdfast::analytics {
namespace {

bool sameElongation(RelativeLength a, RelativeLength b) noexcept {
    return std::abs(a.fraction() - b.fraction()) <= kSame;
}

std::optional<StretchFault> faultOf(std::span<const Pull> pulls) noexcept {
    if (pulls.empty())
        return StretchFault::noPulls;
    for (const auto& pull : pulls) {
        if (!pull.elongation.isFinite())
            return StretchFault::notFinite;
        if (pull.elongation.fraction() <= 0.0)
            return StretchFault::notPositive;
    }
    return std::nullopt;
}

/// From the lowest elongation up, one pull each, the worst seen there.
std::vector<Pull> ladderOf(std::span<const Pull> pulls) {
    std::vector<Pull> sorted(pulls.begin(), pulls.end());
    std::sort(sorted.begin(), sorted.end(), [](const Pull& x, const Pull& y) { return x.elongation < y.elongation; });
    std::vector<Pull> ladder;
    for (const auto& pull : sorted) {
        if (!ladder.empty() && sameElongation(ladder.back().elongation, pull.elongation))
            ladder.back().seen = std::max(ladder.back().seen, pull.seen);
        else
            ladder.push_back(pull);
    }
    return ladder;
}

} // namespace

tl::expected<StretchFinding, StretchFault> readPulls(std::span<const Pull> pulls, CrackClass worstAllowed) {
    if (const auto fault = faultOf(pulls))
        return tl::unexpected(*fault);
    StretchFinding finding;
    for (const auto& pull : ladderOf(pulls)) {
        finding.worst = std::max(finding.worst, pull.seen);
        const bool held = pull.seen <= worstAllowed;
        if (!held && !finding.firstFailed)
            finding.firstFailed = pull.elongation;
        else if (held && finding.firstFailed)
            finding.contradictory = true;
        else if (held)
            finding.held = pull.elongation;
    }
    return finding;
}

StretchVerdict judgeStretch(const StretchFinding& finding, RelativeLength asked) noexcept {
    if (finding.firstFailed && finding.firstFailed->fraction() <= asked.fraction() + kSame)
        return StretchVerdict::failed;
    if (finding.held && finding.held->fraction() >= asked.fraction() - kSame)
        return StretchVerdict::passed;
    return StretchVerdict::notPulledFarEnough;
}

} // namespace holdfast::analytics
