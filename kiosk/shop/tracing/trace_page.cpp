#include "kiosk/shop/tracing/trace_page.hpp"

#include <algorithm>
#include <set>

namespace holdfast::kiosk::shop::tracing {
namespace {

using analytics::Word;
using records::TestOutcome;

void addTree(const records::BucketTree& tree, int layer, const std::string& colour, int depth, TracePage& page) {
    BatchLine line;
    line.layer = layer;
    line.colour = colour;
    line.depth = depth;
    line.bucket = tree.bucket.number;
    line.name = tree.bucket.name;
    line.batch = tree.bucket.batch;
    line.isMix = tree.bucket.isMix;
    line.share = tree.share;
    line.expiry = tree.bucket.expiry;
    const auto& known = page.makersBatches;
    if (!line.batch.empty() && std::find(known.begin(), known.end(), line.batch) == known.end()) {
        page.makersBatches.push_back(line.batch);
    }
    page.batches.push_back(std::move(line));
    for (const auto& part : tree.parts) {
        addTree(part, layer, {}, depth + 1, page);
    }
}

void addPerson(std::vector<PersonTraced>& people, std::int64_t person, Deed deed) {
    if (person == 0) {
        return;
    }
    auto at = std::lower_bound(people.begin(), people.end(), person,
                               [](const PersonTraced& one, std::int64_t number) { return one.person < number; });
    if (at == people.end() || at->person != person) {
        at = people.insert(at, {person, {}});
    }
    auto& deeds = at->deeds;
    if (std::find(deeds.begin(), deeds.end(), deed) == deeds.end()) {
        deeds.push_back(deed);
        std::sort(deeds.begin(), deeds.end());
    }
}

void addPeople(const TraceFacts& facts, TracePage& page) {
    for (const auto& crew : facts.crews) {
        for (const auto person : crew.persons) {
            addPerson(page.people, person, Deed::stood);
        }
        page.unnamed = std::max(page.unnamed, crew.unnamed);
    }
    for (const auto& test : facts.tests) {
        addPerson(page.people, test.person, Deed::tested);
    }
    for (const auto& lot : facts.lots) {
        for (const auto& decision : lot.decisions) {
            for (const auto signer : decision.signedAs.signers) {
                addPerson(page.people, signer, Deed::decided);
            }
        }
        for (const auto& finding : lot.findings) {
            for (const auto signer : finding.signers) {
                addPerson(page.people, signer, Deed::found);
            }
        }
    }
    for (const auto& complaint : facts.complaints) {
        for (const auto signer : complaint.finding ? complaint.finding->signers : std::vector<std::int64_t>{}) {
            addPerson(page.people, signer, Deed::found);
        }
    }
}

void countReading(const records::ReadingRow& reading, Counts& counts) {
    if (reading.refused) {
        ++counts.refused;
    } else if (reading.struck) {
        ++counts.struck;
    } else {
        ++counts.readings;
        counts.cured += reading.word == Word::cured ? 1 : 0;
        counts.bad += reading.word == Word::underCured || reading.word == Word::overheated ? 1 : 0;
        counts.notProven += reading.word == Word::notProven ? 1 : 0;
    }
}

void countTest(const records::TestRow& test, Counts& counts) {
    const auto outcome = test.done.outcome;
    counts.tests += outcome == TestOutcome::inAVoidLoad ? 0 : 1;
    counts.failedTests += outcome == TestOutcome::failed ? 1 : 0;
    counts.voidTests += outcome == TestOutcome::inAVoidLoad ? 1 : 0;
}

void addCounts(const TraceFacts& facts, Counts& counts) {
    for (const auto& reading : facts.readings) {
        countReading(reading, counts);
    }
    for (const auto& test : facts.tests) {
        countTest(test, counts);
    }
    std::set<std::string> cartons;
    for (const auto& lot : facts.lots) {
        counts.missed += static_cast<int>(lot.missed.size());
        for (const auto& hold : lot.holds) {
            counts.openHolds += hold.decision ? 0 : 1;
        }
        counts.shipped += lot.pieces.shipped;
        for (const auto& move : lot.moves) {
            if (!move.corrected && move.moved.to == records::PiecePlace::shipped && move.moved.count > 0) {
                cartons.insert(move.moved.cartons.begin(), move.moved.cartons.end());
            }
        }
    }
    counts.cartons = static_cast<int>(cartons.size());
}

int lotOfPrint(const TraceFacts& facts, const std::string& print) {
    const auto found = std::find_if(facts.prints.begin(), facts.prints.end(),
                                    [&](const auto& row) { return row.named.print == print; });
    return found == facts.prints.end() ? 0 : found->lotNumber;
}

void addTrail(const TraceFacts& facts, std::vector<TrailLine>& trail) {
    for (const auto& reading : facts.readings) {
        trail.push_back({reading.takenAt, reading.lotNumber, reading});
    }
    for (const auto& test : facts.tests) {
        trail.push_back({test.at, lotOfPrint(facts, test.done.print), test});
    }
    for (const auto& lot : facts.lots) {
        const auto number = lot.lot.number;
        for (const auto& missed : lot.missed) {
            trail.push_back({missed.at, number, missed});
        }
        for (const auto& hold : lot.holds) {
            trail.push_back({hold.at, number, hold});
        }
        for (const auto& decision : lot.decisions) {
            trail.push_back({decision.at, number, decision});
        }
        for (const auto& move : lot.moves) {
            trail.push_back({move.at, number, move});
        }
    }
    for (const auto& complaint : facts.complaints) {
        trail.push_back({complaint.takenAt, 0, complaint});
    }
    std::stable_sort(trail.begin(), trail.end(),
                     [](const TrailLine& one, const TrailLine& other) { return one.at < other.at; });
}

} // namespace

TracePage tracePage(const TraceFacts& facts) {
    TracePage page;
    addCounts(facts, page.counts);
    addPeople(facts, page);
    for (const auto& bucket : facts.buckets) {
        addTree(bucket.tree, bucket.layer, bucket.colour, 0, page);
    }
    addTrail(facts, page.trail);
    for (const auto& print : facts.prints) {
        if (print.named.retained && !print.ended) {
            page.retained.push_back(print);
        }
    }
    std::stable_sort(page.retained.begin(), page.retained.end(), [](const auto& one, const auto& other) {
        return one.named.retained->shelf < other.named.retained->shelf;
    });
    for (const auto& test : facts.tests) {
        for (const auto& picture : test.done.pictures) {
            if (std::find(page.pictures.begin(), page.pictures.end(), picture.sha256) == page.pictures.end()) {
                page.pictures.push_back(picture.sha256);
            }
        }
    }
    page.notTested = notTested(facts);
    return page;
}

} // namespace holdfast::kiosk::shop::tracing
