#include "analytics/cure/pass_evidence.hpp"

#include <algorithm>

namespace holdfast::analytics::judging {

PassEvidence::PassEvidence(const Pass& pass, Temperature gate) : m_whole{&pass}, m_spoiled{spoiledFor(pass, gate)} {
    if (m_spoiled.usableSamples < pass.samples.size()) {
        m_part = std::make_unique<Pass>(firstSamples(pass, m_spoiled.usableSamples));
    }
    const Pass& part = this->pass();
    m_raw = rawPeak(part);
    if (!m_raw) {
        return;
    }
    m_sustained = sustainedPeak(part);
    m_sampling = samplingTerm(part);
    m_hidden = hiddenTops(part);
    m_fallen = hasFallen(part);
    m_complete = m_fallen && m_spoiled.by == Join::line && !pass.startsHot && !pass.unitInDoubt;
}

std::optional<HiddenTop> PassEvidence::hottestHidden() const noexcept {
    const auto hottest = std::max_element(m_hidden.begin(), m_hidden.end(),
                                          [](const HiddenTop& a, const HiddenTop& b) { return a.top < b.top; });
    return hottest == m_hidden.end() ? std::nullopt : std::optional{*hottest};
}

EvidenceShelf::EvidenceShelf(const Pass& pass)
    : m_pass{&pass}, m_plain{!pass.unitSwitchedAt && std::all_of(pass.joins.begin(), pass.joins.end(),
                                                                 [](Join join) { return join == Join::line; })} {}

const PassEvidence& EvidenceShelf::at(Temperature gate) {
    const auto known = std::find_if(m_entries.begin(), m_entries.end(),
                                    [&](const Entry& entry) { return m_plain || entry.gate == gate; });
    if (known != m_entries.end()) {
        return *known->evidence;
    }
    m_entries.push_back({gate, std::make_unique<PassEvidence>(*m_pass, gate)});
    return *m_entries.back().evidence;
}

} // namespace holdfast::analytics::judging
