#include "kiosk/demo/history/history_parts.hpp"
#include "kiosk/demo/history/history_products.hpp"

#include <algorithm>
#include <cmath>

/// The working days of three dryers: starts, settings, runs.
namespace holdfast::kiosk::demo::making {
namespace {

using analytics::Temperature;
using analytics::TemperatureDifference;

struct Belt final {
    double usual; ///< m/min
    double piecesPerMetre;
};
constexpr std::array<Belt, 3> kBelts{{{4.5, 0.5}, {4.0, 0.5}, {2.0, 1.0}}};
constexpr int kQuietEnd = 3; ///< worked days at the end on which only the usual is printed, as the next days find it

class Floor final {
public:
    explicit Floor(Making& making) : m_making{making}, m_chance{making.chance(3)} {
        for (std::size_t i = 0; i < kBelts.size(); ++i) {
            m_belt[i] = kBelts[i].usual;
            m_setPoint[i] = setPointOf(static_cast<DemoDryer>(i), usualCureOf(static_cast<DemoDryer>(i)));
        }
    }

    void make() {
        for (int day = m_making.workedFrom(0); day < m_making.plan.days; day = m_making.workedFrom(day + 1)) {
            for (const auto dryer : {DemoDryer::north, DemoDryer::south, DemoDryer::west}) {
                makeDay(day, dryer);
            }
        }
        sortAndNumber();
    }

private:
    static std::size_t placeOf(DemoDryer dryer) { return static_cast<std::size_t>(dryer); }

    void turn(DemoDryer dryer, HistoryMinute when, Turn what) {
        m_making.facts.turns.push_back({dryer, when, what, m_belt[placeOf(dryer)], m_setPoint[placeOf(dryer)]});
    }

    void beginEpisode(DemoDryer dryer, HistoryMinute when, bool bySetting) {
        EpisodeFact episode;
        episode.dryer = dryer;
        episode.from = when;
        episode.to = when;
        episode.bySetting = bySetting;
        episode.beltMetresPerMinute = m_belt[placeOf(dryer)];
        episode.setPoint = m_setPoint[placeOf(dryer)];
        episode.warmUp = m_making.plan.spread * (std::sqrt(m_making.plan.intraclass) * m_chance.normal());
        m_making.facts.episodes.push_back(episode);
    }

    /// The planted ones that somebody turned or mended; true if the belt was.
    bool turnPlanted(DemoDryer dryer, int day) {
        const auto& planted = m_making.plan.planted;
        const int back = m_making.daysBackOf(day);
        if (planted.heatLoss && dryer == kHeatLoss.dryer && back <= kHeatLoss.days.until && !m_repaired) {
            m_repaired = true;
            turn(dryer, at(day, 6, 30), Turn::repaired);
        }
        if (!planted.beltChange || dryer != kBeltChange.dryer) {
            return false;
        }
        auto& belt = m_belt[placeOf(dryer)];
        const double wanted =
            kBeltChange.days.holds(back) ? kBeltChange.fastMetresPerMinute : kBeltChange.slowMetresPerMinute;
        if (belt == wanted) {
            return false;
        }
        const bool faster = wanted > belt;
        belt = wanted;
        turn(dryer, at(day, 6, 50), faster ? Turn::beltFaster : Turn::beltSlower);
        return true;
    }

    /// For what is printed next; true if it was turned.
    bool turnHeat(DemoDryer dryer, HistoryMinute when, Temperature cure) {
        auto& setPoint = m_setPoint[placeOf(dryer)];
        const auto wanted = setPointOf(dryer, cure);
        if (setPoint == wanted) {
            return false;
        }
        const bool hotter = wanted > setPoint;
        setPoint = wanted;
        turn(dryer, when, hotter ? Turn::hotter : Turn::cooler);
        return true;
    }

    void makeDay(int day, DemoDryer dryer) {
        const bool isEnd = m_making.workedLater(day, kQuietEnd) >= m_making.plan.days;
        const double expected = m_making.plan.runsADay[placeOf(dryer)];
        const int count = static_cast<int>(expected + m_chance.uniform());
        std::vector<const Product*> products;
        for (int i = 0; i < count; ++i) {
            products.push_back(&productFor(dryer, isEnd, m_chance));
        }
        std::stable_sort(products.begin(), products.end(),
                         [](const auto* one, const auto* other) { return cureOf(one->ink) > cureOf(other->ink); });
        turn(dryer, at(day, 6, 45), Turn::started);
        bool bySetting = turnPlanted(dryer, day);
        bySetting = turnHeat(dryer, at(day, 6, 52), cureOf(products.front()->ink)) || bySetting;
        beginEpisode(dryer, at(day, 6, bySetting ? 52 : 45), bySetting);
        auto now = at(day, 7, m_chance.between(0, 15));
        for (const auto* product : products) {
            if (turnHeat(dryer, now, cureOf(product->ink))) {
                beginEpisode(dryer, now, true);
                now += 12;
            }
            now = makeRun(*product, now) + m_chance.between(8, 30);
        }
        const auto end = std::max(at(day, 16, 5), now);
        m_making.facts.episodes.back().to = end;
        if (m_making.workedFrom(day + 1) < m_making.plan.days) {
            turn(dryer, end, Turn::stopped);
        }
    }

    /// Gives when it ended.
    HistoryMinute makeRun(const Product& product, HistoryMinute begins) {
        const auto place = placeOf(product.dryer);
        RunFact run;
        run.episode = m_making.facts.episodes.size() - 1;
        run.dryer = product.dryer;
        const auto& order = orderFor(m_chance);
        run.title = order.title;
        run.customer = order.customer;
        run.garment = product.garment;
        run.cloth = product.cloth;
        run.childrensWear = product.cloth == Cloth::cotton && m_chance.happens(0.03);
        run.pieces = 24 + static_cast<int>(110.0 * m_chance.uniform() + 60.0 * m_chance.uniform());
        run.spoiled = m_chance.between(0, 2);
        run.begins = begins;
        const int before = dayBefore(dayOf(begins));
        run.planned = before >= 0 ? at(before, 14, 0) : at(dayOf(begins), 6, 35);
        const double rate = m_belt[place] * kBelts[place].piecesPerMetre;
        run.ends = begins + static_cast<int>(std::ceil(static_cast<double>(run.pieces) / rate)) + 4;
        run.cure = cureOf(product.ink);
        run.hold = holdOf(product.ink);
        dress(run, product);
        const auto shift = plantedShift(m_making.plan.planted, run.dryer, m_making.daysBackOf(dayOf(begins)));
        run.trueMargin = m_making.plan.usualMargin + m_making.facts.episodes.back().warmUp + shift - missing(run);
        m_making.facts.episodes.back().to = run.ends;
        m_making.facts.runs.push_back(std::move(run));
        return m_making.facts.runs.back().ends;
    }

    [[nodiscard]] int dayBefore(int day) const {
        do {
            --day;
        } while (day >= 0 && !m_making.worked[static_cast<std::size_t>(day)]);
        return day;
    }

    /// Cloth and ink; in its days the mislabelled mix takes the place of another colour.
    void dress(RunFact& run, const Product& product) {
        constexpr int kDaysALot = 9;
        const int day = dayOf(run.begins) - (m_chance.happens(0.1) ? kDaysALot : 0);
        const auto cloth = static_cast<int>(run.cloth);
        run.clothLot = std::string{"CHP"}.substr(static_cast<std::size_t>(cloth), 1) + " " +
                       std::to_string(300 + (day + 3 * cloth) / kDaysALot);
        const double finish = m_chance.uniform();
        run.finish = finish < 0.8    ? Finish::none
                     : finish < 0.9  ? Finish::softened
                     : finish < 0.97 ? Finish::peached
                                     : Finish::repellent;
        for (const auto* colour : product.colours) {
            LayerFact layer;
            layer.ink = product.ink;
            layer.colour = colour;
            layer.underbase = product.colours.size() > 1 && run.layers.empty();
            if (product.hasBuckets) {
                layer.bucket = bucketOn(m_making.facts, run.begins, product.ink, colour);
            }
            run.layers.push_back(std::move(layer));
        }
        pourPlanted(run);
    }

    void pourPlanted(RunFact& run) {
        const bool low = run.cure == cureOf(Ink::lowCure) && run.cloth != Cloth::cotton;
        const bool drawn = m_chance.happens(run.dryer == kMislabelledBucket.often ? 0.4 : 0.7);
        if (!m_making.plan.planted.mislabelledBucket || !low || !drawn) {
            return;
        }
        if (const auto mix = bucketOn(m_making.facts, run.begins, Ink::lowCure, "school green")) {
            run.layers.back().ink = Ink::lowCure;
            run.layers.back().colour = m_making.facts.buckets[*mix].colour;
            run.layers.back().bucket = mix;
        }
    }

    /// What the ink asks in truth above what its label says.
    [[nodiscard]] TemperatureDifference missing(const RunFact& run) const {
        auto asked = run.cure;
        for (const auto& layer : run.layers) {
            if (layer.bucket) {
                asked = std::max(asked, cureOf(m_making.facts.buckets[*layer.bucket].holds));
            }
        }
        return asked - run.cure;
    }

    void sortAndNumber() {
        auto& runs = m_making.facts.runs;
        std::stable_sort(runs.begin(), runs.end(), [](const auto& a, const auto& b) { return a.begins < b.begins; });
        auto number = m_making.plan.nextRun - static_cast<std::int64_t>(runs.size());
        auto& planted = m_making.facts.planted;
        for (std::size_t i = 0; i < runs.size(); ++i) {
            runs[i].number = number++;
            for (const auto& layer : runs[i].layers) {
                if (planted.mix != 0 && layer.bucket && m_making.facts.buckets[*layer.bucket].number == planted.mix) {
                    planted.poured.push_back(i);
                }
            }
        }
        auto& turns = m_making.facts.turns;
        std::stable_sort(turns.begin(), turns.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    }

    Making& m_making;
    Chance m_chance;
    std::array<double, 3> m_belt{};
    std::array<Temperature, 3> m_setPoint{Temperature::fromCelsius(0), Temperature::fromCelsius(0),
                                          Temperature::fromCelsius(0)};
    bool m_repaired = false;
};

} // namespace

void makeRuns(Making& making) {
    Floor{making}.make();
}

} // namespace holdfast::kiosk::demo::making
