#pragma once

#include "kiosk/screens/presenting/places/shop_section.hpp"
#include "kiosk/shop/keeping/settings.hpp"

#include <map>
#include <set>

namespace holdfast::kiosk::screens {

/// Each setting of shop::kSettings, written as it is entered.
class ShopSettings final : public ShopSection {
public:
    using ShopSection::ShopSection;
    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;

private:
    void addNames(SheetPageState& page, const std::string& key, const SheetField& field) const;
    void change(const std::string& key, const std::string& typed);

    struct Refused final {
        std::string key;
        std::string typed;
        shop::SettingFault fault;
    };
    std::map<std::string, std::string, std::less<>> m_values;
    std::set<std::string> m_starters; ///< keys that the shop has not set ///< as typed
    std::optional<Refused> m_refused;
};

} // namespace holdfast::kiosk::screens
