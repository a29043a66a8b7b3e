#pragma once

#include "kiosk/screens/presenting/places/sheet_place.hpp"
#include "kiosk/screens/presenting/trending/trends_charts.hpp"

#include <array>

namespace holdfast::kiosk::screens {

class BriefingSheet;

/// Trends, the owner's hour: margins and failures under their sentences, what failures share, margin and wash,
/// instruments side by side. Everything is worked out beside the screen; what stood there stays until the new is there.
/// Ids begin with "trends.".
class TrendsPlace final : public SheetPlace {
public:
    explicit TrendsPlace(PlaceNeeds needs);
    ~TrendsPlace() override;
    TrendsPlace(const TrendsPlace&) = delete;
    TrendsPlace& operator=(const TrendsPlace&) = delete;

    void reload() override;
    [[nodiscard]] SheetPageState sheet() const override;
    bool act(const std::string& id) override;
    bool enter(const std::string& field, const std::string& text) override;
    /// A run's ticket shows its dryer and its ink, a bucket's label the lots with it, an instrument's its readings.
    bool scanned(const drivers::TicketCode& code, bool onScreen) override;
    /// What is being worked out is given up.
    void left() override;

private:
    enum class View { charts, choose, lots, wash, instruments, briefing };
    enum Chart : std::size_t { margins, failures, suspects, washes, instruments, kCharts };
    using Found = std::shared_ptr<const TrendsFound>;

    void study();
    void stop();
    void studied(const ledger::Result<Found>& found);
    void ask(TrendsQuestion question);
    bool actOnQuestion(const std::string& id);
    bool actOnView(const std::string& id);
    bool actOnShown(const std::string& id);
    bool actOnBriefing(const std::string& id);
    [[nodiscard]] bool scannedRun(std::int64_t number);
    [[nodiscard]] bool scannedInstrument(std::int64_t number);
    void layFiles();
    void tell(const std::string& sentence) const { m_needs.tell({sentence, {}, {}}); }

    [[nodiscard]] TrendsHow how() const;
    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return m_needs.speech().text(key, arguments);
    }
    [[nodiscard]] std::string dryerName() const;
    /// Drawn once for what was found and how it is said.
    [[nodiscard]] const TrendChartState& chart(Chart which) const;
    void addHead(SheetPageState& page) const;
    void addChips(SheetPageState& page) const;
    void addCharts(SheetPageState& page) const;
    void addSuspects(SheetPageState& page) const;
    void addChoices(SheetPageState& page) const;
    void addLots(SheetPageState& page) const;
    void addSuspectSaid(SheetPageState& page, const TrendsSuspect& named) const;
    void addWash(SheetPageState& page) const;
    void addInstruments(SheetPageState& page) const;
    void addBack(SheetPageState& page, bool files) const;
    [[nodiscard]] SheetRow lotRow(trending::FactIndex lot) const;
    [[nodiscard]] const TrendsSuspect* suspectShown() const;
    [[nodiscard]] std::vector<trending::FactIndex> lotsShown() const;

    PlaceNeeds m_needs;
    TrendsQuestion m_question;
    Found m_found; ///< may be of an earlier question, or of a shorter book, while `m_busy`
    bool m_busy = false;
    bool m_again = false; ///< the book has grown while it was worked out
    std::optional<ledger::Failure> m_failure;
    std::stop_source m_stop{std::nostopstate};
    std::stop_source m_writing{std::nostopstate}; ///< files on their way into the exchange folder
    std::string m_said;                           ///< over what is shown, until the next press or scan
    View m_view = View::charts;
    std::string m_lots; ///< whose lots are shown: the id that was pressed, of a suspect or a week
    Found m_lotsOf;     ///< as it was then: the list stays while the book grows

    std::unique_ptr<BriefingSheet> m_briefing; ///< from its first press on

    struct Drawn final {
        Found found{};
        const wording::Language* language = nullptr;
        analytics::TemperatureUnit unit = analytics::TemperatureUnit::celsius;
        std::array<std::optional<TrendChartState>, kCharts> charts{};
    };
    mutable Drawn m_drawn;
};

} // namespace holdfast::kiosk::screens
