#include "kiosk/shop/testing/due_tests.hpp"

#include "kiosk/shop/testing/asked.hpp"
#include "kiosk/shop/testing/rest.hpp"
#include "kiosk/shop/testing/series.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace holdfast::kiosk::shop {
namespace {

using records::MethodDescribed;
using records::PrintRow;
using records::TestKind;
using records::TestOutcome;

constexpr std::int64_t kLeastTime = 12 * kMillisecondsPerHour; ///< what became possible at night is not late at dawn
constexpr int kUsualCycles = 5;                                ///< of a wash method without a programme

class Due final {
public:
    Due(const DueFacts& facts, const drivers::WallTime& now) : m_facts{facts}, m_now{now} {
        for (const auto& one : facts.tests) {
            m_testsOf[one.done.print].push_back(one);
        }
        for (const auto& load : facts.loads) {
            for (const auto& print : load.washed.prints) {
                m_loadsOf[print].push_back(load);
            }
        }
    }

    std::vector<DueTest> all() {
        addLoads();
        for (const auto& method : m_facts.methods) {
            for (const auto* print : owing(method)) {
                add(*print, method);
            }
        }
        std::stable_sort(m_due.begin(), m_due.end(), [](const DueTest& one, const DueTest& other) {
            return std::make_pair(orderOf(one.state), one.at) < std::make_pair(orderOf(other.state), other.at);
        });
        return std::move(m_due);
    }

private:
    static int orderOf(DueState state) {
        switch (state) {
        case DueState::late:
            return 0;
        case DueState::now:
            return 1;
        case DueState::by:
            return 2;
        case DueState::today:
            break;
        }
        return 3;
    }

    [[nodiscard]] analytics::Date dayOf(std::int64_t at) const {
        return drivers::localDay({at, m_now.utcOffsetMinutes});
    }
    [[nodiscard]] analytics::Date today() const { return drivers::localDay(m_now); }
    [[nodiscard]] std::int64_t nowMs() const { return m_now.millisecondsSinceEpoch; }

    [[nodiscard]] std::vector<records::TestRow> testsOf(const PrintRow& print, const MethodDescribed& method) const {
        std::vector<records::TestRow> all;
        const auto found = m_testsOf.find(print.named.print);
        for (const auto& one : found == m_testsOf.end() ? std::vector<records::TestRow>{} : found->second) {
            if (one.done.method == method.key && counts(one)) {
                all.push_back(one);
            }
        }
        return all;
    }
    [[nodiscard]] const std::vector<records::LoadRow>& loadsOf(const PrintRow& print) const {
        static const std::vector<records::LoadRow> kNone;
        const auto found = m_loadsOf.find(print.named.print);
        return found == m_loadsOf.end() ? kNone : found->second;
    }
    [[nodiscard]] bool wasWashed(const PrintRow& print, const MethodDescribed& method) const {
        const auto& loads = loadsOf(print);
        return std::any_of(loads.begin(), loads.end(),
                           [&](const auto& one) { return one.washed.programme == method.key; });
    }
    [[nodiscard]] bool isBegun(const PrintRow& print, const MethodDescribed& method) const {
        return !testsOf(print, method).empty() || wasWashed(print, method);
    }

    [[nodiscard]] static bool isScrapped(const PrintRow& print) {
        return print.lotState == records::LotState::scrapped;
    }

    [[nodiscard]] bool mayOwe(const PrintRow& print, const MethodDescribed& method) const {
        const bool bleeds = method.kind != TestKind::bleedWatch ||
                            std::find(m_facts.bleedingFabrics.begin(), m_facts.bleedingFabrics.end(), print.fabric) !=
                                m_facts.bleedingFabrics.end();
        return bleeds && !print.named.retained && !print.named.halfOf && validityOf(print, method) == Validity::valid;
    }

    /// One print of each lot, and every print with which it was begun.
    [[nodiscard]] std::vector<const PrintRow*> owing(const MethodDescribed& method) const {
        std::vector<const PrintRow*> begun;
        std::map<std::string, const PrintRow*> first; // by lot
        std::set<std::string> served;
        for (const auto& one : m_facts.testedLots) {
            if (one.method == method.key) {
                served.insert(one.lot);
            }
        }
        for (const auto& print : m_facts.prints) {
            if (print.ended || isScrapped(print)) {
                continue;
            }
            if (isBegun(print, method)) {
                begun.push_back(&print);
                served.insert(print.named.lot);
            } else if (method.eachLot && mayOwe(print, method)) {
                auto& one = first[print.named.lot];
                one = one == nullptr || print.named.number < one->named.number ? &print : one;
            }
        }
        for (const auto& [lot, print] : first) {
            if (served.count(lot) == 0) {
                begun.push_back(print);
            }
        }
        return begun;
    }

    void add(const PrintRow& print, const MethodDescribed& method) {
        const auto done = testsOf(print, method);
        const bool failed = std::any_of(done.begin(), done.end(),
                                        [](const auto& one) { return one.done.outcome == TestOutcome::failed; });
        if (failed) {
            return;
        }
        if (method.kind == TestKind::wash) {
            addCycle(print, method, done);
        } else if (isSeries(method)) {
            addHour(print, method, done);
        } else if (done.empty()) {
            addOnce(print, method);
        }
    }

    DueTest dueOf(const PrintRow& print, const MethodDescribed& method, DueStep step, std::int64_t at) const {
        DueTest due;
        due.step = step;
        due.print = print.named.print;
        due.method = method.key;
        due.at = at;
        return due;
    }

    void addOnce(const PrintRow& print, const MethodDescribed& method) {
        auto at = restedAt(print, method);
        if (!method.dueHours.empty()) {
            at = std::max(at, afterHours(print, method.dueHours.front()));
        }
        push(dueOf(print, method, DueStep::test, at), dayOf(at), !method.dueHours.empty());
    }

    void addHour(const PrintRow& print, const MethodDescribed& method, const std::vector<records::TestRow>& done) {
        const auto most = furthest(method.key, done);
        const auto next = std::find_if(method.dueHours.begin(), method.dueHours.end(),
                                       [&](double hours) { return !most || hours > static_cast<double>(*most); });
        if (next == method.dueHours.end()) {
            return;
        }
        auto due = dueOf(print, method, DueStep::test, afterHours(print, *next));
        due.cycle = static_cast<int>(std::lround(*next));
        push(due, dayOf(due.at), true);
    }

    void addCycle(const PrintRow& print, const MethodDescribed& method, const std::vector<records::TestRow>& done) {
        const int asked = method.programme ? method.programme->cycles : kUsualCycles;
        const int graded = furthest(method.key, done).value_or(0);
        const records::LoadRow* waiting = nullptr;
        std::int64_t last = restedAt(print, method);
        int washed = 0;
        for (const auto& load : loadsOf(print)) {
            if (load.washed.programme != method.key || isVoid(load)) {
                continue;
            }
            ++washed;
            last = std::max(last, load.at);
            waiting = washed > graded ? &load : waiting;
        }
        if (waiting != nullptr && !waiting->judged) {
            return; // the load itself is due to be judged
        }
        if (waiting != nullptr) {
            auto due = dueOf(print, method, DueStep::gradeCycle, waiting->at);
            due.cycle = washed;
            due.load = waiting->washed.load;
            due.loadNumber = waiting->washed.number;
            pushOnBench(due);
            return;
        }
        if (washed >= asked) {
            return;
        }
        auto due = dueOf(print, method, DueStep::putInDrum, last);
        due.cycle = washed + 1;
        push(due, dayOf(last) + std::chrono::days{washed == 0 ? 0 : 1}, false);
    }

    void addLoads() {
        for (const auto& load : m_facts.loads) {
            if (!load.judged) {
                DueTest due;
                due.step = DueStep::judgeLoad;
                due.method = load.washed.programme;
                due.load = load.washed.load;
                due.loadNumber = load.washed.number;
                due.at = load.at;
                pushOnBench(due);
            }
        }
    }

    /// Lies there and waits: now, and late once a day has passed over it.
    void pushOnBench(DueTest due) {
        due.day = dayOf(due.at) + std::chrono::days{1};
        due.state = today() > due.day ? DueState::late : DueState::now;
        m_due.push_back(std::move(due));
    }

    void push(DueTest due, analytics::Date day, bool byTheHour) {
        due.day = day;
        if (due.at > nowMs() && dayOf(due.at) > today()) {
            return; // not today
        }
        if (due.at > nowMs()) {
            due.state = DueState::by;
        } else if (today() > day && nowMs() - due.at >= kLeastTime) {
            due.state = DueState::late;
        } else {
            due.state = byTheHour ? DueState::now : DueState::today;
        }
        m_due.push_back(std::move(due));
    }

    static std::int64_t afterHours(const PrintRow& print, double hours) {
        return print.named.printedAt +
               static_cast<std::int64_t>(std::llround(hours * static_cast<double>(kMillisecondsPerHour)));
    }

    const DueFacts& m_facts;
    drivers::WallTime m_now;
    std::map<std::string, std::vector<records::TestRow>> m_testsOf;
    std::map<std::string, std::vector<records::LoadRow>> m_loadsOf;
    std::vector<DueTest> m_due;
};

} // namespace

std::vector<DueTest> dueTests(const DueFacts& facts, const drivers::WallTime& now) {
    return Due{facts, now}.all();
}

} // namespace holdfast::kiosk::shop
