// What the Instruments show.
#include "kiosk/screens/presenting/places/instrument_blocks.hpp"
#include "kiosk/screens/presenting/places/instrument_words.hpp"
#include "kiosk/screens/presenting/places/instruments_place.hpp"

namespace holdfast::kiosk::screens {
namespace {

using analytics::InstrumentKind;

bool isForBath(InstrumentKind kind) {
    return kind == InstrumentKind::probe || kind == InstrumentKind::spot;
}

} // namespace

SheetRow InstrumentsPlace::rowOf(const records::InstrumentOnFile& one) const {
    const auto& speech = m_needs.speech();
    const auto& floor = m_needs.floor();
    const auto& spec = one.described.spec;
    const auto standing = shop::instruments::standingOf(one.instrument, today(), floor.families, floor.guard);
    SheetRow row;
    row.id = toQString(std::string{kInstrumentPick} + one.described.instrument);
    row.title = toQString(spec.name);
    const auto* probe = probeNamed(spec.name);
    const auto kind = wordOf(spec.kind, speech);
    row.detail = toQString(probe != nullptr
                               ? speech.text("instruments.row", {{"kind", kind}, {"state", linkText(*probe, speech)}})
                               : kind);
    row.value = toQString(wording::shortText(standing, speech));
    row.strong = !standing.isInOrder();
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
            row.id = toQString(std::string{kInstrumentLine} + probe.name);
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

} // namespace holdfast::kiosk::screens
