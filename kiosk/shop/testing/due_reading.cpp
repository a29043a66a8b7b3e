#include "kiosk/shop/testing/due_reading.hpp"

#include "kiosk/records/open_queries.hpp"
#include "kiosk/records/queries.hpp"

#include <utility>

namespace holdfast::kiosk::shop {
namespace {

constexpr int kMostPrints = 300; ///< under test at one time
constexpr int kMostLoads = 400;

} // namespace

ledger::Result<DueFacts> dueFacts(const SQLite::Database& database) {
    auto prints = records::printsUnderTest(database, kMostPrints);
    auto methods = records::methods(database);
    auto loads = records::loadsUnderWay(database, kMostPrints, kMostLoads);
    auto tests = records::testsUnderWay(database, kMostPrints);
    const auto fabrics = records::newestFabrics(database);
    if (!prints || !methods || !loads || !tests || !fabrics) {
        return tl::unexpected(!prints    ? prints.error()
                              : !methods ? methods.error()
                              : !loads   ? loads.error()
                              : !tests   ? tests.error()
                                         : fabrics.error());
    }
    DueFacts facts;
    facts.prints = std::move(*prints);
    facts.methods = std::move(*methods);
    facts.loads = std::move(*loads);
    for (const auto& fabric : *fabrics) {
        if (fabric.bleedCeiling) {
            facts.bleedingFabrics.push_back(fabric.name);
        }
    }
    for (auto& [lot, test] : *tests) {
        if (test.counts != records::TestOutcome::inAVoidLoad) {
            facts.testedLots.push_back({std::move(lot), test.done.method});
        }
        facts.tests.push_back(std::move(test));
    }
    return facts;
}

} // namespace holdfast::kiosk::shop
