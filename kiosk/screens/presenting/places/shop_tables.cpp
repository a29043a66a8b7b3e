#include "kiosk/screens/presenting/places/shop_tables.hpp"

#include "kiosk/wording/keeping_sentences.hpp"

namespace holdfast::kiosk::screens {

void ShopRoles::addTo(SheetPageState& page) const {
    std::vector<SheetRow> rows;
    for (const auto& row : shop::kRights) {
        std::string roles;
        for (const auto role : shop::rolesFor(row.right)) {
            roles += (roles.empty() ? "" : ", ") + wording::word(role, speech());
        }
        rows.push_back(factRow(wording::word(row.right, speech()), roles));
    }
    page.blocks.append(rowsBlock(SheetKinds::Facts, rows));
    page.blocks.append(textBlock(SheetKinds::Note, text("shop.roles-note")));
}

void ShopCards::addTo(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Sentence, text("shop.cards.sentence")));
    page.actions.append(pressOf("shop.cards.print", text("shop.cards.print"), true));
}

bool ShopCards::act(const std::string& id) {
    if (id != "shop.cards.print") {
        return false;
    }
    needs().print({PrintWish::What::actionCards, 0});
    return true;
}

} // namespace holdfast::kiosk::screens
