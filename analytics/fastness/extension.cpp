#include "analytics/fastness/extension.hpp"

#include <optional>

namespace holdfast::analytics {
namespace {

/// What is wrong with a gauge length and a later one; neither has to be the longer here.
std::optional<ExtensionFault> faultOf(Length original, Length later) noexcept {
    if (!original.isFinite() || !later.isFinite())
        return ExtensionFault::notFinite;
    if (original.metres() <= 0.0)
        return ExtensionFault::gaugeNotPositive;
    if (later.metres() <= 0.0)
        return ExtensionFault::lengthNotPositive;
    return std::nullopt;
}

tl::expected<RelativeLength, ExtensionFault> changeOf(Length original, Length later) noexcept {
    if (const auto fault = faultOf(original, later))
        return tl::unexpected(*fault);
    const double change = (later.metres() - original.metres()) / original.metres();
    if (!std::isfinite(change))
        return tl::unexpected(ExtensionFault::notFinite);
    return RelativeLength::fromFraction(change);
}

} // namespace

tl::expected<RelativeLength, ExtensionFault> elongation(Length original, Length stretched) noexcept {
    const auto change = changeOf(original, stretched);
    if (change && stretched < original)
        return tl::unexpected(ExtensionFault::stretchedBelowOriginal);
    return change;
}

tl::expected<RelativeLength, ExtensionFault> growth(Length original, Length relaxed) noexcept {
    return changeOf(original, relaxed);
}

tl::expected<RelativeLength, ExtensionFault> recovery(Length original, Length stretched, Length relaxed) noexcept {
    const auto pulled = elongation(original, stretched);
    if (!pulled)
        return pulled;
    if (const auto fault = faultOf(original, relaxed))
        return tl::unexpected(*fault);
    if (relaxed > stretched)
        return tl::unexpected(ExtensionFault::relaxedAboveStretched);
    if (stretched == original)
        return tl::unexpected(ExtensionFault::nothingStretched);
    return RelativeLength::fromFraction((stretched.metres() - relaxed.metres()) /
                                        (stretched.metres() - original.metres()));
}

tl::expected<RelativeLength, ExtensionFault> dimensionalChange(Length original, Length treated) noexcept {
    return changeOf(original, treated);
}

tl::expected<RelativeLength, MarkFault> meanDimensionalChange(std::span<const MarkPair> direction) noexcept {
    if (direction.empty())
        return tl::unexpected(MarkFault{});
    double sum = 0.0;
    for (std::size_t i = 0; i < direction.size(); ++i) {
        const auto change = dimensionalChange(direction[i].original, direction[i].treated);
        if (!change)
            return tl::unexpected(MarkFault{i, change.error()});
        sum += change->fraction();
    }
    return RelativeLength::fromFraction(sum / static_cast<double>(direction.size()));
}

} // namespace holdfast::analytics
