// What the Tests show.
#include "kiosk/screens/presenting/testing/tests_rows.hpp"

#include "kiosk/records/words.hpp"
#include "kiosk/screens/presenting/places/people_now.hpp"
#include "kiosk/screens/presenting/testing/method_form.hpp"
#include "kiosk/screens/presenting/testing/print_page.hpp"
#include "kiosk/screens/presenting/testing/tests_place.hpp"
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/testing/print_draft.hpp"
#include "kiosk/shop/testing/rest.hpp"
#include "kiosk/shop/testing/starters.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

std::string dueId(const shop::DueTest& due) {
    return "tests.due." + std::to_string(static_cast<int>(due.step)) + "." + due.print + "." + due.method + "." +
           (due.cycle ? std::to_string(*due.cycle) : std::string{}) + "." + due.load;
}

std::vector<std::string> ownNames(const std::vector<records::MethodDescribed>& methods, const std::string& but) {
    std::vector<std::string> names;
    for (const auto& one : methods) {
        if (one.key != but && !one.name.empty()) {
            names.push_back(one.name);
        }
    }
    return names;
}

SheetPageState TestsPlace::sheet() const {
    SheetPageState page;
    page.head = toQString(text("tests.heading"));
    page.headHow = toQString(wording::dueCountText(m_due, m_needs.speech()));
    addList(page);
    page.back = pressOf("tests.back", text("tests.back"));
    page.detailOnly = m_form || !std::holds_alternative<std::monostate>(m_shown);
    if (m_form && m_aside) {
        page.listActions.prepend(pressOf("tests.resume", text("tests.resume")));
    }
    if (!isFormShown()) {
        addShown(page);
        return page;
    }
    page.title = toQString(m_form->title());
    page.blocks = m_form->blocks();
    page.actions = {pressOf("tests.save", text("tests.save"), true), pressOf("tests.back", text("tests.leave"))};
    return page;
}

void TestsPlace::addList(SheetPageState& page) const {
    const auto other = [&](const char* id, const char* key) { page.listActions.append(pressOf(id, text(key))); };
    if (m_list == List::due) {
        page.heading = toQString(text("tests.list.due"));
        page.listNone = toQString(text("tests.due.none"));
        addDueRows(page);
        other("tests.name", "tests.name");
        other("tests.new-load", "tests.new-load");
        other("tests.list.prints", "tests.list.prints");
        other("tests.list.retained", "tests.list.retained");
        other("tests.list.loads", "tests.list.loads");
        other("tests.list.methods", "tests.list.methods");
        return;
    }
    if (m_list == List::methods) {
        page.heading = toQString(text("tests.list.methods"));
        page.listNone = toQString(text("tests.list.methods-none"));
        for (const auto& one : m_methods) {
            auto row = factRow(wording::methodName(one, m_needs.speech()), {},
                               text(one.withdrawn              ? "tests.methods.withdrawn"
                                    : shop::isStarter(one.key) ? "tests.kind." + std::string{records::toWord(one.kind)}
                                                               : std::string{"tests.methods.own"}));
            row.id = toQString(std::string{kTestsMethod} + one.key);
            row.chosen = !isFormShown() && m_chosen == row.id.toStdString();
            page.list.append(row);
        }
        other("tests.new-method", "tests.new-method");
    } else if (m_list == List::loads) {
        page.heading = toQString(text("tests.list.loads"));
        page.listNone = toQString(text("tests.list.loads-none"));
        for (const auto& one : m_loads) {
            const auto* method = methodNamed(m_methods, one.washed.programme);
            auto row =
                factRow(text("tests.load.title", {{"number", std::to_string(one.washed.number)}}),
                        one.judged ? wording::word(one.judged->word, m_needs.speech()) : text("tests.load.waiting"),
                        text("tests.load.row",
                             {{"machine", one.washed.machine},
                              {"programme", method == nullptr ? one.washed.programme
                                                              : wording::methodName(*method, m_needs.speech())}}));
            row.strong = !one.judged;
            row.id = toQString(std::string{kTestsLoad} + one.washed.load);
            row.chosen = !isFormShown() && m_chosen == row.id.toStdString();
            page.list.append(row);
        }
        other("tests.new-load", "tests.new-load");
    } else {
        addPrintRows(page);
        other("tests.name", "tests.name");
    }
    other("tests.list.due", "tests.list.due");
}

void TestsPlace::addDueRows(SheetPageState& page) const {
    const auto& speech = m_needs.speech();
    for (const auto& due : m_due) {
        const auto* method = methodNamed(m_methods, due.method);
        const auto* print = printOf(due.print);
        const bool load = due.step == shop::DueStep::judgeLoad;
        if (method == nullptr || (print == nullptr && !load)) {
            continue;
        }
        SheetRow row;
        row.id = toQString(dueId(due));
        row.value = toQString(wording::dueText(due, now(), speech));
        row.strong = due.state == shop::DueState::late;
        if (load) {
            row.title = toQString(text("tests.due.judge", {{"load", std::to_string(due.loadNumber)}}));
            row.detail = toQString(text("tests.due.judge-detail"));
            row.chosen = m_chosen == std::string{kTestsLoad} + due.load;
        } else {
            row.title = toQString(wording::testTitle(*method, due.cycle, speech));
            const auto what = due.step == shop::DueStep::putInDrum ? text("tests.due.drum")
                              : due.step == shop::DueStep::gradeCycle
                                  ? text("tests.due.grade", {{"load", std::to_string(due.loadNumber)}})
                                  : print->runTitle;
            row.detail =
                toQString(text("tests.due.detail", {{"run", std::to_string(print->runNumber)}, {"what", what}}));
            row.chosen = m_dueChosen == dueId(due);
        }
        page.list.append(row);
    }
    if (m_doneToday > 0) {
        page.list.append(factRow(text("tests.due.done", {{"count", std::to_string(m_doneToday)}}), {}));
    }
}

void TestsPlace::addPrintRows(SheetPageState& page) const {
    const bool shelf = m_list == List::retained;
    page.heading = toQString(text(shelf ? "tests.list.retained" : "tests.list.prints"));
    page.listNone = toQString(text(shelf ? "tests.list.retained-none" : "tests.list.prints-none"));
    const auto today = drivers::localDay(now());
    for (const auto& one : shelf ? m_retained : m_prints) {
        auto row =
            factRow(text("tests.print.row",
                         {{"signs", shop::printSigns(one.named.number)}, {"run", std::to_string(one.runNumber)}}),
                    one.named.retained ? one.named.retained->shelf : std::string{},
                    text("tests.print.row-lot", {{"lot", std::to_string(one.lotNumber)}, {"title", one.runTitle}}));
        if (shop::isPastItsTime(one, today)) {
            row.strong = true;
            row.detail = toQString(text(
                "tests.print.past", {{"day", wording::dayText(*one.named.retained->until, today, m_needs.speech())}}));
        }
        row.id = toQString(std::string{kTestsPrint} + one.named.print);
        row.chosen = !isFormShown() && m_chosen == row.id.toStdString();
        page.list.append(row);
    }
}

void TestsPlace::addShown(SheetPageState& page) const {
    if (const auto* print = std::get_if<PrintFacts>(&m_shown)) {
        addPrint(page, *print);
    } else if (const auto* test = std::get_if<TestShown>(&m_shown)) {
        addTest(page, *test);
    } else if (const auto* offered = std::get_if<MethodsOffered>(&m_shown)) {
        addOffered(page, offered->facts);
    } else if (const auto* ending = std::get_if<Ending>(&m_shown)) {
        page.title = toQString(printTitle(ending->facts.print, m_needs.speech()));
        page.blocks.append(
            textBlock(SheetKinds::Lead,
                      text("tests.print.end-ask", {{"signs", shop::printSigns(ending->facts.print.named.number)}})));
        for (const auto& row : records::tableOf(records::PrintEnd{})) {
            page.actions.append(
                pressOf("tests.end." + std::string{row.word}, wording::word(row.value, m_needs.speech())));
        }
        page.actions.append(pressOf("tests.back", text("tests.leave")));
    } else if (const auto* load = std::get_if<records::LoadRow>(&m_shown)) {
        addLoad(page, *load);
    } else if (const auto* method = std::get_if<records::MethodDescribed>(&m_shown)) {
        addMethod(page, *method);
    } else {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("tests.pick")));
        page.blocks.append(fieldsBlock({fieldOf(std::string{kTestsField} + "find", text("tests.find"), m_typed,
                                                text("tests.find-hint"), SheetKinds::Code)}));
        addInbox(page.blocks, nullptr);
    }
}

void TestsPlace::addPrint(SheetPageState& page, const PrintFacts& facts) const {
    const auto& speech = m_needs.speech();
    page.title = toQString(printTitle(facts.print, speech));
    addPrintLines(page.blocks, facts, now(), speech);
    addAllMethods(page.blocks, facts, speech, now());
    addInbox(page.blocks, &facts);
    page.blocks.append(textBlock(SheetKinds::Heading, text("tests.print.history")));
    auto history = historyBlock(facts, now(), speech);
    page.blocks.append(history.trail.isEmpty() ? textBlock(SheetKinds::Sentence, text("tests.print.none")) : history);
    if (facts.print.ended) {
        page.actions = {pressOf("tests.label", text("tests.print.label"))};
        return;
    }
    page.actions = {pressOf("tests.test", text("tests.print.test"), true),
                    pressOf("tests.label", text("tests.print.label"))};
    page.blocks.append(pressBlock({pressOf("tests.cut", text("tests.print.cut")),
                                   pressOf("tests.shelf", text("tests.print.keep-place")),
                                   pressOf("tests.gone", text("tests.print.end"))}));
}

void TestsPlace::addInbox(QList<SheetBlock>& blocks, const PrintFacts* facts) const {
    std::vector<SheetRow> rows;
    const auto& waiting = m_inbox->waiting();
    for (const auto& one : waiting) {
        const bool hers = facts != nullptr && (!one.print || one.print == facts->print.named.number);
        if (facts != nullptr && !hers) {
            continue;
        }
        auto row = factRow(one.file.filename().string(), {},
                           one.print ? text("tests.pictures.of", {{"signs", shop::printSigns(*one.print)}})
                                     : text("tests.pictures.unknown"));
        if (facts != nullptr && !facts->tests.empty()) {
            const auto& test = facts->tests.back();
            const auto* method = methodNamed(facts->methods, test.done.method);
            row.id = toQString("tests.picture.keep." + one.sha256);
            row.value = toQString(
                text("tests.pictures.keep",
                     {{"test", method == nullptr ? test.done.method
                                                 : wording::testTitle(*method, test.done.cycle, m_needs.speech())}}));
        }
        rows.push_back(row);
    }
    if (!rows.empty()) {
        blocks.append(
            textBlock(SheetKinds::Heading, text("tests.pictures.waiting", {{"count", std::to_string(rows.size())}})));
        blocks.append(rowsBlock(SheetKinds::Rows, rows));
    }
    if (facts != nullptr) {
        return;
    }
    for (const auto& fault : m_inbox->refused()) {
        blocks.append(textBlock(SheetKinds::Sentence, wording::sentence(fault, m_needs.speech())));
    }
    blocks.append(textBlock(SheetKinds::Note, text("tests.pictures.folder", {{"folder", m_inbox->folder().string()}})));
}

void TestsPlace::addOffered(SheetPageState& page, const PrintFacts& facts) const {
    const auto& speech = m_needs.speech();
    page.title = toQString(text("tests.print.which"));
    std::vector<SheetRow> rows;
    for (const auto& method : facts.methods) {
        if (method.withdrawn) {
            continue;
        }
        const auto rested = shop::restedAt(facts.print, method);
        const bool valid = shop::validityOf(facts.print, method) == shop::Validity::valid;
        auto row = factRow(wording::methodName(method, speech),
                           !valid ? text("tests.print.not-for-ink")
                           : rested > now().millisecondsSinceEpoch
                               ? text("tests.print.from", {{"time", wording::momentText(rested, now(), speech)}})
                               : text("tests.print.may-now"));
        row.id = toQString("tests.by." + method.key);
        rows.push_back(row);
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
    page.actions = {pressOf("tests.back", text("tests.leave"))};
}

std::string TestsPlace::personName(std::int64_t number) const {
    const auto names = m_needs.book->personNames();
    for (const auto& one : names ? *names : std::vector<ledger::PersonName>{}) {
        if (one.number == number) {
            return one.name;
        }
    }
    return {};
}

void TestsPlace::addTest(SheetPageState& page, const TestShown& shown) const {
    const auto& speech = m_needs.speech();
    const auto* method = methodNamed(shown.facts.methods, shown.test.done.method);
    page.title = toQString(method == nullptr ? shown.test.done.method
                                             : wording::testTitle(*method, shown.test.done.cycle, speech));
    page.blocks.append(textBlock(SheetKinds::Note, printTitle(shown.facts.print, speech)));
    page.blocks.append(textBlock(SheetKinds::Lead, wording::word(shown.test.counts, speech)));
    if (shown.test.versions > 1) {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("tests.test.corrected")));
    }
    if (const auto split = splitSentence(shown.test.done, speech); !split.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, split));
    }
    page.blocks.append(testFactsBlock(shown.test.done, speech));
    if (shown.history) {
        page.blocks.append(textBlock(SheetKinds::Heading, text("tests.test.versions")));
        for (const auto& version : shown.versions) {
            const auto name = personName(version.person);
            page.blocks.append(
                textBlock(SheetKinds::Note, text("tests.test.version", {{"number", std::to_string(version.versions)}}) +
                                                " · " + wording::momentText(version.at, now(), speech) +
                                                (name.empty() ? std::string{} : " · " + name) + " · " +
                                                wording::word(version.done.outcome, speech)));
            page.blocks.append(testFactsBlock(version.done, speech));
        }
    }
    page.actions = {pressOf("tests.put-right", text("tests.test.put-right"), true)};
    if (shown.test.versions > 1 && !shown.history) {
        page.actions.append(pressOf("tests.versions", text("tests.test.show-versions")));
    }
    page.actions.append(pressOf("tests.back", text("tests.back")));
}

void TestsPlace::addLoad(SheetPageState& page, const records::LoadRow& load) const {
    const auto& speech = m_needs.speech();
    page.title = toQString(text("tests.load.title", {{"number", std::to_string(load.washed.number)}}));
    page.blocks.append(textBlock(SheetKinds::Lead, load.judged ? wording::sentence(load.judged->word, speech)
                                                               : text("tests.load.waiting")));
    const auto* method = methodNamed(m_methods, load.washed.programme);
    std::vector<SheetRow> rows;
    const auto fact = [&](const char* key, const std::string& value) {
        if (!value.empty()) {
            rows.push_back(factRow(text(key), value));
        }
    };
    const auto graded = [&](const std::string& mark, const std::optional<double>& grade) {
        return grade
                   ? mark + (mark.empty() ? "" : " · ") + wording::numberText(*grade, load.judged->byInstrument ? 2 : 1)
                   : mark;
    };
    fact("tests.load.good", graded(load.washed.goodWitness, load.judged ? load.judged->goodGrade : std::nullopt));
    fact("tests.load.weak", graded(load.washed.weakWitness, load.judged ? load.judged->weakGrade : std::nullopt));
    fact("tests.load.fact.washed", wording::momentText(load.at, now(), speech));
    fact("tests.load.fact.machine", load.washed.machine);
    fact("tests.load.fact.programme", method == nullptr ? load.washed.programme : wording::methodName(*method, speech));
    fact("tests.load.fact.temperature",
         load.washed.temperature ? speech.figures.temperature(load.washed.temperature->temperature()) : std::string{});
    fact("tests.load.fact.detergent", load.washed.detergent);
    fact("tests.load.fact.drying", text(load.washed.tumbled ? "tests.tumbled.yes" : "tests.tumbled.no"));
    fact("tests.load.fact.besides", load.washed.besides);
    page.blocks.append(rowsBlock(SheetKinds::Facts, rows));
    page.blocks.append(textBlock(SheetKinds::Heading, text("tests.load.prints")));
    std::vector<SheetRow> prints;
    for (const auto& id : load.washed.prints) {
        const auto print = records::printById(m_needs.book->reader(), id);
        if (print && *print) {
            auto row = factRow(text("tests.print.row", {{"signs", shop::printSigns((*print)->named.number)},
                                                        {"run", std::to_string((*print)->runNumber)}}),
                               {}, (*print)->runTitle);
            row.id = toQString(std::string{kTestsPrint} + id);
            prints.push_back(row);
        }
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, prints));
    page.blocks.append(textBlock(SheetKinds::Note, text("tests.load.caution")));
    page.actions = {
        pressOf("tests.judge", text(load.judged ? "tests.load.judge-again" : "tests.load.judge"), !load.judged)};
}

void TestsPlace::addMethod(SheetPageState& page, const records::MethodDescribed& method) const {
    page.title = toQString(wording::methodName(method, m_needs.speech()));
    page.blocks = methodBlocks(method, m_needs.speech());
    page.actions = {pressOf("tests.method.change", text("tests.method.change")),
                    method.withdrawn ? pressOf("tests.method.use-again", text("tests.method.use-again"))
                                     : pressOf("tests.method.withdraw", text("tests.method.withdraw"))};
    if (!method.withdrawn) {
        page.actions.append(pressOf("tests.method.delete", text("tests.method.delete")));
    }
}

} // namespace holdfast::kiosk::screens
