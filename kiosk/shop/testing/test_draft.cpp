#include "kiosk/shop/testing/test_draft.hpp"

#include "kiosk/records/words.hpp"
#include "kiosk/shop/testing/rest.hpp"
#include "kiosk/shop/testing/series.hpp"
#include "kiosk/shop/testing/test_values.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::shop {
namespace {

using records::TestKind;
using records::TestOutcome;
using Cause = TestFaultCause;

std::string typedOf(const analytics::TestValue& value) {
    struct Visitor {
        std::string operator()(analytics::Grade grade) const { return numberTyped(grade.number()); }
        std::string operator()(analytics::CrackClass seen) const { return std::string{records::toWord(seen)}; }
        std::string operator()(analytics::RelativeLength length) const { return numberTyped(length.percent()); }
        std::string operator()(double number) const { return numberTyped(number); }
        std::string operator()(bool yes) const { return yes ? "yes" : "no"; }
    };
    return std::visit(Visitor{}, value);
}

LengthsDraft typedOf(const std::optional<records::GaugeLengths>& lengths) {
    const auto typed = [](const std::optional<double>& mm) { return mm ? numberTyped(*mm) : std::string{}; };
    return lengths
               ? LengthsDraft{numberTyped(lengths->originalMm), typed(lengths->stretchedMm), typed(lengths->relaxedMm)}
               : LengthsDraft{};
}

LabDraft typedOf(const std::optional<analytics::Lab>& colour) {
    return colour ? LabDraft{numberTyped(colour->l), numberTyped(colour->a), numberTyped(colour->b)} : LabDraft{};
}

std::int64_t afterHours(const records::PrintRow& print, double hours) {
    return print.named.printedAt +
           static_cast<std::int64_t>(std::llround(hours * static_cast<double>(kMillisecondsPerHour)));
}

/// No new test then; what was written wrong before may still be put right.
bool endsTesting(Cause cause) {
    return cause == Cause::lotScrapped || cause == Cause::printEnded || cause == Cause::methodWithdrawn;
}

class Entering final {
public:
    Entering(const TestDraft& draft, const TestContext& context) : m_draft{draft}, m_context{context} {}

    tl::expected<TestToKeep, TestFaults> keep() {
        for (auto& fault : standsAgainst(m_draft.method, m_context)) {
            if (!m_draft.corrects || !endsTesting(fault.cause)) {
                m_read.fault(std::move(fault));
            }
        }
        begin();
        readCycle();
        analytics::TestPlace place;
        place.cycle = m_done.cycle;
        const bool firstLook = isSeries(m_draft.method) && m_done.cycle == 0;
        readAnswers(m_draft, place, firstLook, m_read, m_done);
        if (m_draft.method.kind == TestKind::stretch) {
            readPulls(m_draft, m_read, m_done);
        } else if (m_draft.method.kind == TestKind::shrink) {
            readShrink(m_draft, m_read, m_done);
        }
        readColours(m_draft, place, m_read, m_done);
        if (m_read.faults().empty() && m_done.results.empty() && !m_done.before && m_done.pictures.empty() &&
            m_done.note.empty()) {
            m_read.fault({Cause::nothingEntered});
        }
        if (!m_read.faults().empty()) {
            return tl::unexpected(std::move(m_read.faults()));
        }
        return judged();
    }

private:
    void begin() {
        m_done.print = m_draft.print;
        m_done.method = m_draft.method.key;
        m_done.revision = m_draft.method.revision;
        m_done.instrument = m_draft.instrument;
        m_done.pictures = m_draft.pictures;
        m_done.corrects = m_draft.corrects;
        m_done.note = m_read.text(m_draft.note, "note");
    }

    [[nodiscard]] const std::string& itself() const {
        static const std::string kNone;
        return m_draft.corrects ? *m_draft.corrects : kNone;
    }

    [[nodiscard]] bool isTaken(int cycle) const {
        return std::any_of(m_context.tests.begin(), m_context.tests.end(), [&](const auto& one) {
            return one.done.method == m_draft.method.key && one.id != itself() && one.done.cycle == cycle &&
                   counts(one);
        });
    }

    void readCycle() {
        if (!isSeries(m_draft.method)) {
            return;
        }
        const auto before = m_read.faults().size();
        const auto cycle = m_read.whole(m_draft.cycle, "cycle");
        if (!cycle) {
            if (m_read.faults().size() == before) {
                m_read.fault({Cause::cycleMissing, "cycle"});
            }
            return;
        }
        m_done.cycle = cycle;
        if (m_draft.method.kind == TestKind::bleedWatch) {
            checkHour(*cycle);
        } else {
            checkCycle(*cycle);
        }
    }

    void checkCycle(int cycle) {
        if (cycle < 0 || cycle > kMostCycles) {
            m_read.fault({Cause::cycleUnlikely, "cycle", {}, kMostCycles});
            return;
        }
        const auto* load = loadOf(cycle);
        if (load != nullptr && isVoid(*load)) {
            return; // the cycle has to be washed again, whatever its number was
        }
        if (isTaken(cycle)) {
            m_read.fault({Cause::cycleTwice, "cycle", {}, cycle});
            return;
        }
        const auto expected =
            load == nullptr ? std::optional<int>{0} : cycleOf(load->washed.load, m_draft.method.key, m_context.loads);
        const auto most = furthest(m_draft.method.key, m_context.tests, itself());
        if (load != nullptr && expected && cycle != *expected) {
            m_read.fault({Cause::cycleOrder, "cycle", {}, *expected});
        } else if (!m_draft.corrects && most && cycle < *most) {
            m_read.fault({Cause::cycleOrder, "cycle", {}, *most + 1});
        }
    }

    /// The load of this cycle, once nothing is wrong with it.
    const records::LoadRow* loadOf(int cycle) {
        if (cycle == 0) {
            return nullptr;
        }
        if (!m_draft.load || m_draft.load->empty()) {
            m_read.fault({Cause::loadMissing, "load"});
            return nullptr;
        }
        m_done.load = m_draft.load;
        const auto load = std::find_if(m_context.loads.begin(), m_context.loads.end(),
                                       [&](const auto& one) { return one.washed.load == *m_draft.load; });
        if (load == m_context.loads.end()) {
            m_read.fault({Cause::notInLoad, "load"});
            return nullptr;
        }
        const auto number = load->washed.number;
        const auto rested = restedAt(m_context.print, m_draft.method);
        if (load->washed.programme != m_draft.method.key) {
            m_read.fault({Cause::loadOfAnotherMethod, "load", {}, number});
        } else if (!load->judged) {
            m_read.fault({Cause::loadNotJudged, "load", {}, number});
        } else if (load->at < rested) {
            m_read.fault({Cause::loadBeforeRest, "load", {}, number, rested});
        } else {
            m_void = isVoid(*load);
            return &*load;
        }
        return nullptr;
    }

    void checkHour(int hours) {
        const auto& asked = m_draft.method.dueHours;
        const bool isAsked =
            std::any_of(asked.begin(), asked.end(), [&](double one) { return one == static_cast<double>(hours); });
        const auto from = afterHours(m_context.print, hours);
        const auto most = furthest(m_draft.method.key, m_context.tests, itself());
        if (!isAsked) {
            m_read.fault({Cause::hourNotAsked, "cycle", {}, hours});
        } else if (isTaken(hours)) {
            m_read.fault({Cause::cycleTwice, "cycle", {}, hours});
        } else if (m_context.now < from) {
            m_read.fault({Cause::beforeItsHour, "cycle", {}, hours, from});
        } else if (!m_draft.corrects && most && hours < *most) {
            const auto next = std::upper_bound(asked.begin(), asked.end(), static_cast<double>(*most));
            m_read.fault(
                {Cause::cycleOrder, "cycle", {}, next == asked.end() ? *most : static_cast<std::int64_t>(*next)});
        }
    }

    TestToKeep judged() {
        TestToKeep kept;
        auto results = isSeries(m_draft.method) ? resultsSoFar(m_draft.method.key, m_context.tests, itself())
                                                : std::vector<analytics::TestResult>{};
        results.insert(results.end(), m_done.results.begin(), m_done.results.end());
        if (m_draft.method.rule) {
            if (auto judgement = analytics::judge(results, *m_draft.method.rule)) {
                kept.judgement = std::move(*judgement);
            }
        }
        using analytics::TestVerdict;
        m_done.outcome = m_void                                          ? TestOutcome::inAVoidLoad
                         : kept.judgement.verdict == TestVerdict::passed ? TestOutcome::passed
                         : kept.judgement.verdict == TestVerdict::failed ? TestOutcome::failed
                                                                         : TestOutcome::noted;
        placeHold(kept);
        kept.done = std::move(m_done);
        return kept;
    }

    /// Undecided, and made by a test of this print and series. Of a test that is put right its own hold comes back by
    /// itself once it fails again.
    [[nodiscard]] bool isHeldByThis(const records::HoldRow& hold) const {
        if (hold.placed.cause != records::HoldCause::test) {
            return false;
        }
        if (m_draft.corrects && hold.placed.because == itself()) {
            return !hold.decision || hold.lifted;
        }
        return !hold.decision && !hold.lifted && isSeries(m_draft.method) &&
               std::any_of(m_context.tests.begin(), m_context.tests.end(), [&](const auto& one) {
                   return one.id == hold.placed.because && one.done.print == m_draft.print &&
                          one.done.method == m_draft.method.key;
               });
    }

    void placeHold(TestToKeep& kept) const {
        const auto& holds = m_context.holds;
        const bool failed = m_done.outcome == TestOutcome::failed;
        kept.holdLifts = !failed && m_draft.corrects && std::any_of(holds.begin(), holds.end(), [&](const auto& one) {
            return one.placed.because == itself() && !one.decision && !one.lifted;
        });
        kept.heldAlready =
            failed && std::any_of(holds.begin(), holds.end(), [&](const auto& one) { return isHeldByThis(one); });
        if (!failed || kept.heldAlready) {
            return;
        }
        records::HoldPlaced hold;
        hold.hold = m_context.holdId;
        hold.lot = m_context.print.named.lot;
        hold.cause = records::HoldCause::test;
        hold.because = m_draft.corrects ? *m_draft.corrects : m_context.testId;
        hold.count = m_context.pieces;
        hold.bin = m_context.nextBin;
        kept.hold = std::move(hold);
        kept.recall = m_context.shipped;
    }

    const TestDraft& m_draft;
    const TestContext& m_context;
    TestReader m_read;
    records::TestDone m_done;
    bool m_void = false;
};

} // namespace

TestDraft draftFor(const std::string& print, const records::MethodDescribed& method) {
    TestDraft draft;
    draft.print = print;
    draft.method = method;
    for (const auto& asked : askedOf(method)) {
        draft.answers.push_back({asked, {}});
    }
    if (method.kind == TestKind::stretch) {
        for (const auto percent : method.pullPercent) {
            draft.pulls.push_back({numberTyped(percent), {}});
        }
        if (draft.pulls.empty()) {
            draft.pulls.emplace_back();
        }
    }
    return draft;
}

TestDraft draftOf(const records::TestRow& test, const records::MethodDescribed& method) {
    auto draft = draftFor(test.done.print, method);
    const auto& done = test.done;
    draft.corrects = test.id;
    draft.cycle = done.cycle ? std::to_string(*done.cycle) : std::string{};
    draft.load = done.load;
    draft.lengthwise = typedOf(done.lengthwise);
    draft.widthwise = typedOf(done.widthwise);
    draft.before = typedOf(done.before);
    draft.after = typedOf(done.after);
    draft.instrument = done.instrument;
    draft.pictures = done.pictures;
    draft.note = done.note;
    std::size_t pull = 0;
    for (const auto& result : done.results) {
        if (result.quantity == analytics::Quantity::crackClass && result.place.elongation) {
            draft.pulls.resize(std::max(draft.pulls.size(), pull + 1));
            draft.pulls[pull++] = {numberTyped(result.place.elongation->percent()), typedOf(result.value)};
        }
        for (auto& answer : draft.answers) {
            if (answer.asked == AskedResult{result.quantity, result.ownName}) {
                answer.typed = typedOf(result.value);
            }
        }
    }
    return draft;
}

tl::expected<TestToKeep, TestFaults> testFrom(const TestDraft& draft, const TestContext& context) {
    return Entering{draft, context}.keep();
}

TestFaults standsAgainst(const records::MethodDescribed& method, const TestContext& context) {
    TestFaults faults;
    if (context.lotScrapped) {
        faults.push_back({Cause::lotScrapped});
    }
    if (context.print.ended) {
        faults.push_back({Cause::printEnded});
    }
    if (method.withdrawn) {
        faults.push_back({Cause::methodWithdrawn});
    }
    switch (validityOf(context.print, method)) {
    case Validity::valid:
        break;
    case Validity::notForChemistry:
        faults.push_back({Cause::notForChemistry, {}, {}, {}, {}, context.print.chemistries});
        break;
    case Validity::chemistryUnknown:
        faults.push_back({Cause::chemistryUnknown});
        break;
    }
    const auto rested = restedAt(context.print, method);
    if (context.now < rested) {
        faults.push_back({Cause::beforeRest, {}, {}, {}, rested});
    }
    return faults;
}

} // namespace holdfast::kiosk::shop
