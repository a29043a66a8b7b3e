#include "kiosk/screens/presenting/trending/briefing_sheet.hpp"

#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/wording/briefing_sentences.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

#include <cmath>

namespace holdfast::kiosk::screens {

namespace {

constexpr double kBarsHeight = 160.0;

/// Failed of all lots by week, this week filled.
TrendChartState barsOf(const reports::BriefingFacts& facts, const wording::Speech& speech) {
    TrendChartState chart;
    chart.title = toQString(speech.text("briefing.bars-title"));
    chart.plotHeight = kBarsHeight;
    int most = 1;
    for (std::size_t i = 0; i < facts.weeks.size(); ++i) {
        const auto& week = facts.weeks[i];
        const auto day = wording::dayOf(week.from, facts.facts.utcOffsetMinutes);
        TrendBar bar;
        bar.x = static_cast<double>(i + 1);
        bar.value = week.failed;
        bar.strong = i + 1 == facts.weeks.size();
        bar.text = QStringLiteral("%1/%2").arg(week.failed).arg(week.lots);
        bar.spoken = toQString(
            speech.text("briefing.bars-spoken",
                        {{"failed", std::to_string(week.failed)}, {"lots", std::to_string(week.lots)}, {"day", day}}));
        most = std::max(most, week.failed);
        chart.bars.append(bar);
        if (i == 0 || i + 1 == facts.weeks.size()) {
            chart.x.ticks.append({bar.x, toQString(bar.strong ? speech.text("briefing.bars-now") : day), bar.strong});
        }
    }
    chart.x.from = 0.5;
    chart.x.to = static_cast<double>(facts.weeks.size()) + 0.5;
    chart.y.from = 0.0;
    chart.y.to = most;
    chart.y.ticks = {{0.0, QStringLiteral("0"), false}, {static_cast<double>(most), QString::number(most), false}};
    chart.spoken = chart.bars.isEmpty() ? chart.title : chart.bars.last().spoken;
    return chart;
}

} // namespace

BriefingSheet::~BriefingSheet() {
    stop();
}

void BriefingSheet::stop() {
    m_stop.request_stop();
    m_stop = std::stop_source{std::nostopstate};
    m_busy = false;
}

void BriefingSheet::left() {
    stop();
}

void BriefingSheet::reload() {
    stop();
    const auto head = m_needs.book->head();
    if (!head) {
        m_failed = true;
        return;
    }
    m_busy = true;
    const auto found = std::make_shared<ledger::Result<reports::BriefingFacts>>(tl::unexpected(ledger::Failure{}));
    m_stop = m_needs.study(
        [found, head = *head, now = m_needs.clock->wall()](const SQLite::Database& reader, const std::stop_token&) {
            *found = reports::briefingFacts(reader, head, now);
        },
        [this, found](const std::optional<ledger::Failure>& failure) {
            m_busy = false;
            m_failed = failure || !*found;
            if (!m_failed) {
                m_found = std::make_shared<const reports::BriefingFacts>(std::move(**found));
            }
            m_needs.show();
        });
}

void BriefingSheet::addWeek(SheetPageState& page) const {
    const auto& speech = m_needs.speech();
    const auto said = wording::briefingSaid(m_found->facts, m_found->briefing, m_found->due, speech);
    const auto add = [&](QList<SheetBlock>& into, const char* heading, const std::vector<std::string>& lines) {
        into.append(textBlock(SheetKinds::Heading, speech.text(heading)));
        for (const auto& line : lines) {
            into.append(textBlock(SheetKinds::Sentence, line));
        }
    };
    page.headHow = toQString(said.days);
    page.blocks.append(textBlock(SheetKinds::Lead, said.lead));
    for (const auto& line : said.week) {
        page.blocks.append(textBlock(SheetKinds::Sentence, line));
    }
    SheetBlock bars;
    bars.kind = SheetKinds::TrendChart;
    bars.trend = barsOf(*m_found, speech);
    page.blocks.append(bars);
    add(page.blocks, "briefing.heading.dryers", said.dryers);
    add(page.blocks, "briefing.heading.shared", said.shared);
    add(page.beside, "briefing.heading.open", said.open);
    add(page.beside, "briefing.heading.due", said.due);
    add(page.beside, "briefing.heading.changed", said.changed);
}

void BriefingSheet::addLists(SheetPageState& page) const {
    const auto& speech = m_needs.speech();
    page.blocks.append(textBlock(
        SheetKinds::Note,
        speech.text("briefing.head", {{"sequence", std::to_string(m_found->sequence)}, {"hash", m_found->head}})));
    page.beside.append(textBlock(SheetKinds::Note, speech.text("briefing.cautions")));
    page.actions.append(pressOf("briefing.print", speech.text("briefing.print"), true));
}

void BriefingSheet::addTo(SheetPageState& page) const {
    const auto& speech = m_needs.speech();
    page.head = toQString(speech.text("briefing.title"));
    page.actions = {pressOf("briefing.back", speech.text("briefing.back"))};
    if (m_found) {
        addWeek(page);
        addLists(page);
    }
    if (m_failed && !m_busy) {
        page.blocks.prepend(textBlock(SheetKinds::Lead, speech.text("briefing.failed")));
    } else if (m_busy) {
        const auto said = speech.text("briefing.working");
        page.headHow = toQString(said);
        if (!m_found) {
            page.blocks.append(textBlock(SheetKinds::Lead, said));
        }
    }
}

bool BriefingSheet::act(const std::string& id) {
    if (id != "briefing.print") {
        return false;
    }
    if (m_found) {
        PrintWish wish;
        wish.what = PrintWish::What::briefing;
        wish.briefing = m_found;
        m_needs.print(wish);
    }
    return true;
}

} // namespace holdfast::kiosk::screens
