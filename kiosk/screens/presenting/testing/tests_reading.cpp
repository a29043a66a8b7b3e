#include "kiosk/screens/presenting/testing/tests_reading.hpp"

#include "kiosk/records/queries.hpp"
#include "kiosk/wording/testing_sentences.hpp"

#include <algorithm>
#include <set>

namespace holdfast::kiosk::screens {
namespace {

constexpr int kMostPrints = 300; ///< under test at one time
constexpr int kMostLoads = 400;

} // namespace

ledger::Result<std::vector<shop::DueTest>> dueNow(const SQLite::Database& book, const drivers::WallTime& now) {
    auto prints = records::openPrints(book, kMostPrints);
    auto methods = records::methods(book);
    auto loads = records::loads(book, kMostLoads);
    const auto fabrics = records::newestFabrics(book);
    if (!prints || !methods || !loads || !fabrics) {
        return tl::unexpected(!prints    ? prints.error()
                              : !methods ? methods.error()
                              : !loads   ? loads.error()
                                         : fabrics.error());
    }
    shop::DueFacts facts;
    facts.prints = std::move(*prints);
    facts.methods = std::move(*methods);
    facts.loads.assign(loads->rbegin(), loads->rend());
    for (const auto& fabric : *fabrics) {
        if (fabric.bleedCeiling) {
            facts.bleedingFabrics.push_back(fabric.name);
        }
    }
    std::set<std::string> lots;
    for (const auto& print : facts.prints) {
        if (!lots.insert(print.named.lot).second) {
            continue;
        }
        auto tests = records::testsOfLot(book, print.named.lot);
        if (!tests) {
            return tl::unexpected(tests.error());
        }
        for (auto& test : *tests) {
            if (test.counts != records::TestOutcome::inAVoidLoad) {
                facts.testedLots.push_back({print.named.lot, test.done.method});
            }
            facts.tests.push_back(std::move(test));
        }
    }
    return shop::dueTests(facts, now);
}

std::string nextTestText(const SQLite::Database& book, const drivers::WallTime& now, const wording::Speech& speech) {
    const auto due = dueNow(book, now);
    const auto methods = records::methods(book);
    if (!due || due->empty() || !methods) {
        return {};
    }
    const auto& first = due->front();
    const auto method =
        std::find_if(methods->begin(), methods->end(), [&](const auto& one) { return one.key == first.method; });
    if (method == methods->end()) {
        return {};
    }
    const auto what = first.step == shop::DueStep::judgeLoad
                          ? speech.text("tests.due.judge", {{"load", std::to_string(first.loadNumber)}})
                          : wording::testTitle(*method, first.cycle, speech);
    return speech.text("tests.due.next", {{"what", what}, {"when", wording::dueText(first, now, speech)}});
}

} // namespace holdfast::kiosk::screens
