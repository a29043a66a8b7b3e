#pragma once

#include "analytics/cure/trace_facts.hpp"

#include <memory>
#include <optional>
#include <vector>

/// What a pass may be asked, for one limit. Private to this room.
namespace holdfast::analytics::judging {

/// The part of a pass that counts for limits whose L − g is `gate`, with its facts. After a jump or unit switch that
/// spoils it nothing counts and the facts are absent; after a clock fault what lies before it does (decisions 3.6).
class PassEvidence final {
public:
    PassEvidence(const Pass& pass, Temperature gate);
    /// `onlyLines`: the pass is known to have neither gap nor break.
    PassEvidence(const Pass& pass, Temperature gate, bool onlyLines);

    [[nodiscard]] const Pass& pass() const noexcept { return m_part ? *m_part : *m_whole; }
    [[nodiscard]] const Spoiled& spoiled() const noexcept { return m_spoiled; }
    [[nodiscard]] bool fallen() const noexcept { return m_fallen; }
    /// Decisions 3.9: does not start hot, unit not in doubt, unbroken, fallen.
    [[nodiscard]] bool complete() const noexcept { return m_complete; }
    [[nodiscard]] const std::optional<PeakAt>& raw() const noexcept { return m_raw; }
    [[nodiscard]] const std::optional<PeakAt>& sustained() const noexcept { return m_sustained; }
    /// Raw peak with the sampling term: what the trace was surely not above between its samples.
    [[nodiscard]] Temperature notAbove() const noexcept { return m_raw->t + m_sampling; }
    [[nodiscard]] const std::vector<HiddenTop>& hidden() const noexcept { return m_hidden; }
    /// The hottest hidden top; absent without a gap that counts.
    [[nodiscard]] std::optional<HiddenTop> hottestHidden() const noexcept;
    [[nodiscard]] bool empty() const noexcept { return !m_raw; }

private:
    const Pass* m_whole;
    std::unique_ptr<Pass> m_part; ///< when only part of the pass counts
    Spoiled m_spoiled;
    bool m_fallen = false;
    bool m_complete = false;
    std::optional<PeakAt> m_raw;
    std::optional<PeakAt> m_sustained;
    TemperatureDifference m_sampling;
    std::vector<HiddenTop> m_hidden;
};

/// Evidence by gate, each worked out once; a pass without gap or break looks the same through every gate.
class EvidenceShelf final {
public:
    explicit EvidenceShelf(const Pass& pass);
    [[nodiscard]] const PassEvidence& at(Temperature gate);

private:
    struct Entry final {
        Temperature gate = Temperature::fromCelsius(0);
        std::unique_ptr<PassEvidence> evidence;
    };
    const Pass* m_pass;
    bool m_plain;
    std::vector<Entry> m_entries;
};

} // namespace holdfast::analytics::judging
