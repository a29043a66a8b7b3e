#include "analytics/fastness/colour_direction.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using Catch::WithinAbs;

namespace {

// All by hand from the definition: direction = (target − before)/its length, angle = arccos(d·e/|d|).
constexpr Lab kWhite{95, 0, 0};
constexpr Lab kRedGarment{45, 60, 35};

ColourMoveRequest move(const Lab& before, const Lab& after, const Lab& garment = kRedGarment, double limit = 0.5) {
    ColourMoveRequest request;
    request.before = before;
    request.after = after;
    request.garment = garment;
    request.limit = limit;
    return request;
}
ColourMoveFinding found(const ColourMoveRequest& request) {
    const auto finding = colourMove(request);
    REQUIRE(finding);
    return *finding;
}
Lab plus(const Lab& x, double share, const Lab& step) {
    return {x.l + share * step.l, x.a + share * step.a, x.b + share * step.b};
}

} // namespace

TEST_CASE("a white that takes on the garment's colour bled", "[fastness][direction]") {
    // d = (−5, 6, 3.5), a tenth of the way to the red; |d| = √73.25 = 8.5586. Against yellow cos = 3.5/8.5586 =
    // 0.40895, 65.861°; against grey (−45, 0, 0) cos = 5/8.5586 = 0.58421, 54.253°.
    const auto finding = found(move(kWhite, {90, 6, 3.5}));
    CHECK(finding.move == ColourMove::towardGarment);
    CHECK(finding.doubt == MoveDoubt::none);
    CHECK_THAT(finding.difference, WithinAbs(8.5586, 0.00005));
    CHECK_THAT(finding.candidates[0].projection, WithinAbs(8.5586, 0.00005));
    CHECK_THAT(finding.candidates[0].angleDegrees, WithinAbs(0.0, 0.0005));
    CHECK_THAT(finding.candidates[1].projection, WithinAbs(3.5, 1e-9));
    CHECK_THAT(finding.candidates[1].angleDegrees, WithinAbs(65.861, 0.0005));
    CHECK_THAT(finding.candidates[2].projection, WithinAbs(5.0, 1e-9));
    CHECK_THAT(finding.candidates[2].angleDegrees, WithinAbs(54.253, 0.0005));
}

TEST_CASE("a pink paler than the garment still points at it", "[fastness][direction]") {
    // d = (−8, 18, 6): d·(−50, 60, 35) = 400 + 1080 + 210 = 1690; |d| = √424 = 20.591, |g| = √7325 = 85.586;
    // cos = 0.95896, 16.472°.
    const auto finding = found(move(kWhite, {87, 18, 6}));
    CHECK(finding.move == ColourMove::towardGarment);
    CHECK_THAT(finding.candidates[0].angleDegrees, WithinAbs(16.472, 0.0005));
}

TEST_CASE("a white that yellows saw heat or fumes", "[fastness][direction]") {
    const auto finding = found(move(kWhite, {94, -1, 6})); // d = (−1, −1, 6): cos = 6/√38 = 0.97333, 13.263°
    CHECK(finding.move == ColourMove::towardYellow);
    CHECK_THAT(finding.candidates[1].angleDegrees, WithinAbs(13.263, 0.0005));
}

TEST_CASE("a white that darkens, a black that pales and a colour that dulls went toward grey",
          "[fastness][direction]") {
    CHECK(found(move(kWhite, {90, 0, 0})).move == ColourMove::towardGrey);
    CHECK(found(move({20, 0, 0}, {26, 0, 0})).move == ColourMove::towardGrey);
    CHECK(found(move({50, 0, -60}, {50, 0, -52}, {20, 5, 5})).move == ColourMove::undecided); // as much yellow as grey
    CHECK(found(move({50, 60, 0}, {50, 52, 0}, {20, 0, -40})).move == ColourMove::towardGrey);
}

TEST_CASE("no more than repeats give is no change shown, equality too", "[fastness][direction]") {
    const auto same = found(move(kWhite, kWhite));
    CHECK(same.move == ColourMove::noChangeShown);
    CHECK(same.difference == 0.0);
    CHECK(found(move(kWhite, {95, 0, 3}, kRedGarment, 3.0)).move == ColourMove::noChangeShown);
    CHECK(found(move(kWhite, {95, 0, 3.001}, kRedGarment, 3.0)).move == ColourMove::towardYellow);
    CHECK(found(move(kWhite, {95, 0, 0.001}, kRedGarment, 0.0)).move == ColourMove::towardYellow);
}

TEST_CASE("bleed and soil on a grey garment point the same way and stay undecided", "[fastness][direction]") {
    const auto finding = found(move(kWhite, {90, 0, 0}, {55, 0, 0}));
    CHECK(finding.move == ColourMove::undecided);
    CHECK(finding.doubt == MoveDoubt::twoDirectionsNear);
    CHECK(found(move(kWhite, {95, 0, 6}, {95, 0, 70})).doubt ==
          MoveDoubt::twoDirectionsNear); // bleed from yellow cloth
}

TEST_CASE("the tie angle is met when equal", "[fastness][direction]") {
    // Yellow 10° and the garment 15° from the change: garment direction in the plane of L* and b*, 25° from yellow.
    const double degree = 3.14159265358979323846 / 180.0;
    const Lab d{-10 * std::sin(10 * degree), 0, 10 * std::cos(10 * degree)};
    const Lab garment = plus({50, 0, 0}, 40, {-std::sin(25 * degree), 0, std::cos(25 * degree)});
    auto request = move({50, 0, 0}, plus({50, 0, 0}, 1, d), garment);
    CHECK(found(request).doubt == MoveDoubt::twoDirectionsNear);
    request.rules.tieDegrees = 4.99;
    CHECK(found(request).move == ColourMove::towardYellow);
}

TEST_CASE("the angle limit is met when equal", "[fastness][direction]") {
    // d = 10·(−sin 30°, 0, cos 30°): 30° from yellow; a dark green garment is far off.
    const Lab after{90, 0, 8.660254037844386};
    auto request = move(kWhite, after, {50, -60, 0});
    CHECK(found(request).move == ColourMove::towardYellow);
    request.rules.angleLimitDegrees = 29.99;
    CHECK(found(request).move == ColourMove::undecided);
    CHECK(found(request).doubt == MoveDoubt::noDirectionNear);
}

TEST_CASE("a change away from all three is undecided", "[fastness][direction]") {
    const auto bluer = found(move(kWhite, {95, 0, -6}));
    CHECK(bluer.doubt == MoveDoubt::noDirectionNear);
    CHECK_THAT(bluer.candidates[1].projection, WithinAbs(-6.0, 1e-9));
    CHECK_THAT(bluer.candidates[1].angleDegrees, WithinAbs(180.0, 1e-6));
}

TEST_CASE("a part that points somewhere but is no more than repeats give decides nothing", "[fastness][direction]") {
    const Lab after{kWhite.l - 10 * 0.4226182617, 0, 10 * 0.9063077870}; // 10 units, 25° from yellow
    CHECK(found(move(kWhite, after, {50, -60, 0}, 9.5)).doubt == MoveDoubt::projectionNotAboveLimit);
    CHECK(found(move(kWhite, after, {50, -60, 0}, 9.0)).move == ColourMove::towardYellow);
}

TEST_CASE("a direction whose target is where the print already is does not exist", "[fastness][direction]") {
    const auto likeGarment = found(move({45, 60, 35}, {45, 60, 41}, kRedGarment));
    CHECK_FALSE(likeGarment.candidates[0].defined);
    CHECK(likeGarment.move == ColourMove::towardYellow);
    const auto grey = found(move({50, 0, 0.3}, {50, 0, 6}));
    CHECK_FALSE(grey.candidates[2].defined);
    CHECK(grey.move == ColourMove::towardYellow);
}

TEST_CASE("how far a change goes does not turn it", "[fastness][direction]") {
    for (const double share : {0.05, 0.1, 0.3, 0.6, 1.0}) {
        const auto finding = found(move(kWhite, plus(kWhite, share, {-50, 60, 35})));
        CHECK(finding.move == ColourMove::towardGarment);
        CHECK_THAT(finding.difference, WithinAbs(share * 85.5862, 0.00005));
    }
}

TEST_CASE("colours, limits and angles that cannot be are refused", "[fastness][direction][hostile]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(colourMove(move({101, 0, 0}, kWhite)).error() == ColourFault::lightnessOutOfRange);
    CHECK(colourMove(move(kWhite, {95, 200, 0})).error() == ColourFault::chromaticOutOfRange);
    CHECK(colourMove(move(kWhite, kWhite, {nan, 0, 0})).error() == ColourFault::notFinite);
    CHECK(colourMove(move(kWhite, kWhite, kRedGarment, -1)).error() == ColourFault::differenceOutOfRange);
    CHECK(colourMove(move(kWhite, kWhite, kRedGarment, nan)).error() == ColourFault::notFinite);
    for (const double bad : {-1.0, 90.5, nan}) {
        auto request = move(kWhite, {90, 0, 0});
        request.rules.angleLimitDegrees = bad;
        CHECK(colourMove(request).error() == ColourFault::settingInvalid);
        request.rules = {};
        request.rules.tieDegrees = bad;
        CHECK(colourMove(request).error() == ColourFault::settingInvalid);
    }
}
