#pragma once

#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/shop/trending/causes.hpp"

namespace holdfast::kiosk::screens {

/// The causes of print failure, what decides each, and how often signed findings named it. Ids begin with
/// "complaint.cause.".
class ComplaintCauses final : public HoldsPage {
public:
    /// `open` shows a complaint by its id.
    ComplaintCauses(const PlaceNeeds& needs, std::function<void(const std::string& complaint)> open);
    ~ComplaintCauses() override;

    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;

private:
    struct Found final {
        records::TrendFacts facts{};
        shop::trending::CauseTable table{};
    };
    void addRow(SheetPageState& page, const shop::trending::CauseRow& row) const;

    std::function<void(const std::string&)> m_open;
    std::shared_ptr<const Found> m_found;
    std::int64_t m_sequence = -1; ///< newest entry when it was asked for
    bool m_working = false;
    std::stop_source m_stop{std::nostopstate};
    std::shared_ptr<bool> m_alive = std::make_shared<bool>(true);
    std::string m_chosen; ///< name of the cause whose complaints are shown
};

} // namespace holdfast::kiosk::screens
