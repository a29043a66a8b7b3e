#include "kiosk/screens/presenting/places/sign_in_place.hpp"

#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/places/people_now.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kPerson = "sign-in.person.";

} // namespace

void SignInPlace::ask(shop::Right right, std::function<void(std::int64_t)> then) {
    m_signIn.giveUp();
    m_refused.reset();
    m_faults.clear();
    reload();
    if (const auto holder = m_signIn.holder(right, m_now.people, m_needs.clock->now())) {
        m_then = {};
        then(*holder);
        return;
    }
    m_then = std::move(then);
    m_signIn.begin(right, m_now.people);
    if (m_signIn.step() == shop::SignInStep::firstOwner) {
        m_owner = shop::firstOwnerDraft(m_now);
    }
}

void SignInPlace::reload() {
    auto now = peopleNow(*m_needs.book);
    if (!now) {
        m_needs.tell(wording::noticeOf(now.error(), wording::Kept::book, m_needs.speech()));
        return;
    }
    m_now = std::move(*now);
}

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
    page.blocks.append(textBlock(SheetKinds::Sentence,
                                 text("shop.sign.to", {{"right", wording::word(m_signIn.right(), m_needs.speech())}})));
    std::vector<SheetRow> rows;
    for (const auto& person : m_now.people) {
        if (!person.left && shop::mayDo(m_signIn.right(), person.roles)) {
            auto row = factRow(nameOf(person.number), wording::words(person.roles, m_needs.speech()),
                               person.pinHash.empty() ? text("shop.people.no-pin") : std::string{});
            row.id = toQString(std::string{kPerson} + std::to_string(person.number));
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

bool SignInPlace::act(const std::string& id) {
    if (id == "sign-in.leave") {
        leave();
    } else if (id == "sign-in.other") {
        m_refused.reset();
        m_signIn.unchoose();
    } else if (id == "sign-in.set") {
        setFirstOwner();
    } else if (id.compare(0, kPerson.size(), kPerson) == 0) {
        choose(std::atoll(id.c_str() + kPerson.size()));
    } else {
        return false;
    }
    return true;
}

bool SignInPlace::enter(const std::string& field, const std::string& typed) {
    if (field == "sign-in.pin" && m_signIn.step() == shop::SignInStep::pin) {
        tryPin(typed);
        return true;
    }
    if (m_signIn.step() != shop::SignInStep::firstOwner) {
        return false;
    }
    if (field == "sign-in.name") {
        m_owner.name = typed;
    } else if (field == "sign-in.pin") {
        m_owner.pin = typed;
    } else if (field == "sign-in.pin-again") {
        m_owner.pinAgain = typed;
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

bool SignInPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    const bool asks = m_signIn.step() == shop::SignInStep::waiting || m_signIn.step() == shop::SignInStep::pin;
    if (!onScreen || !asks || code.kind != drivers::TicketKind::person) {
        return false;
    }
    choose(static_cast<std::int64_t>(code.number));
    return true;
}

void SignInPlace::choose(std::int64_t person) {
    if (m_signIn.step() != shop::SignInStep::waiting && m_signIn.step() != shop::SignInStep::pin) {
        return;
    }
    m_refused.reset();
    if (const auto refusal = m_signIn.choose(person, m_now.people)) {
        m_signIn.unchoose();
        m_refused = Refused{*refusal, person};
    }
}

void SignInPlace::tryPin(const std::string& pin) {
    reload();
    const auto person = m_signIn.person();
    const auto signedBy = m_signIn.tryPin(pin, m_now.people, m_needs.clock->now());
    if (!signedBy) {
        m_refused = Refused{signedBy.error(), person};
        return;
    }
    finish(*signedBy);
}

void SignInPlace::setFirstOwner() {
    if (m_signIn.step() != shop::SignInStep::firstOwner || m_keeping) {
        return;
    }
    reload();
    auto entries = shop::personFrom(m_owner, m_now, m_hash);
    if (!entries) {
        m_faults = std::move(entries.error());
        return;
    }
    m_keeping = true;
    const auto person = entries->name.number;
    // The first owner has nobody above to sign, and signs their own coming.
    m_needs.keep({std::move(entries->list), person, entries->name},
                 [this, person](const std::optional<ledger::Failure>& failure) {
                     m_keeping = false;
                     if (failure) { // what was typed stays
                         m_needs.tell(wording::noticeOf(*failure, wording::Kept::book, m_needs.speech()));
                     } else if (m_signIn.step() == shop::SignInStep::firstOwner) {
                         resumeAfterOwner(person);
                     }
                 });
}

/// An owner has every right, so what was asked for may be done at once.
void SignInPlace::resumeAfterOwner(std::int64_t person) {
    m_signIn.ownerSet(person, m_needs.clock->now());
    finish(person);
}

void SignInPlace::finish(std::int64_t person) {
    m_refused.reset();
    m_owner = {};
    auto then = std::exchange(m_then, {});
    m_closed();
    if (then) {
        then(person);
    }
}

void SignInPlace::leave() {
    m_signIn.giveUp();
    m_refused.reset();
    m_faults.clear();
    m_owner = {};
    m_then = {};
    m_closed();
}

} // namespace holdfast::kiosk::screens
