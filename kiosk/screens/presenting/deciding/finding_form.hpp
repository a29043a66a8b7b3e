#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/shop/deciding/complaint.hpp"
#include "kiosk/shop/trending/causes.hpp"

namespace holdfast::kiosk::screens {

/// What a complaint came to, signed: a cause of the table, with a remark, or one of its own. Ids begin with
/// "complaint.finding".
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
    /// As it is kept: the listed cause's word, a colon and the remark.
    [[nodiscard]] shop::deciding::FindingDraft draft() const;

    records::ComplaintRow m_row;
    shop::deciding::FindingDraft m_draft;             ///< its cause is what was typed
    std::optional<shop::trending::CureCause> m_cause; ///< of the table; absent: none was chosen
    bool m_touched = false;
};

} // namespace holdfast::kiosk::screens
