#include "analytics/fastness/grey_scale.hpp"

#include "analytics/fastness/same.hpp"

#include <cmath>

namespace holdfast::analytics {
namespace {

using Scale = std::array<GreyStep, Grade::kSteps>;

constexpr Grade g(std::size_t step) noexcept {
    return Grade::fromStep(step);
}

constexpr Scale kChange{{{g(8), 0.0, 0.2},
                         {g(7), 0.8, 0.2},
                         {g(6), 1.7, 0.3},
                         {g(5), 2.5, 0.35},
                         {g(4), 3.4, 0.4},
                         {g(3), 4.8, 0.5},
                         {g(2), 6.8, 0.6},
                         {g(1), 9.6, 0.7},
                         {g(0), 13.6, 1.0}}};

constexpr Scale kStaining{{{g(8), 0.0, 0.2},
                           {g(7), 2.2, 0.3},
                           {g(6), 4.3, 0.3},
                           {g(5), 6.0, 0.4},
                           {g(4), 8.5, 0.5},
                           {g(3), 12.0, 0.7},
                           {g(2), 16.9, 1.0},
                           {g(1), 24.0, 1.5},
                           {g(0), 34.1, 2.0}}};

tl::expected<Grade, ColourFault> nearest(const Scale& scale, double difference) noexcept {
    if (!std::isfinite(difference))
        return tl::unexpected(ColourFault::notFinite);
    if (difference < 0.0)
        return tl::unexpected(ColourFault::differenceOutOfRange);
    std::size_t i = 0;
    while (i + 1 < scale.size() && difference >= (scale[i].difference + scale[i + 1].difference) / 2.0 - kSame)
        ++i;
    return scale[i].grade;
}

} // namespace

std::span<const GreyStep, Grade::kSteps> changeScale() noexcept {
    return kChange;
}

std::span<const GreyStep, Grade::kSteps> stainingScale() noexcept {
    return kStaining;
}

tl::expected<Grade, ColourFault> changeGrade(double cielabDifference) noexcept {
    return nearest(kChange, cielabDifference);
}

tl::expected<Grade, ColourFault> stainingGrade(double cielabDifference) noexcept {
    return nearest(kStaining, cielabDifference);
}

} // namespace holdfast::analytics
