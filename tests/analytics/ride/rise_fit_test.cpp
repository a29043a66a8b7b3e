#include "analytics/cure/ride/rise_fit.hpp"

#include "tests/analytics/ride/tunnel.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace holdfast::analytics;
using tunnel::Tunnel;

namespace {

RiseFault faultOf(const Pass& pass) {
    const auto fit = fitRise(pass);
    REQUIRE_FALSE(fit);
    return fit.error();
}

Pass withJoin(Pass pass, Temperature near, Join join) {
    for (std::size_t i = 0; i + 1 < pass.samples.size(); ++i) {
        if (pass.samples[i].t >= near) {
            pass.joins[i] = join;
            break;
        }
    }
    return pass;
}

RawTrace without(RawTrace trace, double from, double to) {
    std::erase_if(trace.samples, [&](const TraceSample& sample) {
        const double at = Duration{sample.at}.count();
        return at > from && at < to;
    });
    return trace;
}

} // namespace

TEST_CASE("a ride through a first-order tunnel gives the tunnel back", "[ride]") {
    const Tunnel truth;
    const auto fit = tunnel::fit(truth);
    CHECK(fit.curve.tau.count() == Approx(18.0).epsilon(1e-6));
    CHECK(fit.curve.air.celsius() == Approx(185.0).epsilon(1e-6));
    CHECK(fit.entry.celsius() == Approx(28.0).margin(1e-6));
    CHECK(fit.entered.count() == Approx(tunnel::kPreRoll).margin(1e-5));
    // The last sample under the heat is the peak; 1 °C of fall takes 0.15 s behind it, less than a sample.
    CHECK(fit.inTunnel.count() == Approx(38.0).margin(0.25));
    CHECK(fit.raw.celsius() == Approx(truth.peak()));
    CHECK(fit.rate.celsiusPerSecond() == Approx((185.0 - 28.0) / 18.0).epsilon(1e-6));
    REQUIRE(fit.cooling);
    CHECK(fit.cooling->count() == Approx(22.0).margin(0.5));
    CHECK(fit.flutter.celsius() < 1e-6);
}

TEST_CASE("the limits of a noisy ride hold the tunnel's own values", "[ride]") {
    Tunnel truth;
    truth.noise = 0.6;
    constexpr int kRides = 400;
    int tauHeld = 0;
    int airHeld = 0;
    for (unsigned seed = 0; seed < kRides; ++seed) {
        const auto fit = tunnel::fit(truth, seed);
        tauHeld += fit.shortest.tau.count() <= 18.0 && 18.0 <= fit.longest.tau.count() ? 1 : 0;
        airHeld += fit.airLow.celsius() <= 185.0 && 185.0 <= fit.airHigh.celsius() ? 1 : 0;
        CHECK(fit.inTunnel.count() == Approx(38.0).margin(1.5));
    }
    // 95 % of 400 is 380, standard deviation √(400 × 0.95 × 0.05) = 4.4; the end at a hottest sample and a correlation
    // estimated from the same residuals cost a little and give a little: ± 4 of them.
    CHECK(tauHeld > 362);
    CHECK(airHeld > 362);
    CHECK(tauHeld < 398);
}

TEST_CASE("spread and flutter are the noise of a still probe, at any sampling", "[ride]") {
    for (const double step : {0.1, 0.25, 0.5}) {
        Tunnel truth;
        truth.noise = 0.8;
        truth.step = step;
        double spread = 0.0;
        double flutter = 0.0;
        for (unsigned seed = 0; seed < 20; ++seed) {
            const auto fit = tunnel::fit(truth, seed);
            spread += fit.spread.celsius() / 20.0;
            flutter += fit.flutter.celsius() / 20.0;
        }
        CHECK(spread == Approx(0.8).epsilon(0.06));
        CHECK(flutter == Approx(0.8).epsilon(0.08));
    }
}

TEST_CASE("flutter sees what changes within a second and hardly a slow misfit", "[ride]") {
    std::vector<CurvePoint> slow;
    std::vector<CurvePoint> fast;
    for (int i = 0; i < 400; ++i) {
        const double t = i * 0.1;
        slow.push_back({Duration{t}, ride::celsius(3.0 * std::sin(2.0 * 3.14159265 * t / 40.0))});
        fast.push_back({Duration{t}, ride::celsius(3.0 * std::sin(2.0 * 3.14159265 * t / 2.0))});
    }
    // Over a lag d a sine of amplitude A and period p changes by 2A·sin(πd/p) at most: root mean square /√2, and /√2
    // again by definition, A·sin(πd/p): 3·sin(π/40) = 0.235 and 3·sin(π/2) = 3.
    CHECK(flutterOf(slow, Duration{1.0}).celsius() == Approx(0.235).margin(0.01));
    CHECK(flutterOf(fast, Duration{1.0}).celsius() == Approx(3.0).margin(0.05));
    CHECK(flutterOf({}, Duration{1.0}).celsius() == 0.0);
    CHECK(flutterOf({slow.front()}, Duration{1.0}).celsius() == 0.0);
}

TEST_CASE("on a level top the exposure lasts until the probe leaves the curve", "[ride]") {
    Tunnel truth;
    truth.inside = 110.0; // six time constants: the top is level
    truth.noise = 0.4;
    for (unsigned seed = 0; seed < 20; ++seed) {
        CHECK(tunnel::fit(truth, seed).inTunnel.count() == Approx(110.0).margin(2.0));
    }
}

TEST_CASE("a few missing samples do not move the fit, too many refuse it", "[ride]") {
    const auto trace = tunnel::ride(Tunnel{});
    const auto fit = fitRise(tunnel::pass(without(trace, 35.0, 38.0)));
    REQUIRE(fit);
    CHECK(fit->curve.tau.count() == Approx(18.0).epsilon(1e-6));
    // Two gaps of 4.5 s: 9 s of the 36 s or so of the way up.
    CHECK(faultOf(tunnel::pass(without(without(trace, 35.0, 39.4), 42.0, 46.4))) == RiseFault::gaps);
}

TEST_CASE("a break on the way up refuses the fit, one behind the peak does not", "[ride]") {
    const auto pass = tunnel::pass(Tunnel{});
    CHECK(faultOf(withJoin(pass, ride::celsius(90.0), Join::jump)) == RiseFault::broken);
    CHECK(faultOf(withJoin(pass, ride::celsius(90.0), Join::clockFault)) == RiseFault::broken);
    auto behind = pass;
    behind.joins.back() = Join::jump;
    CHECK(fitRise(behind));
}

TEST_CASE("rides that cannot tell the air from the time constant are refused", "[ride]") {
    Tunnel shortRide;
    shortRide.air = 320.0;
    shortRide.tau = 60.0;
    shortRide.inside = 20.0; // a third of a time constant: nearly a straight line
    shortRide.noise = 2.0;
    int refused = 0;
    for (unsigned seed = 0; seed < 20; ++seed) {
        const auto fit = fitRise(tunnel::pass(shortRide, seed));
        refused += !fit && fit.error() == RiseFault::notToldApart ? 1 : 0;
    }
    CHECK(refused == 20);
}

TEST_CASE("rides that are too short, too noisy or none are refused by name", "[ride]") {
    CHECK(faultOf(Pass{}) == RiseFault::noPass);
    Pass one = tunnel::pass(Tunnel{});
    one.samples.resize(1);
    one.joins.clear();
    CHECK(faultOf(one) == RiseFault::notFallen);

    Tunnel cold;
    cold.air = 70.0;
    CHECK(faultOf(tunnel::pass(cold)) == RiseFault::noPass);

    Tunnel sparse;
    sparse.step = 2.0;
    sparse.inside = 20.0;
    CHECK(faultOf(tunnel::pass(sparse)) == RiseFault::tooShort);
    sparse.step = 6.0;
    CHECK(faultOf(tunnel::pass(sparse)) == RiseFault::tooCoarse);

    auto noisy = tunnel::pass(Tunnel{});
    std::mt19937 engine{3};
    std::normal_distribution<double> noise{0.0, 20.0};
    for (auto& sample : noisy.samples) {
        sample.t = sample.t + TemperatureDifference::fromCelsius(noise(engine));
    }
    CHECK(faultOf(noisy) == RiseFault::tooNoisy);

    auto ended = tunnel::pass(Tunnel{});
    ended.samples.resize(235); // 58.5 s: half a second behind the peak
    ended.joins.resize(234);
    CHECK(faultOf(ended) == RiseFault::notFallen);

    auto hot = tunnel::pass(Tunnel{});
    hot.startsHot = true;
    CHECK(faultOf(hot) == RiseFault::unitNotSure);
    hot.startsHot = false;
    hot.unitInDoubt = true;
    CHECK(faultOf(hot) == RiseFault::unitNotSure);
}

TEST_CASE("flat, falling and not finite samples give a fault and nothing worse", "[ride]") {
    auto pass = tunnel::pass(Tunnel{});
    auto flat = pass;
    for (auto& sample : flat.samples) {
        sample.t = ride::celsius(150.0);
    }
    CHECK(faultOf(flat) == RiseFault::notFallen);
    auto falling = pass;
    for (std::size_t i = 0; i < falling.samples.size(); ++i) {
        falling.samples[i].t = ride::celsius(200.0 - 0.3 * static_cast<double>(i));
    }
    CHECK(faultOf(falling) == RiseFault::tooShort);
    auto broken = pass;
    broken.samples[140].t = ride::celsius(std::nan(""));
    CHECK_FALSE(fitRise(broken));
}

TEST_CASE("the start of the recording and the pre-roll do not matter", "[ride]") {
    auto pass = tunnel::pass(Tunnel{});
    const auto whole = fitRise(pass);
    pass.samples.erase(pass.samples.begin(), pass.samples.begin() + 60);
    pass.joins.erase(pass.joins.begin(), pass.joins.begin() + 60);
    for (auto& sample : pass.samples) {
        sample.at += Duration{3600.0};
    }
    const auto late = fitRise(pass);
    REQUIRE((whole && late));
    CHECK(late->curve.tau.count() == Approx(whole->curve.tau.count()).epsilon(1e-8));
    CHECK(late->inTunnel.count() == Approx(whole->inTunnel.count()).epsilon(1e-8));
    CHECK(late->from.count() == Approx(whole->from.count() + 3600.0));
}
