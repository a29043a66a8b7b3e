#include "kiosk/screens/tour/walks.hpp"

namespace holdfast::kiosk::screens {

void walkTrendsEmpty(TourKiosk& kiosk) {
    kiosk.press("trends");
    kiosk.waitUntilWorkedOut();
    kiosk.stop("trends-empty");
    kiosk.press("trends.wash");
    kiosk.stop("trends-empty-wash");
    kiosk.press("trends.back");
    kiosk.press("trends.instruments");
    kiosk.stop("trends-empty-instruments");
    kiosk.press("trends.back");
    kiosk.press("dryer");
}

void walkTrends(TourKiosk& kiosk) {
    kiosk.press("trends");
    kiosk.stop("trends-working");
    kiosk.waitUntilWorkedOut();
    kiosk.stop("trends");
    if (kiosk.offers("trends.suspect.*")) {
        kiosk.press("trends.suspect.*");
        kiosk.stop("trends-lots");
        kiosk.press("trends.back");
    }
    kiosk.press("trends.choose");
    kiosk.stop("trends-choose");
    kiosk.press("trends.position.left");
    kiosk.press("trends.span.all");
    kiosk.press("trends.back");
    kiosk.stop("trends-again");
    kiosk.waitUntilWorkedOut();
    kiosk.stop("trends-filtered");
    kiosk.press("trends.drop.position");
    kiosk.waitUntilWorkedOut();
    if (kiosk.offers("trends.week.*")) {
        kiosk.press("trends.week.*");
        kiosk.stop("trends-week");
        kiosk.press("trends.back");
    }
    kiosk.press("trends.wash");
    kiosk.stop("trends-wash");
    kiosk.press("trends.back");
    kiosk.press("trends.instruments");
    kiosk.stop("trends-instruments");
    kiosk.press("trends.back");
    kiosk.scan(drivers::TicketKind::run, 4);
    kiosk.stop("trends-no-run");
    kiosk.press("dryer");
}

} // namespace holdfast::kiosk::screens
