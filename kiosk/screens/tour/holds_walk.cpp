#include "kiosk/screens/tour/walks.hpp"

namespace holdfast::kiosk::screens {
namespace {

void chooseHold(TourKiosk& kiosk, const char* run) {
    kiosk.pressIfThere("holds.back");
    kiosk.pressIfThere("holds.back");
    kiosk.pressRow("holds.hold.", run);
}

void walkLots(TourKiosk& kiosk) {
    kiosk.press("holds");
    kiosk.stop("holds");
    chooseHold(kiosk, "20398");
    kiosk.stop("holds-bracket");
    kiosk.press("holds.reading.*");
    kiosk.stop("holds-reading");
    kiosk.press("holds.strike");
    kiosk.stop("holds-strike");
    kiosk.press("holds.strike.leave");
    kiosk.press("holds.back");
    chooseHold(kiosk, "20389");
    kiosk.stop("holds-recall-to-decide");
    kiosk.press("holds.recall");
    kiosk.stop("holds-recall-list");
    kiosk.press("holds.back");
    chooseHold(kiosk, "20407");
    kiosk.stop("holds-instrument");
    kiosk.pressIfThere("holds.back");
    kiosk.press("holds.lot.*");
    kiosk.stop("holds-unproven");
}

void walkPieces(TourKiosk& kiosk) {
    chooseHold(kiosk, "20389");
    kiosk.press("holds.pieces");
    kiosk.stop("holds-pieces");
    kiosk.press("holds.pieces.add.shipped");
    kiosk.stop("holds-ship-form");
    kiosk.type("holds.pieces.field.count", "-3");
    kiosk.type("holds.pieces.field.day", "soon");
    kiosk.press("holds.pieces.keep");
    kiosk.stop("holds-ship-form-faults");
    kiosk.press("holds.pieces.leave");
    kiosk.press("holds.pieces.count");
    kiosk.stop("holds-count-form");
    kiosk.type("holds.pieces.field.made", "3");
    kiosk.press("holds.pieces.keep");
    kiosk.stop("holds-count-form-faults");
    kiosk.press("holds.pieces.leave");
    kiosk.press("holds.pieces.entry.*");
    kiosk.stop("holds-move-history");
    kiosk.press("holds.back");
}

void walkShelf(TourKiosk& kiosk) {
    kiosk.pressIfThere("holds.back");
    kiosk.press("holds.shelf");
    kiosk.stop("holds-shelf");
    kiosk.press("holds.shelf.tick.*");
    kiosk.stop("holds-shelf-ticked");
    kiosk.press("holds.back");
    kiosk.press("holds.mock");
    kiosk.stop("holds-mock");
    kiosk.type("holds.recall.batch", "L 20 114");
    kiosk.stop("holds-mock-result");
    kiosk.press("holds.back");
}

/// Below the limit two have to sign.
void walkDecision(TourKiosk& kiosk) {
    chooseHold(kiosk, "20393");
    kiosk.stop("holds-test-failed");
    kiosk.press("holds.decide");
    kiosk.stop("holds-decision-form");
    kiosk.press("holds.form.sign");
    kiosk.stop("holds-decision-form-faults");
    kiosk.press("holds.form.word.released");
    kiosk.type("holds.form.reason", "the customer takes them as they are");
    kiosk.stop("holds-decision-released");
    kiosk.press("holds.form.sign");
    kiosk.stop("sign-first");
    kiosk.scan(drivers::TicketKind::person, 1);
    kiosk.stop("sign-no-right");
    kiosk.scan(drivers::TicketKind::person, 6);
    kiosk.stop("sign-first-pin");
    kiosk.type("sign-in.pin", "2468");
    kiosk.waitFor("sign-in.person.3");
    kiosk.stop("sign-second");
    kiosk.scan(drivers::TicketKind::person, 6);
    kiosk.stop("sign-second-same-person");
    kiosk.scan(drivers::TicketKind::person, 3);
    kiosk.type("sign-in.pin", "1397");
    kiosk.waitUntilGone("sign-in.leave");
    kiosk.stop("holds-decided");
}

} // namespace

void walkSecrets(TourKiosk& kiosk) {
    kiosk.press("shop");
    kiosk.press("shop.section.people");
    kiosk.press("shop.people.pick.6");
    kiosk.type("shop.people.pin", "2468");
    kiosk.type("shop.people.pin-again", "2468");
    kiosk.press("shop.people.save");
    kiosk.type("sign-in.pin", "1397");
    kiosk.type("sign-in.pin-again", "1397");
    kiosk.press("sign-in.set");
    kiosk.waitForPin(6);
    kiosk.pressIfThere("shop.people.leave");
    kiosk.pressIfThere("shop.back");
    kiosk.press("dryer");
}

void walkHolds(TourKiosk& kiosk) {
    walkLots(kiosk);
    walkPieces(kiosk);
    walkShelf(kiosk);
    walkDecision(kiosk);
    kiosk.pressIfThere("holds.back");
    kiosk.pressIfThere("holds.back");
    kiosk.press("dryer");
}

void walkTrace(TourKiosk& kiosk) {
    kiosk.press("holds");
    kiosk.pressIfThere("holds.back");
    kiosk.press("holds.clue");
    kiosk.stop("trace");
    kiosk.type("trace.clue", "Night runners");
    kiosk.stop("trace-found");
    kiosk.type("trace.clue", "no such thing");
    kiosk.stop("trace-nothing");
    kiosk.type("trace.clue", "20389");
    kiosk.stop("trace-run");
    kiosk.press("trace.reading.*");
    kiosk.stop("trace-reading");
    kiosk.press("holds.back");
    kiosk.press("trace.back");
    kiosk.press("dryer");
}

void walkComplaint(TourKiosk& kiosk) {
    kiosk.press("complaint");
    kiosk.stop("complaint");
    kiosk.press("complaint.causes");
    kiosk.waitFor("complaint.cause.pick.*");
    kiosk.stop("complaint-causes");
    kiosk.press("complaint.cause.pick.*");
    kiosk.stop("complaint-causes-complaints");
    kiosk.press("complaint.back");
    kiosk.press("complaint.pick.*");
    kiosk.stop("complaint-working");
    kiosk.waitFor("complaint.recall");
    kiosk.stop("complaint-risk");
    kiosk.press("complaint.at-risk.*");
    kiosk.stop("complaint-risk-lot");
    kiosk.press("complaint.recall");
    kiosk.stop("complaint-recall");
    kiosk.press("complaint.back");
    kiosk.press("complaint.clue");
    kiosk.stop("complaint-clue");
    kiosk.press("complaint.change");
    kiosk.type("complaint.field.pieces", "3");
    kiosk.press("complaint.keep");
    if (kiosk.offers("sign-in.leave")) {
        kiosk.scan(drivers::TicketKind::person, 6);
        kiosk.type("sign-in.pin", "2468");
        kiosk.waitUntilGone("sign-in.leave");
    }
    kiosk.press("complaint.said");
    kiosk.stop("complaint-versions");
    kiosk.press("complaint.back");
    kiosk.press("complaint.close");
    kiosk.stop("complaint-finding");
    kiosk.press("complaint.finding.sign");
    kiosk.stop("complaint-finding-faults");
    kiosk.press("complaint.finding.cause.mislabelled-ink");
    kiosk.stop("complaint-finding-cause");
    kiosk.press("complaint.back");
    kiosk.press("complaint.all");
    kiosk.press("complaint.toggle");
    kiosk.stop("complaint-closed-too");
    kiosk.press("complaint.new");
    kiosk.stop("complaint-form");
    kiosk.type("complaint.field.pieces", "some");
    kiosk.type("complaint.field.received", "soon");
    kiosk.press("complaint.keep");
    kiosk.stop("complaint-form-faults");
    kiosk.type("complaint.field.clue", "Puppet theatre");
    kiosk.stop("complaint-form-clue");
    kiosk.press("complaint.run.*");
    kiosk.press("complaint.kind.washed-out");
    kiosk.stop("complaint-form-tied");
    kiosk.press("complaint.back");
    kiosk.press("dryer");
}

} // namespace holdfast::kiosk::screens
