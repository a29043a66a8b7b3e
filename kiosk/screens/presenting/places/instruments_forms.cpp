// What is opened to be typed, and what the Instruments write.
#include "drivers/catalogue/catalogue.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/places/instruments_place.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kInterval = "check_interval_days";

} // namespace

analytics::CheckSettings InstrumentsPlace::checkSettings() const {
    analytics::CheckSettings settings;
    settings.guard = m_needs.floor().guard;
    const auto days = records::setting(m_needs.book->reader(), kInterval);
    if (days && *days && std::holds_alternative<std::int64_t>(**days)) {
        settings.interval = std::chrono::days{std::get<std::int64_t>(**days)};
    }
    return settings;
}

shop::instruments::Surroundings InstrumentsPlace::surroundings() const {
    shop::instruments::Surroundings around;
    for (const auto& one : m_list) {
        around.others.push_back({one.described.instrument, one.described.spec.name, one.described.address});
    }
    for (const auto& description : drivers::catalogue()) {
        around.catalogue.push_back(description.id);
    }
    return around;
}

void InstrumentsPlace::startCheck(analytics::CheckKind kind) {
    closeSheets();
    const auto& described = m_chosen->onFile.described;
    const auto* probe = probeNamed(described.spec.name);
    if (probe != nullptr && isRiding(*probe)) {
        m_needs.tell({m_needs.speech().text("instruments.check.riding", {{"name", described.spec.name}}), {}, {}});
        return;
    }
    m_check.emplace(CheckSheet::Of{described.instrument, described.spec.name, kind, probe != nullptr},
                    analytics::Calibration{m_chosen->onFile.instrument, today()}, checkSettings(),
                    m_needs.speech().figures.unit);
    tick();
}

void InstrumentsPlace::startCertificate() {
    closeSheets();
    shop::instruments::CertificateDraft draft;
    draft.instrument = m_chosen->onFile.described.instrument;
    draft.unit = m_needs.speech().figures.unit;
    m_certificate.emplace(std::move(draft), today());
}

void InstrumentsPlace::startChange() {
    closeSheets();
    m_describe.emplace(shop::instruments::draftOf(m_chosen->onFile.described, m_needs.speech().figures.unit),
                       surroundings());
}

void InstrumentsPlace::startNew(const shop::Probe* undescribed) {
    closeSheets();
    shop::instruments::InstrumentDraft draft;
    draft.unit = m_needs.speech().figures.unit;
    if (undescribed != nullptr) {
        draft.name = undescribed->name;
        draft.catalogue = undescribed->link.instrument;
        draft.address = undescribed->link.port;
    }
    m_chosen.reset();
    m_describe.emplace(std::move(draft), surroundings());
}

void InstrumentsPlace::keepSigned(std::vector<records::Record> list, const std::string& instrument) {
    if (m_keeping) { // a second press while the first is under way
        return;
    }
    m_needs.sign(shop::Right::keepInstruments, [this, list = std::move(list), instrument](std::int64_t person) {
        m_keeping = true;
        m_needs.keep({list, person}, [this, instrument](const std::optional<ledger::Failure>& failure) {
            m_keeping = false;
            if (failure) { // what was typed stays
                m_needs.tell(wording::noticeOf(*failure, wording::Kept::book, m_needs.speech()));
                return;
            }
            closeSheets();
            reload();
            choose(instrument);
        });
    });
}

void InstrumentsPlace::saveCertificate() {
    if (auto added = m_certificate->certificate()) {
        const auto instrument = added->instrument;
        keepSigned({std::move(*added)}, instrument);
    }
}

void InstrumentsPlace::saveInstrument() {
    auto made = m_describe->described();
    if (!made) {
        return;
    }
    const auto number = records::nextNumber(m_needs.book->reader(), records::Numbered::instrument);
    if (!number) {
        m_needs.tell(wording::noticeOf(number.error(), wording::Kept::book, m_needs.speech()));
        return;
    }
    auto described = shop::instruments::numbered(std::move(*made), m_needs.newId(), *number);
    const auto instrument = described.instrument;
    keepSigned({std::move(described)}, instrument);
}

void InstrumentsPlace::withdraw() {
    auto described = m_chosen->onFile.described;
    described.withdrawn = true;
    const auto instrument = described.instrument;
    keepSigned({std::move(described)}, instrument);
}

} // namespace holdfast::kiosk::screens
