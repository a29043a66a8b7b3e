#pragma once

#include "kiosk/screens/presenting/deciding/deciding_links.hpp"
#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"

#include <memory>

namespace holdfast::kiosk::screens {

/// Holds: what is on hold and why, who may decide, the signed decision; the pieces, the quarantine, recalls.
class HoldsPlace final : public SheetPlace {
public:
    HoldsPlace(PlaceNeeds needs, std::shared_ptr<const DecidingLinks> links)
        : m_needs{std::move(needs)}, m_links{std::move(links)} {}

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// A bin's label leads to its hold from everywhere; a bucket's only into a mock recall.
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    [[nodiscard]] bool isWriting() const override { return m_page && m_page->isWriting(); }

    /// A lot that may not be on the list.
    void showLot(const std::string& lot);

private:
    struct ListedLot final {
        records::LotRow row{};
        std::int64_t runNumber = 0;
        std::string title{};
    };

    void failed(const ledger::Failure& failure) const;
    bool chooseBin(std::int64_t bin);
    void choose(const std::string& lot, const std::string& hold);
    void chooseFirst();
    [[nodiscard]] std::vector<ListedLot> unprovenLots() const;
    [[nodiscard]] std::vector<std::string> earlierReasons() const;
    void open(std::unique_ptr<HoldsPage> page);
    void close(const std::string& said);
    bool mayTurn();
    bool actOnPage(const std::string& id);
    bool actOnList(const std::string& id);
    bool actOnLot(const std::string& id);
    void decide(bool unproven);
    void showReading(const std::string& reading);
    void showCause(const std::string& hold);
    void addList(SheetPageState& page) const;
    void addChosen(SheetPageState& page) const;
    void addActions(SheetPageState& page) const;
    [[nodiscard]] SheetRow rowOf(const records::HoldRow& hold) const;
    /// Short: a hold is seldom older than a year.
    [[nodiscard]] std::string day(std::int64_t at) const;
    [[nodiscard]] LotSpeech how() const { return {m_needs.speech(), m_needs.clock->wall().utcOffsetMinutes}; }
    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return m_needs.speech().text(key, arguments);
    }

    PlaceNeeds m_needs;
    std::shared_ptr<const DecidingLinks> m_links;
    std::vector<records::HoldRow> m_open;     ///< undecided, oldest first
    std::vector<records::HeldLot> m_heldBare; ///< on hold for a reading or test that placed no hold
    std::vector<ListedLot> m_unproven;
    std::optional<LotShown> m_lot; ///< the chosen one
    std::string m_hold;            ///< id of the chosen one; empty: the lot itself
    bool m_byItself = false;       ///< nobody chose it: it is the first of the list
    std::unique_ptr<HoldsPage> m_page;
    std::unique_ptr<HoldsPage> m_closed; ///< it may still be answering
    std::string m_said;
};

} // namespace holdfast::kiosk::screens
