#include "kiosk/screens/tour/walks.hpp"

#include <fstream>
#include <utility>
#include <vector>

namespace holdfast::kiosk::screens {
namespace {

void walkSettings(TourKiosk& kiosk) {
    kiosk.press("shop.section.settings");
    kiosk.stop("shop-settings");
    kiosk.type("shop.settings.panel_inch", "300");
    kiosk.stop("shop-settings-fault");
}

void walkDryers(TourKiosk& kiosk) {
    kiosk.press("shop.section.dryers");
    kiosk.stop("shop-dryers");
    kiosk.press("shop.dryers.pick.*");
    kiosk.stop("shop-dryer-form");
    kiosk.typeAll("shop.", {{"dryers.name", ""},
                            {"dryers.length", "0"},
                            {"dryers.belt", "fast"},
                            {"dryers.slowest", "9"},
                            {"dryers.fastest", "1"},
                            {"dryers.set-point", "9000"},
                            {"dryers.highest", "1"},
                            {"dryers.pieces", "-1"}});
    kiosk.press("shop.dryers.save");
    kiosk.stop("shop-dryer-form-faults");
    kiosk.press("shop.dryers.leave");
}

void walkPeople(TourKiosk& kiosk) {
    kiosk.press("shop.section.crew");
    kiosk.stop("shop-crew");
    kiosk.scan(drivers::TicketKind::person, 77);
    kiosk.stop("shop-crew-unknown-badge");
    kiosk.press("refusal.close");
    kiosk.press("shop.section.people");
    kiosk.stop("shop-people");
    kiosk.press("shop.people.pick.3");
    kiosk.stop("shop-person");
    kiosk.openPad("shop.people.pin");
    kiosk.stop("pad-secret");
    kiosk.type("shop.people.pin", "1397");
    kiosk.type("shop.people.pin-again", "1397");
    kiosk.press("shop.people.leave");
    kiosk.press("shop.section.roles");
    kiosk.stop("shop-roles");
    kiosk.press("shop.section.cards");
    kiosk.stop("shop-cards");
}

void walkBook(TourKiosk& kiosk) {
    kiosk.press("shop.section.book");
    kiosk.stop("shop-book");
    kiosk.press("shop.book.check");
    kiosk.waitFor("shop.book.check");
    kiosk.stop("shop-book-checked");
    kiosk.press("shop.book.backup");
    kiosk.waitFor("shop.book.backup");
    kiosk.stop("shop-book-backed-up");
}

void walkExchange(TourKiosk& kiosk) {
    std::filesystem::create_directories(kiosk.exchange());
    std::ofstream{kiosk.exchange() / "from-another-shop.json"}
        << R"({"holdfast_shop": 1, "families": [{"name": ""}], "fabrics": [{"name": 3}], "unknown": 1})";
    kiosk.press("shop.section.file");
    kiosk.stop("shop-file");
    kiosk.pressRow("shop.file.pick.", "from-another-shop");
    kiosk.stop("shop-file-faulty");
    kiosk.press("shop.file.export");
}

} // namespace

void walkShop(TourKiosk& kiosk) {
    kiosk.press("shop");
    kiosk.stop("shop");
    walkSettings(kiosk);
    walkDryers(kiosk);
    walkPeople(kiosk);
    walkBook(kiosk);
    walkExchange(kiosk);
}

void walkSignIn(TourKiosk& kiosk) {
    // The walk of the shop ends where its file is to be exported: nobody has a PIN yet, so the owner is set first.
    kiosk.stop("sign-in-owner");
    kiosk.type("sign-in.pin", "1397");
    kiosk.type("sign-in.pin-again", "1397");
    kiosk.press("sign-in.set");
    kiosk.stop("sign-in-working");
    kiosk.waitFor("shop.file.export");
    kiosk.stop("shop-file-exported");
    kiosk.pressRow("shop.file.pick.", "holdfast-shop");
    kiosk.stop("shop-file-same");
    kiosk.moveClock(std::chrono::hours{1});
    kiosk.press("shop.section.dryers");
    kiosk.press("shop.dryers.pick.*");
    kiosk.type("shop.dryers.belt", "4");
    kiosk.press("shop.dryers.save");
    kiosk.stop("sign-in");
    kiosk.scan(drivers::TicketKind::person, 77);
    kiosk.stop("sign-in-unknown-badge");
    kiosk.scan(drivers::TicketKind::person, 1);
    kiosk.stop("sign-in-no-right");
    kiosk.scan(drivers::TicketKind::person, 3);
    kiosk.stop("sign-in-pin");
    const auto tryWrong = [&kiosk] {
        kiosk.type("sign-in.pin", "4444");
        kiosk.waitFor("field.sign-in.pin");
    };
    tryWrong();
    kiosk.stop("sign-in-wrong-pin");
    tryWrong();
    tryWrong();
    kiosk.stop("sign-in-slowed");
    kiosk.press("sign-in.leave");
    kiosk.press("shop.dryers.leave");
    kiosk.press("shop.back");
    kiosk.press("dryer");
}

} // namespace holdfast::kiosk::screens
