#include "kiosk/screens/tour/walks.hpp"

#include <utility>
#include <vector>

namespace holdfast::kiosk::screens {
namespace {

using Fields = std::vector<std::pair<const char*, const char*>>;

/// The other lists are offered beside what is due.
void showList(TourKiosk& kiosk, const std::string& list) {
    kiosk.pressIfThere("tests.back");
    kiosk.pressIfThere("tests.back");
    kiosk.pressIfThere("tests.list.due");
    kiosk.pressIfThere("tests.list." + list);
}

/// A print by the run it was made in, on the list of those under test.
void choosePrint(TourKiosk& kiosk, const char* run) {
    showList(kiosk, "prints");
    kiosk.pressDetail("tests.pick.print.", run);
}

void chooseTest(TourKiosk& kiosk, const char* run, const std::string& method) {
    choosePrint(kiosk, run);
    kiosk.press("tests.test");
    kiosk.press("tests.by." + method);
}

/// What is entered is signed once; the kiosk remembers for a while who it was.
void saveTest(TourKiosk& kiosk) {
    kiosk.press("tests.save");
    if (kiosk.offers("sign-in.leave")) {
        kiosk.scan(drivers::TicketKind::person, 6);
        kiosk.type("sign-in.pin", "2468");
        kiosk.waitUntilGone("sign-in.leave");
    }
}

void walkLists(TourKiosk& kiosk) {
    kiosk.press("tests");
    kiosk.stop("tests");
    showList(kiosk, "prints");
    kiosk.stop("tests-prints");
    showList(kiosk, "retained");
    kiosk.stop("tests-retained");
    kiosk.press("tests.pick.print.*");
    kiosk.stop("tests-retained-print");
    showList(kiosk, "loads");
    kiosk.stop("tests-loads");
    kiosk.press("tests.pick.load.*");
    kiosk.stop("tests-load");
    showList(kiosk, "methods");
    kiosk.stop("tests-methods");
    kiosk.press("tests.pick.method.solvent-rub");
    kiosk.stop("tests-method-solvent");
    showList(kiosk, "due");
}

void walkPrint(TourKiosk& kiosk) {
    choosePrint(kiosk, "20391");
    kiosk.stop("tests-print");
    kiosk.press("tests.pick.test.*");
    kiosk.stop("tests-test");
    if (kiosk.offers("tests.versions")) {
        kiosk.press("tests.versions");
        kiosk.stop("tests-test-versions");
    }
    choosePrint(kiosk, "20391");
    kiosk.press("tests.test");
    kiosk.stop("tests-which-test");
    choosePrint(kiosk, "20391");
    kiosk.press("tests.shelf");
    kiosk.stop("tests-shelf-form");
    kiosk.pressIfThere("tests.back");
    choosePrint(kiosk, "20409");
    kiosk.press("tests.gone");
    kiosk.stop("tests-print-gone");
    showList(kiosk, "prints");
    kiosk.type("tests.field.find", "ABCDE");
    kiosk.stop("tests-print-unknown");
    kiosk.pressIfThere("refusal.close");
}

void walkTestForms(TourKiosk& kiosk) {
    showList(kiosk, "due");
    kiosk.press("tests.name");
    kiosk.stop("tests-name-form");
    kiosk.typeAll("tests.field.", {{"run", "99"}, {"piece", "0"}, {"printed", "noon"}});
    kiosk.press("tests.set.retained.yes");
    kiosk.typeAll("tests.field.", {{"until", "soon"}});
    kiosk.press("tests.save");
    kiosk.stop("tests-name-form-faults");
    kiosk.press("tests.back");
    showList(kiosk, "due");
    kiosk.press("tests.new-load");
    kiosk.stop("tests-load-form");
    kiosk.typeAll("tests.field.", {{"temperature", "900"}});
    kiosk.press("tests.save");
    kiosk.stop("tests-load-form-faults");
    kiosk.press("tests.back");
    showList(kiosk, "methods");
    kiosk.press("tests.new-method");
    kiosk.stop("tests-method-form");
    kiosk.typeAll("tests.field.", {{"rest", "long"}, {"due", "72, 24"}});
    kiosk.press("tests.save");
    kiosk.stop("tests-method-form-faults");
    kiosk.press("tests.back");
}

/// By the methods, each form once; what is wrong in it stays.
void walkTests(TourKiosk& kiosk) {
    chooseTest(kiosk, "20391", "stretch-jersey");
    kiosk.stop("tests-stretch");
    kiosk.typeAll("tests.field.", {{"lengthwise.original", "0"}, {"lengthwise.stretched", "150"}});
    kiosk.press("tests.save");
    kiosk.stop("tests-stretch-faults");
    kiosk.press("tests.back");
    for (const auto& [method, stop] : Fields{{"rub-iso", "tests-rub"},
                                             {"shrink-iso", "tests-shrink"},
                                             {"water-drop", "tests-water-drop"},
                                             {"tape", "tests-tape"},
                                             {"solvent-rub", "tests-solvent"},
                                             {"split", "tests-split"},
                                             {"bleed-press", "tests-press"}}) {
        chooseTest(kiosk, "20391", method);
        kiosk.stop(stop);
        kiosk.press("tests.back");
    }
    chooseTest(kiosk, "20391", "rub-iso");
    kiosk.press("tests.typed");
    kiosk.typeAll("tests.field.",
                  {{"answer.0", "4.3"}, {"answer.1", "7"}, {"before.l", "140"}, {"before.a", "1"}, {"before.b", "1"}});
    kiosk.press("tests.save");
    kiosk.stop("tests-rub-faults");
    kiosk.press("tests.back");
    choosePrint(kiosk, "20409");
    kiosk.press("tests.test");
    kiosk.press("tests.by.bleed-watch");
    kiosk.stop("tests-bleed-watch");
    kiosk.press("tests.back");
}

/// The drum goes round once more for what is due: put in, judged, graded, and the third time it fails.
void walkWash(TourKiosk& kiosk) {
    showList(kiosk, "due");
    kiosk.press("tests.due.1.*");
    kiosk.stop("tests-drum");
    kiosk.typeAll("tests.field.",
                  {{"machine", "Washer 1"}, {"good-witness", "G-2"}, {"weak-witness", "W-2"}, {"temperature", "60"}});
    saveTest(kiosk);
    kiosk.stop("tests-washed");
    kiosk.pressIfThere("refusal.close");
    showList(kiosk, "due");
    kiosk.press("tests.due.2.*");
    kiosk.stop("tests-judge-form");
    kiosk.press("tests.set.good.4.5");
    kiosk.press("tests.set.weak.2");
    kiosk.stop("tests-judge-chosen");
    saveTest(kiosk);
    kiosk.stop("tests-judged");
    kiosk.pressIfThere("refusal.close");
    showList(kiosk, "due");
    kiosk.press("tests.due.3.*");
    kiosk.stop("tests-grade");
    kiosk.press("tests.save");
    kiosk.stop("tests-grade-faults");
    kiosk.press("tests.set.answer.0.2.5");
    kiosk.press("tests.set.answer.1.4");
    kiosk.press("tests.set.answer.2.yes");
    kiosk.press("tests.set.answer.3.yes");
    kiosk.stop("tests-grade-chosen");
    saveTest(kiosk);
    kiosk.stop("tests-failed");
    kiosk.pressIfThere("refusal.close");
}

} // namespace

void walkPrintTests(TourKiosk& kiosk) {
    walkLists(kiosk);
    walkPrint(kiosk);
    walkTestForms(kiosk);
    walkTests(kiosk);
    walkWash(kiosk);
    kiosk.press("dryer");
}

} // namespace holdfast::kiosk::screens
