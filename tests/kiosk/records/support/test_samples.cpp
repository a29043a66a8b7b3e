#include "tests/kiosk/records/support/sample_ids.hpp"
#include "tests/kiosk/records/support/samples.hpp"

namespace holdfast::kiosk::records::testing {
namespace {

namespace a = analytics;

const std::string kPrint = "01926e2a-0000-7000-8000-000000000011";
const std::string kOtherPrint = "01926e2a-0000-7000-8000-000000000012";
const std::string kLoad = "01926e2a-0000-7000-8000-000000000013";
const std::string kHold = "01926e2a-0000-7000-8000-000000000014";
const std::string kComplaint = "01926e2a-0000-7000-8000-000000000015";
const std::string kReRunLot = "01926e2a-0000-7000-8000-000000000016";
/// Of what the samples correct.
const std::string kFirstTest = "01926e2a-0000-7000-8000-000000000021";
const std::string kFirstJudgement = "01926e2a-0000-7000-8000-000000000022";
const std::string kFirstDecision = "01926e2a-0000-7000-8000-000000000023";
const std::string kFirstMove = "01926e2a-0000-7000-8000-000000000024";

PrintChanged sampleChange() {
    return {kPrint, RetainedPlace{"shelf 3", day(2026, 12, 1), false}, PrintEnd::usedUp};
}

LoadJudged sampleJudgement() {
    LoadJudged judged{kLoad, 4.25, 2.5, 4.0, 3.0, 1.5, LoadWord::valid, kFirstJudgement};
    judged.byInstrument = true;
    return judged;
}

PiecesMoved sampleMove() {
    return {kSampleLot, PiecePlace::shipped, 96, day(2026, 3, 4), "school", {"C1", "C2"}, kFirstMove};
}

FindingSigned sampleFinding() {
    return {kComplaint, kSampleLot, "the belt ran faster than said", "belt checked by a mark each shift",
            true,       {12, 14}};
}

} // namespace

PrintNamed samplePrint() {
    PrintNamed print{kPrint, 31, kSampleRun, kSampleLot};
    print.piece = 37;
    print.position = BeltPosition::right;
    print.printedAt = 1'772'000'050'000;
    print.halfOf = kOtherPrint;
    print.retained = RetainedPlace{"shelf 2", day(2027, 3, 1), true};
    return print;
}

MethodDescribed sampleMethod() {
    MethodDescribed method;
    method.key = "wash-house";
    method.revision = 3;
    method.name = "our wash";
    method.kind = TestKind::wash;
    method.mark = a::Mark::commonPractice;
    method.source = "the shop's own sheet";
    method.chemistries = {a::Chemistry::plastisol, a::Chemistry::waterBased};
    method.restHours = 24.0;
    method.dueHours = {24.0, 72.0};
    method.programme = WashProgramme{a::AuthoredTemperature{40.0, a::TemperatureUnit::celsius}, 30, true, 5};
    method.pullPercent = {25.0, 50.0};
    method.steps = {"turn it inside out", "wash, then dry"};
    method.cautions = {"the drum's door is hot"};
    a::Criterion grade{a::Quantity::changeGrade, "", a::Bound::atLeast, a::Grade::fromStep(6), {5, {}}, true};
    a::Criterion cracks{a::Quantity::crackClass, "", a::Bound::atMost, a::CrackClass::hairline, {}, false};
    cracks.place.elongation = a::RelativeLength::fromFraction(0.5);
    a::Criterion shrink{a::Quantity::changeWidthwise, "", a::Bound::within, a::RelativeLength::fromFraction(0.05)};
    a::Criterion own{a::Quantity::ownNumber, "pieces of lint", a::Bound::atMost, 3.0};
    a::Criterion bled{a::Quantity::bled, "", a::Bound::is, false};
    method.rule = a::PassRule{{grade, cracks, shrink, own, bled}};
    method.eachLot = true;
    method.withdrawn = true;
    return method;
}

LoadWashed sampleLoad() {
    LoadWashed load{kLoad, 4, "the big machine", "wash-house"};
    load.temperature = a::AuthoredTemperature{104.0, a::TemperatureUnit::fahrenheit};
    load.detergent = "D-12";
    load.prints = {kPrint, kOtherPrint};
    load.besides = "six blank shirts";
    load.goodWitness = "G1";
    load.weakWitness = "W1";
    return load;
}

TestDone sampleTest() {
    TestDone done;
    done.print = kPrint;
    done.method = "wash-house";
    done.revision = 3;
    done.cycle = 1;
    done.load = kLoad;
    a::TestResult crack{a::Quantity::crackClass, "", a::CrackClass::hairline, {}};
    crack.place.elongation = a::RelativeLength::fromFraction(0.25);
    done.results = {{a::Quantity::changeGrade, "", a::Grade::fromStep(7), {1, {}}},
                    crack,
                    {a::Quantity::recovery, "", a::RelativeLength::fromFraction(1.0 / 3.0), {}},
                    {a::Quantity::ownNumber, "pieces of lint", 2.0, {}},
                    {a::Quantity::bled, "", false, {}}};
    done.lengthwise = GaugeLengths{100.0, 150.0, 102.5};
    done.widthwise = GaugeLengths{100.0, {}, 97.0};
    done.before = a::Lab{52.5, 40.0, 21.25};
    done.after = a::Lab{54.0, 38.5, 20.0};
    done.garment = a::Lab{50.0, 55.0, 30.0};
    done.colourLimit = 0.75;
    done.instrument = "01926e2a-0000-7000-8000-000000000004";
    done.pictures = {{std::string(64, 'b'), PictureSide::unwashed}, {std::string(64, 'c'), PictureSide::washed}};
    done.outcome = TestOutcome::passed;
    done.note = "fibres through the white";
    done.corrects = kFirstTest;
    return done;
}

HoldPlaced sampleHold() {
    HoldPlaced hold{kHold, kSampleLot, HoldCause::test};
    hold.because = kFirstTest;
    hold.pieces = PieceRange{37, 60};
    hold.count = 24;
    hold.basis = CountBasis::rateAndTime;
    hold.bin = 5;
    return hold;
}

DecisionSigned sampleDecision() {
    DecisionSigned decision{"01926e2a-0000-7000-8000-000000000017", kSampleLot, {kHold}, DecisionWord::reRun};
    decision.reason = "washed again at the right heat";
    decision.signers = {12, 14};
    decision.laboratoryReport = "LR 2026-118";
    decision.reRunLot = kReRunLot;
    decision.corrects = kFirstDecision;
    return decision;
}

ComplaintTaken sampleComplaint() {
    ComplaintTaken taken{kComplaint, 3, "school", ComplaintKind::washedOut};
    taken.words = "the white comes off";
    taken.pieces = 6;
    taken.clue = "PO 4411";
    taken.run = kSampleRun;
    taken.lot = kSampleLot;
    taken.pictures = {std::string(64, 'd')};
    taken.received = day(2026, 4, 2);
    return taken;
}

std::vector<Record> samplesOfTesting() {
    return {
        samplePrint(),
        sampleChange(),
        sampleMethod(),
        sampleLoad(),
        sampleJudgement(),
        sampleTest(),
        sampleHold(),
        HoldChanged{kHold, PieceRange{37, {}}, 30, CountBasis::typed},
        sampleDecision(),
        sampleMove(),
        PiecesCounted{kSampleLot, 140, 44, "01926e2a-0000-7000-8000-0000000000c1"},
        ShelfCounted{{{kHold, 29}}},
        ReadingMissed{kSampleLot, DueReadingKind::minutes, 88},
        sampleComplaint(),
        sampleFinding(),
    };
}

} // namespace holdfast::kiosk::records::testing
