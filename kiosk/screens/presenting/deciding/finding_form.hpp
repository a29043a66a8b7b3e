#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/shop/deciding/complaint.hpp"

namespace holdfast::kiosk::screens {

/// What a complaint came to, signed. Ids begin with "complaint.finding".
class FindingForm final : public HoldsPage {
public:
    FindingForm(const PlaceNeeds& needs, Done done, records::ComplaintRow row)
        : HoldsPage{needs, std::move(done)}, m_row{std::move(row)} {}

    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    [[nodiscard]] bool isWriting() const override { return m_touched; }

private:
    [[nodiscard]] bool isClosed() const;
    void sign(std::int64_t person);

    records::ComplaintRow m_row;
    shop::deciding::FindingDraft m_draft;
    bool m_touched = false;
};

} // namespace holdfast::kiosk::screens
