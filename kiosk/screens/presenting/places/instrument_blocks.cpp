#include "kiosk/screens/presenting/places/instrument_blocks.hpp"

#include "analytics/metrology/placement.hpp"
#include "drivers/catalogue/catalogue.hpp"
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/screens/presenting/places/instrument_words.hpp"
#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/notices.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr int kNumberWidth = 4;
constexpr int kFactorDecimals = 2;
constexpr std::size_t kMostChecks = 30;

bool isLive(const shop::Probe& probe) {
    return probe.link.state == drivers::LinkState::ready && !probe.lost;
}

wording::Figures tenths(const wording::Speech& speech) {
    auto figures = speech.figures;
    figures.decimals = std::max(1, figures.decimals);
    return figures;
}

std::optional<analytics::Temperature> newestIndicated(const shop::Probe& probe) {
    const auto& samples = probe.recording ? probe.recording->samples : probe.lastMinute;
    auto scale = probe.scale;
    if (probe.answeredUnit) {
        scale.unit = *probe.answeredUnit == analytics::TemperatureUnit::celsius ? drivers::ReadingUnit::celsius
                                                                                : drivers::ReadingUnit::fahrenheit;
    }
    if (samples.empty() || samples.back().flags != drivers::SampleFlag::none) {
        return std::nullopt;
    }
    return shop::indicated(samples.back(), scale);
}

std::string ageText(const std::optional<drivers::MonotonicTime>& since, drivers::MonotonicTime now) {
    const auto seconds = since ? static_cast<double>((now - *since).count()) / 1e6 : 0.0;
    return wording::durationText(analytics::Duration{std::max(0.0, seconds)});
}

/// Collects rows; what is empty is left out.
class InstrumentFacts final {
public:
    explicit InstrumentFacts(const wording::Speech& speech) : m_speech{speech} {}
    void add(const char* key, const std::string& value, const std::string& detail = {}) {
        if (!value.empty()) {
            m_rows.push_back(factRow(m_speech.text(key), value, detail));
        }
    }
    [[nodiscard]] SheetBlock block() const { return rowsBlock(SheetKinds::Facts, m_rows); }

private:
    const wording::Speech& m_speech;
    std::vector<SheetRow> m_rows;
};

/// A figure as it was authored, in the unit shown, with its sign.
template <class Authored>
std::string figure(const std::optional<Authored>& authored, const wording::Speech& speech) {
    const auto text = shop::authoredTyped(authored, speech.figures.unit);
    return text.empty() ? text : text + " " + speech.figures.unitSign();
}

void addSensor(InstrumentFacts& facts, const records::InstrumentSpec& spec, const wording::Speech& speech) {
    if (spec.type) {
        const std::string type{records::toWord(*spec.type)};
        facts.add("instruments.fact.type",
                  spec.toleranceClass
                      ? speech.text("instruments.fact.type-class",
                                    {{"type", type}, {"class", std::string{records::toWord(*spec.toleranceClass)}}})
                      : speech.text("instruments.fact.type-only", {{"type", type}}));
    }
    const auto tolerance = figure(spec.statedTolerance, speech);
    facts.add("instruments.fact.tolerance", tolerance.empty() ? tolerance : "±" + tolerance);
    facts.add("instruments.fact.resolution", figure(spec.resolution, speech));
    if (spec.range) {
        facts.add("instruments.fact.range", speech.text("instruments.fact.range-value",
                                                        {{"low", figure(std::optional{spec.range->low}, speech)},
                                                         {"high", figure(std::optional{spec.range->high}, speech)}}));
    }
}

void addStrip(InstrumentFacts& facts, const records::InstrumentDescribed& described, const wording::Speech& speech) {
    const auto& strip = *described.spec.strip;
    std::string steps;
    for (const auto& step : strip.steps) {
        steps += (steps.empty() ? "" : " · ") + shop::authoredTyped(std::optional{step}, speech.figures.unit);
    }
    facts.add("instruments.fact.steps", steps + " " + speech.figures.unitSign());
    facts.add("instruments.fact.strip-tolerance", "±" + figure(std::optional{strip.tolerance}, speech));
    facts.add("instruments.fact.expiry", strip.expiry ? wording::dateText(*strip.expiry) : std::string{});
    if (const auto& pack = described.pack) {
        const auto code = [](std::int64_t number) {
            return drivers::encode(drivers::TicketKind::instrument, static_cast<std::uint64_t>(number), kNumberWidth);
        };
        facts.add("instruments.fact.pack",
                  speech.text("instruments.fact.pack-value", {{"first", code(pack->firstNumber)},
                                                              {"last", code(pack->firstNumber + pack->count - 1)}}));
        facts.add("instruments.fact.batch", pack->batch);
    }
}

} // namespace

std::string linkText(const shop::Probe& probe, const wording::Speech& speech) {
    if (isLive(probe)) {
        return speech.text("instruments.link.live");
    }
    switch (probe.link.state) {
    case drivers::LinkState::ready:
    case drivers::LinkState::lost:
        return speech.text("instruments.link.lost");
    case drivers::LinkState::opening:
        return speech.text("instruments.link.opening");
    case drivers::LinkState::identifying:
        return speech.text("instruments.link.identifying");
    case drivers::LinkState::absent:
        break;
    }
    return speech.text("instruments.link.absent");
}

void addLive(QList<SheetBlock>& blocks, const shop::Probe& probe, drivers::MonotonicTime now,
             const wording::Speech& speech) {
    const auto figures = tenths(speech);
    const auto raw = newestIndicated(probe);
    const auto link = linkText(probe, speech);
    auto figure = textBlock(SheetKinds::Figure, "–");
    if (isLive(probe) && raw) {
        figure.text = toQString(figures.temperature(*raw));
        const auto age = ageText(probe.sampleAt, now);
        figure.note = toQString(
            probe.value && probe.known && probe.known->calibration
                ? speech.text("instruments.live",
                              {{"corrected", figures.temperature(*probe.value)}, {"link", link}, {"age", age}})
                : speech.text("instruments.live-uncorrected", {{"link", link}, {"age", age}}));
    } else {
        figure.note = toQString(probe.value && probe.valueAt
                                    ? speech.text("instruments.not-live", {{"link", link},
                                                                           {"value", figures.temperature(*probe.value)},
                                                                           {"age", ageText(probe.valueAt, now)}})
                                    : speech.text("instruments.not-live-never", {{"link", link}}));
    }
    blocks.append(figure);
    if (probe.trouble != shop::ProbeTrouble::none) {
        const auto notice = wording::noticeOf(probe.trouble, speech);
        blocks.append(textBlock(SheetKinds::Sentence, notice.happened + " " + notice.toDo));
    }
    blocks.append(textBlock(SheetKinds::Note, speech.text("instruments.live-line")));
}

void addStanding(QList<SheetBlock>& blocks, const shop::instruments::Standing& standing, const std::string& name,
                 const wording::Speech& speech) {
    blocks.append(textBlock(SheetKinds::Heading, speech.text("instruments.proves-heading")));
    bool first = true;
    for (const auto& line : wording::standingSentences(standing, name, speech)) {
        blocks.append(textBlock(first ? SheetKinds::Lead : SheetKinds::Sentence, line));
        first = false;
    }
}

void addFacts(QList<SheetBlock>& blocks, const records::InstrumentOnFile& one, const wording::Speech& speech) {
    const auto& described = one.described;
    const auto& spec = described.spec;
    InstrumentFacts facts{speech};
    facts.add("instruments.fact.kind", wordOf(spec.kind, speech));
    if (spec.kind == analytics::InstrumentKind::strip && spec.strip) {
        addStrip(facts, described, speech);
    } else {
        addSensor(facts, spec, speech);
    }
    facts.add("instruments.fact.placement",
              speech.text("instruments.fact.placement-value",
                          {{"placement", wordOf(spec.placement, speech)},
                           {"u", tenths(speech).difference(analytics::placementOf(one.instrument))}}),
              speech.text(spec.ownPlacement ? "instruments.fact.placement-own" : "instruments.fact.placement-starter"));
    const auto* catalogue = drivers::findInstrument(described.catalogue);
    facts.add("instruments.fact.catalogue", catalogue != nullptr ? catalogue->name : described.catalogue);
    facts.add("instruments.fact.address", described.address);
    facts.add("instruments.fact.number",
              described.number ? drivers::encode(drivers::TicketKind::instrument,
                                                 static_cast<std::uint64_t>(*described.number), kNumberWidth)
                               : speech.text("instruments.fact.number-none"));
    blocks.append(textBlock(SheetKinds::Heading, speech.text("instruments.facts-heading")));
    blocks.append(facts.block());
}

void addCertificates(QList<SheetBlock>& blocks, const std::vector<records::CertificateAdded>& certificates,
                     const wording::Speech& speech) {
    blocks.append(textBlock(SheetKinds::Heading, speech.text("instruments.certificates-heading")));
    if (certificates.empty()) {
        blocks.append(textBlock(SheetKinds::Note, speech.text("instruments.certificates-none")));
        return;
    }
    std::vector<SheetRow> rows;
    for (const auto& added : certificates) {
        const auto& certificate = added.certificate;
        rows.push_back(
            factRow(speech.text("instruments.certificate-row", {{"date", wording::dateText(certificate.date)}}),
                    speech.text("instruments.certificate-value",
                                {{"due", wording::dateText(certificate.due)},
                                 {"k", wording::numberText(certificate.coverageFactor, kFactorDecimals)}})));
        if (&added != &certificates.front()) {
            continue;
        }
        const auto figures = tenths(speech);
        for (const auto& point : certificate.points) {
            auto row = factRow(speech.text("instruments.point-row", {{"at", figure(std::optional{point.at}, speech)}}),
                               speech.text("instruments.point-value",
                                           {{"correction", figures.signedDifference(point.correction.difference())},
                                            {"u", figure(std::optional{point.expandedUncertainty}, speech)}}));
            row.indent = 1;
            rows.push_back(row);
        }
    }
    blocks.append(rowsBlock(SheetKinds::Facts, rows));
}

void addChecks(QList<SheetBlock>& blocks, const std::vector<records::CheckDone>& checks,
               const wording::Speech& speech) {
    blocks.append(textBlock(SheetKinds::Heading, speech.text("instruments.checks-heading")));
    if (checks.empty()) {
        blocks.append(textBlock(SheetKinds::Note, speech.text("instruments.checks-none")));
        return;
    }
    const auto figures = tenths(speech);
    std::vector<SheetRow> rows;
    for (std::size_t i = 0; i < std::min(checks.size(), kMostChecks); ++i) {
        const auto& done = checks[i];
        std::string detail;
        if (done.indicated && done.reference) {
            detail = speech.text("instruments.check-figures",
                                 {{"indicated", figures.temperature(done.indicated->temperature())},
                                  {"reference", figures.temperature(done.reference->temperature())}});
        }
        if (done.limit) {
            detail += (detail.empty() ? "" : " · ") +
                      speech.text("instruments.check-limit", {{"limit", figures.difference(done.limit->difference())}});
        }
        rows.push_back(factRow(
            speech.text("instruments.check-row",
                        {{"kind", wordOf(done.check.kind, speech)}, {"date", wording::dateText(done.check.date)}}),
            done.check.passed ? speech.text("instruments.check-passed", {{"due", wording::dateText(done.check.due)}})
                              : speech.text("instruments.check-failed"),
            detail));
    }
    blocks.append(rowsBlock(SheetKinds::Facts, rows));
}

} // namespace holdfast::kiosk::screens
