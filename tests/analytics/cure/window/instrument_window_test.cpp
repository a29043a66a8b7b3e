#include "window_support.hpp"

#include <limits>

// Hand-worked examples; the rules are those of decisions 1, 2 and 4.
using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

namespace {

RunWindow windowAt(double cure, const Fabric& fabric, const Calibration& instrument) {
    return open(windowOf({{layer("white", ink("i", c(cure)))}, fabric}, &instrument));
}

} // namespace

TEST_CASE("a probe proves a window if its guards leave room for one reading", "[cure][window][instrument]") {
    const auto probe = withGuard(InstrumentKind::probe, k(3));
    const auto window = windowAt(160, plainCloth(c(170)), probe);
    CHECK(window.state == WindowState::open);
    CHECK(window.layers[0].cure.guard.celsius() == Approx(3));
    CHECK(window.upperHard->guard.celsius() == Approx(3));
    REQUIRE(window.acceptance.has_value());
    CHECK(window.acceptance->low.celsius() == Approx(163));
    CHECK(window.acceptance->high->celsius() == Approx(167));
    CHECK(window.aim->celsius() == Approx(165)); // middle of [163, 167], below 160 + 2.5 · 3
    CHECK(window.aimIsMiddle);
    CHECK_FALSE(window.narrow);
    CHECK(windowAt(160, plainCloth(c(167.9)), probe).narrow);                        // 1.9 °C of room
    CHECK(windowAt(160, plainCloth(c(190)), probe).aim->celsius() == Approx(167.5)); // L + 2.5 g
    CHECK_FALSE(windowAt(160, plainCloth(c(190)), probe).aimIsMiddle);
}

TEST_CASE("a guard too wide is told with both ends, and blames layer and fabric", "[cure][window][instrument]") {
    const auto window = windowAt(160, plainCloth(c(165.9)), withGuard(InstrumentKind::probe, k(3)));
    REQUIRE(window.state == WindowState::notProvable);
    REQUIRE(window.whyNotProvable.size() == 1);
    const auto& why = window.whyNotProvable[0];
    CHECK(why.code == ReasonCode::guardTooWide);
    CHECK(why.value->celsius() == Approx(163));
    CHECK(why.limit->celsius() == Approx(162.9));
    CHECK(why.guard->celsius() == Approx(3));
    CHECK(blames(window, CulpritSide::below, 1));
    CHECK(blames(window, CulpritSide::above, std::nullopt));
    CHECK_FALSE(window.aim);
}

TEST_CASE("culprits of a window without room for the guards count the guards", "[cure][window][instrument]") {
    // lower 160, upper 165, g = 3: below C > 165 − 6 = 159, above ceiling < 160 + 6 = 166.
    const RunPlan plan{{layer("a", withCeiling(ink("a", c(158.9)), c(165.5))), layer("b", ink("b", c(159.5))),
                        layer("c", withCeiling(ink("c", c(160)), c(166.5)))},
                       plainCloth(c(165))};
    const auto probe = withGuard(InstrumentKind::probe, k(3));
    const auto window = open(windowOf(plan, &probe));
    REQUIRE(window.state == WindowState::notProvable);
    CHECK(window.culprits.size() == 4);
    CHECK(blames(window, CulpritSide::below, 2));
    CHECK(blames(window, CulpritSide::below, 3));
    CHECK(blames(window, CulpritSide::above, 1));
    CHECK(blames(window, CulpritSide::above, std::nullopt));
}

TEST_CASE("closed does not ask for guards", "[cure][window][instrument]") {
    const auto window = windowAt(171, plainCloth(c(170)), withGuard(InstrumentKind::probe, k(30)));
    CHECK(window.state == WindowState::closed);
    CHECK(window.whyNotProvable.empty());
}

TEST_CASE("a bleed ceiling too near for the guards only leaves bleed not provable", "[cure][window][instrument]") {
    // g = 3: 140 + 3 > 145 − 3, hard ceiling far.
    const auto fabric = plainCloth(c(170), c(145), BleedResistance::high);
    const auto window = windowAt(140, fabric, withGuard(InstrumentKind::probe, k(3)));
    CHECK(window.state == WindowState::open);
    CHECK(window.bleedNotProvable);
    CHECK_FALSE(window.narrow);
    CHECK(window.aim->celsius() == Approx(144.5)); // L + 1.5 g
    CHECK(window.advice == std::vector{Advice::printWithBleedWatch});
    CHECK_FALSE(windowAt(140, plainCloth(c(170), c(146), BleedResistance::high), withGuard(InstrumentKind::probe, k(3)))
                    .bleedNotProvable);
}

TEST_CASE("pairs take their guard at the hotter temperature", "[cure][window][instrument]") {
    // IEC 60584-1 class 2, type K: 0.0075·|t| above 333 °C; here ASTM-like growth is shown by a class 1 probe: 1.5 °C
    // up to 375 °C, 0.004·|t| above. T2 = 200 °C, T1 = 500 °C: a = 2.0 at T1, u² = 4/3 + 1.5², g = 1.6449·1.8930
    // = 3.1137.
    Instrument instrument;
    instrument.name = "probe";
    instrument.type = ThermocoupleType::k;
    instrument.toleranceClass = ToleranceClass::iecClass1;
    instrument.checks = {{CheckKind::ice, true, kToday, kToday}};
    const Calibration probe{instrument, kToday};
    const auto paired = withPairs(ink("p", c(200)), {Duration{5}, c(500)}, {Duration{60}, c(200)});
    const auto window = open(windowOf({{layer("a", paired)}, plainCloth(std::nullopt)}, &probe));
    CHECK(window.layers[0].cure.limit == c(200));
    CHECK(window.layers[0].cure.guard.celsius() == Approx(3.1137).margin(5e-5));
    // Without pairs, at 200 °C: a = 1.5, u² = 0.75 + 2.25 = 3, g = 1.64485·√3 = 2.8490.
    const auto plain = open(windowOf({{layer("a", ink("i", c(200)))}, plainCloth(std::nullopt)}, &probe));
    CHECK(plain.layers[0].cure.guard.celsius() == Approx(2.8490).margin(5e-5));
}

TEST_CASE("a film that can only be proven where it is overheated for bleed cannot be proven",
          "[cure][window][instrument]") {
    // Two like certificates with points at 140 and 146 °C: guard 0 there; at T1 = 190 °C no point is near, so
    // c² = a²/3 with a = 12 and g = 1.6449 · 6.9282 = 11.396. Lowest reading 140 + 11.4, above the bleed ceiling of
    // 143.
    auto instrument = withGuard(InstrumentKind::probe, k(0)).instrument();
    instrument.statedTolerance = k(12);
    const std::vector<CalibrationPoint> points{{c(140), k(0), k(0)}, {c(146), k(0), k(0)}};
    instrument.certificates = {{kToday - std::chrono::days{1}, kToday, 2.0, points}, {kToday, kToday, 2.0, points}};
    const Calibration probe{instrument, kToday};
    const auto paired = withPairs(ink("p", c(150)), {Duration{20}, c(190)}, {Duration{60}, c(140)});
    const auto on = [&](double bleed) {
        return open(
            windowOf({{layer("white", paired)}, plainCloth(std::nullopt, c(bleed), BleedResistance::high)}, &probe));
    };
    CHECK(on(143).state == WindowState::notProvable);
    CHECK(on(143).whyNotProvable.at(0).value->celsius() == Approx(151.396).margin(5e-4));
    CHECK(on(143).whyNotProvable.at(0).limit->celsius() == Approx(143).margin(1e-9));
    CHECK(on(151.3).state == WindowState::notProvable);
    CHECK(on(151.5).state == WindowState::open);
}

TEST_CASE("a held maximum needs its shortfall of room besides", "[cure][window][instrument]") {
    const auto spot = withGuard(InstrumentKind::spot, k(1), "spot");
    // Reading − 1.5 ≥ 150 + 1 and reading ≤ H − 1: H ≥ 153.5.
    CHECK(windowAt(150, plainCloth(c(153.5)), spot).state == WindowState::open);
    const auto tight = windowAt(150, plainCloth(c(153.4)), spot);
    CHECK(tight.state == WindowState::notProvable);
    CHECK(names(tight.whyNotProvable, ReasonCode::guardTooWide));
    CHECK(windowAt(150, plainCloth(c(153.4)), withGuard(InstrumentKind::probe, k(1))).state == WindowState::open);
}

TEST_CASE("holds and doses need a trace", "[cure][window][instrument]") {
    auto held = ink("held", c(150));
    held.hold = Duration{30};
    const auto paired = withPairs(ink("paired", c(150)), {Duration{20}, c(165)}, {Duration{60}, c(145)});
    const RunPlan plan{{layer("a", held), layer("b", paired)}, plainCloth(c(190))};
    const auto sees = [&](const Calibration& instrument) { return open(windowOf(plan, &instrument)); };
    CHECK(sees(withGuard(InstrumentKind::probe, k(2))).state == WindowState::open);
    for (const auto& blind :
         {withGuard(InstrumentKind::spot, k(2)), strip({c(145), c(150), c(160), c(165), c(170)}, k(1), k(1))}) {
        const auto window = sees(blind);
        REQUIRE(window.state == WindowState::notProvable);
        REQUIRE(window.whyNotProvable.size() == 2);
        CHECK(window.whyNotProvable[0].code == ReasonCode::holdNeedsTrace);
        CHECK(window.whyNotProvable[0].layer == 1);
        CHECK(window.whyNotProvable[0].needed == Duration{30});
        CHECK(window.whyNotProvable[1].code == ReasonCode::doseNeedsTrace);
        CHECK(window.whyNotProvable[1].layer == 2);
        CHECK(window.culprits.empty()); // the limits are not to blame
    }
}

TEST_CASE("a gun never proves cured", "[cure][window][instrument]") {
    const auto window = windowAt(150, plainCloth(c(190)), withGuard(InstrumentKind::gun, k(1), "gun"));
    CHECK(window.state == WindowState::notProvable);
    CHECK(names(window.whyNotProvable, ReasonCode::surfaceOnly));
    CHECK(window.culprits.empty());
}

TEST_CASE("an instrument that may prove nothing today says why, once", "[cure][window][instrument]") {
    Instrument instrument;
    instrument.name = "unchecked";
    instrument.statedTolerance = k(1);
    const Calibration unchecked{instrument, kToday};
    const auto two =
        open(windowOf({{layer("a", ink("i", c(150))), layer("b", ink("j", c(140)))}, plainCloth(c(190))}, &unchecked));
    REQUIRE(two.state == WindowState::notProvable);
    REQUIRE(two.whyNotProvable.size() == 1);
    CHECK(two.whyNotProvable[0].code == ReasonCode::noCertificateOrCheckInDate);
    CHECK(two.whyNotProvable[0].subject == "unchecked");

    instrument.checks = {{CheckKind::ice, true, kToday, kToday}};
    instrument.statedTolerance.reset();
    CHECK(names(windowAt(150, plainCloth(c(190)), Calibration{instrument, kToday}).whyNotProvable,
                ReasonCode::noToleranceKnown));

    // A correction of 2 °C against a tolerance of 1 °C, with its only point 50 °C away from every limit.
    instrument.statedTolerance = k(1);
    instrument.certificates = {{kToday, kToday, 2.0, {{c(100), k(2), k(0.5)}}}};
    CHECK(names(windowAt(150, plainCloth(c(190)), Calibration{instrument, kToday}).whyNotProvable,
                ReasonCode::correctionBeyondClass));
    // Near the cure but not near the hard ceiling, that ceiling cannot be shown kept either.
    CHECK(names(windowAt(120, plainCloth(c(190)), Calibration{instrument, kToday}).whyNotProvable,
                ReasonCode::correctionBeyondClass));
    CHECK(windowAt(120, plainCloth(std::nullopt), Calibration{instrument, kToday}).state == WindowState::open);
}

TEST_CASE("a strip past its expiry proves nothing", "[cure][window][instrument]") {
    Instrument instrument;
    instrument.name = "old strip";
    instrument.kind = InstrumentKind::strip;
    instrument.strip = StripSteps{{c(145), c(155), c(165)}, k(1), kToday - std::chrono::days{1}};
    instrument.ownPlacement = k(0);
    const auto window = windowAt(140, plainCloth(c(190)), Calibration{instrument, kToday});
    CHECK(window.state == WindowState::notProvable);
    CHECK(names(window.whyNotProvable, ReasonCode::stripExpired));
}

TEST_CASE("a strip proves a window if two neighbouring steps fit into it", "[cure][window][instrument]") {
    // δ = 1, z·u_p = 1: edges lo = step − 2, hi = next step + 2. L = 140.
    const auto steps = strip({c(135), c(142), c(148), c(154), c(160)}, k(1), k(1));
    // 142 dark, 148 light: lo = 140 ≥ L, hi = 150 ≤ H.
    const auto fits = windowAt(140, plainCloth(c(150)), steps);
    REQUIRE(fits.state == WindowState::open);
    CHECK(fits.readByStrip);
    CHECK_FALSE(fits.acceptance);
    REQUIRE(fits.acceptedSteps.size() == 1);
    CHECK(fits.acceptedSteps[0] == AcceptedSteps{c(142), c(148), true});
    CHECK(fits.layers[0].cure.guard.celsius() == Approx(2));

    const auto tooHigh = windowAt(140.1, plainCloth(c(150)), steps);
    REQUIRE(tooHigh.state == WindowState::notProvable);
    CHECK(tooHigh.whyNotProvable[0].code == ReasonCode::stripStepsDoNotFit);
    CHECK(tooHigh.whyNotProvable[0].value == c(140.1));
    CHECK(tooHigh.whyNotProvable[0].limit == c(150));
    CHECK(windowAt(140, plainCloth(c(149.9)), steps).state == WindowState::notProvable);

    // Bleed at 150: 142/148 shows it kept; at 149 nothing does; a dark step with lo ≥ bleed would be overheated.
    const auto bleed = windowAt(140, plainCloth(c(170), c(150), BleedResistance::high), steps);
    CHECK_FALSE(bleed.bleedNotProvable);
    CHECK(bleed.acceptedSteps.size() == 2); // also 148/154: lo = 146 < 150, bleed not ruled out
    CHECK(windowAt(140, plainCloth(c(170), c(149), BleedResistance::high), steps).bleedNotProvable);

    // Without a hard ceiling the top step may be dark: lo = 158.
    const auto top = windowAt(157, plainCloth(std::nullopt), steps);
    REQUIRE(top.state == WindowState::open);
    REQUIRE(top.acceptedSteps.size() == 1);
    CHECK_FALSE(top.acceptedSteps[0].light);
    CHECK(windowAt(157, plainCloth(c(500)), steps).state == WindowState::notProvable);
}

TEST_CASE("an instrument whose range ends below the window cannot prove it", "[cure][window][instrument]") {
    auto instrument = withGuard(InstrumentKind::probe, k(2)).instrument();
    instrument.range = MeasuringRange{c(-50), c(152)};
    CHECK(windowAt(150, plainCloth(c(190)), Calibration{instrument, kToday}).state == WindowState::open);
    instrument.range = MeasuringRange{c(-50), c(151.9)};
    const auto window = windowAt(150, plainCloth(c(190)), Calibration{instrument, kToday});
    REQUIRE(window.state == WindowState::notProvable);
    REQUIRE(window.whyNotProvable.size() == 1);
    CHECK(window.whyNotProvable[0].code == ReasonCode::instrumentRangeTooShort);
    CHECK(window.whyNotProvable[0].value->celsius() == Approx(152));
    CHECK(window.whyNotProvable[0].limit->celsius() == Approx(151.9));
}

TEST_CASE("a risk no guard can be made of proves nothing", "[cure][window][instrument]") {
    const auto probe = withGuard(InstrumentKind::probe, k(2));
    const double bad = GENERATE(0.0, 1.0, -1.0, std::numeric_limits<double>::quiet_NaN());
    const auto window = open(windowOf({{layer("white", ink("i", c(150)))}, plainCloth(c(190))}, &probe,
                                      GuardSetting{Probability::fromFraction(bad)}));
    CHECK(window.state == WindowState::notProvable);
    CHECK_FALSE(window.whyNotProvable.empty());
}

TEST_CASE("the shop's own settings replace those from memory", "[cure][window][instrument]") {
    const RunPlan plan{{layer("white", ink("i", c(140)))}, plainCloth(c(170), c(143), BleedResistance::high)};
    WindowRules rules;
    CHECK(open(windowOf(plan, nullptr, {}, rules)).state == WindowState::open);
    rules.leastBleedRoom = k(4);
    CHECK(open(windowOf(plan, nullptr, {}, rules)).state == WindowState::closed);
    rules.leastBleedRoom = k(1);
    rules.narrowBelow = k(3.5);
    CHECK(open(windowOf(plan, nullptr, {}, rules)).narrow);
}
