#pragma once

#include "kiosk/screens/presenting/places/shop_section.hpp"

#include <memory>

namespace holdfast::kiosk::screens {

/// Shop: settings, dryers, crew, people, roles, cards, the book, the shop file.
class ShopPlace final : public SheetPlace {
public:
    explicit ShopPlace(PlaceNeeds needs);

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// A badge. On the screen only a section that asks for one takes it; from the dryer it brings the crew's card, and
    /// its bearer into the crew.
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    [[nodiscard]] bool isWriting() const override;
    void tick() override;

private:
    struct Entry final {
        std::string name; ///< "settings"
        std::unique_ptr<ShopSection> section;
    };
    [[nodiscard]] ShopSection* sectionNow() const;
    void open(const std::string& name);

    PlaceNeeds m_needs;
    std::vector<Entry> m_sections;
    std::string m_now{}; ///< empty in portrait: the list
};

} // namespace holdfast::kiosk::screens
