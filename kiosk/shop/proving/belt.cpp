#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

/// The runs that share the belt.
namespace holdfast::kiosk::shop {
namespace {

constexpr std::size_t kMostOnBelt = 6; // more presses than a belt is fed by (MEM)

using Run = std::shared_ptr<const AnnouncedRun>;

auto placeOf(std::vector<Run>& belt, const std::string& run) {
    return std::find_if(belt.begin(), belt.end(), [&](const Run& one) { return one->onFile.plan.run == run; });
}

} // namespace

bool isOnBelt(const ProvingState& state, const std::string& run) {
    return std::any_of(state.belt.begin(), state.belt.end(),
                       [&](const Run& one) { return one->onFile.plan.run == run; });
}

void leaveBelt(Machine& m, const std::string& run) {
    auto& state = m.state;
    const auto place = placeOf(state.belt, run);
    if (place == state.belt.end() || state.belt.size() < 2) {
        return; // the last one stays until another ticket
    }
    state.belt.erase(place);
    if (state.run->onFile.plan.run == run) {
        state.run = state.belt.back();
        closePages(state);
    }
    refreshWindow(m);
}

void joinBelt(Machine& m, const Run& run) {
    auto& state = m.state;
    const auto& id = run->onFile.plan.run;
    if (isOnBelt(state, id)) {
        leaveBelt(m, id);
        return;
    }
    if (state.belt.size() >= kMostOnBelt) {
        m.refuse(RefusalCause::beltFull, {}, kMostOnBelt);
        return;
    }
    state.run = withKnownLot(m, run);
    state.belt.push_back(state.run);
    closePages(state);
    claimRides(m);
    refreshWindow(m);
}

void replaceBelt(Machine& m, const Run& run) {
    m.state.run = run;
    m.state.belt = {run};
}

std::vector<Run> othersOnBelt(const ProvingState& state) {
    std::vector<Run> others;
    std::copy_if(state.belt.begin(), state.belt.end(), std::back_inserter(others),
                 [&](const Run& one) { return one != state.run; });
    return others;
}

} // namespace holdfast::kiosk::shop
