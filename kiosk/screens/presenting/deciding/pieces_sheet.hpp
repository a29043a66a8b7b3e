#pragma once

#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/shop/deciding/pieces.hpp"

namespace holdfast::kiosk::screens {

/// The pieces of a lot: where they went, what was counted; each entry put right by a further one. Ids begin with
/// "holds.pieces.".
class PiecesSheet final : public HoldsPage {
public:
    PiecesSheet(const PlaceNeeds& needs, Done done, LotShown lot)
        : HoldsPage{needs, std::move(done)}, m_lot{std::move(lot)} {}

    void reload() override;
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    [[nodiscard]] bool isWriting() const override { return m_move || m_count; }

private:
    void keepMove();
    void keepCount();
    void kept(const std::string& said);
    void addMoveForm(SheetPageState& page) const;
    void addCountForm(SheetPageState& page) const;
    void addMoves(SheetPageState& page) const;
    void addCounts(SheetPageState& page) const;
    void addHistory(SheetPageState& page) const;
    [[nodiscard]] const shop::deciding::MoveHistory* shownHistory() const;

    LotShown m_lot;
    std::vector<shop::deciding::MoveHistory> m_histories = shop::deciding::historiesOf(m_lot.moves);
    std::optional<shop::deciding::MoveDraft> m_move;
    std::optional<shop::deciding::CountDraft> m_count;
    std::string m_entry; ///< id of the entry whose history is shown
    std::string m_said;
};

} // namespace holdfast::kiosk::screens
