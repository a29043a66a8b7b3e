#include "kiosk/screens/presenting/places/shop_settings.hpp"

#include "kiosk/records/queries.hpp"
#include "kiosk/shop/planning/habits.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kChoice = "shop.settings.choose.";
constexpr std::string_view kSettingField = "shop.settings.";

} // namespace

void ShopSettings::reload() {
    m_values.clear();
    m_starters.clear();
    for (const auto& row : shop::kSettings) {
        const auto value = records::setting(needs().book->reader(), row.key);
        if (!value) {
            tell(value.error());
            return;
        }
        auto& typed = m_values[std::string{row.key}];
        typed = *value                                 ? shop::typedSetting(**value)
                : row.kind == shop::SettingKind::names ? shop::starterHabit(row.key)
                                                       : std::string{row.choices.front()};
        if (!*value) {
            m_starters.insert(std::string{row.key});
        }
    }
}

void ShopSettings::addTo(SheetPageState& page) const {
    std::vector<SheetField> fields;
    for (const auto& row : shop::kSettings) {
        const std::string key{row.key};
        const auto found = m_values.find(key);
        auto value = found == m_values.end() ? std::string{} : found->second;
        const auto label = text("shop.settings." + key);
        if (row.kind == shop::SettingKind::choice) {
            std::vector<Choice> choices;
            for (const auto& choice : row.choices) {
                const auto name = key + "." + std::string{choice};
                choices.push_back({std::string{kChoice} + name, text("shop.settings." + name)});
            }
            page.blocks.append(choicesBlock(label, choices, std::string{kChoice} + key + "." + value));
            continue;
        }
        auto field =
            fieldOf(std::string{kSettingField} + key, label, value, text("shop.settings.hint." + key),
                    row.kind == shop::SettingKind::number || row.kind == shop::SettingKind::count ? SheetKinds::Number
                                                                                                  : SheetKinds::Text);
        if (m_refused && m_refused->key == key) {
            field.value = toQString(m_refused->typed);
            field.fault = toQString(wording::sentence(m_refused->fault, speech()));
        }
        if (row.kind == shop::SettingKind::names) {
            addNames(page, key, field);
        } else {
            fields.push_back(field);
        }
    }
    page.blocks.append(fieldsBlock(fields));
    page.blocks.append(textBlock(SheetKinds::Note, text("shop.settings.note")));
}

/// With its mark: whose figures they are.
void ShopSettings::addNames(SheetPageState& page, const std::string& key, const SheetField& field) const {
    page.blocks.append(fieldsBlock({field}));
    page.blocks.append(textBlock(
        SheetKinds::Note, text(m_starters.count(key) > 0 ? "shop.settings.names-starter" : "shop.settings.names-own")));
}

bool ShopSettings::act(const std::string& id) {
    const auto rest = restOf(id, kChoice);
    const auto point = rest ? rest->find('.') : std::string::npos;
    if (point == std::string::npos) {
        return false;
    }
    change(rest->substr(0, point), rest->substr(point + 1));
    return true;
}

bool ShopSettings::enter(const std::string& field, const std::string& typed) {
    const auto key = restOf(field, kSettingField);
    if (!key || shop::settingNamed(*key) == nullptr) {
        return false;
    }
    change(*key, typed);
    return true;
}

void ShopSettings::change(const std::string& key, const std::string& typed) {
    m_refused.reset();
    auto changed = shop::settingFrom(key, typed);
    if (!changed) {
        m_refused = Refused{key, typed, changed.error()};
        return;
    }
    const auto write = [this, record = *changed](std::int64_t person) {
        // Each press is written, also one that comes before the answer to the one before.
        needs().keep({{record}, person}, [this](const std::optional<ledger::Failure>& failure) {
            if (failure) {
                tell(*failure);
            }
            reload();
        });
    };
    if (shop::settingNamed(key)->toBeSigned) {
        needs().sign(shop::Right::changeSettings, write);
    } else {
        write(0);
    }
}

} // namespace holdfast::kiosk::screens
