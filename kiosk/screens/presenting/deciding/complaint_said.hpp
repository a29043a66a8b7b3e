#pragma once

#include "kiosk/records/complaint_versions.hpp"
#include "kiosk/screens/presenting/deciding/holds_page.hpp"

namespace holdfast::kiosk::screens {

/// What was said about a complaint, with its pictures, and how it stood before each change. Ids begin with
/// "complaint.".
class ComplaintSaid final : public HoldsPage {
public:
    ComplaintSaid(const PlaceNeeds& needs, records::ComplaintRow row);

    void reload() override;
    void addTo(SheetPageState& page) const override;

private:
    [[nodiscard]] TrailEntry entryOf(std::size_t at) const;
    [[nodiscard]] std::vector<std::string> linesOf(const records::ComplaintTaken& taken,
                                                   const records::ComplaintTaken* before) const;
    void addFacts(SheetPageState& page) const;
    void addPictures(SheetPageState& page) const;
    void addHistory(SheetPageState& page) const;
    [[nodiscard]] std::string runText(const records::ComplaintTaken& taken) const;
    [[nodiscard]] std::string lotText(const records::ComplaintTaken& taken) const;

    records::ComplaintRow m_row;
    std::vector<records::ComplaintVersion> m_versions; ///< oldest first
    shop::PeopleNow m_people;
};

} // namespace holdfast::kiosk::screens
