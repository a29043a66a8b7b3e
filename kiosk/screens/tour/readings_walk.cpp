#include "kiosk/screens/tour/walks.hpp"

namespace holdfast::kiosk::screens {
namespace {

using drivers::TicketKind;

void walkByHand(TourKiosk& kiosk) {
    kiosk.scan(TicketKind::run, 20416);
    kiosk.press("reading.open");
    kiosk.stop("readings-ride");
    kiosk.press("reading.hand.H-7");
    kiosk.stop("readings-spot");
    kiosk.type("reading.before", "hot");
    kiosk.type("reading.value", "9000");
    kiosk.stop("readings-spot-faults");
    kiosk.type("reading.before", "72");
    kiosk.type("reading.value", "170");
    kiosk.stop("readings-spot-preview");
    kiosk.press("reading.leave");
    kiosk.press("reading.open");
    kiosk.press("reading.hand.G-8");
    kiosk.stop("readings-gun");
    kiosk.type("reading.value", "171");
    kiosk.stop("readings-gun-preview");
    kiosk.press("reading.keep");
    kiosk.stop("run-gun");
    kiosk.pressIfThere("floor.problem");
    kiosk.scan(TicketKind::action, static_cast<std::uint64_t>(shop::ActionCard::next));
}

void walkFlash(TourKiosk& kiosk) {
    kiosk.scan(TicketKind::run, 20412);
    kiosk.press("reading.open");
    kiosk.press("reading.flash");
    kiosk.stop("readings-flash");
    kiosk.press("reading.layer.1");
    kiosk.type("reading.peak", "120");
    kiosk.stop("readings-flash-preview");
    kiosk.press("reading.keep");
    kiosk.stop("run-flash-noted");
}

void walkDryerSheet(TourKiosk& kiosk) {
    kiosk.press("dryer");
    kiosk.press("floor.dryer");
    kiosk.stop("readings-dryer");
    kiosk.type("reading.belt", "fast");
    kiosk.type("reading.pulled", "half");
    kiosk.stop("readings-dryer-faults");
    kiosk.press("floor.set-up");
    kiosk.stop("readings-dryer-set-up");
    kiosk.press("floor.ready");
    kiosk.press("floor.stopped");
    kiosk.stop("readings-dryer-stopped");
    kiosk.press("floor.started");
    kiosk.press("floor.also");
    kiosk.scan(TicketKind::run, 20416);
    kiosk.stop("run-shared-belt");
    kiosk.press("dryer");
    kiosk.stop("dryer-shared-belt");
    kiosk.press("floor.dryer");
    kiosk.stop("readings-dryer-shared-belt");
    kiosk.press("dryer");
}

void walkHandOver(TourKiosk& kiosk) {
    kiosk.press("floor.dryer");
    kiosk.press("reading.hand-over");
    kiosk.stop("hand-over");
    kiosk.press("floor.taken-over");
    kiosk.ride(330.0);
    kiosk.pass(25);
    kiosk.restart();
    kiosk.stop("power-loss");
    kiosk.link("P-3", drivers::LinkState::ready);
    kiosk.pass(70);
    kiosk.pressIfThere("floor.taken-over");
    kiosk.press("dryer");
    kiosk.stop("dryer-not-ready");
}

void walkWayOut(TourKiosk& kiosk) {
    kiosk.scan(TicketKind::run, 20414);
    kiosk.pass(10); // the ticket is read anew, and must not count as the same scan
    kiosk.press("way.0");
    kiosk.stop("run-way-taken");
    kiosk.press("dryer");
}

} // namespace

void walkReadings(TourKiosk& kiosk) {
    walkByHand(kiosk);
    walkFlash(kiosk);
    walkDryerSheet(kiosk);
    walkHandOver(kiosk);
    walkWayOut(kiosk);
}

} // namespace holdfast::kiosk::screens
