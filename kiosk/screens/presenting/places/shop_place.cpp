#include "kiosk/screens/presenting/places/shop_place.hpp"

#include "kiosk/screens/presenting/places/shop_book.hpp"
#include "kiosk/screens/presenting/places/shop_crew.hpp"
#include "kiosk/screens/presenting/places/shop_dryers.hpp"
#include "kiosk/screens/presenting/places/shop_exchange.hpp"
#include "kiosk/screens/presenting/places/shop_people.hpp"
#include "kiosk/screens/presenting/places/shop_settings.hpp"
#include "kiosk/screens/presenting/places/shop_tables.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kSection = "shop.section.";

} // namespace

ShopPlace::ShopPlace(PlaceNeeds needs) : m_needs{std::move(needs)} {
    m_sections.push_back({"settings", std::make_unique<ShopSettings>(m_needs)});
    m_sections.push_back({"dryers", std::make_unique<ShopDryers>(m_needs)});
    m_sections.push_back({"crew", std::make_unique<ShopCrew>(m_needs)});
    m_sections.push_back({"people", std::make_unique<ShopPeople>(m_needs)});
    m_sections.push_back({"roles", std::make_unique<ShopRoles>(m_needs)});
    m_sections.push_back({"cards", std::make_unique<ShopCards>(m_needs)});
    m_sections.push_back({"book", std::make_unique<ShopBook>(m_needs)});
    m_sections.push_back({"file", std::make_unique<ShopExchange>(m_needs)});
}

ShopSection* ShopPlace::sectionNow() const {
    const auto found =
        std::find_if(m_sections.begin(), m_sections.end(), [&](const auto& one) { return one.name == m_now; });
    return found == m_sections.end() ? nullptr : found->section.get();
}

void ShopPlace::open(const std::string& name) {
    m_now = name;
    reload();
}

void ShopPlace::reload() {
    if (auto* section = sectionNow()) {
        section->reload();
    }
}

SheetPageState ShopPlace::sheet() const {
    SheetPageState page;
    page.heading = toQString(m_needs.speech().text("shop.heading"));
    for (const auto& one : m_sections) {
        SheetRow row;
        row.id = toQString(std::string{kSection} + one.name);
        row.title = toQString(m_needs.speech().text(std::string{kSection} + one.name));
        row.chosen = one.name == m_now;
        page.list.append(row);
    }
    page.back = pressOf("shop.back", m_needs.speech().text("shop.back"));
    if (const auto* section = sectionNow()) {
        page.title = toQString(m_needs.speech().text(std::string{kSection} + m_now));
        page.detailOnly = true;
        section->addTo(page);
    } else {
        page.blocks.append(textBlock(SheetKinds::Sentence, m_needs.speech().text("shop.pick")));
    }
    return page;
}

bool ShopPlace::act(const std::string& id) {
    if (id == "shop.back") {
        m_now.clear();
        return true;
    }
    if (const auto name = restOf(id, kSection)) {
        open(*name);
        return true;
    }
    auto* section = sectionNow();
    return section != nullptr && section->act(id);
}

bool ShopPlace::enter(const std::string& field, const std::string& text) {
    auto* section = sectionNow();
    return section != nullptr && section->enter(field, text);
}

bool ShopPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    if (code.kind != drivers::TicketKind::person) {
        return false;
    }
    const auto number = static_cast<std::int64_t>(code.number);
    if (onScreen && sectionNow() != nullptr) {
        return sectionNow()->badge(number);
    }
    open("crew");
    return sectionNow()->badge(number);
}

bool ShopPlace::isWriting() const {
    return std::any_of(m_sections.begin(), m_sections.end(), [](const auto& one) { return one.section->isWriting(); });
}

void ShopPlace::tick() {
    if (auto* section = sectionNow()) {
        section->tick();
    }
}

} // namespace holdfast::kiosk::screens
