#pragma once

#include "kiosk/screens/presenting/places/shop_section.hpp"

namespace holdfast::kiosk::screens {

/// Who may do what: shop::kRights as it stands in code.
class ShopRoles final : public ShopSection {
public:
    using ShopSection::ShopSection;
    void addTo(SheetPageState& page) const override;
};

/// Prints all action cards.
class ShopCards final : public ShopSection {
public:
    using ShopSection::ShopSection;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
};

} // namespace holdfast::kiosk::screens
