#include "kiosk/screens/presenting/places/shop_crew.hpp"

#include "kiosk/records/queries.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

#include <cstdlib>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kPerson = "shop.crew.person.";
constexpr int kMostUnnamed = 50;

} // namespace

void ShopCrew::reload() {
    auto now = peopleNow(*needs().book);
    const auto crew = records::crew(needs().book->reader());
    if (!now || !crew) {
        tell(!now ? now.error() : crew.error());
        return;
    }
    m_now = std::move(*now);
    m_crew = crew->value_or(records::CrewChanged{});
}

bool ShopCrew::here(std::int64_t person) const {
    return std::find(m_crew.persons.begin(), m_crew.persons.end(), person) != m_crew.persons.end();
}

void ShopCrew::addTo(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Sentence, text("shop.crew.sentence")));
    std::vector<SheetRow> rows;
    for (const auto& person : m_now.people) {
        if (person.left && !here(person.number)) {
            continue;
        }
        auto row = factRow(shownName(m_now, person.number, speech()),
                           here(person.number) ? text("shop.crew.here") : std::string{});
        row.id = toQString(std::string{kPerson} + std::to_string(person.number));
        row.chosen = here(person.number);
        rows.push_back(row);
    }
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("shop.crew.none"))
                                    : rowsBlock(SheetKinds::Rows, rows));
    page.blocks.append(
        rowsBlock(SheetKinds::Facts, {factRow(text("shop.crew.unnamed"), std::to_string(m_crew.unnamed))}));
    std::vector<ActionState> actions{pressOf("shop.crew.more", text("shop.crew.more"))};
    if (m_crew.unnamed > 0) {
        actions.push_back(pressOf("shop.crew.fewer", text("shop.crew.fewer")));
    }
    page.blocks.append(pressBlock(actions));
}

bool ShopCrew::act(const std::string& id) {
    auto crew = m_crew;
    if (id == "shop.crew.more" && crew.unnamed < kMostUnnamed) {
        ++crew.unnamed;
        change(std::move(crew));
    } else if (id == "shop.crew.fewer" && crew.unnamed > 0) {
        --crew.unnamed;
        change(std::move(crew));
    } else if (const auto person = restOf(id, kPerson)) {
        toggle(std::atoll(person->c_str()));
    } else {
        return false;
    }
    return true;
}

bool ShopCrew::badge(std::int64_t number) {
    const auto badge = shop::badgeRead(number, m_now.people);
    const auto found = std::find_if(m_now.people.begin(), m_now.people.end(),
                                    [&](const auto& one) { return badge && one.number == badge->person; });
    if (!badge || badge->replaced || found->left) {
        const auto cause = !badge            ? shop::SignInCause::personUnknown
                           : badge->replaced ? shop::SignInCause::badgeReplaced
                                             : shop::SignInCause::personLeft;
        const auto name = badge ? shownName(m_now, badge->person, speech()) : std::string{};
        needs().tell({wording::sentence(shop::SignInRefusal{cause, {}, {}}, shop::Right::logTests, name, speech()),
                      text("shop.crew.unchanged"), text("shop.crew.sentence")});
        return true;
    }
    toggle(badge->person);
    return true;
}

void ShopCrew::toggle(std::int64_t person) {
    auto crew = m_crew;
    if (here(person)) {
        crew.persons.erase(std::remove(crew.persons.begin(), crew.persons.end(), person), crew.persons.end());
    } else {
        crew.persons.push_back(person);
    }
    change(std::move(crew));
}

/// Shown at once, so that the next press counts on it; put back by the book's if it was not kept.
void ShopCrew::change(records::CrewChanged crew) {
    m_crew = crew;
    needs().keep({{std::move(crew)}}, [this](const std::optional<ledger::Failure>& failure) {
        if (failure) {
            tell(*failure);
            reload();
        }
    });
}

} // namespace holdfast::kiosk::screens
