#include "kiosk/shop/tracing/not_tested.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace holdfast::kiosk::shop::tracing {
namespace {

using records::TestKind;
using records::TestOutcome;

bool tells(const records::TestRow& test) {
    return test.done.outcome == TestOutcome::passed || test.done.outcome == TestOutcome::failed;
}

const records::PrintRow* printOf(const TraceFacts& facts, const std::string& print) {
    const auto found = std::find_if(facts.prints.begin(), facts.prints.end(),
                                    [&](const auto& row) { return row.named.print == print; });
    return found == facts.prints.end() ? nullptr : &*found;
}

const records::MethodDescribed* methodOf(const TraceFacts& facts, const std::string& key) {
    const auto found =
        std::find_if(facts.methods.begin(), facts.methods.end(), [&](const auto& one) { return one.key == key; });
    return found == facts.methods.end() ? nullptr : &*found;
}

/// A wash after its last cycle is a test; one on its way has washed the print all the same.
bool wasDone(const TraceFacts& facts, TestKind kind) {
    return std::any_of(facts.tests.begin(), facts.tests.end(), [&](const records::TestRow& test) {
        const auto* method = methodOf(facts, test.done.method);
        return method != nullptr && method->kind == kind && tells(test);
    });
}

bool isPlastisolOnly(const TraceFacts& facts) {
    bool any = false;
    for (const auto& print : facts.prints) {
        for (const auto chemistry : print.chemistries) {
            any = true;
            if (chemistry != analytics::Chemistry::plastisol) {
                return false;
            }
        }
    }
    return any;
}

void addLots(const TraceFacts& facts, std::vector<NotTested>& gaps) {
    for (const auto& lot : facts.lots) {
        const bool read =
            std::any_of(facts.readings.begin(), facts.readings.end(), [&](const records::ReadingRow& reading) {
                return reading.lot == lot.lot.id && !reading.refused && !reading.struck &&
                       reading.reason != records::ReadingReason::setUp;
            });
        if (!read) {
            gaps.push_back({Gap::noReading, lot.lot.number});
        }
    }
    for (const auto& lot : facts.lots) {
        if (!lot.missed.empty()) {
            NotTested gap{Gap::readingMissed, lot.lot.number};
            gap.count = static_cast<int>(lot.missed.size());
            gaps.push_back(gap);
        }
    }
}

void addKinds(const TraceFacts& facts, std::vector<NotTested>& gaps) {
    constexpr std::array kAsked{TestKind::stretch,    TestKind::rub,    TestKind::wash,
                                TestKind::bleedWatch, TestKind::shrink, TestKind::solventRub};
    for (const auto kind : kAsked) {
        const bool asked = (kind != TestKind::solventRub || isPlastisolOnly(facts)) &&
                           (kind != TestKind::bleedWatch || facts.bleedWatchDue);
        if (asked && !wasDone(facts, kind)) {
            NotTested gap{Gap::kindNever};
            gap.kind = kind;
            gaps.push_back(gap);
        }
    }
}

void addOwed(const TraceFacts& facts, std::vector<NotTested>& gaps) {
    for (const auto& lot : facts.lots) {
        for (const auto& method : facts.methods) {
            const bool done = std::any_of(facts.tests.begin(), facts.tests.end(), [&](const records::TestRow& test) {
                const auto* print = printOf(facts, test.done.print);
                return test.done.method == method.key && print != nullptr && print->named.lot == lot.lot.id &&
                       tells(test);
            });
            if (method.eachLot && !method.withdrawn && !done) {
                NotTested gap{Gap::methodMissing, lot.lot.number};
                gap.kind = method.kind;
                gap.method = method.key;
                gaps.push_back(gap);
            }
        }
    }
}

void addCycles(const TraceFacts& facts, std::vector<NotTested>& gaps) {
    std::map<std::pair<std::string, std::string>, int> last; // print and method → highest cycle that counts
    for (const auto& test : facts.tests) {
        if (test.done.cycle && test.done.outcome != TestOutcome::inAVoidLoad) {
            auto& cycle = last[{test.done.print, test.done.method}];
            cycle = std::max(cycle, *test.done.cycle);
        }
    }
    for (const auto& [key, cycle] : last) {
        const auto* method = methodOf(facts, key.second);
        const auto* print = printOf(facts, key.first);
        if (method == nullptr || print == nullptr || method->kind != TestKind::wash || !method->programme ||
            cycle >= method->programme->cycles) {
            continue;
        }
        NotTested gap{Gap::cyclesMissing, print->lotNumber};
        gap.kind = method->kind;
        gap.method = method->key;
        gap.print = print->named.number;
        gap.done = cycle;
        gap.count = method->programme->cycles;
        gaps.push_back(gap);
    }
}

} // namespace

std::vector<NotTested> notTested(const TraceFacts& facts) {
    std::vector<NotTested> gaps;
    addLots(facts, gaps);
    addKinds(facts, gaps);
    addOwed(facts, gaps);
    addCycles(facts, gaps);
    const bool retained = std::any_of(facts.prints.begin(), facts.prints.end(),
                                      [](const auto& print) { return print.named.retained && !print.ended; });
    if (!retained) {
        gaps.push_back({Gap::noRetainedPiece});
    }
    if (facts.plan.childrensWear) {
        gaps.push_back({Gap::chemicalContent});
    }
    return gaps;
}

} // namespace holdfast::kiosk::shop::tracing
