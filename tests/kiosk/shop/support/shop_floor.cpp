#include "tests/kiosk/shop/support/shop_floor.hpp"

#include "analytics/cure/ink.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::shop::testing {
namespace {

using analytics::Date;
using analytics::Temperature;
using analytics::TemperatureDifference;

constexpr int kPerSecond = 5;
constexpr Date kToday{std::chrono::year_month_day{std::chrono::year{2026}, std::chrono::month{3}, std::chrono::day{2}}};

std::vector<double> valuesOf(const std::vector<Leg>& legs, double from) {
    std::vector<double> values;
    for (const auto& leg : legs) {
        const int count = static_cast<int>(std::lround(leg.seconds * kPerSecond));
        for (int i = 1; i <= count; ++i) {
            values.push_back(from + (leg.toCelsius - from) * i / count);
        }
        from = leg.toCelsius;
    }
    return values;
}

} // namespace

std::vector<Leg> rideTo(double peak) {
    return {{25, 30}, {peak, (peak - 25) / 3}, {peak, 10}, {45, (peak - 45) / 3}, {44, 6}};
}

KnownInstrument probeNamed(const std::string& name) {
    analytics::Instrument instrument;
    instrument.name = name;
    instrument.kind = analytics::InstrumentKind::probe;
    instrument.type = analytics::ThermocoupleType::k;
    instrument.toleranceClass = analytics::ToleranceClass::iecClass1;
    instrument.resolution = TemperatureDifference::fromCelsius(kStep);
    instrument.range = analytics::MeasuringRange{Temperature::fromCelsius(-20), Temperature::fromCelsius(400)};
    instrument.checks = {{analytics::CheckKind::ice, true, kToday, kToday + std::chrono::days{7}}};
    KnownInstrument known;
    known.id = "id-of-" + name;
    known.name = name;
    known.number = 3;
    known.scale = {kStep, drivers::ReadingUnit::celsius};
    known.calibration = std::make_shared<const analytics::Calibration>(instrument, kToday);
    return known;
}

KnownInstrument stripOf280To330F() {
    analytics::Instrument instrument;
    instrument.name = "strip";
    instrument.kind = analytics::InstrumentKind::strip;
    analytics::StripSteps steps;
    KnownInstrument known;
    for (int f = 280; f <= 330; f += 5) {
        steps.steps.push_back(Temperature::fromFahrenheit(f));
        known.stripSteps.push_back({static_cast<double>(f), analytics::TemperatureUnit::fahrenheit});
    }
    steps.tolerance = TemperatureDifference::fromFahrenheit(2);
    steps.expiry = kToday + std::chrono::days{100};
    instrument.strip = steps;
    known.id = "id-of-strip";
    known.name = "strip";
    known.number = 7;
    known.kind = analytics::InstrumentKind::strip;
    known.calibration = std::make_shared<const analytics::Calibration>(instrument, kToday);
    return known;
}

KnownInstrument handInstrument(const std::string& name, analytics::InstrumentKind kind, std::uint64_t number) {
    auto known = probeNamed(name);
    auto instrument = known.calibration->instrument();
    instrument.kind = kind;
    if (kind == analytics::InstrumentKind::gun) {
        instrument.statedTolerance = analytics::TemperatureDifference::fromCelsius(2);
    }
    known.kind = kind;
    known.number = number;
    known.calibration = std::make_shared<const analytics::Calibration>(instrument, known.calibration->today());
    return known;
}

std::shared_ptr<const AnnouncedRun> runOf(const std::string& family, const std::string& fabric, std::int64_t number) {
    auto run = std::make_shared<AnnouncedRun>();
    const auto families = analytics::starterFamilies();
    const auto fabrics = analytics::starterFabrics();
    const auto ink =
        std::find_if(families.begin(), families.end(), [&](const auto& one) { return one.name == family; });
    const auto cloth =
        std::find_if(fabrics.begin(), fabrics.end(), [&](const auto& one) { return one.name == fabric; });
    run->onFile.plan.run = "run-" + std::to_string(number);
    run->onFile.plan.number = number;
    run->onFile.layers.layers = {{"white", analytics::pureInk(*ink), std::nullopt}};
    run->onFile.layers.fabric = *cloth;
    run->onFile.revisions = {{{family, 1}}, {fabric, 1}};
    run->lotId = "lot-of-" + std::to_string(number);
    run->dryer = "dryer";
    return run;
}

Floor::Floor() {
    send(InstrumentsLoaded{{probeNamed("P-3"), probeNamed("P-4"), stripOf280To330F()},
                           analytics::starterFamilies(),
                           analytics::GuardSetting{}});
}

void Floor::send(const ProvingEvent& event) {
    auto next = step(std::move(m_state), event);
    m_state = std::move(next.state);
    for (auto& effect : next.effects) {
        if (const auto* commit = std::get_if<Commit>(&effect)) {
            const bool again = !m_commits.empty() && m_commits.back().key == commit->key;
            if (again) {
                m_commits.back() = *commit; // asked for again: to be answered again
                m_answered = m_commits.size() - 1;
            } else {
                m_commits.push_back(*commit);
            }
        }
        m_effects.push_back(std::move(effect));
    }
    if (check) {
        check(m_state);
    }
}

void Floor::plug(const std::string& probe) {
    drivers::LinkStatus status;
    status.state = drivers::LinkState::ready;
    status.instrument = probe;
    send(LinkChanged{probe, status, {kStep, drivers::ReadingUnit::celsius}});
}

void Floor::announce(std::shared_ptr<const AnnouncedRun> run) {
    const auto number = static_cast<std::uint64_t>(run->onFile.plan.number);
    send(ScannedText{std::to_string(number)});
    send(RunLoaded{number, std::move(run)});
}

void Floor::second(const std::vector<std::pair<std::string, std::vector<double>>>& batches) {
    const auto begin = m_now;
    m_now += std::chrono::seconds{1};
    for (const auto& [probe, values] : batches) {
        std::vector<drivers::Sample> samples;
        for (std::size_t i = 0; i < values.size(); ++i) {
            const auto at = begin + MonotonicTime{static_cast<std::int64_t>(i + 1) * 1'000'000 / kPerSecond};
            samples.push_back({at, std::llround(values[i] / kStep), drivers::SampleFlag::none});
        }
        if (!samples.empty()) {
            send(SamplesArrived{probe, samples});
        }
    }
    send(Tick{m_now});
}

void Floor::play(const std::string& probe, const std::vector<Leg>& legs) {
    playTogether(probe, legs, "", {});
}

void Floor::playTogether(const std::string& a, const std::vector<Leg>& legsOfA, const std::string& b,
                         const std::vector<Leg>& legsOfB) {
    const auto valuesA = valuesOf(legsOfA, m_cursors[a].celsius);
    const auto valuesB = valuesOf(legsOfB, m_cursors[b].celsius);
    const auto cut = [](const std::vector<double>& all, std::size_t from) {
        const auto begin = std::min(from, all.size());
        const auto end = std::min(from + kPerSecond, all.size());
        return std::vector<double>(all.begin() + static_cast<std::ptrdiff_t>(begin),
                                   all.begin() + static_cast<std::ptrdiff_t>(end));
    };
    for (std::size_t i = 0; i < std::max(valuesA.size(), valuesB.size()); i += kPerSecond) {
        second({{a, cut(valuesA, i)}, {b, cut(valuesB, i)}});
    }
    m_cursors[a].celsius = legsOfA.empty() ? m_cursors[a].celsius : legsOfA.back().toCelsius;
    m_cursors[b].celsius = legsOfB.empty() ? m_cursors[b].celsius : legsOfB.back().toCelsius;
}

void Floor::place(const std::string& probe, double celsius) {
    m_cursors[probe].celsius = celsius;
}

void Floor::wait(double seconds) {
    for (int i = 0; i < static_cast<int>(seconds); ++i) {
        second({});
    }
}

void Floor::commitDone() {
    const auto& commit = m_commits.at(m_answered++);
    Committed done{commit.key, {}, {}};
    for (std::size_t i = 0; i < commit.records.size(); ++i) {
        done.sequences.push_back(++m_lastSequence);
        const bool named = i < commit.ids.size() && !commit.ids[i].empty();
        done.ids.push_back(named ? commit.ids[i] : "entry-" + std::to_string(m_lastSequence));
    }
    send(done);
}

void Floor::commitFails(ledger::FailureCode code) {
    const auto key = m_commits.at(m_answered++).key;
    send(CommitFailed{key, {code, "made up"}});
}

std::vector<drivers::Sample> Floor::spooled(std::int64_t spool) const {
    std::vector<drivers::Sample> samples;
    for (const auto& open : all<OpenSpool>()) {
        if (open.spool == spool) {
            samples = open.samples;
        }
    }
    for (const auto& more : all<AppendSpool>()) {
        if (more.spool == spool) {
            samples.insert(samples.end(), more.samples.begin(), more.samples.end());
        }
    }
    return samples;
}

std::vector<records::Record> Floor::readingsIn(std::size_t commit) const {
    std::vector<records::Record> found;
    for (const auto& record : m_commits.at(commit).records) {
        const bool other = std::holds_alternative<records::LotOpened>(record) ||
                           std::holds_alternative<records::LotClosed>(record) ||
                           std::holds_alternative<records::ActionTaken>(record) ||
                           std::holds_alternative<records::HoldPlaced>(record) ||
                           std::holds_alternative<records::HoldChanged>(record) ||
                           std::holds_alternative<records::ReadingMissed>(record);
        if (!other) {
            found.push_back(record);
        }
    }
    return found;
}

} // namespace holdfast::kiosk::shop::testing
