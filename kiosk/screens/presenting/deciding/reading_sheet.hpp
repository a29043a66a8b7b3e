#pragma once

#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/screens/presenting/deciding/reading_blocks.hpp"
#include "kiosk/shop/deciding/striking.hpp"

namespace holdfast::kiosk::screens {

/// One reading with its trace, its reasons, and the press that strikes it. Ids begin with "holds.strike".
class ReadingSheet final : public HoldsPage {
public:
    ReadingSheet(const PlaceNeeds& needs, Done done, records::ReadingRow row);

    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    [[nodiscard]] bool isWriting() const override { return m_striking; }

private:
    [[nodiscard]] shop::deciding::StrikeFacts facts() const;
    [[nodiscard]] shop::deciding::StrikeDraft draft() const;
    [[nodiscard]] bool isSeen() const;
    void strike();
    void signedBy(std::int64_t person);
    void addVerdict(SheetPageState& page) const;
    /// As it was judged before, newest first.
    void addVersions(SheetPageState& page) const;

    records::ReadingRow m_row;
    std::optional<records::ReadingTaken> m_taken;
    std::vector<ledger::TracePoint> m_points;
    std::vector<records::ReadingVersion> m_versions; ///< oldest first
    bool m_striking = false;
    std::optional<records::StruckCause> m_cause;
};

} // namespace holdfast::kiosk::screens
