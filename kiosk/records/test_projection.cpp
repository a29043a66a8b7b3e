#include "kiosk/records/floor_projection.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/words.hpp"

#include <set>

namespace holdfast::kiosk::records::projecting {
namespace {

using ledger::Entry;
using SQLite::Database;

std::optional<std::string> shelfOf(const std::optional<RetainedPlace>& place) {
    return place ? std::optional{place->shelf} : std::nullopt;
}

void requireNumberFree(Database& db, const Entry& entry, const char* sql, std::int64_t number) {
    auto query = prepared(db, sql, number);
    if (query.executeStep()) {
        refuse(entry, "another has the number");
    }
}

/// Where a print stands when somebody tests or washes it.
struct PrintStanding final {
    std::string lot{};
    bool ended = false;
};

PrintStanding printStanding(Database& db, const Entry& entry, const std::string& print) {
    auto query = prepared(db, "SELECT lot, ended FROM prints WHERE id = ?", print);
    if (!query.executeStep()) {
        refuse(entry, "no such print: " + print);
    }
    return {query.getColumn(0).getString(), textAt(query, 1).has_value()};
}

/// The load's word so far; refuses a load that the print was not in.
std::optional<LoadWord> wordOfLoad(Database& db, const Entry& entry, const TestDone& done) {
    if (!done.load) {
        return std::nullopt;
    }
    auto query =
        prepared(db, "SELECT l.word FROM load_prints p JOIN loads l ON l.id = p.load WHERE p.print = ? AND p.load = ?",
                 done.print, *done.load);
    if (!query.executeStep()) {
        refuse(entry, "the print was not in the load");
    }
    const auto word = textAt(query, 0);
    return word ? fromWord<LoadWord>(*word) : std::nullopt;
}

/// `but` is the test that is corrected, or empty.
void requireCycleFree(Database& db, const Entry& entry, const TestDone& done, const std::string& but) {
    auto query = prepared(db,
                          "SELECT max(t.cycle), max(t.cycle = ?3) FROM tests t LEFT JOIN loads l ON l.id = t.load "
                          "WHERE t.print = ?1 AND t.method = ?2 AND t.cycle IS NOT NULL AND t.id <> ?4 "
                          "AND t.outcome <> 'in-a-void-load' AND coalesce(l.word, 'valid') = 'valid'",
                          done.print, done.method, done.cycle, but);
    if (!query.executeStep() || query.getColumn(0).isNull()) {
        return;
    }
    if (query.getColumn(1).getInt() != 0) {
        refuse(entry, "the cycle was tested already");
    }
    if (but.empty() && query.getColumn(0).getInt() > *done.cycle) {
        refuse(entry, "a later cycle was tested already");
    }
}

void requireCountsOnce(Database& db, const Entry& entry, const TestDone& done, const std::string& but) {
    const auto word = wordOfLoad(db, entry, done);
    const bool isVoid = (word && *word != LoadWord::valid) || done.outcome == TestOutcome::inAVoidLoad;
    if (done.cycle && !isVoid) {
        requireCycleFree(db, entry, done, but);
    }
}

/// The test's lot, and those that hold pieces because of any of its entries.
void recomputeLotsOf(Database& db, const Entry& entry, const std::string& test, std::set<std::string> lots) {
    auto query = prepared(db,
                          "SELECT lot FROM tests WHERE id = ?1 UNION SELECT h.lot FROM test_versions v "
                          "JOIN holds h ON h.because = v.entry WHERE v.test = ?1",
                          test);
    while (query.executeStep()) {
        lots.insert(query.getColumn(0).getString());
    }
    for (const auto& lot : lots) {
        recomputeLot(db, entry, lot);
    }
}

void addVersion(Database& db, const Entry& entry, const TestDone& done, const std::string& test) {
    execute(db, "INSERT INTO test_versions VALUES (?, ?, ?, ?, ?, ?, ?)", entry.sequence, entry.id, test, done.method,
            entry.wallMilliseconds, entry.person, entry.body);
}

void correctTest(Database& db, const Entry& entry, const TestDone& done, const PrintStanding& print) {
    const auto& test = *done.corrects;
    auto before = prepared(db, "SELECT lot FROM tests WHERE id = ?", test);
    if (!before.executeStep()) {
        refuse(entry, "it corrects no test's first entry");
    }
    std::set<std::string> lots{before.getColumn(0).getString()};
    requireCountsOnce(db, entry, done, test);
    execute(db,
            "UPDATE tests SET sequence = ?2, print = ?3, lot = ?4, method = ?5, cycle = ?6, load = ?7, outcome = ?8, "
            "versions = versions + 1, body = ?9 WHERE id = ?1",
            test, entry.sequence, done.print, print.lot, done.method, done.cycle, done.load, toWord(done.outcome),
            entry.body);
    addVersion(db, entry, done, test);
    recomputeLotsOf(db, entry, test, std::move(lots));
}

} // namespace

void apply(Database& db, const Entry& entry, const PrintNamed& print) {
    auto lot = prepared(db, "SELECT 1 FROM lots WHERE id = ? AND run = ?", print.lot, print.run);
    if (!lot.executeStep()) {
        refuse(entry, "no such lot of the run");
    }
    requireNumberFree(db, entry, "SELECT 1 FROM prints WHERE number = ?", print.number);
    if (print.halfOf && !found(db, "SELECT 1 FROM prints WHERE id = ?", *print.halfOf)) {
        refuse(entry, "it is half of no print");
    }
    execute(db, "INSERT INTO prints VALUES (?, ?, ?, ?, ?, ?, ?, ?, NULL, ?)", print.print, print.number,
            entry.sequence, print.run, print.lot, entry.wallMilliseconds, print.halfOf, shelfOf(print.retained),
            entry.body);
}

void apply(Database& db, const Entry& entry, const PrintChanged& changed) {
    auto query = prepared(db, "SELECT body FROM prints WHERE id = ?", changed.print);
    if (!query.executeStep()) {
        refuse(entry, "no such print");
    }
    auto named = storedBody<PrintNamed>(query.getColumn(0).getString());
    query.reset();
    named.retained = changed.retained;
    const auto ended = changed.ended ? std::optional{std::string{toWord(*changed.ended)}} : std::nullopt;
    execute(db, "UPDATE prints SET shelf = ?2, ended = ?3, body = ?4 WHERE id = ?1", changed.print,
            shelfOf(changed.retained), ended, bodyOf(Record{named}));
}

void apply(Database& db, const Entry& entry, const MethodDescribed& method) {
    auto newer = prepared(db, "SELECT 1 FROM methods WHERE key = ? AND revision >= ?", method.key, method.revision);
    if (newer.executeStep()) {
        refuse(entry, "the method has this revision or a newer one");
    }
    execute(db, "INSERT INTO methods VALUES (?, ?, ?, ?)", method.key, method.revision, entry.sequence, entry.body);
}

void apply(Database& db, const Entry& entry, const LoadWashed& load) {
    if (found(db, "SELECT 1 FROM loads WHERE id = ?", load.load)) {
        refuse(entry, "the load was washed already");
    }
    requireNumberFree(db, entry, "SELECT 1 FROM loads WHERE number = ?", load.number);
    execute(db, "INSERT INTO loads VALUES (?, ?, ?, ?, ?, ?, NULL, NULL, NULL, ?)", entry.sequence, load.load,
            load.number, entry.wallMilliseconds, load.machine, load.programme, entry.body);
    for (const auto& print : load.prints) {
        if (printStanding(db, entry, print).ended) {
            refuse(entry, "a print in it has ended: " + print);
        }
        execute(db, "INSERT INTO load_prints VALUES (?, ?)", print, load.load);
    }
}

void apply(Database& db, const Entry& entry, const LoadJudged& judged) {
    auto load = prepared(db, "SELECT judged_by FROM loads WHERE id = ?", judged.load);
    if (!load.executeStep()) {
        refuse(entry, "no such load");
    }
    const auto judgedBy = textAt(load, 0);
    load.reset();
    if (judgedBy != judged.corrects) {
        refuse(entry, judged.corrects ? "it corrects no judgement that stands" : "the load is judged already");
    }
    execute(db, "UPDATE loads SET word = ?2, judged_by = ?3, judged = ?4 WHERE id = ?1", judged.load,
            toWord(judged.word), entry.id, entry.body);
    std::vector<std::string> tests;
    auto query = prepared(db, "SELECT id FROM tests WHERE load = ?", judged.load);
    while (query.executeStep()) {
        tests.push_back(query.getColumn(0).getString());
    }
    for (const auto& test : tests) {
        recomputeLotsOf(db, entry, test, {});
    }
}

void apply(Database& db, const Entry& entry, const TestDone& done) {
    const auto print = printStanding(db, entry, done.print);
    if (done.corrects) {
        correctTest(db, entry, done, print);
        return;
    }
    if (print.ended) {
        refuse(entry, "the print has ended");
    }
    if (isScrapped(db, print.lot)) {
        refuse(entry, "the lot was scrapped");
    }
    requireCountsOnce(db, entry, done, {});
    execute(db, "INSERT INTO tests VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 1, ?)", entry.sequence, entry.id,
            entry.sequence, entry.wallMilliseconds, entry.person, done.print, print.lot, done.method, done.cycle,
            done.load, toWord(done.outcome), entry.body);
    addVersion(db, entry, done, entry.id);
    recomputeLot(db, entry, print.lot);
}

} // namespace holdfast::kiosk::records::projecting
