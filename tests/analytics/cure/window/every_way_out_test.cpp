#include "random_plans.hpp"

#include <limits>
#include <map>
#include <tuple>

// The search against writing out every assignment of families and instruments and asking windowOf about each
// (decisions 1, Ways out: all of the smallest size, the order, at most 20).
using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

namespace {

struct Found final {
    std::vector<LayerChange> changes;
    std::optional<std::string> instrument;
    RunWindow window;
    std::vector<int> eases;
    [[nodiscard]] std::size_t size() const { return changes.size() + (instrument ? 1 : 0); }
};

/// The sort order as written, one key after another.
auto keyOf(const Found& found) {
    int worst = std::numeric_limits<int>::min();
    int sum = 0;
    for (const int ease : found.eases) {
        worst = std::max(worst, ease);
        sum += ease;
    }
    const double width = found.window.upper ? (*found.window.upper - found.window.lower).celsius()
                                            : std::numeric_limits<double>::infinity();
    std::vector<std::string> to;
    std::vector<int> positions;
    for (const auto& change : found.changes) {
        to.push_back(change.to);
        positions.push_back(change.position);
    }
    return std::tuple{found.changes.size(), found.window.bleedNotProvable, worst, sum, -width, to, positions,
                      found.instrument};
}

class EveryWay final {
public:
    EveryWay(const RunPlan& plan, const Calibration* instrument, const Choices& choices) : m_plan{plan} {
        for (const auto& family : choices.families) {
            auto& newest = m_families[family.name];
            if (newest.name.empty() || family.revision > newest.revision) {
                newest = family;
            }
        }
        m_instruments.emplace_back(instrument, std::nullopt);
        for (const auto& other : choices.instruments) {
            if (instrument && other.instrument().name != instrument->instrument().name) {
                m_instruments.emplace_back(&other, other.instrument().name);
            }
        }
    }

    std::vector<Found> smallest() {
        changeFrom(0, m_plan, {}, {});
        std::size_t size = std::numeric_limits<std::size_t>::max();
        for (const auto& one : m_found) {
            size = std::min(size, one.size());
        }
        m_found.erase(std::remove_if(m_found.begin(), m_found.end(), [&](const Found& f) { return f.size() != size; }),
                      m_found.end());
        std::sort(m_found.begin(), m_found.end(), [](const Found& a, const Found& b) { return keyOf(a) < keyOf(b); });
        return m_found;
    }

private:
    void changeFrom(std::size_t index, const RunPlan& plan, std::vector<LayerChange> changes, std::vector<int> eases) {
        if (index == plan.layers.size()) {
            ask(plan, changes, eases);
            return;
        }
        changeFrom(index + 1, plan, changes, eases);
        const auto& now = m_plan.layers[index];
        const auto need = m_plan.fabric.needOf(now.colour);
        for (const auto& [name, family] : m_families) {
            const bool same = !now.ink.isMix() && now.ink.name == name;
            if (same || family.chemistry != now.ink.requirement.chemistry || family.bleedResistance < need) {
                continue;
            }
            auto changed = plan;
            changed.layers[index].ink = pureInk(family);
            auto more = changes;
            more.push_back({static_cast<int>(index) + 1, now.ink.name, name});
            auto moreEases = eases;
            moreEases.push_back(family.ease);
            changeFrom(index + 1, changed, more, moreEases);
        }
    }

    void ask(const RunPlan& plan, const std::vector<LayerChange>& changes, const std::vector<int>& eases) {
        for (const auto& [instrument, name] : m_instruments) {
            const auto window = windowOf(plan, instrument);
            if (window && window->state == WindowState::open) {
                m_found.push_back({changes, name, *window, eases});
            }
        }
    }

    RunPlan m_plan;
    std::map<std::string, InkFamily> m_families;
    std::vector<std::pair<const Calibration*, std::optional<std::string>>> m_instruments;
    std::vector<Found> m_found;
};

void compare(const RunWindow& window, const std::vector<Found>& expected) {
    REQUIRE(window.waysOut.size() == std::min<std::size_t>(expected.size(), 20));
    CHECK(static_cast<std::size_t>(window.waysOutLeftOut) == expected.size() - window.waysOut.size());
    for (std::size_t i = 0; i < window.waysOut.size(); ++i) {
        const auto& way = window.waysOut[i];
        const auto& other = expected[i];
        REQUIRE(way.changes.size() == other.changes.size());
        for (std::size_t j = 0; j < way.changes.size(); ++j) {
            CHECK(way.changes[j].position == other.changes[j].position);
            CHECK(way.changes[j].from == other.changes[j].from);
            CHECK(way.changes[j].to == other.changes[j].to);
        }
        CHECK(way.instrument == other.instrument);
        CHECK(way.lower == other.window.lower);
        CHECK(way.upper == other.window.upper);
        CHECK(way.bleedProvable == !other.window.bleedNotProvable);
    }
}

} // namespace

TEST_CASE("the ways out are those that trying everything finds, in the same order", "[cure][ways][random]") {
    RandomPlans random{20310512};
    int shut = 0;
    int withWays = 0;
    int withInstrument = 0;
    int severalLayers = 0;
    int moreThanShown = 0;
    for (int round = 0; round < 4000; ++round) {
        INFO("round " << round);
        const auto plan = random.plan(4);
        const Choices choices{random.families(6), random.instruments(3)};
        const auto present = random.instrument("present");
        const auto* instrument = random.once(4) ? nullptr : &present;
        const auto window = open(windowWithWaysOut(plan, instrument, choices));
        if (window.state == WindowState::open) {
            CHECK(window.waysOut.empty());
            continue;
        }
        const auto expected = EveryWay{plan, instrument, choices}.smallest();
        compare(window, expected);
        ++shut;
        withWays += expected.empty() ? 0 : 1;
        moreThanShown += window.waysOutLeftOut > 0 ? 1 : 0;
        withInstrument += !expected.empty() && expected.front().instrument ? 1 : 0;
        severalLayers += !expected.empty() && expected.front().changes.size() > 1 ? 1 : 0;
    }
    // The comparison is worth something only if every sort of plan came up.
    CHECK(shut > 1000);
    CHECK(withWays > 300);
    CHECK(withInstrument > 50);
    CHECK(severalLayers > 50);
    CHECK(moreThanShown > 5);
}
