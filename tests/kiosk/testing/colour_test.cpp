// What measured colours say beside a grade by eye, and how they are shown.
#include "kiosk/shop/testing/colour_finding.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using analytics::ColourMove;
using analytics::Lab;
using shop::ColourScale;

TEST_CASE("a white that moves towards the red garment bleeds, and towards yellow it was heated", "[testing][colour]") {
    const Lab white{94.0, 0.0, 2.0};
    const Lab red{42.0, 58.0, 30.0};
    // Directions as job.md says them: towards the garment's colour bleed, towards yellow heat or fumes.
    const auto bled = shop::colourFound(white, {91.0, 3.6, 3.7}, red, ColourScale::change, 1.0);
    REQUIRE(bled);
    CHECK(bled->move.move == ColourMove::towardGarment);
    const auto heated = shop::colourFound(white, {93.8, 0.0, 8.0}, red, ColourScale::change, 1.0);
    REQUIRE(heated);
    CHECK(heated->move.move == ColourMove::towardYellow);
    const auto still = shop::colourFound(white, {93.7, 0.2, 2.2}, red, ColourScale::change, 1.0);
    REQUIRE(still);
    CHECK(still->move.move == ColourMove::noChangeShown);
    const auto unknown = shop::colourFound(white, {91.0, 3.6, 3.7}, std::nullopt, ColourScale::change, 1.0);
    REQUIRE(unknown); // nobody measured the garment: bleed is not said
    CHECK(unknown->move.move != ColourMove::towardGarment);
}

TEST_CASE("the grade of an instrument is that of A05 for change and of A04 for staining", "[testing][colour]") {
    // A pure lightness change of 1.7: grade 4 of ISO 105-A02 (1.7 ± 0.3).
    const auto change = shop::colourFound({50, 0, 0}, {48.3, 0, 0}, std::nullopt, ColourScale::change, 0.5);
    REQUIRE(change);
    CHECK(change->grade.number() == 4.0);
    CHECK(change->cielab == Approx(1.7).margin(1e-9));
    // A pure lightness difference of 4.3, ΔE_GS = 4.3, SSR = 6.1 − 1.45·ln 4.3 = 3.985: grade 4 of ISO 105-A03 (4.3).
    const auto stain = shop::colourFound({95, 0, 0}, {90.7, 0, 0}, std::nullopt, ColourScale::staining, 0.5);
    REQUIRE(stain);
    CHECK(stain->grade.number() == 4.0);
    CHECK(stain->rating == Approx(3.985).margin(5e-4));
    CHECK_FALSE(shop::colourFound({150, 0, 0}, {90, 0, 0}, std::nullopt, ColourScale::change, 0.5));
}

TEST_CASE("repeats of a patch give the shop's own limit, too few do not", "[testing][colour]") {
    CHECK_FALSE(shop::repeatLimit({}, {}).fromRepeats);
    CHECK(shop::repeatLimit({}, {}).value == 1.0); // from memory
    CHECK_FALSE(shop::repeatLimit({{50, 0, 0}, {50.1, 0, 0}}, {{50, 0, 0}}).fromRepeats);
    const std::vector<Lab> patch{{50.0, 0, 0}, {50.1, 0, 0}, {49.9, 0, 0}};
    const auto limit = shop::repeatLimit(patch, patch);
    REQUIRE(limit.fromRepeats);
    // s = 0.1 with 4 degrees of freedom; t(4, 0.975) = 2.776 (NIST/SEMATECH e-Handbook 1.3.6.7.2);
    // 2.776 · 0.1 · √(1/3 + 1/3) = 0.2267.
    CHECK(limit.value == Approx(0.2267).margin(5e-5));
    CHECK(shop::meanOf(patch)->l == Approx(50.0).margin(1e-9));
    CHECK_FALSE(shop::meanOf({}));
}

TEST_CASE("patches show the screen's own colours where they are known", "[testing][colour]") {
    const auto near = [](const shop::PatchColour& patch, int red, int green, int blue) {
        INFO(patch.red << ' ' << patch.green << ' ' << patch.blue);
        return std::abs(patch.red - red) <= 1 && std::abs(patch.green - green) <= 1 && std::abs(patch.blue - blue) <= 1;
    };
    CHECK(near(shop::patchOf({100, 0, 0}), 255, 255, 255));
    CHECK(near(shop::patchOf({0, 0, 0}), 0, 0, 0));
    // sRGB primaries in CIELAB under D65 (IEC 61966-2-1; figures to four places from memory).
    CHECK(near(shop::patchOf({53.2329, 80.1093, 67.2201}), 255, 0, 0));
    CHECK(near(shop::patchOf({87.7370, -86.1846, 83.1812}), 0, 255, 0));
    CHECK(near(shop::patchOf({32.3026, 79.1967, -107.8637}), 0, 0, 255));
    CHECK(near(shop::patchOf({53.585, 0, 0}), 128, 128, 128)); // middle grey of sRGB, from memory
    CHECK_FALSE(shop::patchOf({53.585, 0, 0}).clipped);
    CHECK(shop::patchOf({50, 100, -100}).clipped); // no screen shows it; what is nearest is drawn
}
