// The demo's book: sound, the same every time, finished after an interruption, marked, and with nothing real in it.
#include "kiosk/demo/demo_history.hpp"
#include "kiosk/demo/demo_people.hpp"
#include "kiosk/demo/demo_runs.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "tests/kiosk/demo/support/demo_book.hpp"

#include <catch2/catch.hpp>

#include <QCoreApplication>
#include <QProcess>
#include <QTemporaryDir>

#include <set>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::tests;

namespace {

std::string bytesOf(const ledger::Entry& entry) {
    return entry.kind + entry.id + std::to_string(entry.wallMilliseconds) + entry.body;
}

/// What stands in the lists: of each reading its run, word, reason and whether it was refused.
std::vector<std::string> summary(const ledger::Book& book) {
    std::vector<std::string> lines;
    for (const auto& row : readingsOf(book)) {
        lines.push_back(std::to_string(row.runNumber) + " " +
                        std::to_string(row.word ? static_cast<int>(*row.word) : -1) + " " +
                        std::to_string(row.lotNumber) + (row.refused ? " refused" : ""));
    }
    return lines;
}

} // namespace

TEST_CASE("the demo's book is sound, and its read tables are those that all entries make", "[demo]") {
    const auto report = wholeDemo().check();
    REQUIRE(report);
    CHECK(report->sound());
    FreshBook fresh;
    writeDemo(*fresh.book);
    const auto live = fresh.book->tablesDigest();
    REQUIRE(live);
    REQUIRE(fresh.book->rebuild());
    const auto rebuilt = fresh.book->tablesDigest();
    REQUIRE(rebuilt);
    CHECK(*live == *rebuilt);
}

TEST_CASE("the demo says that it is one, and leaves a finished book alone", "[demo]") {
    const auto shop = records::shop(wholeDemo().reader());
    REQUIRE((shop && *shop));
    CHECK((*shop)->demo);
    FreshBook fresh;
    writeDemo(*fresh.book);
    const auto before = fresh.book->head();
    writeDemo(*fresh.book, {kNoon.millisecondsSinceEpoch + 86'400'000, 60});
    CHECK(fresh.book->head()->hash == before->hash);
}

TEST_CASE("the demo leaves another book alone", "[demo]") {
    FreshBook fresh;
    ledger::CommitRequest request;
    const auto first = entriesOf(wholeDemo()).front();
    const records::Record own = records::BookOpened{"Our shop", "Dryer end", "0.1.0", false};
    request.entries.push_back({first.id, first.kiosk, first.wallMilliseconds, 0, 0, "book.opened",
                               records::rowOf(own).version, records::bodyOf(own)});
    REQUIRE(fresh.book->commit(request));
    writeDemo(*fresh.book);
    CHECK(fresh.book->head()->sequence == 1);
}

TEST_CASE("the demo is the same every time", "[demo]") {
    FreshBook other;
    writeDemo(*other.book);
    const auto one = entriesOf(wholeDemo());
    const auto two = entriesOf(*other.book);
    REQUIRE(one.size() == two.size());
    for (std::size_t i = 0; i < one.size(); ++i) {
        INFO(i << " " << one[i].kind);
        REQUIRE(bytesOf(one[i]) == bytesOf(two[i]));
    }
    CHECK(wholeDemo().head()->hash == other.book->head()->hash);
}

TEST_CASE("the first start of the interruption test", "[.victim]") {
    ensureApplication();
    auto book = ledger::Book::open(qEnvironmentVariable("HOLDFAST_VICTIM").toStdString(),
                                   std::make_shared<records::ShopProjection>(), ledger::OpenMode::firstStart);
    REQUIRE(book);
    writeDemo(**book);
}

TEST_CASE("a first start that was interrupted leaves nothing or all of it, and the next one has it all", "[demo]") {
    ensureApplication();
    const auto whole = entriesOf(wholeDemo()).size();
    for (const int milliseconds : {1, 150, 400, 700}) {
        const QTemporaryDir folder;
        QProcess process;
        auto environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("HOLDFAST_VICTIM"), folder.path());
        process.setProcessEnvironment(environment);
        process.start(QCoreApplication::applicationFilePath(), {QStringLiteral("[.victim]")});
        REQUIRE(process.waitForStarted());
        process.waitForFinished(milliseconds);
        process.kill();
        process.waitForFinished();
        auto book = ledger::Book::open(folder.path().toStdString(), std::make_shared<records::ShopProjection>(),
                                       ledger::OpenMode::firstStart);
        INFO("killed after " << milliseconds << " ms");
        REQUIRE(book);
        const auto left = entriesOf(**book).size();
        CHECK((left == 0 || left == whole));
        writeDemo(**book);
        CHECK(summary(**book) == summary(wholeDemo()));
        CHECK((*book)->head()->hash == wholeDemo().head()->hash);
    }
}

TEST_CASE("the names in the demo are those of its own lists", "[demo]") {
    std::set<std::string> customers;
    std::set<std::string> titles;
    for (const auto& run : demo::demoRuns()) {
        customers.insert(run.customer);
        titles.insert(run.title);
    }
    for (const auto& run : demo::demoRuns()) {
        const auto onFile = runOf(wholeDemo(), run.number);
        CHECK(customers.count(onFile.plan.customer) == 1);
        CHECK(titles.count(onFile.plan.title) == 1);
    }
    const std::set<std::string> trade{"standard", "blend", "low-cure", "water-based", "discharge", "silicone"};
    const auto families = records::newestFamilies(wholeDemo().reader());
    REQUIRE(families);
    for (const auto& family : *families) {
        INFO(family.name);
        CHECK(trade.count(family.name) == 1);
    }
    const auto names = wholeDemo().personNames();
    REQUIRE(names);
    const auto people = demo::demoPeople().names;
    CHECK(std::vector<ledger::PersonName>{*names} == people);
    for (const auto& person : people) {
        CHECK(person.name.find(' ') == std::string::npos); // first names only
    }
}
