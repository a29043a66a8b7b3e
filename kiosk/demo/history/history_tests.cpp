#include "kiosk/demo/history/history_parts.hpp"

#include <algorithm>
#include <cmath>

/// QA's bench: prints are pulled, rubbed, watched, and washed five times in loads with witnesses.
namespace holdfast::kiosk::demo::making {
namespace {

using analytics::Grade;
using analytics::TemperatureDifference;

constexpr int kCycles = 5;
constexpr std::size_t kDrum = 8; ///< prints in one load
constexpr int kLastSeries = 13;  ///< worked days before the end on which the last series may begin
constexpr std::int64_t kFirstLoads = 40;
constexpr int kEvening = 15 * 60 + 30;
constexpr int kMorning = 8 * 60 + 30;

/// A print on its way through the cycles.
struct Series final {
    std::size_t print = 0;
    int done = 0;
    int failsAt = 0; ///< cycle; 0: it survives
    HistoryMinute from = 0;
    bool planted = false; ///< its failure is the false alarm
};

class Bench final {
public:
    explicit Bench(Making& making) : m_making{making}, m_chance{making.chance(5)} {}

    void make() {
        std::size_t next = 0;
        const auto& runs = m_making.facts.runs;
        for (int day = m_making.workedFrom(0); day < m_making.plan.days; day = m_making.workedFrom(day + 1)) {
            for (; next < runs.size() && dayOf(runs[next].begins) <= day; ++next) {
                pull(next);
            }
            wash(day);
        }
        std::stable_sort(m_making.facts.tests.begin(), m_making.facts.tests.end(),
                         [](const auto& a, const auto& b) { return a.at < b.at; });
    }

private:
    [[nodiscard]] bool isPoured(std::size_t run) const {
        const auto& poured = m_making.facts.planted.poured;
        return std::binary_search(poured.begin(), poured.end(), run);
    }

    void pull(std::size_t which) {
        constexpr double kWatched = 0.65; // of a colour that has begun to wash out
        const auto& run = m_making.facts.runs[which];
        const bool chosen = m_chance.happens(isPoured(which) ? kWatched : m_making.plan.tested);
        if (!chosen || m_making.workedLater(dayOf(run.begins), kLastSeries) >= m_making.plan.days) {
            return;
        }
        const auto print = addPrint(which, m_chance.between(6, std::max(6, run.pieces - 6)), run.ends + 25, false);
        look(print);
        Series series;
        series.print = print;
        series.from = nextNoon(dayOf(run.ends));
        const double chance = washOutChance(m_making.facts.prints[print].trueMargin);
        if (m_chance.happens(chance)) {
            series.failsAt = chance > 0.8 ? m_chance.between(1, 3) : m_chance.between(2, kCycles);
        }
        m_open.push_back(series);
    }

    /// Rested for a day: from the afternoon after.
    [[nodiscard]] HistoryMinute nextNoon(int day) const { return at(m_making.workedFrom(day + 1), 15, 0); }

    std::size_t addPrint(std::size_t which, int piece, HistoryMinute named, bool repeat) {
        const auto& run = m_making.facts.runs[which];
        PrintFact print;
        print.run = which;
        print.piece = piece;
        print.named = named;
        print.printed = run.begins + (run.ends - run.begins) * piece / std::max(1, run.pieces);
        print.repeat = repeat;
        const auto within = m_making.plan.spread * std::sqrt(1.0 - m_making.plan.intraclass);
        print.trueMargin = run.trueMargin + within * m_chance.normal();
        m_making.facts.prints.push_back(print);
        return m_making.facts.prints.size() - 1;
    }

    /// What is done at once: the stretch, now and then a rub; on polyester the white is watched for three days.
    void look(std::size_t which) {
        const auto& print = m_making.facts.prints[which];
        const auto& run = m_making.facts.runs[print.run];
        TestFact stretch;
        stretch.print = which;
        stretch.tested = Tested::stretch;
        stretch.at = std::max(print.named + 20, print.printed + 75);
        const bool cracks = m_chance.happens(0.3 * washOutChance(print.trueMargin));
        stretch.outcome = cracks ? Outcome::failed : Outcome::passed;
        stretch.cracked = cracks;
        m_making.facts.tests.push_back(stretch);
        if (m_chance.happens(0.35)) {
            auto rub = stretch;
            rub.tested = Tested::rub;
            rub.at = std::max(print.printed + 245, print.named + 30);
            rub.outcome = Outcome::passed;
            rub.cracked = false;
            rub.change = Grade::fromStep(static_cast<std::size_t>(m_chance.between(6, 8)));
            m_making.facts.tests.push_back(rub);
        }
        for (const int hours : {0, 24, 72}) {
            if (run.cloth == Cloth::polyester && run.hold.count() == 0.0) {
                auto watch = stretch;
                watch.tested = Tested::bleedWatch;
                watch.cycle = hours;
                watch.at = (hours == 0 ? print.named + 10 : print.printed + hours * 60 + 40);
                watch.outcome = hours == 72 ? Outcome::passed : Outcome::noted;
                watch.cracked = false;
                m_making.facts.tests.push_back(watch);
            }
        }
    }

    void wash(int day) {
        std::vector<std::size_t> ready;
        for (std::size_t i = 0; i < m_open.size(); ++i) {
            if (m_open[i].from <= at(day, 15, 0)) {
                ready.push_back(i);
            }
        }
        for (std::size_t first = 0; first < ready.size(); first += kDrum) {
            const auto last = std::min(first + kDrum, ready.size());
            washLoad(day, static_cast<int>(first / kDrum),
                     {ready.begin() + static_cast<std::ptrdiff_t>(first),
                      ready.begin() + static_cast<std::ptrdiff_t>(last)});
        }
        std::erase_if(m_open, [](const Series& one) { return one.done >= kCycles; });
        m_open.insert(m_open.end(), m_repeats.begin(), m_repeats.end());
        m_repeats.clear();
    }

    void washLoad(int day, int ofDay, const std::vector<std::size_t>& series) {
        LoadFact load;
        load.number = static_cast<std::int64_t>(m_making.facts.loads.size()) + 1;
        load.machine = ofDay % 2;
        load.washed = day * kMinutesADay + kEvening + 5 * ofDay;
        load.judged = m_making.workedFrom(day + 1) * kMinutesADay + kMorning + 12 * ofDay;
        load.tooHarsh = m_chance.happens(m_making.plan.voidLoads);
        // The first loads of a machine go through every grade, so that limits ranked from them are the shop's own.
        const bool first = load.number <= kFirstLoads;
        const int turn = static_cast<int>(load.number / 2 % 3);
        const int good = first ? 6 + turn : m_chance.between(7, 8);
        const int weak = first ? 2 + turn : m_chance.between(1, 3);
        load.tooHarsh = load.tooHarsh && !first;
        load.good = Grade::fromStep(static_cast<std::size_t>(load.tooHarsh ? 5 : good));
        load.weak = Grade::fromStep(static_cast<std::size_t>(load.tooHarsh ? 0 : weak));
        const auto place = m_making.facts.loads.size();
        m_making.facts.loads.push_back(load);
        int minute = 0;
        for (const auto which : series) {
            grade(m_open[which], place, ++minute);
        }
    }

    /// The morning after.
    void grade(Series& series, std::size_t place, int minute) {
        const auto load = m_making.facts.loads[place];
        if (!load.tooHarsh && isTheAlarm(series, load)) {
            series.failsAt = series.done + 1;
            series.planted = true;
        }
        TestFact test;
        test.print = series.print;
        test.tested = Tested::wash;
        test.at = load.judged + 2 + minute;
        test.cycle = series.done + 1;
        test.load = place;
        test.isVoid = load.tooHarsh;
        const bool fails = test.cycle == series.failsAt;
        test.outcome = fails && !test.isVoid   ? Outcome::failed
                       : test.cycle == kCycles ? Outcome::passed
                                               : Outcome::noted;
        const int least = std::max(6, 8 - test.cycle / 2);
        test.change =
            Grade::fromStep(static_cast<std::size_t>(fails ? m_chance.between(0, 4) : m_chance.between(least, 8)));
        test.cracked = fails && m_chance.happens(0.5);
        test.lifted = fails && !test.cracked && m_chance.happens(0.6);
        m_making.facts.tests.push_back(test);
        series.from = at(dayOf(load.judged), 15, 0);
        if (test.isVoid) {
            return;
        }
        series.done = fails ? kCycles : series.done + 1;
        if (series.planted && fails) {
            repeatAlarm(series, load);
        }
    }

    /// The first print in its days that is sound in truth and comes to that cycle in a load with several others.
    [[nodiscard]] bool isTheAlarm(const Series& series, const LoadFact& load) const {
        constexpr auto kSound = TemperatureDifference::fromCelsius(5.0);
        const auto& planted = m_making.facts.planted;
        return m_making.plan.planted.falseAlarm && planted.alarmLoad == 0 && series.failsAt == 0 &&
               series.done + 1 == kFalseAlarm.cycle &&
               kFalseAlarm.days.holds(m_making.daysBackOf(dayOf(load.judged))) &&
               m_making.facts.prints[series.print].trueMargin >= kSound && m_open.size() >= kDrum / 2;
    }

    void repeatAlarm(const Series& failed, const LoadFact& load) {
        auto& planted = m_making.facts.planted;
        planted.alarmLoad = load.number;
        planted.alarmPrint = failed.print;
        planted.alarmRun = m_making.facts.prints[failed.print].run;
        for (const int piece : {11, 17}) {
            Series again;
            again.print = addPrint(planted.alarmRun, piece, load.judged + 40, true);
            again.from = at(dayOf(load.judged), 15, 0);
            m_repeats.push_back(again);
        }
    }

    Making& m_making;
    Chance m_chance;
    std::vector<Series> m_open;
    std::vector<Series> m_repeats;
};

} // namespace

void makeTests(Making& making) {
    Bench{making}.make();
}

} // namespace holdfast::kiosk::demo::making
