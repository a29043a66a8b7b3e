#include "kiosk/shop/keeping/person_draft.hpp"

#include "kiosk/shop/keeping/sign_in.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

bool isOwner(const std::vector<records::Role>& roles) {
    return std::find(roles.begin(), roles.end(), records::Role::owner) != roles.end();
}

const records::PersonOnFile* personOf(const PeopleNow& now, std::int64_t number) {
    const auto found =
        std::find_if(now.people.begin(), now.people.end(), [&](const auto& one) { return one.number == number; });
    return found == now.people.end() ? nullptr : &*found;
}

/// Nobody could sign as an owner after this, although somebody can now.
bool takesLastOwner(const PersonDraft& draft, const PeopleNow& now) {
    auto after = now.people;
    for (auto& person : after) {
        if (person.number == draft.number) {
            person.roles = draft.roles;
            person.left = draft.left;
        }
    }
    return !lacksOwner(now.people) && lacksOwner(after);
}

void checkName(const std::string& name, const PersonDraft& draft, const PeopleNow& now,
               std::vector<PersonFault>& faults) {
    if (const auto fault = textFault(name)) {
        faults.push_back({*fault == TextFault::missing   ? PersonFaultCause::nameMissing
                          : *fault == TextFault::tooLong ? PersonFaultCause::nameTooLong
                                                         : PersonFaultCause::controlSign,
                          "name",
                          *fault == TextFault::tooLong ? firstSigns(name) : std::string{},
                          {}});
        return;
    }
    for (const auto& other : now.names) {
        const auto* person = personOf(now, other.number);
        if (other.number != draft.number && other.name == name && person != nullptr && !person->left) {
            faults.push_back({PersonFaultCause::nameTaken, "name", name, {}});
            return;
        }
    }
}

void checkPin(const PersonDraft& draft, std::vector<PersonFault>& faults) {
    if (draft.pin.empty() && draft.pinAgain.empty() && !draft.pinNeeded) {
        return;
    }
    if (const auto fault = pinFault(draft.pin)) {
        faults.push_back({PersonFaultCause::pin, "pin", {}, fault});
    } else if (draft.pin != draft.pinAgain) {
        faults.push_back({PersonFaultCause::pinsDiffer, "pin-again", {}, {}});
    }
}

} // namespace

const std::string* nameOf(const std::vector<ledger::PersonName>& names, std::int64_t number) {
    const auto found = std::find_if(names.begin(), names.end(), [&](const auto& one) { return one.number == number; });
    return found == names.end() ? nullptr : &found->name;
}

PersonDraft draftOf(const records::PersonOnFile& person, const std::string& name) {
    PersonDraft draft;
    draft.number = person.number;
    draft.name = name;
    draft.roles = person.roles;
    draft.left = person.left;
    return draft;
}

PersonDraft firstOwnerDraft(const PeopleNow& now) {
    PersonDraft draft;
    draft.roles = {records::Role::owner};
    for (const auto& person : now.people) {
        if (!person.left && isOwner(person.roles)) {
            const auto* name = nameOf(now.names, person.number);
            draft = draftOf(person, name != nullptr ? *name : std::string{});
            break;
        }
    }
    draft.pinNeeded = true;
    return draft;
}

records::PersonChanged withNewBadge(const records::PersonOnFile& person) {
    return {person.number, nextBadgeOf(person), person.roles, person.left};
}

tl::expected<PersonEntries, std::vector<PersonFault>> personFrom(const PersonDraft& draft, const PeopleNow& now,
                                                                 const HashPin& hash) {
    std::vector<PersonFault> faults;
    const auto name = trimmed(draft.name);
    checkName(name, draft, now, faults);
    if (draft.roles.empty()) {
        faults.push_back({PersonFaultCause::noRole, "roles", {}, {}});
    }
    if (takesLastOwner(draft, now)) {
        faults.push_back({PersonFaultCause::lastOwner, draft.left ? "left" : "roles", {}, {}});
    }
    checkPin(draft, faults);
    std::optional<std::string> pinHash;
    if (faults.empty() && !draft.pin.empty()) {
        pinHash = hash(draft.pin);
        if (!pinHash) {
            faults.push_back({PersonFaultCause::pinNotMade, "pin", {}, {}});
        }
    }
    if (!faults.empty()) {
        return tl::unexpected(std::move(faults));
    }
    PersonEntries entries;
    const auto* before = personOf(now, draft.number);
    const auto number = before != nullptr ? before->number : now.nextNumber;
    if (before == nullptr) {
        entries.list.emplace_back(records::PersonAdded{number, badgeOf(number), draft.roles});
    } else if (before->roles != draft.roles || before->left != draft.left) {
        entries.list.emplace_back(records::PersonChanged{number, before->badge, draft.roles, draft.left});
    }
    if (pinHash) {
        entries.list.emplace_back(records::PinSet{number, *pinHash});
    }
    const auto* nameBefore = nameOf(now.names, number);
    entries.name = {number, name};
    entries.renamed = nameBefore == nullptr || *nameBefore != name;
    if (entries.renamed && entries.list.empty()) { // a name is only written beside an entry
        entries.list.emplace_back(records::PersonChanged{number, before->badge, draft.roles, draft.left});
    }
    return entries;
}

} // namespace holdfast::kiosk::shop
