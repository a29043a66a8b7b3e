#pragma once

#include "analytics/metrology/fixed_points/check_procedure.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/instruments/check_draft.hpp"
#include "kiosk/shop/proving/proving_state.hpp"
#include "kiosk/wording/sentences.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// One check in a bath, step by step, on live samples or on a value that a person reads off. Results that were decided
/// all stay until they are kept: a failure is not undone by trying again.
class CheckSheet final {
public:
    struct Of final {
        std::string instrument{}; ///< id
        std::string name{};
        analytics::CheckKind kind = analytics::CheckKind::ice;
        bool live = false; ///< on a line; else by hand
    };

    CheckSheet(Of of, const analytics::Calibration& calibration, const analytics::CheckSettings& settings,
               analytics::TemperatureUnit unit);

    [[nodiscard]] const Of& of() const noexcept { return m_of; }
    bool act(const std::string& id, drivers::MonotonicTime now);
    bool enter(const std::string& field, const std::string& text);
    /// The samples that came since the last call; null: there is no such probe now.
    void feed(const shop::Probe* probe, drivers::MonotonicTime now);
    [[nodiscard]] bool mayKeep() const;
    /// Every result that was decided, oldest first.
    [[nodiscard]] std::vector<records::Record> records() const;
    [[nodiscard]] QList<SheetBlock> blocks(const wording::Speech& speech) const;
    /// Under the blocks, the way out last.
    [[nodiscard]] QList<ActionState> actions(const wording::Speech& speech) const;

private:
    /// A result and the air it was decided in.
    struct Decided final {
        analytics::CheckResult result;
        std::optional<analytics::AirPressure> air;
    };

    bool actOnAir(const std::string& id);
    void takeAir();
    void judgeByHand();
    void noteResults();
    [[nodiscard]] const analytics::CheckResult* shownResult() const;
    void addAir(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addBath(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addInsert(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addWait(QList<SheetBlock>& blocks, const analytics::WaitForRest& step, const wording::Speech& speech) const;
    void addLive(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addCautions(QList<SheetBlock>& blocks, const wording::Speech& speech) const;
    void addResult(QList<SheetBlock>& blocks, const analytics::CheckResult& result,
                   const wording::Speech& speech) const;
    void addNotJudged(QList<SheetBlock>& blocks, const analytics::CheckNotJudged& step,
                      const wording::Speech& speech) const;

    Of m_of;
    analytics::Calibration m_calibration;
    analytics::CheckSettings m_settings;
    analytics::CheckProcedure m_procedure;
    analytics::TemperatureUnit m_unit; ///< of what is typed and kept
    shop::instruments::AirDraft m_air;
    std::vector<shop::instruments::FormFault> m_faults;
    std::vector<Decided> m_decided;
    std::size_t m_noted = 0; ///< of the procedure's results
    std::string m_shown{};   ///< typed: what a hand instrument shows
    std::optional<analytics::CheckResult> m_byHand;
    std::optional<analytics::CheckFault> m_handFault;
    std::optional<drivers::MonotonicTime> m_fed; ///< stamp of the newest sample taken
    std::optional<analytics::Temperature> m_value;
    shop::ProbeTrouble m_trouble = shop::ProbeTrouble::absent;
};

} // namespace holdfast::kiosk::screens
