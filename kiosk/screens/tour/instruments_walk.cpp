#include "kiosk/screens/tour/walks.hpp"

#include <utility>
#include <vector>

namespace holdfast::kiosk::screens {
namespace {

void walkList(TourKiosk& kiosk) {
    kiosk.press("instruments");
    kiosk.stop("instruments");
    for (const auto& [name, stop] : std::vector<std::pair<const char*, const char*>>{{"P-3", "instrument-probe"},
                                                                                     {"S-12", "instrument-strip"},
                                                                                     {"H-7", "instrument-spot"},
                                                                                     {"G-8", "instrument-gun"}}) {
        kiosk.pressRow("instruments.pick.", name);
        kiosk.stop(stop);
    }
    kiosk.press("instruments.withdraw");
    kiosk.stop("instrument-withdraw");
    kiosk.press("instruments.back");
}

void walkInstrumentForms(TourKiosk& kiosk) {
    kiosk.press("instruments.new");
    kiosk.stop("instrument-form");
    kiosk.typeAll("instruments.", {{"name", "P-3"},
                                   {"tolerance", "little"},
                                   {"resolution", "-1"},
                                   {"range.low", "500"},
                                   {"range.high", "20"},
                                   {"own-placement", "none"},
                                   {"address", "somewhere"}});
    kiosk.press("instruments.class.IEC*");
    kiosk.press("instruments.keep-instrument");
    kiosk.stop("instrument-form-faults");
    kiosk.press("instruments.kind.strip");
    kiosk.stop("instrument-form-strip");
    kiosk.typeAll("instruments.",
                  {{"steps", "300, 290, warm"}, {"strip-tolerance", "x"}, {"expiry", "soon"}, {"count", "0"}});
    kiosk.press("instruments.keep-instrument");
    kiosk.stop("instrument-form-strip-faults");
    kiosk.press("instruments.back");
    kiosk.link("L-1", drivers::LinkState::ready);
    kiosk.press("instruments.line.L-1");
    kiosk.stop("instrument-form-line");
    kiosk.press("instruments.back");
}

void walkCertificate(TourKiosk& kiosk) {
    kiosk.pressRow("instruments.pick.", "P-3");
    kiosk.press("instruments.certificate");
    kiosk.stop("certificate-form");
    kiosk.press("instruments.point.add");
    kiosk.typeAll("instruments.", {{"date", "2027-01-01"}, {"due", "2020-01-01"}, {"k", "0"}});
    kiosk.pressIfThere("instruments.point.add");
    kiosk.press("instruments.keep-certificate");
    kiosk.stop("certificate-form-faults");
    kiosk.press("instruments.back");
}

/// A bath that never comes to rest.
void drift(TourKiosk& kiosk) {
    constexpr int kTimes = 35;
    for (int i = 0; i < kTimes; ++i) {
        kiosk.bath(2.0 + 0.7 * (i % 5));
        kiosk.pass(10);
    }
}

void onceMore(TourKiosk& kiosk) {
    kiosk.press("instruments.check.repeat");
    kiosk.pressIfThere("instruments.check.ready");
    kiosk.pressIfThere("instruments.check.inserted");
}

void walkIce(TourKiosk& kiosk) {
    kiosk.pressRow("instruments.pick.", "P-3");
    kiosk.press("instruments.ice");
    kiosk.stop("check-ice-prepare");
    kiosk.press("instruments.check.ready");
    kiosk.bath(21.0);
    kiosk.pass(2);
    kiosk.stop("check-ice-insert");
    kiosk.press("instruments.check.inserted");
    kiosk.bath(0.1);
    kiosk.pass(5);
    kiosk.stop("check-ice-waiting");
    kiosk.pass(120);
    kiosk.stop("check-ice-passed");
    onceMore(kiosk);
    drift(kiosk);
    kiosk.stop("check-ice-timed-out");
    onceMore(kiosk);
    kiosk.bath(15.0);
    kiosk.pass(350);
    kiosk.stop("check-ice-elsewhere");
    kiosk.press("instruments.check.elsewhere");
    kiosk.stop("check-ice-failed");
    kiosk.press("instruments.back");
}

void walkBoiling(TourKiosk& kiosk) {
    kiosk.bath({});
    kiosk.pressRow("instruments.pick.", "H-7");
    kiosk.press("instruments.boiling");
    kiosk.stop("check-boiling-air");
    kiosk.type("instruments.pressure", "little");
    kiosk.press("instruments.air-take");
    kiosk.stop("check-boiling-air-faults");
    kiosk.press("instruments.air.barometer");
    kiosk.press("instruments.air-unit.hpa");
    kiosk.typeAll("instruments.", {{"pressure", "1013"}, {"altitude", "5000"}});
    kiosk.press("instruments.air-take");
    kiosk.stop("check-boiling-air-confirm");
    kiosk.type("instruments.pressure", "9");
    kiosk.press("instruments.air-take");
    kiosk.stop("check-boiling-air-refused");
    kiosk.press("instruments.air.altitude");
    kiosk.stop("check-boiling-air-altitude");
    kiosk.press("instruments.air.report");
    kiosk.typeAll("instruments.", {{"pressure", "1013"}, {"altitude", "500"}});
    kiosk.press("instruments.air-take");
    kiosk.stop("check-boiling-prepare");
    kiosk.press("instruments.check.ready");
    kiosk.stop("check-boiling-by-hand");
    kiosk.press("instruments.check.judge");
    kiosk.stop("check-boiling-by-hand-faults");
    kiosk.type("instruments.shown", "90");
    kiosk.press("instruments.check.judge");
    kiosk.stop("check-boiling-result");
    kiosk.press("instruments.keep-check");
    kiosk.stop("sign-in-owner-to-check");
    kiosk.pressIfThere("sign-in.leave");
    kiosk.pressIfThere("instruments.back");
}

} // namespace

void walkInstruments(TourKiosk& kiosk) {
    walkList(kiosk);
    walkInstrumentForms(kiosk);
    walkCertificate(kiosk);
    walkIce(kiosk);
    walkBoiling(kiosk);
    kiosk.press("dryer");
}

} // namespace holdfast::kiosk::screens
