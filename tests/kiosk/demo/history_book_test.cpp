// The demo's whole book, eighteen months and twelve days: sound, balanced, the same every time, and with nothing of the
// eighteen months left to do.
#include "kiosk/demo/demo_history.hpp"
#include "kiosk/demo/history/history_book.hpp"
#include "kiosk/demo/history/history_findings.hpp"
#include "kiosk/demo/history/history_model.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/records/statement.hpp"
#include "kiosk/records/stock_queries.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/records/words.hpp"
#include "kiosk/shop/trending/causes.hpp"
#include "tests/kiosk/demo/support/demo_book.hpp"

#include <catch2/catch.hpp>

#include <QTemporaryDir>

#include <algorithm>
#include <map>
#include <set>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::tests;
using analytics::Word;

namespace {

/// Made once for all tests.
const ledger::Book& wholeBook() {
    static const QTemporaryDir folder;
    static const auto book = [] {
        ensureApplication();
        const std::filesystem::path path{folder.path().toStdString()};
        const auto made = demo::makeDemoBook(path, kNoon, "demo-probe");
        INFO((made ? std::string{} : made.error().what));
        REQUIRE(made);
        auto opened = ledger::Book::open(path, std::make_shared<records::ShopProjection>(), ledger::OpenMode::readOnly);
        REQUIRE(opened);
        return std::move(*opened);
    }();
    return *book;
}

const SQLite::Database& historyReader() {
    return wholeBook().reader();
}

demo::HistoryFacts facts() {
    return demo::historyOf(demo::demoHistoryPlan(kNoon));
}

std::int64_t countOf(const char* sql) {
    auto query = records::prepared(historyReader(), sql);
    REQUIRE(query.executeStep());
    return query.getColumn(0).getInt64();
}

/// Of every entry that writeHistory hands on.
ledger::Digest digestOfHistory() {
    ledger::Hasher hasher;
    const auto done = demo::writeHistory(facts(), 0, "demo-probe",
                                         [&](const ledger::CommitRequest& request, const demo::KeptRecords&) {
                                             for (const auto& entry : request.entries) {
                                                 hasher.addPrefixed(entry.id + entry.kind + entry.body);
                                                 hasher.addInteger(entry.wallMilliseconds);
                                             }
                                             for (const auto& blob : request.blobs) {
                                                 hasher.addInteger(static_cast<std::int64_t>(blob.bytes.size()));
                                             }
                                             return ledger::Result<void>{};
                                         });
    REQUIRE(done);
    return hasher.finish();
}

template <class Row, class Word>
std::vector<std::string> linesOf(const ledger::Result<std::vector<Row>>& rows, const Word& lineOf) {
    REQUIRE(rows);
    std::vector<std::string> lines;
    for (const auto& row : *rows) {
        lines.push_back(lineOf(row));
    }
    return lines;
}

} // namespace

TEST_CASE("the whole demo is a sound book of the size that was asked for", "[demo][history][long]") {
    const auto report = wholeBook().check();
    REQUIRE(report);
    CHECK(report->sound());
    // issue 5, point 9, and the twelve days' 43 runs and 160 readings
    CHECK(countOf("SELECT count(*) FROM runs WHERE kind = 'run'") == Approx(4050).epsilon(0.05));
    CHECK(countOf("SELECT count(*) FROM readings") == Approx(30200).epsilon(0.05));
    CHECK(countOf("SELECT count(*) FROM tests") == Approx(6050).epsilon(0.10));
    const auto shop = records::shop(historyReader());
    REQUIRE((shop && *shop));
    CHECK((*shop)->demo);
}

TEST_CASE("the history's entries are the same every time", "[demo][history][long]") {
    CHECK(digestOfHistory() == digestOfHistory());
}

TEST_CASE("the causes table of the demo has a count for each failure that its customers met", "[demo][history][long]") {
    using shop::trending::CureCause;
    const auto found = records::trendFacts(historyReader(), {0, 0});
    REQUIRE(found);
    const auto table = shop::trending::causeTable(*found);
    std::map<CureCause, int> findings;
    for (const auto& row : table.rows) {
        findings[row.cause] = row.findings;
        CHECK(static_cast<std::size_t>(row.findings) == row.complaints.size());
    }
    CHECK(table.findings > 20);
    CHECK(findings[CureCause::other] < table.findings / 2);
    for (const auto cause : {CureCause::underCured, CureCause::mislabelledInk, CureCause::beltTooFast,
                             CureCause::dryerLosingHeat, CureCause::washTooHarsh}) {
        INFO(shop::trending::wordOf(cause));
        CHECK(findings[cause] > 0);
    }
}

TEST_CASE("a finding of the demo names what was planted, with what decided it", "[demo][history]") {
    const auto history = facts();
    const auto& poured = history.planted.poured;
    int mislabelled = 0;
    for (const auto& complaint : history.complaints) {
        const auto kept = demo::findingOf(history, complaint);
        const auto cause = shop::trending::causeOf(kept);
        const bool ofTheMix = std::find(poured.begin(), poured.end(), complaint.run) != poured.end();
        CHECK((cause == shop::trending::CureCause::mislabelledInk) == (complaint.ours && ofTheMix));
        mislabelled += cause == shop::trending::CureCause::mislabelledInk ? 1 : 0;
        CHECK((cause == shop::trending::CureCause::other || kept.find(": ") != std::string::npos));
    }
    CHECK(mislabelled > 0);
}

TEST_CASE("what the twelve days leave to do is all that there is to do", "[demo][history][long]") {
    const auto& days = wholeDemo().reader();
    const auto held = [](const records::HoldRow& row) {
        return std::to_string(row.runNumber) + ' ' + std::string{records::toWord(row.placed.cause)};
    };
    CHECK(linesOf(records::openHolds(historyReader()), held) == linesOf(records::openHolds(days), held));
    const auto reading = [](const records::ReadingRow& row) { return std::to_string(row.runNumber); };
    CHECK(linesOf(records::unanswered(historyReader()), reading) == linesOf(records::unanswered(days), reading));
    CHECK(linesOf(records::unclaimed(historyReader(), 100), reading) ==
          linesOf(records::unclaimed(days, 100), reading));
    const auto complaint = [](const records::ComplaintRow& row) { return row.taken.words; };
    CHECK(linesOf(records::complaints(historyReader(), false), complaint) ==
          linesOf(records::complaints(days, false), complaint));
    const auto due = [](const records::DueItem& item) { return std::to_string(item.runNumber) + item.subject; };
    const auto today = drivers::localDay(kNoon);
    CHECK(linesOf(records::due(historyReader(), today), due) == linesOf(records::due(days, today), due));
    const auto run = [](const records::RunRow& row) { return std::to_string(row.number); };
    CHECK(linesOf(records::runsOnFile(historyReader(), records::PlanKind::run, false, 1000), run) ==
          linesOf(records::runsOnFile(days, records::PlanKind::run, false, 1000), run));
    const auto print = [](const records::PrintRow& row) { return std::to_string(row.runNumber); };
    auto open = records::openPrints(historyReader(), 100'000);
    REQUIRE(open);
    std::erase_if(*open, [](const auto& one) { return one.named.retained.has_value(); });
    auto openThen = records::openPrints(days, 100'000);
    REQUIRE(openThen);
    std::erase_if(*openThen, [](const auto& one) { return one.named.retained.has_value(); });
    CHECK(linesOf(open, print) == linesOf(openThen, print));
    CHECK(countOf("SELECT count(*) FROM loads WHERE judged IS NULL") == 0);
}

TEST_CASE("every run of the history is finished, and its lots are cleared or decided", "[demo][history][long]") {
    CHECK(countOf("SELECT count(*) FROM runs WHERE kind = 'run' AND number < 20374 "
                  "AND id NOT IN (SELECT run FROM finished_runs)") == 0);
    std::map<std::string, int> states;
    auto query = records::prepared(historyReader(), "SELECT l.state, count(*) FROM lots l JOIN runs r ON r.id = l.run "
                                                    "WHERE r.number < 20374 GROUP BY l.state");
    while (query.executeStep()) {
        states[query.getColumn(0).getString()] = query.getColumn(1).getInt();
    }
    std::set<std::string> words;
    for (const auto& [word, count] : states) {
        words.insert(word);
    }
    CHECK(words == std::set<std::string>{"cleared", "released", "re-run", "scrapped"});
    CHECK(states["cleared"] > 3000); // three in four
}

TEST_CASE("the pieces of every lot of the history balance", "[demo][history][long]") {
    // decisions 5: made = shipped + here + retained + tested + scrapped
    auto query = records::prepared(
        historyReader(),
        "SELECT r.number, c.made, c.here, (SELECT coalesce(sum(count), 0) FROM moves m WHERE m.lot = l.id "
        "AND m.corrected = 0) FROM lots l JOIN runs r ON r.id = l.run JOIN counts c ON c.lot = l.id "
        "WHERE r.number < 20374 AND c.sequence = (SELECT max(sequence) FROM counts WHERE lot = l.id)");
    int lots = 0;
    while (query.executeStep()) {
        INFO("run " << query.getColumn(0).getInt());
        REQUIRE(query.getColumn(1).getInt() == query.getColumn(2).getInt() + query.getColumn(3).getInt());
        ++lots;
    }
    CHECK(lots > 3800);
}

TEST_CASE("the book judges the history's readings as its model does", "[demo][history][long]") {
    const auto history = facts();
    std::map<std::int64_t, std::vector<Word>> inBook;
    auto query = records::prepared(
        historyReader(),
        "SELECT runs.number, r.word FROM readings r JOIN runs ON runs.id = r.run JOIN lots ON lots.id = "
        "r.lot WHERE runs.number < 20374 AND lots.number = 1 AND r.corrected = 0 ORDER BY r.first");
    while (query.executeStep()) {
        const auto word = records::fromWord<Word>(query.getColumn(1).getString());
        REQUIRE(word);
        inBook[query.getColumn(0).getInt64()].push_back(*word);
    }
    std::map<std::int64_t, std::vector<Word>> inModel;
    for (const auto& reading : history.readings) {
        inModel[history.runs[reading.run].number].push_back(reading.word);
    }
    int asked = 0;
    int alike = 0;
    for (const auto& [number, words] : inModel) {
        const auto& kept = inBook[number];
        if (kept.size() != words.size()) {
            continue; // judged again when the probe was found wrong
        }
        for (std::size_t i = 0; i < words.size(); ++i) {
            ++asked;
            alike += words[i] == kept[i] ? 1 : 0;
        }
    }
    CHECK(asked > 25'000);
    CHECK(alike > 0.99 * asked);
}

TEST_CASE("what was planted stands in the book under the numbers that the model names", "[demo][history][long]") {
    const auto history = facts();
    const auto pail = records::bucketByNumber(historyReader(), history.planted.pail);
    const auto mix = records::bucketByNumber(historyReader(), history.planted.mix);
    REQUIRE((pail && *pail && mix && *mix));
    CHECK((*pail)->closed == records::BucketEnd::mislabelled);
    CHECK((*mix)->isMix);
    const auto tree = records::ancestry(historyReader(), history.planted.mix);
    REQUIRE((tree && *tree));
    CHECK((*tree)->parts.size() == 2);
    const auto reached = records::reachedByBucket(historyReader(), history.planted.pail);
    REQUIRE(reached);
    std::set<std::int64_t> runs;
    for (const auto& row : *reached) {
        runs.insert(row.runNumber);
    }
    CHECK(runs.size() == history.planted.poured.size());
    CHECK(countOf("SELECT count(*) FROM checks WHERE passed = 0 AND sequence < (SELECT min(sequence) FROM buckets "
                  "WHERE number = 301)") == 1);
    CHECK(countOf("SELECT count(*) FROM holds WHERE cause = 'instrument'") > 5);
    const auto alarm =
        records::runByNumber(historyReader(), records::PlanKind::run, history.runs[history.planted.alarmRun].number);
    REQUIRE((alarm && *alarm));
    const auto lots = records::lotsOfRun(historyReader(), (*alarm)->plan.run);
    REQUIRE(lots);
    CHECK(lots->front().state == records::LotState::released);
}

TEST_CASE("a book with entries, and one of another shop, are left as they are", "[demo][history]") {
    FreshBook fresh;
    writeDemo(*fresh.book);
    const auto before = fresh.book->head();
    const std::filesystem::path folder{fresh.folder.path().toStdString()};
    fresh.book.reset();
    REQUIRE(demo::makeDemoBook(folder, kNoon, "demo-probe"));
    const auto again =
        ledger::Book::open(folder, std::make_shared<records::ShopProjection>(), ledger::OpenMode::readOnly);
    REQUIRE(again);
    CHECK((*again)->head()->hash == before->hash);
}
