#include "analytics/cure/ride/usual.hpp"

#include "tests/analytics/ride/tunnel.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;

namespace {

UsualRide rideOf(double tau, double air, std::optional<double> setPoint = std::nullopt) {
    UsualRide ride;
    ride.fit.curve = {ride::celsius(air), ride::celsius(30.0), Duration{tau}};
    ride.fit.rate = HeatingRate::fromCelsiusPerSecond((air - 30.0) / tau);
    ride.fit.flutter = TemperatureDifference::fromCelsius(0.3);
    if (setPoint) {
        ride.setPoint = ride::celsius(*setPoint);
    }
    return ride;
}

} // namespace

TEST_CASE("a dryer's usual is the median of its rides, its spread the median distance times 1.4826", "[ride]") {
    // By hand: τ 14, 16, 17, 19, 90: median 17; distances 3, 1, 0, 2, 73: median 2; 2 × 1.4826 = 2.9652
    // (Rousseeuw & Croux 1993 for the factor).
    const std::vector<UsualRide> rides{rideOf(17, 180), rideOf(90, 400), rideOf(14, 178), rideOf(19, 181),
                                       rideOf(16, 184)};
    const auto usual = usualOf(rides);
    REQUIRE(usual);
    CHECK(usual->rides == 5);
    CHECK(usual->tau.middle.count() == 17.0);
    CHECK(usual->tau.spread.count() == Approx(2.9652));
    // 178, 180, 181, 184, 400: median 181; distances 3, 1, 0, 3, 219: median 3.
    CHECK(usual->air.middle.celsius() == Approx(181.0));
    CHECK(usual->air.spread.celsius() == Approx(3 * 1.4826));
    CHECK(usual->flutter.celsius() == Approx(0.3));
}

TEST_CASE("too few rides have no usual", "[ride]") {
    CHECK_FALSE(usualOf({}));
    CHECK_FALSE(usualOf(std::vector<UsualRide>(4, rideOf(17, 180))));
    CHECK(usualOf(std::vector<UsualRide>(5, rideOf(17, 180))));
    UsualRules none;
    none.leastRides = 0;
    CHECK_FALSE(usualOf({}, std::nullopt, none));
}

TEST_CASE("rides at other set-points are moved to the one of now", "[ride]") {
    std::vector<UsualRide> rides{rideOf(18, 180, 190), rideOf(18, 170, 180), rideOf(18, 190, 200), rideOf(18, 180, 190),
                                 rideOf(18, 175, 185)};
    const auto usual = usualOf(rides, ride::celsius(195.0));
    REQUIRE(usual);
    CHECK(usual->air.middle.celsius() == Approx(185.0));
    CHECK(usual->air.spread.celsius() == Approx(0.0).margin(1e-9));
    CHECK(usual->rate.middle.celsiusPerSecond() == Approx((185.0 - 30.0) / 18.0));
    rides.back().setPoint.reset();
    CHECK_FALSE(usualOf(rides, ride::celsius(195.0)));
    CHECK(usualOf(rides));
}
