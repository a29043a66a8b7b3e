#include "kiosk/screens/tour/tour.hpp"

#include "kiosk/screens/tour/walks.hpp"

namespace holdfast::kiosk::screens {
namespace {

/// As a person would: by the settings of the shop, while the kiosk runs.
void choose(TourKiosk& kiosk, const std::string& language, analytics::TemperatureUnit unit) {
    kiosk.press("shop");
    kiosk.press("shop.section.settings");
    if (language != "en") {
        kiosk.press("shop.settings.choose.language." + language);
    }
    if (unit == analytics::TemperatureUnit::celsius) {
        kiosk.press("shop.settings.choose.unit.C");
    }
    kiosk.press("shop.back");
    kiosk.press("dryer");
}

} // namespace

Tour walkTour(const std::string& language, analytics::TemperatureUnit unit) {
    Tour tour;
    {
        TourKiosk fresh{TourKiosk::Shop::none, tour};
        choose(fresh, language, unit);
        walkFirstDay(fresh);
        walkTrendsEmpty(fresh);
    }
    TourKiosk kiosk{TourKiosk::Shop::invented, tour};
    choose(kiosk, language, unit);
    walkRuns(kiosk);
    walkFloor(kiosk);
    walkReadings(kiosk);
    walkInks(kiosk);
    walkInstruments(kiosk);
    walkShop(kiosk);
    walkSignIn(kiosk);
    TourKiosk demo{TourKiosk::Shop::demo, tour};
    choose(demo, language, unit);
    walkSecrets(demo);
    walkPrintTests(demo);
    walkHolds(demo);
    walkTrace(demo);
    walkComplaint(demo);
    walkTrends(demo);
    demo.keepPictures();
    return tour;
}

} // namespace holdfast::kiosk::screens
