// What the People show.
#include "kiosk/screens/presenting/places/people_words.hpp"
#include "kiosk/screens/presenting/places/shop_people.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

std::string badgeCode(const shop::PeopleNow& now, std::int64_t number) {
    const auto* person = personOf(now, number);
    return person != nullptr && !person->badge.empty() ? person->badge : shop::badgeOf(number);
}

} // namespace

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
        row.id = toQString(std::string{kPeoplePick} + std::to_string(person.number));
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
    for (const auto& one : kPeopleRoles) {
        const bool chosen = hasRole(m_form->roles, one.role);
        auto row = factRow(wording::word(one.role, speech()), text(chosen ? "shop.yes" : "shop.no"));
        row.id = toQString(std::string{kPeopleRole} + one.id);
        row.chosen = chosen;
        rows.push_back(row);
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
    if (const auto fault = faultAt("roles"); !fault.empty()) {
        page.blocks.append(textBlock(SheetKinds::Lead, fault));
    }
}

} // namespace holdfast::kiosk::screens
