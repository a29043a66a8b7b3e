#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/screens/presenting/deciding/deciding_links.hpp"
#include "kiosk/screens/presenting/deciding/lot_blocks.hpp"
#include "kiosk/screens/presenting/deciding/reading_sheet.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"
#include "kiosk/shop/tracing/trace_page.hpp"

#include <memory>

namespace holdfast::kiosk::screens {

/// The auditor's page: from any clue to everything about one run. Ids begin with "trace.".
class TracePlace final : public SheetPlace {
public:
    TracePlace(PlaceNeeds needs, std::shared_ptr<const DecidingLinks> links)
        : m_needs{std::move(needs)}, m_links{std::move(links)} {}

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// On the screen any ticket, bucket, print or bin is a clue.
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    [[nodiscard]] bool isWriting() const override { return m_reading && m_reading->isWriting(); }

    /// By id; empty: asks for a clue.
    void showRun(const std::string& run);

private:
    void failed(const ledger::Failure& failure) const;
    void ask(const std::string& clue);
    void load(const std::string& run);
    void showReading(const std::string& reading);
    void showPrint(const std::string& print);
    void addList(SheetPageState& page) const;
    void addSum(SheetPageState& page) const;
    void addOrder(SheetPageState& page) const;
    void addPeople(SheetPageState& page) const;
    void addBatches(SheetPageState& page) const;
    void addRetained(SheetPageState& page) const;
    void addPictures(SheetPageState& page) const;
    void addTrail(SheetPageState& page) const;
    void addNotTested(SheetPageState& page) const;
    void addBook(SheetPageState& page) const;
    [[nodiscard]] TrailEntry entryOf(const shop::tracing::TrailLine& line) const;
    [[nodiscard]] LotSpeech how() const { return {m_needs.speech(), m_needs.clock->wall().utcOffsetMinutes}; }
    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return m_needs.speech().text(key, arguments);
    }

    PlaceNeeds m_needs;
    std::shared_ptr<const DecidingLinks> m_links;
    std::string m_clue; ///< as typed or scanned
    std::vector<records::ClueRow> m_found;
    std::optional<shop::tracing::TraceFacts> m_facts;
    shop::tracing::TracePage m_page;
    shop::PeopleNow m_people;
    std::unique_ptr<ReadingSheet> m_reading;
    std::unique_ptr<ReadingSheet> m_closed; ///< it may still be answering
    std::string m_said;
    bool m_handingOn = false; ///< a code goes to another place
};

} // namespace holdfast::kiosk::screens
