#pragma once

#include "kiosk/screens/presenting/floor/floor_typed.hpp"
#include "kiosk/screens/presenting/floor_facts.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"
#include "kiosk/shop/proving/proving_events.hpp"

namespace holdfast::kiosk::screens {

/// What the floor's sheets may ask of the frame around them. All of it outlives the place; main thread only.
struct FloorNeeds final {
    std::function<const shop::ProvingState&()> floor{};
    std::function<const FloorFacts&()> facts{};
    std::function<const wording::Speech&()> speech{};
    std::function<void(const shop::ProvingEvent&)> send{};
    std::function<void(const std::string& place)> go{};
};

/// Every other way of reading (how the next ride is taken, spot, gun, strip, flash), the dryer with what is on its
/// belt, and the hand-over. Nothing of it is kept here but which sheet stands there and texts that are no figures.
class FloorPlace final : public SheetPlace {
public:
    explicit FloorPlace(FloorNeeds needs) : m_needs{std::move(needs)} {}

    void reload() override {}
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    bool scanned(const drivers::TicketCode&, bool) override { return false; } // the proving desk reads the codes

    void showRide() { m_page = Page::ride; }
    void showDryer() { m_page = Page::dryer; }
    void showHandOver() { m_page = Page::handOver; }

private:
    enum class Page { ride, dryer, handOver };

    [[nodiscard]] QList<SheetRow> list() const;
    bool turnTo(const std::string& id);
    bool actOnRide(const std::string& id);
    bool actOnTyped(const std::string& id);
    void leaveEntry();
    void turnBelt(double metresPerMinute);
    void turnSetPoint(const analytics::AuthoredTemperature& setPoint);
    void pull(const std::string& field, const std::string& text);
    void count(const std::string& field, const std::string& text, double figure);

    FloorNeeds m_needs;
    Page m_page = Page::ride;
    bool m_listShown = false; ///< portrait: the list instead of the sheet
    FloorTyped m_typed;
};

} // namespace holdfast::kiosk::screens
