#include "kiosk/demo/demo_instruments.hpp"
#include "kiosk/demo/history/history_findings.hpp"
#include "kiosk/demo/history/history_story.hpp"

#include <algorithm>

/// Instruments looked after, and customers answered.
namespace holdfast::kiosk::demo::telling {
namespace {

using records::ComplaintKind;

/// As the book has it on that day.
records::InstrumentOnFile onFile(const Story& story, std::size_t place) {
    const auto& fact = story.facts.instruments[place];
    const auto known = std::find_if(story.instruments.begin(), story.instruments.end(),
                                    [&](const auto& one) { return one.spec.name == fact.name; });
    return {*known, story.judge.instrument(place)};
}

void note(Story& story, std::size_t place, const records::CheckDone& done) {
    auto instrument = story.judge.instrument(place);
    instrument.checks.push_back(records::toCheck(done.check));
    story.judge.setInstrument(place, story.judge.idOf(place), std::move(instrument));
}

/// Lots whose readings are no longer worth what was thought.
void doubt(Story& story, const CheckFact& check, const records::CheckDone& done, const std::string& id) {
    const auto calibration = story.judge.calibration(check.instrument, story.pen.dateOf(check.at));
    const auto found = shop::deciding::errorFound(done, calibration);
    if (!found) {
        return;
    }
    shop::deciding::InstrumentDoubt doubt;
    doubt.check = id;
    doubt.found = *found;
    doubt.time.to = story.pen.wallOf(check.at);
    doubt.readings = std::move(story.doubtful);
    story.doubtful.clear();
    for (std::size_t i = 0; i < story.lots.size(); ++i) {
        if (story.stories[i].packed) {
            const auto standing =
                story.stories[i].scrapped ? analytics::LotStanding::scrapped : analytics::LotStanding::cleared;
            doubt.lots.push_back({story.lots[i], standing, story.facts.runs[i].pieces});
        }
    }
    auto holds = shop::deciding::instrumentHolds(doubt);
    shop::deciding::number(
        holds, [&] { return story.pen.newId(check.at); }, story.nextBin);
    for (auto& record : holds.list) {
        if (const auto* hold = std::get_if<records::HoldPlaced>(&record)) {
            const auto run = static_cast<std::size_t>(std::find(story.lots.begin(), story.lots.end(), hold->lot) -
                                                      story.lots.begin());
            story.nextBin = hold->bin + 1;
            story.stories[run].openHolds.push_back({check.at, hold->hold});
            story.ask(run, Question::instrument, story.morningAfter(check.at, 2) + static_cast<int>(run % 20));
        }
        story.pen.put(check.at, std::move(record), kNoor);
    }
}

ComplaintKind kindOf(Complaint what) {
    switch (what) {
    case Complaint::washedOut:
        return ComplaintKind::washedOut;
    case Complaint::cracked:
        return ComplaintKind::cracked;
    case Complaint::peeled:
        return ComplaintKind::peeled;
    case Complaint::feel:
        return ComplaintKind::feel;
    case Complaint::other:
        break;
    }
    return ComplaintKind::other;
}

const char* wordsOf(Complaint what) {
    switch (what) {
    case Complaint::washedOut:
        return "After a few washes half of the print is gone.";
    case Complaint::cracked:
        return "The print has cracks all over.";
    case Complaint::peeled:
        return "It comes off at the edges.";
    case Complaint::feel:
        return "It feels stiffer than last time.";
    case Complaint::other:
        break;
    }
    return "Two of them are of the wrong size.";
}

void take(Story& story, std::size_t place) {
    const auto& complaint = story.facts.complaints[place];
    const auto& run = story.facts.runs[complaint.run];
    records::ComplaintTaken taken;
    taken.complaint = story.complaints[place];
    taken.number = complaint.number;
    taken.customer = run.customer;
    taken.what = kindOf(complaint.what);
    taken.words = wordsOf(complaint.what);
    taken.pieces = complaint.pieces;
    taken.clue = "C-" + std::to_string(run.number) + "-1";
    taken.run = story.runs[complaint.run];
    taken.lot = story.lots[complaint.run];
    taken.received = story.pen.dateOf(complaint.received);
    const auto id = story.pen.newId(complaint.received);
    story.pen.put(complaint.received, taken, kNoor, id);
    if (records::isPrintFailure(taken.what) && !story.stories[complaint.run].scrapped) {
        story.hold(complaint.run, complaint.received, records::HoldCause::complaint, id, std::nullopt, kNoor);
        story.ask(complaint.run, complaint.ours ? Question::theirFault : Question::complaint, complaint.closed);
    }
}

void close(Story& story, std::size_t place) {
    const auto& complaint = story.facts.complaints[place];
    records::FindingSigned finding;
    finding.complaint = story.complaints[place];
    finding.lot = story.lots[complaint.run];
    finding.cause = findingOf(story.facts, complaint);
    finding.action = complaint.ours ? "printed again for them" : "care label explained";
    finding.signers = {kNoor};
    story.pen.put(complaint.closed + 20, finding, kNoor);
}

} // namespace

void tellChecks(Story& story, int day) {
    const auto [first, last] = onDay(story.facts.checks, day, [](const CheckFact& one) { return one.at; });
    for (auto i = first; i < last; ++i) {
        const auto& check = story.facts.checks[i];
        const auto instrument = onFile(story, check.instrument);
        const auto date = story.pen.dateOf(check.at);
        const auto id = story.pen.newId(check.at);
        const auto ice = demoCheckIfDecided(instrument, analytics::CheckKind::ice, date, check.error.fahrenheit());
        if (ice) {
            story.pen.put(check.at, *ice, kNoor, id);
        }
        if (ice && !ice->check.passed) {
            doubt(story, check, *ice, id);
            note(story, check.instrument, *ice);
            continue;
        }
        if (ice) {
            note(story, check.instrument, *ice);
        }
        if (story.facts.instruments[check.instrument].name == std::string{kInstrumentDrift.instrument}) {
            story.doubtful.clear();
        }
        const auto boiling =
            demoCheckIfDecided(instrument, analytics::CheckKind::boiling, date, check.error.fahrenheit());
        if (boiling && boiling->check.passed) {
            story.pen.put(check.at + 3, *boiling, kNoor);
            note(story, check.instrument, *boiling);
        }
    }
}

void tellComplaints(Story& story, int day) {
    for (std::size_t i = 0; i < story.facts.complaints.size(); ++i) {
        if (dayOf(story.facts.complaints[i].received) == day) {
            take(story, i);
        }
        if (dayOf(story.facts.complaints[i].closed) == day) {
            close(story, i);
        }
    }
}

} // namespace holdfast::kiosk::demo::telling
