#include "kiosk/screens/presenting/testing/print_forms.hpp"

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/print_moves.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/words.hpp"
#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/shop/testing/print_piece.hpp"
#include "kiosk/shop/typed/typed.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kLot = "tests.set.lot.";
constexpr std::string_view kPosition = "tests.set.position.";
constexpr std::string_view kRetained = "tests.set.retained.";
constexpr std::string_view kReprint = "tests.set.reprint.";

/// What both forms share: a shelf.
class ShelfPart : public TestsForm {
public:
    using TestsForm::TestsForm;

protected:
    void addShelf(QList<SheetBlock>& blocks, const shop::RetainedDraft& draft) const {
        blocks.append(fieldsBlock(
            {field("shelf", text("tests.field.shelf"), draft.shelf, SheetKinds::Text, text("tests.field.shelf-hint")),
             field("until", text("tests.field.until"), draft.until, SheetKinds::Date,
                   text("tests.field.until-hint"))}));
        const auto prefix = std::string{kReprint};
        blocks.append(
            choicesBlock(text("tests.choose.reprint"),
                         {{prefix + "no", text("tests.reprint.no")}, {prefix + "yes", text("tests.reprint.yes")}},
                         prefix + (draft.reprintAllowed ? "yes" : "no")));
    }
    static bool actOnShelf(const std::string& id, shop::RetainedDraft& draft) {
        const auto word = behind(id, kReprint);
        draft.reprintAllowed = word ? *word == "yes" : draft.reprintAllowed;
        return word.has_value();
    }
    static bool enterShelf(const std::string& name, const std::string& typed, shop::RetainedDraft& draft) {
        if (name == "shelf") {
            draft.shelf = typed;
        } else if (name == "until") {
            draft.until = typed;
        } else {
            return false;
        }
        return true;
    }
};

class NamePrintForm final : public ShelfPart {
public:
    NamePrintForm(const PlaceNeeds& needs, std::optional<std::int64_t> run) : ShelfPart{needs} {
        if (run) {
            m_draft.run = std::to_string(*run);
            askRun();
        }
        const auto next = took(records::nextPrint(needs.book->reader()));
        m_number = next.value_or(0);
    }

    [[nodiscard]] std::string title() const override { return text("tests.name.title"); }

    [[nodiscard]] QList<SheetBlock> blocks() const override {
        QList<SheetBlock> blocks;
        addWholeFaults(blocks);
        if (m_number < records::kMostPrints) {
            blocks.append(
                textBlock(SheetKinds::Lead, text("tests.name.write", {{"signs", shop::printSigns(m_number)}})));
        }
        blocks.append(textBlock(SheetKinds::Note, text("tests.name.write-note")));
        blocks.append(fieldsBlock(
            {field("run", text("tests.field.run"), m_draft.run, SheetKinds::Number, text("tests.field.run-hint"))}));
        addLots(blocks);
        blocks.append(fieldsBlock({field("piece", text("tests.field.piece"), m_draft.piece, SheetKinds::Number,
                                         text("tests.field.piece-hint")),
                                   field("printed", text("tests.field.printed"), m_draft.printed, SheetKinds::Text,
                                         text("tests.field.printed-hint"))}));
        addPosition(blocks);
        const auto prefix = std::string{kRetained};
        blocks.append(
            choicesBlock(text("tests.choose.retained"),
                         {{prefix + "no", text("tests.retained.no")}, {prefix + "yes", text("tests.retained.yes")}},
                         prefix + (m_draft.retained.retained ? "yes" : "no")));
        if (m_draft.retained.retained) {
            addShelf(blocks, m_draft.retained);
        }
        return blocks;
    }

    bool act(const std::string& id) override {
        if (const auto lot = behind(id, kLot)) {
            m_draft.lot = *lot;
            return true;
        }
        if (const auto position = behind(id, kPosition)) {
            m_draft.position = records::fromWord<records::BeltPosition>(*position);
            return true;
        }
        if (const auto word = behind(id, kRetained)) {
            m_draft.retained.retained = *word == "yes";
            return true;
        }
        return actOnShelf(id, m_draft.retained);
    }

    bool enter(const std::string& typedField, const std::string& typed) override {
        const auto name = behind(typedField, kTestsField);
        if (name == "run") {
            m_draft.run = typed;
            askRun();
        } else if (name == "piece") {
            m_draft.piece = typed;
        } else if (name == "printed") {
            m_draft.printed = typed;
        } else {
            return name && enterShelf(*name, typed, m_draft.retained);
        }
        return true;
    }

    bool addRun(std::int64_t number) override {
        m_draft.run = std::to_string(number);
        askRun();
        return true;
    }

    std::optional<FormKeeping> keeping() override {
        askRun(); // its lots may have changed
        const auto next = took(records::nextPrint(needs().book->reader()));
        if (!next) {
            return std::nullopt;
        }
        m_number = *next;
        shop::PrintContext context;
        context.run = m_run;
        context.lots = m_lots;
        context.nextNumber = m_number;
        context.printId = needs().newId();
        context.now = now().millisecondsSinceEpoch;
        context.utcOffsetMinutes = now().utcOffsetMinutes;
        const auto made = shop::printFrom(m_draft, context);
        if (!made) {
            m_faults = made.error();
            return std::nullopt;
        }
        FormKeeping kept;
        kept.keeping.list.emplace_back(made->named);
        if (made->moved) {
            kept.keeping.list.emplace_back(*made->moved);
        }
        kept.thenChoose = std::string{kTestsPrint} + made->named.print;
        const auto signs = shop::printSigns(made->named.number);
        kept.said = {text("tests.kept.print", {{"signs", signs}}), {}, text("tests.name.write", {{"signs", signs}})};
        return kept;
    }

private:
    void askRun() {
        m_run.reset();
        m_lots.clear();
        const auto number = shop::numberFrom(m_draft.run);
        constexpr double kMost = 1e15; // more than any run is called
        if (!number || *number < 0.0 || *number > kMost) {
            return;
        }
        const auto& book = needs().book->reader();
        const auto run = took(records::runByNumber(book, records::PlanKind::run, static_cast<std::int64_t>(*number)));
        if (!run || !*run) {
            return;
        }
        m_run = (*run)->plan.run;
        m_lots = took(records::lotsOfRun(book, *m_run)).value_or(std::vector<records::LotRow>{});
    }

    void addLots(QList<SheetBlock>& blocks) const {
        if (m_lots.size() < 2) {
            return;
        }
        std::vector<Choice> choices;
        for (const auto& lot : m_lots) {
            choices.push_back({std::string{kLot} + lot.id, std::to_string(lot.number)});
        }
        blocks.append(choicesBlock(text("tests.choose.lot"), choices,
                                   std::string{kLot} + m_draft.lot.value_or(m_lots.back().id)));
    }

    void addPosition(QList<SheetBlock>& blocks) const {
        std::vector<Choice> choices;
        for (const auto& row : records::tableOf(records::BeltPosition{})) {
            choices.push_back(
                {std::string{kPosition} + std::string{row.word}, text("tests.position." + std::string{row.word})});
        }
        choices.push_back({std::string{kPosition}, text("tests.position.unknown")});
        blocks.append(
            choicesBlock(text("tests.choose.position"), choices,
                         std::string{kPosition} +
                             (m_draft.position ? std::string{records::toWord(*m_draft.position)} : std::string{})));
    }

    shop::PrintDraft m_draft;
    std::optional<std::string> m_run; ///< id
    std::vector<records::LotRow> m_lots;
    std::int64_t m_number = 0; ///< that it will have
};

class ShelfForm final : public ShelfPart {
public:
    ShelfForm(const PlaceNeeds& needs, records::PrintRow print)
        : ShelfPart{needs}, m_print{std::move(print)}, m_draft{shop::draftOf(m_print.named.retained)} {
        m_draft.retained = true;
    }

    [[nodiscard]] std::string title() const override {
        return text("tests.shelf.title", {{"signs", shop::printSigns(m_print.named.number)}});
    }
    [[nodiscard]] QList<SheetBlock> blocks() const override {
        QList<SheetBlock> blocks;
        addWholeFaults(blocks);
        addShelf(blocks, m_draft);
        return blocks;
    }
    bool act(const std::string& id) override { return actOnShelf(id, m_draft); }
    bool enter(const std::string& typedField, const std::string& typed) override {
        const auto name = behind(typedField, kTestsField);
        return name && enterShelf(*name, typed, m_draft);
    }
    std::optional<FormKeeping> keeping() override {
        const auto changed = shop::shelfFrom(m_draft, m_print);
        if (!changed) {
            m_faults = changed.error();
            return std::nullopt;
        }
        FormKeeping kept;
        kept.keeping.list.emplace_back(*changed);
        const auto stands = took(records::moveOfPrint(needs().book->reader(), m_print.named.print));
        if (!stands) {
            return std::nullopt;
        }
        if (*stands) {
            if (auto moved = shop::movedOn((*stands)->entry, (*stands)->moved.lot, (*stands)->moved.to,
                                           records::PiecePlace::retained)) {
                kept.keeping.list.emplace_back(std::move(*moved));
            }
        }
        kept.thenChoose = std::string{kTestsPrint} + m_print.named.print;
        return kept;
    }

private:
    records::PrintRow m_print;
    shop::RetainedDraft m_draft;
};

} // namespace

std::unique_ptr<TestsForm> namePrintForm(const PlaceNeeds& needs, std::optional<std::int64_t> run) {
    return std::make_unique<NamePrintForm>(needs, run);
}

std::unique_ptr<TestsForm> shelfForm(const PlaceNeeds& needs, records::PrintRow print) {
    return std::make_unique<ShelfForm>(needs, std::move(print));
}

} // namespace holdfast::kiosk::screens
