#include "kiosk/demo/demo_people.hpp"

#include "kiosk/shop/keeping/person_draft.hpp"

#include <cassert>

namespace holdfast::kiosk::demo {
namespace {

using records::Role;

struct Person final {
    const char* name;
    std::vector<Role> roles;
};

std::vector<Person> everybody() {
    return {
        {"Ana", {Role::operatorAtDryer}},
        {"Mara", {Role::operatorAtDryer, Role::qualityAssurance}},
        {"Teo", {Role::owner}},
        {"Ivo", {Role::operatorAtDryer}},
        {"Lin", {Role::operatorAtDryer}},
        {"Noor", {Role::qualityAssurance}},
        {"Sami", {Role::operatorAtDryer}},
        {"Pia", {Role::operatorAtDryer}},
    };
}

records::PersonOnFile onFile(const records::PersonAdded& person) {
    return {person.number, person.badge, person.roles, false, {}};
}

} // namespace

DemoPeople demoPeople() {
    DemoPeople people;
    shop::PeopleNow now;
    for (const auto& one : everybody()) {
        shop::PersonDraft draft;
        draft.name = one.name;
        draft.roles = one.roles;
        const auto entries = shop::personFrom(draft, now);
        assert(entries && !entries->list.empty());
        people.list.insert(people.list.end(), entries->list.begin(), entries->list.end());
        people.names.push_back(entries->name);
        now.people.push_back(onFile(std::get<records::PersonAdded>(entries->list.front())));
        now.names.push_back(entries->name);
        ++now.nextNumber;
    }
    return people;
}

} // namespace holdfast::kiosk::demo
