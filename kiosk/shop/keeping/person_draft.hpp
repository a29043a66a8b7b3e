#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/shop/keeping/badge.hpp"
#include "kiosk/shop/keeping/pin.hpp"

#include <tl/expected.hpp>

#include <functional>
#include <optional>
#include <string>
#include <vector>

/// A person while being added or changed: everything as typed, checked at once and as a whole.
namespace holdfast::kiosk::shop {

struct PersonDraft final {
    std::int64_t number = 0; ///< 0: a new one
    std::string name{};
    std::vector<records::Role> roles{};
    bool left = false;
    bool pinNeeded = false; ///< the first owner's
    std::string pin{};      ///< empty: as it was
    std::string pinAgain{};
};

enum class PersonFaultCause {
    nameMissing,
    nameTooLong, ///< text
    controlSign,
    nameTaken, ///< text: by somebody who still works here
    noRole,
    lastOwner, ///< nobody could sign as an owner any more
    pin,       ///< `pin` says what
    pinsDiffer,
    pinNotMade, ///< no memory for the hash just now
};

struct PersonFault final {
    PersonFaultCause cause{};
    std::string field{}; ///< "name", "roles", "left", "pin", "pin-again"
    std::string text{};
    std::optional<PinFault> pin{};
    bool operator==(const PersonFault&) const = default;
};

/// To be written in one commit, so that no owner stands there without the PIN that was typed with them.
struct PersonEntries final {
    std::vector<records::Record> list{}; ///< only what changes; empty if nothing does
    ledger::PersonName name{};
    bool renamed = false; ///< or new
};

/// What stands beside a draft.
struct PeopleNow final {
    std::vector<records::PersonOnFile> people{};
    std::vector<ledger::PersonName> names{};
    std::int64_t nextNumber = 1; ///< records::nextNumber(person)
};

[[nodiscard]] const std::string* nameOf(const std::vector<ledger::PersonName>& names, std::int64_t number);
[[nodiscard]] PersonDraft draftOf(const records::PersonOnFile& person, const std::string& name);

/// The draft to begin with at a first start: the owner who stands there without a PIN, as after an interrupted one, or
/// a new person with that role.
[[nodiscard]] PersonDraft firstOwnerDraft(const PeopleNow& now);

/// The same person with a new badge; the old one opens nothing from then on.
[[nodiscard]] records::PersonChanged withNewBadge(const records::PersonOnFile& person);

/// Every fault at once, in the order of the form. Somebody new gets the next number and its badge.
[[nodiscard]] tl::expected<PersonEntries, std::vector<PersonFault>>
personFrom(const PersonDraft& draft, const PeopleNow& now, const HashPin& hash = hashPin);

} // namespace holdfast::kiosk::shop
