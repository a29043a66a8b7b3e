#include "tests/kiosk/trending/support/history_as_facts.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::trending::testing {
namespace {

using demo::HistoryFacts;
using records::FactIndex;
using records::FloorAction;
using records::TrendEventKind;
using records::TrendFacts;

std::int64_t wallOf(const HistoryFacts& history, int minute) {
    return (static_cast<std::int64_t>(history.firstDay.time_since_epoch().count()) * demo::kMinutesADay + minute) *
           60'000;
}

void addThings(const HistoryFacts& history, TrendFacts& facts) {
    for (const char* name : {"North", "South", "West"}) {
        facts.dryers.push_back({name, name, analytics::Duration{120.0}});
    }
    for (const auto& one : history.instruments) {
        facts.instruments.push_back({one.name, one.name, one.kind});
    }
    for (const auto& one : history.buckets) {
        records::TrendBucket bucket;
        bucket.number = one.number;
        bucket.id = "K" + std::to_string(one.number);
        bucket.name = one.name.empty() ? demo::nameOf(one.label) : one.name;
        bucket.colour = one.colour;
        bucket.isMix = !one.parts.empty();
        bucket.openedAt = wallOf(history, one.opened);
        bucket.closed =
            one.why == demo::Emptied::mislabelled ? records::BucketEnd::mislabelled : records::BucketEnd::empty;
        bucket.within = {static_cast<FactIndex>(facts.buckets.size())};
        for (const auto& part : one.parts) {
            const auto& inner = facts.buckets[part.bucket].within;
            bucket.within.insert(bucket.within.end(), inner.begin(), inner.end());
        }
        std::sort(bucket.within.begin(), bucket.within.end());
        bucket.within.erase(std::unique(bucket.within.begin(), bucket.within.end()), bucket.within.end());
        facts.buckets.push_back(std::move(bucket));
    }
}

void addRuns(const HistoryFacts& history, TrendFacts& facts) {
    for (const auto& one : history.runs) {
        records::TrendRun run;
        run.number = one.number;
        run.id = "R" + std::to_string(one.number);
        run.title = one.title;
        run.customer = one.customer;
        run.fabric = demo::nameOf(one.cloth);
        run.clothLot = one.clothLot;
        run.finish = demo::nameOf(one.finish);
        run.childrensWear = one.childrensWear;
        run.pieces = one.pieces;
        records::TrendLot lot;
        lot.id = "L" + std::to_string(one.number);
        lot.run = static_cast<FactIndex>(facts.runs.size());
        lot.dryer = static_cast<FactIndex>(one.dryer);
        lot.openedAt = wallOf(history, one.begins);
        lot.closed = true;
        lot.state = records::LotState::cleared;
        lot.made = one.pieces;
        lot.shipped = one.pieces - one.spoiled - 1;
        for (const auto& layer : one.layers) {
            run.families.emplace_back(demo::nameOf(layer.ink));
            if (layer.bucket) {
                const auto& within = facts.buckets[*layer.bucket].within;
                lot.buckets.insert(lot.buckets.end(), within.begin(), within.end());
            }
        }
        std::sort(run.families.begin(), run.families.end());
        run.families.erase(std::unique(run.families.begin(), run.families.end()), run.families.end());
        std::sort(lot.buckets.begin(), lot.buckets.end());
        lot.buckets.erase(std::unique(lot.buckets.begin(), lot.buckets.end()), lot.buckets.end());
        records::TrendShipment sent{static_cast<FactIndex>(facts.lots.size()),
                                    wallOf(history, one.ends + demo::kMinutesADay),
                                    lot.shipped,
                                    run.customer,
                                    {}};
        facts.shipments.push_back(std::move(sent));
        facts.runs.push_back(std::move(run));
        facts.lots.push_back(std::move(lot));
    }
    facts.firstAt = facts.lots.empty() ? 0 : facts.lots.front().openedAt;
}

records::ReadingReason reasonOf(demo::Asked asked) {
    switch (asked) {
    case demo::Asked::setUp:
        return records::ReadingReason::setUp;
    case demo::Asked::drawn:
        return records::ReadingReason::drawn;
    case demo::Asked::retake:
        return records::ReadingReason::retake;
    case demo::Asked::worry:
        return records::ReadingReason::worry;
    case demo::Asked::afterChange:
        break;
    }
    return records::ReadingReason::afterChange;
}

void addReadings(const HistoryFacts& history, TrendFacts& facts) {
    for (const auto& one : history.readings) {
        records::TrendReading reading;
        reading.id = "r" + std::to_string(facts.readings.size());
        reading.at = wallOf(history, one.at);
        reading.run = reading.lot = static_cast<FactIndex>(one.run);
        reading.dryer = facts.lots[one.run].dryer;
        reading.instrument = static_cast<FactIndex>(one.instrument);
        reading.position = static_cast<records::BeltPosition>(one.lane);
        reading.reason = reasonOf(one.asked);
        reading.word = one.word;
        reading.isStrip = history.instruments[one.instrument].kind == analytics::InstrumentKind::strip;
        reading.margin = one.margin;
        reading.piece = one.piece;
        reading.retakeOf = one.retakeOf ? static_cast<FactIndex>(*one.retakeOf) : records::kNoFact;
        facts.readings.push_back(std::move(reading));
    }
    for (const auto& one : history.missed) {
        facts.missed.push_back(
            {wallOf(history, one.at), static_cast<FactIndex>(one.run), records::DueReadingKind::pieces});
    }
}

records::TestKind kindOf(demo::Tested tested) {
    switch (tested) {
    case demo::Tested::stretch:
        return records::TestKind::stretch;
    case demo::Tested::wash:
        return records::TestKind::wash;
    case demo::Tested::bleedWatch:
        return records::TestKind::bleedWatch;
    case demo::Tested::rub:
        break;
    }
    return records::TestKind::rub;
}

void addTests(const HistoryFacts& history, TrendFacts& facts) {
    for (const auto& one : history.loads) {
        facts.loads.push_back({"W" + std::to_string(one.number), one.number, wallOf(history, one.washed), "machine",
                               one.tooHarsh ? records::LoadWord::tooHarsh : records::LoadWord::valid});
    }
    for (const auto& one : history.prints) {
        const auto at = static_cast<FactIndex>(one.run);
        const auto number = static_cast<std::int64_t>(facts.prints.size());
        facts.prints.push_back(
            {"T" + std::to_string(number), number, at, at, one.piece, wallOf(history, one.named), "", false});
    }
    for (const auto& one : history.tests) {
        records::TrendTest test;
        test.id = "t" + std::to_string(facts.tests.size());
        test.at = wallOf(history, one.at);
        test.print = static_cast<FactIndex>(one.print);
        test.lot = facts.prints[one.print].lot;
        test.load = one.load ? static_cast<FactIndex>(*one.load) : records::kNoFact;
        test.kind = kindOf(one.tested);
        test.cycle = one.cycle;
        test.counts = one.isVoid                             ? records::TestOutcome::inAVoidLoad
                      : one.outcome == demo::Outcome::failed ? records::TestOutcome::failed
                      : one.outcome == demo::Outcome::passed ? records::TestOutcome::passed
                                                             : records::TestOutcome::noted;
        facts.tests.push_back(std::move(test));
    }
}

records::ComplaintKind kindOf(demo::Complaint complaint) {
    switch (complaint) {
    case demo::Complaint::washedOut:
        return records::ComplaintKind::washedOut;
    case demo::Complaint::cracked:
        return records::ComplaintKind::cracked;
    case demo::Complaint::peeled:
        return records::ComplaintKind::peeled;
    case demo::Complaint::feel:
        return records::ComplaintKind::feel;
    case demo::Complaint::other:
        break;
    }
    return records::ComplaintKind::other;
}

/// One that was not at fault is answered by a decision: within the limits.
void addComplaints(const HistoryFacts& history, TrendFacts& facts) {
    for (const auto& one : history.complaints) {
        const auto at = static_cast<FactIndex>(one.run);
        records::TrendComplaint complaint{"C" + std::to_string(one.number),
                                          one.number,
                                          wallOf(history, one.received),
                                          kindOf(one.what),
                                          one.pieces,
                                          at,
                                          at,
                                          true};
        if (!one.ours) {
            records::TrendHold hold;
            hold.id = "h" + std::to_string(one.number);
            hold.at = complaint.at;
            hold.lot = at;
            hold.cause = records::HoldCause::complaint;
            hold.because = complaint.id;
            hold.decided = records::DecisionWord::released;
            facts.holds.push_back(std::move(hold));
        }
        facts.complaints.push_back(std::move(complaint));
    }
}

void addTurns(const HistoryFacts& history, TrendFacts& facts) {
    for (const auto& one : history.turns) {
        const auto at = wallOf(history, one.at);
        const auto dryer = static_cast<FactIndex>(one.dryer);
        const bool belt = one.turn == demo::Turn::beltFaster || one.turn == demo::Turn::beltSlower;
        const bool heat = one.turn == demo::Turn::hotter || one.turn == demo::Turn::cooler;
        records::TrendEvent event;
        event.at = at;
        event.dryer = dryer;
        event.beltMetresPerMinute = one.beltMetresPerMinute;
        if (one.turn == demo::Turn::repaired) {
            facts.events.push_back(event);
            continue;
        }
        if (belt || heat) {
            event.kind = belt ? TrendEventKind::beltSpeed : TrendEventKind::setPoint;
            facts.events.push_back(event);
        }
        const auto action = one.turn == demo::Turn::started      ? FloorAction::started
                            : one.turn == demo::Turn::stopped    ? FloorAction::feedStopped
                            : one.turn == demo::Turn::hotter     ? FloorAction::hotter
                            : one.turn == demo::Turn::cooler     ? FloorAction::cooler
                            : one.turn == demo::Turn::beltFaster ? FloorAction::beltFaster
                                                                 : FloorAction::beltSlower;
        facts.turns.push_back({at, dryer, action, one.beltMetresPerMinute, one.setPoint});
    }
    for (const auto& one : history.checks) {
        records::TrendEvent event;
        event.at = wallOf(history, one.at);
        event.kind = one.passed ? TrendEventKind::checkPassed : TrendEventKind::checkFailed;
        event.instrument = static_cast<FactIndex>(one.instrument);
        facts.events.push_back(event);
    }
    for (std::size_t i = 0; i < facts.buckets.size(); ++i) {
        records::TrendEvent event;
        event.at = facts.buckets[i].openedAt;
        event.kind = TrendEventKind::bucketOpened;
        event.bucket = static_cast<FactIndex>(i);
        facts.events.push_back(event);
    }
    std::stable_sort(facts.events.begin(), facts.events.end(),
                     [](const auto& a, const auto& b) { return a.at < b.at; });
}

} // namespace

TrendFacts factsOf(const HistoryFacts& history) {
    TrendFacts facts;
    addThings(history, facts);
    addRuns(history, facts);
    addReadings(history, facts);
    addTests(history, facts);
    addComplaints(history, facts);
    addTurns(history, facts);
    return facts;
}

std::int64_t daysBefore(const HistoryFacts& history, int days) {
    return wallOf(history, (history.days - days) * demo::kMinutesADay);
}

} // namespace holdfast::kiosk::shop::trending::testing
