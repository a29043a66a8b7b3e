#include "kiosk/demo/history/history_parts.hpp"
#include "kiosk/demo/history/history_products.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string_view>

/// Readings as they were due, taken, taken again or skipped.
namespace holdfast::kiosk::demo::making {
namespace {

using analytics::InstrumentKind;
using analytics::Temperature;
using analytics::TemperatureDifference;
using analytics::Word;

constexpr auto kAway = TemperatureDifference::fromCelsius(0.25); ///< that no reading lies nearer to a guard than

struct Due final {
    int piece = 0;
    HistoryMinute at = 0;
    Lane lane = Lane::centre;
    bool last = false;
};

/// Moves what lies just at ±guard, where rounding would decide.
TemperatureDifference clearOf(TemperatureDifference guard, TemperatureDifference margin) {
    const auto near = margin.magnitude() - guard;
    if (near.magnitude() >= kAway) {
        return margin;
    }
    const auto size = guard + (near < TemperatureDifference{} ? -kAway : kAway);
    return margin < TemperatureDifference{} ? -size : size;
}

class Readings final {
public:
    explicit Readings(Making& making)
        : m_making{making}, m_chance{making.chance(4)}, m_within{making.plan.spread *
                                                                 std::sqrt(1.0 - making.plan.intraclass)} {
        for (const auto& check : making.facts.checks) {
            if (!check.passed) {
                m_unfit.emplace_back(check.instrument, dayOf(check.at));
            }
        }
    }

    void make() {
        for (std::size_t i = 0; i < m_making.facts.runs.size(); ++i) {
            ofRun(i);
        }
        sortByTime();
    }

private:
    [[nodiscard]] const RunFact& run(std::size_t which) const { return m_making.facts.runs[which]; }
    [[nodiscard]] const InstrumentFact& instrument(std::size_t which) const {
        return m_making.facts.instruments[which];
    }

    std::vector<Due> dueOf(const RunFact& run) {
        const double minutes = run.ends - run.begins - 4;
        const auto atPiece = [&](int piece) {
            return run.begins + 2 + static_cast<int>(minutes * piece / static_cast<double>(run.pieces));
        };
        std::vector<Due> due{
            {2, run.begins + 1, Lane::left}, {3, run.begins + 2, Lane::centre}, {4, run.begins + 3, Lane::right}};
        const int last = run.pieces - m_chance.between(0, 4);
        const double perMinute = static_cast<double>(run.pieces) / minutes;
        for (int piece = 4 + static_cast<int>(perMinute * m_chance.between(11.0, 17.0)); piece < last - 8;
             piece += static_cast<int>(perMinute * m_chance.between(11.0, 17.0))) {
            due.push_back({piece, atPiece(piece), static_cast<Lane>(m_chance.between(0, 2))});
        }
        due.push_back({last, atPiece(last), Lane::centre, true});
        return due;
    }

    void ofRun(std::size_t which) {
        const auto& of = run(which);
        if (m_chance.happens(0.4)) {
            auto setUp = readingOf(which, {0, of.begins - 3, Lane::centre}, false);
            setUp.asked = Asked::setUp;
            m_making.facts.readings.push_back(setUp);
        }
        const auto due = dueOf(of);
        const bool cold = m_chance.happens(m_making.plan.coldRuns);
        const bool hot = !cold && m_chance.happens(m_making.plan.hotRuns);
        const std::size_t odd = 2 + m_chance.pick(due.size() - 2);
        for (std::size_t i = 0; i < due.size(); ++i) {
            if (!of.childrensWear && !((cold || hot) && i == odd) && m_chance.happens(m_making.plan.skipped)) {
                m_making.facts.missed.push_back({which, due[i].at + 1, due[i].piece, due[i].last});
                continue;
            }
            auto reading = readingOf(which, due[i], (cold || hot) && i == odd);
            if ((cold || hot) && i == odd) {
                spoil(reading, hot);
            }
            keep(reading);
        }
    }

    /// Taken, and what followed from it.
    void keep(const ReadingFact& reading) {
        auto& all = m_making.facts.readings;
        all.push_back(reading);
        const auto kind = instrument(reading.instrument).kind;
        if (reading.word == Word::notProven && kind == InstrumentKind::probe &&
            m_chance.happens(m_making.plan.retaken)) {
            retake(all.size() - 1);
        } else if (reading.word == Word::notProven && m_chance.happens(0.6)) {
            follow(reading, Asked::worry, true);
        } else if (reading.word == Word::underCured || reading.word == Word::overheated) {
            follow(reading, Asked::afterChange, true);
        }
    }

    void follow(const ReadingFact& before, Asked asked, bool probe) {
        const auto& of = run(before.run);
        const int later = std::min(before.piece + m_chance.between(3, 6), of.pieces);
        auto next = readingOf(before.run, {later, before.at + 4, before.lane}, probe);
        next.asked = asked;
        m_making.facts.readings.push_back(next);
    }

    /// The probe of the dryer, now and then its spare, a strip or the spot; `probe`: nothing else.
    std::size_t instrumentFor(const RunFact& of, bool probe) {
        const int day = dayOf(of.begins);
        const double drawn = m_chance.uniform();
        const auto& plan = m_making.plan;
        const bool held = of.hold > analytics::Duration{0};
        if (!probe && !held && drawn < plan.strips) {
            return usable(InstrumentKind::strip, day);
        }
        if (!probe && !held && drawn < plan.strips + plan.spots) {
            return usable(InstrumentKind::spot, day);
        }
        const auto own = static_cast<std::size_t>(of.dryer);
        const bool lent = of.dryer != DemoDryer::west && m_chance.happens(0.08);
        const bool spare = m_chance.happens(0.5);
        return lent || isUnfit(own, day) ? otherFor(own, day, spare) : own;
    }

    [[nodiscard]] bool isUnfit(std::size_t which, int day) const {
        return std::count(m_unfit.begin(), m_unfit.end(), std::pair{which, day}) != 0;
    }

    /// The spare probe, or the one of the dryer beside it.
    [[nodiscard]] std::size_t otherFor(std::size_t own, int day, bool spareFirst) const {
        constexpr std::size_t kSpare = 3;
        const std::size_t beside = own == 0 ? 1 : 0;
        const auto& spare = instrument(kSpare);
        const bool hasSpare = day >= spare.firstDay && day <= spare.lastDay;
        return hasSpare && (spareFirst || isUnfit(beside, day)) ? kSpare : isUnfit(beside, day) ? own : beside;
    }

    [[nodiscard]] std::size_t usable(InstrumentKind kind, int day) const {
        const auto& all = m_making.facts.instruments;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (all[i].kind == kind && day >= all[i].firstDay && day <= all[i].lastDay) {
                return i;
            }
        }
        return 0;
    }

    ReadingFact readingOf(std::size_t which, const Due& due, bool probe) {
        const auto& of = run(which);
        const auto& plan = m_making.plan;
        ReadingFact reading;
        reading.run = which;
        reading.at = due.at;
        reading.piece = due.piece;
        reading.lane = due.lane;
        reading.instrument = instrumentFor(of, probe);
        const auto& warmUp = m_making.facts.episodes[of.episode].warmUp;
        const int back = m_making.daysBackOf(dayOf(due.at));
        reading.trueMargin =
            plan.usualMargin + warmUp + plantedShift(plan.planted, of.dryer, back) + m_within * m_chance.normal();
        see(reading);
        return reading;
    }

    void see(ReadingFact& reading) {
        const auto& plan = m_making.plan;
        const auto& with = instrument(reading.instrument);
        if (with.kind == InstrumentKind::strip) {
            seeStrip(reading);
            return;
        }
        const int back = m_making.daysBackOf(dayOf(reading.at));
        reading.seen = clearOf(with.guard, reading.trueMargin + plantedError(plan.planted, with.name, back));
        reading.margin = {reading.seen, reading.seen};
        const auto& of = run(reading.run);
        reading.word = reading.seen >= with.guard    ? Word::cured
                       : reading.seen <= -with.guard ? Word::underCured
                                                     : Word::notProven;
        if (reading.seen >= ceilingOf(of.cloth) - of.cure + with.guard) {
            reading.word = Word::overheated;
        }
    }

    /// Whoever reads a strip likes to see the next step dark.
    void seeStrip(ReadingFact& reading) {
        constexpr auto kReader = TemperatureDifference::fromCelsius(0.6);
        const auto& of = run(reading.run);
        const auto guard = instrument(reading.instrument).guard;
        reading.seen = reading.trueMargin + m_making.plan.optimism + kReader * m_chance.normal();
        const auto& steps = stripSteps();
        const auto above = std::upper_bound(steps.begin(), steps.end(), of.cure + reading.seen);
        const auto dark = static_cast<std::size_t>(above - steps.begin());
        const std::size_t light = dark + (m_chance.happens(0.15) ? 1U : 0U);
        reading.lastDark = dark > 0 ? std::optional{dark - 1} : std::nullopt;
        reading.firstLight = light < steps.size() ? std::optional{light} : std::nullopt;
        reading.margin.low =
            reading.lastDark ? std::optional{steps[*reading.lastDark] - of.cure - guard} : std::nullopt;
        reading.margin.high =
            reading.firstLight ? std::optional{steps[*reading.firstLight] - of.cure + guard} : std::nullopt;
        const auto hard = hardCeilingOf(of.cloth) - of.cure;
        const bool cured = reading.margin.low && *reading.margin.low >= TemperatureDifference{} &&
                           reading.margin.high && *reading.margin.high <= hard;
        const bool under = reading.margin.high && *reading.margin.high <= TemperatureDifference{};
        const bool over = reading.margin.low && *reading.margin.low >= ceilingOf(of.cloth) - of.cure;
        reading.word = under ? Word::underCured : over ? Word::overheated : cured ? Word::cured : Word::notProven;
    }

    /// Damp cloth, or a print that stood: the one bad reading of a run.
    void spoil(ReadingFact& reading, bool hot) {
        const auto& of = run(reading.run);
        const auto guard = instrument(reading.instrument).guard;
        const auto by = guard + TemperatureDifference::fromCelsius(m_chance.between(1.0, 5.0));
        reading.trueMargin = hot ? ceilingOf(of.cloth) - of.cure + by : -by;
        see(reading);
    }

    /// One of the next pieces, same place, judged with the first on their mean (decisions 4, Retake).
    void retake(std::size_t first) {
        constexpr double kZ = 2.3263; // z(1 − 5 %/5)
        constexpr double kZFirst = 1.6449;
        constexpr double kPlacement = 1.5; // °C
        const auto before = m_making.facts.readings[first];
        auto again = before;
        again.asked = Asked::retake;
        again.retakeOf = first;
        again.piece = std::min(before.piece + 2, run(before.run).pieces);
        again.at = before.at + 2;
        const auto& of = run(before.run);
        const int back = m_making.daysBackOf(dayOf(again.at));
        again.trueMargin = m_making.plan.usualMargin + m_making.facts.episodes[of.episode].warmUp +
                           plantedShift(m_making.plan.planted, of.dryer, back) + m_within * m_chance.normal();
        see(again);
        const double g = instrument(before.instrument).guard.celsius() / kZFirst;
        const double common = std::max(0.0, g * g - kPlacement * kPlacement);
        const auto guard = TemperatureDifference::fromCelsius(kZ * std::sqrt(common + kPlacement * kPlacement / 2.0));
        const auto mean = clearOf(guard, (before.seen + again.seen) / 2.0);
        again.seen = mean * 2.0 - before.seen;
        again.margin = {mean, mean};
        again.word = mean >= guard ? Word::cured : mean <= -guard ? Word::underCured : Word::notProven;
        m_making.facts.readings.push_back(again);
    }

    void sortByTime() {
        auto& all = m_making.facts.readings;
        std::vector<std::size_t> order(all.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return all[a].at < all[b].at; });
        std::vector<std::size_t> placeOf(all.size());
        std::vector<ReadingFact> sorted;
        sorted.reserve(all.size());
        for (const auto old : order) {
            placeOf[old] = sorted.size();
            sorted.push_back(all[old]);
        }
        for (auto& one : sorted) {
            one.retakeOf = one.retakeOf ? std::optional{placeOf[*one.retakeOf]} : std::nullopt;
        }
        all = std::move(sorted);
        auto& missed = m_making.facts.missed;
        std::stable_sort(missed.begin(), missed.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    }

    Making& m_making;
    Chance m_chance;
    TemperatureDifference m_within;
    std::vector<std::pair<std::size_t, int>> m_unfit; ///< instrument and day on which its check failed
};

} // namespace

void makeReadings(Making& making) {
    Readings{making}.make();
}

} // namespace holdfast::kiosk::demo::making
