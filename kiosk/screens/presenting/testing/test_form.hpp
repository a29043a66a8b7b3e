#pragma once

#include "kiosk/screens/presenting/testing/picture_inbox.hpp"
#include "kiosk/screens/presenting/testing/print_page.hpp"
#include "kiosk/screens/presenting/testing/tests_form.hpp"

#include <array>

namespace holdfast::kiosk::screens {

/// A test of one print while it is entered or put right: the chart it goes into above, keys and fields below.
class TestForm final : public TestsForm {
public:
    /// `inbox` outlives it. Pictures that wait for this print are taken in by themselves.
    TestForm(const PlaceNeeds& needs, PrintFacts facts, shop::TestDraft draft, const PictureInbox& inbox);

    [[nodiscard]] std::string title() const override;
    [[nodiscard]] QList<SheetBlock> blocks() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    [[nodiscard]] std::optional<FormKeeping> keeping() override;

private:
    enum class Meter { before, after, garment };
    void addSeries(QList<SheetBlock>& blocks) const;
    void addAnswers(QList<SheetBlock>& blocks) const;
    void addPulls(QList<SheetBlock>& blocks) const;
    void addLengths(QList<SheetBlock>& blocks) const;
    void addColours(QList<SheetBlock>& blocks) const;
    void addColourFinding(QList<SheetBlock>& blocks) const;
    void addPictures(QList<SheetBlock>& blocks) const;
    void addSteps(QList<SheetBlock>& blocks) const;
    bool setAnswer(const std::string& rest);
    bool setOther(const std::string& id);
    void takeLine(const std::string& line);
    [[nodiscard]] std::string* fieldNamed(const std::string& name);
    [[nodiscard]] std::optional<int> cycleTyped() const;
    [[nodiscard]] wording::Notice saidAfter(const shop::TestToKeep& kept) const;
    [[nodiscard]] shop::ColourScale scale() const noexcept;
    [[nodiscard]] std::vector<const records::LoadRow*> loadsOfMethod() const;

    PrintFacts m_facts;
    shop::TestDraft m_draft;
    const PictureInbox& m_inbox;
    bool m_steps = false;       ///< shown
    bool m_typedGrades = false; ///< fields instead of keys
    Meter m_meter = Meter::before;
    std::string m_line;
    std::optional<analytics::LabLineFault> m_lineFault;
    std::vector<analytics::Lab> m_before; ///< repeats read from lines
    std::vector<analytics::Lab> m_after;
    std::optional<analytics::Lab> m_garment;
};

} // namespace holdfast::kiosk::screens
