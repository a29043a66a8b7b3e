#pragma once

#include "kiosk/screens/presenting/places/people_now.hpp"
#include "kiosk/screens/presenting/places/shop_section.hpp"

namespace holdfast::kiosk::screens {

/// People, their roles, badges and PINs; kept with an owner's signature.
class ShopPeople final : public ShopSection {
public:
    using ShopSection::ShopSection;
    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// Opens that person; one that is nobody's is not wanted here.
    bool badge(std::int64_t person) override;

private:
    void pick(std::int64_t person);
    void save();
    void addList(SheetPageState& page) const;
    void addForm(SheetPageState& page) const;
    void addRoles(SheetPageState& page) const;
    [[nodiscard]] std::string faultAt(const std::string& field) const;

    shop::PeopleNow m_now;
    std::optional<shop::PersonDraft> m_form;
    std::vector<shop::PersonFault> m_faults;
};

} // namespace holdfast::kiosk::screens
