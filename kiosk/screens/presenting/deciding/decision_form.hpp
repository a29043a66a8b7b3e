#pragma once

#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/shop/deciding/decision.hpp"

namespace holdfast::kiosk::screens {

/// A decision while it is made: word, holds it ends, reason, signatures. Ids begin with "holds.form.".
class DecisionForm final : public HoldsPage {
public:
    /// `reasons` were given before; the most frequent are pressed.
    DecisionForm(const PlaceNeeds& needs, Done done, LotShown lot, std::vector<std::string> reasons);

    /// The lot again: it may have been decided meanwhile.
    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    [[nodiscard]] bool isWriting() const override { return m_touched; }

    /// Released as counted, in one press: the reason stands there already, only the signature is asked for.
    void signUnproven();

private:
    [[nodiscard]] bool asksForReport() const;
    void toggleHold(const std::string& hold);
    void sign();
    void signedBy(std::int64_t person);
    void write();
    void addWord(SheetPageState& page) const;
    void addHolds(SheetPageState& page) const;
    void addReason(SheetPageState& page) const;

    LotShown m_lot;
    std::vector<std::string> m_reasons;
    shop::deciding::DecisionDraft m_draft;
    shop::deciding::DecisionIds m_ids; ///< the same if it is tried again
    bool m_touched = false;
};

} // namespace holdfast::kiosk::screens
