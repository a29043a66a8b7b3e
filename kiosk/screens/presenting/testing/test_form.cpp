#include "kiosk/screens/presenting/testing/test_form.hpp"

#include "kiosk/records/words.hpp"
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/testing/series.hpp"
#include "kiosk/shop/testing/test_reader.hpp"
#include "kiosk/shop/testing/test_values.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <charconv>

namespace holdfast::kiosk::screens {
namespace {

using records::TestKind;

constexpr std::string_view kAnswer = "tests.set.answer.";
constexpr std::string_view kPull = "tests.set.pull.";
constexpr std::string_view kLoad = "tests.set.load.";
constexpr std::string_view kMeter = "tests.set.meter.";
constexpr std::string_view kTake = "tests.picture.take.";
constexpr std::string_view kLeave = "tests.picture.leave.";
constexpr std::string_view kSide = "tests.picture.side.";

/// "3.4.5" is answer 3, "4.5".
std::optional<std::pair<std::size_t, std::string>> indexed(const std::string& rest) {
    std::size_t index = 0;
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), index);
    if (error != std::errc{} || end == rest.data() + rest.size() || *end != '.') {
        return std::nullopt;
    }
    return std::make_pair(index, std::string{end + 1, rest.data() + rest.size()});
}

void setLab(shop::LabDraft& draft, const std::vector<analytics::Lab>& readings) {
    if (const auto mean = shop::meanOf(readings)) {
        draft = {shop::numberTyped(mean->l), shop::numberTyped(mean->a), shop::numberTyped(mean->b)};
    }
}

} // namespace

TestForm::TestForm(const PlaceNeeds& needs, PrintFacts facts, shop::TestDraft draft, const PictureInbox& inbox)
    : TestsForm{needs}, m_facts{std::move(facts)}, m_draft{std::move(draft)}, m_inbox{inbox} {
    for (const auto& test : m_facts.tests) {
        if (m_draft.corrects && test.id == *m_draft.corrects) {
            m_garment = test.done.garment;
        }
    }
    for (const auto& one : m_inbox.waiting()) {
        if (one.print == m_facts.print.named.number && !m_draft.corrects) {
            m_draft.pictures.push_back({one.sha256, records::PictureSide::whole});
        }
    }
}

std::string TestForm::title() const {
    return text(m_draft.corrects ? "tests.form.correct" : "tests.form.title",
                {{"test", wording::testTitle(m_draft.method, cycleTyped(), speech())},
                 {"signs", shop::printSigns(m_facts.print.named.number)}});
}

std::optional<int> TestForm::cycleTyped() const {
    const auto number = shop::numberFrom(m_draft.cycle);
    constexpr double kMost = 1000.0;
    return number && *number >= 0.0 && *number < kMost ? std::optional{static_cast<int>(*number)} : std::nullopt;
}

shop::ColourScale TestForm::scale() const noexcept {
    const bool cloth = m_draft.method.kind == TestKind::rub || m_draft.method.kind == TestKind::solventRub ||
                       (m_draft.method.kind == TestKind::bleedWatch && m_draft.method.dueHours.empty());
    return cloth ? shop::ColourScale::staining : shop::ColourScale::change;
}

std::vector<const records::LoadRow*> TestForm::loadsOfMethod() const {
    std::vector<const records::LoadRow*> all;
    for (const auto& one : m_facts.loads) {
        if (one.washed.programme == m_draft.method.key) {
            all.push_back(&one);
        }
    }
    return all;
}

QList<SheetBlock> TestForm::blocks() const {
    QList<SheetBlock> blocks;
    blocks.append(textBlock(SheetKinds::Sentence, wording::methodName(m_draft.method, speech())));
    addWholeFaults(blocks);
    addMethodBlocks(blocks, m_facts, m_draft.method,
                    m_draft.method.kind == TestKind::wash && !m_draft.corrects ? cycleTyped() : std::nullopt, speech(),
                    now());
    addSeries(blocks);
    addAnswers(blocks);
    addPulls(blocks);
    addLengths(blocks);
    addPictures(blocks);
    addColours(blocks);
    blocks.append(fieldsBlock(
        {field("note", text("tests.field.note"), m_draft.note, SheetKinds::Text, text("tests.field.note-hint"))}));
    addSteps(blocks);
    return blocks;
}

void TestForm::addSteps(QList<SheetBlock>& blocks) const {
    if (m_steps) {
        blocks.append(textBlock(SheetKinds::Heading, text("tests.form.steps")));
        for (const auto& step : wording::methodSteps(m_draft.method, speech())) {
            blocks.append(textBlock(SheetKinds::Sentence, step));
        }
    }
    for (const auto& caution : wording::methodCautions(m_draft.method, speech())) {
        blocks.append(textBlock(SheetKinds::Note, caution));
    }
    std::vector<ActionState> actions{
        pressOf("tests.steps", text(m_steps ? "tests.form.hide-steps" : "tests.form.show-steps"))};
    const bool graded = std::any_of(m_draft.answers.begin(), m_draft.answers.end(), [](const auto& one) {
        return analytics::valueKindOf(one.asked.quantity) == analytics::ValueKind::grade;
    });
    if (graded) {
        actions.push_back(pressOf("tests.typed", text(m_typedGrades ? "tests.form.keys" : "tests.form.type-grades")));
    }
    blocks.append(pressBlock(actions));
}

void TestForm::addSeries(QList<SheetBlock>& blocks) const {
    if (!shop::isSeries(m_draft.method)) {
        return;
    }
    const bool wash = m_draft.method.kind == TestKind::wash;
    blocks.append(fieldsBlock(
        {field("cycle", text(wash ? "tests.field.cycle" : "tests.field.hours"), m_draft.cycle, SheetKinds::Number)}));
    if (!wash || cycleTyped() == 0) {
        return;
    }
    std::vector<Choice> choices;
    for (const auto* load : loadsOfMethod()) {
        choices.push_back({std::string{kLoad} + load->washed.load,
                           text("tests.load.title", {{"number", std::to_string(load->washed.number)}})});
    }
    blocks.append(choices.empty() ? textBlock(SheetKinds::Sentence, text("tests.form.no-load"))
                                  : choicesBlock(text("tests.choose.load"), choices,
                                                 std::string{kLoad} + m_draft.load.value_or(std::string{})));
    addFaultOf(blocks, "load");
}

void TestForm::addAnswers(QList<SheetBlock>& blocks) const {
    bool fibres = false;
    for (std::size_t i = 0; i < m_draft.answers.size(); ++i) {
        const auto& answer = m_draft.answers[i];
        const auto name = "answer." + std::to_string(i);
        const auto prefix = std::string{kAnswer} + std::to_string(i) + ".";
        const auto label = wording::word(answer.asked.quantity, answer.asked.ownName, speech());
        fibres = fibres || (answer.asked.quantity == analytics::Quantity::fibresStanding && answer.typed == "yes");
        switch (analytics::valueKindOf(answer.asked.quantity)) {
        case analytics::ValueKind::grade:
            if (!m_typedGrades) {
                blocks.append(gradeKeys(text("tests.form.grade"), label, prefix, answer.typed));
                addFaultOf(blocks, name);
                break;
            }
            blocks.append(fieldsBlock({field(name, label, answer.typed, SheetKinds::Number)}));
            break;
        case analytics::ValueKind::crackClass:
            blocks.append(crackKeys(text("tests.form.grade"), label, prefix, answer.typed, speech()));
            addFaultOf(blocks, name);
            break;
        case analytics::ValueKind::yesNo:
            blocks.append(yesNoKeys(label, prefix, answer.typed, speech()));
            addFaultOf(blocks, name);
            break;
        case analytics::ValueKind::relativeLength:
        case analytics::ValueKind::number:
            blocks.append(fieldsBlock({field(name, label, answer.typed, SheetKinds::Number)}));
            break;
        }
    }
    if (fibres) {
        blocks.append(textBlock(SheetKinds::Note, text("tests.form.fibres")));
    }
}

void TestForm::addPulls(QList<SheetBlock>& blocks) const {
    if (m_draft.method.kind != TestKind::stretch) {
        return;
    }
    for (std::size_t i = 0; i < m_draft.pulls.size(); ++i) {
        const auto& pull = m_draft.pulls[i];
        const auto name = "pull." + std::to_string(i);
        blocks.append(
            fieldsBlock({field(name + ".percent", text("tests.field.pull"), pull.percent, SheetKinds::Number)}));
        blocks.append(crackKeys(text("tests.form.pull-seen", {{"percent", pull.percent}}), text("tests.form.pull-note"),
                                std::string{kPull} + std::to_string(i) + ".", pull.seen, speech()));
        addFaultOf(blocks, name);
    }
    blocks.append(pressBlock({pressOf("tests.more-pull", text("tests.form.more-pull"))}));
}

void TestForm::addLengths(QList<SheetBlock>& blocks) const {
    const bool stretch = m_draft.method.kind == TestKind::stretch;
    if (!shop::hasLengths(m_draft.method.kind)) {
        return;
    }
    blocks.append(textBlock(SheetKinds::Heading, text("tests.form.marks")));
    std::vector<SheetField> fields;
    const auto add = [&](const char* name, const shop::LengthsDraft& typed, const char* directionKey) {
        const auto direction = text(directionKey);
        const auto one = [&](const char* part, const char* key, const std::string& value) {
            fields.push_back(field(std::string{name} + "." + part, text(key, {{"direction", direction}}), value,
                                   SheetKinds::Number));
        };
        one("original", "tests.field.original", typed.original);
        if (stretch) {
            one("stretched", "tests.field.stretched", typed.stretched);
        }
        one("relaxed", stretch ? "tests.field.relaxed-pull" : "tests.field.relaxed-wash", typed.relaxed);
    };
    add("lengthwise", m_draft.lengthwise, "tests.form.lengthwise");
    if (!stretch) {
        add("widthwise", m_draft.widthwise, "tests.form.widthwise");
    }
    blocks.append(fieldsBlock(fields));
}

void TestForm::addColours(QList<SheetBlock>& blocks) const {
    blocks.append(textBlock(SheetKinds::Heading, text("tests.form.measured")));
    addColourFinding(blocks);
    const auto before = text("tests.print.before");
    const auto after = text("tests.print.after");
    const auto lab = [&](const char* name, const std::string& which, const char* axis, const std::string& value) {
        return field(name, text("tests.field.lab", {{"which", which}, {"axis", axis}}), value, SheetKinds::Number);
    };
    blocks.append(
        fieldsBlock({lab("before.l", before, "L*", m_draft.before.l), lab("before.a", before, "a*", m_draft.before.a),
                     lab("before.b", before, "b*", m_draft.before.b), lab("after.l", after, "L*", m_draft.after.l),
                     lab("after.a", after, "a*", m_draft.after.a), lab("after.b", after, "b*", m_draft.after.b)}));
    const std::string chosen = m_meter == Meter::before ? "before" : m_meter == Meter::after ? "after" : "garment";
    std::vector<Choice> choices;
    for (const auto* one : {"before", "after", "garment"}) {
        choices.push_back({std::string{kMeter} + one, text(std::string{"tests.form.meter."} + one)});
    }
    blocks.append(choicesBlock(text("tests.form.meter-for"), choices, std::string{kMeter} + chosen));
    auto line = field("meter", text("tests.form.meter-line"), m_line, SheetKinds::Text, text("tests.form.meter-hint"));
    if (m_lineFault) {
        line.fault = toQString(wording::sentence(*m_lineFault, speech()));
    }
    blocks.append(fieldsBlock({line}));
    if (!m_before.empty() || !m_after.empty()) {
        const auto limit = shop::repeatLimit(m_before, m_after);
        blocks.append(
            textBlock(SheetKinds::Note, text(limit.fromRepeats ? "tests.form.repeats" : "tests.form.repeats-memory",
                                             {{"before", std::to_string(m_before.size())},
                                              {"after", std::to_string(m_after.size())},
                                              {"limit", wording::numberText(limit.value, 2)}})));
    }
}

void TestForm::addColourFinding(QList<SheetBlock>& blocks) const {
    shop::TestReader quiet;
    const auto before = shop::labFrom(m_draft.before, "before", quiet);
    const auto after = shop::labFrom(m_draft.after, "after", quiet);
    if (!before || !after) {
        return;
    }
    const auto limit = shop::repeatLimit(m_before, m_after).value;
    const auto found = shop::colourFound(*before, *after, m_garment, scale(), limit);
    if (!found) {
        return;
    }
    SheetBlock block;
    block.kind = SheetKinds::Halves;
    block.halves.left = halfOfColour(text("tests.print.before"), before);
    block.halves.right = halfOfColour(text("tests.print.after"), after);
    block.halves.grade = toQString(shop::numberTyped(found->grade.number()));
    block.halves.gradeNote = toQString(wording::sentence(*found, scale(), speech()));
    blocks.append(block);
    blocks.append(textBlock(SheetKinds::Note, text("tests.colour.screen")));
}

void TestForm::addPictures(QList<SheetBlock>& blocks) const {
    std::vector<SheetRow> offered;
    for (const auto& one : m_draft.pictures) {
        SheetBlock shown;
        shown.kind = SheetKinds::Pictures;
        PictureEntry entry;
        entry.source = pictureUrl(one.sha256);
        entry.id = pictureId(one.sha256);
        entry.word = toQString(text("tests.print.picture-none"));
        shown.pictures.append(entry);
        blocks.append(shown);
        std::vector<Choice> sides;
        for (const auto& row : records::tableOf(records::PictureSide{})) {
            sides.push_back({std::string{kSide} + std::string{row.word} + "." + one.sha256,
                             text("tests.side." + std::string{row.word})});
        }
        sides.push_back({std::string{kLeave} + one.sha256, text("tests.form.picture-leave")});
        blocks.append(choicesBlock(text("tests.form.picture-side"), sides,
                                   std::string{kSide} + std::string{records::toWord(one.side)} + "." + one.sha256));
    }
    for (const auto& one : m_inbox.waiting()) {
        const bool in = std::any_of(m_draft.pictures.begin(), m_draft.pictures.end(),
                                    [&](const auto& taken) { return taken.sha256 == one.sha256; });
        if (!in) {
            auto row = factRow(one.file.filename().string(), text("tests.form.picture-take"));
            row.id = toQString(std::string{kTake} + one.sha256);
            offered.push_back(row);
        }
    }
    if (!offered.empty()) {
        blocks.append(textBlock(SheetKinds::Heading, text("tests.form.pictures")));
        blocks.append(rowsBlock(SheetKinds::Rows, offered));
    }
}

bool TestForm::setAnswer(const std::string& rest) {
    const auto found = indexed(rest);
    if (!found || found->first >= m_draft.answers.size()) {
        return false;
    }
    m_draft.answers[found->first].typed = found->second;
    return true;
}

bool TestForm::setOther(const std::string& id) {
    if (const auto pull = behind(id, kPull)) {
        const auto found = indexed(*pull);
        if (!found || found->first >= m_draft.pulls.size()) {
            return false;
        }
        m_draft.pulls[found->first].seen = found->second;
    } else if (const auto load = behind(id, kLoad)) {
        m_draft.load = *load;
    } else if (const auto meter = behind(id, kMeter)) {
        m_meter = *meter == "after" ? Meter::after : *meter == "garment" ? Meter::garment : Meter::before;
    } else if (const auto take = behind(id, kTake)) {
        m_draft.pictures.push_back({*take, records::PictureSide::whole});
    } else if (const auto leave = behind(id, kLeave)) {
        std::erase_if(m_draft.pictures, [&](const auto& one) { return one.sha256 == *leave; });
    } else if (const auto side = behind(id, kSide)) {
        const auto dot = side->find('.');
        const auto word = records::fromWord<records::PictureSide>(side->substr(0, dot));
        for (auto& one : m_draft.pictures) {
            if (word && dot != std::string::npos && one.sha256 == side->substr(dot + 1)) {
                one.side = *word;
            }
        }
    } else {
        return false;
    }
    return true;
}

bool TestForm::act(const std::string& id) {
    if (id == "tests.steps") {
        m_steps = !m_steps;
        return true;
    }
    if (id == "tests.typed") {
        m_typedGrades = !m_typedGrades;
        return true;
    }
    if (id == "tests.more-pull" && m_draft.method.kind == TestKind::stretch) {
        m_draft.pulls.emplace_back();
        return true;
    }
    const auto answer = behind(id, kAnswer);
    return answer ? setAnswer(*answer) : setOther(id);
}

std::string* TestForm::fieldNamed(const std::string& name) {
    struct Row {
        const char* name;
        std::string* typed;
    };
    const std::array<Row, 14> rows{{{"cycle", &m_draft.cycle},
                                    {"note", &m_draft.note},
                                    {"lengthwise.original", &m_draft.lengthwise.original},
                                    {"lengthwise.stretched", &m_draft.lengthwise.stretched},
                                    {"lengthwise.relaxed", &m_draft.lengthwise.relaxed},
                                    {"widthwise.original", &m_draft.widthwise.original},
                                    {"widthwise.stretched", &m_draft.widthwise.stretched},
                                    {"widthwise.relaxed", &m_draft.widthwise.relaxed},
                                    {"before.l", &m_draft.before.l},
                                    {"before.a", &m_draft.before.a},
                                    {"before.b", &m_draft.before.b},
                                    {"after.l", &m_draft.after.l},
                                    {"after.a", &m_draft.after.a},
                                    {"after.b", &m_draft.after.b}}};
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& one) { return one.name == name; });
    if (row != rows.end()) {
        return row->typed;
    }
    if (const auto answer = indexBehind(name, "answer."); answer && *answer < m_draft.answers.size()) {
        return &m_draft.answers[*answer].typed;
    }
    const auto pull = behind(name, "pull.");
    const auto found = pull ? indexed(*pull) : std::nullopt;
    return found && found->first < m_draft.pulls.size() && found->second == "percent"
               ? &m_draft.pulls[found->first].percent
               : nullptr;
}

void TestForm::takeLine(const std::string& line) {
    m_line = line;
    m_lineFault.reset();
    const auto colour = analytics::labFromText(line);
    if (!colour) {
        m_lineFault = colour.error();
        return;
    }
    m_line.clear();
    if (m_meter == Meter::garment) {
        m_garment = *colour;
        return;
    }
    auto& readings = m_meter == Meter::before ? m_before : m_after;
    readings.push_back(*colour);
    setLab(m_meter == Meter::before ? m_draft.before : m_draft.after, readings);
}

bool TestForm::enter(const std::string& typedField, const std::string& typed) {
    const auto name = behind(typedField, kTestsField);
    if (!name) {
        return false;
    }
    if (*name == "meter") {
        takeLine(typed);
        return true;
    }
    auto* into = fieldNamed(*name);
    if (into == nullptr) {
        return false;
    }
    *into = typed;
    if (name->compare(0, 6, "before") == 0) { // typed by hand it is one reading
        m_before.clear();
    } else if (name->compare(0, 5, "after") == 0) {
        m_after.clear();
    }
    return true;
}

wording::Notice TestForm::saidAfter(const shop::TestToKeep& kept) const {
    const auto bin = kept.hold ? std::to_string(kept.hold->bin) : std::string{};
    const char* key = kept.holdLifts     ? "tests.kept.lifted"
                      : kept.heldAlready ? "tests.kept.held"
                      : kept.recall      ? "tests.kept.recall"
                                         : nullptr;
    const auto happened =
        text(key != nullptr ? std::string{key} : "tests.kept." + std::string{records::toWord(kept.done.outcome)},
             {{"bin", bin}});
    return {
        happened, {}, kept.hold ? text(kept.recall ? "tests.kept.to-do-recall" : "tests.kept.to-do") : std::string{}};
}

std::optional<FormKeeping> TestForm::keeping() {
    const auto fresh = took(printFacts(needs().book->reader(), m_facts.print.named.print));
    if (!fresh || !*fresh) {
        return std::nullopt;
    }
    m_facts = **fresh; // something may have been kept since the form was opened
    const auto context = took(contextOf(m_facts, needs()));
    if (!context) {
        return std::nullopt;
    }
    auto kept = shop::testFrom(m_draft, *context);
    if (kept && kept->done.before && kept->done.after) {
        const auto limit = shop::repeatLimit(m_before, m_after);
        kept->done.garment = m_garment;
        kept->done.colourLimit = limit.fromRepeats ? std::optional{limit.value} : std::nullopt;
    }
    if (!kept) {
        m_faults = std::move(kept.error());
        return std::nullopt;
    }
    m_faults.clear();
    FormKeeping made;
    made.said = saidAfter(*kept);
    made.thenChoose = std::string{kTestsPrint} + m_facts.print.named.print;
    for (const auto& picture : kept->done.pictures) {
        if (const auto* waiting = m_inbox.find(picture.sha256)) {
            made.keeping.blobs.push_back({"picture", waiting->jpeg});
            made.pictures.push_back(picture.sha256);
        }
    }
    made.keeping.list.emplace_back(kept->done);
    made.keeping.ids.push_back(context->testId);
    if (kept->hold) {
        made.keeping.list.emplace_back(*kept->hold);
        made.keeping.ids.emplace_back();
    }
    return made;
}

} // namespace holdfast::kiosk::screens
