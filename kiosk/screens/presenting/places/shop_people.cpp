#include "kiosk/screens/presenting/places/shop_people.hpp"

#include "kiosk/screens/presenting/places/people_words.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

#include <cstdlib>

namespace holdfast::kiosk::screens {

void ShopPeople::reload() {
    auto now = peopleNow(*needs().book);
    if (!now) {
        tell(now.error());
        return;
    }
    m_now = std::move(*now);
}

bool ShopPeople::act(const std::string& id) {
    if (m_form && actOnForm(id)) {
        return true;
    }
    if (id == "shop.people.new") {
        leaveForm();
        m_form = shop::PersonDraft{};
        m_form->roles = {records::Role::operatorAtDryer};
    } else if (const auto person = restOf(id, kPeoplePick)) {
        pick(std::atoll(person->c_str()));
    } else {
        return false;
    }
    return true;
}

bool ShopPeople::actOnForm(const std::string& id) {
    if (id == "shop.people.leave") {
        m_replacing && !m_hashing ? static_cast<void>(m_replacing = false) : leaveForm();
        return true;
    }
    if (m_hashing) {
        return false;
    }
    if (id == "shop.people.save") {
        save();
    } else if (id == "shop.people.badge") {
        needs().print({PrintWish::What::personBadge, m_form->number});
    } else if (id == "shop.people.replace" && m_form->number != 0) {
        m_replacing = true;
    } else if (id == "shop.people.replace-now" && m_replacing) {
        replaceBadge();
    } else if (id == "shop.people.left.yes" || id == "shop.people.left.no") {
        m_form->left = id == "shop.people.left.yes";
        m_faults.clear();
    } else if (const auto role = restOf(id, kPeopleRole)) {
        turnRole(*role);
    } else {
        return false;
    }
    return true;
}

void ShopPeople::turnRole(const std::string& role) {
    auto& roles = m_form->roles;
    for (const auto& one : kPeopleRoles) {
        if (role != one.id) {
            continue;
        }
        if (hasRole(roles, one.role)) {
            roles.erase(std::remove(roles.begin(), roles.end(), one.role), roles.end());
        } else {
            roles.push_back(one.role);
        }
    }
    m_faults.clear();
}

bool ShopPeople::enter(const std::string& field, const std::string& typed) {
    if (!m_form || m_hashing) {
        return false;
    }
    if (field == "shop.people.name") {
        m_form->name = typed;
    } else if (field == "shop.people.pin") {
        m_form->pin = typed;
    } else if (field == "shop.people.pin-again") {
        m_form->pinAgain = typed;
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

void ShopPeople::leaveForm() {
    ++m_forms;
    m_form.reset();
    m_faults.clear();
    m_replacing = false;
}

void ShopPeople::pick(std::int64_t person) {
    if (const auto* found = personOf(m_now, person)) {
        leaveForm();
        const auto* name = shop::nameOf(m_now.names, person);
        m_form = shop::draftOf(*found, name != nullptr ? *name : std::string{});
    }
}

bool ShopPeople::badge(std::int64_t number) {
    if (m_form) {
        return false;
    }
    const auto badge = shop::badgeRead(number, m_now.people);
    if (!badge || badge->replaced) {
        const auto cause = badge ? shop::SignInCause::badgeReplaced : shop::SignInCause::personUnknown;
        needs().tell({wording::sentence(shop::SignInRefusal{cause, {}, {}}, shop::Right::changePeople,
                                        shownName(m_now, badge ? badge->person : 0, speech()), speech()),
                      {},
                      {}});
        return true;
    }
    pick(badge->person);
    return true;
}

/// Read again once it is signed: at a first start the signature itself adds the owner, and so takes a number.
void ShopPeople::save() {
    const auto check = shop::personFrom(*m_form, m_now, [](std::string_view) { return std::string{}; });
    m_faults = check ? std::vector<shop::PersonFault>{} : check.error();
    if (!check || (check->list.empty() && m_form->pin.empty())) {
        if (check) {
            leaveForm(); // as it was
        }
        return;
    }
    needs().sign(shop::Right::changePeople, [this, draft = *m_form, form = m_forms](std::int64_t signer) {
        if (form != m_forms || m_hashing) {
            return;
        }
        if (draft.pin.empty()) {
            hashed(draft, signer, std::nullopt);
            return;
        }
        m_hashing = true;
        m_beside.run([this, draft, signer, form, hash = m_hash]() -> Beside::Answer {
            return [this, draft, signer, form, made = hash(draft.pin)] {
                m_hashing = false;
                if (form == m_forms) {
                    hashed(draft, signer, made);
                }
                needs().show();
            };
        });
    });
}

void ShopPeople::hashed(const shop::PersonDraft& draft, std::int64_t signer, const std::optional<std::string>& hash) {
    reload();
    auto entries = shop::personFrom(draft, m_now, [&](std::string_view) { return hash; });
    if (!entries) {
        m_faults = std::move(entries.error());
        return;
    }
    keep({std::move(entries->list), signer, entries->name}, [this, form = m_forms] {
        if (form == m_forms) {
            leaveForm();
        }
        reload();
    });
}

void ShopPeople::replaceBadge() {
    needs().sign(shop::Right::changePeople, [this, number = m_form->number](std::int64_t signer) {
        reload();
        const auto* person = personOf(m_now, number);
        if (person == nullptr) {
            return;
        }
        keep({{shop::withNewBadge(*person)}, signer}, [this, number] {
            m_replacing = false;
            reload();
            needs().print({PrintWish::What::personBadge, number});
        });
    });
}

} // namespace holdfast::kiosk::screens
