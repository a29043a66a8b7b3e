#include "random_plans.hpp"

using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

namespace {

bool isHigher(const std::optional<Temperature>& a, const std::optional<Temperature>& b) {
    return b && (!a || *a > *b);
}

/// Open < not provable < closed.
int shut(const RunWindow& window) {
    return static_cast<int>(window.state);
}

} // namespace

TEST_CASE("adding a layer never widens a window", "[cure][window][properties]") {
    RandomPlans random{1};
    for (int round = 0; round < 2000; ++round) {
        INFO("round " << round);
        auto plan = random.plan(4);
        const auto before = open(windowOf(plan));
        plan.layers.push_back(random.plan(1).layers.front());
        const auto after = open(windowOf(plan));
        CHECK(after.lower >= before.lower);
        CHECK(after.hold >= before.hold);
        CHECK_FALSE(isHigher(after.upper, before.upper));
        CHECK(shut(after) >= shut(before));
    }
}

TEST_CASE("raising a cure never opens a window that is not", "[cure][window][properties]") {
    RandomPlans random{2};
    int notOpen = 0;
    for (int round = 0; round < 2000; ++round) {
        INFO("round " << round);
        auto plan = random.plan(3);
        const auto probe = withGuard(InstrumentKind::probe, k(random.upTo(8)));
        const auto before = open(windowOf(plan, &probe));
        auto& ink = plan.layers.front().ink;
        if (ink.isMix() || ink.requirement.pairs || ink.requirement.ceiling) {
            continue;
        }
        ink.requirement.cure = ink.requirement.cure + k(1 + random.upTo(20));
        ink.parts.front() = ink.requirement;
        CHECK(shut(open(windowOf(plan, &probe))) >= shut(before));
        notOpen += before.state == WindowState::open ? 0 : 1;
    }
    CHECK(notOpen > 200);
}

TEST_CASE("a larger guard never opens what was not provable, and never changes closed", "[cure][window][properties]") {
    RandomPlans random{3};
    int changed = 0;
    for (int round = 0; round < 2000; ++round) {
        INFO("round " << round);
        const auto plan = random.plan(3);
        const int guard = random.upTo(8);
        const auto finer = withGuard(InstrumentKind::probe, k(guard));
        const auto coarser = withGuard(InstrumentKind::probe, k(guard + 1 + random.upTo(6)));
        const auto fine = open(windowOf(plan, &finer));
        const auto coarse = open(windowOf(plan, &coarser));
        CHECK(shut(coarse) >= shut(fine));
        CHECK((coarse.state == WindowState::closed) == (fine.state == WindowState::closed));
        CHECK((coarse.state == WindowState::closed) == (open(windowOf(plan)).state == WindowState::closed));
        changed += shut(coarse) == shut(fine) ? 0 : 1;
    }
    CHECK(changed > 100);
}

TEST_CASE("a window that is not open has somebody to blame or a reason, an open one has neither",
          "[cure][window][properties]") {
    RandomPlans random{4};
    for (int round = 0; round < 2000; ++round) {
        INFO("round " << round);
        const auto plan = random.plan(4);
        const auto instrument = random.instrument("present");
        const auto window = open(windowOf(plan, &instrument));
        CHECK((window.state == WindowState::notProvable) == !window.whyNotProvable.empty());
        if (window.state == WindowState::open) {
            CHECK(window.culprits.empty());
            REQUIRE(window.aim.has_value());
            CHECK(*window.aim >= window.lower);
            CHECK_FALSE((window.upperHard && *window.aim > window.upperHard->limit));
        } else {
            CHECK((window.state == WindowState::notProvable || !window.culprits.empty()));
            CHECK_FALSE(window.aim);
        }
    }
}

TEST_CASE("the belt of several runs is the window of their layers on the strictest cloth", "[cure][belt][properties]") {
    RandomPlans random{5};
    int open_ = 0;
    for (int round = 0; round < 2000; ++round) {
        INFO("round " << round);
        auto first = random.plan(3);
        auto second = random.plan(3);
        second.fabric = first.fabric;
        const auto probe = withGuard(InstrumentKind::probe, k(random.upTo(4)));
        const auto belt = *intersectionOf({open(windowOf(first, &probe)), open(windowOf(second, &probe))});
        auto joint = first;
        joint.layers.insert(joint.layers.end(), second.layers.begin(), second.layers.end());
        const auto whole = open(windowOf(joint, &probe));
        CHECK(belt.state == whole.state);
        CHECK(belt.lower == whole.lower);
        CHECK(belt.lowerLayer == whole.lowerLayer);
        CHECK(belt.hold == whole.hold);
        CHECK(belt.upper == whole.upper);
        CHECK(belt.narrow == whole.narrow);
        CHECK(belt.bleedNotProvable == whole.bleedNotProvable);
        CHECK(belt.bleeds == whole.bleeds);
        CHECK(belt.culprits.size() == whole.culprits.size());
        REQUIRE(belt.aim.has_value() == whole.aim.has_value());
        if (belt.aim) {
            CHECK(belt.aim->celsius() == Approx(whole.aim->celsius()));
        }
        open_ += whole.state == WindowState::open ? 1 : 0;
    }
    CHECK(open_ > 200);
}
