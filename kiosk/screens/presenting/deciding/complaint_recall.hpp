#pragma once

#include "kiosk/reports/recall_list.hpp"
#include "kiosk/screens/presenting/deciding/holds_page.hpp"

namespace holdfast::kiosk::screens {

/// Whom to call about the lots that share what a complaint is about: by customer and carton, for the printer and as a
/// file. Ids begin with "complaint.recall.".
class ComplaintRecall final : public HoldsPage {
public:
    ComplaintRecall(const PlaceNeeds& needs, std::int64_t complaint, std::vector<std::string> lots);

    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;

private:
    void writeFile();
    void addCustomer(SheetPageState& page, const reports::RecallCustomer& customer) const;

    std::int64_t m_complaint = 0; ///< its number
    std::vector<std::string> m_lots;
    std::optional<reports::RecallList> m_list; ///< absent: the book could not be read
    std::string m_said;
};

} // namespace holdfast::kiosk::screens
