#include "kiosk/command/report_command.hpp"

#include "kiosk/command/book_trends.hpp"
#include "kiosk/command/typed_values.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/reports/briefing.hpp"
#include "kiosk/reports/page/paint.hpp"
#include "kiosk/wording/briefing_sentences.hpp"
#include "kiosk/wording/risk_sentences.hpp"

#include <fstream>
#include <ostream>

namespace holdfast::kiosk::command {

namespace {

namespace trending = shop::trending;

std::string_view standingName(trending::Standing standing) {
    switch (standing) {
    case trending::Standing::usual:
        return "usual";
    case trending::Standing::better:
        return "better";
    case trending::Standing::worse:
        return "worse";
    case trending::Standing::notEnough:
        break;
    }
    return "not-enough";
}

Json againstJson(const trending::AgainstBefore<double>& figures) {
    return {{"week", figure(figures.week)},
            {"before", figure(figures.before)},
            {"standing", standingName(figures.standing)}};
}

Json kelvinsJson(const std::optional<analytics::TemperatureDifference>& difference) {
    return difference ? figure(difference->celsius()) : Json();
}

Json dryersJson(const reports::BriefingFacts& facts) {
    Json all = Json::array();
    for (const auto& week : facts.briefing.dryers) {
        all.push_back({{"dryer", facts.facts.dryers[static_cast<std::size_t>(week.dryer)].name},
                       {"standing", standingName(week.standing)},
                       {"margin_c", kelvinsJson(week.margin)},
                       {"margin_before_c", kelvinsJson(week.before)},
                       {"readings", week.readings},
                       {"episodes", week.episodes},
                       {"missed", week.missed},
                       {"lots", week.lots},
                       {"failed", week.failed}});
    }
    return all;
}

Json lotsJson(const reports::BriefingFacts& facts, const std::vector<trending::FactIndex>& lots) {
    Json all = Json::array();
    for (const auto index : lots) {
        const auto& lot = facts.facts.lots[static_cast<std::size_t>(index)];
        all.push_back({{"run", facts.facts.runs[static_cast<std::size_t>(lot.run)].number}, {"lot", lot.number}});
    }
    return all;
}

Json jsonOf(const reports::BriefingFacts& facts, const wording::Speech& speech) {
    const auto& briefing = facts.briefing;
    Json json{{"shop", facts.shop},
              {"demo", facts.demo},
              {"from", daySaid(briefing.from, facts.facts)},
              {"to", daySaid(briefing.to - 1, facts.facts)},
              {"weeks_before", briefing.weeksBefore},
              {"readings", againstJson(briefing.readings)},
              {"missed", againstJson(briefing.missed)},
              {"lots", againstJson(briefing.lots)},
              {"failed_lots", againstJson(briefing.failedLots)},
              {"failed_share", figure(briefing.failedShare)},
              {"failed_share_before", figure(briefing.failedShareBefore)},
              {"failed_p", figure(briefing.failedP)}};
    json["margin"] = briefing.margin ? Json{{"week_c", figure(briefing.margin->week.celsius())},
                                            {"before_c", figure(briefing.margin->before.celsius())},
                                            {"standing", standingName(briefing.margin->standing)}}
                                     : Json();
    json["dryers"] = dryersJson(facts);
    json["failed"] = lotsJson(facts, briefing.failedLotsOfWeek);
    json["on_hold"] = lotsJson(facts, briefing.onHold);
    json["open_complaints"] = briefing.openComplaints.size();
    Json changed = Json::array();
    for (const auto event : briefing.changed) {
        changed.push_back(wording::eventText(facts.facts, facts.facts.events[static_cast<std::size_t>(event)], speech));
    }
    json["changed"] = std::move(changed);
    Json due = Json::array();
    for (const auto& item : facts.due.items) {
        due.push_back(wording::briefingDue(item, speech));
    }
    json["due"] = std::move(due);
    json["tests_due"] = {{"today", facts.due.tests.today},
                         {"late", facts.due.tests.late},
                         {"within_seven_days", facts.due.tests.soon},
                         {"sentences", wording::briefingTestsDue(facts.due.tests, speech)}};
    Json weeks = Json::array();
    for (const auto& week : facts.weeks) {
        weeks.push_back({{"from", daySaid(week.from, facts.facts)}, {"lots", week.lots}, {"failed", week.failed}});
    }
    json["weeks"] = std::move(weeks);
    json["head"] = facts.head;
    json["sequence"] = facts.sequence;
    return json;
}

tl::expected<void, CommandFault> writePdf(const reports::BriefingFacts& facts, const reports::ReportStyle& style,
                                          const std::string& path, const DrawingReady& ready) {
    const auto unwritten = [&] { return tl::unexpected(CommandFault{"pdf-not-written", {{"path", path}}}); };
    const auto screen = ready ? ready() : std::shared_ptr<void>{};
    if (!screen) {
        return unwritten();
    }
    const auto report = reports::briefing(facts, style);
    if (!report) {
        return unwritten();
    }
    const auto bytes = reports::pdfOf(report->pages, report->name);
    if (!bytes) {
        return unwritten();
    }
    std::ofstream file{path, std::ios::binary | std::ios::trunc};
    file.write(bytes->constData(), bytes->size());
    file.close();
    if (!file) {
        return unwritten();
    }
    return {};
}

} // namespace

int runReport(const ReportTyped& typed, const std::filesystem::path& data, const drivers::WallTime& now,
              const DrawingReady& ready, std::ostream& out, std::ostream& err) {
    const auto book = ledger::Book::open(data, std::make_shared<records::ShopProjection>(), ledger::OpenMode::readOnly);
    if (!book) {
        return tell(book.error(), err);
    }
    const auto head = (*book)->head();
    if (!head) {
        return tell(head.error(), err);
    }
    auto until = now;
    if (const auto newest = (*book)->entry(head->sequence)) { // days are the shop's, wherever this is asked
        until.utcOffsetMinutes = newest->utcOffsetMinutes;
    }
    if (!typed.day.empty()) {
        constexpr std::int64_t kMinuteMs = 60'000;
        const auto day = dateFrom(typed.day);
        if (!day) {
            return tell(tl::unexpected(CommandFault{"day-unreadable", {{"option", "--day"}, {"text", typed.day}}}),
                        typed.json, out, err);
        }
        until.millisecondsSinceEpoch =
            (std::int64_t{day->time_since_epoch().count()} + 1) * trending::kDayMs - until.utcOffsetMinutes * kMinuteMs;
    }
    auto facts = reports::briefingFacts((*book)->reader(), *head, until);
    if (!facts) {
        return tell(facts.error(), err);
    }
    facts->printed = now;
    reports::ReportStyle style;
    style.demo = facts->demo;
    style.speech = {
        &wording::Language::ofCode(typed.language),
        {typed.fahrenheit ? analytics::TemperatureUnit::fahrenheit : analytics::TemperatureUnit::celsius, 1},
        {}};
    Answer answer;
    answer.json = jsonOf(*facts, style.speech);
    answer.lines = wording::briefingSentences(facts->facts, facts->briefing, facts->due, style.speech);
    if (facts->isOfAnotherDay()) {
        answer.lines.push_back(style.speech.text("briefing.as-of-now"));
    }
    if (facts->demo) {
        answer.lines.insert(answer.lines.begin(), style.speech.text("reports.demo"));
    }
    if (!typed.pdf.empty()) {
        if (const auto written = writePdf(*facts, style, typed.pdf, ready); !written) {
            return tell(tl::unexpected(written.error()), typed.json, out, err);
        }
        answer.json["pdf"] = typed.pdf;
        answer.say("pdf-written", {{"path", typed.pdf}});
    }
    return tell(answer, typed.json, out, err);
}

} // namespace holdfast::kiosk::command
