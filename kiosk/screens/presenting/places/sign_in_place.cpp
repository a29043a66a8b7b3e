#include "kiosk/screens/presenting/places/sign_in_place.hpp"

#include "kiosk/screens/presenting/places/people_now.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace holdfast::kiosk::screens {

SignInPlace::SignInPlace(PlaceNeeds needs, std::function<void()> closed, shop::VerifyPin verify, shop::HashPin hash)
    : m_needs{std::move(needs)}, m_closed{std::move(closed)}, m_signIn{shop::readPinTries(m_needs.book->folder()),
                                                                       m_needs.clock->now()},
      m_verify{std::move(verify)}, m_hash{std::move(hash)} {}

void SignInPlace::ask(shop::Right right, std::function<void(std::int64_t)> then) {
    giveUp();
    reload();
    if (const auto holder = m_signIn.holder(right, m_now.people, m_needs.clock->now())) {
        then(*holder);
        return;
    }
    begin(right, 0, std::move(then));
}

void SignInPlace::askAfresh(shop::Right right, std::int64_t other, std::function<void(std::int64_t)> then) {
    giveUp();
    reload();
    begin(right, other, std::move(then));
}

void SignInPlace::begin(shop::Right right, std::int64_t other, std::function<void(std::int64_t)> then) {
    m_then = std::move(then);
    m_signIn.begin(right, m_now.people, other);
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

bool SignInPlace::act(const std::string& id) {
    if (id == "sign-in.leave") {
        leave();
    } else if (id == "sign-in.other") {
        m_refused.reset();
        m_signIn.unchoose();
    } else if (id == "sign-in.set") {
        setFirstOwner();
    } else if (id.compare(0, kSignInPerson.size(), kSignInPerson) == 0) {
        choose(std::atoll(id.c_str() + kSignInPerson.size()));
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
    if (m_signIn.step() != shop::SignInStep::firstOwner || m_keeping) {
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
    chooseBadge(static_cast<std::int64_t>(code.number));
    return true;
}

void SignInPlace::choose(std::int64_t person) {
    if (m_signIn.step() != shop::SignInStep::waiting && m_signIn.step() != shop::SignInStep::pin) {
        return;
    }
    refuse(m_signIn.choose(person, m_now.people), person);
}

void SignInPlace::chooseBadge(std::int64_t number) {
    const auto badge = shop::badgeRead(number, m_now.people);
    refuse(m_signIn.chooseBadge(number, m_now.people), badge ? badge->person : 0);
}

void SignInPlace::refuse(const std::optional<shop::SignInRefusal>& refusal, std::int64_t person) {
    m_refused.reset();
    if (refusal) {
        m_signIn.unchoose();
        m_refused = Refused{*refusal, person};
    }
}

void SignInPlace::tryPin(const std::string& pin) {
    reload();
    const auto person = m_signIn.person();
    auto check = m_signIn.tryPin(m_now.people, m_needs.clock->now());
    if (!check) {
        m_refused = Refused{check.error(), person};
        return;
    }
    m_refused.reset();
    m_beside.run([this, check = std::move(*check), pin, verify = m_verify, folder = m_needs.book->folder(),
                  tries = m_signIn.tries()]() -> Beside::Answer {
        (void)shop::writePinTries(folder, tries); // a full disk locks nobody out; they still count until the next start
        const bool right = verify(check.hash, pin);
        return [this, check, right] { checked(check, right); };
    });
}

void SignInPlace::checked(const shop::PinCheck& check, bool right) {
    reload();
    const auto signedBy = m_signIn.checked(check, right, m_now.people, m_needs.clock->now());
    if (right) { // a wrong one was kept as such before it was looked at
        m_beside.run([folder = m_needs.book->folder(), tries = m_signIn.tries()]() -> Beside::Answer {
            (void)shop::writePinTries(folder, tries);
            return [] {};
        });
    }
    if (signedBy && *signedBy) {
        finish(**signedBy);
    } else if (signedBy) {
        m_refused = Refused{signedBy->error(), check.person};
    }
    m_needs.show();
}

void SignInPlace::setFirstOwner() {
    if (m_signIn.step() != shop::SignInStep::firstOwner || m_keeping) {
        return;
    }
    reload();
    const auto looksRight = shop::personFrom(m_owner, m_now, [](std::string_view) { return std::string{}; });
    if (!looksRight) {
        m_faults = looksRight.error();
        return;
    }
    m_keeping = true;
    m_beside.run([this, owner = m_owner, asked = m_asked, hash = m_hash]() -> Beside::Answer {
        return [this, owner, asked, made = hash(owner.pin)] {
            m_keeping = false;
            if (asked == m_asked) { // not left meanwhile
                keepFirstOwner(owner, made);
            }
            m_needs.show();
        };
    });
}

void SignInPlace::keepFirstOwner(const shop::PersonDraft& owner, const std::optional<std::string>& hash) {
    reload();
    auto entries = shop::personFrom(owner, m_now, [&](std::string_view) { return hash; });
    if (!entries) {
        m_faults = std::move(entries.error());
        return;
    }
    m_keeping = true;
    const auto person = entries->name.number;
    // The first owner has nobody above to sign, and signs their own coming.
    m_needs.keep({std::move(entries->list), person, entries->name},
                 [this, person, asked = m_asked](const std::optional<ledger::Failure>& failure) {
                     m_keeping = false;
                     if (failure) { // what was typed stays
                         m_needs.tell(wording::noticeOf(*failure, wording::Kept::book, m_needs.speech()));
                     } else if (asked == m_asked) {
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
    giveUp();
    m_closed();
}

void SignInPlace::giveUp() {
    ++m_asked;
    m_signIn.giveUp();
    m_refused.reset();
    m_faults.clear();
    m_owner = {};
    m_then = {};
}

} // namespace holdfast::kiosk::screens
