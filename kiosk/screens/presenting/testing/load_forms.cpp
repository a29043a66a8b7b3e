#include "kiosk/screens/presenting/testing/load_forms.hpp"

#include "kiosk/shop/testing/load_draft.hpp"
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <array>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kProgramme = "tests.set.programme.";
constexpr std::string_view kTumbled = "tests.set.tumbled.";
constexpr std::string_view kOut = "tests.load.out.";
constexpr std::string_view kGood = "tests.set.good.";
constexpr std::string_view kWeak = "tests.set.weak.";
constexpr std::string_view kBy = "tests.set.by.";

class FillForm final : public TestsForm {
public:
    FillForm(const PlaceNeeds& needs, const std::string& programme, std::optional<records::PrintRow> first)
        : TestsForm{needs} {
        m_draft.unit = speech().figures.unit;
        const auto all = took(records::methods(needs.book->reader())).value_or(std::vector<records::MethodDescribed>{});
        std::copy_if(all.begin(), all.end(), std::back_inserter(m_programmes),
                     [](const auto& one) { return one.kind == records::TestKind::wash; });
        choose(programme);
        if (const auto last = took(records::loads(needs.book->reader(), 1)); last && !last->empty()) {
            m_draft.machine = last->front().washed.machine; // most shops have one
        }
        if (first) {
            m_draft.prints.push_back(std::move(*first));
        }
    }

    [[nodiscard]] std::string title() const override { return text("tests.load.fill"); }

    [[nodiscard]] QList<SheetBlock> blocks() const override {
        QList<SheetBlock> blocks;
        addWholeFaults(blocks);
        std::vector<Choice> choices;
        for (const auto& one : m_programmes) {
            choices.push_back({std::string{kProgramme} + one.key, wording::methodName(one, speech())});
        }
        blocks.append(
            choicesBlock(text("tests.choose.programme"), choices,
                         std::string{kProgramme} + (m_draft.programme ? m_draft.programme->key : std::string{})));
        addFaultOf(blocks, "programme");
        addPrints(blocks);
        const auto unit = wording::Figures{m_draft.unit, 0}.unitSign();
        blocks.append(fieldsBlock({field("good-witness", text("tests.field.good-witness"), m_draft.goodWitness,
                                         SheetKinds::Text, text("tests.field.witness-hint")),
                                   field("weak-witness", text("tests.field.weak-witness"), m_draft.weakWitness,
                                         SheetKinds::Text, text("tests.field.witness-hint")),
                                   field("machine", text("tests.field.machine"), m_draft.machine, SheetKinds::Text,
                                         text("tests.field.machine-hint")),
                                   field("temperature", text("tests.field.temperature", {{"unit", unit}}),
                                         m_draft.temperature, SheetKinds::Number),
                                   field("detergent", text("tests.field.detergent"), m_draft.detergent),
                                   field("besides", text("tests.field.besides"), m_draft.besides)}));
        const auto prefix = std::string{kTumbled};
        blocks.append(
            choicesBlock(text("tests.choose.tumbled"),
                         {{prefix + "yes", text("tests.tumbled.yes")}, {prefix + "no", text("tests.tumbled.no")}},
                         prefix + (m_draft.tumbled ? "yes" : "no")));
        blocks.append(textBlock(SheetKinds::Note, text("tests.load.witnesses")));
        blocks.append(textBlock(SheetKinds::Note, text("tests.load.caution")));
        return blocks;
    }

    bool act(const std::string& id) override {
        if (const auto key = behind(id, kProgramme)) {
            choose(*key);
        } else if (const auto word = behind(id, kTumbled)) {
            m_draft.tumbled = *word == "yes";
        } else if (const auto print = behind(id, kOut)) {
            std::erase_if(m_draft.prints, [&](const auto& one) { return one.named.print == *print; });
        } else {
            return false;
        }
        return true;
    }

    bool enter(const std::string& typedField, const std::string& typed) override {
        const auto name = behind(typedField, kTestsField);
        if (!name) {
            return false;
        }
        if (*name == "print") {
            takePrint(typed);
            return true;
        }
        struct Row {
            const char* name;
            std::string* typed;
        };
        const std::array<Row, 6> rows{{{"machine", &m_draft.machine},
                                       {"temperature", &m_draft.temperature},
                                       {"detergent", &m_draft.detergent},
                                       {"besides", &m_draft.besides},
                                       {"good-witness", &m_draft.goodWitness},
                                       {"weak-witness", &m_draft.weakWitness}}};
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& one) { return one.name == *name; });
        if (row == rows.end()) {
            return false;
        }
        *row->typed = typed;
        return true;
    }

    bool addPrint(const records::PrintRow& print) override {
        const bool in = std::any_of(m_draft.prints.begin(), m_draft.prints.end(),
                                    [&](const auto& one) { return one.named.print == print.named.print; });
        if (!in) {
            m_draft.prints.push_back(print);
        }
        return true;
    }

    std::optional<FormKeeping> keeping() override {
        const auto number = took(records::nextLoad(needs().book->reader()));
        if (!number) {
            return std::nullopt;
        }
        auto washed = shop::loadFrom(m_draft, needs().newId(), *number, now().millisecondsSinceEpoch);
        if (!washed) {
            m_faults = washed.error();
            return std::nullopt;
        }
        FormKeeping kept;
        kept.thenChoose = std::string{kTestsLoad} + washed->load;
        kept.said = {text("tests.kept.load", {{"number", std::to_string(washed->number)}}), {}, {}};
        kept.keeping.list.emplace_back(std::move(*washed));
        return kept;
    }

private:
    void choose(const std::string& key) {
        const auto found =
            std::find_if(m_programmes.begin(), m_programmes.end(), [&](const auto& one) { return one.key == key; });
        if (found == m_programmes.end()) {
            return;
        }
        m_draft.programme = *found;
        if (found->programme) {
            m_draft.temperature = shop::authoredTyped(found->programme->temperature, m_draft.unit);
            m_draft.tumbled = found->programme->tumble;
        }
    }

    void takePrint(const std::string& typed) {
        std::erase_if(m_faults, [](const auto& one) { return one.field == "print"; });
        m_typedPrint.clear();
        const auto number = shop::printTyped(typed);
        const auto print = number ? took(records::printByNumber(needs().book->reader(), *number))
                                  : std::optional{std::optional<records::PrintRow>{}};
        if (print && *print) {
            addPrint(**print);
        } else if (print) {
            m_typedPrint = typed;
            m_faults.push_back({shop::TestFaultCause::printUnknown, "print", shop::firstSigns(typed)});
        }
    }

    void addPrints(QList<SheetBlock>& blocks) const {
        blocks.append(textBlock(SheetKinds::Heading, text("tests.load.prints")));
        std::vector<SheetRow> rows;
        for (const auto& print : m_draft.prints) {
            auto row = factRow(text("tests.print.row", {{"signs", shop::printSigns(print.named.number)},
                                                        {"run", std::to_string(print.runNumber)}}),
                               text("tests.load.out"), print.runTitle);
            row.id = toQString(std::string{kOut} + print.named.print);
            rows.push_back(row);
        }
        blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("tests.load.prints-none"))
                                   : rowsBlock(SheetKinds::Rows, rows));
        addFaultOf(blocks, "prints");
        blocks.append(fieldsBlock(
            {field("print", text("tests.load.add"), m_typedPrint, SheetKinds::Code, text("tests.find-hint"))}));
    }

    shop::LoadDraft m_draft;
    std::vector<records::MethodDescribed> m_programmes;
    std::string m_typedPrint; ///< that no print has
};

const char* originKey(analytics::LimitOrigin origin) {
    switch (origin) {
    case analytics::LimitOrigin::shop:
        return "tests.load.origin.shop";
    case analytics::LimitOrigin::noSpread:
        return "tests.load.origin.no-spread";
    case analytics::LimitOrigin::ranked:
        return "tests.load.origin.ranked";
    case analytics::LimitOrigin::charted:
        break;
    }
    return "tests.load.origin.charted";
}

class WitnessForm final : public TestsForm {
public:
    WitnessForm(const PlaceNeeds& needs, records::LoadRow load) : TestsForm{needs}, m_load{std::move(load)} {
        if (const auto& before = m_load.judged) {
            m_draft.byInstrument = before->byInstrument;
            m_draft.good = before->goodGrade ? shop::numberTyped(*before->goodGrade) : std::string{};
            m_draft.weak = before->weakGrade ? shop::numberTyped(*before->weakGrade) : std::string{};
        }
        const auto earlier =
            took(records::judgedLoads(needs.book->reader(), m_load.washed.machine, m_load.washed.programme));
        m_limits = shop::limitsFor(earlier.value_or(std::vector<records::LoadRow>{}), m_load.washed.load);
    }

    [[nodiscard]] std::string title() const override {
        return text("tests.load.judge-title", {{"number", std::to_string(m_load.washed.number)}});
    }

    [[nodiscard]] QList<SheetBlock> blocks() const override {
        QList<SheetBlock> blocks;
        addWholeFaults(blocks);
        blocks.append(rowsBlock(
            SheetKinds::Facts,
            {limitRow("tests.load.good", "tests.load.at-least", m_load.washed.goodWitness, m_limits.goodAtLeast),
             limitRow("tests.load.weak", "tests.load.at-most", m_load.washed.weakWitness, m_limits.weakAtMost)}));
        const auto prefix = std::string{kBy};
        blocks.append(
            choicesBlock(text("tests.choose.by"),
                         {{prefix + "eye", text("tests.by.eye")}, {prefix + "instrument", text("tests.by.instrument")}},
                         prefix + (m_draft.byInstrument ? "instrument" : "eye")));
        if (!m_draft.byInstrument) {
            blocks.append(
                gradeKeys(text("tests.load.good"), m_load.washed.goodWitness, std::string{kGood}, m_draft.good));
            blocks.append(
                gradeKeys(text("tests.load.weak"), m_load.washed.weakWitness, std::string{kWeak}, m_draft.weak));
        }
        const auto hint = m_draft.byInstrument ? text("tests.load.rating-hint") : std::string{};
        blocks.append(
            fieldsBlock({field("good-grade", text("tests.field.good-grade"), m_draft.good, SheetKinds::Number, hint),
                         field("weak-grade", text("tests.field.weak-grade"), m_draft.weak, SheetKinds::Number, hint)}));
        return blocks;
    }

    bool act(const std::string& id) override {
        if (const auto good = behind(id, kGood)) {
            m_draft.good = *good;
        } else if (const auto weak = behind(id, kWeak)) {
            m_draft.weak = *weak;
        } else if (const auto by = behind(id, kBy)) {
            m_draft.byInstrument = *by == "instrument";
        } else {
            return false;
        }
        return true;
    }

    bool enter(const std::string& typedField, const std::string& typed) override {
        const auto name = behind(typedField, kTestsField);
        if (name == "good-grade") {
            m_draft.good = typed;
        } else if (name == "weak-grade") {
            m_draft.weak = typed;
        } else {
            return false;
        }
        return true;
    }

    std::optional<FormKeeping> keeping() override {
        auto found = shop::judgedFrom(m_draft, m_load.washed.load, m_limits);
        if (!found) {
            m_faults = found.error();
            return std::nullopt;
        }
        if (m_load.judged) {
            found->judged.corrects = m_load.judgedBy;
        }
        FormKeeping kept;
        kept.said = {wording::sentence(found->judged.word, speech()), {}, {}};
        kept.thenChoose = std::string{kTestsLoad} + m_load.washed.load;
        kept.keeping.list.emplace_back(found->judged);
        return kept;
    }

private:
    SheetRow limitRow(const char* name, const char* bound, const std::string& mark,
                      const analytics::WitnessLimit& limit) const {
        const auto value = text(
            bound,
            {{"grade", wording::numberText(limit.value, limit.origin == analytics::LimitOrigin::charted ? 2 : 1)}});
        const auto origin = text(originKey(limit.origin), {{"count", std::to_string(limit.loads)}});
        auto row = factRow(mark.empty() ? text(name) : text(name) + ", " + mark, value, origin);
        return row;
    }

    records::LoadRow m_load;
    shop::WitnessDraft m_draft;
    analytics::WitnessLimits m_limits;
};

} // namespace

std::unique_ptr<TestsForm> fillForm(const PlaceNeeds& needs, const std::string& programme,
                                    std::optional<records::PrintRow> first) {
    return std::make_unique<FillForm>(needs, programme, std::move(first));
}

std::unique_ptr<TestsForm> witnessForm(const PlaceNeeds& needs, records::LoadRow load) {
    return std::make_unique<WitnessForm>(needs, std::move(load));
}

} // namespace holdfast::kiosk::screens
