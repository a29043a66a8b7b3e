// The invented shop of the first start: six runs, each with the outcome it is there to show.
#include "kiosk/demo/demo_history.hpp"
#include "kiosk/demo/demo_shop.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_projection.hpp"

#include <catch2/catch.hpp>

#include <QCoreApplication>
#include <QTemporaryDir>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::kiosk;

namespace {

struct DemoBook final {
    QTemporaryDir folder;
    std::unique_ptr<ledger::Book> book;

    explicit DemoBook(drivers::WallTime now) {
        auto opened = ledger::Book::open(folder.path().toStdString(), std::make_shared<records::ShopProjection>(),
                                         ledger::OpenMode::firstStart);
        REQUIRE(opened);
        book = std::move(*opened);
        ledger::Writer writer{*book};
        const auto written = demo::writeDemo(*book, writer, now, "demo-probe");
        INFO((written ? std::string{} : written.error().what));
        REQUIRE(written);
    }
    [[nodiscard]] std::optional<analytics::Word> wordOf(std::int64_t run) const {
        const auto rows = records::latestReadings(book->reader(), 50);
        REQUIRE(rows);
        for (const auto& row : *rows) {
            if (row.runNumber == run) {
                return row.word;
            }
        }
        return std::nullopt;
    }
    [[nodiscard]] records::RunOnFile run(std::int64_t number) const {
        const auto found = records::runByNumber(book->reader(), records::PlanKind::run, number);
        REQUIRE(found);
        REQUIRE(*found);
        return **found;
    }
};

constexpr drivers::WallTime kNoon{1795608000000, 0}; // 2026-11-25 12:00 UTC

analytics::Calibration probeOf(const ledger::Book& book, analytics::Date today) {
    const auto instruments = records::instruments(book.reader());
    REQUIRE(instruments);
    for (const auto& one : *instruments) {
        if (one.instrument.name == demo::kDemoProbe) {
            return analytics::Calibration{one.instrument, today};
        }
    }
    FAIL("the demo has no probe");
    return analytics::Calibration{{}, today};
}

} // namespace

TEST_CASE("the demo's six runs show what they are there for", "[demo]") {
    int argc = 0;
    QCoreApplication app{argc, nullptr};
    const DemoBook demo{kNoon};
    const analytics::Date today{std::chrono::floor<std::chrono::days>(
        std::chrono::sys_time<std::chrono::milliseconds>{std::chrono::milliseconds{kNoon.millisecondsSinceEpoch}})};

    SECTION("cured, under-cured, overheated, and a dropout at the top that is not proven") {
        CHECK(demo.wordOf(20413) == analytics::Word::cured);
        CHECK(demo.wordOf(20411) == analytics::Word::underCured);
        CHECK(demo.wordOf(20412) == analytics::Word::overheated);
        CHECK(demo.wordOf(20416) == analytics::Word::notProven);
    }
    SECTION("the classic trap is closed") {
        // common practice: a standard black beside low-cure inks on polyester
        const auto window = analytics::windowOf(demo.run(20414).layers);
        REQUIRE(window);
        CHECK(window->state == analytics::WindowState::closed);
    }
    SECTION("one run is not provable with the probe that is there") {
        const auto probe = probeOf(*demo.book, today);
        const auto window = analytics::windowOf(demo.run(20415).layers, &probe);
        REQUIRE(window);
        CHECK(window->state == analytics::WindowState::notProvable);
        CHECK_FALSE(window->whyNotProvable.empty());
    }
    SECTION("the book says that it is a demo, is sound, and is left alone at the next start") {
        const auto shop = records::shop(demo.book->reader());
        REQUIRE(shop);
        REQUIRE(*shop);
        CHECK((*shop)->demo);
        const auto report = demo.book->check();
        REQUIRE(report);
        CHECK(report->sound());
        const auto before = demo.book->head();
        ledger::Writer writer{*demo.book};
        REQUIRE(demo::writeDemo(*demo.book, writer, kNoon, "demo-probe"));
        CHECK(demo.book->head()->hash == before->hash);
    }
}

TEST_CASE("the demo is the same every time", "[demo]") {
    int argc = 0;
    QCoreApplication app{argc, nullptr};
    const DemoBook one{kNoon};
    const DemoBook two{kNoon};
    CHECK(one.book->head()->sequence == two.book->head()->sequence);
    const auto first = one.book->entries(1, 1000);
    const auto second = two.book->entries(1, 1000);
    REQUIRE(first);
    REQUIRE(second);
    for (std::size_t i = 0; i < first->size() && i < second->size(); ++i) {
        CHECK((*first)[i].kind == (*second)[i].kind);
    }
    CHECK(one.wordOf(20413) == two.wordOf(20413));
}

TEST_CASE("a first start that was interrupted goes on where it stopped", "[demo]") {
    int argc = 0;
    QCoreApplication app{argc, nullptr};
    // A demo book cut short: the shop's own entries, and none of its rides.
    const DemoBook whole{kNoon};
    const auto entries = whole.book->entries(1, 1000);
    REQUIRE(entries);
    QTemporaryDir folder;
    auto cut = ledger::Book::open(folder.path().toStdString(), std::make_shared<records::ShopProjection>(),
                                  ledger::OpenMode::firstStart);
    REQUIRE(cut);
    ledger::CommitRequest shop;
    for (const auto& entry : *entries) {
        if (entry.kind.rfind("reading.", 0) != 0 && entry.kind != "correction.made") {
            shop.entries.push_back(entry);
        }
    }
    REQUIRE((*cut)->commit(shop));
    ledger::Writer writer{**cut};
    REQUIRE(demo::writeDemo(**cut, writer, kNoon, "demo-probe"));
    const auto rows = records::latestReadings((*cut)->reader(), 50);
    REQUIRE(rows);
    for (const auto& ride : demo::demoRides()) {
        const auto times =
            std::count_if(rows->begin(), rows->end(), [&ride](const auto& row) { return row.runNumber == ride.run; });
        INFO(ride.run);
        CHECK(times == 1);
    }
}
