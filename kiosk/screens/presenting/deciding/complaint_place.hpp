#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/screens/presenting/deciding/complaint_form.hpp"
#include "kiosk/screens/presenting/deciding/complaint_way.hpp"
#include "kiosk/screens/presenting/deciding/deciding_links.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"

#include <memory>

namespace holdfast::kiosk::screens {

/// Complaint: what customers say, tied to a run and lot, answered in the owner's order, closed with a signed finding.
class ComplaintPlace final : public SheetPlace {
public:
    ComplaintPlace(PlaceNeeds needs, std::shared_ptr<const DecidingLinks> links)
        : m_needs{std::move(needs)}, m_links{std::move(links)} {}

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    [[nodiscard]] bool isWriting() const override;

    /// By id; empty: the list.
    void showComplaint(const std::string& complaint);

private:
    void failed(const ledger::Failure& failure) const;
    bool mayTurn();
    void choose(const std::string& complaint);
    void open(std::unique_ptr<HoldsPage> page);
    void startForm(shop::deciding::ComplaintDraft draft, bool closed);
    void startNew();
    void startChange(bool tie);
    void startFinding();
    void showCauses();
    bool actOnChosen(const std::string& id);
    void addList(SheetPageState& page) const;
    [[nodiscard]] LotSpeech how() const { return {m_needs.speech(), m_needs.clock->wall().utcOffsetMinutes}; }
    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return m_needs.speech().text(key, arguments);
    }

    PlaceNeeds m_needs;
    std::shared_ptr<const DecidingLinks> m_links;
    std::vector<records::ComplaintRow> m_rows;
    bool m_closedToo = false;
    std::unique_ptr<ComplaintWay> m_way;       ///< of the complaint chosen; null: none is
    std::unique_ptr<ComplaintWay> m_wayBefore; ///< it may still be answering
    shop::PeopleNow m_people;
    std::unique_ptr<HoldsPage> m_page;
    std::unique_ptr<HoldsPage> m_closed; ///< it may still be answering
    std::string m_said;
};

} // namespace holdfast::kiosk::screens
