#include "tests/kiosk/trending/support/invented.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::trending::testing {
namespace {

template <class Row>
FactIndex added(std::vector<Row>& rows, Row row) {
    rows.push_back(std::move(row));
    return static_cast<FactIndex>(rows.size()) - 1;
}

std::optional<analytics::TemperatureDifference> kelvins(std::optional<double> value) {
    return value ? std::optional{analytics::TemperatureDifference::fromCelsius(*value)} : std::nullopt;
}

} // namespace

analytics::Word wordOf(double margin) {
    return margin >= 2.0    ? analytics::Word::cured
           : margin <= -2.0 ? analytics::Word::underCured
                            : analytics::Word::notProven;
}

Invented::Invented() {
    facts.dryers = {{"dn", "North", analytics::Duration{60.0}}, {"ds", "South", analytics::Duration{60.0}}};
    facts.instruments = {{"p1", "P-1", analytics::InstrumentKind::probe},
                         {"p2", "P-2", analytics::InstrumentKind::probe},
                         {"s1", "S-1", analytics::InstrumentKind::strip}};
    facts.firstAt = kMonday;
}

void Invented::turn(records::FloorAction action, std::int64_t at, FactIndex dryer) {
    facts.turns.push_back({at, dryer, action, {}, {}});
}

FactIndex Invented::bucket(std::int64_t number, const std::vector<FactIndex>& parts, std::int64_t at) {
    records::TrendBucket bucket;
    bucket.id = "K" + std::to_string(number);
    bucket.number = number;
    bucket.name = "bucket " + std::to_string(number);
    bucket.isMix = !parts.empty();
    bucket.openedAt = at;
    bucket.within = parts;
    bucket.within.push_back(static_cast<FactIndex>(facts.buckets.size()));
    std::sort(bucket.within.begin(), bucket.within.end());
    return added(facts.buckets, std::move(bucket));
}

FactIndex Invented::lot(std::int64_t at, FactIndex dryer, const std::vector<FactIndex>& buckets,
                        const std::string& family, const std::string& clothLot) {
    records::TrendRun run;
    run.number = 100 + static_cast<std::int64_t>(facts.runs.size());
    run.id = "R" + std::to_string(run.number);
    run.fabric = "cotton";
    run.clothLot = clothLot;
    run.families = {family};
    run.pieces = 100;
    records::TrendLot lot;
    lot.id = "L" + std::to_string(run.number);
    lot.run = added(facts.runs, std::move(run));
    lot.dryer = dryer;
    lot.openedAt = at;
    lot.closed = true;
    lot.state = records::LotState::cleared;
    lot.made = 100;
    for (const auto bucket : buckets) {
        const auto& within = facts.buckets[static_cast<std::size_t>(bucket)].within;
        lot.buckets.insert(lot.buckets.end(), within.begin(), within.end());
    }
    std::sort(lot.buckets.begin(), lot.buckets.end());
    lot.buckets.erase(std::unique(lot.buckets.begin(), lot.buckets.end()), lot.buckets.end());
    return added(facts.lots, std::move(lot));
}

FactIndex Invented::reading(FactIndex lot, std::int64_t at, double margin, records::ReadingReason reason,
                            FactIndex instrument) {
    records::TrendReading reading;
    reading.id = "r" + std::to_string(facts.readings.size());
    reading.at = at;
    reading.lot = lot;
    reading.run = facts.lots[static_cast<std::size_t>(lot)].run;
    reading.dryer = facts.lots[static_cast<std::size_t>(lot)].dryer;
    reading.instrument = instrument;
    reading.reason = reason;
    reading.word = wordOf(margin);
    reading.margin = {kelvins(margin), kelvins(margin)};
    return added(facts.readings, std::move(reading));
}

FactIndex Invented::strip(FactIndex lot, std::int64_t at, std::optional<double> low, std::optional<double> high) {
    const auto index = reading(lot, at, low.value_or(high.value_or(0.0)), records::ReadingReason::drawn, 2);
    auto& strip = facts.readings.back();
    strip.isStrip = true;
    strip.margin = {kelvins(low), kelvins(high)};
    strip.word = low && *low >= 0.0 ? analytics::Word::cured : analytics::Word::notProven;
    return index;
}

FactIndex Invented::print(FactIndex lot, const std::string& shelf) {
    records::TrendPrint print;
    print.number = static_cast<std::int64_t>(facts.prints.size()) + 1;
    print.id = "T" + std::to_string(print.number);
    print.lot = lot;
    print.run = facts.lots[static_cast<std::size_t>(lot)].run;
    print.namedAt = facts.lots[static_cast<std::size_t>(lot)].openedAt;
    print.shelf = shelf;
    return added(facts.prints, std::move(print));
}

FactIndex Invented::load(std::int64_t number, records::LoadWord word) {
    return added(facts.loads, records::TrendLoad{"W" + std::to_string(number), number, kMonday, "machine", word});
}

FactIndex Invented::wash(FactIndex print, std::int64_t at, records::TestOutcome outcome, FactIndex load) {
    records::TrendTest test;
    test.id = "t" + std::to_string(facts.tests.size());
    test.at = at;
    test.print = print;
    test.lot = facts.prints[static_cast<std::size_t>(print)].lot;
    test.load = load;
    test.kind = records::TestKind::wash;
    test.cycle = 5;
    test.counts = outcome;
    return added(facts.tests, std::move(test));
}

FactIndex Invented::complaint(FactIndex lot, std::int64_t at, records::ComplaintKind what) {
    records::TrendComplaint complaint;
    complaint.number = static_cast<std::int64_t>(facts.complaints.size()) + 1;
    complaint.id = "C" + std::to_string(complaint.number);
    complaint.at = at;
    complaint.what = what;
    complaint.pieces = 2;
    complaint.lot = lot;
    complaint.run = facts.lots[static_cast<std::size_t>(lot)].run;
    return added(facts.complaints, std::move(complaint));
}

records::TrendHold& Invented::hold(FactIndex lot, records::HoldCause cause, const std::string& because) {
    records::TrendHold hold;
    hold.id = "h" + std::to_string(facts.holds.size());
    hold.at = kMonday;
    hold.lot = lot;
    hold.cause = cause;
    hold.because = because;
    facts.holds.push_back(std::move(hold));
    return facts.holds.back();
}

void Invented::ship(FactIndex lot, std::int64_t at, int pieces) {
    facts.shipments.push_back({lot, at, pieces, "school", {"C-1"}});
    facts.lots[static_cast<std::size_t>(lot)].shipped += pieces;
}

void Invented::days(const std::vector<double>& margins, FactIndex dryer) {
    for (std::size_t i = 0; i < margins.size(); ++i) {
        const auto at = kMonday + static_cast<std::int64_t>(i) * kDayMs + 7 * kHourMs;
        turn(records::FloorAction::started, at, dryer);
        reading(lot(at + 60'000, dryer), at + 120'000, margins[i]);
        turn(records::FloorAction::feedStopped, at + 8 * kHourMs, dryer);
    }
}

} // namespace holdfast::kiosk::shop::trending::testing
