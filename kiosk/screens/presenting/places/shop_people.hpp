#pragma once

#include "kiosk/screens/presenting/places/beside.hpp"
#include "kiosk/screens/presenting/places/people_now.hpp"
#include "kiosk/screens/presenting/places/shop_section.hpp"

namespace holdfast::kiosk::screens {

/// People, their roles, badges and PINs; kept with an owner's signature. A PIN is hashed beside the main thread; who
/// leaves the form meanwhile has changed nothing.
class ShopPeople final : public ShopSection {
public:
    explicit ShopPeople(const PlaceNeeds& needs, shop::HashPin hash = shop::hashPin)
        : ShopSection{needs}, m_hash{std::move(hash)} {}
    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// Opens that person; one that is replaced or nobody's is told. Not wanted while somebody is being changed.
    bool badge(std::int64_t number) override;
    [[nodiscard]] bool isWriting() const override { return m_form.has_value(); }

private:
    void pick(std::int64_t person);
    bool actOnForm(const std::string& id);
    void turnRole(const std::string& role);
    void save();
    void hashed(const shop::PersonDraft& draft, std::int64_t signer, const std::optional<std::string>& hash);
    void replaceBadge();
    void leaveForm();
    void addList(SheetPageState& page) const;
    void addForm(SheetPageState& page) const;
    void addRoles(SheetPageState& page) const;
    [[nodiscard]] std::string faultAt(const std::string& field) const;

    shop::PeopleNow m_now;
    std::optional<shop::PersonDraft> m_form;
    std::vector<shop::PersonFault> m_faults;
    shop::HashPin m_hash;
    bool m_replacing = false; ///< asked whether the badge is to be replaced
    int m_forms = 0;          ///< counts up with each form and each leaving: late answers find another number
    bool m_hashing = false;
    Beside m_beside; ///< last: it answers nobody once this goes
};

} // namespace holdfast::kiosk::screens
