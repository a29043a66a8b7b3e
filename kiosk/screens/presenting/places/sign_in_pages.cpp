// What the signature shows.
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/places/people_now.hpp"
#include "kiosk/screens/presenting/places/sign_in_place.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

std::string SignInPlace::nameOf(std::int64_t person) const {
    return shownName(m_now, person, m_needs.speech());
}

SheetPageState SignInPlace::sheet() const {
    SheetPageState page;
    page.heading = toQString(text("shop.sign.heading"));
    page.detailOnly = true;
    page.back = pressOf("sign-in.leave", text("shop.sign.leave"));
    page.title = toQString(text("shop.sign.heading"));
    if (m_signIn.step() == shop::SignInStep::firstOwner) {
        addFirstOwner(page);
    } else if (m_signIn.step() == shop::SignInStep::pin) {
        addPin(page);
    } else if (m_signIn.step() == shop::SignInStep::checking) {
        page.blocks.append(textBlock(SheetKinds::Lead, text("shop.sign.checking")));
        page.blocks.append(
            textBlock(SheetKinds::Sentence, text("shop.sign.checking-for", {{"name", nameOf(m_signIn.person())}})));
    } else {
        addPeople(page);
    }
    page.actions.append(pressOf("sign-in.leave", text("shop.sign.leave")));
    return page;
}

void SignInPlace::addRefusal(SheetPageState& page) const {
    if (m_refused) {
        page.blocks.append(textBlock(SheetKinds::Lead, wording::sentence(m_refused->refusal, m_signIn.right(),
                                                                         nameOf(m_refused->person), m_needs.speech())));
    }
}

void SignInPlace::addPeople(SheetPageState& page) const {
    addRefusal(page);
    const auto other = m_signIn.other();
    const auto right = wording::word(m_signIn.right(), m_needs.speech());
    page.blocks.append(textBlock(SheetKinds::Sentence,
                                 other == 0 ? text("shop.sign.to", {{"right", right}})
                                            : text("shop.sign.second", {{"name", nameOf(other)}, {"right", right}})));
    std::vector<SheetRow> rows;
    for (const auto& person : m_now.people) {
        if (!person.left && person.number != other && shop::mayDo(m_signIn.right(), person.roles)) {
            auto row = factRow(nameOf(person.number), wording::words(person.roles, m_needs.speech()),
                               person.pinHash.empty() ? text("shop.people.no-pin") : std::string{});
            row.id = toQString(std::string{kSignInPerson} + std::to_string(person.number));
            rows.push_back(row);
        }
    }
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("shop.sign.nobody"))
                                    : rowsBlock(SheetKinds::Rows, rows));
}

void SignInPlace::addPin(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Sentence, text("shop.sign.for", {{"name", nameOf(m_signIn.person())}})));
    auto field = fieldOf("sign-in.pin", text("shop.sign.pin"), {}, text("shop.people.hint.pin"), SheetKinds::Secret);
    const auto wait = m_signIn.waitLeft(m_needs.clock->now());
    if (wait.count() > 0) { // counts down while it stands there
        field.fault = toQString(wording::sentence(
            shop::SignInRefusal{m_refused ? m_refused->refusal.cause : shop::SignInCause::tooSoon, {}, wait},
            m_signIn.right(), {}, m_needs.speech()));
    } else if (m_refused) {
        field.fault = toQString(wording::sentence(
            shop::SignInRefusal{m_refused->refusal.cause == shop::SignInCause::tooSoon ? shop::SignInCause::pinWrong
                                                                                       : m_refused->refusal.cause,
                                m_refused->refusal.may,
                                {}},
            m_signIn.right(), nameOf(m_refused->person), m_needs.speech()));
    }
    page.blocks.append(fieldsBlock({field}));
    page.actions.append(pressOf("sign-in.other", text("shop.sign.other")));
}

void SignInPlace::addFirstOwner(SheetPageState& page) const {
    const auto& speech = m_needs.speech();
    page.title = toQString(text("shop.sign.first-heading"));
    if (m_keeping) {
        page.blocks.append(textBlock(SheetKinds::Lead, text("shop.people.working")));
        return;
    }
    page.blocks.append(textBlock(SheetKinds::Sentence, text("shop.sign.first")));
    const auto field = [&](const char* name, const char* key, const std::string& value, const std::string& hint,
                           SheetKinds::Keys keys) {
        auto made = fieldOf(std::string{"sign-in."} + name, text(key), value, hint, keys);
        const auto fault =
            std::find_if(m_faults.begin(), m_faults.end(), [&](const auto& one) { return one.field == name; });
        if (fault != m_faults.end()) {
            made.fault = toQString(wording::sentence(*fault, speech));
        }
        return made;
    };
    page.blocks.append(fieldsBlock(
        {field("name", "shop.people.field.name", m_owner.name, {}, SheetKinds::Text),
         field("pin", "shop.people.field.pin", dots(m_owner.pin), text("shop.people.hint.pin"), SheetKinds::Secret),
         field("pin-again", "shop.people.field.pin-again", dots(m_owner.pinAgain), {}, SheetKinds::Secret)}));
    page.blocks.append(textBlock(SheetKinds::Note, text("shop.sign.first-note")));
    page.actions.append(pressOf("sign-in.set", text("shop.sign.first-set"), true));
}

} // namespace holdfast::kiosk::screens
