#include "tests/kiosk/demo/support/demo_book.hpp"

#include "kiosk/demo/demo_history.hpp"
#include "kiosk/records/shop_projection.hpp"

#include <catch2/catch.hpp>

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::tests {

namespace ledger = kiosk::ledger;
namespace records = kiosk::records;

namespace {

constexpr int kAll = 100'000;

} // namespace

void ensureApplication() {
    static int argc = 1;
    static char name[] = "test_demo";
    static char* argv[] = {name, nullptr};
    if (QCoreApplication::instance() == nullptr) {
        new QCoreApplication{argc, argv}; // never deleted: Qt's own statics are gone before ours at exit
    }
}

FreshBook::FreshBook() {
    ensureApplication();
    auto opened = ledger::Book::open(folder.path().toStdString(), std::make_shared<records::ShopProjection>(),
                                     ledger::OpenMode::firstStart);
    REQUIRE(opened);
    book = std::move(*opened);
}

const ledger::Book& wholeDemo() {
    static const auto whole = [] {
        auto fresh = std::make_unique<FreshBook>();
        writeDemo(*fresh->book);
        return fresh;
    }();
    return *whole->book;
}

void writeDemo(ledger::Book& book, drivers::WallTime now) {
    ledger::Writer writer{book};
    const auto written = kiosk::demo::writeDemo(book, writer, now, "demo-probe");
    INFO((written ? std::string{} : written.error().what));
    REQUIRE(written);
}

std::vector<ledger::Entry> entriesOf(const ledger::Book& book) {
    auto entries = book.entries(1, kAll);
    REQUIRE(entries);
    return *std::move(entries);
}

std::vector<records::ReadingRow> readingsOf(const ledger::Book& book) {
    auto rows = records::latestReadings(book.reader(), kAll);
    REQUIRE(rows);
    std::reverse(rows->begin(), rows->end());
    return *std::move(rows);
}

records::RunOnFile runOf(const ledger::Book& book, std::int64_t number) {
    const auto found = records::runByNumber(book.reader(), records::PlanKind::run, number);
    INFO(number);
    REQUIRE(found);
    REQUIRE(*found);
    return **found;
}

std::optional<analytics::Word> wordOf(const ledger::Book& book, std::int64_t run) {
    std::optional<analytics::Word> word;
    for (const auto& row : readingsOf(book)) {
        word = row.runNumber == run ? row.word : word;
    }
    return word;
}

} // namespace holdfast::tests
