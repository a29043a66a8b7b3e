#pragma once

#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/planning/plan_draft.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// The form in which a plan is written or changed.
class RunsForm final {
public:
    RunsForm(shop::PlanDraft draft, shop::Stock stock) : m_draft{std::move(draft)}, m_stock{std::move(stock)} {}

    [[nodiscard]] const shop::PlanDraft& draft() const noexcept { return m_draft; }
    /// The plan, if nothing is wrong with it; else the faults stand at their fields.
    [[nodiscard]] std::optional<records::RunPlanned> plan();

    bool act(const std::string& id);
    bool enter(const std::string& field, const std::string& text);
    [[nodiscard]] QList<SheetBlock> blocks(const wording::Speech& speech) const;

private:
    void advise();
    [[nodiscard]] SheetField field(const std::string& name, const std::string& label, const std::string& value,
                                   const std::string& hint, SheetKinds::Keys keys, const wording::Speech& speech) const;
    void addLayers(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addWindow(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addAdvice(QList<SheetBlock>& blocks, const wording::Speech& speech) const;

    shop::PlanDraft m_draft;
    shop::Stock m_stock;
    std::vector<shop::PlanFault> m_faults;
    bool m_advised = false;
};

} // namespace holdfast::kiosk::screens
