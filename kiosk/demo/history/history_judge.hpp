#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/lots/instrument_error.hpp"
#include "kiosk/demo/history/history_facts.hpp"
#include "kiosk/ledger/digest.hpp"
#include "kiosk/records/reading_records.hpp"

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace holdfast::kiosk::demo {

/// A run as it is judged; runs of the same inks on the same cloth share one.
struct JudgedPlan final {
    analytics::RunPlan plan{};
    records::RevisionsUsed revisions{};
};

/// A reading with everything that the rules say of it.
struct JudgedReading final {
    records::ReadingTaken taken{}; ///< without ids of run, lot and dryer
    ledger::Bytes trace{};         ///< of a probe
    analytics::SeenEvidence evidence{};
};

/// Judges facts by the shop's own rules: each reading becomes what its instrument would have shown, and is judged with
/// the instrument as it stood on that day.
class HistoryJudge final {
public:
    /// Both from the starter data.
    HistoryJudge();

    /// How the instrument at this place of the facts' list stands from now on.
    void setInstrument(std::size_t place, std::string id, analytics::Instrument instrument);
    [[nodiscard]] const analytics::Instrument& instrument(std::size_t place) const { return m_known[place].instrument; }
    [[nodiscard]] const std::string& idOf(std::size_t place) const { return m_known[place].id; }
    [[nodiscard]] const analytics::Calibration& calibration(std::size_t place, std::chrono::sys_days day);

    [[nodiscard]] std::shared_ptr<const JudgedPlan> planOf(const RunFact& run, const HistoryFacts& facts);
    /// `first` is the reading that this one is a retake of, if it is one.
    [[nodiscard]] JudgedReading judge(const ReadingFact& reading, const RunFact& run, const JudgedPlan& plan,
                                      std::chrono::sys_days day, const analytics::Verdict* first);

private:
    struct Known final {
        std::string id{};
        analytics::Instrument instrument{};
        std::unique_ptr<analytics::Calibration> calibration{}; ///< of `day`
        std::chrono::sys_days day{};
    };
    struct Frame final { ///< what every reading of a plan with an instrument on a day has in common
        std::chrono::sys_days day{};
        records::ReadingTaken taken{};
    };
    [[nodiscard]] const records::ReadingTaken& frameOf(std::size_t place, const JudgedPlan& plan,
                                                       std::chrono::sys_days day);

    std::vector<analytics::InkFamily> m_families;
    std::vector<analytics::Fabric> m_fabrics;
    std::vector<Known> m_known;
    std::map<std::string, std::shared_ptr<const JudgedPlan>> m_plans;
    std::map<std::pair<std::size_t, const JudgedPlan*>, Frame> m_frames;
};

} // namespace holdfast::kiosk::demo
