// From a bad reading to its bin and another run through the dryer, as people live it in the window. Run 20413 is the
// demo's.
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "tests/kiosk/e2e/support/book_look.hpp"
#include "tests/kiosk/e2e/support/kiosk_process.hpp"
#include "tests/kiosk/e2e/support/whole_kiosk.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::tests;
namespace records = holdfast::kiosk::records;
namespace ledger = holdfast::kiosk::ledger;

namespace {

constexpr double kSpeed = 10.0;
constexpr double kCold = 262.0; // °F, far under it: its inks cure at 285 °F (contracts, Starters)

class Window final {
public:
    explicit Window(const WholeKiosk& kiosk) : m_kiosk{kiosk} {}

    void press(const char* beginning) const {
        INFO(beginning << "\n" << all());
        REQUIRE(eventually([&] { return m_kiosk.pressWhatBegins(beginning); }));
    }
    void choose(const char* beginning) const {
        INFO(beginning << "\n" << all());
        REQUIRE(eventually([&] { return m_kiosk.chooseRow(beginning); }));
    }
    void wait(const char* text) const {
        INFO(text << "\n" << all());
        REQUIRE(eventually([&] { return m_kiosk.showsPartly(text); }));
    }
    void fill(const char* field, const char* text) const {
        press(field);
        INFO(field);
        REQUIRE(eventually([&] { return m_kiosk.type(text); }));
    }
    /// The demo's owner has no PIN: the first signature of all sets it.
    void setOwnersPin() const {
        wait("The owner's PIN");
        fill("PIN", "1397");
        fill("PIN again", "1397");
        press("Set the PIN");
    }
    [[nodiscard]] std::string all() const { return m_kiosk.textsShown().join(QLatin1Char{'\n'}).toStdString(); }

private:
    const WholeKiosk& m_kiosk;
};

std::ptrdiff_t countOf(const Rig& rig, std::int64_t after, const char* kind) {
    const auto kinds = kindsFrom(rig.data(), after + 1);
    return std::count(kinds.begin(), kinds.end(), kind);
}

/// As a second program sees it that only reads.
std::unique_ptr<ledger::Book> bookOf(const Rig& rig) {
    auto book = ledger::Book::open(rig.data(), std::make_shared<records::ShopProjection>(), ledger::OpenMode::readOnly);
    REQUIRE(book);
    return std::move(*book);
}

std::vector<records::LotRow> lotsOf(const Rig& rig, std::int64_t number) {
    const auto book = bookOf(rig);
    const auto run = records::runByNumber(book->reader(), records::PlanKind::run, number);
    REQUIRE(run);
    REQUIRE(*run);
    auto lots = records::lotsOfRun(book->reader(), (*run)->plan.run);
    REQUIRE(lots);
    return *lots;
}

} // namespace

TEST_CASE("a bad reading names its pieces and bin at once, and they are signed for and run again",
          "[e2e][screen][holds]") {
    ensureScreen();
    Rig rig{kSpeed};
    const WholeKiosk kiosk{rig};
    REQUIRE(eventually([&] { return kiosk.scannerReady(); }));
    const auto before = entriesIn(rig.data());
    const Window window{kiosk};
    {
        const auto probe = rig.plugIn(scenarioWith(kCold));
        rig.scanRun(20413);
        REQUIRE(eventually([&] { return kiosk.state().verdict.has_value(); }));
        CHECK(kiosk.state().verdict->word == analytics::Word::underCured);
    }
    window.wait("Pull ");
    CHECK(countOf(rig, before, "hold.placed") == 1);
    window.press("Belt slower");
    window.press("To the dryer");
    window.press("Holds");
    window.choose("Run 20413");
    window.wait("Everything that holds this lot");
    window.press("Decide");
    window.press("Run again");
    window.fill("Reason", "belt was too fast");
    window.press("Sign");
    window.setOwnersPin();
    REQUIRE(eventually([&] { return countOf(rig, before, "decision.signed") == 1; }));
    const auto lots = lotsOf(rig, 20413);
    REQUIRE(lots.size() >= 2);
    CHECK(std::any_of(lots.begin(), lots.end(), [&](const auto& lot) {
        return lot.reRunOf && std::any_of(lots.begin(), lots.end(), [&](const auto& first) {
                   return first.id == lot.reRunOf && first.state != records::LotState::onHold;
               });
    }));
}
