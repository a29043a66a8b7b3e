#pragma once

#include "kiosk/screens/presenting/places/shop_section.hpp"
#include "kiosk/shop/keeping/dryer_draft.hpp"

namespace holdfast::kiosk::screens {

/// The dryers, their dwell, and the form in which one is described or withdrawn; kept with a signature.
class ShopDryers final : public ShopSection {
public:
    using ShopSection::ShopSection;
    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    [[nodiscard]] bool isWriting() const override { return m_form.has_value(); }

private:
    void save();
    void withdraw();
    void keepSigned(records::DryerDescribed dryer);
    void addWithdrawing(SheetPageState& page) const;
    /// Something runs on the dryer of the form: it cannot go now.
    [[nodiscard]] bool isRunning() const;
    void addForm(SheetPageState& page) const;
    void addList(SheetPageState& page) const;

    std::vector<records::DryerDescribed> m_dryers;
    std::optional<shop::DryerDraft> m_form;
    std::vector<shop::DryerFault> m_faults;
    bool m_withdrawing = false; ///< asked whether the dryer of the form is to go
};

} // namespace holdfast::kiosk::screens
