#include "kiosk/screens/tour/walks.hpp"

#include <fstream>

namespace holdfast::kiosk::screens {
namespace {

void layFile(const TourKiosk& kiosk, const char* name, const std::string& text) {
    std::filesystem::create_directories(kiosk.exchange());
    std::ofstream{kiosk.exchange() / name} << text;
}

void walkForm(TourKiosk& kiosk) {
    kiosk.press("runs.new");
    kiosk.stop("runs-form");
    kiosk.press("runs.save");
    kiosk.stop("runs-form-faults");
    kiosk.press("runs.advise");
    kiosk.stop("runs-form-advice-none");
    kiosk.openPad("runs.title");
    kiosk.stop("pad-text");
    kiosk.type("runs.title", "choir robes, gold crest on the left side of the chest");
    kiosk.openPad("runs.pieces");
    kiosk.stop("pad-number");
    kiosk.type("runs.pieces", "seventy");
    kiosk.type("runs.garment", "dark red");
    kiosk.press("runs.fabric.100% polyester");
    kiosk.type("runs.colour.1", "gold");
    kiosk.press("runs.save");
    kiosk.stop("runs-form-faults-few");
    kiosk.type("runs.pieces", "70");
    kiosk.press("runs.advise");
    kiosk.stop("runs-form-advised");
    kiosk.press("runs.children.yes");
    kiosk.press("runs.save");
    kiosk.stop("runs-saved");
    kiosk.press("runs.back");
}

void walkImport(TourKiosk& kiosk) {
    kiosk.press("runs.import");
    kiosk.stop("runs-import-none");
    kiosk.press("runs.back");
    layFile(kiosk, "orders-march.csv",
            "title,fabric,layers,reference,customer,pieces\n"
            "team shirts,100% cotton,white: standard / red: standard,A-1,Swim team,40\n"
            "team shirts,velvet,white: standard,A-2,Swim team,40\n"
            "=team shirts,100% cotton,white: standard,A-3,Swim team,40\n"
            "team shirts,100% cotton,white and red,A-4,Swim team,40\n"
            "team shirts,100% cotton,white: standard,A-1,Swim team,many\n");
    layFile(kiosk, "orders-old.csv", "title,customer\nteam shirts,Swim team\n");
    layFile(kiosk, "orders-empty.csv", "");
    kiosk.press("runs.import");
    kiosk.stop("runs-import");
    kiosk.pressRow("runs.file.", "orders-old");
    kiosk.stop("runs-import-no-columns");
    kiosk.pressRow("runs.file.", "orders-empty");
    kiosk.stop("runs-import-empty");
    kiosk.pressRow("runs.file.", "orders-march");
    kiosk.waitFor("runs.import-now");
    kiosk.stop("runs-import-found");
    kiosk.press("runs.import-now");
    kiosk.stop("runs-import-done");
}

void walkFinish(TourKiosk& kiosk) {
    kiosk.pressRow("runs.pick.", "20418");
    kiosk.press("runs.finish");
    kiosk.stop("runs-finish");
    kiosk.type("runs.made", "40");
    kiosk.type("runs.spoiled", "8");
    kiosk.press("runs.finish-now");
    kiosk.press("runs.toggle");
    kiosk.stop("runs-finished");
    kiosk.pressRow("runs.pick.", "20418");
    kiosk.stop("runs-finished-one");
    kiosk.press("runs.toggle");
}

} // namespace

void walkRuns(TourKiosk& kiosk) {
    kiosk.press("run");
    kiosk.stop("runs");
    kiosk.pressRow("runs.pick.", "20417");
    kiosk.stop("runs-one");
    kiosk.press("runs.change");
    kiosk.stop("runs-form-change");
    kiosk.press("runs.back");
    kiosk.press("runs.back");
    walkForm(kiosk);
    walkImport(kiosk);
    walkFinish(kiosk);
    kiosk.press("dryer");
}

} // namespace holdfast::kiosk::screens
