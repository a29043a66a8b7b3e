#include "kiosk/screens/presenting/deciding/complaint_said.hpp"

#include "kiosk/screens/presenting/deciding/large_first.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/instrument_sentences.hpp"

namespace holdfast::kiosk::screens {

ComplaintSaid::ComplaintSaid(const PlaceNeeds& needs, records::ComplaintRow row)
    : HoldsPage{needs, {}}, m_row{std::move(row)} {
    reload();
}

void ComplaintSaid::reload() {
    const auto& reader = needs().book->reader();
    const auto& complaint = m_row.taken.complaint;
    auto row = records::complaintById(reader, complaint);
    auto versions = records::versionsOfComplaint(reader, complaint);
    auto people = peopleNow(*needs().book);
    if (!row || !versions || !people) {
        tell(!row ? row.error() : !versions ? versions.error() : people.error());
        return;
    }
    if (*row) {
        m_row = std::move(**row);
    }
    m_versions = std::move(*versions);
    m_people = std::move(*people);
}

std::string ComplaintSaid::runText(const records::ComplaintTaken& taken) const {
    const auto run = taken.run ? records::runById(needs().book->reader(), *taken.run)
                               : ledger::Result<std::optional<records::RunOnFile>>{};
    return run && *run
               ? text("holds.trace.row", {{"run", std::to_string((*run)->plan.number)}, {"title", (*run)->plan.title}})
               : std::string{};
}

std::string ComplaintSaid::lotText(const records::ComplaintTaken& taken) const {
    const auto lot = taken.lot ? records::lotById(needs().book->reader(), *taken.lot)
                               : ledger::Result<std::optional<records::LotRow>>{};
    return lot && *lot ? text("holds.trace.lot", {{"lot", std::to_string((*lot)->number)}}) : std::string{};
}

/// What it says; of a change only what differs from the one before.
std::vector<std::string> ComplaintSaid::linesOf(const records::ComplaintTaken& taken,
                                                const records::ComplaintTaken* before) const {
    std::vector<std::string> lines;
    const auto line = [&](const char* key, const std::string& value, const std::string& was) {
        if (before != nullptr ? value == was : value.empty()) {
            return;
        }
        lines.push_back(text(value.empty() ? "holds.risk.version.taken-out" : "holds.risk.version.field",
                             {{"label", text(key)}, {"value", value}}));
    };
    const auto was = before != nullptr ? *before : records::ComplaintTaken{};
    const auto count = [](const std::optional<int>& pieces) {
        return pieces ? std::to_string(*pieces) : std::string{};
    };
    const auto day = [](const std::optional<analytics::Date>& date) {
        return date ? wording::dateText(*date) : std::string{};
    };
    const auto pictures = [](const records::ComplaintTaken& one) {
        return one.pictures.empty() ? std::string{} : std::to_string(one.pictures.size());
    };
    line("holds.complaint.field.what", wording::word(taken.what, speech()),
         before != nullptr ? wording::word(was.what, speech()) : std::string{});
    line("holds.complaint.field.customer", taken.customer, was.customer);
    line("holds.complaint.field.pieces", count(taken.pieces), count(was.pieces));
    line("holds.complaint.field.received", day(taken.received), day(was.received));
    line("holds.complaint.field.words", taken.words, was.words);
    line("holds.complaint.field.clue", taken.clue, was.clue);
    line("holds.complaint.run", runText(taken), runText(was));
    line("holds.complaint.lot", lotText(taken), lotText(was));
    line("holds.trace.pictures", pictures(taken), pictures(was));
    return lines;
}

TrailEntry ComplaintSaid::entryOf(std::size_t at) const {
    const auto& version = m_versions[at];
    TrailEntry entry;
    entry.time = toQString(wording::clockText(version.at, how().utcOffsetMinutes));
    entry.day = toQString(wording::dayOf(version.at, how().utcOffsetMinutes));
    const auto what = text(at == 0 ? "holds.risk.version.first" : "holds.risk.version.changed");
    entry.title = largeFirst(
        version.person == 0
            ? what
            : text("holds.risk.version.by", {{"what", what}, {"name", shownName(m_people, version.person, speech())}}));
    QStringList lines;
    for (const auto& line : linesOf(version.taken, at == 0 ? nullptr : &m_versions[at - 1].taken)) {
        lines << toQString(line);
    }
    entry.detail = lines.join(u'\n');
    return entry;
}

void ComplaintSaid::addFacts(SheetPageState& page) const {
    const auto& taken = m_row.taken;
    std::vector<SheetRow> facts;
    const auto fact = [&](const char* key, const std::string& value) {
        if (!value.empty()) {
            facts.push_back(factRow(text(key), value));
        }
    };
    fact("holds.complaint.field.what", wording::word(taken.what, speech()));
    fact("holds.complaint.field.customer", taken.customer);
    fact("holds.complaint.field.pieces", taken.pieces ? std::to_string(*taken.pieces) : std::string{});
    fact("holds.complaint.field.received", taken.received ? wording::dateText(*taken.received) : std::string{});
    fact("holds.complaint.field.clue", taken.clue);
    fact("holds.complaint.run", taken.run ? runText(taken) : text("holds.complaint.run-none"));
    fact("holds.complaint.lot", taken.lot ? lotText(taken) : text("holds.complaint.lot-none"));
    page.blocks.append(rowsBlock(SheetKinds::Facts, facts));
    if (!taken.words.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, taken.words));
    }
}

void ComplaintSaid::addPictures(SheetPageState& page) const {
    if (m_row.taken.pictures.empty()) {
        return;
    }
    SheetBlock block;
    block.kind = SheetKinds::Pictures;
    block.text = toQString(text("holds.trace.pictures"));
    for (const auto& sha : m_row.taken.pictures) {
        PictureEntry entry;
        entry.source = pictureUrl(sha);
        entry.id = pictureId(sha);
        entry.label = QString::number(block.pictures.size() + 1);
        block.pictures.append(entry);
    }
    page.blocks.append(block);
}

void ComplaintSaid::addHistory(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.risk.version.history")));
    SheetBlock trail;
    trail.kind = SheetKinds::Trail;
    for (std::size_t at = m_versions.size(); at-- > 0;) {
        trail.trail.append(entryOf(at));
    }
    page.blocks.append(trail);
    if (m_versions.size() < 2) {
        page.blocks.append(textBlock(SheetKinds::Note, text("holds.risk.version.none")));
    }
}

void ComplaintSaid::addTo(SheetPageState& page) const {
    page.title = toQString(text("holds.risk.said"));
    addFacts(page);
    addPictures(page);
    addHistory(page);
    page.actions = {pressOf("complaint.back", text("holds.leave"))};
}

} // namespace holdfast::kiosk::screens
