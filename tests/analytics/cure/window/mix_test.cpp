#include "window_support.hpp"

#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

namespace {

Ink mixed(const std::vector<MixPart>& parts, const std::string& name = "mix") {
    auto ink = mixInks(name, parts);
    REQUIRE(ink.has_value());
    return *ink;
}

} // namespace

TEST_CASE("a mix is as low-cure and as resistant as its most demanding part", "[cure][mix]") {
    // Common practice (job.md): low-cure plus standard cures at 320 °F and keeps the bleed resistance of its weakest
    // part.
    const auto ink = mixed({{pureInk(starter("low-cure")), 900}, {pureInk(starter("standard")), 1}}, "topped up");
    CHECK(ink.isMix());
    CHECK(ink.name == "topped up");
    CHECK(ink.requirement.name == "topped up");
    CHECK(ink.requirement.cure.fahrenheit() == Approx(320));
    CHECK(ink.requirement.bleedResistance == BleedResistance::none);
    CHECK(ink.requirement.gel->low.fahrenheit() == Approx(280)); // decisions 1: g_lo, g_hi = max
    CHECK(ink.parts.size() == 2);
}

TEST_CASE("every property of a mix is the stricter one", "[cure][mix]") {
    // decisions 1, Mix
    auto a = withCeiling(ink("a", f(300), 4), f(350));
    a.gel = GelRange{f(250), f(290)};
    a.hold = Duration{30};
    a.unbroken = true;
    a.potLife = Duration{7200};
    a.additiveBand = AdditiveBand{0.01, 0.05};
    a.mark = Mark::standard;
    a.source = "sheet a";
    auto b = withCeiling(ink("b", f(310), 2), f(340));
    b.gel = GelRange{f(260), f(280)};
    b.hold = Duration{20};
    b.bleedResistance = BleedResistance::low;
    b.restBeforeTest = Duration{86400};
    b.additiveBand = AdditiveBand{0.03, 0.08};
    b.mark = Mark::dataSheet;
    b.source = "sheet b";
    const auto whole = mixed({{pureInk(a), 1}, {pureInk(b), 1}}).requirement;
    CHECK(whole.cure == f(310));
    CHECK(whole.hold == Duration{30});
    CHECK(whole.gel->low == f(260));
    CHECK(whole.gel->high == f(290));
    CHECK(whole.ceiling == f(340));
    CHECK(whole.bleedResistance == BleedResistance::low);
    CHECK(whole.unbroken);
    CHECK(whole.potLife == Duration{7200});
    CHECK(whole.restBeforeTest == Duration{86400});
    CHECK(whole.additiveBand->low == 0.03);
    CHECK(whole.additiveBand->high == 0.05);
    CHECK(whole.ease == 4);
    CHECK(whole.mark == Mark::dataSheet);
    CHECK(whole.source == "sheet a; sheet b");
}

TEST_CASE("additive bands that exclude each other leave no band", "[cure][mix]") {
    auto a = ink("a", f(300));
    a.additiveBand = AdditiveBand{0.01, 0.02};
    auto b = ink("b", f(300));
    b.additiveBand = AdditiveBand{0.03, 0.05};
    const auto apart = mixed({{pureInk(a), 1}, {pureInk(b), 1}});
    CHECK(apart.additiveBandsExclude());
    CHECK(apart.requirement.additiveBand->low > apart.requirement.additiveBand->high);
    CHECK(windowOf({{{"white", apart, {}}}, plainCloth(f(350))}).has_value());
    b.additiveBand = AdditiveBand{0.02, 0.05};
    CHECK_FALSE(mixed({{pureInk(a), 1}, {pureInk(b), 1}}).additiveBandsExclude());
    CHECK_FALSE(pureInk(a).additiveBandsExclude());
}

TEST_CASE("pairs stay only if every part has the same", "[cure][mix]") {
    const CurePoint hot{Duration{30}, f(330)};
    const CurePoint cool{Duration{90}, f(290)};
    const auto paired = withPairs(ink("paired", f(300)), hot, cool);
    SECTION("the same pairs stay") {
        const auto ink2 = withPairs(ink("twin", f(295)), hot, cool);
        const auto whole = mixed({{pureInk(paired), 1}, {pureInk(ink2), 1}}).requirement;
        REQUIRE(whole.pairs.has_value());
        CHECK(*whole.pairs == *paired.pairs);
    }
    SECTION("otherwise the part counts with its hotter pair, and keeps its own pairs in the parts") {
        const auto plain = ink("plain", f(320));
        const auto mix = mixed({{pureInk(plain), 5}, {pureInk(paired), 1}});
        CHECK_FALSE(mix.requirement.pairs);
        CHECK(mix.requirement.cure == f(330));       // T1
        CHECK(mix.requirement.hold == Duration{30}); // τ1
        CHECK(mix.parts.at(1).pairs.has_value());
    }
    SECTION("different pairs do not stay") {
        const auto other = withPairs(ink("other", f(300)), {Duration{40}, f(325)}, cool);
        const auto whole = mixed({{pureInk(other), 1}, {pureInk(paired), 1}}).requirement;
        CHECK_FALSE(whole.pairs);
        CHECK(whole.cure == f(330));
        CHECK(whole.hold == Duration{40});
    }
}

TEST_CASE("a mix of mixes is the mix of all their parts", "[cure][mix]") {
    const auto standard = pureInk(starter("standard"));
    const auto lowCure = pureInk(starter("low-cure"));
    const auto blend = pureInk(starter("blend"));
    const auto inner = mixed({{lowCure, 1}, {blend, 1}}, "inner");
    const auto outer = mixed({{inner, 2}, {standard, 1}, {lowCure, 3}}, "flat");
    const auto flat = mixed({{lowCure, 1}, {blend, 2}, {standard, 1}}, "flat");
    CHECK(outer.parts == flat.parts); // a family counts once
    CHECK(outer.requirement == flat.requirement);
}

TEST_CASE("a part without mass does not count, and one family alone is pure", "[cure][mix]") {
    const auto mix = mixed({{pureInk(starter("standard")), 0.0}, {pureInk(starter("low-cure")), 1e-9}}, "scraped out");
    CHECK_FALSE(mix.isMix());
    CHECK(mix.name == "scraped out");
    CHECK(mix.requirement == starter("low-cure"));
    CHECK(mixed({{pureInk(starter("water-based")), 0.0}, {pureInk(starter("blend")), 1}}).requirement.cure ==
          starter("blend").cure);
}

TEST_CASE("the order of parts changes nothing that is asked", "[cure][mix]") {
    const auto a = pureInk(starter("standard"));
    const auto b = pureInk(starter("low-cure"));
    auto ab = mixed({{a, 1}, {b, 1}}).requirement;
    auto ba = mixed({{b, 1}, {a, 1}}).requirement;
    ab.source = ba.source = "";
    CHECK(ab == ba);
}

TEST_CASE("masses and chemistries that make no mix are refused", "[cure][mix]") {
    const auto plastisol = pureInk(starter("standard"));
    const auto silicone = pureInk(starter("silicone"));
    const double infinity = std::numeric_limits<double>::infinity();
    const double bad = GENERATE_REF(-1.0, infinity, -infinity, std::numeric_limits<double>::quiet_NaN());
    CHECK(mixInks("m", {{plastisol, 1}, {plastisol, bad}}).error() == MixFault::massNegativeOrNotFinite);
    CHECK(mixInks("m", {}).error() == MixFault::noParts);
    CHECK(mixInks("m", {{plastisol, 0}, {silicone, 0}}).error() == MixFault::noParts);
    CHECK(mixInks("m", {{plastisol, 1}, {silicone, 1}}).error() == MixFault::chemistriesDiffer);
}
