#include "kiosk/screens/tour/walks.hpp"

namespace holdfast::kiosk::screens {
namespace {

using drivers::LinkState;
using drivers::TicketKind;
using shop::ActionCard;

constexpr int kRising = 30;
constexpr int kOneRide = 260;

void card(TourKiosk& kiosk, ActionCard which) {
    kiosk.scan(TicketKind::action, static_cast<std::uint64_t>(which));
}

void rideWhole(TourKiosk& kiosk, double peakFahrenheit) {
    kiosk.ride(peakFahrenheit);
    kiosk.pass(kOneRide);
}

void walkBeforeRide(TourKiosk& kiosk) {
    kiosk.press("scan");
    kiosk.stop("scan-entry");
    kiosk.scanText("R2");
    kiosk.stop("dryer-refused");
    kiosk.scan(TicketKind::run, 29999);
    kiosk.stop("dryer-unknown-run");
    kiosk.scan(TicketKind::run, 20413);
    kiosk.stop("run-no-probe");
    kiosk.link("P-3", LinkState::identifying);
    kiosk.stop("run-probe-identifying");
    kiosk.link("P-3", LinkState::absent, drivers::LinkFault::permission);
    kiosk.stop("run-probe-no-permission");
    kiosk.link("P-3", LinkState::ready);
    kiosk.pass(70);
    kiosk.stop("run-window");
    card(kiosk, ActionCard::wipe);
    kiosk.stop("run-wiping");
    kiosk.moveClock(std::chrono::seconds{21});
}

void walkRide(TourKiosk& kiosk) {
    kiosk.ride(294.2);
    kiosk.pass(kRising);
    kiosk.stop("run-recording");
    kiosk.press("dryer");
    kiosk.stop("dryer-recording");
    kiosk.press("run");
    kiosk.pass(15);
    kiosk.stop("run-cooling");
    kiosk.passUntilWriting();
    kiosk.stop("run-writing");
    kiosk.settle();
    kiosk.stop("run-cured");
    kiosk.press("dryer");
    kiosk.stop("dryer-cured");
    kiosk.press("run");
    kiosk.pressIfThere("next");
}

void walkWindows(TourKiosk& kiosk) {
    kiosk.scan(TicketKind::run, 20415);
    kiosk.stop("run-not-provable");
    kiosk.scan(TicketKind::window, 7);
    kiosk.stop("run-window-card");
    kiosk.scan(TicketKind::run, 20417);
    kiosk.stop("run-closed-many-layers");
    kiosk.scan(TicketKind::run, 20414);
    kiosk.stop("run-closed");
    kiosk.press("dryer");
    kiosk.stop("dryer-closed");
}

void walkBadRides(TourKiosk& kiosk) {
    kiosk.scan(TicketKind::run, 20411);
    rideWhole(kiosk, 306.0);
    kiosk.stop("run-under-cured");
    kiosk.press("why");
    kiosk.stop("run-under-cured-why");
    kiosk.press("why");
    kiosk.press("dryer");
    kiosk.stop("dryer-under-cured");
    kiosk.press("run");
    card(kiosk, ActionCard::next);
    kiosk.stop("run-refused");
    kiosk.press("refusal.close");
    kiosk.scan(TicketKind::run, 20412);
    kiosk.stop("run-under-cured-stays");
    card(kiosk, ActionCard::beltSlower);
    kiosk.stop("run-answered");
    kiosk.scan(TicketKind::run, 20412);
    rideWhole(kiosk, 352.0);
    kiosk.stop("run-overheated");
    kiosk.press("floor.faster");
    kiosk.pressIfThere("next");
    kiosk.press("dryer");
    kiosk.stop("dryer-holds");
}

void walkLost(TourKiosk& kiosk) {
    kiosk.scan(TicketKind::run, 20416);
    kiosk.ride(334.0);
    kiosk.pass(32);
    kiosk.plugged(false);
    kiosk.pass(8);
    kiosk.stop("run-probe-lost");
    kiosk.press("dryer");
    kiosk.stop("dryer-probe-lost");
    kiosk.press("run");
    kiosk.plugged(true);
    kiosk.pass(kOneRide);
    kiosk.stop("run-not-proven");
    card(kiosk, ActionCard::pulled);
    kiosk.stop("run-pulled");
    card(kiosk, ActionCard::next);
}

void walkNotWritten(TourKiosk& kiosk) {
    kiosk.scan(TicketKind::run, 20413);
    kiosk.ride(294.2);
    kiosk.passUntilWriting();
    if (!kiosk.state().pending.empty()) {
        // The disk's own answer comes later and mends it, as one press does.
        kiosk.send(shop::CommitFailed{kiosk.state().pending.front().key,
                                      ledger::Failure{ledger::FailureCode::diskFull, "no room"}});
    }
    kiosk.stop("run-not-written");
    kiosk.settle();
    kiosk.pressIfThere("retry");
    kiosk.pressIfThere("next");
}

void walkStrip(TourKiosk& kiosk) {
    kiosk.scan(TicketKind::run, 20416);
    kiosk.press("strip");
    kiosk.stop("strip");
    kiosk.press("step.4");
    kiosk.stop("strip-chosen");
    kiosk.press("strip.unsure");
    kiosk.stop("strip-unsure");
    kiosk.press("strip.used");
    kiosk.stop("strip-used");
    kiosk.press("strip.used");
    kiosk.press("strip.unsure");
    kiosk.press("step.-1");
    kiosk.stop("strip-all-light");
    kiosk.press("step.5");
    kiosk.press("position.left");
    kiosk.stop("strip-last-dark");
    kiosk.press("strip.keep");
    kiosk.stop("run-strip");
    kiosk.pressIfThere("floor.problem");
    card(kiosk, ActionCard::next);
}

/// Nobody announced a run: the ride is kept, and somebody says later whose it was.
void walkUnnamed(TourKiosk& kiosk) {
    kiosk.stop("dryer-empty");
    kiosk.link("P-3", LinkState::ready);
    kiosk.pass(70);
    kiosk.ride(331.0);
    kiosk.pass(kRising);
    kiosk.stop("run-unnamed-recording");
    kiosk.pass(kOneRide);
    kiosk.stop("run-unnamed");
    kiosk.press("dryer");
    kiosk.stop("dryer-unnamed");
    kiosk.press("floor.claim.*");
    kiosk.stop("dryer-claiming");
    kiosk.scan(TicketKind::run, 20419);
    kiosk.stop("run-claimed");
    kiosk.link("P-3", LinkState::lost, drivers::LinkFault::unplugged);
    kiosk.press("dryer");
}

} // namespace

void walkFloor(TourKiosk& kiosk) {
    walkUnnamed(kiosk);
    walkBeforeRide(kiosk);
    walkRide(kiosk);
    walkWindows(kiosk);
    walkBadRides(kiosk);
    walkLost(kiosk);
    walkNotWritten(kiosk);
    walkStrip(kiosk);
    kiosk.press("dryer");
    kiosk.stop("dryer");
}

} // namespace holdfast::kiosk::screens
