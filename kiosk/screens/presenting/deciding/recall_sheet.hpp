#pragma once

#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/shop/deciding/recall.hpp"

namespace holdfast::kiosk::screens {

inline constexpr std::string_view kHoldsReached = "holds.reached."; ///< then the run's id

/// A recall by customer and carton: of one lot, or, as a mock recall, of an ink batch or bucket and everything it went
/// into, timed from the scan. Ids begin with "holds.recall.".
class RecallSheet final : public HoldsPage {
public:
    /// Of one lot.
    RecallSheet(const PlaceNeeds& needs, Done done, LotShown lot);
    /// A mock recall.
    RecallSheet(const PlaceNeeds& needs, Done done) : HoldsPage{needs, std::move(done)} {}

    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// A bucket starts the mock recall.
    bool scanned(const drivers::TicketCode& code) override;

private:
    void recallBatch(const std::string& batch);
    void recallBucket(std::int64_t number);
    void finish(const ledger::Result<std::vector<records::ReachedCarton>>& reached, drivers::MonotonicTime since,
                const std::string& of);
    void writeFile();
    void addList(SheetPageState& page) const;
    void addMock(SheetPageState& page) const;

    std::optional<LotShown> m_lot; ///< absent: a mock recall
    std::optional<shop::deciding::MockRecall> m_found;
    std::string m_batch;
    std::int64_t m_bucket = 0; ///< 0: it was of a batch
    std::string m_of;          ///< what it was of, in words
    std::string m_said;
};

} // namespace holdfast::kiosk::screens
