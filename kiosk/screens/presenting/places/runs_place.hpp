#pragma once

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/screens/presenting/places/order_import.hpp"
#include "kiosk/screens/presenting/places/runs_form.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"

namespace holdfast::kiosk::screens {

inline constexpr std::string_view kRunsPick = "runs.pick."; ///< then the run's id

/// Runs: what is planned, what is finished, the plan of one, and order lists.
class RunsPlace final : public SheetPlace {
public:
    explicit RunsPlace(PlaceNeeds needs) : m_needs{std::move(needs)} {}

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// A bucket goes on the layer that is chosen in the form.
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    [[nodiscard]] bool isWriting() const override;

private:
    /// How a chosen run is being finished.
    struct Finishing final {
        std::string made{};
        std::string spoiled{};
        bool tried = false; ///< what is no count is told at its field
    };

    bool actOnRun(const std::string& id);
    bool actOnForm(const std::string& id);
    void choose(const std::string& run);
    void startForm(shop::PlanDraft draft);
    void startImport();
    void savePlan();
    void finish();
    void importPlans();
    void keep(std::vector<records::Record> list, std::function<void()> done);
    [[nodiscard]] tl::expected<shop::StockBucket, shop::PlanFault> bucketOnFile(std::int64_t number,
                                                                                bool closedToo) const;
    [[nodiscard]] bool isFormShown() const { return m_form && !m_aside; }
    void addPlan(SheetPageState& page) const;
    void addFinishing(SheetPageState& page) const;
    struct PieceCount final {
        bool readable = true;
        std::optional<int> value{}; ///< absent: nothing was typed
    };
    [[nodiscard]] static PieceCount pieceCount(const std::string& typed);
    [[nodiscard]] SheetRow rowOf(const records::RunRow& row) const;
    [[nodiscard]] std::string text(const char* key, const wording::Arguments& arguments = {}) const {
        return m_needs.speech().text(key, arguments);
    }

    PlaceNeeds m_needs;
    std::vector<records::RunRow> m_rows;
    bool m_finished = false; ///< the list shows the finished ones
    std::optional<records::RunOnFile> m_run;
    std::optional<RunsForm> m_form;
    bool m_aside = false;   ///< the form is kept while something else is looked at
    bool m_keeping = false; ///< an entry is on the way to the disk
    std::optional<OrderImport> m_import;
    std::optional<Finishing> m_finishing;
    std::optional<std::size_t> m_imported; ///< how many were planned from the last list
    Beside m_beside;                       ///< last: it answers nobody once this goes
};

} // namespace holdfast::kiosk::screens
