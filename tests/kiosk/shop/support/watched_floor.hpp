#pragma once

#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

/// A dryer whose pieces are counted: 2.5 m heated, 4 pieces a metre, so 10 in the tunnel.
namespace holdfast::kiosk::shop::testing {

inline constexpr analytics::Date kToday{
    std::chrono::year_month_day{std::chrono::year{2026}, std::chrono::month{3}, std::chrono::day{2}}};
inline const std::string kRun = "run-20418";

inline FloorLoaded dryerAt(double metresPerMinute) {
    records::DryerNow dryer;
    dryer.described.dryer = "dryer";
    dryer.described.heatedLengthMetres = 2.5;
    dryer.described.piecesPerMetre = 4.0;
    dryer.beltMetresPerMinute = metresPerMinute;
    dryer.setPoint = analytics::AuthoredTemperature{340.0, analytics::TemperatureUnit::fahrenheit};
    FloorLoaded loaded;
    loaded.dryer = dryer;
    loaded.nextBin = 7;
    return loaded;
}

inline std::shared_ptr<const AnnouncedRun> runOfPieces(std::optional<int> pieces, std::int64_t number = 20418) {
    auto run = std::make_shared<AnnouncedRun>(*runOf("standard", "100% cotton", number));
    run->onFile.plan.pieces = pieces;
    return run;
}

/// A dryer whose belt map of today says that the right lane is the coldest; its probe is plugged in.
struct WatchedFloor {
    Floor floor;
    explicit WatchedFloor(double metresPerMinute, bool map = true) {
        floor.send(
            InstrumentsLoaded{{probeNamed("P-3"), stripOf280To330F()}, analytics::starterFamilies(), {}, kToday});
        floor.send(dryerAt(metresPerMinute));
        if (map) {
            floor.send(EarlierRidesLoaded{{}, analytics::BeltMap{analytics::BeltLane::right, kToday}});
        }
        floor.plug("P-3");
    }
    const RunWatch& watch(const std::string& run = kRun) const { return *watchOf(floor.state(), run); }
    const DuePiece& due(const std::string& run = kRun) const { return *watch(run).due; }
    void typed(int pieces) { floor.send(PiecesTyped{kRun, pieces}); }
    void ride(double peak) {
        floor.play("P-3", rideTo(peak));
        REQUIRE(floor.commitOpen());
    }
    records::ReadingTaken rideKept(double peak) {
        ride(peak);
        const auto taken = std::get<records::ReadingTaken>(floor.readingsIn(floor.commits().size() - 1).front());
        floor.commitDone();
        return taken;
    }
    template <class Kind>
    std::vector<Kind> kept(std::size_t commit) const {
        std::vector<Kind> found;
        for (const auto& record : floor.commits().at(commit).records) {
            if (const auto* one = std::get_if<Kind>(&record)) {
                found.push_back(*one);
            }
        }
        return found;
    }
    template <class Kind>
    std::vector<Kind> newest() const {
        return kept<Kind>(floor.commits().size() - 1);
    }
};

// The cure of "standard" is 320 °F = 160 °C (contracts, Starters): 168 °C proves it, 150 °C shows it under-cured.
inline constexpr double kGood = 168.0;
inline constexpr double kBad = 150.0;

} // namespace holdfast::kiosk::shop::testing
