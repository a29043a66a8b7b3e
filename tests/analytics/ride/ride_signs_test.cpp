#include "analytics/cure/names.hpp"
#include "analytics/cure/ride/ride_names.hpp"
#include "analytics/cure/ride/ride_signs.hpp"

#include "tests/analytics/ride/tunnel.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace holdfast::analytics;
using tunnel::Tunnel;

namespace {

Tunnel usualTunnel() {
    Tunnel usual;
    usual.noise = 0.4;
    return usual;
}

Usual usual() {
    std::vector<UsualRide> rides;
    for (unsigned seed = 0; seed < 8; ++seed) {
        auto each = usualTunnel();
        each.tau += 0.4 * (static_cast<double>(seed) - 3.5);
        each.air += 0.5 * (static_cast<double>(seed % 3) - 1.0);
        rides.push_back({tunnel::fit(each, seed), std::nullopt});
    }
    return *usualOf(rides);
}

std::vector<RideSign> signsOf(const Tunnel& tunnel, unsigned seed = 77) {
    const auto pass = tunnel::pass(tunnel, seed);
    const auto fit = fitRise(pass);
    const auto known = usual();
    return rideSigns(fit ? &*fit : nullptr, pass, &known);
}

std::vector<std::string> codesOf(const Verdict& verdict) {
    std::vector<std::string> codes;
    for (const auto& reason : verdict.reasons) {
        codes.emplace_back(nameOf(reason.code));
    }
    return codes;
}

RideSign sign(RideSignKind kind) {
    RideSign result;
    result.kind = kind;
    result.reason.code = kind == RideSignKind::probeLifted ? ReasonCode::probeLifted
                         : kind == RideSignKind::wetCloth  ? ReasonCode::wetCloth
                                                           : ReasonCode::emptyBelt;
    return result;
}

} // namespace

TEST_CASE("an ordinary ride of a dryer shows no sign", "[ride]") {
    for (unsigned seed = 100; seed < 160; ++seed) {
        CHECK(signsOf(usualTunnel(), seed).empty());
    }
}

TEST_CASE("a probe that follows the fluttering air has lifted", "[ride]") {
    auto lifted = usualTunnel();
    lifted.tau = 4.0;
    lifted.flutter = 4.0;
    for (unsigned seed = 0; seed < 20; ++seed) {
        const auto signs = signsOf(lifted, seed);
        REQUIRE(signs.size() == 1); // hot, too, but that is the air
        CHECK(signs.front().kind == RideSignKind::probeLifted);
        CHECK(signs.front().reason.code == ReasonCode::probeLifted);
        CHECK(signs.front().reason.duration->count() == Approx(4.0).epsilon(0.25));
        CHECK(signs.front().reason.needed->count() == Approx(18.0).epsilon(0.05));
        CHECK(signs.front().reason.difference->celsius() > 1.0);
    }
}

TEST_CASE("a short time constant without flutter, or flutter without it, is no lifted probe", "[ride]") {
    auto thin = usualTunnel();
    thin.tau = 6.0;
    CHECK_FALSE(has(signsOf(thin), RideSignKind::probeLifted));
    auto windy = usualTunnel();
    windy.flutter = 4.0;
    CHECK_FALSE(has(signsOf(windy), RideSignKind::probeLifted));
}

TEST_CASE("a rise held up near boiling is wet cloth", "[ride]") {
    auto wet = usualTunnel();
    for (const double boils : {6.0, 10.0, 15.0}) {
        wet.boilsFor = boils;
        const auto signs = signsOf(wet);
        REQUIRE(has(signs, RideSignKind::wetCloth));
        const auto& reason = signs.front().reason;
        CHECK(reason.value->celsius() == Approx(100.0).margin(1.5)); // the boiling point of water
        CHECK(reason.duration->count() == Approx(boils).margin(1.6));
    }
    // Seen without a fit and without a usual.
    const auto alone = rideSigns(nullptr, tunnel::pass(wet), nullptr);
    CHECK(has(alone, RideSignKind::wetCloth));
}

TEST_CASE("cloth that never dries is wet if the dryer's usual air would have carried it on", "[ride]") {
    auto wet = usualTunnel();
    wet.boilsFor = 100.0;
    CHECK(has(signsOf(wet), RideSignKind::wetCloth));
    CHECK(rideSigns(nullptr, tunnel::pass(wet), nullptr).empty());
}

TEST_CASE("a first-order rise is never wet, however cool its air", "[ride]") {
    for (const double air : {100.0, 104.0, 108.0, 115.0, 125.0, 150.0, 190.0}) {
        for (const double tau : {5.0, 18.0, 40.0}) {
            auto dry = usualTunnel();
            dry.air = air;
            dry.tau = tau;
            for (unsigned seed = 0; seed < 5; ++seed) {
                INFO("air " << air << ", tau " << tau);
                CHECK(rideSigns(nullptr, tunnel::pass(dry, seed), nullptr).empty());
            }
        }
    }
}

TEST_CASE("a ride hotter than the usual air gives in its time is that of an empty belt", "[ride]") {
    auto empty = usualTunnel();
    empty.tau = 13.0; // nothing else takes the heat
    const auto signs = signsOf(empty);
    REQUIRE(signs.size() == 1);
    CHECK(signs.front().kind == RideSignKind::emptyBelt);
    // 185 − 157·e^(−38/13) against 185 − 157·e^(−38/18): 10.6 °C; "10–30 °F" (common practice, from memory).
    CHECK(signs.front().reason.difference->celsius() == Approx(10.6).margin(1.5));
    auto slower = usualTunnel();
    slower.inside = 60.0; // hotter because it was longer inside: as usual
    CHECK(signsOf(slower).empty());
}

TEST_CASE("nothing is said of an empty pass", "[ride]") {
    const auto known = usual();
    CHECK(rideSigns(nullptr, Pass{}, &known).empty());
    Pass one = tunnel::pass(Tunnel{});
    one.samples.resize(1);
    one.joins.clear();
    CHECK(rideSigns(nullptr, one, &known).empty());
}

TEST_CASE("a lifted probe comes to the same as judging the ride as lifted", "[ride]") {
    auto held = ride::family(155.0, 20.0);
    const std::vector<RunPlan> plans{
        ride::plan({ride::family(160.0)}, ride::ceilings(185.0)),
        ride::plan({ride::family(160.0)}),
        ride::plan({held, ride::family(150.0)}, ride::ceilings(190.0, 175.0)),
        ride::plan({ride::familyWithPairs()}, ride::ceilings(185.0)),
    };
    ReadingContext context;
    context.probeLifted = true;
    std::set<std::string> words;
    for (const auto& plan : plans) {
        for (double air = 130.0; air < 240.0; air += 4.0) {
            Tunnel each;
            each.air = air;
            const auto trace = tunnel::ride(each);
            const auto plain = ride::judge(plan, trace);
            const auto signs = withSigns(plain, {sign(RideSignKind::probeLifted)});
            const auto judged = ride::judge(plan, trace, ride::inDate(), {}, context);
            words.insert(ride::wordOf(plain));
            INFO("air " << air << ", was " << ride::wordOf(plain));
            CHECK(ride::wordOf(signs) == ride::wordOf(judged));
            CHECK(codesOf(signs) == codesOf(judged));
            CHECK(signs.remedies == judged.remedies);
            CHECK(signs.margin.has_value() == judged.margin.has_value());
            CHECK(signs.guard == judged.guard);
            CHECK(signs.bleedWatchDue == judged.bleedWatchDue);
            for (std::size_t i = 0; i < signs.layers.size(); ++i) {
                CHECK(signs.layers[i].word == judged.layers[i].word);
            }
        }
    }
    CHECK(words == std::set<std::string>{"cured", "not proven", "overheated", "under-cured"});
}

TEST_CASE("a lifted probe turns cured and under-cured into not proven, and overheated stands", "[ride]") {
    const auto plan = ride::plan({ride::family(160.0)}, ride::ceilings(185.0));
    const auto lifted = std::vector{sign(RideSignKind::probeLifted)};
    const auto cured = withSigns(ride::judge(plan, ride::trapezoid(172.0)), lifted);
    CHECK(cured.word == Word::notProven);
    CHECK(ride::advises(cured, Remedy::sendProbeAgain));
    CHECK(withSigns(ride::judge(plan, ride::trapezoid(140.0)), lifted).word == Word::notProven);
    CHECK(withSigns(ride::judge(plan, ride::trapezoid(195.0)), lifted).word == Word::overheated);
    // Twice is once.
    CHECK(codesOf(withSigns(cured, lifted)) == codesOf(cured));
}

TEST_CASE("wet cloth and an empty belt are named, change no word, and are answered first", "[ride]") {
    const auto plan = ride::plan({ride::family(160.0)}, ride::ceilings(185.0));
    const auto wet = std::vector{sign(RideSignKind::wetCloth)};
    const auto low = withSigns(ride::judge(plan, ride::trapezoid(140.0)), wet);
    CHECK(low.word == Word::underCured);
    CHECK(ride::says(low, ReasonCode::wetCloth));
    REQUIRE_FALSE(low.remedies.empty());
    CHECK(low.remedies.front() == Remedy::dryClothFirst);
    const auto cured = withSigns(ride::judge(plan, ride::trapezoid(172.0)), wet);
    CHECK(cured.word == Word::cured);
    CHECK(ride::says(cured, ReasonCode::wetCloth));
    CHECK(cured.remedies.empty());
    const auto hot = withSigns(ride::judge(plan, ride::trapezoid(195.0)), {sign(RideSignKind::emptyBelt)});
    CHECK(hot.word == Word::overheated);
    CHECK(hot.remedies.front() == Remedy::loadBelt);
}

TEST_CASE("every typed value of a ride has a name of its own", "[ride]") {
    const auto names = [](auto last) {
        using E = decltype(last);
        std::set<std::string_view> all;
        for (int i = 0; i <= static_cast<int>(last); ++i) {
            all.insert(nameOf(static_cast<E>(i)));
        }
        return all.size() == static_cast<std::size_t>(last) + 1 && all.count("unknown") == 0;
    };
    CHECK(names(RiseFault::notFirstOrder));
    CHECK(names(RideSignKind::emptyBelt));
    CHECK(names(TurnKnob::setPointDown));
    CHECK(names(TurnCaution::dataSheetGoverns));
    CHECK(names(TurnAssumption::loadStaysAsIs));
    CHECK(names(NoTurn::badInput));
}
