#pragma once

#include "kiosk/screens/presenting/places/shop_section.hpp"
#include "kiosk/shop/keeping/dryer_draft.hpp"

namespace holdfast::kiosk::screens {

/// The dryers, their dwell, and the form in which one is described; kept with a signature.
class ShopDryers final : public ShopSection {
public:
    using ShopSection::ShopSection;
    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;

private:
    void save();
    void addForm(SheetPageState& page) const;
    void addList(SheetPageState& page) const;

    std::vector<records::DryerDescribed> m_dryers;
    std::optional<shop::DryerDraft> m_form;
    std::vector<shop::DryerFault> m_faults;
};

} // namespace holdfast::kiosk::screens
