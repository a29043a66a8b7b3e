#include "kiosk/screens/presenting/testing/tests_place.hpp"

#include "kiosk/screens/presenting/testing/load_forms.hpp"
#include "kiosk/screens/presenting/testing/tests_reading.hpp"
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

constexpr const char* kPictures = "pictures";
constexpr int kShownPrints = 200;
constexpr int kShownLoads = 100;
constexpr std::int64_t kMinute = 60'000;

/// Wall milliseconds of the last midnight of the shop.
std::int64_t midnight(const drivers::WallTime& now) {
    const auto day = drivers::localDay(now).time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(day).count() - now.utcOffsetMinutes * kMinute;
}

} // namespace

TestsPlace::TestsPlace(PlaceNeeds needs, std::shared_ptr<WaitingPictures> shelf) : m_needs{std::move(needs)} {
    m_inbox = std::make_unique<PictureInbox>(m_needs.exchange / kPictures,
                                             shelf ? std::move(shelf) : std::make_shared<WaitingPictures>(), [this] {
                                                 if (m_needs.show) {
                                                     m_needs.show();
                                                 }
                                             });
}

void TestsPlace::failed(const ledger::Failure& failure) const {
    m_needs.tell(wording::noticeOf(failure, wording::Kept::book, m_needs.speech()));
}

void TestsPlace::reload() {
    took(records::methods(m_needs.book->reader(), true), m_methods);
    took(records::openPrints(m_needs.book->reader(), kShownPrints), m_prints);
    readDue();
    readList();
    chooseAgain();
}

void TestsPlace::readDue() {
    took(dueNow(m_needs.book->reader(), now()), m_due);
    std::vector<records::TestRow> today;
    if (took(records::testsSince(m_needs.book->reader(), midnight(now())), today)) {
        m_doneToday = today.size();
    }
    m_dueAt = now().millisecondsSinceEpoch;
}

void TestsPlace::readList() {
    const auto& book = m_needs.book->reader();
    if (m_list == List::retained) {
        took(records::retainedPrints(book), m_retained);
    } else if (m_list == List::loads) {
        took(records::loads(book, kShownLoads), m_loads);
    }
}

void TestsPlace::tick() {
    if (now().millisecondsSinceEpoch - m_dueAt >= kMinute) {
        readDue();
        m_needs.show();
    }
}

void TestsPlace::chooseAgain() {
    const auto chosen = m_chosen;
    const bool history = std::holds_alternative<TestShown>(m_shown) && std::get<TestShown>(m_shown).history;
    if (chosen.empty() || isFormShown()) {
        return;
    }
    if (!choose(chosen)) {
        m_chosen.clear();
        m_shown = std::monostate{};
    } else if (auto* shown = std::get_if<TestShown>(&m_shown); shown != nullptr && history) {
        actOnTest(*shown, "tests.versions");
    }
}

bool TestsPlace::choose(const std::string& id) {
    m_dueChosen.clear();
    if (const auto print = behind(id, kTestsPrint)) {
        return choosePrint(*print);
    }
    if (const auto test = behind(id, kTestsTest)) {
        return chooseTest(*test);
    }
    if (const auto load = behind(id, kTestsLoad)) {
        return chooseLoad(*load);
    }
    const auto key = behind(id, kTestsMethod);
    const auto* method = key ? methodNamed(m_methods, *key) : nullptr;
    if (method == nullptr) {
        return false;
    }
    m_chosen = id;
    m_shown = *method;
    return true;
}

bool TestsPlace::choosePrint(const std::string& print) {
    std::optional<PrintFacts> facts;
    if (!took(printFacts(m_needs.book->reader(), print), facts) || !facts) {
        return false;
    }
    m_chosen = std::string{kTestsPrint} + print;
    m_shown = std::move(*facts);
    return true;
}

bool TestsPlace::chooseTest(const std::string& test) {
    std::vector<records::TestRow> versions;
    if (!took(records::versionsOfTest(m_needs.book->reader(), test), versions) || versions.empty()) {
        return false;
    }
    std::optional<PrintFacts> facts;
    if (!took(printFacts(m_needs.book->reader(), versions.back().done.print), facts) || !facts) {
        return false;
    }
    const auto row =
        std::find_if(facts->tests.begin(), facts->tests.end(), [&](const auto& one) { return one.id == test; });
    if (row == facts->tests.end()) {
        return false;
    }
    m_chosen = std::string{kTestsTest} + test;
    const auto shown = *row;
    m_shown = TestShown{std::move(*facts), shown, {}, false};
    return true;
}

bool TestsPlace::chooseLoad(const std::string& load) {
    std::optional<records::LoadRow> row;
    if (!took(records::loadById(m_needs.book->reader(), load), row) || !row) {
        return false;
    }
    m_chosen = std::string{kTestsLoad} + load;
    m_shown = std::move(*row);
    return true;
}

const records::PrintRow* TestsPlace::printOf(const std::string& id) const {
    const auto found =
        std::find_if(m_prints.begin(), m_prints.end(), [&](const auto& one) { return one.named.print == id; });
    return found == m_prints.end() ? nullptr : &*found;
}

bool TestsPlace::turnList(const std::string& id) {
    struct Row {
        const char* id;
        List list;
    };
    static constexpr std::array<Row, 5> kLists{{{"tests.list.due", List::due},
                                                {"tests.list.prints", List::prints},
                                                {"tests.list.retained", List::retained},
                                                {"tests.list.loads", List::loads},
                                                {"tests.list.methods", List::methods}}};
    const auto* const row = std::find_if(kLists.begin(), kLists.end(), [&](const auto& one) { return one.id == id; });
    if (row == kLists.end()) {
        return false;
    }
    m_list = row->list;
    readList();
    return true;
}

bool TestsPlace::act(const std::string& id) {
    if (id == "tests.back") {
        leavePage();
        return true;
    }
    if (id == "tests.resume" && m_form) {
        m_aside = false;
        return true;
    }
    if (id == "tests.save" && isFormShown()) {
        save();
        return true;
    }
    if (isFormShown() && m_form->act(id)) {
        m_form->touch();
        return true;
    }
    if (turnList(id) || startDue(id) || startNew(id)) {
        return true;
    }
    if (choose(id)) {
        putAside();
        return true;
    }
    if (isFormShown()) {
        return false;
    }
    if (const auto* facts = std::get_if<PrintFacts>(&m_shown)) {
        return actOnPrint(*facts, id);
    }
    if (const auto* offered = std::get_if<MethodsOffered>(&m_shown)) {
        const auto key = behind(id, "tests.by.");
        return key && startTest(PrintFacts{offered->facts}, *key, std::nullopt, std::nullopt);
    }
    if (const auto* ending = std::get_if<Ending>(&m_shown)) {
        return actOnPrint(PrintFacts{ending->facts}, id);
    }
    if (auto* shown = std::get_if<TestShown>(&m_shown)) {
        return actOnTest(*shown, id);
    }
    if (const auto* load = std::get_if<records::LoadRow>(&m_shown); load != nullptr && id == "tests.judge") {
        if (mayStart()) {
            startForm(witnessForm(m_needs, *load));
        }
        return true;
    }
    if (const auto* method = std::get_if<records::MethodDescribed>(&m_shown)) {
        return actOnMethod(records::MethodDescribed{*method}, id);
    }
    return false;
}

void TestsPlace::leavePage() {
    m_dueChosen.clear();
    if (isFormShown()) {
        m_form.reset();
        chooseAgain();
        return;
    }
    const auto* offered = std::get_if<MethodsOffered>(&m_shown);
    const auto* ending = std::get_if<Ending>(&m_shown);
    const auto* test = std::get_if<TestShown>(&m_shown);
    const auto* facts = offered != nullptr  ? &offered->facts
                        : ending != nullptr ? &ending->facts
                        : test != nullptr   ? &test->facts
                                            : nullptr;
    if (facts != nullptr && choosePrint(std::string{facts->print.named.print})) {
        return;
    }
    m_chosen.clear();
    m_shown = std::monostate{};
}

bool TestsPlace::enter(const std::string& typedField, const std::string& typed) {
    if (typedField == "tests.field.find") {
        return find(typed);
    }
    if (!isFormShown() || !m_form->enter(typedField, typed)) {
        return false;
    }
    m_form->touch();
    return true;
}

bool TestsPlace::find(const std::string& typed) {
    m_typed.clear();
    if (const auto number = shop::printTyped(typed)) {
        putAside();
        showNumber(*number, typed);
    } else if (!shop::trimmed(typed).empty()) {
        m_typed = typed;
        m_needs.tell({text("tests.print-unknown", {{"text", shop::firstSigns(typed)}}),
                      text("tests.print-unknown-kept"), text("tests.print-unknown-to-do")});
    }
    return true;
}

void TestsPlace::showNumber(std::int64_t number, const std::string& asTyped) {
    std::optional<records::PrintRow> print;
    if (!took(records::printByNumber(m_needs.book->reader(), number), print)) {
        return;
    }
    m_chosen.clear(); // an unknown print must not leave another one's answer on the screen
    m_shown = std::monostate{};
    if (!print) {
        m_needs.tell({text("tests.print-unknown", {{"text", shop::firstSigns(asTyped)}}),
                      text("tests.print-unknown-kept"), text("tests.print-unknown-to-do")});
        return;
    }
    choosePrint(print->named.print);
}

bool TestsPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    if (code.kind == drivers::TicketKind::run && onScreen && isFormShown() &&
        m_form->addRun(static_cast<std::int64_t>(code.number))) {
        m_form->touch();
        return true;
    }
    if (code.kind != drivers::TicketKind::print || code.number >= static_cast<std::uint64_t>(records::kMostPrints)) {
        return false;
    }
    const auto number = static_cast<std::int64_t>(code.number);
    if (onScreen && isFormShown()) {
        std::optional<records::PrintRow> print;
        if (took(records::printByNumber(m_needs.book->reader(), number), print) && print && m_form->addPrint(*print)) {
            m_form->touch();
            return true;
        }
    }
    if (!onScreen) {
        reload();
    }
    putAside();
    if (m_form) {
        m_needs.tell({text("tests.form-kept"), {}, {}});
    }
    showNumber(number, shop::printSigns(number));
    return true;
}

/// What is half typed is kept while something else is looked at.
void TestsPlace::putAside() {
    m_aside = true;
    if (!isWriting()) {
        m_form.reset();
    }
}

} // namespace holdfast::kiosk::screens
