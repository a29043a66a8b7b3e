#pragma once

#include "kiosk/screens/presenting/places/people_now.hpp"
#include "kiosk/screens/presenting/places/shop_section.hpp"

namespace holdfast::kiosk::screens {

/// Who stands at the dryer; nobody signs for it.
class ShopCrew final : public ShopSection {
public:
    using ShopSection::ShopSection;
    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    /// Comes, or goes if already there; one that is nobody's is told.
    bool badge(std::int64_t number) override;

private:
    void toggle(std::int64_t person);
    void change(records::CrewChanged crew);
    [[nodiscard]] bool here(std::int64_t person) const;

    shop::PeopleNow m_now;
    records::CrewChanged m_crew;
};

} // namespace holdfast::kiosk::screens
