// QA's day as people live it in the window: from a bad reading to its bin and another run through the dryer, and from a
// print that fails its wash to who must be told and a signed finding. Runs 20413 and 20391 are the demo's.
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "tests/kiosk/e2e/support/book_look.hpp"
#include "tests/kiosk/e2e/support/kiosk_process.hpp"
#include "tests/kiosk/e2e/support/whole_kiosk.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <system_error>

using namespace holdfast;
using namespace holdfast::tests;
namespace records = holdfast::kiosk::records;
namespace ledger = holdfast::kiosk::ledger;

namespace {

class Window final {
public:
    explicit Window(const WholeKiosk& kiosk) : m_kiosk{kiosk} {}

    void press(const char* beginning) const {
        must(beginning, [&] { return m_kiosk.pressWhatBegins(beginning); });
    }
    void choose(const char* beginning) const {
        must(beginning, [&] { return m_kiosk.chooseRow(beginning); });
    }
    void wait(const char* shown) const {
        must(shown, [&] { return m_kiosk.showsPartly(shown); });
    }
    /// One answer of several that read alike.
    void answer(const char* id) const {
        must(id, [&] { return m_kiosk.trigger(id); });
    }
    /// Of a row that an earlier answer still has to bring: until the page behind it stands.
    void chooseUntil(const char* beginning, const char* shown) const {
        must(beginning, [&] {
            if (m_kiosk.showsPartly(shown)) {
                return true;
            }
            static_cast<void>(m_kiosk.pressWhatBegins("Close"));
            static_cast<void>(m_kiosk.chooseRow(beginning));
            return false;
        });
    }
    void fill(const char* field, const char* text) const {
        press(field);
        must(field, [&] { return m_kiosk.type(text); });
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
    void must(const char* what, const std::function<bool()>& holds) const {
        const bool held = eventually(holds);
        INFO(what << " in:\n" << all());
        REQUIRE(held);
    }

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

std::vector<std::filesystem::path> printsIn(const std::filesystem::path& data) {
    std::error_code none; // nothing printed yet
    std::vector<std::filesystem::path> files;
    for (const auto& file : std::filesystem::directory_iterator{data / "print", none}) {
        files.push_back(file.path());
    }
    return files;
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

TEST_CASE("a failed wash leads to the recall list, and the complaint about it to a signed finding",
          "[e2e][screen][tests][complaint]") {
    ensureScreen();
    const Rig rig{kSpeed};
    const WholeKiosk kiosk{rig};
    REQUIRE(eventually([&] { return kiosk.scannerReady(); }));
    const auto before = entriesIn(rig.data());
    const Window window{kiosk};
    window.press("Tests");
    window.chooseUntil("Wash 5", "Machine");
    window.fill("Machine", "front loader");
    window.press("Keep");
    window.setOwnersPin();
    window.wait("is kept. When it comes out");
    window.chooseUntil("Judge load", "Good witness");
    window.fill("Good witness", "4.5");
    window.fill("Weak witness", "2");
    window.press("Keep");
    window.wait("The load is valid");
    window.chooseUntil("Wash 5", "Grade");
    window.answer("tests.set.answer.0.2");
    window.answer("tests.set.answer.1.4.5");
    window.answer("tests.set.answer.2.no");
    window.answer("tests.set.answer.3.no");
    window.press("Keep");
    REQUIRE(eventually([&] { return countOf(rig, before, "test.done") == 1; }));
    window.press("Holds");
    window.wait("Recalls to decide");
    window.choose("Run 20391");
    window.press("Recall list");
    window.wait("Puppet theatre");
    window.press("Print the list");
    REQUIRE(eventually([&] { return !printsIn(rig.data()).empty(); }));
    window.press("Complaint");
    window.press("Take a complaint");
    window.press("washed out");
    window.fill("Customer", "Puppet theatre");
    window.fill("How many pieces", "3");
    window.fill("Clue", "20391");
    window.press("Keep it");
    REQUIRE(eventually([&] { return countOf(rig, before, "complaint.taken") == 1; }));
    window.press("Close with a finding");
    window.press("Belt too fast");
    window.press("Sign the finding");
    window.press("Teo"); // the demo's owner
    window.fill("PIN", "1397");
    REQUIRE(eventually([&] { return countOf(rig, before, "finding.signed") == 1; }));
}
