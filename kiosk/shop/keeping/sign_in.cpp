#include "kiosk/shop/keeping/sign_in.hpp"

#include "kiosk/shop/keeping/badge.hpp"

#include <algorithm>
#include <array>
#include <cassert>

namespace holdfast::kiosk::shop {
namespace {

constexpr std::array<int, 7> kWaits{0, 0, 2, 5, 15, 30, 60};

const records::PersonOnFile* personAmong(const SignIn::People& people, std::int64_t number) {
    const auto found =
        std::find_if(people.begin(), people.end(), [&](const auto& one) { return one.number == number; });
    return found == people.end() ? nullptr : &*found;
}

} // namespace

std::vector<records::Role> rolesFor(Right right) {
    std::vector<records::Role> roles;
    for (const auto role : {records::Role::operatorAtDryer, records::Role::qualityAssurance, records::Role::owner}) {
        if (mayDo(right, role)) {
            roles.push_back(role);
        }
    }
    return roles;
}

bool lacksOwner(const std::vector<records::PersonOnFile>& people) {
    return std::none_of(people.begin(), people.end(), [](const auto& one) {
        return !one.left && !one.pinHash.empty() &&
               std::find(one.roles.begin(), one.roles.end(), records::Role::owner) != one.roles.end();
    });
}

std::chrono::seconds waitAfter(int wrongOnes) {
    if (wrongOnes <= 0) {
        return std::chrono::seconds{0};
    }
    return std::chrono::seconds{kWaits[std::min(static_cast<std::size_t>(wrongOnes), kWaits.size()) - 1]};
}

SignIn::SignIn(PinTries before, drivers::MonotonicTime now) : m_tries{std::move(before)} {
    int most = m_tries.inARow;
    for (const auto& [person, count] : m_tries.of) {
        most = std::max(most, count);
    }
    m_mayTryAt = now + waitAfter(most);
}

std::optional<std::int64_t> SignIn::holder(Right right, const People& people, drivers::MonotonicTime now) const {
    if (!m_signed || now - m_signed->at >= kSignatureLasts) {
        return std::nullopt;
    }
    const auto* person = personAmong(people, m_signed->person);
    return person != nullptr && !person->left && mayDo(right, person->roles) ? std::optional{person->number}
                                                                             : std::nullopt;
}

std::chrono::seconds SignIn::waitLeft(drivers::MonotonicTime now) const {
    return now >= m_mayTryAt ? std::chrono::seconds{0} : std::chrono::ceil<std::chrono::seconds>(m_mayTryAt - now);
}

void SignIn::begin(Right right, const People& people, std::int64_t other) {
    m_right = right;
    m_other = other;
    m_person = 0;
    m_step = lacksOwner(people) ? SignInStep::firstOwner : SignInStep::waiting;
}

void SignIn::close() noexcept {
    m_step = SignInStep::closed;
    m_person = 0;
}

void SignIn::giveUp() noexcept {
    close();
}

void SignIn::unchoose() noexcept {
    if (m_step == SignInStep::pin) {
        m_step = SignInStep::waiting;
        m_person = 0;
    }
}

std::optional<SignInRefusal> SignIn::choose(std::int64_t number, const People& people) {
    assert(m_step == SignInStep::waiting || m_step == SignInStep::pin);
    const auto* person = personAmong(people, number);
    if (person == nullptr) {
        return SignInRefusal{SignInCause::personUnknown};
    }
    if (person->left) {
        return SignInRefusal{SignInCause::personLeft};
    }
    if (!mayDo(m_right, person->roles)) {
        return SignInRefusal{SignInCause::notEntitled, rolesFor(m_right)};
    }
    if (number == m_other) {
        return SignInRefusal{SignInCause::samePerson};
    }
    if (person->pinHash.empty()) {
        return SignInRefusal{SignInCause::noPin};
    }
    m_person = number;
    m_step = SignInStep::pin;
    return std::nullopt;
}

std::optional<SignInRefusal> SignIn::chooseBadge(std::int64_t number, const People& people) {
    const auto badge = badgeRead(number, people);
    if (!badge) {
        return SignInRefusal{SignInCause::personUnknown};
    }
    return badge->replaced ? std::optional{SignInRefusal{SignInCause::badgeReplaced}} : choose(badge->person, people);
}

tl::expected<PinCheck, SignInRefusal> SignIn::tryPin(const People& people, drivers::MonotonicTime now) {
    assert(m_step == SignInStep::pin);
    const auto wait = m_out ? std::max(waitLeft(now), std::chrono::seconds{1}) : waitLeft(now);
    if (wait.count() > 0) {
        return tl::unexpected(SignInRefusal{SignInCause::tooSoon, {}, wait});
    }
    const auto number = m_person;
    if (auto refusal = choose(number, people)) { // left or lost the role since
        unchoose();
        return tl::unexpected(*refusal);
    }
    ++m_tries.inARow;
    ++m_tries.of[number];
    m_out = true;
    m_step = SignInStep::checking;
    return PinCheck{number, personAmong(people, number)->pinHash};
}

std::optional<tl::expected<std::int64_t, SignInRefusal>>
SignIn::checked(const PinCheck& check, bool right, const People& people, drivers::MonotonicTime now) {
    assert(m_out);
    m_out = false;
    const bool awaited = m_step == SignInStep::checking;
    if (!right) {
        const auto wait = waitAfter(std::max(m_tries.inARow, m_tries.of[check.person]));
        m_mayTryAt = now + wait;
        if (!awaited) {
            return std::nullopt;
        }
        m_step = SignInStep::pin;
        return tl::unexpected(SignInRefusal{SignInCause::pinWrong, {}, wait});
    }
    m_tries.inARow = 0;
    m_tries.of.erase(check.person);
    if (!awaited) {
        return std::nullopt;
    }
    m_step = SignInStep::pin;
    if (auto refusal = choose(check.person, people)) { // left or lost the role while it was looked at
        unchoose();
        return tl::unexpected(*refusal);
    }
    m_signed = Signed{check.person, now};
    close();
    return check.person;
}

void SignIn::ownerSet(std::int64_t person, drivers::MonotonicTime now) noexcept {
    m_signed = Signed{person, now};
    close();
}

} // namespace holdfast::kiosk::shop
