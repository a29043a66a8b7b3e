// What stands on the screen while the demo's book is written.
#include "kiosk/screens/presenting/demo_writing.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;

TEST_CASE("while the demo is written the page says so in either language, with nothing to press",
          "[presenting][demo]") {
    wording::Speech speech;
    const auto english = demoWritingShown(speech);
    REQUIRE_FALSE(english.page.blocks.isEmpty());
    CHECK(english.page.blocks.front().text == "The demo shop is being written: eighteen months, some seconds.");
    CHECK(english.frame.header.title.what == "Demo shop");
    CHECK(english.page.actions.isEmpty());
    CHECK(english.page.listActions.isEmpty());
    CHECK(english.frame.places.isEmpty());
    CHECK(english.frame.refusal == RefusalState{}); // it is no fault
    // A place of its own: neither the dryer's page nor a run's stands under it.
    CHECK(english.frame.place != "dryer");
    CHECK(english.frame.place != "run");
    CHECK(english.frame.place != "strip");
    CHECK_FALSE(english.frame.place.isEmpty());
    speech.language = &wording::Language::spanish();
    CHECK(demoWritingShown(speech).page.blocks.front().text.startsWith(QStringLiteral("Se está escribiendo")));
}
