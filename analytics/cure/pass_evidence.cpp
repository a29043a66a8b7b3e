#include "analytics/cure/pass_evidence.hpp"

#include <algorithm>

namespace holdfast::analytics::judging {

namespace {

bool hasOnlyLines(const Pass& pass) noexcept {
    return !pass.unitSwitchedAt && !pass.beforeLeadGap &&
           std::find_if(pass.joins.begin(), pass.joins.end(), [](Join join) { return join != Join::line; }) ==
               pass.joins.end();
}

/// hasFallen, answered at once by most rides: the last sample lies far enough below the highest.
bool cameDown(const Pass& pass, Temperature peak) {
    const TraceRules rules;
    const bool endsCold = peak > rules.passFrom && atLeast(peak - pass.samples.back().t, rules.fall);
    return endsCold || hasFallen(pass, rules);
}

/// The sampling term is 0 where no step exceeds 1 s (decisions 3); most rides have none anywhere.
bool hasCoarseStep(const Pass& pass) noexcept {
    int coarse = 0;
    for (std::size_t i = 1; i < pass.samples.size(); ++i) {
        coarse += pass.samples[i].at - pass.samples[i - 1].at > Duration{1.0};
    }
    return coarse > 0;
}

} // namespace

PassEvidence::PassEvidence(const Pass& pass, Temperature gate) : PassEvidence{pass, gate, hasOnlyLines(pass)} {}

PassEvidence::PassEvidence(const Pass& pass, Temperature gate, bool onlyLines) : m_whole{&pass} {
    m_spoiled.usableSamples = pass.samples.size();
    if (!onlyLines) {
        m_spoiled = spoiledFor(pass, gate);
    }
    if (m_spoiled.usableSamples < pass.samples.size()) {
        m_part = std::make_unique<Pass>(firstSamples(pass, m_spoiled.usableSamples));
    }
    const Pass& part = this->pass();
    m_raw = rawPeak(part);
    if (!m_raw) {
        return;
    }
    m_sustained = sustainedPeak(part);
    m_sampling = hasCoarseStep(part) ? samplingTerm(part) : TemperatureDifference{};
    if (!onlyLines) {
        m_hidden = hiddenTops(part);
    }
    m_fallen = cameDown(part, m_raw->t);
    m_complete = m_fallen && m_spoiled.by == Join::line && !pass.startsHot && !pass.unitInDoubt;
}

std::optional<HiddenTop> PassEvidence::hottestHidden() const noexcept {
    const auto hottest = std::max_element(m_hidden.begin(), m_hidden.end(),
                                          [](const HiddenTop& a, const HiddenTop& b) { return a.top < b.top; });
    return hottest == m_hidden.end() ? std::nullopt : std::optional{*hottest};
}

EvidenceShelf::EvidenceShelf(const Pass& pass) : m_pass{&pass}, m_plain{hasOnlyLines(pass)} {}

const PassEvidence& EvidenceShelf::at(Temperature gate) {
    const auto known = std::find_if(m_entries.begin(), m_entries.end(),
                                    [&](const Entry& entry) { return m_plain || entry.gate == gate; });
    if (known != m_entries.end()) {
        return *known->evidence;
    }
    m_entries.push_back({gate, std::make_unique<PassEvidence>(*m_pass, gate, m_plain)});
    return *m_entries.back().evidence;
}

} // namespace holdfast::analytics::judging
