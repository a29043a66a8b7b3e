#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/trend_rows.hpp"

#include <algorithm>

/// Prints, what they were washed in, how they were judged, and what customers said.
namespace holdfast::kiosk::records::trending {
namespace {

void gatherPrints(Gathering& all) {
    auto query = prepared(all.database, "SELECT id, number, run, lot, named_ms, shelf, ended, body FROM prints ORDER "
                                        "BY named_ms, number");
    while (query.executeStep()) {
        const auto lot = placeOf(all.lots, query.getColumn(3).getString());
        if (lot == kNoFact) {
            continue;
        }
        TrendPrint print;
        print.id = query.getColumn(0).getString();
        print.number = query.getColumn(1).getInt64();
        print.run = placeOf(all.runs, query.getColumn(2).getString());
        print.lot = lot;
        print.namedAt = query.getColumn(4).getInt64();
        print.shelf = textAt(query, 5).value_or("");
        print.ended = !query.getColumn(6).isNull();
        if (!print.shelf.empty() && !print.ended) { // only of one that may still be fetched
            print.piece = storedBody<PrintNamed>(query.getColumn(7).getString()).piece;
        }
        all.prints.emplace(print.id, static_cast<FactIndex>(all.facts.prints.size()));
        all.facts.prints.push_back(std::move(print));
    }
}

void gatherLoads(Gathering& all) {
    auto query = prepared(all.database, "SELECT id, number, washed_ms, machine, word FROM loads ORDER BY washed_ms, "
                                        "sequence");
    while (query.executeStep()) {
        TrendLoad load;
        load.id = query.getColumn(0).getString();
        load.number = query.getColumn(1).getInt64();
        load.at = query.getColumn(2).getInt64();
        load.machine = query.getColumn(3).getString();
        load.word = fromWord<LoadWord>(textAt(query, 4).value_or(""));
        all.loads.emplace(load.id, static_cast<FactIndex>(all.facts.loads.size()));
        all.facts.loads.push_back(std::move(load));
    }
}

/// Kinds of methods by key, as their newest revision says.
std::unordered_map<std::string, TestKind> kindsOfMethods(const Gathering& all) {
    std::unordered_map<std::string, TestKind> kinds;
    auto query = prepared(all.database, "SELECT key, body FROM methods ORDER BY revision");
    while (query.executeStep()) {
        kinds[query.getColumn(0).getString()] = storedBody<MethodDescribed>(query.getColumn(1).getString()).kind;
    }
    return kinds;
}

void gatherTestRows(Gathering& all) {
    const auto kinds = kindsOfMethods(all);
    auto query = prepared(all.database, "SELECT id, done_ms, print, lot, load, cycle, outcome, method FROM tests ORDER "
                                        "BY done_ms, first");
    while (query.executeStep()) {
        TrendTest test;
        test.lot = placeOf(all.lots, query.getColumn(3).getString());
        if (test.lot == kNoFact) {
            continue;
        }
        test.id = query.getColumn(0).getString();
        test.at = query.getColumn(1).getInt64();
        test.print = placeOf(all.prints, query.getColumn(2).getString());
        test.load = placeOf(all.loads, textAt(query, 4).value_or(""));
        if (!query.getColumn(5).isNull()) {
            test.cycle = query.getColumn(5).getInt();
        }
        test.counts = fromWord<TestOutcome>(query.getColumn(6).getString()).value_or(TestOutcome::noted);
        const auto kind = kinds.find(query.getColumn(7).getString());
        test.kind = kind != kinds.end()    ? kind->second
                    : test.load != kNoFact ? TestKind::wash // by a starter that nobody wrote down
                                           : TestKind::own;
        if (test.load != kNoFact) {
            const auto& word = all.facts.loads[static_cast<std::size_t>(test.load)].word;
            if (word && *word != LoadWord::valid) {
                test.counts = TestOutcome::inAVoidLoad;
            }
        }
        all.facts.tests.push_back(std::move(test));
    }
}

void gatherComplaints(Gathering& all) {
    auto query = prepared(all.database, "SELECT id, number, taken_ms, run, lot, finding IS NOT NULL, body FROM "
                                        "complaints ORDER BY taken_ms, sequence");
    while (query.executeStep()) {
        const auto body = storedBody<ComplaintTaken>(query.getColumn(6).getString());
        TrendComplaint complaint;
        complaint.id = query.getColumn(0).getString();
        complaint.number = query.getColumn(1).getInt64();
        complaint.at =
            body.received ? wallOf(*body.received, all.facts.utcOffsetMinutes) : query.getColumn(2).getInt64();
        complaint.what = body.what;
        complaint.pieces = body.pieces;
        complaint.run = placeOf(all.runs, textAt(query, 3).value_or(""));
        complaint.lot = placeOf(all.lots, textAt(query, 4).value_or(""));
        complaint.closed = query.getColumn(5).getInt() != 0;
        all.facts.complaints.push_back(std::move(complaint));
    }
    auto& complaints = all.facts.complaints;
    std::stable_sort(complaints.begin(), complaints.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    for (std::size_t i = 0; i < complaints.size(); ++i) {
        all.complaints.emplace(complaints[i].id, static_cast<FactIndex>(i));
    }
}

void gatherFindings(Gathering& all) {
    auto query = prepared(all.database, "SELECT e.wall_ms, f.body FROM findings f JOIN entries e ON e.sequence = "
                                        "f.sequence ORDER BY f.sequence");
    while (query.executeStep()) {
        auto body = storedBody<FindingSigned>(query.getColumn(1).getString());
        all.facts.findings.push_back({query.getColumn(0).getInt64(), placeOf(all.complaints, body.complaint),
                                      placeOf(all.lots, body.lot), std::move(body.cause), std::move(body.action),
                                      body.provenLater});
    }
}

} // namespace

void gatherTests(Gathering& all) {
    gatherPrints(all);
    gatherLoads(all);
    gatherTestRows(all);
    gatherComplaints(all);
    gatherFindings(all);
}

} // namespace holdfast::kiosk::records::trending
