#include "kiosk/screens/presenting/testing/method_form.hpp"

#include "kiosk/records/words.hpp"
#include "kiosk/shop/testing/asked.hpp"
#include "kiosk/shop/testing/method_draft.hpp"
#include "kiosk/shop/testing/starters.hpp"
#include "kiosk/wording/stock_sentences.hpp"

#include <algorithm>
#include <array>

namespace holdfast::kiosk::screens {
namespace {

using records::MethodDescribed;
using records::TestKind;

constexpr std::string_view kKind = "tests.set.kind.";
constexpr std::string_view kMark = "tests.set.mark.";
constexpr std::string_view kChemistry = "tests.set.chemistry.";
constexpr std::string_view kEachLot = "tests.set.each-lot.";
constexpr std::string_view kTumble = "tests.set.tumbled.";
constexpr std::string_view kQuantity = "tests.set.quantity."; ///< then the row and the word
constexpr std::string_view kBound = "tests.set.bound.";
constexpr std::string_view kDrop = "tests.method.drop.";

/// Row and word behind a prefix: "0.change-grade".
struct RowWord final {
    std::size_t row = 0;
    std::string word;
};

std::optional<RowWord> rowWord(const std::string& id, std::string_view prefix) {
    const auto rest = behind(id, prefix);
    const auto dot = rest ? rest->find('.') : std::string::npos;
    if (dot == std::string::npos) {
        return std::nullopt;
    }
    const auto row = indexBehind(rest->substr(0, dot), "");
    return row ? std::optional{RowWord{*row, rest->substr(dot + 1)}} : std::nullopt;
}

class MethodForm final : public TestsForm {
public:
    MethodForm(const PlaceNeeds& needs, std::optional<MethodDescribed> before, std::vector<std::string> names)
        : TestsForm{needs}, m_names{std::move(names)} {
        if (before) {
            m_draft = shop::draftOf(*before, speech().figures.unit);
        } else {
            m_draft.unit = speech().figures.unit;
        }
        if (m_draft.steps.empty() && !isStarter()) {
            m_draft.steps.emplace_back();
        }
    }

    [[nodiscard]] std::string title() const override {
        return m_draft.before
                   ? text("tests.method.form-change", {{"name", wording::methodName(*m_draft.before, speech())}})
                   : text("tests.method.form-new");
    }

    [[nodiscard]] QList<SheetBlock> blocks() const override {
        QList<SheetBlock> blocks;
        addWholeFaults(blocks);
        addWho(blocks);
        addWhen(blocks);
        if (!isStarter()) {
            addLines(blocks, "steps", "tests.field.step", m_draft.steps);
            addLines(blocks, "cautions", "tests.field.caution", m_draft.cautions);
            blocks.append(pressBlock({pressOf("tests.method.more-steps", text("tests.method.more-steps")),
                                      pressOf("tests.method.more-cautions", text("tests.method.more-cautions"))}));
        }
        for (std::size_t i = 0; i < m_draft.rule.size(); ++i) {
            addCriterion(blocks, i);
        }
        blocks.append(pressBlock({pressOf("tests.method.add-rule", text("tests.method.add-rule"))}));
        return blocks;
    }

    bool act(const std::string& id) override {
        if (id == "tests.method.more-steps") {
            m_draft.steps.emplace_back();
        } else if (id == "tests.method.more-cautions") {
            m_draft.cautions.emplace_back();
        } else if (id == "tests.method.add-rule") {
            m_draft.rule.emplace_back();
        } else {
            return setWord(id) || setRule(id);
        }
        return true;
    }

    bool enter(const std::string& typedField, const std::string& typed) override {
        const auto name = behind(typedField, kTestsField);
        auto* into = name ? fieldNamed(*name) : nullptr;
        if (into == nullptr) {
            return false;
        }
        *into = typed;
        return true;
    }

    std::optional<FormKeeping> keeping() override {
        auto made = shop::methodFrom(m_draft, m_names, needs().newId());
        if (!made) {
            m_faults = made.error();
            return std::nullopt;
        }
        FormKeeping kept;
        kept.right = shop::Right::describeMethods;
        kept.thenChoose = std::string{kTestsMethod} + made->key;
        kept.said = {text("tests.kept.method"), {}, {}};
        kept.keeping.list.emplace_back(std::move(*made));
        return kept;
    }

private:
    [[nodiscard]] bool isStarter() const { return m_draft.before && shop::isStarter(m_draft.before->key); }

    template <class E, class Say>
    [[nodiscard]] SheetBlock wordsOf(std::string_view prefix, const char* label, E chosen, const Say& say) const {
        std::vector<Choice> choices;
        for (const auto& row : records::tableOf(E{})) {
            choices.push_back({std::string{prefix} + std::string{row.word}, say(row.value)});
        }
        return choicesBlock(text(label), choices, std::string{prefix} + std::string{records::toWord(chosen)});
    }

    void addWho(QList<SheetBlock>& blocks) const {
        if (!isStarter()) {
            blocks.append(fieldsBlock({field("name", text("tests.field.name"), m_draft.name)}));
        }
        if (!m_draft.before) {
            blocks.append(wordsOf(kKind, "tests.choose.kind", m_draft.kind,
                                  [&](TestKind kind) { return wording::word(kind, speech()); }));
        }
        blocks.append(fieldsBlock({field("source", text("tests.field.source"), m_draft.source)}));
        blocks.append(wordsOf(kMark, "tests.choose.mark", m_draft.mark,
                              [&](analytics::Mark mark) { return wording::word(mark, speech()); }));
        std::vector<Choice> inks{{std::string{kChemistry} + "all", text("tests.method.all-inks")}};
        for (const auto& row : records::tableOf(analytics::Chemistry{})) {
            inks.push_back({std::string{kChemistry} + std::string{row.word}, wording::word(row.value, speech())});
        }
        const auto chosen = m_draft.chemistries.size() == 1 ? std::string{records::toWord(m_draft.chemistries.front())}
                                                            : std::string{"all"};
        blocks.append(choicesBlock(text("tests.choose.chemistry"), inks, std::string{kChemistry} + chosen));
        const auto prefix = std::string{kEachLot};
        blocks.append(
            choicesBlock(text("tests.choose.each-lot"),
                         {{prefix + "no", text("tests.each-lot.no")}, {prefix + "yes", text("tests.each-lot.yes")}},
                         prefix + (m_draft.eachLot ? "yes" : "no")));
    }

    void addWhen(QList<SheetBlock>& blocks) const {
        std::vector<SheetField> fields{
            field("rest", text("tests.field.rest"), m_draft.rest, SheetKinds::Number),
            field("due", text("tests.field.due"), m_draft.due, SheetKinds::Text, text("tests.field.due-hint"))};
        if (m_draft.kind == TestKind::stretch) {
            fields.push_back(field("pulls", text("tests.field.pulls"), m_draft.pulls, SheetKinds::Text,
                                   text("tests.field.pulls-hint")));
        }
        if (m_draft.kind == TestKind::wash) {
            const auto unit = wording::Figures{m_draft.unit, 0}.unitSign();
            fields.push_back(field("cycles", text("tests.field.cycles"), m_draft.cycles, SheetKinds::Number));
            fields.push_back(field("minutes", text("tests.field.minutes"), m_draft.minutes, SheetKinds::Number));
            fields.push_back(field("temperature", text("tests.field.temperature", {{"unit", unit}}),
                                   m_draft.temperature, SheetKinds::Number));
        }
        blocks.append(fieldsBlock(fields));
        if (m_draft.kind == TestKind::wash) {
            const auto prefix = std::string{kTumble};
            blocks.append(
                choicesBlock(text("tests.choose.tumbled"),
                             {{prefix + "yes", text("tests.tumbled.yes")}, {prefix + "no", text("tests.tumbled.no")}},
                             prefix + (m_draft.tumble ? "yes" : "no")));
        }
    }

    void addLines(QList<SheetBlock>& blocks, const char* name, const char* label,
                  const std::vector<std::string>& lines) const {
        std::vector<SheetField> fields;
        for (std::size_t i = 0; i < lines.size(); ++i) {
            fields.push_back(field(std::string{name} + "." + std::to_string(i),
                                   text(label, {{"number", std::to_string(i + 1)}}), lines[i]));
        }
        blocks.append(fieldsBlock(fields));
    }

    void addCriterion(QList<SheetBlock>& blocks, std::size_t i) const {
        const auto& row = m_draft.rule[i];
        const auto number = std::to_string(i);
        const auto name = "rule." + number;
        blocks.append(
            textBlock(SheetKinds::Heading, text("tests.method.rule-heading", {{"number", std::to_string(i + 1)}})));
        blocks.append(wordsOf(std::string{kQuantity} + number + ".", "tests.choose.quantity", row.quantity,
                              [&](analytics::Quantity one) { return wording::word(one, {}, speech()); }));
        blocks.append(wordsOf(std::string{kBound} + number + ".", "tests.choose.bound", row.bound,
                              [&](analytics::Bound one) { return wording::word(one, speech()); }));
        std::vector<SheetField> fields;
        if (analytics::isOwn(row.quantity)) {
            fields.push_back(field(name + ".name", text("tests.field.rule-name"), row.ownName));
        }
        const auto kind = analytics::valueKindOf(row.quantity);
        if (kind == analytics::ValueKind::yesNo) {
            blocks.append(
                yesNoKeys(text("tests.field.rule-limit"), "tests.set.limit." + number + ".", row.limit, speech()));
            addFaultOf(blocks, name + ".limit");
        } else if (kind == analytics::ValueKind::crackClass) {
            blocks.append(
                crackKeys(text("tests.field.rule-limit"), {}, "tests.set.limit." + number + ".", row.limit, speech()));
            addFaultOf(blocks, name + ".limit");
        } else {
            fields.push_back(field(name + ".limit", text("tests.field.rule-limit"), row.limit, SheetKinds::Number));
        }
        fields.push_back(field(name + ".cycle", text("tests.field.rule-cycle"), row.cycle, SheetKinds::Number));
        if (m_draft.kind == TestKind::stretch) {
            fields.push_back(
                field(name + ".elongation", text("tests.field.rule-elongation"), row.elongation, SheetKinds::Number));
        }
        blocks.append(fieldsBlock(fields));
        blocks.append(pressBlock({pressOf(std::string{kDrop} + number, text("tests.method.drop-rule"))}));
    }

    bool setWord(const std::string& id) {
        if (const auto kind = behind(id, kKind)) {
            m_draft.kind = records::fromWord<TestKind>(*kind).value_or(m_draft.kind);
        } else if (const auto mark = behind(id, kMark)) {
            m_draft.mark = records::fromWord<analytics::Mark>(*mark).value_or(m_draft.mark);
        } else if (const auto ink = behind(id, kChemistry)) {
            const auto one = records::fromWord<analytics::Chemistry>(*ink);
            m_draft.chemistries = one ? std::vector{*one} : std::vector<analytics::Chemistry>{};
        } else if (const auto each = behind(id, kEachLot)) {
            m_draft.eachLot = *each == "yes";
        } else if (const auto tumble = behind(id, kTumble)) {
            m_draft.tumble = *tumble == "yes";
        } else {
            return false;
        }
        return true;
    }

    bool setRule(const std::string& id) {
        if (const auto drop = indexBehind(id, kDrop); drop && *drop < m_draft.rule.size()) {
            m_draft.rule.erase(m_draft.rule.begin() + static_cast<std::ptrdiff_t>(*drop));
            m_faults.clear(); // they are told by their row
            return true;
        }
        if (const auto set = rowWord(id, kQuantity); set && set->row < m_draft.rule.size()) {
            auto& row = m_draft.rule[set->row];
            const auto quantity = records::fromWord<analytics::Quantity>(set->word).value_or(row.quantity);
            const bool sameKind = analytics::valueKindOf(quantity) == analytics::valueKindOf(row.quantity);
            row.limit = sameKind ? row.limit : std::string{};
            row.quantity = quantity;
            return true;
        }
        if (const auto set = rowWord(id, kBound); set && set->row < m_draft.rule.size()) {
            auto& row = m_draft.rule[set->row];
            row.bound = records::fromWord<analytics::Bound>(set->word).value_or(row.bound);
            return true;
        }
        if (const auto set = rowWord(id, "tests.set.limit."); set && set->row < m_draft.rule.size()) {
            m_draft.rule[set->row].limit = set->word;
            return true;
        }
        return false;
    }

    std::string* fieldNamed(const std::string& name) {
        struct Row {
            const char* name;
            std::string* typed;
        };
        const std::array<Row, 8> rows{{{"name", &m_draft.name},
                                       {"source", &m_draft.source},
                                       {"rest", &m_draft.rest},
                                       {"due", &m_draft.due},
                                       {"pulls", &m_draft.pulls},
                                       {"cycles", &m_draft.cycles},
                                       {"minutes", &m_draft.minutes},
                                       {"temperature", &m_draft.temperature}}};
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& one) { return one.name == name; });
        if (row != rows.end()) {
            return row->typed;
        }
        if (const auto step = indexBehind(name, "steps."); step && *step < m_draft.steps.size()) {
            return &m_draft.steps[*step];
        }
        if (const auto caution = indexBehind(name, "cautions."); caution && *caution < m_draft.cautions.size()) {
            return &m_draft.cautions[*caution];
        }
        return ruleField(name);
    }

    std::string* ruleField(const std::string& name) {
        const auto found = rowWord(name, "rule.");
        if (!found || found->row >= m_draft.rule.size()) {
            return nullptr;
        }
        auto& row = m_draft.rule[found->row];
        return found->word == "name"         ? &row.ownName
               : found->word == "limit"      ? &row.limit
               : found->word == "cycle"      ? &row.cycle
               : found->word == "elongation" ? &row.elongation
                                             : nullptr;
    }

    shop::MethodDraft m_draft;
    std::vector<std::string> m_names;
};

std::string listed(const std::vector<double>& values) {
    std::string all;
    for (const double value : values) {
        all += (all.empty() ? "" : ", ") + wording::numberText(value, 0);
    }
    return all;
}

std::string programmeText(const records::WashProgramme& programme, const wording::Speech& speech) {
    auto all = programme.temperature ? speech.figures.temperature(programme.temperature->temperature()) + " · "
                                     : std::string{};
    if (programme.minutes) {
        all += speech.text("inks.minutes", {{"minutes", std::to_string(*programme.minutes)}}) + " · ";
    }
    return all + speech.text(programme.tumble ? "tests.tumbled.yes" : "tests.tumbled.no") + " · " +
           speech.text("tests.method.cycles", {{"count", std::to_string(programme.cycles)}});
}

void addWhole(std::vector<SheetRow>& rows, const MethodDescribed& method, const wording::Speech& speech) {
    rows.push_back(
        factRow(speech.text("tests.method.rest"),
                speech.text("tests.method.rest-value", {{"hours", wording::numberText(method.restHours, 0)}})));
    if (!method.dueHours.empty()) {
        rows.push_back(factRow(speech.text("tests.method.hours"),
                               speech.text("inks.hours", {{"hours", listed(method.dueHours)}})));
    }
    if (method.programme) {
        rows.push_back(factRow(speech.text("tests.method.programme"), programmeText(*method.programme, speech)));
    }
    if (!method.pullPercent.empty()) {
        rows.push_back(factRow(speech.text("tests.method.pulls"),
                               speech.text("tests.percent", {{"percent", listed(method.pullPercent)}})));
    }
    std::string inks;
    for (const auto one : method.chemistries) {
        inks += (inks.empty() ? "" : ", ") + wording::word(one, speech);
    }
    rows.push_back(
        factRow(speech.text("tests.method.inks"), inks.empty() ? speech.text("tests.method.all-inks") : inks));
    rows.push_back(factRow(speech.text("tests.method.each-lot"),
                           speech.text(method.eachLot ? "tests.method.each-lot-yes" : "tests.method.each-lot-no")));
    rows.push_back(factRow(speech.text("tests.method.mark"), wording::word(method.mark, speech), method.source));
}

} // namespace

std::unique_ptr<TestsForm> methodForm(const PlaceNeeds& needs, std::optional<MethodDescribed> before,
                                      std::vector<std::string> names) {
    return std::make_unique<MethodForm>(needs, std::move(before), std::move(names));
}

QList<SheetBlock> methodBlocks(const MethodDescribed& method, const wording::Speech& speech) {
    QList<SheetBlock> blocks;
    if (method.withdrawn) {
        blocks.append(textBlock(SheetKinds::Lead, speech.text("tests.methods.withdrawn")));
    }
    blocks.append(textBlock(SheetKinds::Heading, speech.text("tests.method.steps")));
    std::vector<SheetRow> steps;
    int number = 0;
    for (const auto& step : wording::methodSteps(method, speech)) {
        steps.push_back(factRow(std::to_string(++number) + "  " + step, {}));
    }
    blocks.append(rowsBlock(SheetKinds::Facts, steps));
    const auto cautions = wording::methodCautions(method, speech);
    if (!cautions.empty()) {
        blocks.append(textBlock(SheetKinds::Heading, speech.text("tests.method.cautions")));
    }
    for (const auto& caution : cautions) {
        blocks.append(textBlock(SheetKinds::Sentence, caution));
    }
    blocks.append(textBlock(SheetKinds::Heading, speech.text("tests.method.rule")));
    for (const auto& one : method.rule ? method.rule->criteria : std::vector<analytics::Criterion>{}) {
        blocks.append(textBlock(SheetKinds::Sentence, wording::criterionText(one, method.kind, speech)));
    }
    if (!method.rule) {
        blocks.append(textBlock(SheetKinds::Sentence, speech.text("tests.method.rule-none")));
    }
    blocks.append(textBlock(SheetKinds::Heading, speech.text("tests.method.source")));
    std::vector<SheetRow> rows;
    addWhole(rows, method, speech);
    blocks.append(rowsBlock(SheetKinds::Facts, rows));
    return blocks;
}

} // namespace holdfast::kiosk::screens
