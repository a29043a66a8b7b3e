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

    /// What only the frame notices.
    struct Tells final {
        /// A badge was scanned where nothing asks for one; nothing came of it.
        std::function<void()> badgeUnasked{};
        /// The screen went to something else, and what is half typed in that place is kept.
        std::function<void(const std::string& place)> keptBehind{};
    };
    void tellBy(Tells tells) { m_tells = std::move(tells); }

    /// In the order of the bar; the first added comes first. One that is not in the bar is shown by open() or cover().
    void add(std::string id, std::unique_ptr<SheetPlace> place, bool inBar = true);
    [[nodiscard]] bool has(const std::string& id) const { return m_places.find(id) != m_places.end(); }
    [[nodiscard]] const std::vector<std::string>& bar() const noexcept { return m_bar; }

    /// False if there is no such place.
    bool open(const std::string& id);
    /// Lays a place over the one that stands there, until uncover() brings that back.
    void cover(const std::string& id);
    void uncover();
    /// By a press: who presses knows what stays behind.
    void leave() { turnTo({}, false); }
    /// By a scan.
    void close() { turnTo({}, true); }
    /// Empty: none of these stands on the screen.
    [[nodiscard]] const std::string& now() const noexcept { return m_now; }

    /// An action's id; "field.…" opens the pad on that field of the sheet.
    bool act(const std::string& id, const wording::Speech& speech);
    bool enter(const std::string& field, const std::string& text);
    /// The place on the screen is asked first. A badge that it does not ask for goes to no other: nothing changes
    /// behind what somebody looks at.
    bool scanned(const drivers::TicketCode& code);
    /// The place on the screen reads its lists again.
    void reload();
    void tick();
    /// Hands the sheet to the model; nothing if none stands on the screen.
    void show();

private:
    [[nodiscard]] SheetPlace* placeNow() const { return placeNamed(m_now); }
    [[nodiscard]] SheetPlace* placeNamed(const std::string& id) const;
    void turnTo(const std::string& id, bool byScan);
    void openPad(const std::string& field, const wording::Speech& speech);

    KioskModel& m_model;
    Tells m_tells;
    std::map<std::string, std::unique_ptr<SheetPlace>> m_places;
    std::vector<std::string> m_order;
    std::vector<std::string> m_bar;
    std::string m_cover; ///< what was laid over another last
    std::string m_under; ///< what it lies over
    std::string m_now;
    std::string m_padOf; ///< on whose field the pad was opened last
};

} // namespace holdfast::kiosk::screens
