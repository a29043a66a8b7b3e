#include "tests/screens/live_faults.hpp"
#include "tests/screens/page_faults.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::tests;
using kiosk::screens::gallery;
using kiosk::screens::GalleryState;

namespace {

std::vector<GalleryState> testPages() {
    std::vector<GalleryState> found;
    for (const GalleryState& state : gallery()) {
        if (state.name.startsWith(QStringLiteral("sheet-tests")) ||
            state.name.startsWith(QStringLiteral("sheet-holds"))) {
            found.push_back(state);
        }
    }
    return found;
}

} // namespace

TEST_CASE("pages of tests and holds hold in every size, both themes and long words", "[screens][testblocks]") {
    REQUIRE(testPages().size() >= 10);
    for (const QSize& size : {QSize{1280, 800}, QSize{1920, 1080}, QSize{800, 1280}, QSize{1280, 740}}) {
        KioskView view(size);
        for (const GalleryState& state : testPages()) {
            INFO(state.name.toStdString() << " at " << size.width() << "x" << size.height());
            view.show(state);
            requireNone(writtenFaults(view));
            requireNone(targetFaults(view));
            requireNone(nameFaults(view));
            for (const bool dark : {false, true}) {
                view.kiosk().setDark(dark);
                view.settle();
                requireNone(contrastFaults(view));
            }
            view.kiosk().setDark(false);
            requireNone(tabFaults(view));
        }
    }
}
