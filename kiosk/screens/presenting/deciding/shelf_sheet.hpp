#pragma once

#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/shop/deciding/shelf.hpp"

namespace holdfast::kiosk::screens {

/// The red bins of all open holds that have one, lowest number first.
[[nodiscard]] std::vector<shop::deciding::Bin> binsOf(const std::vector<records::HoldRow>& open);

/// The quarantine, ticked off against the shelf. Ids begin with "holds.shelf.".
class ShelfSheet final : public HoldsPage {
public:
    ShelfSheet(const PlaceNeeds& needs, Done done) : HoldsPage{needs, std::move(done)} { reload(); }

    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    [[nodiscard]] bool isWriting() const override { return !m_draft.found.empty(); }
    /// A bin's label ticks it off.
    bool scanned(const drivers::TicketCode& code) override;

private:
    void keepCount(std::int64_t person);
    void addTicks(SheetPageState& page) const;
    void addCounts(SheetPageState& page) const;
    void addLast(SheetPageState& page) const;

    std::vector<records::HoldRow> m_open;
    std::vector<shop::deciding::Bin> m_bins;
    std::optional<records::ShelfCountRow> m_last;
    shop::PeopleNow m_people;
    shop::deciding::ShelfDraft m_draft;
};

} // namespace holdfast::kiosk::screens
