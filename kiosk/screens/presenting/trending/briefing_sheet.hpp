#pragma once

#include "kiosk/reports/briefing_facts.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"

#include <memory>
#include <string>

namespace holdfast::kiosk::screens {

/// Press of Trends that leads here; TrendsPlace opens the sheet on it.
inline constexpr const char* kBriefingPress = "briefing.open";

/// The owner's week on one page: this week against the last thirteen, as it is also printed. A sheet within Trends,
/// worked out beside the screen. Ids begin with "briefing.".
class BriefingSheet final {
public:
    explicit BriefingSheet(PlaceNeeds needs) : m_needs{std::move(needs)} {}
    ~BriefingSheet();
    BriefingSheet(const BriefingSheet&) = delete;
    BriefingSheet& operator=(const BriefingSheet&) = delete;

    /// It was opened, or the book has grown: it is worked out again. What stood there stays until then.
    void reload();
    /// Head, blocks and presses; "briefing.back" among them, which is TrendsPlace's to answer.
    void addTo(SheetPageState& page) const;
    /// False if the id is none of its own.
    bool act(const std::string& id);
    /// It is on the screen no longer: what is being worked out is given up.
    void left();

private:
    using Found = std::shared_ptr<const reports::BriefingFacts>;

    void stop();
    void addWeek(SheetPageState& page) const;
    void addLists(SheetPageState& page) const;

    PlaceNeeds m_needs;
    Found m_found;
    bool m_busy = false;
    bool m_failed = false;
    std::stop_source m_stop{std::nostopstate};
};

} // namespace holdfast::kiosk::screens
