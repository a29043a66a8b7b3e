#include "window_support.hpp"

// Hand-worked examples; the rules are those of decisions 1, Ways out.
using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

namespace {

std::vector<std::string> targets(const RunWindow& window) {
    std::vector<std::string> found;
    for (const auto& way : window.waysOut) {
        std::string text;
        for (const auto& change : way.changes) {
            text += std::to_string(change.position) + ":" + change.to + " ";
        }
        found.push_back(text + way.instrument.value_or(""));
    }
    return found;
}

using Targets = std::vector<std::string>;

} // namespace

TEST_CASE("only sound families of the same chemistry with enough resistance are offered", "[cure][ways]") {
    const auto fabric = plainCloth(c(170), c(150), BleedResistance::low);
    auto weak = ink("weak", c(140));
    weak.bleedResistance = BleedResistance::none;
    auto just = ink("just", c(140));
    just.bleedResistance = BleedResistance::low;
    auto other = ink("other", c(140));
    other.chemistry = Chemistry::waterBased;
    const auto faulty = withCeiling(ink("faulty", c(140)), c(130));
    const Choices choices{{weak, just, other, faulty, ink("hot", c(149))}, {}};
    const auto white = open(windowWithWaysOut({{layer("white", ink("now", c(160)))}, fabric}, nullptr, choices));
    CHECK(targets(white) == Targets{"1:just "});
    // Black has no need, but without an at-risk layer nothing is closed; beside a white it is.
    const auto black =
        open(windowWithWaysOut({{layer("black", ink("now", c(160))), layer("white", just)}, fabric}, nullptr, choices));
    CHECK(targets(black) == Targets{"1:just ", "1:weak "});
}

TEST_CASE("a newer revision of the same family is no way out, and old revisions are not offered", "[cure][ways]") {
    auto cooler = ink("now", c(140));
    cooler.revision = 2;
    auto old = ink("other", c(140));
    auto renewed = ink("other", c(165));
    renewed.revision = 2;
    const RunPlan plan{{layer("a", ink("now", c(180)))}, plainCloth(c(170))};
    const auto window = open(windowWithWaysOut(plan, nullptr, {{cooler, old, renewed}, {}}));
    REQUIRE(targets(window) == Targets{"1:other "});
    CHECK(window.waysOut[0].lower == c(165));
}

TEST_CASE("the smallest number of layers counts, all of that size are given", "[cure][ways]") {
    // Layer 1 holds the ceiling 150, layer 2 asks 160: either may give way.
    const RunPlan plan{{layer("a", withCeiling(ink("tender", c(130)), c(150))), layer("b", ink("hot", c(160)))},
                       plainCloth(c(180))};
    const auto window = open(windowWithWaysOut(plan, nullptr, {{ink("cool", c(140)), ink("plain", c(155))}, {}}));
    // Widths: 1→cool 180−160=20, 1→plain 20, 2→cool 150−140=10; 2→plain stays closed.
    CHECK(targets(window) == Targets{"1:cool ", "1:plain ", "2:cool "});
    CHECK(window.waysOut[0].upper == c(180));
    CHECK(window.waysOut[2].upper == c(150));
    CHECK(window.waysOut[2].lower == c(140));
}

TEST_CASE("ways are sorted by ease first, then width, then name", "[cure][ways]") {
    const RunPlan plan{{layer("a", ink("now", c(180)))}, plainCloth(c(170))};
    const Choices choices{{ink("b", c(150), 1), ink("a", c(150), 1), ink("wide", c(140), 1), ink("z easy", c(169), 0),
                           ink("costly", c(100), 2)},
                          {}};
    CHECK(targets(open(windowWithWaysOut(plan, nullptr, choices))) ==
          Targets{"1:z easy ", "1:wide ", "1:a ", "1:b ", "1:costly "});
}

TEST_CASE("the worst ease comes before the sum of ease", "[cure][ways]") {
    // Position 1 may take p(3) or q(1), position 2 r(2) or s(3) (need of white: high; black: none).
    auto q = ink("q", c(140), 1);
    q.bleedResistance = BleedResistance::none;
    const RunPlan plan{{layer("black", ink("now", c(180))), layer("white", ink("now", c(180)))},
                       plainCloth(c(170), c(160), BleedResistance::high)};
    const auto window = open(windowWithWaysOut(plan, nullptr, {{q, ink("r", c(140), 2), ink("s", c(140), 3)}, {}}));
    // (worst, sum): q r (2,3), r r (2,4), q s (3,4), r s (3,5), s r (3,5), s s (3,6); equal ones by name.
    CHECK(targets(window) == Targets{"1:q 2:r ", "1:r 2:r ", "1:q 2:s ", "1:r 2:s ", "1:s 2:r ", "1:s 2:s "});
}

TEST_CASE("bleed provable comes before ease", "[cure][ways]") {
    // g = 3, bleed 150: C ≤ 144 is provable, up to 148 only open.
    const auto probe = withGuard(InstrumentKind::probe, k(3));
    const RunPlan plan{{layer("white", ink("now", c(160)))}, plainCloth(c(180), c(150), BleedResistance::high)};
    const auto window = open(windowWithWaysOut(
        plan, &probe, {{ink("easy", c(147), 1), ink("hard", c(144), 9), ink("closed", c(148.5), 0)}, {}}));
    CHECK(targets(window) == Targets{"1:hard ", "1:easy "});
    CHECK(window.waysOut[0].bleedProvable);
    CHECK_FALSE(window.waysOut[1].bleedProvable);
}

TEST_CASE("another instrument in date is a change of size one and changes no layer", "[cure][ways]") {
    const auto coarse = withGuard(InstrumentKind::probe, k(6), "coarse");
    const auto fine = withGuard(InstrumentKind::probe, k(2), "fine");
    const auto gun = withGuard(InstrumentKind::gun, k(1), "gun");
    Instrument lapsed = fine.instrument();
    lapsed.name = "lapsed";
    lapsed.checks.clear();
    const RunPlan plan{{layer("a", ink("now", c(160)))}, plainCloth(c(170))};
    const Choices choices{{ink("cool", c(150))}, {coarse, gun, Calibration{lapsed, kToday}, fine}};
    const auto window = open(windowWithWaysOut(plan, &coarse, choices));
    CHECK(window.state == WindowState::notProvable);
    CHECK(window.couldProve == std::vector<std::string>{"fine"});
    CHECK(targets(window) == Targets{"fine", "1:cool "});
}

TEST_CASE("an instrument is changed together with a layer where neither is enough", "[cure][ways]") {
    // closed at 175; at 160 the coarse guard (6 + 6 > 10) is too wide.
    const auto coarse = withGuard(InstrumentKind::probe, k(6), "coarse");
    const auto fine = withGuard(InstrumentKind::probe, k(2), "fine");
    const RunPlan plan{{layer("a", ink("now", c(175)))}, plainCloth(c(170))};
    const auto window = open(windowWithWaysOut(plan, &coarse, {{ink("cool", c(160))}, {fine}}));
    CHECK(targets(window) == Targets{"1:cool fine"});
    CHECK(window.couldProve.empty()); // a closed window is not the instrument's fault
}

TEST_CASE("without an instrument none is offered", "[cure][ways]") {
    const auto fine = withGuard(InstrumentKind::probe, k(2), "fine");
    const RunPlan plan{{layer("a", ink("now", c(175)))}, plainCloth(c(170))};
    CHECK(targets(open(windowWithWaysOut(plan, nullptr, {{ink("cool", c(160))}, {fine}}))) == Targets{"1:cool "});
}

TEST_CASE("holds are ways out of a strip only by giving them up", "[cure][ways]") {
    auto held = ink("held", c(150));
    held.hold = Duration{60};
    const auto steps = strip({c(145), c(153), c(160), c(170)}, k(1), k(1));
    const auto probe = withGuard(InstrumentKind::probe, k(2), "probe");
    const RunPlan plan{{layer("a", held)}, plainCloth(c(190))};
    const auto window = open(windowWithWaysOut(plan, &steps, {{ink("quick", c(150))}, {probe}}));
    CHECK(targets(window) == Targets{"probe", "1:quick "});
}

TEST_CASE("at most twenty ways are shown and the rest is counted", "[cure][ways]") {
    std::vector<InkFamily> families;
    for (int i = 0; i < 25; ++i) {
        families.push_back(ink("family " + std::string(1, static_cast<char>('a' + i)), c(150)));
    }
    const RunPlan plan{{layer("a", ink("now", c(180)))}, plainCloth(c(170))};
    const auto window = open(windowWithWaysOut(plan, nullptr, {families, {}}));
    REQUIRE(window.waysOut.size() == 20);
    CHECK(window.waysOutLeftOut == 5);
    CHECK(window.waysOut.front().changes[0].to == "family a");
    CHECK(window.waysOut.back().changes[0].to == "family t");
}

TEST_CASE("ways too many to write out are still counted and put in order", "[cure][ways]") {
    // Twelve layers that must all change, two families each: 2^12 ways; with thirty, 30^12 > the largest int.
    std::vector<InkFamily> families{ink("a", c(150), 1), ink("b", c(140), 1)};
    const RunPlan plan{std::vector<Layer>(12, layer("a", ink("now", c(180)))), plainCloth(c(170))};
    auto window = open(windowWithWaysOut(plan, nullptr, {families, {}}));
    CHECK(window.waysOut.size() == 20);
    CHECK(window.waysOutLeftOut == 4096 - 20);
    CHECK(window.waysOut[0].lower == c(140)); // all b is the only one 30 °C wide
    CHECK(window.waysOut[1].changes[0].to == "a");
    CHECK(window.waysOut[1].changes[11].to == "a");
    CHECK(window.waysOut[2].changes[11].to == "b");
    for (int i = 2; i < 30; ++i) {
        families.push_back(ink("f" + std::to_string(i), c(150), i));
    }
    window = open(windowWithWaysOut(plan, nullptr, {families, {}}));
    CHECK(window.waysOut.size() == 20);
    CHECK(window.waysOutLeftOut == std::numeric_limits<int>::max());
}

TEST_CASE("a mix may be given up for one of its own families", "[cure][ways]") {
    const auto cool = ink("cool", c(150));
    const auto mix = mixInks("topped up", {{pureInk(cool), 1}, {pureInk(ink("hot", c(180))), 1}});
    const auto window = open(windowWithWaysOut({{{"a", *mix, {}}}, plainCloth(c(170))}, nullptr, {{cool}, {}}));
    REQUIRE(targets(window) == Targets{"1:cool "});
    CHECK(window.waysOut[0].changes[0].from == "topped up");
}

TEST_CASE("nothing to choose from is no way out", "[cure][ways]") {
    const RunPlan plan{{layer("a", ink("now", c(180)))}, plainCloth(c(170))};
    const auto window = open(windowWithWaysOut(plan, nullptr, {}));
    CHECK(window.waysOut.empty());
    CHECK(window.waysOutLeftOut == 0);
}
