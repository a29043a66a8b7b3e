// The kiosk as it is shipped, walked through all its places: what its presenters say must fit where it is drawn.
#include "kiosk/screens/tour/tour.hpp"
#include "tests/screens/live_faults.hpp"
#include "tests/screens/page_faults.hpp"

#include <catch2/catch.hpp>

#include <map>
#include <set>

using namespace holdfast;
using namespace holdfast::tests;
using analytics::TemperatureUnit;
using kiosk::screens::Stop;
using kiosk::screens::Tour;

namespace {

struct Spoken final {
    const char* language;
    TemperatureUnit unit;
};

constexpr Spoken kEnglish{"en", TemperatureUnit::fahrenheit};
constexpr Spoken kSpanish{"es", TemperatureUnit::celsius};

/// Walked once for all tests.
const Tour& tourIn(const Spoken& spoken) {
    static std::map<std::pair<std::string, TemperatureUnit>, Tour> walked;
    const auto key = std::make_pair(std::string{spoken.language}, spoken.unit);
    auto found = walked.find(key);
    if (found == walked.end()) {
        ensureApplication();
        found = walked.emplace(key, kiosk::screens::walkTour(spoken.language, spoken.unit)).first;
    }
    return found->second;
}

/// One window for all of them: what loads takes longer than what is shown.
KioskView& viewOf(const QSize& size) {
    static KioskView* view = new KioskView{size}; // as the application, never deleted
    if (view->size() != size) {
        view->resize(size);
    }
    return *view;
}

using Look = std::function<QStringList(KioskView&)>;
constexpr int kMostLooks = 2;

/// Everything that is wrong at any stop, each once, with the first stop where it is.
QStringList faultsAt(const Tour& tour, const QSize& size, const Look& look) {
    QStringList faults;
    std::set<QString> told;
    auto& view = viewOf(size);
    for (const auto& stop : tour.stops) {
        stop.show(view.kiosk());
        view.settle();
        auto found = look(view);
        for (int i = 0; i < kMostLooks && !found.isEmpty(); ++i) { // what was made late is laid out now
            view.settle();
            found = look(view);
        }
        for (const auto& fault : found) {
            if (told.insert(fault).second) {
                faults.append(
                    QStringLiteral("%1 at %2x%3: %4").arg(stop.name).arg(size.width()).arg(size.height()).arg(fault));
            }
        }
    }
    return faults;
}

QStringList fitAndReach(KioskView& view) {
    return writtenFaults(view) + targetFaults(view);
}

} // namespace

TEST_CASE("a person walks through all places and finds everything to press", "[screens][live]") {
    const auto spoken = GENERATE(kEnglish, kSpanish);
    const auto& tour = tourIn(spoken);
    requireNone(tour.missed);
    CHECK(tour.stops.size() > 120);
    std::set<QString> names;
    for (const auto& stop : tour.stops) {
        INFO(stop.name.toStdString());
        CHECK(names.insert(stop.name).second);
    }
}

TEST_CASE("everything said in English fits, and everything to press is large enough, on every panel",
          "[screens][live]") {
    const auto size = GENERATE(QSize{1280, 800}, QSize{1920, 1080}, QSize{800, 1280}, QSize{1280, 740});
    requireNone(faultsAt(tourIn(kEnglish), size, fitAndReach));
}

TEST_CASE("everything said in Spanish fits, and everything to press is large enough, on every panel",
          "[screens][live]") {
    const auto size = GENERATE(QSize{1280, 800}, QSize{1920, 1080}, QSize{800, 1280}, QSize{1280, 740});
    requireNone(faultsAt(tourIn(kSpanish), size, fitAndReach));
}

TEST_CASE("the other unit fits as well where the page is narrowest", "[screens][live]") {
    requireNone(faultsAt(tourIn({"en", TemperatureUnit::celsius}), {800, 1280}, fitAndReach));
    requireNone(faultsAt(tourIn({"es", TemperatureUnit::fahrenheit}), {800, 1280}, fitAndReach));
}

TEST_CASE("everything to press has a name, and the Tab key reaches it in the order of the work", "[screens][live]") {
    requireNone(
        faultsAt(tourIn(kEnglish), {1280, 800}, [](KioskView& view) { return nameFaults(view) + tabFaults(view); }));
}

TEST_CASE("text stands out from its ground in light and dark", "[screens][live]") {
    auto& view = viewOf({1280, 800});
    const bool dark = GENERATE(false, true);
    view.kiosk().setDark(dark);
    const auto faults = faultsAt(tourIn(kEnglish), {1280, 800}, contrastFaults);
    view.kiosk().setDark(false);
    requireNone(faults);
}
