// What is begun in the Tests, and what they write.
#include "kiosk/records/print_moves.hpp"
#include "kiosk/records/words.hpp"
#include "kiosk/screens/presenting/testing/load_forms.hpp"
#include "kiosk/screens/presenting/testing/method_form.hpp"
#include "kiosk/screens/presenting/testing/print_forms.hpp"
#include "kiosk/screens/presenting/testing/test_form.hpp"
#include "kiosk/screens/presenting/testing/tests_place.hpp"
#include "kiosk/screens/presenting/testing/tests_rows.hpp"
#include "kiosk/shop/testing/method_draft.hpp"
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/testing/print_piece.hpp"
#include "kiosk/shop/testing/series.hpp"
#include "kiosk/shop/testing/starters.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

bool TestsPlace::mayStart() {
    if (isWriting()) { // it comes back instead: nothing is typed twice
        m_aside = false;
        m_needs.tell({text("tests.one-form"), {}, {}});
        return false;
    }
    return true;
}

void TestsPlace::startForm(std::unique_ptr<TestsForm> form) {
    m_form = std::move(form);
    m_aside = false;
}

bool TestsPlace::startNew(const std::string& id) {
    static constexpr std::array<std::string_view, 3> kNew{"tests.name", "tests.new-load", "tests.new-method"};
    if (std::find(kNew.begin(), kNew.end(), id) == kNew.end()) {
        return false;
    }
    if (!mayStart()) {
        return true;
    }
    if (id == "tests.name") {
        const auto& running = m_needs.floor().run;
        startForm(namePrintForm(m_needs, running && running->onFile.plan.kind == records::PlanKind::run
                                             ? std::optional{running->onFile.plan.number}
                                             : std::nullopt));
    } else if (id == "tests.new-load") {
        startForm(fillForm(m_needs, "wash-house", std::nullopt));
    } else {
        startForm(methodForm(m_needs, std::nullopt, ownNames(m_methods, {})));
    }
    return true;
}

bool TestsPlace::startDue(const std::string& id) {
    const auto found = std::find_if(m_due.begin(), m_due.end(), [&](const auto& one) { return dueId(one) == id; });
    if (found == m_due.end()) {
        return false;
    }
    if (!mayStart()) {
        return true;
    }
    const auto due = *found;
    m_dueChosen = id;
    if (due.step == shop::DueStep::judgeLoad) {
        if (chooseLoad(due.load)) {
            startForm(witnessForm(m_needs, std::get<records::LoadRow>(m_shown)));
        }
        return true;
    }
    if (!choosePrint(due.print)) {
        return true;
    }
    const PrintFacts facts = std::get<PrintFacts>(m_shown);
    if (due.step == shop::DueStep::putInDrum) {
        startForm(fillForm(m_needs, due.method, facts.print));
    } else {
        startTest(facts, due.method, due.cycle, due.load.empty() ? std::nullopt : std::optional{due.load});
    }
    return true;
}

bool TestsPlace::startTest(const PrintFacts& facts, const std::string& key, std::optional<int> cycle,
                           std::optional<std::string> load) {
    const auto* method = methodNamed(facts.methods, key);
    if (method == nullptr) {
        return false;
    }
    if (!mayStart()) {
        return true;
    }
    auto draft = shop::draftFor(facts.print.named.print, *method);
    if (method->kind == records::TestKind::wash && !load) {
        for (const auto& one : facts.loads) { // the last one it came out of
            load = one.washed.programme == key ? std::optional{one.washed.load} : load;
        }
        cycle = load ? shop::cycleOf(*load, key, facts.loads) : cycle;
    } else if (shop::isSeries(*method) && !cycle) {
        const auto most = shop::furthest(key, facts.tests);
        for (const double hours : method->dueHours) {
            if (!cycle && (!most || hours > static_cast<double>(*most))) {
                cycle = static_cast<int>(hours);
            }
        }
    }
    draft.load = load;
    draft.cycle = shop::isSeries(*method) ? std::to_string(cycle.value_or(0)) : std::string{};
    startForm(std::make_unique<TestForm>(m_needs, facts, std::move(draft), *m_inbox));
    return true;
}

bool TestsPlace::actOnPrint(const PrintFacts& shown, const std::string& id) {
    const PrintFacts facts = shown; // what is shown changes below
    const auto& print = facts.print;
    if (id == "tests.test") {
        m_shown = MethodsOffered{facts};
    } else if (id == "tests.shelf") {
        if (mayStart()) {
            startForm(shelfForm(m_needs, print));
        }
    } else if (id == "tests.cut") {
        cutInTwo(facts);
    } else if (id == "tests.label") {
        m_needs.print({PrintWish::What::printLabel, print.named.number});
    } else if (id == "tests.gone") {
        m_shown = Ending{facts};
    } else if (const auto picture = behind(id, "tests.picture.keep.")) {
        keepPicture(facts, *picture);
    } else if (const auto end = behind(id, "tests.end.")) {
        const auto word = records::fromWord<records::PrintEnd>(*end);
        const auto ended = word ? shop::ended(print, *word) : tl::unexpected(shop::TestFaults{});
        if (!word) {
            return false;
        }
        if (!ended) {
            m_needs.tell({wording::sentence(ended.error().front(), now(), m_needs.speech()), {}, {}});
            return true;
        }
        std::optional<records::MoveRow> stands;
        if (!took(records::moveOfPrint(m_needs.book->reader(), print.named.print), stands)) {
            return true;
        }
        FormKeeping keeping;
        keeping.keeping.list.emplace_back(*ended);
        if (stands) {
            const auto& move = stands->moved;
            if (auto moved = shop::movedOn(stands->entry, move.lot, move.to, shop::placeAfter(*word, move.to))) {
                keeping.keeping.list.emplace_back(std::move(*moved));
            }
        }
        keeping.thenChoose = std::string{kTestsPrint} + print.named.print;
        keep(std::move(keeping), nullptr);
    } else {
        return false;
    }
    return true;
}

void TestsPlace::cutInTwo(const PrintFacts& facts) {
    shop::PrintContext context;
    if (!took(records::nextPrint(m_needs.book->reader()), context.nextNumber)) {
        return;
    }
    context.printId = m_needs.newId();
    const auto half = shop::halfOf(facts.print, context);
    if (!half) {
        m_needs.tell({wording::sentence(half.error().front(), now(), m_needs.speech()), {}, {}});
        return;
    }
    FormKeeping keeping;
    const auto signs = shop::printSigns(half->named.number);
    keeping.said = {text("tests.kept.print", {{"signs", signs}}), {}, text("tests.name.write", {{"signs", signs}})};
    keeping.thenChoose = std::string{kTestsPrint} + half->named.print;
    keeping.keeping.list.emplace_back(half->named);
    keep(std::move(keeping), nullptr);
}

/// With the newest test of the print, as a new version of it.
void TestsPlace::keepPicture(const PrintFacts& facts, const std::string& sha256) {
    const auto* waiting = m_inbox->find(sha256);
    const auto* method = facts.tests.empty() ? nullptr : methodNamed(facts.methods, facts.tests.back().done.method);
    if (waiting == nullptr) {
        return;
    }
    if (method == nullptr) {
        m_needs.tell({text("tests.pictures.no-test"), {}, {}});
        return;
    }
    const auto& test = facts.tests.back();
    FormKeeping keeping;
    auto done = test.done;
    done.corrects = test.id;
    done.pictures.push_back({sha256, records::PictureSide::whole});
    keeping.keeping.list.emplace_back(std::move(done));
    keeping.keeping.blobs.push_back({"picture", waiting->jpeg});
    keeping.pictures = {sha256};
    keeping.thenChoose = std::string{kTestsPrint} + facts.print.named.print;
    keeping.said = {
        text("tests.kept.picture", {{"test", wording::testTitle(*method, test.done.cycle, m_needs.speech())}}), {}, {}};
    keep(std::move(keeping), nullptr);
}

bool TestsPlace::actOnTest(TestShown& shown, const std::string& id) {
    if (id == "tests.versions") {
        shown.history = took(records::versionsOfTest(m_needs.book->reader(), shown.test.id), shown.versions);
        return true;
    }
    if (id != "tests.put-right") {
        return false;
    }
    const auto* method = methodNamed(shown.facts.methods, shown.test.done.method);
    if (method == nullptr || !mayStart()) {
        return true;
    }
    std::optional<records::MethodDescribed> asDone; // by the revision that it was done by
    took(records::methodAt(m_needs.book->reader(), shown.test.done.method, shown.test.done.revision), asDone);
    startForm(std::make_unique<TestForm>(m_needs, shown.facts, shop::draftOf(shown.test, asDone ? *asDone : *method),
                                         *m_inbox));
    return true;
}

bool TestsPlace::actOnMethod(const records::MethodDescribed& method, const std::string& id) {
    FormKeeping keeping;
    keeping.right = shop::Right::describeMethods;
    keeping.thenChoose = std::string{kTestsMethod} + method.key;
    keeping.said = {text("tests.method.deleted"), {}, {}};
    if (id == "tests.method.change") {
        if (mayStart()) {
            startForm(methodForm(m_needs, method, ownNames(m_methods, method.key)));
        }
        return true;
    }
    if (id == "tests.method.withdraw") {
        keeping.keeping.list.emplace_back(shop::withdrawn(method));
    } else if (id == "tests.method.use-again") {
        keeping.keeping.list.emplace_back(shop::usedAgain(method));
        keeping.said = {text("tests.kept.method"), {}, {}};
    } else if (id == "tests.method.delete") {
        bool used = false;
        if (!took(records::isMethodUsed(m_needs.book->reader(), method.key), used)) {
            return true;
        }
        const auto gone = shop::deleted(method, used);
        if (!gone) {
            m_needs.tell({wording::sentence(gone.error().front(), now(), m_needs.speech()),
                          text("tests.method.delete-kept"), text("tests.method.delete-to-do")});
            return true;
        }
        keeping.keeping.list.emplace_back(*gone);
    } else {
        return false;
    }
    keep(std::move(keeping), nullptr);
    return true;
}

void TestsPlace::save() {
    if (m_keeping) {
        return;
    }
    m_form->touch(); // refused, it stays
    if (auto made = m_form->keeping()) {
        keep(std::move(*made), m_form.get());
    }
}

void TestsPlace::keep(FormKeeping keeping, const TestsForm* form) {
    if (m_keeping) { // a second press while the first is under way
        return;
    }
    const auto right = keeping.right;
    m_needs.sign(right, [this, keeping = std::move(keeping), form](std::int64_t person) mutable {
        m_keeping = true;
        auto written = std::move(keeping.keeping);
        written.person = person;
        m_needs.keep(std::move(written), [this, keeping, form](const std::optional<ledger::Failure>& failure) {
            m_keeping = false;
            if (failure) { // a form stays as it was typed
                failed(*failure);
                return;
            }
            for (const auto& picture : keeping.pictures) {
                m_inbox->taken(picture);
            }
            if (form != nullptr && m_form.get() == form) {
                m_form.reset();
            }
            m_chosen = keeping.thenChoose;
            m_shown = std::monostate{};
            reload();
            if (!keeping.said.happened.empty()) {
                m_needs.tell(keeping.said);
            }
        });
    });
}

} // namespace holdfast::kiosk::screens
