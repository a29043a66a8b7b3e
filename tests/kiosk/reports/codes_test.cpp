#include "kiosk/reports/codes/code_size.hpp"
#include "kiosk/reports/page/paint.hpp"
#include "kiosk/reports/report.hpp"
#include "tests/kiosk/reports/support/outside.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>
#include <set>

using namespace holdfast;
using namespace holdfast::kiosk::reports;
using namespace holdfast::reports_test;

namespace {

/// Twelve codes on an A4 page, at the size the program itself would choose for a column of 90 mm.
std::vector<PlacedPage> pagesOf(const std::vector<std::string>& codes, Symbology symbology) {
    std::vector<PlacedPage> pages;
    for (std::size_t i = 0; i < codes.size(); ++i) {
        if (i % 12 == 0) {
            pages.push_back({210, 297, {}, {}, {}});
        }
        const auto sized = sizedCode(symbology, codes[i], 90, 30, 12);
        REQUIRE(sized);
        REQUIRE(sized->modules.symbology == symbology);
        const double x = 10 + 100 * static_cast<double>(i % 2);
        const double y = 10 + 46 * static_cast<double>(i % 12 / 2);
        pages.back().codes.push_back({{x, y, sized->width, sized->height}, sized->module, sized->modules});
    }
    return pages;
}

std::vector<std::string> randomCodes() {
    constexpr std::string_view kinds = "RWKNAPTL";
    std::mt19937_64 random(20418);
    std::set<std::string> codes; // zbarimg tells a code once that stands twice on a page
    while (codes.size() < 200) {
        const auto kind = static_cast<drivers::TicketKind>(kinds[random() % kinds.size()]);
        codes.insert(drivers::encode(kind, random() >> (random() % 64), 3));
    }
    return {codes.begin(), codes.end()};
}

} // namespace

TEST_CASE("another's decoder reads two hundred random numbers back, as bars and as squares", "[reports]") {
    withFonts();
    if (!readersAreHere()) {
        return;
    }
    const auto codes = randomCodes();
    QStringList expected;
    for (const auto& code : codes) {
        expected += QString::fromStdString(code);
    }
    expected.sort();
    for (const auto symbology : {Symbology::code128, Symbology::qr}) {
        CHECK(codesRead(pagesOf(codes, symbology)).join(u' ').toStdString() == expected.join(u' ').toStdString());
    }
}

TEST_CASE("bars of six signs are as many modules as the standard counts", "[reports]") {
    // ISO/IEC 15417: start, each sign and check are 11 modules, stop 13
    const auto bars = modulesOf(Symbology::code128, "RN7V3C");
    REQUIRE(bars);
    CHECK(bars->width == 11 * (1 + 6 + 1) + 13);
    CHECK(bars->height == 1);
    // ISO/IEC 18004, table 7: version 1 is 21 modules wide and holds 16 alphanumeric signs at level Q
    const auto square = modulesOf(Symbology::qr, "R00000000000000");
    REQUIRE(square);
    CHECK(square->width == 21);
    CHECK(square->height == 21);
}

TEST_CASE("modules are never under the least width, quiet zones are whole, bars give way to the square", "[reports]") {
    for (double width = 10; width <= 200; width += 1) {
        for (const std::string text : {"A001X", "RN7V3C", "R00000000000000"}) {
            const auto sized = sizedCode(Symbology::code128, text, width, width, 10);
            INFO(width << " " << text);
            if (!sized) {
                CHECK(width < 29 * kLeastSquareModule + 1); // 21 modules and 2 times 4 of quiet
                continue;
            }
            const bool bars = sized->modules.symbology == Symbology::code128;
            const int quiet = bars ? 10 : 4; // ISO/IEC 15417; ISO/IEC 18004
            CHECK(sized->width <= width);
            CHECK(sized->module >= (bars ? 0.33 : 0.5)); // common practice
            CHECK(sized->width == Approx((sized->modules.width + 2 * quiet) * sized->module));
            CHECK(bars == (width >= (modulesOf(Symbology::code128, text)->width + 20) * 4 * 25.4 / 300));
        }
    }
}

TEST_CASE("texts that no scanner could hand on have no code", "[reports]") {
    for (const auto symbology : {Symbology::code128, Symbology::qr}) {
        CHECK_FALSE(modulesOf(symbology, ""));
        CHECK_FALSE(modulesOf(symbology, std::string_view("A\0B", 3)));
        CHECK_FALSE(modulesOf(symbology, "A\nB"));
        CHECK_FALSE(modulesOf(symbology, "\xC3\xA9"));
        CHECK_FALSE(modulesOf(symbology, std::string(10'000, 'A')));
    }
}
