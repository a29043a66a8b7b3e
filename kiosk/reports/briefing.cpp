#include "kiosk/reports/briefing.hpp"

#include "kiosk/reports/page/document.hpp"
#include "kiosk/reports/page/placed_page.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"
#include "kiosk/wording/briefing_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

constexpr double kBarsHeight = 22.0; ///< mm, with the words under them
constexpr double kGap = 0.25;        ///< of a bar's column
constexpr Type kSmall{2.6, false};
constexpr Type kSmallBold{2.6, true};

/// Lots a week as an outline, the failed ones of them filled: this week's figures stand over its bar.
void drawBars(PlacedPage& page, const std::vector<BriefingWeek>& weeks, const Box& box, const QString& first,
              const QString& last) {
    int most = 1;
    for (const auto& week : weeks) {
        most = std::max(most, week.lots);
    }
    const double figures = lineHeight(kSmall);
    const double base = box.bottom() - figures;
    const double high = std::max(1.0, base - box.y - figures);
    const double column = box.width / static_cast<double>(std::max<std::size_t>(weeks.size(), 1));
    for (std::size_t i = 0; i < weeks.size(); ++i) {
        const double x = box.x + column * (static_cast<double>(i) + kGap / 2);
        const double width = column * (1 - kGap);
        const auto tall = [&](int lots) { return high * lots / most; };
        const Box all{x, base - tall(weeks[i].lots), width, tall(weeks[i].lots)};
        const Box failed{x, base - tall(weeks[i].failed), width, tall(weeks[i].failed)};
        if (weeks[i].lots > 0) {
            putFrame(page, all, kHair);
        }
        if (weeks[i].failed > 0) {
            page.ink.push_back(failed);
        }
        const bool now = i + 1 == weeks.size();
        const auto text = QStringLiteral("%1/%2").arg(weeks[i].failed).arg(weeks[i].lots);
        const auto& type = now ? kSmallBold : kSmall;
        if (advance(text, type) <= column) {
            put(page, x + (width - advance(text, type)) / 2, all.y - figures, text, type);
        }
    }
    page.ink.push_back({box.x, base, box.width, kHair});
    put(page, box.x, base + 0.4, first, kSmall);
    putRight(page, box.right(), base + 0.4, last, kSmallBold);
}

void addSentences(Document& document, const char* heading, const std::vector<std::string>& lines,
                  const ReportStyle& style) {
    if (heading != nullptr) {
        document.parts.emplace_back(DocHeading{said(style.speech, heading)});
    }
    for (const auto& line : lines) {
        document.parts.emplace_back(DocText{cleaned(line), Weight::text, 5});
    }
}

/// Short things of a list, as one paragraph.
std::vector<std::string> together(const std::vector<std::string>& lines) {
    std::string all;
    for (const auto& line : lines) {
        all += (all.empty() ? "" : " · ") + line;
    }
    return {all};
}

} // namespace

Reported briefing(const BriefingFacts& facts, const ReportStyle& style) {
    const auto& speech = style.speech;
    const auto words = wording::briefingSaid(facts.facts, facts.briefing, facts.due, speech);
    auto document = documentOf("briefing.title", facts.shop, facts.printed, style);
    document.titles = {said(speech, "briefing.title")};
    document.lines = {cleaned(words.days)};
    if (facts.isOfAnotherDay()) {
        document.lines << said(speech, "briefing.as-of-now");
    }
    document.parts = {DocText{cleaned(words.lead), Weight::lead, 4}};
    addSentences(document, nullptr, words.week, style);
    document.parts.emplace_back(
        DocDrawing{kBarsHeight, [weeks = facts.weeks, first = said(speech, "briefing.bars"),
                                 last = said(speech, "briefing.bars-now")](PlacedPage& page, const Box& box) {
                       drawBars(page, weeks, box, first, last);
                   }});
    constexpr std::size_t kDryers = 4; // so that it stays one page
    auto dryers = words.dryers;
    if (dryers.size() > kDryers) {
        dryers.resize(kDryers);
        dryers.push_back(speech.text("briefing.more", {{"count", std::to_string(words.dryers.size() - kDryers)}}));
    }
    addSentences(document, "briefing.heading.dryers", dryers, style);
    addSentences(document, "briefing.heading.shared", words.shared, style);
    addSentences(document, "briefing.heading.open", words.open, style);
    addSentences(document, "briefing.heading.due", together(words.due), style);
    addSentences(document, "briefing.heading.changed", together(words.changed), style);
    document.parts.emplace_back(
        DocText{said(speech, "briefing.head", {{"sequence", std::to_string(facts.sequence)}, {"hash", facts.head}}),
                Weight::small, 2});
    return reportOf("briefing-" + dateText(drivers::localDay(facts.now)).toStdString(), document, style);
}

} // namespace holdfast::kiosk::reports
