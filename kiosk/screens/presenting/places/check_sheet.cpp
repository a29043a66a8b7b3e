#include "kiosk/screens/presenting/places/check_sheet.hpp"

#include "kiosk/screens/presenting/places/check_words.hpp"

namespace holdfast::kiosk::screens {

using analytics::PressureUnit;

CheckSheet::CheckSheet(Of of, const analytics::Calibration& calibration, const analytics::CheckSettings& settings,
                       analytics::TemperatureUnit unit)
    : m_of{std::move(of)}, m_calibration{calibration}, m_settings{settings},
      m_procedure{calibration, settings}, m_unit{unit} {
    const bool customary = unit == analytics::TemperatureUnit::fahrenheit;
    m_air.altitudeInFeet = customary;
    m_air.pressureUnit = customary ? PressureUnit::inchOfMercury : PressureUnit::hectopascal;
    m_procedure.choose(m_of.kind);
}

bool CheckSheet::act(const std::string& id, drivers::MonotonicTime now) {
    if (actOnAir(id)) {
        return true;
    }
    if (id == "instruments.check.ready") {
        return m_procedure.bathReady();
    }
    if (id == "instruments.check.inserted") {
        m_fed = now; // what came before was not in the bath
        return m_procedure.inserted(now);
    }
    if (id == "instruments.check.judge" && !m_of.live) {
        judgeByHand();
        return true;
    }
    if (id == "instruments.check.elsewhere") {
        const bool judged = m_procedure.judgeElsewhere();
        noteResults();
        return judged;
    }
    if (id == "instruments.check.repeat") {
        m_byHand.reset();
        m_handFault.reset();
        m_shown.clear();
        m_procedure.repeat();
        return true;
    }
    return false;
}

bool CheckSheet::actOnAir(const std::string& id) {
    if (id == "instruments.air-take") {
        takeAir();
        return true;
    }
    if (id == "instruments.air-confirm") {
        return m_procedure.confirmPressure();
    }
    for (const auto& row : kAirFroms) {
        if (id == kAir + std::string{row.word}) {
            m_air.from = row.from;
            m_faults.clear();
            return true;
        }
    }
    for (const auto& row : kAirUnits) {
        if (id == kAirUnit + std::string{row.word}) {
            m_air.pressureUnit = row.unit;
            m_faults.clear();
            return true;
        }
    }
    return false;
}

void CheckSheet::takeAir() {
    const auto source = shop::instruments::airFrom(m_air);
    m_faults = source ? std::vector<shop::instruments::FormFault>{} : source.error();
    if (source) {
        m_procedure.givePressure(*source);
    }
}

bool CheckSheet::enter(const std::string& field, const std::string& text) {
    if (field == "instruments.pressure") {
        m_air.pressure = text;
    } else if (field == "instruments.altitude") {
        m_air.altitude = text;
    } else if (field == "instruments.shown") {
        m_shown = text;
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

void CheckSheet::feed(const shop::Probe* probe, drivers::MonotonicTime now) {
    m_trouble = probe != nullptr ? probe->trouble : shop::ProbeTrouble::absent;
    m_value.reset();
    if (!m_of.live || probe == nullptr) {
        m_procedure.waited(now);
        return;
    }
    auto scale = probe->scale;
    if (probe->answeredUnit) {
        scale.unit = *probe->answeredUnit == analytics::TemperatureUnit::celsius ? drivers::ReadingUnit::celsius
                                                                                 : drivers::ReadingUnit::fahrenheit;
    }
    // a bath hot enough starts a recording, and the samples go there
    const auto& samples = probe->recording ? probe->recording->samples : probe->lastMinute;
    for (const auto& sample : samples) {
        if (sample.flags != drivers::SampleFlag::none || (m_fed && sample.at <= *m_fed)) {
            continue;
        }
        m_fed = sample.at;
        m_procedure.sample({sample.at, shop::indicated(sample, scale)});
    }
    if (!probe->lost && !samples.empty() && samples.back().flags == drivers::SampleFlag::none) {
        m_value = shop::indicated(samples.back(), scale);
    }
    m_procedure.waited(now);
    noteResults();
}

void CheckSheet::noteResults() {
    const auto& results = m_procedure.results();
    for (; m_noted < results.size(); ++m_noted) {
        m_decided.push_back({results[m_noted], m_procedure.air()});
    }
}

void CheckSheet::judgeByHand() {
    shop::instruments::FormReader form{m_unit};
    const auto value = form.neededNumber(m_shown, "shown");
    m_faults = form.faults();
    if (!value || !m_procedure.reference()) {
        return;
    }
    const auto reading =
        shop::instruments::readByHand({*value, m_unit}, m_shown, m_calibration.instrument().resolution);
    const auto result = analytics::judgeCheck(
        m_calibration, {m_of.kind, *m_procedure.reference(), reading, m_settings.interval, m_settings.guard});
    m_byHand = result ? std::optional{*result} : std::nullopt;
    m_handFault = result ? std::nullopt : std::optional{result.error()};
    if (result) {
        m_decided.push_back({*result, m_procedure.air()});
    }
}

const analytics::CheckResult* CheckSheet::shownResult() const {
    if (m_byHand) {
        return &*m_byHand;
    }
    const auto* step = std::get_if<analytics::CheckShown>(&m_procedure.step());
    return step != nullptr ? &step->result : nullptr;
}

bool CheckSheet::mayKeep() const {
    return shownResult() != nullptr && !records().empty();
}

std::vector<records::Record> CheckSheet::records() const {
    std::vector<records::Record> list;
    for (const auto& decided : m_decided) {
        if (auto done = shop::instruments::checkFrom(m_of.instrument, decided.result, decided.air, m_unit)) {
            list.emplace_back(std::move(*done));
        }
    }
    return list;
}

} // namespace holdfast::kiosk::screens
