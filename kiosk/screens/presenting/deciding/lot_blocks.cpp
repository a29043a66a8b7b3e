#include "kiosk/screens/presenting/deciding/lot_blocks.hpp"

#include "analytics/lots/lot_standing.hpp"
#include "kiosk/reports/report.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

using analytics::LotStanding;
using analytics::Word;

SheetRow causeRow(const records::HoldRow& row, const LotShown& lot, const std::string& chosen, const LotSpeech& how) {
    const auto when = wording::whenText(row.at, how.utcOffsetMinutes);
    auto shown =
        factRow(wording::sentence(row.placed.cause, how.speech),
                row.lifted     ? how.text("holds.why-lifted")
                : row.decision ? how.text("holds.why-decided")
                               : std::string{},
                how.text("holds.why-at",
                         {{"when", when}, {"what", wording::piecesText(row.placed, lot.pieces.made, how.speech)}}));
    shown.id = toQString(std::string{kHoldsBecause} + row.placed.hold);
    shown.strong = !row.decision;
    shown.chosen = row.placed.hold == chosen;
    return shown;
}

void addLead(QList<SheetBlock>& blocks, const LotShown& lot, const records::HoldRow* hold, const LotSpeech& how) {
    const auto lead = [&](const std::string& sentence) { blocks.append(textBlock(SheetKinds::Lead, sentence)); };
    const auto standing = lot.facts.standing;
    if (hold != nullptr && !hold->decision && hold->shipped) {
        const auto* back = lot.recallOf(*hold);
        lead(back != nullptr
                 ? how.text("holds.lead.called-back", {{"day", wording::dayOf(back->at, how.utcOffsetMinutes)}})
                 : how.text("holds.lead.recall", {{"count", std::to_string(lot.pieces.shipped)}}));
    }
    if (hold != nullptr && !hold->decision) {
        const auto pieces = wording::piecesText(hold->placed, lot.pieces.made, how.speech);
        const bool binned = hold->placed.bin > 0;
        lead(!hold->placed.pieces ? how.text("holds.lead.whole")
                                  : how.text(binned ? "holds.lead.pull" : "holds.lead.pull-no-bin",
                                             {{"pieces", pieces}, {"bin", std::to_string(hold->placed.bin)}}));
        const auto open = lot.openHolds();
        const bool bracketed =
            std::all_of(open.begin(), open.end(), [](const auto* one) { return one->placed.pieces.has_value(); });
        blocks.append(textBlock(SheetKinds::Sentence, how.text(analytics::otherPiecesMayGo(standing, bracketed)
                                                                   ? "holds.others-may-go"
                                                                   : "holds.others-may-not-go")));
    } else if (standing == LotStanding::unproven) {
        lead(how.text("holds.lead.unproven"));
    } else if (standing == LotStanding::onHold) {
        lead(how.text("holds.lead.no-bracket"));
    }
}

std::string whoText(const LotShown& lot, const LotSpeech& how) {
    std::vector<std::int64_t> persons;
    for (const auto& one : lot.facts.entitled) {
        persons.push_back(one.person);
    }
    if (persons.empty()) {
        return how.text("holds.who-nobody");
    }
    std::vector<records::Role> roles;
    for (const auto role : {records::Role::qualityAssurance, records::Role::owner}) {
        if (shop::mayDo(shop::Right::decideHolds, role)) {
            roles.push_back(role);
        }
    }
    return how.text("holds.who-value", {{"roles", wording::words(roles, how.speech)},
                                        {"names", namesOf(persons, lot.people, how.speech)}});
}

void addFacts(QList<SheetBlock>& blocks, const LotShown& lot, const records::HoldRow* hold, const LotSpeech& how) {
    std::vector<SheetRow> facts;
    if (hold != nullptr) {
        facts.push_back(factRow(how.text("holds.fact.since"), wording::whenText(hold->at, how.utcOffsetMinutes)));
        if (hold->placed.bin > 0) {
            const auto code = reports::codeTextOf(drivers::TicketKind::bin, hold->placed.bin);
            facts.push_back(
                factRow(how.text("holds.fact.bin"),
                        how.text("holds.fact.bin-value", {{"bin", std::to_string(hold->placed.bin)}, {"code", code}})));
        }
    }
    facts.push_back(factRow(how.text("holds.fact.state"), wording::word(lot.facts.standing, how.speech)));
    if (lot.facts.childrensWear) {
        facts.push_back(factRow(how.text("holds.fact.children"), how.text("holds.fact.yes")));
    }
    blocks.append(rowsBlock(SheetKinds::Facts, facts));
    blocks.append(textBlock(SheetKinds::Heading, how.text("holds.who")));
    blocks.append(textBlock(SheetKinds::Sentence, whoText(lot, how)));
}

void addMissing(QList<SheetBlock>& blocks, const LotShown& lot, const LotSpeech& how) {
    std::vector<std::string> missing;
    if (!lot.missed.empty()) {
        missing.push_back(how.text("holds.missing.readings", {{"count", std::to_string(lot.missed.size())}}));
    }
    const bool read = std::any_of(lot.facts.readings.begin(), lot.facts.readings.end(), [](const auto& reading) {
        return !reading.struck && !reading.refused && !reading.setUp;
    });
    if (!read) {
        missing.push_back(how.text("holds.missing.no-reading"));
    } else if (lot.missed.empty() && shop::deciding::atIssue(lot.facts).notProven) {
        missing.push_back(how.text("holds.missing.not-proven"));
    }
    if (!lot.pieces.made) {
        missing.push_back(how.text("holds.missing.made"));
    }
    const bool reported = std::any_of(lot.decisions.begin(), lot.decisions.end(), [](const auto& row) {
        return !row.corrected && !row.signedAs.laboratoryReport.empty();
    });
    if (lot.facts.childrensWear && !reported) {
        missing.push_back(how.text("holds.missing.report"));
    }
    blocks.append(textBlock(SheetKinds::Heading, how.text("holds.missing")));
    if (missing.empty()) {
        missing.push_back(how.text("holds.missing.nothing"));
    }
    for (const auto& line : missing) {
        blocks.append(textBlock(SheetKinds::Sentence, line));
    }
}

/// Pieces that a decision took out of the lot: run again or scrapped.
bool isGone(const records::HoldRow& hold, const LotShown& lot) {
    return std::any_of(lot.decisions.begin(), lot.decisions.end(), [&](const records::DecisionRow& row) {
        const auto& word = row.signedAs.word;
        const bool takesOut = word == records::DecisionWord::reRun || word == records::DecisionWord::scrapped;
        const auto& names = row.signedAs.holds;
        return takesOut && !row.corrected && std::find(names.begin(), names.end(), hold.placed.hold) != names.end();
    });
}

void addStretch(PieceBarState& bar, int first, int last, PieceKind kind, bool named) {
    last = std::min(last, bar.pieces);
    if (last < first) {
        return;
    }
    PieceStretch stretch;
    stretch.first = first;
    stretch.last = last;
    stretch.kind = kind;
    if (named) {
        stretch.text =
            QString::number(first) + (last > first ? QStringLiteral("–") + QString::number(last) : QString{});
    }
    bar.stretches.append(stretch);
}

/// Neighbouring pieces with one answer, from the answers piece by piece.
void addStretches(PieceBarState& bar, const std::vector<PieceKind>& kinds) {
    std::size_t from = 0;
    for (std::size_t i = 1; i <= kinds.size(); ++i) {
        if (i == kinds.size() || kinds[i] != kinds[from]) {
            const bool named = kinds[from] == PieceKind::Bracket || kinds[from] == PieceKind::Gone;
            addStretch(bar, static_cast<int>(from) + 1, static_cast<int>(i), kinds[from], named);
            from = i;
        }
    }
}

constexpr int kMostDrawn = 200'000;

void mark(std::vector<PieceKind>& kinds, int first, int last, PieceKind kind) {
    for (int piece = std::max(first, 1); piece <= last && piece <= static_cast<int>(kinds.size()); ++piece) {
        kinds[static_cast<std::size_t>(piece) - 1] = kind;
    }
}

} // namespace

std::optional<PieceBarState> pieceBarOf(const LotShown& lot, const LotSpeech& how) {
    const int first = lot.row.firstPiece.value_or(1);
    const auto counted = lot.pieces.made ? first - 1 + *lot.pieces.made : 0;
    const int made = std::max(lot.row.lastPiece.value_or(0), counted);
    int pieces = std::max(made, lot.plan.pieces.value_or(0));
    for (const auto& hold : lot.holds) {
        pieces = std::max(pieces, hold.placed.pieces ? hold.placed.pieces->last.value_or(0) : 0);
    }
    if (pieces < 1 || pieces > kMostDrawn) {
        return std::nullopt;
    }
    PieceBarState bar;
    bar.pieces = pieces;
    bar.made = made > 0 ? made : pieces;
    std::vector<PieceKind> kinds(static_cast<std::size_t>(bar.made), PieceKind::Waiting);
    std::optional<int> lastProven; // proven up to the last piece that was read cured
    for (const auto& reading : lot.facts.readings) {
        if (reading.piece && reading.word == Word::cured && !reading.struck && !reading.refused) {
            lastProven = std::max(lastProven.value_or(0), *reading.piece);
        }
        if (reading.piece && !reading.refused) {
            bar.reads.append({*reading.piece, filmMark(reading.word), QString::number(*reading.piece)});
        }
    }
    mark(kinds, first, lastProven.value_or(0), PieceKind::Proven);
    std::string spoken;
    for (const auto& hold : lot.holds) {
        const auto& range = hold.placed.pieces;
        const auto kind = isGone(hold, lot) ? PieceKind::Gone : PieceKind::Bracket;
        if (hold.decision && kind != PieceKind::Gone) {
            continue;
        }
        mark(kinds, range ? range->first : first, range ? range->last.value_or(bar.made) : bar.made, kind);
        spoken += (spoken.empty() ? "" : "; ") + wording::piecesText(hold.placed, lot.pieces.made, how.speech);
    }
    addStretches(bar, kinds);
    bar.firstText = QStringLiteral("1");
    bar.lastText = QString::number(pieces);
    bar.spoken = toQString(spoken);
    return bar;
}

void addReadings(QList<SheetBlock>& blocks, const std::vector<records::ReadingRow>& readings, std::string_view prefix,
                 const LotSpeech& how) {
    blocks.append(textBlock(SheetKinds::Heading, how.text("holds.readings")));
    std::vector<SheetRow> rows;
    for (const auto& reading : readings) {
        auto row = factRow(how.text("holds.reading-row", {{"instrument", reading.instrumentName},
                                                          {"where", wording::word(reading.position, how.speech)}}),
                           {}, wording::whenText(reading.takenAt, how.utcOffsetMinutes));
        row.id = toQString(std::string{prefix} + reading.id);
        const auto word = reading.refused ? Word::refused : reading.word.value_or(Word::notProven);
        row.marked = !reading.refused && !reading.struck;
        row.mark = row.marked ? filmMark(word) : MarkKind::Blank;
        row.value = toQString(
            reading.struck ? how.text("holds.reading-struck", {{"cause", wording::word(*reading.struck, how.speech)}})
                           : wording::word(word, how.speech));
        if (reading.corrected) {
            row.detail += toQString(" · " + how.text("holds.reading-corrected"));
        }
        rows.push_back(row);
    }
    blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, how.text("holds.readings-none"))
                               : rowsBlock(SheetKinds::Rows, rows));
}

void addPieces(QList<SheetBlock>& blocks, const LotShown& lot, const LotSpeech& how) {
    const auto sum = shop::deciding::sumOf(lot.pieces);
    const auto number = [&](const std::optional<int>& value) {
        return value ? std::to_string(*value) : how.text("holds.pieces.not-said");
    };
    blocks.append(textBlock(SheetKinds::Heading, how.text("holds.pieces.heading")));
    const auto here = sum ? std::optional{sum->pieces.here} : lot.pieces.here;
    blocks.append(rowsBlock(
        SheetKinds::Facts,
        {factRow(how.text("holds.pieces.made"), number(lot.pieces.made)),
         factRow(how.text("holds.pieces.shipped"), number(lot.pieces.shipped)),
         factRow(how.text(lot.pieces.here ? "holds.pieces.here-counted" : "holds.pieces.here-left"), number(here)),
         factRow(how.text("holds.pieces.retained"), number(lot.pieces.retained)),
         factRow(how.text("holds.pieces.tested"), number(lot.pieces.tested)),
         factRow(how.text("holds.pieces.scrapped"), number(lot.pieces.scrapped))}));
    blocks.append(textBlock(SheetKinds::Sentence, wording::balanceText(sum, how.speech)));
}

TrailEntry decisionEntry(const records::DecisionRow& row, const shop::PeopleNow& people, const LotSpeech& how) {
    const auto& decision = row.signedAs;
    TrailEntry entry;
    entry.time = toQString(wording::clockText(row.at, how.utcOffsetMinutes));
    entry.day = toQString(wording::dayOf(row.at, how.utcOffsetMinutes));
    entry.title = toQString(how.text(
        "holds.decision-line", {{"word", wording::word(decision.word, how.speech)}, {"reason", decision.reason}}));
    const auto names = namesOf(decision.signers, people, how.speech);
    entry.detail = toQString(
        decision.laboratoryReport.empty()
            ? how.text("holds.decision-signed", {{"names", names}})
            : how.text("holds.decision-signed-report", {{"names", names}, {"report", decision.laboratoryReport}}));
    entry.value = toQString(row.corrected         ? how.text("holds.decision-corrected")
                            : decision.belowLimit ? how.text("holds.decision-below")
                                                  : std::string{});
    return entry;
}

void addLot(QList<SheetBlock>& blocks, const LotShown& lot, const std::string& hold, const LotSpeech& how) {
    const auto* looked = lot.hold(hold);
    addLead(blocks, lot, looked, how);
    if (auto bar = pieceBarOf(lot, how)) {
        SheetBlock block;
        block.kind = SheetKinds::PieceBar;
        block.pieces = std::move(*bar);
        blocks.append(block);
    }
    if (!lot.holds.empty()) {
        blocks.append(textBlock(SheetKinds::Heading, how.text("holds.why")));
        std::vector<SheetRow> rows;
        for (const auto& row : lot.holds) {
            rows.push_back(causeRow(row, lot, hold, how));
        }
        blocks.append(rowsBlock(SheetKinds::Rows, rows));
    }
    addFacts(blocks, lot, looked, how);
    addReadings(blocks, lot.readings, kHoldsReading, how);
    addMissing(blocks, lot, how);
    addPieces(blocks, lot, how);
    if (!lot.decisions.empty()) {
        blocks.append(textBlock(SheetKinds::Heading, how.text("holds.decisions")));
        SheetBlock trail;
        trail.kind = SheetKinds::Trail;
        for (const auto& row : lot.decisions) {
            trail.trail.append(decisionEntry(row, lot.people, how));
        }
        blocks.append(trail);
    }
}

} // namespace holdfast::kiosk::screens
