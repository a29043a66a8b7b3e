#pragma once

#include "kiosk/screens/presenting/deciding/complaint_study.hpp"
#include "kiosk/screens/presenting/deciding/holds_page.hpp"
#include "kiosk/shop/deciding/judged_now.hpp"
#include "kiosk/shop/deciding/risk_hold.hpp"

#include <memory>
#include <set>
#include <vector>

namespace holdfast::kiosk::screens {

/// A run that what is known of the complaint may mean, and by what.
struct RunFitting final {
    records::ClueRow run{};
    std::vector<records::ClueHit> by{}; ///< each once; empty: it is the one that the complaint is tied to
};

/// A complaint answered in the owner's order: the clue and the runs that fit; the run, and whether it is ours; what
/// else is at risk; what to do today; only then why and since when, and whether a fix worked. Ids begin with
/// "complaint.".
class ComplaintWay final : public HoldsPage {
public:
    ComplaintWay(const PlaceNeeds& needs, records::ComplaintRow row);
    ~ComplaintWay() override;

    /// The complaint as it stands now.
    void renew(records::ComplaintRow row, shop::PeopleNow people);
    void addTo(SheetPageState& page) const override;
    bool act(const std::string& id) override;

    [[nodiscard]] const records::ComplaintRow& row() const noexcept { return m_row; }
    /// Id of the run looked at; empty: none yet.
    [[nodiscard]] const std::string& run() const noexcept { return m_run; }
    /// Id of the lot asked about; empty while it is not known.
    [[nodiscard]] std::string lot() const;
    /// Ids; empty while it is not worked out.
    [[nodiscard]] std::vector<std::string> lotsAtRisk() const;

private:
    using AtRisk = shop::trending::AtRisk;
    using LotAtRisk = shop::trending::LotAtRisk;

    void findRuns();
    void look(const std::string& run);
    void readRun();
    void study(std::size_t suspect);
    void told(const std::shared_ptr<const RiskFound>& found, std::size_t suspect);
    void nextSuspect();
    void askToHold(std::vector<std::string> lots);
    void hold(const std::vector<std::string>& lots, std::int64_t person);
    [[nodiscard]] shop::deciding::LotToHold heldNow(const std::string& lot) const;

    [[nodiscard]] const AtRisk* risk() const { return m_found && m_found->risk ? &*m_found->risk : nullptr; }
    /// The strongest, or that none stands out, and the next ones after it.
    [[nodiscard]] std::size_t suspects() const;
    [[nodiscard]] bool canHold(const LotAtRisk& lot) const;
    [[nodiscard]] std::vector<std::string> holdable() const;
    [[nodiscard]] const records::TrendLot& lotOf(const LotAtRisk& lot) const;
    [[nodiscard]] std::string lotText(const char* key, records::FactIndex lot) const;

    void addClue(SheetPageState& page) const;
    void addFinding(SheetPageState& page) const;
    void addRun(SheetPageState& page) const;
    void addThenAndNow(SheetPageState& page) const;
    void addOurs(SheetPageState& page) const;
    void addAtRisk(SheetPageState& page) const;
    void addLots(SheetPageState& page) const;
    void addToday(SheetPageState& page) const;
    void addTonight(SheetPageState& page) const;
    void addWhy(SheetPageState& page) const;
    void addSince(SheetPageState& page) const;
    void addFix(SheetPageState& page) const;
    void addMore(SheetPageState& page) const;
    void addActions(SheetPageState& page) const;
    [[nodiscard]] SheetRow lotRow(const LotAtRisk& lot) const;
    [[nodiscard]] std::string lotDetail(const LotAtRisk& lot) const;
    [[nodiscard]] SheetBlock weighed(const std::vector<std::string>& speaksFor,
                                     const std::vector<std::string>& against) const;
    [[nodiscard]] std::string say(const char* key, const wording::Arguments& arguments = {}) const {
        return text(std::string{"holds.risk."} + key, arguments);
    }

    records::ComplaintRow m_row;
    shop::PeopleNow m_people;
    std::vector<RunFitting> m_fits;
    bool m_clueShown = false; ///< portrait: the runs that fit stand there instead of the answers

    std::string m_run; ///< id of the run looked at
    std::optional<records::RunPlanned> m_plan;
    std::vector<records::LotRow> m_lots;
    std::string m_dryer;
    std::optional<shop::deciding::ThenAndNow> m_thenAndNow;

    std::shared_ptr<const RiskFound> m_first; ///< by the strongest suspect
    std::shared_ptr<const RiskFound> m_found; ///< shown
    std::size_t m_suspect = 0;                ///< which of the suspects is shown
    bool m_working = false;
    bool m_stale = false;         ///< something new stands in the book
    std::int64_t m_sequence = -1; ///< newest entry that was read
    std::stop_source m_stop{std::nostopstate};
    std::shared_ptr<bool> m_alive = std::make_shared<bool>(true);

    std::string m_chosenLot; ///< id of the one to be held alone
    bool m_allLots = false;
    std::set<std::string> m_heldHere; ///< ids, since the facts were read
    std::optional<shop::deciding::RiskHoldFault> m_fault;
    std::string m_said;
};

} // namespace holdfast::kiosk::screens
