#include "kiosk/screens/presenting/places/instruments_place.hpp"

#include "drivers/catalogue/catalogue.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/places/instrument_blocks.hpp"
#include "kiosk/screens/presenting/places/instrument_words.hpp"

namespace holdfast::kiosk::screens {
void InstrumentsPlace::reload() {
    auto list = records::instruments(m_needs.book->reader());
    if (!list) {
        m_needs.tell(wording::noticeOf(list.error(), wording::Kept::book, m_needs.speech()));
        return;
    }
    m_list = std::move(*list);
    if (m_chosen) {
        choose(std::string{m_chosen->onFile.described.instrument});
    }
}

void InstrumentsPlace::choose(const std::string& instrument) {
    const auto& reader = m_needs.book->reader();
    const auto found = records::instrumentById(reader, instrument);
    if (!found || !*found || (*found)->described.withdrawn) {
        m_chosen.reset();
        return;
    }
    const auto certificates = records::certificatesOf(reader, instrument);
    const auto checks = records::checksOf(reader, instrument);
    m_chosen = Chosen{**found, certificates ? *certificates : std::vector<records::CertificateAdded>{},
                      checks ? *checks : std::vector<records::CheckDone>{}};
}

void InstrumentsPlace::closeSheets() {
    endCheck();
    m_touched = false;
    m_check.reset();
    m_certificate.reset();
    m_describe.reset();
    m_withdrawing = false;
}

const shop::Probe* InstrumentsPlace::probeNamed(const std::string& name) const {
    const auto& probes = m_needs.floor().probes;
    const auto found = std::find_if(probes.begin(), probes.end(), [&](const auto& one) { return one.name == name; });
    return found == probes.end() ? nullptr : &*found;
}

bool InstrumentsPlace::act(const std::string& id) {
    if (id == "instruments.back") {
        isSheetOpen() ? closeSheets() : m_chosen.reset();
    } else if (actOnList(id)) {
        return true;
    } else if (id == "instruments.keep-certificate" && m_certificate) {
        saveCertificate();
    } else if (id == "instruments.keep-instrument" && m_describe) {
        saveInstrument();
    } else if (id == "instruments.keep-check" && m_check) {
        saveCheck();
    } else if ((m_certificate && m_certificate->act(id)) || (m_describe && m_describe->act(id)) ||
               (m_check && m_check->act(id, m_needs.clock->now()))) {
        m_touched = true;
    } else {
        return m_chosen && actOnChosen(id);
    }
    return true;
}

bool InstrumentsPlace::actOnList(const std::string& id) {
    const auto picked = behind(id, kInstrumentPick);
    const auto line = behind(id, kInstrumentLine);
    if (!picked && !line && id != "instruments.new") {
        return false;
    }
    if (isWriting()) { // nothing is typed twice
        m_needs.tell({m_needs.speech().text("instruments.one-form"), {}, {}});
        return true;
    }
    if (picked) {
        closeSheets();
        choose(*picked);
    } else {
        startNew(line ? probeNamed(*line) : nullptr);
    }
    return true;
}

bool InstrumentsPlace::actOnChosen(const std::string& id) {
    const auto& described = m_chosen->onFile.described;
    if (id == "instruments.ice" || id == "instruments.boiling") {
        startCheck(id == "instruments.ice" ? analytics::CheckKind::ice : analytics::CheckKind::boiling);
    } else if (id == "instruments.certificate") {
        startCertificate();
    } else if (id == "instruments.change") {
        startChange();
    } else if (id == "instruments.label" && described.number) {
        m_needs.print({PrintWish::What::instrumentLabel, *described.number});
    } else if (id == "instruments.pack-labels" && described.pack) {
        m_needs.print({PrintWish::What::stripLabels, described.pack->firstNumber});
    } else if (id == "instruments.withdraw") {
        m_withdrawing = true;
    } else if (id == "instruments.withdraw-now" && m_withdrawing) {
        withdraw();
    } else {
        return false;
    }
    return true;
}

bool InstrumentsPlace::enter(const std::string& field, const std::string& text) {
    const bool taken = (m_certificate && m_certificate->enter(field, text)) ||
                       (m_describe && m_describe->enter(field, text)) || (m_check && m_check->enter(field, text));
    m_touched = m_touched || taken;
    return taken;
}

bool InstrumentsPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    if (!onScreen || isSheetOpen() || code.kind != drivers::TicketKind::instrument) {
        return false;
    }
    for (const auto& one : m_list) {
        if (one.described.number && static_cast<std::uint64_t>(*one.described.number) == code.number) {
            choose(std::string{one.described.instrument});
            return true;
        }
    }
    return false;
}

void InstrumentsPlace::tick() {
    if (!m_check) {
        return;
    }
    if (const auto* probe = probeNamed(m_check->of().name);
        probe != nullptr && m_check->of().live && !probe->inCheck && !isRiding(*probe)) {
        m_needs.inCheck(probe->name, true); // the bath is no ride
    }
    m_check->feed(probeNamed(m_check->of().name), m_needs.clock->now());
}

/// What the probe shows from now on may be a ride again.
void InstrumentsPlace::endCheck() {
    const auto* probe = m_check ? probeNamed(m_check->of().name) : nullptr;
    if (probe != nullptr && probe->inCheck) {
        m_needs.inCheck(probe->name, false);
    }
}

} // namespace holdfast::kiosk::screens
