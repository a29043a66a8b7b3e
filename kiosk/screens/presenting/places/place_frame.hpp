#pragma once

#include "kiosk/screens/kiosk_model.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// Which of the places drawn as sheets stands on the screen, and the way of presses, typed texts and scans to it. Main
/// thread only.
class PlaceFrame final {
public:
    explicit PlaceFrame(KioskModel& model) : m_model{model} {}

    /// In the order of the bar; the first added comes first. One that is not in the bar is shown by open() or cover().
    void add(std::string id, std::unique_ptr<SheetPlace> place, bool inBar = true);
    [[nodiscard]] bool has(const std::string& id) const { return m_places.find(id) != m_places.end(); }
    [[nodiscard]] const std::vector<std::string>& bar() const noexcept { return m_bar; }

    /// False if there is no such place.
    bool open(const std::string& id);
    /// Lays a place over the one that stands there, until uncover() brings that back.
    void cover(const std::string& id);
    void uncover();
    void close() noexcept { m_now.clear(); }
    /// Empty: none of these stands on the screen.
    [[nodiscard]] const std::string& now() const noexcept { return m_now; }

    /// An action's id; "field.…" opens the pad on that field of the sheet.
    bool act(const std::string& id, const wording::Speech& speech);
    bool enter(const std::string& field, const std::string& text);
    /// The place on the screen is asked first.
    bool scanned(const drivers::TicketCode& code);
    /// The place on the screen reads its lists again.
    void reload();
    void tick();
    /// Hands the sheet to the model; nothing if none stands on the screen.
    void show();

private:
    [[nodiscard]] SheetPlace* placeNow() const;
    void openPad(const std::string& field, const wording::Speech& speech);

    KioskModel& m_model;
    std::map<std::string, std::unique_ptr<SheetPlace>> m_places;
    std::vector<std::string> m_order;
    std::vector<std::string> m_bar;
    std::string m_under; ///< what a cover lies over
    std::string m_now;
};

} // namespace holdfast::kiosk::screens
