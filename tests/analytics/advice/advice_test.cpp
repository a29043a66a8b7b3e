// Families and cloths are the starters of contracts.md; what is expected of them is common practice (job.md).
#include "analytics/cure/advice/advice.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast::analytics;

namespace {

Fabric cloth(const std::string& name) {
    for (auto& one : starterFabrics()) {
        if (one.name == name) {
            return one;
        }
    }
    FAIL("no cloth " << name);
    return {};
}

std::vector<std::string> chosen(const PlanAdvice& advice) {
    std::vector<std::string> names;
    for (const auto& layer : advice.layers) {
        names.push_back(layer.choice ? layer.choice->family : "none");
    }
    return names;
}

using Names = std::vector<std::string>;

} // namespace

TEST_CASE("on cotton the easy standard ink is enough", "[advice]") {
    const auto advice = adviseRun(cloth("100% cotton"), "white", {"black", "red"}, starterFamilies());
    CHECK(chosen(advice) == Names{"standard", "standard"});
    REQUIRE(advice.window);
    CHECK(advice.window->lower.fahrenheit() == Approx(320)); // contracts, Starters
    CHECK_FALSE(advice.bleedWatchDue);
    CHECK(advice.layers[0].choice->cost.harderBy == 0);
}

TEST_CASE("on red polyester white needs low-cure, black is easiest in blend", "[advice]") {
    // The classic trap of job.md: a standard black beside a low-cure white leaves no window under 300 °F.
    const auto advice = adviseRun(cloth("100% polyester"), "red", {"white", "black", "yellow"}, starterFamilies());
    CHECK(chosen(advice) == Names{"low-cure", "blend", "low-cure"});
    REQUIRE(advice.window);
    CHECK(advice.window->state == WindowState::open);
    CHECK(advice.window->lower.fahrenheit() == Approx(285)); // contracts, Starters
    CHECK(advice.window->upper->fahrenheit() == Approx(300));
    CHECK_FALSE(advice.bleedWatchDue);
    CHECK(advice.layers[0].choice->cost.harderBy == 2);
    REQUIRE(advice.layers[1].others.size() == 1); // standard would close it
    CHECK(advice.layers[1].others[0].family == "low-cure");
}

TEST_CASE("a bright colour on a dark garment gets a white under it, black does not", "[advice]") {
    const auto gold = adviseRun(cloth("50/50 blend"), "navy", {"gold"}, starterFamilies());
    REQUIRE(gold.layers.size() == 2); // job.md: bright colours on a dark garment need a white underbase
    CHECK(gold.layers[0].underbase);
    CHECK(gold.layers[0].colour == "white");
    REQUIRE(gold.layers[0].flash);
    CHECK(gold.layers[0].flash->low.fahrenheit() == Approx(250)); // contracts, Starters: blend 250–260
    CHECK_FALSE(gold.layers[1].flash);                            // the last layer is not flashed
    CHECK(adviseRun(cloth("50/50 blend"), "navy", {"black"}, starterFamilies()).layers.size() == 1);
    CHECK(adviseRun(cloth("50/50 blend"), "navy", {"white", "gold"}, starterFamilies()).layers.size() == 2);
    CHECK(adviseRun(cloth("50/50 blend"), "", {"gold"}, starterFamilies()).layers.size() == 1);
    CHECK(adviseRun(cloth("50/50 blend"), "white", {"gold"}, starterFamilies()).layers.size() == 1);
}

TEST_CASE("where no ink resists enough, what opens the window is named with a bleed watch", "[advice]") {
    auto families = starterFamilies();
    families.erase(std::remove_if(families.begin(), families.end(),
                                  [](const auto& one) { return one.bleedResistance == BleedResistance::high; }),
                   families.end());
    const auto advice = adviseRun(cloth("100% polyester"), "red", {"white"}, families);
    CHECK(chosen(advice) == Names{"blend"});
    CHECK(advice.bleedWatchDue);
}

TEST_CASE("no ink, no colour, faulty inks: no choice is invented", "[advice]") {
    CHECK(adviseRun(cloth("100% cotton"), "red", {}, starterFamilies()).layers.empty());
    const auto none = adviseRun(cloth("100% cotton"), "red", {"white"}, {});
    REQUIRE(none.layers.size() == 1);
    CHECK_FALSE(none.layers[0].choice);
    CHECK_FALSE(none.window);
    auto faulty = starterFamilies();
    for (auto& family : faulty) {
        family.ceiling = Temperature::fromCelsius(20); // below its cure
    }
    CHECK_FALSE(adviseRun(cloth("100% cotton"), "red", {"white"}, faulty).layers[0].choice);
    Fabric cold = cloth("100% cotton");
    cold.hardCeiling = Temperature::fromCelsius(60);
    CHECK_FALSE(adviseRun(cold, "red", {"white"}, starterFamilies()).layers[0].choice);
}

TEST_CASE("no other combination of one chemistry is easier", "[advice]") {
    // By exhaustion over all combinations of two layers.
    for (const auto& fabric : starterFabrics()) {
        const auto families = starterFamilies();
        const auto advice = adviseRun(fabric, "white", {"white", "black"}, families);
        int best = 1'000;
        for (const auto& one : families) {
            for (const auto& other : families) {
                RunPlan plan{{{"white", pureInk(one), std::nullopt}, {"black", pureInk(other), std::nullopt}}, fabric};
                const auto window = windowOf(plan);
                const bool enough =
                    one.bleedResistance >= fabric.needOf("white") && other.bleedResistance >= fabric.needOf("black");
                if (one.chemistry == other.chemistry && enough && window && window->state == WindowState::open) {
                    best = std::min(best, 100 * std::max(one.ease, other.ease) + one.ease + other.ease);
                }
            }
        }
        int found = 0;
        int sum = 0;
        for (const auto& layer : advice.layers) {
            const auto family = std::find_if(families.begin(), families.end(), [&](const auto& one) {
                return layer.choice && one.name == layer.choice->family;
            });
            REQUIRE(family != families.end());
            found = std::max(found, family->ease);
            sum += family->ease;
        }
        INFO(fabric.name);
        CHECK(100 * found + sum == best);
    }
}
