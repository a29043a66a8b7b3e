#include "kiosk/demo/demo_dryers.hpp"
#include "kiosk/demo/demo_instruments.hpp"
#include "kiosk/demo/demo_people.hpp"
#include "kiosk/demo/demo_stock.hpp"
#include "kiosk/demo/history/history_story.hpp"
#include "kiosk/shop/testing/starters.hpp"

#include <algorithm>
#include <array>
#include <cmath>

/// The first day of the history, and the instruments of its eighteen months.
namespace holdfast::kiosk::demo::telling {
namespace {

using analytics::AuthoredDifference;
using analytics::AuthoredTemperature;
using analytics::TemperatureUnit;
using records::Record;

constexpr HistoryMinute kOpened = 5 * 60;

/// Certificates that had run out before the twelve days, so that their shop knows nothing of them: days before it.
struct OldCertificate final {
    const char* instrument;
    int date;
    int due;
    double correction; ///< °F
};
constexpr std::array<OldCertificate, 2> kOld{{{"P-8", 700, 346, -0.2}, {"H-7", 455, 91, 0.3}}};

records::CertificateAdded oldCertificate(const OldCertificate& row, const std::string& instrument,
                                         std::chrono::sys_days end) {
    const auto difference = [](double value) { return AuthoredDifference{value, TemperatureUnit::fahrenheit}; };
    records::CertificateAdded added;
    added.instrument = instrument;
    added.certificate.date = end - std::chrono::days{row.date};
    added.certificate.due = end - std::chrono::days{row.due};
    constexpr double kLow = 250.0;
    constexpr double kLowCorrection = 0.1;
    for (const double at : {kLow, 300.0, 350.0}) {
        added.certificate.points.push_back({AuthoredTemperature{at, TemperatureUnit::fahrenheit},
                                            difference(at > kLow ? row.correction : kLowCorrection), difference(0.5)});
    }
    return added;
}

records::InstrumentDescribed stripPack(const Story& story, const InstrumentFact& fact, std::string id) {
    records::InstrumentDescribed pack;
    pack.instrument = std::move(id);
    pack.number = fact.number;
    pack.spec.name = fact.name;
    pack.spec.kind = fact.kind;
    records::AuthoredStrip strip;
    for (const auto& step : stripSteps()) {
        strip.steps.push_back({std::round(step.fahrenheit()), TemperatureUnit::fahrenheit});
    }
    strip.tolerance = {2.0, TemperatureUnit::fahrenheit};
    strip.expiry = story.pen.dateOf(fact.lastDay * kMinutesADay) + std::chrono::days{30};
    pack.spec.strip = std::move(strip);
    return pack;
}

/// Calibrations ask for the certificates of their own day, so that all may be known from the beginning.
void tellJudge(Story& story, const std::vector<records::CertificateAdded>& certificates) {
    for (std::size_t i = 0; i < story.facts.instruments.size(); ++i) {
        const auto& fact = story.facts.instruments[i];
        const auto known = std::find_if(story.instruments.begin(), story.instruments.end(),
                                        [&](const auto& one) { return one.spec.name == fact.name; });
        if (known == story.instruments.end()) {
            continue;
        }
        std::vector<records::CertificateSpec> own;
        for (const auto& added : certificates) {
            if (added.instrument == known->instrument) {
                own.push_back(added.certificate);
            }
        }
        story.judge.setInstrument(i, known->instrument, records::toInstrument(known->spec, own));
    }
}

/// Of the instruments as the twelve days find them: described on the first day, each certificate on its own.
void tellInstruments(Story& story, const std::string& probeAddress) {
    const auto end = story.facts.firstDay + std::chrono::days{story.facts.days};
    std::vector<records::CertificateAdded> certificates;
    for (const auto& record : demoInstruments([&] { return story.pen.newId(kOpened); }, end, probeAddress)) {
        if (const auto* described = std::get_if<records::InstrumentDescribed>(&record)) {
            if (described->spec.kind != analytics::InstrumentKind::strip) {
                story.instruments.push_back(*described);
                story.pen.put(kOpened, *described);
            }
        } else if (const auto* added = std::get_if<records::CertificateAdded>(&record)) {
            certificates.push_back(*added);
        }
    }
    for (const auto& row : kOld) {
        const auto known = std::find_if(story.instruments.begin(), story.instruments.end(),
                                        [&](const auto& one) { return one.spec.name == row.instrument; });
        certificates.push_back(oldCertificate(row, known->instrument, end));
    }
    for (const auto& added : certificates) {
        const int day = static_cast<int>((added.certificate.date - story.facts.firstDay).count());
        story.pen.put(std::max(0, day) * kMinutesADay + kOpened + 30, added);
    }
    tellJudge(story, certificates);
}

/// Bought when the one before is used up, and put away at its end.
void tellPacks(Story& story) {
    for (std::size_t i = 0; i < story.facts.instruments.size(); ++i) {
        const auto& fact = story.facts.instruments[i];
        if (fact.kind != analytics::InstrumentKind::strip) {
            continue;
        }
        const auto bought = fact.firstDay * kMinutesADay + kOpened + 40;
        auto pack = stripPack(story, fact, story.pen.newId(bought));
        story.pen.put(bought, pack);
        story.judge.setInstrument(i, pack.instrument, records::toInstrument(pack.spec));
        pack.withdrawn = true;
        story.pen.put(fact.lastDay * kMinutesADay + 23 * 60, pack);
    }
}

} // namespace

void tellOpening(Story& story, const std::string& probeAddress) {
    const auto makeId = [&] { return story.pen.newId(kOpened); };
    story.pen.put(kOpened, records::BookOpened{"Demo shop", "Dryer end", "0.1.0", true});
    const auto people = demoPeople();
    story.pen.putNames(people.names);
    std::vector<Record> list = people.list;
    const auto dryers = demoDryers(makeId);
    for (std::size_t i = 0; i < story.dryers.size(); ++i) {
        story.dryers[i] = std::get<records::DryerDescribed>(dryers[i]).dryer;
    }
    for (const auto& part : {dryers, demoInks()}) {
        list.insert(list.end(), part.begin(), part.end());
    }
    const auto methods = shop::starterMethods();
    list.insert(list.end(), methods.begin(), methods.end());
    for (auto& record : list) {
        story.pen.put(kOpened, std::move(record));
    }
    tellInstruments(story, probeAddress);
    tellPacks(story);
}

} // namespace holdfast::kiosk::demo::telling
