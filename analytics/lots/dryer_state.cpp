#include "analytics/lots/dryer_state.hpp"

#include <algorithm>
#include <cstddef>
#include <deque>
#include <tuple>

namespace holdfast::analytics {
namespace {

constexpr std::size_t kLotsSeen = 5;
constexpr std::ptrdiff_t kHeldTightens = 2;

auto asTuple(const EqualCurePairs& pairs) noexcept {
    return std::tuple{pairs.hotter.time.count(), pairs.hotter.temperature.celsius(), pairs.cooler.time.count(),
                      pairs.cooler.temperature.celsius()};
}

auto asTuple(const HeatAsked& asked) noexcept {
    using Pairs = decltype(asTuple(EqualCurePairs{}));
    return std::tuple{asked.cure.celsius(), asked.hold.count(),
                      asked.pairs ? std::optional<Pairs>{asTuple(*asked.pairs)} : std::nullopt};
}

} // namespace

Requirement requirementOf(const RunWindow& window) {
    Requirement requirement;
    for (const auto& layer : window.layers) {
        requirement.layers.push_back({layer.cure.limit, layer.hold, layer.pairs});
    }
    auto& layers = requirement.layers;
    std::sort(layers.begin(), layers.end(), [](const auto& a, const auto& b) { return asTuple(a) < asTuple(b); });
    layers.erase(std::unique(layers.begin(), layers.end()), layers.end());
    if (window.upperHard) {
        requirement.hard = window.upperHard->limit;
    }
    if (window.upperBleed) {
        requirement.bleed = window.upperBleed->limit;
    }
    return requirement;
}

bool stopEndsState(Duration stopped, std::optional<Duration> dwell) noexcept {
    return !dwell || !atLeast(*dwell, stopped);
}

bool isTightened(const std::vector<LotOutcome>& lots) {
    bool tightened = false;
    std::deque<LotOutcome> last;
    for (const auto lot : lots) {
        last.push_back(lot);
        if (last.size() > kLotsSeen) {
            last.pop_front();
        }
        const auto count = [&](LotOutcome one) { return std::count(last.begin(), last.end(), one); };
        if (!tightened && count(LotOutcome::held) >= kHeldTightens) {
            tightened = true;
            last.clear(); // only lots made since may bring it back
        } else if (tightened && last.size() == kLotsSeen &&
                   last.size() == static_cast<std::size_t>(count(LotOutcome::good))) {
            tightened = false;
        }
    }
    return tightened;
}

} // namespace holdfast::analytics
