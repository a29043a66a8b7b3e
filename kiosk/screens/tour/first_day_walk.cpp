#include "kiosk/screens/tour/walks.hpp"

namespace holdfast::kiosk::screens {

void walkFirstDay(TourKiosk& kiosk) {
    kiosk.stop("first-dryer");
    kiosk.press("run");
    kiosk.stop("first-runs");
    kiosk.press("inks");
    kiosk.stop("first-inks");
    kiosk.press("instruments");
    kiosk.stop("first-instruments");
    kiosk.press("shop");
    kiosk.stop("first-shop");
    kiosk.press("shop.section.crew");
    kiosk.stop("first-crew");
    kiosk.press("shop.section.people");
    kiosk.stop("first-people");
    kiosk.press("shop.people.new");
    kiosk.stop("person-form");
    kiosk.type("shop.people.pin", "1111");
    kiosk.type("shop.people.pin-again", "2222");
    kiosk.press("shop.people.role.operator");
    kiosk.press("shop.people.save");
    kiosk.stop("person-form-faults");
    kiosk.press("shop.people.leave");
    kiosk.press("shop.section.dryers");
    kiosk.press("shop.dryers.new");
    kiosk.type("shop.dryers.name", "South");
    kiosk.press("shop.dryers.save");
    kiosk.stop("sign-in-first-owner");
    kiosk.type("sign-in.pin", "1234");
    kiosk.type("sign-in.pin-again", "9");
    kiosk.press("sign-in.set");
    kiosk.stop("sign-in-first-owner-faults");
    kiosk.press("sign-in.leave");
    kiosk.press("shop.dryers.leave");
    kiosk.press("shop.back");
    kiosk.press("dryer");
}

} // namespace holdfast::kiosk::screens
