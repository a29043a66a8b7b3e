#include "tests/kiosk/reports/support/lot_samples.hpp"

#include "tests/kiosk/reports/support/samples.hpp"

namespace holdfast::reports_test {

using namespace kiosk;
using namespace kiosk::reports;
using analytics::Temperature;
using analytics::TemperatureDifference;

namespace {

constexpr std::int64_t kMinute = 60'000;

analytics::Date day(int number) {
    return std::chrono::sys_days{std::chrono::year{2026} / 11 / number};
}

records::PiecesMoved shipped(const std::string& customer, std::vector<std::string> cartons, int count, int on) {
    records::PiecesMoved moved;
    moved.customer = customer;
    moved.cartons = std::move(cartons);
    moved.count = count;
    moved.day = day(on);
    return moved;
}

records::ReadingRow reading(int index, const std::string& text) {
    records::ReadingRow row;
    row.id = "reading-" + std::to_string(index);
    row.lot = index % 2 == 0 ? "lot-1" : "lot-2";
    row.lotNumber = index % 2 + 1;
    row.instrumentName = text;
    row.takenAt = afternoon().millisecondsSinceEpoch + index * kMinute;
    row.utcOffsetMinutes = afternoon().utcOffsetMinutes;
    row.marginLow = row.marginHigh = TemperatureDifference::fromFahrenheit(6 - index % 5 * 3);
    const analytics::Word words[] = {analytics::Word::cured, analytics::Word::cured, analytics::Word::notProven,
                                     analytics::Word::underCured, analytics::Word::overheated};
    row.word = words[index % 5];
    row.position = static_cast<records::BeltPosition>(index % 3);
    row.reason = static_cast<records::ReadingReason>(index % 7);
    if (index % 11 == 7) {
        row.struck = records::StruckCause::probeFellOut;
    }
    row.refused = index % 13 == 9;
    row.corrected = index % 17 == 5;
    return row;
}

records::MethodDescribed washMethod() {
    records::MethodDescribed method;
    method.key = "wash-house";
    method.kind = records::TestKind::wash;
    method.eachLot = true;
    method.programme = records::WashProgramme{};
    return method;
}

records::TestRow test(int index, const std::string& text) {
    records::TestRow row;
    row.id = "test-" + std::to_string(index);
    row.at = afternoon().millisecondsSinceEpoch + index * 60 * kMinute;
    row.person = index % 2 == 0 ? 4 : 5;
    row.done.print = "print-1";
    row.done.method = "wash-house";
    row.done.cycle = index + 1;
    row.done.load = "load-1";
    row.done.note = index % 4 == 3 ? text : std::string{};
    row.done.results = {{analytics::Quantity::changeGrade, {}, *analytics::Grade::fromNumber(4.5), {index + 1, {}}},
                        {analytics::Quantity::stainingGrade, {}, *analytics::Grade::fromNumber(3.5), {index + 1, {}}}};
    row.done.outcome = row.counts = index % 5 == 4 ? records::TestOutcome::failed : records::TestOutcome::passed;
    row.done.pictures = {{std::string(64, 'a'), records::PictureSide::unwashed},
                         {std::string(64, 'b'), records::PictureSide::washed}};
    return row;
}

QImage swatch(QRgb colour) {
    QImage image(400, 300, QImage::Format_RGB32);
    image.fill(colour);
    return image;
}

shop::tracing::LotTraced lot(int number, records::LotState state) {
    shop::tracing::LotTraced out;
    out.lot.id = "lot-" + std::to_string(number);
    out.lot.number = number;
    out.lot.state = state;
    out.lot.firstPiece = 1 + (number - 1) * 144;
    out.lot.lastPiece = number * 144;
    out.pieces.made = 144;
    out.pieces.shipped = number == 1 ? 140 : 0;
    return out;
}

void addHold(shop::tracing::LotTraced& lot, const std::string& text) {
    records::HoldRow hold;
    hold.placed.hold = "hold-1";
    hold.placed.pieces = records::PieceRange{160, 187};
    hold.placed.count = 28;
    hold.placed.bin = 31;
    hold.at = afternoon().millisecondsSinceEpoch;
    hold.decision = "decision-1";
    lot.holds.push_back(hold);
    records::DecisionRow decision;
    decision.at = afternoon().millisecondsSinceEpoch + 5 * kMinute;
    decision.signedAs.holds = {"hold-1"};
    decision.signedAs.word = records::DecisionWord::scrapped;
    decision.signedAs.reason = text;
    decision.signedAs.signers = {4, 9};
    decision.signedAs.laboratoryReport = "LAB-7714";
    lot.decisions.push_back(decision);
}

void addBuckets(shop::tracing::TraceFacts& trace, const std::string& text) {
    shop::tracing::LayerBucket bucket;
    bucket.colour = "red";
    bucket.tree.bucket.number = 118;
    bucket.tree.bucket.name = text;
    bucket.tree.bucket.isMix = true;
    for (int i = 0; i < 2; ++i) {
        records::BucketTree part;
        part.bucket.number = 40 + i;
        part.bucket.name = "low-cure";
        part.bucket.batch = "B-22" + std::to_string(i);
        part.bucket.expiry = day(30);
        part.share = i == 0 ? 0.95 : 0.05;
        bucket.tree.parts.push_back(part);
    }
    trace.buckets.push_back(bucket);
}

} // namespace

drivers::WallTime afternoon() {
    return {1'795'633'320'000, -300};
}

QuarantineList quarantine(int bins, const std::string& text) {
    QuarantineList out{text, {}, afternoon()};
    for (int i = 0; i < bins; ++i) {
        QuarantineBin bin;
        bin.bin = 31 + i;
        bin.run = 20414;
        bin.runTitle = text;
        bin.lot = 2;
        bin.cause = static_cast<records::HoldCause>(i % 6);
        bin.since = afternoon().millisecondsSinceEpoch;
        bin.shipped = i % 5 == 4;
        bin.childrensWear = i % 3 == 2;
        if (i % 7 != 6) {
            bin.count = 10;
        }
        if (i % 9 != 8) {
            bin.pieces = records::PieceRange{48, 57};
        }
        out.bins.push_back(bin);
    }
    return out;
}

std::vector<RecallLot> recallLots(const std::string& text) {
    RecallLot one{20414, text, 1, records::LotState::onHold, {}, {}};
    one.shipped = {shipped("Harbour Rowing Club", {"C-1", "C-2"}, 48, 20), shipped("Kestrel School", {"C-1"}, 24, 21),
                   shipped("Harbour Rowing Club", {"C-2"}, 12, 19)};
    one.pieces.made = 84;
    one.pieces.shipped = 84;
    RecallLot two{20414, text, 2, records::LotState::cleared, {}, {}};
    two.pieces.made = 60;
    two.pieces.tested = 2;
    RecallLot three{20420, text, 1, records::LotState::released, {}, {}};
    three.shipped = {shipped("Kestrel School", {}, 30, 22)};
    three.pieces.here = 6;
    three.pieces.shipped = 30;
    return {one, two, three};
}

RecallList longRecall(int shipments, const std::string& text) {
    RecallLot lot{20414, text, 1, records::LotState::onHold, {}, {}};
    for (int i = 0; i < shipments; ++i) {
        lot.shipped.push_back(shipped(text, {"C-" + std::to_string(i)}, 12, 1 + i % 25));
    }
    auto list = recallListOf({RecallReach::batch, text, 0, 0}, {lot});
    list.shop = text;
    list.printed = afternoon();
    return list;
}

CertificateFacts certified(int readings, int tests, records::LotState second, const std::string& text) {
    CertificateFacts facts;
    facts.shop = text;
    facts.printed = afternoon();
    facts.ticket = openRun();
    facts.ticket.plan.title = text;
    facts.trace.plan = facts.ticket.plan;
    facts.trace.finished = true;
    facts.trace.lots = {lot(1, records::LotState::cleared), lot(2, second)};
    addHold(facts.trace.lots[1], text);
    addBuckets(facts.trace, text);
    for (int i = 0; i < readings; ++i) {
        facts.trace.readings.push_back(reading(i, text));
        ReadingDetail detail;
        detail.piece = 1 + i;
        detail.sustained = Temperature::fromFahrenheit(318 + i % 40);
        facts.details["reading-" + std::to_string(i)] = detail;
    }
    records::PrintRow print;
    print.named.print = "print-1";
    print.named.number = 7;
    print.named.retained = records::RetainedPlace{text, day(30), false};
    print.lotNumber = 1;
    print.chemistries = {analytics::Chemistry::plastisol};
    facts.trace.prints = {print};
    facts.trace.methods = {washMethod()};
    facts.methods[{"wash-house", 1}] = washMethod();
    for (int i = 0; i < tests; ++i) {
        facts.trace.tests.push_back(test(i, text));
    }
    facts.loads["load-1"] = 12;
    facts.pictures[std::string(64, 'a')] = swatch(qRgb(240, 238, 230));
    facts.names = {{4, "A. Night"}, {5, text}};
    facts.trace.entries = 4711;
    facts.trace.head = kHead;
    return facts;
}

} // namespace holdfast::reports_test
