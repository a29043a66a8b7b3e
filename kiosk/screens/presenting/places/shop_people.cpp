#include "kiosk/screens/presenting/places/shop_people.hpp"

#include "kiosk/wording/keeping_sentences.hpp"

#include <array>
#include <cstdlib>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kPick = "shop.people.pick.";
constexpr std::string_view kRole = "shop.people.role.";

struct RoleId final {
    const char* id;
    records::Role role;
};
constexpr std::array<RoleId, 3> kRoles{{{"operator", records::Role::operatorAtDryer},
                                        {"qa", records::Role::qualityAssurance},
                                        {"owner", records::Role::owner}}};

bool hasRole(const std::vector<records::Role>& roles, records::Role role) {
    return std::find(roles.begin(), roles.end(), role) != roles.end();
}

const records::PersonOnFile* personOf(const shop::PeopleNow& now, std::int64_t number) {
    const auto found =
        std::find_if(now.people.begin(), now.people.end(), [&](const auto& one) { return one.number == number; });
    return found == now.people.end() ? nullptr : &*found;
}

std::string badgeCode(const shop::PeopleNow& now, std::int64_t number) {
    const auto* person = personOf(now, number);
    return person != nullptr && !person->badge.empty() ? person->badge : shop::badgeOf(number);
}

} // namespace

void ShopPeople::reload() {
    auto now = peopleNow(*needs().book);
    if (!now) {
        tell(now.error());
        return;
    }
    m_now = std::move(*now);
}

void ShopPeople::addTo(SheetPageState& page) const {
    if (m_form) {
        addForm(page);
    } else {
        addList(page);
    }
}

void ShopPeople::addList(SheetPageState& page) const {
    if (shop::lacksOwner(m_now.people)) {
        page.blocks.append(textBlock(SheetKinds::Lead, text("shop.people.first")));
    }
    std::vector<SheetRow> rows;
    for (const auto& person : m_now.people) {
        std::string roles;
        for (const auto role : person.roles) {
            roles += (roles.empty() ? "" : ", ") + wording::word(role, speech());
        }
        auto row =
            factRow(shownName(m_now, person.number, speech()), person.left ? text("shop.people.left-row") : roles,
                    person.pinHash.empty() ? text("shop.people.no-pin") : std::string{});
        row.id = toQString(std::string{kPick} + std::to_string(person.number));
        rows.push_back(row);
    }
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("shop.people.none"))
                                    : rowsBlock(SheetKinds::Rows, rows));
    page.blocks.append(textBlock(SheetKinds::Note, text("shop.people.note")));
    page.actions.append(pressOf("shop.people.new", text("shop.people.new")));
}

std::string ShopPeople::faultAt(const std::string& field) const {
    const auto fault =
        std::find_if(m_faults.begin(), m_faults.end(), [&](const auto& one) { return one.field == field; });
    return fault == m_faults.end() ? std::string{} : wording::sentence(*fault, speech());
}

void ShopPeople::addForm(SheetPageState& page) const {
    const bool isNew = m_form->number == 0;
    if (m_hashing || m_replacing) {
        page.title = toQString(shownName(m_now, m_form->number, speech()));
        page.blocks.append(
            textBlock(SheetKinds::Lead, text(m_hashing ? "shop.people.working" : "shop.people.replace-ask")));
        if (m_replacing) {
            page.actions = {pressOf("shop.people.replace-now", text("shop.people.replace-now"), true)};
        }
        page.actions.append(pressOf("shop.people.leave", text("shop.leave")));
        return;
    }
    page.title = toQString(isNew ? text("shop.people.form-new") : shownName(m_now, m_form->number, speech()));
    const auto field = [&](const std::string& name, const std::string& value, const std::string& hint,
                           SheetKinds::Keys keys) {
        auto made = fieldOf("shop.people." + name, text("shop.people.field." + name), value, hint, keys);
        made.fault = toQString(faultAt(name));
        return made;
    };
    page.blocks.append(
        fieldsBlock({field("name", m_form->name, {}, SheetKinds::Text),
                     field("pin", dots(m_form->pin), text(isNew ? "shop.people.hint.pin" : "shop.people.hint.pin-kept"),
                           SheetKinds::Secret),
                     field("pin-again", dots(m_form->pinAgain), {}, SheetKinds::Secret)}));
    addRoles(page);
    if (!isNew) {
        page.blocks.append(
            rowsBlock(SheetKinds::Facts, {factRow(text("shop.people.badge-fact"), badgeCode(m_now, m_form->number))}));
        page.blocks.append(
            choicesBlock(text("shop.people.left"),
                         {{"shop.people.left.no", text("shop.yes")}, {"shop.people.left.yes", text("shop.no")}},
                         m_form->left ? "shop.people.left.yes" : "shop.people.left.no"));
        if (const auto fault = faultAt("left"); !fault.empty()) {
            page.blocks.append(textBlock(SheetKinds::Lead, fault));
        }
    }
    page.actions = {pressOf("shop.people.save", text("shop.save"), true)};
    if (!isNew) {
        page.actions.append(pressOf("shop.people.badge", text("shop.people.badge")));
        page.actions.append(pressOf("shop.people.replace", text("shop.people.replace")));
    }
    page.actions.append(pressOf("shop.people.leave", text("shop.leave")));
}

void ShopPeople::addRoles(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("shop.people.roles")));
    std::vector<SheetRow> rows;
    for (const auto& one : kRoles) {
        const bool chosen = hasRole(m_form->roles, one.role);
        auto row = factRow(wording::word(one.role, speech()), text(chosen ? "shop.yes" : "shop.no"));
        row.id = toQString(std::string{kRole} + one.id);
        row.chosen = chosen;
        rows.push_back(row);
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
    if (const auto fault = faultAt("roles"); !fault.empty()) {
        page.blocks.append(textBlock(SheetKinds::Lead, fault));
    }
}

bool ShopPeople::act(const std::string& id) {
    if (m_form && actOnForm(id)) {
        return true;
    }
    if (id == "shop.people.new") {
        leaveForm();
        m_form = shop::PersonDraft{};
        m_form->roles = {records::Role::operatorAtDryer};
    } else if (const auto person = restOf(id, kPick)) {
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
    } else if (const auto role = restOf(id, kRole)) {
        turnRole(*role);
    } else {
        return false;
    }
    return true;
}

void ShopPeople::turnRole(const std::string& role) {
    auto& roles = m_form->roles;
    for (const auto& one : kRoles) {
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
