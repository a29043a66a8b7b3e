#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>
#include <iterator>

/// Is this a ride, and what would have to be turned: what a trace tells of the dryer.
namespace holdfast::kiosk::shop {
namespace {

using analytics::Word;

constexpr std::size_t kMostGoodRides = 40; // the usual of a dryer is that of late (MEM)

analytics::DryerSettings settingsOf(const std::optional<records::DryerNow>& dryer) {
    analytics::DryerSettings settings;
    if (!dryer) {
        return settings;
    }
    const auto& described = dryer->described;
    settings.heatedLengthMetres = described.heatedLengthMetres;
    settings.beltMetresPerMinute = dryer->beltMetresPerMinute;
    settings.slowestMetresPerMinute = described.slowestMetresPerMinute;
    settings.fastestMetresPerMinute = described.fastestMetresPerMinute;
    if (dryer->setPoint) {
        settings.setPoint = dryer->setPoint->temperature();
    }
    if (described.highestSetPoint) {
        settings.highestSetPoint = described.highestSetPoint->temperature();
    }
    return settings;
}

std::optional<analytics::Usual> usualNow(const ProvingState& state, const analytics::DryerSettings& dryer) {
    std::vector<analytics::UsualRide> rides;
    for (const auto& good : state.goodRides) {
        rides.push_back(good.ride);
    }
    return analytics::usualOf(rides, dryer.setPoint);
}

/// Plans of the runs that the ride was judged for.
std::vector<analytics::RunPlan> plansOf(const ProvingState& state, const KeptReading& shown) {
    std::vector<analytics::RunPlan> plans;
    for (const auto& kept : state.kept) {
        if (kept.run && kept.recording == shown.recording && kept.pass == shown.pass) {
            plans.push_back(kept.run->onFile.layers);
        }
    }
    return plans;
}

} // namespace

std::vector<std::shared_ptr<const RideFacts>>
rideFactsOf(const ProvingState& state, const std::vector<analytics::Pass>& passes,
            const std::shared_ptr<const analytics::Calibration>& calibration) {
    std::vector<std::shared_ptr<const RideFacts>> all;
    const auto dryer = settingsOf(state.floor.dryer);
    const auto usual = usualNow(state, dryer);
    for (const auto& pass : passes) {
        auto facts = std::make_shared<RideFacts>();
        facts->fit = analytics::fitRise(pass);
        facts->signs = analytics::rideSigns(facts->fit ? &*facts->fit : nullptr, pass, usual ? &*usual : nullptr);
        facts->dryer = dryer;
        facts->calibration = calibration;
        all.push_back(std::move(facts));
    }
    return all;
}

void noteGoodRide(ProvingState& state, const KeptReading& kept) {
    auto& rides = state.goodRides;
    const auto isIt = [&](const GoodRide& one) { return one.recording == kept.recording && one.pass == kept.pass; };
    if (kept.corrected) {
        std::erase_if(rides, isIt);
    }
    const bool good = kept.ride && kept.ride->fit && kept.ride->signs.empty() && kept.reading.verdict &&
                      kept.reading.verdict->word == Word::cured && !kept.fromSpool;
    if (!good || std::any_of(rides.begin(), rides.end(), isIt)) {
        return;
    }
    rides.push_back({kept.recording, kept.pass, {*kept.ride->fit, kept.ride->dryer.setPoint}});
    if (rides.size() > kMostGoodRides) {
        rides.erase(rides.begin());
    }
}

void noteEarlierRides(ProvingState& state, const EarlierRidesLoaded& event) {
    std::vector<GoodRide> rides;
    for (const auto& ride : event.rides) {
        rides.push_back({0, 1, ride});
    }
    std::copy_if(state.goodRides.begin(), state.goodRides.end(), std::back_inserter(rides),
                 [](const GoodRide& one) { return one.recording != 0; });
    const auto most = std::min(rides.size(), kMostGoodRides);
    state.goodRides.assign(rides.end() - static_cast<std::ptrdiff_t>(most), rides.end());
    if (!state.watch.map) {
        state.watch.map = event.map;
    }
}

void proposeTurn(ProvingState& state) {
    state.turn.reset();
    const auto* shown = shownReading(state);
    const bool asked = state.verdict && state.verdict->word != Word::cured && state.verdict->word != Word::refused;
    if (!asked || shown == nullptr || !shown->run || !shown->ride || !shown->ride->fit) {
        return;
    }
    const auto& ride = *shown->ride;
    state.turn = analytics::turnThisMuch(
        {*ride.fit, ride.signs, plansOf(state, *shown), *ride.calibration, state.guard, ride.dryer});
}

} // namespace holdfast::kiosk::shop
