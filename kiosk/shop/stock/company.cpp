#include "kiosk/shop/stock/company.hpp"

namespace holdfast::kiosk::shop {

std::vector<Company> companyOf(const analytics::Ink& ink, const std::string& colour,
                               const std::vector<analytics::InkFamily>& families,
                               const std::vector<analytics::Fabric>& fabrics) {
    std::vector<Company> all;
    for (const auto& fabric : fabrics) {
        Company one;
        one.fabric = fabric.name;
        one.alone.fabric = fabric;
        one.alone.layers.push_back({colour, ink, std::nullopt});
        const auto window = analytics::windowOf(one.alone);
        if (!window) {
            continue;
        }
        one.window = *window;
        for (const auto& family : families) {
            if (window->state == analytics::WindowState::closed) {
                break;
            }
            auto both = one.alone;
            both.layers.push_back({{}, analytics::pureInk(family), std::nullopt});
            const auto shared = analytics::windowOf(both);
            const bool open = shared && shared->state == analytics::WindowState::open;
            (open ? one.with : one.notWith).push_back(family.name);
        }
        all.push_back(std::move(one));
    }
    return all;
}

} // namespace holdfast::kiosk::shop
