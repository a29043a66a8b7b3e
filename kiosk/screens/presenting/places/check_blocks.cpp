// What a check shows, step by step.
#include "kiosk/screens/presenting/places/check_sheet.hpp"
#include "kiosk/screens/presenting/places/check_words.hpp"
#include "kiosk/screens/presenting/places/instrument_words.hpp"
#include "kiosk/wording/notices.hpp"

namespace holdfast::kiosk::screens {
namespace {

using analytics::PressureUnit;
using shop::instruments::AirFrom;

constexpr int kPressureDecimals = 1;

const char* airWord(AirFrom from) {
    for (const auto& row : kAirFroms) {
        if (row.from == from) {
            return row.word;
        }
    }
    return "";
}

const char* pressureWord(PressureUnit unit) {
    for (const auto& row : kAirUnits) {
        if (row.unit == unit) {
            return row.word;
        }
    }
    return "";
}

std::string kilopascals(const analytics::AirPressure& air) {
    return wording::numberText(air.station.kilopascals(), kPressureDecimals);
}

wording::Speech withTenths(wording::Speech speech) {
    speech.figures.decimals = std::max(1, speech.figures.decimals);
    return speech;
}

} // namespace

QList<SheetBlock> CheckSheet::blocks(const wording::Speech& base) const {
    const auto speech = withTenths(base);
    QList<SheetBlock> blocks;
    const auto& step = m_procedure.step();
    if (const auto* result = shownResult()) {
        addResult(blocks, *result, speech);
    } else if (m_handFault) {
        blocks.append(textBlock(SheetKinds::Lead, wording::sentence(*m_handFault, speech)));
    } else if (const auto* choose = std::get_if<analytics::ChooseBath>(&step)) {
        blocks.append(
            textBlock(SheetKinds::Lead,
                      wording::sentence(choose->refused.value_or(analytics::PressureFault::settingsInvalid), speech)));
    } else if (std::holds_alternative<analytics::GivePressure>(step)) {
        addAir(blocks, speech);
    } else if (std::holds_alternative<analytics::PrepareBath>(step)) {
        addBath(blocks, speech);
    } else if (std::holds_alternative<analytics::InsertProbe>(step)) {
        addInsert(blocks, speech);
    } else if (const auto* wait = std::get_if<analytics::WaitForRest>(&step)) {
        addWait(blocks, *wait, speech);
    } else if (const auto* notJudged = std::get_if<analytics::CheckNotJudged>(&step)) {
        addNotJudged(blocks, *notJudged, speech);
    }
    return blocks;
}

void CheckSheet::addAir(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    const auto& give = std::get<analytics::GivePressure>(m_procedure.step());
    blocks.append(textBlock(SheetKinds::Heading, speech.text("instruments.check.air-heading")));
    if (give.refused) {
        blocks.append(textBlock(SheetKinds::Lead, wording::sentence(*give.refused, speech)));
    } else if (give.confirm) {
        blocks.append(textBlock(SheetKinds::Lead, speech.text("instruments.check.air-confirm",
                                                              {{"pressure", kilopascals(*give.confirm)}})));
        blocks.append(pressBlock({pressOf("instruments.air-confirm", speech.text("instruments.check.air-confirmed"))}));
    }
    std::vector<Choice> from;
    for (const auto& row : kAirFroms) {
        from.push_back({kAir + std::string{row.word}, speech.text(std::string{"instruments.check.air-"} + row.word)});
    }
    blocks.append(
        choicesBlock(speech.text("instruments.check.air-from"), from, kAir + std::string{airWord(m_air.from)}));
    std::vector<SheetField> fields;
    if (m_air.from != AirFrom::altitudeAlone) {
        std::vector<Choice> units;
        for (const auto& row : kAirUnits) {
            units.push_back(
                {kAirUnit + std::string{row.word}, speech.text(std::string{"instruments.check.unit-"} + row.word)});
        }
        const std::string unit = pressureWord(m_air.pressureUnit);
        blocks.append(choicesBlock(speech.text("instruments.check.air-unit"), units, kAirUnit + unit));
        fields.push_back(
            instrumentField("pressure",
                            speech.text(m_air.from == AirFrom::barometer ? "instruments.check.field-station"
                                                                         : "instruments.check.field-sea-level",
                                        {{"unit", speech.text("instruments.check.unit-" + unit)}}),
                            m_air.pressure, {}, SheetKinds::Number, m_faults, speech));
    }
    fields.push_back(instrumentField(
        "altitude",
        speech.text(
            "instruments.check.field-altitude",
            {{"unit", speech.text(m_air.altitudeInFeet ? "instruments.check.foot" : "instruments.check.metre")}}),
        m_air.altitude,
        speech.text(m_air.from == AirFrom::barometer ? "instruments.check.field-altitude-optional"
                                                     : "instruments.check.field-altitude-hint"),
        SheetKinds::Number, m_faults, speech));
    blocks.append(fieldsBlock(fields));
    blocks.append(textBlock(SheetKinds::Note, speech.text("instruments.check.air-source")));
}

void CheckSheet::addCautions(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    blocks.append(textBlock(SheetKinds::Heading, speech.text("instruments.check.cautions")));
    for (const auto caution : analytics::cautionsOf(m_of.kind)) {
        blocks.append(textBlock(SheetKinds::Sentence, wording::sentence(caution, speech)));
    }
}

void CheckSheet::addBath(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    blocks.append(textBlock(SheetKinds::Heading, speech.text("instruments.check.prepare")));
    for (const auto hint : analytics::hintsOf(m_of.kind)) {
        blocks.append(textBlock(SheetKinds::Sentence, wording::sentence(hint, speech)));
    }
    addCautions(blocks, speech);
    const auto& reference = *m_procedure.reference();
    blocks.append(textBlock(SheetKinds::Lead,
                            speech.text("instruments.check.reference",
                                        {{"at", speech.figures.temperature(reference.at)},
                                         {"u", speech.figures.difference(analytics::combined(reference.lines))}})));
    if (const auto& air = m_procedure.air()) {
        blocks.append(
            textBlock(SheetKinds::Note, speech.text("instruments.check.pressure", {{"pressure", kilopascals(*air)}})));
    }
}

void CheckSheet::addInsert(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    blocks.append(textBlock(SheetKinds::Lead,
                            speech.text(m_of.live ? "instruments.check.insert" : "instruments.check.insert-hand")));
    if (m_of.live) {
        addLive(blocks, speech);
    } else {
        blocks.append(fieldsBlock(
            {instrumentField("shown", speech.text("instruments.check.field-shown", {{"unit", unitSignOf(m_unit)}}),
                             m_shown, {}, SheetKinds::Number, m_faults, speech)}));
    }
    addCautions(blocks, speech);
}

void CheckSheet::addLive(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    auto figure = textBlock(SheetKinds::Figure, m_value ? speech.figures.temperature(*m_value) : std::string{"–"});
    if (!m_value) {
        const auto notice = wording::noticeOf(m_trouble, speech);
        figure.note = toQString(m_trouble == shop::ProbeTrouble::none || m_trouble == shop::ProbeTrouble::notDescribed
                                    ? speech.text("instruments.check.no-live")
                                    : notice.happened + " " + notice.toDo);
    }
    blocks.append(figure);
}

void CheckSheet::addWait(QList<SheetBlock>& blocks, const analytics::WaitForRest& step,
                         const wording::Speech& speech) const {
    addLive(blocks, speech);
    std::string how = speech.text("instruments.check.waiting");
    if (const auto* settling = std::get_if<analytics::BathSettling>(&step.stability)) {
        how = wording::sentence(*settling, m_settings.stability, speech);
    } else if (std::holds_alternative<analytics::BathStable>(step.stability)) {
        how = speech.text("instruments.check.stable");
    }
    blocks.append(textBlock(SheetKinds::Lead, how));
    const auto& reference = *m_procedure.reference();
    blocks.append(textBlock(SheetKinds::Note,
                            speech.text("instruments.check.reference",
                                        {{"at", speech.figures.temperature(reference.at)},
                                         {"u", speech.figures.difference(analytics::combined(reference.lines))}})));
    addCautions(blocks, speech);
}

void CheckSheet::addResult(QList<SheetBlock>& blocks, const analytics::CheckResult& result,
                           const wording::Speech& speech) const {
    blocks.append(textBlock(SheetKinds::Lead, wording::sentence(result, speech)));
    for (const auto& line : wording::consequences(result, speech)) {
        blocks.append(textBlock(SheetKinds::Sentence, line));
    }
    const auto failed = std::count_if(m_decided.begin(), m_decided.end(), [](const Decided& one) {
        return one.result.outcome == analytics::CheckOutcome::failed;
    });
    const auto before = failed - (result.outcome == analytics::CheckOutcome::failed ? 1 : 0);
    if (before > 0) {
        blocks.append(textBlock(SheetKinds::Sentence,
                                speech.text("instruments.check.failed-before", {{"count", std::to_string(before)}})));
    }
    const auto figures = wording::figuresOf(result, speech.figures);
    const auto row = [&](const char* key, const std::string& value, const std::string& detail = {}) {
        return factRow(speech.text(key), value, detail);
    };
    blocks.append(rowsBlock(SheetKinds::Facts,
                            {row("instruments.check.fact-indicated", figures.temperature(result.indicated)),
                             row("instruments.check.fact-correction", figures.signedDifference(result.correction)),
                             row("instruments.check.fact-reference", figures.temperature(result.reference)),
                             row("instruments.check.fact-error", figures.signedDifference(result.error)),
                             row("instruments.check.fact-u", figures.difference(result.u)),
                             row("instruments.check.fact-guard", figures.difference(result.guard)),
                             row("instruments.check.fact-limit", figures.difference(result.limit.limit),
                                 wording::word(result.limit.kind, speech))}));
    blocks.append(textBlock(SheetKinds::Heading, speech.text("instruments.check.budget")));
    std::vector<SheetRow> lines;
    for (const auto& line : result.lines) {
        auto fine = figures;
        fine.decimals = std::max(2, figures.decimals);
        lines.push_back(factRow(wording::word(line.term, speech), fine.difference(line.u)));
    }
    blocks.append(rowsBlock(SheetKinds::Facts, lines));
}

void CheckSheet::addNotJudged(QList<SheetBlock>& blocks, const analytics::CheckNotJudged& step,
                              const wording::Speech& speech) const {
    if (step.timedOut) {
        blocks.append(
            textBlock(SheetKinds::Lead, wording::sentence(*step.timedOut, m_procedure.reference()->at, speech)));
        addLive(blocks, speech);
    } else if (step.fault) {
        blocks.append(textBlock(SheetKinds::Lead, wording::sentence(*step.fault, speech)));
    }
}

QList<ActionState> CheckSheet::actions(const wording::Speech& speech) const {
    QList<ActionState> list;
    const auto add = [&](const char* id, const char* key, bool primary) {
        list.append(pressOf(id, speech.text(key), primary));
    };
    const auto& step = m_procedure.step();
    if (shownResult() != nullptr) {
        if (mayKeep()) {
            add("instruments.keep-check", "instruments.check.keep", true);
        }
        add("instruments.check.repeat", "instruments.check.repeat", !mayKeep());
    } else if (m_handFault) {
        add("instruments.check.repeat", "instruments.check.repeat", true);
    } else if (std::holds_alternative<analytics::GivePressure>(step)) {
        add("instruments.air-take", "instruments.check.air-take", true);
    } else if (std::holds_alternative<analytics::PrepareBath>(step)) {
        add("instruments.check.ready", "instruments.check.ready", true);
    } else if (std::holds_alternative<analytics::InsertProbe>(step)) {
        m_of.live ? add("instruments.check.inserted", "instruments.check.inserted", true)
                  : add("instruments.check.judge", "instruments.check.judge", true);
    } else if (const auto* notJudged = std::get_if<analytics::CheckNotJudged>(&step)) {
        add("instruments.check.repeat", "instruments.check.repeat", true);
        if (notJudged->timedOut && notJudged->timedOut->elsewhere) {
            add("instruments.check.elsewhere", "instruments.check.elsewhere", false);
        }
    }
    list.append(pressOf("instruments.back", speech.text("instruments.leave")));
    return list;
}

} // namespace holdfast::kiosk::screens
