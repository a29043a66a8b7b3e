#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/shop/deciding/complaint.hpp"

namespace holdfast::kiosk::screens {

/// A complaint while it is taken or changed. Ids begin with "complaint.".
class ComplaintForm final : public HoldsPage {
public:
    /// `closed`: a finding was signed, so that it can no longer be changed. `done` is given the complaint's number in a
    /// sentence.
    ComplaintForm(const PlaceNeeds& needs, Done done, shop::deciding::ComplaintDraft draft, bool closed);

    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// A ticket, print or bin ties it to its run and lot.
    bool scanned(const drivers::TicketCode& code) override;
    [[nodiscard]] bool isWriting() const override { return m_touched; }
    [[nodiscard]] const std::string& complaint() const noexcept {
        return m_draft.complaint.empty() ? m_ids.complaint : m_draft.complaint;
    }

private:
    [[nodiscard]] shop::deciding::ComplaintFacts facts() const;
    void tie(const std::string& run, const std::optional<std::string>& lot);
    void lookUp(const std::string& clue);
    void takePictures();
    void keepIt(std::int64_t person);
    void addFields(SheetPageState& page) const;
    void addTie(SheetPageState& page) const;
    void addEffect(SheetPageState& page) const;
    void addPictures(SheetPageState& page) const;
    [[nodiscard]] const records::LotRow* lotRow(const std::string& lot) const;

    shop::deciding::ComplaintDraft m_draft;
    shop::deciding::ComplaintIds m_ids;
    bool m_closed = false;
    bool m_touched = false;
    std::vector<records::ClueRow> m_found;
    std::string m_runTitle;
    std::vector<records::LotRow> m_lots; ///< of the run it is tied to
    std::vector<ledger::BlobDraft> m_blobs;
    std::vector<std::filesystem::path> m_files; ///< taken; put aside once they stand in the book
    std::string m_said;
};

} // namespace holdfast::kiosk::screens
