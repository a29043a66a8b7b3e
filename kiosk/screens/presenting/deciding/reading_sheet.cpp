#include "kiosk/screens/presenting/deciding/reading_sheet.hpp"

#include "kiosk/wording/deciding_sentences.hpp"

#include <array>

namespace holdfast::kiosk::screens {
namespace {

using records::StruckCause;

constexpr std::string_view kStruckCause = "holds.strike.cause.";
constexpr std::array kCauses{StruckCause::probeFellOut, StruckCause::wrongPrint, StruckCause::leadCaught,
                             StruckCause::garbledTrace};
constexpr std::size_t kMostReasonsSaid = 6;

} // namespace

ReadingSheet::ReadingSheet(const PlaceNeeds& needs, Done done, records::ReadingRow row)
    : HoldsPage{needs, std::move(done)}, m_row{std::move(row)} {
    reload();
}

void ReadingSheet::reload() {
    auto taken = records::readingInFull(needs().book->reader(), m_row.id);
    if (!taken) {
        tell(taken.error());
        return;
    }
    m_taken = std::move(*taken);
    m_points = m_taken ? traceOf(*needs().book, *m_taken) : std::vector<ledger::TracePoint>{};
    auto versions = records::versionsOfReading(needs().book->reader(), m_row.id);
    m_versions = versions ? std::move(*versions) : std::vector<records::ReadingVersion>{};
    const auto rows = records::readingsOfRun(needs().book->reader(), m_row.run);
    for (const auto& row : rows ? *rows : std::vector<records::ReadingRow>{}) {
        if (row.id == m_row.id) {
            m_row = row;
            return;
        }
    }
}

bool ReadingSheet::isSeen() const {
    return m_taken && (!m_points.empty() || !std::holds_alternative<records::TraceSeen>(m_taken->evidence));
}

shop::deciding::StrikeFacts ReadingSheet::facts() const {
    return {m_row.struck.has_value(), m_row.refused, isSeen()};
}

shop::deciding::StrikeDraft ReadingSheet::draft() const {
    return {m_row.id, m_cause, isSeen()}; // what was seen stands over the causes
}

bool ReadingSheet::act(const std::string& id) {
    if (id == "holds.strike") {
        m_striking = true;
    } else if (id == "holds.strike.leave") {
        m_striking = false;
        m_cause.reset();
    } else if (id == "holds.strike.sign" && m_striking) {
        strike();
        return true;
    } else if (const auto word = restOf(id, kStruckCause)) {
        for (const auto cause : kCauses) {
            if (wording::nameOf(cause) == *word) {
                m_cause = cause;
            }
        }
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

void ReadingSheet::strike() {
    reload();
    const auto struck = shop::deciding::strikeFrom(draft(), facts());
    m_faults = struck ? shop::deciding::Faults{} : struck.error();
    if (struck) {
        signAfresh(shop::Right::decideHolds, 0, [this](std::int64_t person) { signedBy(person); });
    }
}

void ReadingSheet::signedBy(std::int64_t person) {
    reload();
    auto struck = shop::deciding::strikeFrom(draft(), facts());
    if (!struck) {
        m_faults = struck.error();
        return;
    }
    Keeping keeping;
    keeping.list.emplace_back(std::move(*struck));
    keeping.person = person;
    write(std::move(keeping), [this] {
        m_striking = false;
        done(text("holds.said.struck"));
    });
}

void ReadingSheet::addVerdict(SheetPageState& page) const {
    if (m_row.refused || !m_taken) {
        page.blocks.append(leadBlock(text("holds.reading.none")));
        return;
    }
    if (m_row.struck) {
        page.blocks.append(
            leadBlock(text("holds.reading-struck", {{"cause", wording::word(*m_row.struck, speech())}})));
    }
    SheetBlock scale;
    scale.kind = SheetKinds::Scale;
    scale.scale = readingScale(*m_taken, m_points, speech());
    const bool trace = std::holds_alternative<records::TraceSeen>(m_taken->evidence);
    scale.text = toQString(text(!trace              ? "holds.reading.shown"
                                : !m_points.empty() ? "holds.reading.trace"
                                                    : "holds.reading.no-trace"));
    page.blocks.append(scale);
    std::vector<SheetRow> facts;
    if (m_taken->verdict) {
        facts.push_back(factRow(text("holds.reading.word"), wording::word(m_taken->verdict->word, speech())));
        const auto margin = wording::headMarginText(*m_taken->verdict, speech());
        if (!margin.empty()) {
            facts.push_back(factRow(text("holds.reading.margin"), margin));
        }
    }
    facts.push_back(factRow(text("holds.reading.instrument"), m_row.instrumentName));
    facts.push_back(factRow(text("holds.reading.where"), wording::word(m_row.position, speech())));
    if (m_taken->piece) {
        facts.push_back(factRow(text("holds.reading.piece"), std::to_string(*m_taken->piece)));
    }
    facts.push_back(factRow(text("holds.reading.reason"), reasonText(m_row.reason, speech())));
    page.blocks.append(rowsBlock(SheetKinds::Facts, facts));
    if (m_taken->verdict && !m_taken->verdict->reasons.empty()) {
        page.blocks.append(
            textBlock(SheetKinds::Sentence, wording::sentences(m_taken->verdict->reasons, kMostReasonsSaid, speech())));
    }
}

void ReadingSheet::addVersions(SheetPageState& page) const {
    if (m_versions.size() < 2) {
        return;
    }
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.move.history")));
    SheetBlock trail;
    trail.kind = SheetKinds::Trail;
    for (auto version = m_versions.rbegin() + 1; version != m_versions.rend(); ++version) {
        const auto& verdict = version->taken.verdict;
        TrailEntry entry;
        entry.time = toQString(wording::clockText(version->at, how().utcOffsetMinutes));
        entry.day = toQString(wording::dayOf(version->at, how().utcOffsetMinutes));
        if (verdict) {
            entry.title = toQString(wording::word(verdict->word, speech()));
            entry.value = toQString(wording::headMarginText(*verdict, speech()));
            entry.marked = true;
            entry.mark = filmMark(verdict->word);
        }
        trail.trail.append(entry);
    }
    page.blocks.append(trail);
}

void ReadingSheet::addTo(SheetPageState& page) const {
    page.title = toQString(text(m_striking ? "holds.strike.title" : "holds.reading.title",
                                {{"when", wording::whenText(m_row.takenAt, how().utcOffsetMinutes)}}));
    addOtherFaults(page.blocks, {});
    addVerdict(page);
    addVersions(page);
    if (m_striking) {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.strike.lead")));
        std::vector<Choice> choices;
        for (const auto cause : kCauses) {
            choices.push_back({std::string{kStruckCause} + wording::nameOf(cause), wording::word(cause, speech())});
        }
        page.blocks.append(
            choicesBlock(text("holds.strike.cause"), choices,
                         m_cause ? std::string{kStruckCause} + wording::nameOf(*m_cause) : std::string{}));
        page.actions = {pressOf("holds.strike.sign", text("holds.strike.sign"), true),
                        pressOf("holds.strike.leave", text("holds.leave"))};
        return;
    }
    page.actions = {pressOf("holds.back", text("holds.back"), true)};
    if (!m_row.struck && !m_row.refused) {
        page.actions.append(pressOf("holds.strike", text("holds.strike")));
    }
}

} // namespace holdfast::kiosk::screens
