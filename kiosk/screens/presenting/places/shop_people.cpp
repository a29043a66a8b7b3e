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
            rowsBlock(SheetKinds::Facts, {factRow(text("shop.people.badge-fact"), shop::badgeOf(m_form->number))}));
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
    if (id == "shop.people.save" && m_form) {
        save();
        return true;
    }
    if (id == "shop.people.new") {
        m_form = shop::PersonDraft{};
        m_form->roles = {records::Role::operatorAtDryer};
    } else if (id == "shop.people.leave") {
        m_form.reset();
    } else if (id == "shop.people.badge" && m_form) {
        needs().print({PrintWish::What::personBadge, m_form->number});
    } else if (m_form && (id == "shop.people.left.yes" || id == "shop.people.left.no")) {
        m_form->left = id == "shop.people.left.yes";
    } else if (const auto person = restOf(id, kPick)) {
        pick(std::atoll(person->c_str()));
    } else if (const auto role = restOf(id, kRole); role && m_form) {
        for (const auto& one : kRoles) {
            if (*role == one.id) {
                auto& roles = m_form->roles;
                hasRole(roles, one.role)
                    ? static_cast<void>(roles.erase(std::remove(roles.begin(), roles.end(), one.role), roles.end()))
                    : roles.push_back(one.role);
            }
        }
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

bool ShopPeople::enter(const std::string& field, const std::string& typed) {
    if (!m_form) {
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

void ShopPeople::pick(std::int64_t person) {
    const auto found =
        std::find_if(m_now.people.begin(), m_now.people.end(), [&](const auto& one) { return one.number == person; });
    if (found != m_now.people.end()) {
        const auto* name = shop::nameOf(m_now.names, person);
        m_form = shop::draftOf(*found, name != nullptr ? *name : std::string{});
        m_faults.clear();
    }
}

bool ShopPeople::badge(std::int64_t person) {
    if (std::none_of(m_now.people.begin(), m_now.people.end(), [&](const auto& one) { return one.number == person; })) {
        return false;
    }
    pick(person);
    return true;
}

/// Read again once it is signed: at a first start the signature itself adds the owner, and so takes a number.
void ShopPeople::save() {
    const auto check = shop::personFrom(*m_form, m_now, [](std::string_view) { return std::string{}; });
    m_faults = check ? std::vector<shop::PersonFault>{} : check.error();
    if (!check || (check->list.empty() && m_form->pin.empty())) {
        if (check) {
            m_form.reset(); // as it was
        }
        return;
    }
    needs().sign(shop::Right::changePeople, [this, draft = *m_form](std::int64_t person) {
        reload();
        auto entries = shop::personFrom(draft, m_now);
        if (!entries) {
            m_form = draft;
            m_faults = std::move(entries.error());
            return;
        }
        keep({std::move(entries->list), person, entries->name}, [this] {
            m_form.reset();
            reload();
        });
    });
}

} // namespace holdfast::kiosk::screens
