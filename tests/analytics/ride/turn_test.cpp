#include "analytics/cure/ride/predicted_ride.hpp"
#include "analytics/cure/ride/turn.hpp"

#include "tests/analytics/ride/tunnel.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using tunnel::Tunnel;

namespace {

/// 160 °C, hard ceiling 190 °C: aim L + 2.5 g = 160 + 2.5 × 2.8489700 = 167.12 °C (decisions 2).
RunPlan plainPlan() {
    return ride::plan({ride::family(160.0)}, ride::ceilings(190.0));
}

Temperature aimOf(const RunPlan& plan) {
    const auto calibration = ride::inDate();
    return *windowOf(plan, &calibration)->aim;
}

DryerSettings dryer() {
    DryerSettings settings;
    settings.heatedLengthMetres = 3.0;
    settings.beltMetresPerMinute = 3.0 / 38.0 * 60.0; // 38 s
    settings.slowestMetresPerMinute = 1.0;
    settings.fastestMetresPerMinute = 12.0;
    settings.setPoint = ride::celsius(195.0);
    settings.highestSetPoint = ride::celsius(250.0);
    return settings;
}

TurnRequest request(const Tunnel& tunnel, std::vector<RunPlan> plans = {plainPlan()}) {
    return {tunnel::fit(tunnel), {}, std::move(plans), ride::inDate(), {}, dryer()};
}

/// The tunnel after what was proposed.
Tunnel turned(Tunnel tunnel, const TurnProposal& proposal) {
    tunnel.inside /= proposal.beltFactor;
    tunnel.air += proposal.setPointChange.celsius();
    return tunnel;
}

/// Turns and rides until nothing is left to turn; how many turns that took, −1 if it never ends.
int turnsUntilAim(Tunnel& tunnel, const RunPlan& plan) {
    for (int turns = 0; turns < 12; ++turns) {
        auto ask = request(tunnel, {plan});
        ask.dryer.beltMetresPerMinute = 3.0 / tunnel.inside * 60.0;
        ask.dryer.setPoint = ride::celsius(tunnel.air + 10.0);
        const auto answer = turnThisMuch(ask);
        if (!answer) {
            return answer.error() == NoTurn::nothingToTurn ? turns : -1;
        }
        tunnel = turned(tunnel, *answer);
    }
    return -1;
}

bool says(const TurnProposal& proposal, TurnCaution caution) {
    return std::find(proposal.cautions.begin(), proposal.cautions.end(), caution) != proposal.cautions.end();
}

double sustainedOf(const Tunnel& tunnel) {
    return sustainedPeak(tunnel::pass(tunnel))->t.celsius();
}

} // namespace

TEST_CASE("under-cured: the belt slower, by what first-order heating says", "[ride][turn]") {
    Tunnel cool;
    cool.air = 185.0;
    cool.inside = 34.0;
    const auto answer = turnThisMuch(request(cool));
    REQUIRE(answer);
    CHECK(answer->knob == TurnKnob::beltSlower);
    CHECK_FALSE(answer->partOfTheWay);
    CHECK(answer->setPointChange.celsius() == 0.0);
    CHECK(answer->word == Word::cured);
    // By hand: time for the top T is τ·ln((air − entry)/(air − T)), belt speed as one over time.
    const double shortfall = cool.peak() - sustainedOf(cool);
    const double top = aimOf(plainPlan()).celsius() + shortfall;
    const double time = 18.0 * std::log((185.0 - 28.0) / (185.0 - top));
    CHECK(answer->beltFactor == Approx(34.0 / time).epsilon(0.02));
    CHECK(answer->predicted.celsius() == Approx(aimOf(plainPlan()).celsius()).margin(0.1));
    CHECK(sustainedOf(turned(cool, *answer)) == Approx(aimOf(plainPlan()).celsius()).margin(0.7));
    CHECK(says(*answer, TurnCaution::beyondWhatWasSeen));
    CHECK(says(*answer, TurnCaution::watchCloth));
    CHECK(answer->cautions.back() == TurnCaution::dataSheetGoverns);
    CHECK(answer->assumptions.front() == TurnAssumption::timeFollowsBelt);
}

TEST_CASE("overheated: the belt faster", "[ride][turn]") {
    Tunnel hot;
    hot.air = 215.0;
    hot.inside = 38.0;
    const auto answer = turnThisMuch(request(hot));
    REQUIRE(answer);
    CHECK(answer->knob == TurnKnob::beltFaster);
    CHECK(answer->beltFactor > 1.0);
    CHECK(*answer->beltMetresPerMinute == Approx(*dryer().beltMetresPerMinute * answer->beltFactor));
    CHECK_FALSE(says(*answer, TurnCaution::watchCloth));
    CHECK(answer->predicted < ride::celsius(190.0 - ride::kGuard));
    CHECK(sustainedOf(turned(hot, *answer)) == Approx(answer->predicted.celsius()).margin(0.7));
}

TEST_CASE("air too cool for any belt speed: the set-point up, by the same model", "[ride][turn]") {
    Tunnel cool;
    cool.air = 165.0; // below the aim: no time would do
    const auto answer = turnThisMuch(request(cool));
    REQUIRE(answer);
    CHECK(answer->knob == TurnKnob::setPointUp);
    CHECK(answer->beltFactor == 1.0);
    const double shortfall = cool.peak() - sustainedOf(cool);
    const double share = 1.0 - std::exp(-38.0 / 18.0);
    const double needed = (aimOf(plainPlan()).celsius() + shortfall - cool.peak()) / share;
    CHECK(answer->partOfTheWay == (needed > 40.0 / 1.8)); // 40 °F, from memory
    CHECK(answer->setPointChange.celsius() == Approx(std::min(needed, 40.0 / 1.8)).margin(0.3));
    CHECK(answer->setPoint->celsius() == Approx(195.0 + answer->setPointChange.celsius()));
    CHECK(answer->assumptions.front() == TurnAssumption::airFollowsSetPoint);
    CHECK(answer->rideAgainAfter >= Duration{900.0});
}

TEST_CASE("a belt that cannot go slower leaves the set-point", "[ride][turn]") {
    Tunnel cool;
    cool.air = 180.0;
    cool.inside = 30.0;
    auto ask = request(cool);
    ask.dryer.slowestMetresPerMinute = ask.dryer.beltMetresPerMinute;
    const auto answer = turnThisMuch(ask);
    REQUIRE(answer);
    CHECK(answer->knob == TurnKnob::setPointUp);
}

TEST_CASE("one change is never more than a plausible step, and the prediction is that of the step", "[ride][turn]") {
    Tunnel cool;
    cool.air = 190.0;
    cool.inside = 22.0;
    const auto answer = turnThisMuch(request(cool));
    REQUIRE(answer);
    CHECK(answer->knob == TurnKnob::beltSlower);
    CHECK(answer->partOfTheWay);
    CHECK(answer->beltFactor == 0.75); // 25 %, from memory
    CHECK(answer->cautions.front() == TurnCaution::onlyPartOfTheWay);
    CHECK(answer->predicted < answer->aim);
    CHECK(answer->word != Word::cured);
    CHECK(sustainedOf(turned(cool, *answer)) == Approx(answer->predicted.celsius()).margin(0.7));
}

TEST_CASE("turning and riding in turn ends at the aim from far off, and never passes the ceiling", "[ride][turn]") {
    for (const double air : {150.0, 165.0, 185.0, 215.0, 250.0}) {
        for (const double inside : {20.0, 38.0, 60.0}) {
            Tunnel each;
            each.air = air;
            each.inside = inside;
            INFO("air " << air << ", inside " << inside);
            const int turns = turnsUntilAim(each, plainPlan());
            CHECK(turns >= 0);
            CHECK(turns <= 10);
            CHECK(ride::judge(plainPlan(), tunnel::ride(each)).word == Word::cured);
            CHECK(sustainedOf(each) == Approx(aimOf(plainPlan()).celsius()).margin(1.5));
        }
    }
}

TEST_CASE("holds and pairs get the time they ask, not only the peak", "[ride][turn]") {
    const std::vector<RunPlan> plans{ride::plan({ride::family(155.0, 30.0)}, ride::ceilings(190.0)),
                                     ride::plan({ride::familyWithPairs()}, ride::ceilings(190.0)),
                                     ride::plan({ride::family(150.0, 25.0), ride::family(158.0)})};
    for (const auto& plan : plans) {
        Tunnel each;
        each.air = 178.0;
        each.inside = 38.0;
        const auto before = ride::judge(plan, tunnel::ride(each));
        REQUIRE(before.word == Word::underCured);
        const int turns = turnsUntilAim(each, plan);
        CHECK(turns > 0);
        const auto after = ride::judge(plan, tunnel::ride(each));
        CHECK(after.word == Word::cured);
        // The margin aimed at is 2.5 guards, less only where the ceiling is near.
        CHECK(after.margin->low->celsius() > 1.2 * ride::kGuard);
    }
}

TEST_CASE("a hold that would need a peak over the ceiling has no setting", "[ride][turn]") {
    // 100 s at 165 °C in a tunnel with a ceiling just above: neither belt nor air.
    auto ask = request(Tunnel{}, {ride::plan({ride::family(165.0, 100.0)}, ride::ceilings(178.0))});
    ask.dryer.slowestMetresPerMinute = ask.dryer.beltMetresPerMinute;
    const auto answer = turnThisMuch(ask);
    REQUIRE_FALSE(answer);
    CHECK(answer.error() == NoTurn::noSettingDoes);
}

TEST_CASE("a closed window, an instrument that cannot prove it and a wrong ride each say so", "[ride][turn]") {
    const auto error = [](const TurnRequest& ask) {
        const auto answer = turnThisMuch(ask);
        return answer ? std::optional<NoTurn>{} : answer.error();
    };
    CHECK(error(request(Tunnel{}, {ride::plan({ride::family(160.0)}, ride::ceilings(150.0))})) == NoTurn::windowClosed);
    CHECK(error(request(Tunnel{}, {ride::plan({ride::family(160.0)}, ride::ceilings(163.0))})) == NoTurn::notProvable);
    auto wet = request(Tunnel{});
    wet.signs.push_back({RideSignKind::wetCloth, {}});
    CHECK(error(wet) == NoTurn::rideNotTrusted);
    CHECK(error(request(Tunnel{}, {})) == NoTurn::badInput);
    CHECK(error(request(Tunnel{}, {RunPlan{}})) == NoTurn::badInput);
    for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
        auto ask = request(Tunnel{});
        ask.dryer.beltMetresPerMinute = bad;
        CHECK(error(ask) == NoTurn::badInput);
        ask = request(Tunnel{});
        ask.fit.curve.tau = Duration{bad};
        CHECK(error(ask) == NoTurn::badInput);
    }
    auto unknown = request(Tunnel{});
    unknown.fit = RiseFit{};
    CHECK(error(unknown) == NoTurn::badInput);
}

TEST_CASE("what nobody said about the dryer is not needed", "[ride][turn]") {
    Tunnel cool;
    cool.air = 180.0;
    cool.inside = 34.0;
    auto ask = request(cool);
    ask.dryer = {};
    const auto answer = turnThisMuch(ask);
    REQUIRE(answer);
    CHECK(answer->beltFactor == Approx(turnThisMuch(request(cool))->beltFactor));
    CHECK_FALSE(answer->beltMetresPerMinute);
    CHECK_FALSE(answer->dwell);
}

TEST_CASE("several runs on one belt are all served", "[ride][turn]") {
    Tunnel cool;
    cool.air = 180.0;
    cool.inside = 34.0;
    const auto both =
        turnThisMuch(request(cool, {ride::plan({ride::family(150.0)}, ride::ceilings(190.0)), plainPlan()}));
    REQUIRE(both);
    CHECK(both->beltFactor == Approx(turnThisMuch(request(cool))->beltFactor).epsilon(0.01));
}

TEST_CASE("a bucket past its life does not keep the dryer from being turned", "[ride][turn]") {
    Tunnel cool;
    cool.air = 180.0;
    cool.inside = 34.0;
    auto plan = plainPlan();
    plan.layers.front().bucketTrouble = BucketTrouble{"B1", BucketFault::expired};
    CHECK(turnThisMuch(request(cool, {plan})));
}

TEST_CASE("dwell by length and speed is compared with the trace's time in the tunnel", "[ride][turn]") {
    const auto fit = tunnel::fit(Tunnel{}); // 38 s
    auto settings = dryer();
    CHECK_FALSE(dwellDisagreementOf(fit, settings));
    settings.heatedLengthMetres = 3.5; // 44 s
    CHECK_FALSE(dwellDisagreementOf(fit, settings));
    settings.heatedLengthMetres = 4.5; // 57 s: the length of the whole dryer, perhaps
    const auto off = dwellDisagreementOf(fit, settings);
    REQUIRE(off);
    CHECK(off->fromBelt.count() == Approx(57.0));
    CHECK(off->fromTrace.count() == Approx(38.0).margin(0.3));
    settings.heatedLengthMetres = 2.0; // 25 s
    CHECK(dwellDisagreementOf(fit, settings));
    settings.beltMetresPerMinute.reset();
    CHECK_FALSE(dwellDisagreementOf(fit, settings));
    Tunnel cool;
    cool.air = 180.0;
    cool.inside = 34.0;
    auto ask = request(cool);
    ask.dryer.heatedLengthMetres = 6.0;
    const auto answer = turnThisMuch(ask);
    REQUIRE(answer);
    CHECK(answer->dwell);
    CHECK(says(*answer, TurnCaution::dwellDisagrees));
    CHECK(answer->beltFactor == Approx(turnThisMuch(request(cool))->beltFactor));
}

TEST_CASE("a predicted ride of the same setting is the ride itself", "[ride][turn]") {
    for (const double air : {165.0, 185.0, 220.0}) {
        Tunnel truth;
        truth.air = air;
        const PredictedRide predicted{tunnel::fit(truth)};
        CHECK(predicted.rawPeak(predicted.asRidden()).celsius() == Approx(truth.peak()).margin(1e-6));
        CHECK(predicted.timeFor(ride::celsius(truth.peak()))->count() == Approx(38.0).margin(0.3));
        CHECK(predicted.hotterFor(ride::celsius(truth.peak()), predicted.asRidden().inTunnel).celsius() ==
              Approx(0.0).margin(1e-6));
        const auto calibration = ride::inDate();
        const auto again = cleanRecording(predicted.trace(predicted.asRidden(), calibration), &calibration);
        REQUIRE(again.passes.size() == 1);
        const auto level = ride::celsius(0.8 * truth.peak());
        CHECK(timeAtOrAbove(again.passes.front(), level).total.count() ==
              Approx(timeAtOrAbove(tunnel::pass(truth), level).total.count()).margin(1.0));
        CHECK(sustainedPeak(again.passes.front())->t.celsius() == Approx(sustainedOf(truth)).margin(0.6));
    }
}

TEST_CASE("predictions of noisy rides lie within their own limits", "[ride][turn]") {
    Tunnel cool;
    cool.air = 180.0;
    cool.inside = 34.0;
    cool.noise = 0.5;
    int held = 0;
    constexpr int kRides = 60;
    for (unsigned seed = 0; seed < kRides; ++seed) {
        auto ask = request(cool);
        ask.fit = tunnel::fit(cool, seed);
        const auto answer = turnThisMuch(ask);
        REQUIRE(answer);
        const auto after = turned(cool, *answer);
        double truth = 0.0;
        for (unsigned ride = 0; ride < 10; ++ride) {
            truth += sustainedPeak(tunnel::pass(after, 1000 + ride))->t.celsius() / 10.0;
        }
        CHECK(answer->predicted.celsius() == Approx(truth).margin(3.0));
        // The limits are of the curve; the sustained peak that was ridden carries a few samples' noise of its own.
        held += answer->predictedLow.celsius() - 1.0 <= truth && truth <= answer->predictedHigh.celsius() + 1.0 ? 1 : 0;
        CHECK(answer->predictedLow <= answer->predicted);
        CHECK(answer->predicted <= answer->predictedHigh);
    }
    CHECK(held >= 54); // nine in ten of 60
}
