#include "kiosk/screens/tour/walks.hpp"

#include <utility>
#include <vector>

namespace holdfast::kiosk::screens {
namespace {

void walkFamilies(TourKiosk& kiosk) {
    kiosk.press("inks.pick.family.low-cure");
    kiosk.stop("inks-family");
    kiosk.press("inks.revise");
    kiosk.stop("inks-family-revise");
    kiosk.press("inks.back");
    kiosk.press("inks.pick.family.discharge*");
    kiosk.stop("inks-family-pot-life");
    kiosk.press("inks.pick.cloth.100% polyester");
    kiosk.stop("inks-cloth");
    kiosk.press("inks.new-family");
    kiosk.stop("inks-family-form");
    kiosk.typeAll("inks.field.", {{"cure", "hot"},
                                  {"hold", "-3"},
                                  {"gel-low", "900"},
                                  {"gel-high", "20"},
                                  {"ceiling", "10"},
                                  {"ease", "12"},
                                  {"hotter", "400"},
                                  {"cooler", "many"},
                                  {"pot-life", "0"},
                                  {"band-low", "12"},
                                  {"band-high", "3"},
                                  {"rest", "soon"}});
    kiosk.press("inks.save");
    kiosk.stop("inks-family-form-faults");
    kiosk.press("inks.back");
    kiosk.press("inks.new-cloth");
    kiosk.stop("inks-cloth-form");
    kiosk.typeAll("inks.field.", {{"name", "100% cotton"}, {"hard-ceiling", "9"}, {"bleed-ceiling", "hot"}});
    kiosk.press("inks.save");
    kiosk.stop("inks-cloth-form-faults");
    kiosk.press("inks.back");
}

void walkBuckets(TourKiosk& kiosk) {
    kiosk.press("inks.open-bucket");
    kiosk.stop("inks-bucket-form");
    kiosk.openPad("inks.field.expiry");
    kiosk.stop("pad-date");
    kiosk.typeAll("inks.field.", {{"expiry", "2026-13-40"}, {"additive", "all"}});
    kiosk.press("inks.save");
    kiosk.stop("inks-bucket-form-faults");
    kiosk.press("inks.set.family.discharge*");
    kiosk.typeAll(
        "inks.field.",
        {{"colour", "navy for the rowing club"}, {"batch", "L 20 117"}, {"expiry", "2026-09-30"}, {"additive", "6"}});
    kiosk.press("inks.set.catalysed.yes");
    kiosk.press("inks.save");
    kiosk.stop("inks-bucket");
}

void walkMix(TourKiosk& kiosk) {
    kiosk.press("inks.mix");
    kiosk.stop("inks-mix-form");
    kiosk.press("inks.save");
    kiosk.stop("inks-mix-form-faults");
    kiosk.press("inks.add-part.291");
    kiosk.press("inks.add-part.292");
    kiosk.press("inks.add-part.293");
    kiosk.typeAll("inks.field.",
                  {{"name", "old pink"}, {"part.291", "800"}, {"part.292", "200"}, {"part.293", "some"}});
    kiosk.press("inks.save");
    kiosk.stop("inks-mix-form-warnings");
    kiosk.press("inks.remove-part");
    kiosk.press("inks.save");
    kiosk.stop("inks-mix");
    kiosk.press("inks.mix");
    kiosk.press("inks.add-part.293");
    kiosk.press("inks.add-part.294");
    kiosk.typeAll("inks.field.",
                  {{"name", "old pink, darker"}, {"colour", "old pink"}, {"part.293", "100"}, {"part.294", "400"}});
    kiosk.press("inks.save");
    kiosk.stop("inks-mix-form-chemistries");
    kiosk.press("inks.back");
    kiosk.press("inks.mix");
    kiosk.press("inks.add-part.291");
    kiosk.press("inks.add-part.294");
    kiosk.typeAll("inks.field.",
                  {{"name", "old pink, paler"}, {"colour", "old pink"}, {"part.291", "100"}, {"part.294", "400"}});
    kiosk.press("inks.save");
    kiosk.stop("inks-mix-of-mixes");
    kiosk.press("inks.mislabelled");
    kiosk.stop("inks-bucket-closed");
    kiosk.press("inks.pick.bucket.293");
    kiosk.moveClock(std::chrono::hours{30});
    kiosk.stop("inks-bucket-past-pot-life");
}

} // namespace

void walkInks(TourKiosk& kiosk) {
    kiosk.press("inks");
    kiosk.stop("inks");
    walkFamilies(kiosk);
    walkBuckets(kiosk);
    walkMix(kiosk);
    kiosk.scan(drivers::TicketKind::bucket, 999);
    kiosk.stop("inks-bucket-unknown");
    kiosk.press("dryer");
}

} // namespace holdfast::kiosk::screens
