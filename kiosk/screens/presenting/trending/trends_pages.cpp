// What Trends shows.
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/trending/briefing_sheet.hpp"
#include "kiosk/screens/presenting/trending/trends_place.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

#include <algorithm>
#include <set>

namespace holdfast::kiosk::screens {
namespace {

using trending::FactIndex;
using trending::kNoFact;

constexpr std::size_t kMostLots = 40; // rows drawn; the file has all of them

SheetBlock chartBlock(const TrendChartState& chart) {
    SheetBlock block;
    block.kind = SheetKinds::TrendChart;
    block.trend = chart;
    return block;
}

template <class T>
const T& at(const std::vector<T>& list, FactIndex index) {
    return list[static_cast<std::size_t>(index)];
}

const char* idOf(TrendsSpan span) {
    switch (span) {
    case TrendsSpan::quarter:
        return "quarter";
    case TrendsSpan::halfYear:
        return "half-year";
    case TrendsSpan::year:
        return "year";
    case TrendsSpan::all:
        break;
    }
    return "all";
}

const char* idOf(records::BeltPosition position) {
    return position == records::BeltPosition::left     ? "left"
           : position == records::BeltPosition::centre ? "centre"
                                                       : "right";
}

} // namespace

const TrendChartState& TrendsPlace::chart(Chart which) const {
    const auto& speech = m_needs.speech();
    if (m_drawn.found != m_found || m_drawn.language != speech.language || m_drawn.unit != speech.figures.unit) {
        m_drawn = {m_found, speech.language, speech.figures.unit, {}};
    }
    auto& drawn = m_drawn.charts[which];
    if (!drawn) {
        drawn = which == margins    ? marginChart(*m_found, how())
                : which == failures ? failureChart(*m_found, how())
                : which == suspects ? suspectsChart(*m_found, how())
                : which == washes   ? washChart(*m_found, how())
                                    : instrumentsChart(*m_found, how());
    }
    return *drawn;
}

void TrendsPlace::addHead(SheetPageState& page) const {
    const auto dryer = dryerName();
    page.head = toQString(dryer.empty() ? text("trends.page.heading") : text("trends.page.head", {{"dryer", dryer}}));
    if (m_busy) {
        page.headHow = toQString(text(m_found ? "trends.page.again" : "trends.page.working"));
    } else if (!m_found || m_found->firstAt == 0) {
        page.headHow = toQString(text("trends.page.no-runs"));
    } else {
        page.headHow = toQString(text("trends.page.runs", {{"count", std::to_string(m_found->runs)},
                                                           {"days", how().days(m_found->firstAt, m_found->lastAt)}}));
    }
}

/// What it is narrowed to; a press takes it away.
void TrendsPlace::addChips(SheetPageState& page) const {
    std::vector<ActionState> chips;
    const auto add = [&](const char* id, const std::string& what) {
        chips.push_back(pressOf(std::string{"trends.drop."} + id, text("trends.page.chip", {{"what", what}})));
    };
    if (m_question.family) {
        add("family", *m_question.family);
    }
    if (m_question.bucket) {
        const auto& buckets = m_found->facts->buckets;
        const auto bucket = std::find_if(buckets.begin(), buckets.end(),
                                         [&](const auto& one) { return one.number == *m_question.bucket; });
        trending::FactorLevel level;
        level.kind = trending::FactorKind::bucket;
        level.number = *m_question.bucket;
        level.name = bucket == buckets.end() ? "" : bucket->name;
        level.isMix = bucket != buckets.end() && bucket->isMix;
        add("bucket", levelName(level, how()));
    }
    if (m_question.position) {
        add("position", wording::word(*m_question.position, m_needs.speech()));
    }
    if (m_question.instrument) {
        const auto& list = m_found->facts->instruments;
        const auto found =
            std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.id == *m_question.instrument; });
        add("instrument", found == list.end() ? text("trends.page.an-instrument") : found->name);
    }
    if (!chips.empty()) {
        page.blocks.append(pressBlock(chips));
    }
}

void TrendsPlace::addSuspects(SheetPageState& page) const {
    const auto& list = chart(suspects);
    if (list.rows.isEmpty()) {
        page.beside.append(textBlock(SheetKinds::Lead, text("trends.page.suspects")));
        page.beside.append(textBlock(SheetKinds::Sentence, suspectsDetail(*m_found, how())));
        return;
    }
    page.beside.append(chartBlock(list));
    const auto& first = m_found->named.front().suspect;
    if (const auto twins = twinsText(first, how()); !twins.empty()) {
        page.beside.append(textBlock(SheetKinds::Sentence, twins));
    }
    page.beside.append(textBlock(SheetKinds::Sentence, trialText(first, how())));
    if (first.strength != trending::Strength::byChance) {
        page.besideActions.append(pressOf(std::string{kTrendsSuspect} + "0",
                                          text("trends.page.lots-with", {{"name", shortName(first.level, how())}}),
                                          true));
    }
}

void TrendsPlace::addCharts(SheetPageState& page) const {
    addChips(page);
    page.blocks.append(chartBlock(chart(margins)));
    page.blocks.append(chartBlock(chart(failures)));
    for (const auto& note : {marginNote(*m_found, how()), failureNote(*m_found, how())}) {
        if (!note.empty()) {
            page.blocks.append(textBlock(SheetKinds::Note, note));
        }
    }
    addSuspects(page);
    if (page.besideActions.isEmpty() && m_found->margin.leadsTo != kNoFact) {
        const auto& run = runAt(*m_found->facts, m_found->margin.leadsTo);
        page.besideActions.append(pressOf(std::string{kTrendsRun} + run.id,
                                          text("trends.page.to-run", {{"run", std::to_string(run.number)}}), true));
    }
    page.actions = {
        pressOf("trends.choose", text("trends.page.choose")), pressOf("trends.wash", text("trends.page.to-wash")),
        pressOf("trends.instruments", text("trends.page.to-instruments")),
        pressOf(kBriefingPress, text("briefing.press")), pressOf("trends.files", text("trends.page.to-files"))};
}

void TrendsPlace::addChoices(SheetPageState& page) const {
    const auto& facts = *m_found->facts;
    page.title = toQString(text("trends.page.choose-title"));
    std::vector<Choice> dryers{{"trends.dryer.", text("trends.page.all")}};
    std::string chosen = "trends.dryer.";
    for (const auto& dryer : facts.dryers) {
        dryers.push_back({"trends.dryer." + dryer.id, dryer.name});
    }
    if (m_question.dryer) {
        chosen += *m_question.dryer;
    } else if (m_found->dryer != kNoFact) {
        chosen += at(facts.dryers, m_found->dryer).id;
    }
    page.blocks.append(choicesBlock(text("trends.page.choose-dryer"), dryers, chosen));

    std::set<std::string> names;
    for (const auto& run : facts.runs) {
        names.insert(run.families.begin(), run.families.end());
    }
    std::vector<Choice> families{{"trends.family.", text("trends.page.all")}};
    for (const auto& name : names) {
        families.push_back({"trends.family." + name, name});
    }
    page.blocks.append(
        choicesBlock(text("trends.page.choose-family"), families, "trends.family." + m_question.family.value_or("")));

    std::vector<Choice> positions{{"trends.position.", text("trends.page.all")}};
    for (const auto position :
         {records::BeltPosition::left, records::BeltPosition::centre, records::BeltPosition::right}) {
        positions.push_back(
            {std::string{"trends.position."} + idOf(position), wording::word(position, m_needs.speech())});
    }
    page.blocks.append(
        choicesBlock(text("trends.page.choose-position"), positions,
                     std::string{"trends.position."} + (m_question.position ? idOf(*m_question.position) : "")));

    std::vector<Choice> spans;
    for (const auto span : {TrendsSpan::quarter, TrendsSpan::halfYear, TrendsSpan::year, TrendsSpan::all}) {
        spans.push_back(
            {std::string{"trends.span."} + idOf(span), text(std::string{"trends.page.span."} + idOf(span))});
    }
    page.blocks.append(
        choicesBlock(text("trends.page.choose-span"), spans, std::string{"trends.span."} + idOf(m_question.span)));
    page.blocks.append(textBlock(SheetKinds::Note, text("trends.page.choose-scan")));
    addChips(page);
    page.actions = {pressOf("trends.back", text("trends.page.show"), true)};
}

SheetRow TrendsPlace::lotRow(FactIndex index) const {
    const auto& facts = *m_lotsOf->facts;
    const auto& lot = at(facts.lots, index);
    const auto& run = runAt(facts, lot.run);
    const bool failed = at(m_lotsOf->failed, index) != 0;
    auto row =
        factRow(text("trends.page.lot", {{"run", std::to_string(run.number)}, {"lot", std::to_string(lot.number)}}),
                text(failed ? "trends.page.lot-failed" : "trends.page.lot-good"),
                text("trends.page.lot-detail", {{"title", run.title}, {"day", how().day(lot.openedAt)}}));
    row.id = toQString(std::string{kTrendsRun} + run.id);
    row.strong = failed;
    return row;
}

void TrendsPlace::addSuspectSaid(SheetPageState& page, const TrendsSuspect& named) const {
    const auto& suspect = named.suspect;
    page.title = toQString(levelName(suspect.level, how()));
    page.blocks.append(textBlock(SheetKinds::Sentence, oddsText(suspect, how())));
    if (suspect.strength != trending::Strength::byChance) {
        page.blocks.append(textBlock(SheetKinds::Sentence, sinceText(named.since, *m_lotsOf, how())));
    }
    auto list = suspectsChart(*m_lotsOf, how());
    const auto number = static_cast<qsizetype>(&named - m_lotsOf->named.data());
    list.rows = {list.rows[number]};
    list.rows.first().id.clear();
    page.beside.append(chartBlock(list));
    if (const auto twins = twinsText(suspect, how()); !twins.empty()) {
        page.beside.append(textBlock(SheetKinds::Sentence, twins));
    }
    page.beside.append(textBlock(SheetKinds::Sentence, trialText(suspect, how())));
}

void TrendsPlace::addLots(SheetPageState& page) const {
    auto lots = lotsShown();
    std::stable_sort(lots.begin(), lots.end(), [&](FactIndex one, FactIndex other) {
        return at(m_lotsOf->failed, one) > at(m_lotsOf->failed, other);
    });
    if (const auto* suspect = suspectShown()) {
        addSuspectSaid(page, *suspect);
        page.blocks.append(
            textBlock(SheetKinds::Heading, text("trends.page.lots", {{"count", std::to_string(lots.size())}})));
    } else {
        page.title = toQString(text("trends.page.lots-failed", {{"count", std::to_string(lots.size())}}));
    }
    std::vector<SheetRow> rows;
    for (std::size_t i = 0; i < std::min(lots.size(), kMostLots); ++i) {
        rows.push_back(lotRow(lots[i]));
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
    if (lots.size() > kMostLots) {
        page.blocks.append(textBlock(
            SheetKinds::Note, text("trends.page.lots-more", {{"count", std::to_string(lots.size() - kMostLots)}})));
    }
    addBack(page, true);
}

void TrendsPlace::addWash(SheetPageState& page) const {
    page.blocks.append(chartBlock(chart(washes)));
    page.beside.append(textBlock(SheetKinds::Lead, text("trends.page.wash-beside")));
    page.beside.append(textBlock(SheetKinds::Sentence, text("trends.page.wash-how")));
    if (m_found->wash.offerCureLadder) {
        page.beside.append(textBlock(SheetKinds::Heading, text("trends.page.ladder")));
        page.beside.append(textBlock(SheetKinds::Sentence, text("trends.page.ladder-how")));
        page.beside.append(textBlock(SheetKinds::Note, text("trends.page.ladder-caution")));
    }
    addBack(page, true);
}

void TrendsPlace::addInstruments(SheetPageState& page) const {
    page.blocks.append(chartBlock(chart(instruments)));
    page.beside.append(textBlock(SheetKinds::Lead, text("trends.page.instruments-beside")));
    std::vector<SheetRow> rows;
    for (const auto& offset :
         m_found->instruments ? *m_found->instruments : std::vector<trending::InstrumentOffset>{}) {
        const auto& instrument = at(m_found->facts->instruments, offset.instrument);
        auto row = factRow(instrument.name, strengthWord(offset.strength, how()), offsetRow(offset, how()));
        row.id = toQString(std::string{kTrendsInstrument} + instrument.id);
        row.strong = offset.strength == trending::Strength::strong;
        rows.push_back(row);
    }
    if (rows.empty()) {
        page.beside.append(textBlock(SheetKinds::Sentence, text("trends.page.instruments-none-how")));
    } else {
        page.beside.append(rowsBlock(SheetKinds::Rows, rows));
    }
    page.beside.append(textBlock(SheetKinds::Note, text("trends.page.instruments-how")));
    addBack(page, true);
}

void TrendsPlace::addBack(SheetPageState& page, bool files) const {
    page.actions = {pressOf("trends.back", text("trends.page.back"))};
    if (files) {
        page.actions.append(pressOf("trends.files", text("trends.page.to-files")));
    }
}

SheetPageState TrendsPlace::sheet() const {
    SheetPageState page;
    if (m_view == View::briefing) {
        m_briefing->addTo(page);
        return page;
    }
    addHead(page);
    if (!m_found) {
        page.blocks.append(
            textBlock(SheetKinds::Lead, text(m_failure ? "trends.page.fault" : "trends.page.working-lead")));
        page.blocks.append(
            textBlock(SheetKinds::Note, text(m_failure ? "trends.page.fault-detail" : "trends.page.working-detail")));
        return page;
    }
    if (!m_said.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, m_said));
    }
    switch (m_view) {
    case View::charts:
        addCharts(page);
        break;
    case View::choose:
        addChoices(page);
        break;
    case View::lots:
        addLots(page);
        break;
    case View::wash:
        addWash(page);
        break;
    case View::instruments:
        addInstruments(page);
        break;
    case View::briefing: // stands there already
        break;
    }
    return page;
}

} // namespace holdfast::kiosk::screens
