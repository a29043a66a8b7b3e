#pragma once

#include "kiosk/screens/presenting/places/sheet_place.hpp"
#include "kiosk/shop/keeping/person_draft.hpp"

namespace holdfast::kiosk::screens {

/// People, names and the next number as the book has them.
[[nodiscard]] inline ledger::Result<shop::PeopleNow> peopleNow(const ledger::Book& book) {
    auto people = records::peopleOnFile(book.reader());
    auto names = book.personNames();
    const auto next = records::nextNumber(book.reader(), records::Numbered::person);
    if (!people || !names || !next) {
        return tl::unexpected(!people ? people.error() : !names ? names.error() : next.error());
    }
    return shop::PeopleNow{std::move(*people), std::move(*names), *next};
}

/// "Person 3" for one whose name was forgotten.
[[nodiscard]] inline std::string shownName(const shop::PeopleNow& now, std::int64_t person,
                                           const wording::Speech& speech) {
    const auto* name = shop::nameOf(now.names, person);
    return name != nullptr && !name->empty()
               ? *name
               : speech.text("shop.people.nameless", {{"number", std::to_string(person)}});
}

/// A dot for each digit typed.
[[nodiscard]] inline std::string dots(const std::string& secret) {
    std::string all;
    for (std::size_t i = 0; i < secret.size(); ++i) {
        all += "\xE2\x80\xA2"; // U+2022
    }
    return all;
}

} // namespace holdfast::kiosk::screens
