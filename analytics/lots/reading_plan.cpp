#include "analytics/lots/reading_plan.hpp"

#include "analytics/lots/below_zero.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

/// What has fallen due of one episode, and what comes next.
class Planner final {
public:
    Planner(const EpisodeSoFar& episode, const ReadingPlanSettings& settings) : m_e{episode}, m_s{settings} {
        const auto total = m_e.ended ? m_e.made : m_e.planned;
        if (total && *total >= 1) {
            m_total = total;
            m_lastRange = lastPiecesOf(*total, m_s.lastPieces);
        }
        m_lastTaken = m_e.readAfterEnd || (m_lastRange && m_e.lastRead && *m_e.lastRead >= m_lastRange->first);
        m_firsts = std::max(0, (m_e.coldest ? 1 : kReadingsWithoutMap) - m_e.readings);
        countFallenDue();
    }

    [[nodiscard]] ReadingPlan plan() const {
        ReadingPlan plan;
        const bool over = m_e.ended && atLeast(*m_e.ended, m_s.grace);
        const int fallen = fallenDue();
        plan.missed = over ? fallen : fallen - stillOpen(fallen);
        plan.lastMissed = over && m_lastFell;
        if (!over) {
            plan.next = next();
        }
        return plan;
    }

private:
    /// Of the readings that fell due those that may still be taken: the newest one, and the first ones as long as
    /// nothing after them fell due and there are pieces left for them.
    [[nodiscard]] int stillOpen(int fallen) const {
        const bool nextFell = m_intervals > 0 || (m_lastFell && !lastMeetsAnother());
        const int left = m_total && m_e.made && !m_e.ended ? std::max(1, *m_total - *m_e.made) : fallen;
        return nextFell ? std::min(1, fallen) : std::min(fallen, left);
    }

    [[nodiscard]] int sinceLast() const { return m_e.piecesSince.value_or(0); }

    /// The first piece that meets a belt loaded for two dwells; in a run too short for that, early enough that each of
    /// the first ones still has a piece.
    [[nodiscard]] int loadedFrom() const {
        const int started = m_e.made ? *m_e.made - sinceLast() : 0;
        const int loaded = started + (m_e.readings == 0 ? 2 * m_e.inTunnel.value_or(0) : 0) + 1;
        return std::max(1, m_total ? std::min(loaded, *m_total - m_firsts + 1) : loaded);
    }

    void countFallenDue() {
        const double byPieces = m_e.piecesSince ? static_cast<double>(*m_e.piecesSince) / m_s.everyPieces : 0.0;
        const double byTime = m_e.ranSince / m_s.every;
        m_intervals = static_cast<int>(std::floor(std::min(std::max(byPieces, byTime) + kDecisionTolerance, 1e6)));
        const bool reached = m_lastRange && m_e.made && *m_e.made + 1 >= m_lastRange->first;
        m_lastFell = !m_lastTaken && (reached || m_e.ended);
        const bool loaded = !m_e.made || *m_e.made + 1 >= loadedFrom();
        m_firstsFell = loaded || m_intervals > 0 || m_lastFell ? m_firsts : 0;
        // how far behind the newest of them lies, at the mean speed since
        const double newest = std::max(byPieces, byTime);
        const double behind = newest > 0.0 ? sinceLast() * (1.0 - m_intervals / newest) : 0.0;
        m_newestAt = m_e.made.value_or(0) - behind;
    }

    /// The last reading and another one fall on the same pieces: one serves for both.
    [[nodiscard]] bool lastMeetsAnother() const {
        if (!m_lastRange) {
            return m_intervals > 0 || m_firstsFell > 0;
        }
        if (m_intervals > 0) {
            return m_newestAt + kDecisionTolerance >= m_lastRange->first;
        }
        return m_firstsFell > 0 && loadedFrom() + m_firstsFell - 1 >= m_lastRange->first;
    }

    [[nodiscard]] int fallenDue() const {
        int fallen = m_firstsFell + m_intervals;
        if (m_lastFell && !lastMeetsAnother()) {
            ++fallen;
        }
        if (m_total) {
            const int least = m_lastTaken ? 0 : 1;
            fallen = std::min(fallen, std::max(least, *m_total - m_e.readingsOfRun));
        }
        return fallen;
    }

    [[nodiscard]] BeltLane lane() const {
        if (m_e.coldest) {
            return *m_e.coldest;
        }
        return m_e.readings < kReadingsWithoutMap ? kLanesWithoutMap[m_e.readings] : BeltLane::centre;
    }

    /// `from` and the pieces after it that are still to come, as many as one is drawn from, within the run.
    [[nodiscard]] std::optional<PieceSpan> stillToCome(int from) const {
        if (!m_e.made) {
            return std::nullopt;
        }
        PieceSpan span{std::max(from, *m_e.made + 1), 0};
        span.last = span.first + m_s.drawnAmong - 1;
        if (m_total && !m_e.ended) {
            span.last = std::min(span.last, *m_total);
            span.first = std::min(span.first, std::max(*m_total, 1));
            span.last = std::max(span.last, span.first);
        }
        return span;
    }

    void place(DueReading& due) const {
        if (due.among && m_e.made) {
            due.inPieces = std::max(0, due.among->first - *m_e.made - 1);
            due.now = due.now || *due.inPieces == 0;
        }
        if (due.now) {
            due.inPieces = due.among ? std::optional{0} : std::nullopt;
        }
    }

    [[nodiscard]] DueReading firstOnes() const {
        DueReading due;
        due.why = m_e.readings == 0 ? DueWhy::first : DueWhy::position;
        if (!m_e.ended) {
            due.among = stillToCome(loadedFrom());
        }
        due.now = !due.among;
        return due;
    }

    [[nodiscard]] DueReading byInterval() const {
        DueReading due;
        due.why = DueWhy::pieces;
        due.inRunning = std::max(Duration{0}, m_s.every - m_e.ranSince);
        const bool timeUp = atLeast(m_e.ranSince, m_s.every);
        const bool counted = m_e.made && m_e.piecesSince;
        const int at = counted ? *m_e.made + m_s.everyPieces - *m_e.piecesSince : 0; // the last piece it covers
        if (counted && at > *m_e.made && !timeUp) {
            due.among = PieceSpan{std::max({at - m_s.drawnAmong + 1, *m_e.made + 1, 1}), at};
            const double rate = m_e.ranSince.count() > 0.0 ? *m_e.piecesSince / m_e.ranSince.count() : 0.0;
            if (rate > 0.0 && due.inRunning->count() * rate < at - *m_e.made) { // the minutes run out first
                due.why = DueWhy::minutes;
                due.among.reset();
            }
            return due;
        }
        due.now = timeUp || counted;
        due.why = timeUp && (!counted || m_e.ranSince / m_s.every >= *m_e.piecesSince / double(m_s.everyPieces))
                      ? DueWhy::minutes
                      : DueWhy::pieces;
        due.why = counted ? due.why : DueWhy::minutes;
        due.among = due.now ? stillToCome(1) : std::nullopt;
        return due;
    }

    [[nodiscard]] DueReading lastOne() const {
        DueReading due;
        due.why = DueWhy::last;
        if (m_lastRange) {
            due.among = m_lastRange;
            const int from = m_e.made.value_or(0) + 1;
            if (!m_e.ended && due.among->last >= from) {
                due.among->first = std::max(due.among->first, from);
            }
        }
        due.now = m_lastFell;
        return due;
    }

    /// Whether the reading by interval would come no sooner than the last pieces.
    [[nodiscard]] bool reachesEnd(const DueReading& due) const {
        if (!m_lastRange) {
            return false;
        }
        if (due.among) {
            return due.among->last >= m_lastRange->first;
        }
        const double rate = m_e.ranSince.count() > 0.0 ? sinceLast() / m_e.ranSince.count() : 0.0;
        return m_e.made && due.inRunning && *m_e.made + due.inRunning->count() * rate + 1.0 >= m_lastRange->first;
    }

    [[nodiscard]] std::optional<DueReading> next() const {
        const bool allMade = m_e.ended || (m_total && m_e.made && *m_e.made >= *m_total);
        if (allMade && m_lastTaken && fallenDue() == 0) {
            return std::nullopt;
        }
        const bool firsts = m_firsts > 0;
        auto due = firsts ? firstOnes() : byInterval();
        if (!firsts && m_lastTaken && !due.now && reachesEnd(due)) {
            return std::nullopt; // the run ends before
        }
        if (m_lastFell ? m_e.ended || !firsts : !firsts && !m_lastTaken && reachesEnd(due)) {
            due = lastOne();
        }
        due.number = m_e.readings + 1;
        due.lane = lane();
        place(due);
        return due;
    }

    const EpisodeSoFar& m_e;
    const ReadingPlanSettings& m_s;
    std::optional<int> m_total;
    std::optional<PieceSpan> m_lastRange;
    bool m_lastTaken = false;
    bool m_lastFell = false;
    int m_firsts = 0;     ///< outstanding of the first ones
    int m_firstsFell = 0; ///< of them, fallen due
    int m_intervals = 0;  ///< N pieces or T minutes that passed since the last one
    double m_newestAt = 0;
};

std::optional<PlanFault> faultOf(const EpisodeSoFar& e, const ReadingPlanSettings& s) {
    if (s.everyPieces < 1 || s.lastPieces < 1 || s.drawnAmong < 1 || !(s.every.count() > 0.0) ||
        !std::isfinite(s.every.count()) || !(s.grace.count() >= 0.0)) {
        return PlanFault::settings;
    }
    if (e.planned && *e.planned < 1) {
        return PlanFault::noPieces;
    }
    if (e.readings < 0 || e.readingsOfRun < 0 || isBelowZero(e.made) || isBelowZero(e.piecesSince) ||
        isBelowZero(e.lastRead) || isBelowZero(e.inTunnel)) {
        return PlanFault::countBelowZero;
    }
    if (!std::isfinite(e.ranSince.count()) || e.ranSince.count() < 0.0 || (e.ended && !(e.ended->count() >= 0.0))) {
        return PlanFault::timeBelowZero;
    }
    return std::nullopt;
}

} // namespace

ReadingPlanSettings ReadingPlanSettings::tightened() const noexcept {
    auto tighter = *this;
    tighter.everyPieces = std::max(1, everyPieces / 2);
    tighter.every = every / 2.0;
    return tighter;
}

tl::expected<ReadingPlan, PlanFault> readingPlan(const EpisodeSoFar& episode, const ReadingPlanSettings& settings) {
    if (const auto fault = faultOf(episode, settings)) {
        return tl::unexpected(*fault);
    }
    return Planner{episode, settings}.plan();
}

PieceSpan lastPiecesOf(int pieces, int lastPieces) noexcept {
    const int count = std::min(lastPieces, std::max(1, pieces / 4));
    return {pieces - count + 1, pieces};
}

int drawPiece(const PieceSpan& among, std::uint64_t random) noexcept {
    // at most 100 million values of 2^64: the first ones are likelier by less than one in 10^11
    return among.first + static_cast<int>(random % static_cast<std::uint64_t>(among.count()));
}

} // namespace holdfast::analytics
