#include "kiosk/screens/presenting/places/instruments_place.hpp"

#include "drivers/catalogue/catalogue.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/places/instrument_blocks.hpp"
#include "kiosk/screens/presenting/places/instrument_words.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kPick = "instruments.pick.";
constexpr std::string_view kLine = "instruments.line.";
constexpr std::string_view kInterval = "check_interval_days";

using analytics::InstrumentKind;

bool isForBath(InstrumentKind kind) {
    return kind == InstrumentKind::probe || kind == InstrumentKind::spot;
}

} // namespace

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

SheetRow InstrumentsPlace::rowOf(const records::InstrumentOnFile& one) const {
    const auto& speech = m_needs.speech();
    const auto& floor = m_needs.floor();
    const auto& spec = one.described.spec;
    const auto standing = shop::instruments::standingOf(one.instrument, today(), floor.families, floor.guard);
    SheetRow row;
    row.id = toQString(std::string{kPick} + one.described.instrument);
    row.title = toQString(spec.name);
    const auto* probe = probeNamed(spec.name);
    const auto kind = wordOf(spec.kind, speech);
    row.detail = toQString(probe != nullptr
                               ? speech.text("instruments.row", {{"kind", kind}, {"state", linkText(*probe, speech)}})
                               : kind);
    row.value = toQString(wording::shortText(standing, speech));
    row.strong = !standing.provesSomething();
    row.chosen = m_chosen && m_chosen->onFile.described.instrument == one.described.instrument;
    return row;
}

void InstrumentsPlace::addList(SheetPageState& page) const {
    const auto& speech = m_needs.speech();
    page.heading = toQString(speech.text("instruments.heading"));
    page.listNone = toQString(speech.text("instruments.none"));
    for (const auto& one : m_list) {
        page.list.append(rowOf(one));
    }
    for (const auto& probe : m_needs.floor().probes) {
        const bool known = std::any_of(m_list.begin(), m_list.end(),
                                       [&](const auto& one) { return one.described.spec.name == probe.name; });
        if (!known) {
            SheetRow row;
            row.id = toQString(std::string{kLine} + probe.name);
            row.title = toQString(probe.name);
            row.detail = toQString(speech.text("instruments.row-undescribed"));
            row.strong = true;
            page.list.append(row);
        }
    }
    page.listActions = {pressOf("instruments.new", speech.text("instruments.new"))};
    page.back = pressOf("instruments.back", speech.text("instruments.back"));
    page.detailOnly = isSheetOpen() || m_chosen;
}

SheetPageState InstrumentsPlace::sheet() const {
    const auto& speech = m_needs.speech();
    SheetPageState page;
    addList(page);
    const auto name = m_chosen ? m_chosen->onFile.described.spec.name : std::string{};
    const auto leave = pressOf("instruments.back", speech.text("instruments.leave"));
    if (m_check) {
        const bool ice = m_check->of().kind == analytics::CheckKind::ice;
        page.title = toQString(speech.text(ice ? "instruments.check.title-ice" : "instruments.check.title-boiling",
                                           {{"name", m_check->of().name}}));
        page.blocks = m_check->blocks(speech);
        page.actions = m_check->actions(speech);
    } else if (m_certificate) {
        page.title = toQString(speech.text("instruments.certificate-title", {{"name", name}}));
        page.blocks = m_certificate->blocks(speech);
        page.actions = {pressOf("instruments.keep-certificate", speech.text("instruments.keep-certificate"), true),
                        leave};
    } else if (m_describe) {
        const auto& before = m_describe->draft().before;
        page.title = toQString(before ? speech.text("instruments.describe-change", {{"name", before->spec.name}})
                                      : speech.text("instruments.describe-new"));
        page.blocks = m_describe->blocks(speech);
        page.actions = {pressOf("instruments.keep-instrument", speech.text("instruments.keep-instrument"), true),
                        leave};
    } else if (m_chosen && m_withdrawing) {
        page.title = toQString(speech.text("instruments.withdraw-title", {{"name", name}}));
        page.blocks.append(textBlock(SheetKinds::Sentence, speech.text("instruments.withdraw-says")));
        page.actions = {pressOf("instruments.withdraw-now", speech.text("instruments.withdraw-now"), true), leave};
    } else if (m_chosen) {
        addChosen(page);
    } else {
        page.blocks.append(textBlock(SheetKinds::Sentence, speech.text("instruments.pick")));
    }
    return page;
}

void InstrumentsPlace::addChosen(SheetPageState& page) const {
    const auto& speech = m_needs.speech();
    const auto& floor = m_needs.floor();
    const auto& one = m_chosen->onFile;
    const auto& name = one.described.spec.name;
    page.title = toQString(name);
    if (const auto* probe = probeNamed(name)) {
        addLive(page.blocks, *probe, m_needs.clock->now(), speech);
    }
    addStanding(page.blocks, shop::instruments::standingOf(one.instrument, today(), floor.families, floor.guard), name,
                speech);
    addFacts(page.blocks, one, speech);
    if (one.described.spec.kind != InstrumentKind::strip) {
        addCertificates(page.blocks, m_chosen->certificates, speech);
        addChecks(page.blocks, m_chosen->checks, speech);
    }
    addActions(page);
}

void InstrumentsPlace::addActions(SheetPageState& page) const {
    const auto& described = m_chosen->onFile.described;
    const auto add = [&](const char* id, const char* key) {
        page.actions.append(pressOf(id, m_needs.speech().text(key)));
    };
    if (isForBath(described.spec.kind)) {
        add("instruments.ice", "instruments.action.ice");
        add("instruments.boiling", "instruments.action.boiling");
    }
    if (described.spec.kind != InstrumentKind::strip) {
        add("instruments.certificate", "instruments.action.certificate");
    }
    add("instruments.change", "instruments.action.change");
    if (described.number) {
        add("instruments.label", "instruments.action.label");
    }
    if (described.pack) {
        add("instruments.pack-labels", "instruments.action.pack-labels");
    }
    add("instruments.withdraw", "instruments.action.withdraw");
}

bool InstrumentsPlace::act(const std::string& id) {
    if (id == "instruments.back") {
        isSheetOpen() ? closeSheets() : m_chosen.reset();
    } else if (id == "instruments.new") {
        startNew(nullptr);
    } else if (const auto picked = behind(id, kPick)) {
        closeSheets();
        choose(*picked);
    } else if (const auto line = behind(id, kLine)) {
        startNew(probeNamed(*line));
    } else if (id == "instruments.keep-certificate" && m_certificate) {
        saveCertificate();
    } else if (id == "instruments.keep-instrument" && m_describe) {
        saveInstrument();
    } else if (id == "instruments.keep-check" && m_check) {
        saveCheck();
    } else {
        return (m_certificate && m_certificate->act(id)) || (m_describe && m_describe->act(id)) ||
               (m_check && m_check->act(id, m_needs.clock->now())) || (m_chosen && actOnChosen(id));
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
    return (m_certificate && m_certificate->enter(field, text)) || (m_describe && m_describe->enter(field, text)) ||
           (m_check && m_check->enter(field, text));
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
    if (m_check) {
        m_check->feed(probeNamed(m_check->of().name), m_needs.clock->now());
    }
}

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
    m_needs.sign(shop::Right::keepInstruments, [this, list = std::move(list), instrument](std::int64_t person) {
        m_needs.keep({list, person}, [this, instrument](const std::optional<ledger::Failure>& failure) {
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

void InstrumentsPlace::saveCheck() {
    keepSigned(m_check->records(), m_check->of().instrument);
}

void InstrumentsPlace::withdraw() {
    auto described = m_chosen->onFile.described;
    described.withdrawn = true;
    const auto instrument = described.instrument;
    keepSigned({std::move(described)}, instrument);
}

} // namespace holdfast::kiosk::screens
