#include "kiosk/wording/briefing_sentences.hpp"

#include "kiosk/shop/testing/print_code.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/risk_sentences.hpp"
#include "kiosk/wording/testing_sentences.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace holdfast::kiosk::wording {

namespace {

namespace trending = shop::trending;
namespace st = analytics::statistics;
using trending::Briefing;
using trending::FactIndex;

constexpr double kHundred = 100.0;

template <class T>
const T& at(const std::vector<T>& list, FactIndex index) {
    return list[static_cast<std::size_t>(index)];
}

const char* keyOf(trending::Standing standing) {
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

std::string whole(double figure) {
    return numberText(figure, 0);
}

/// A mean a week: a tenth where it is small.
std::string mean(double figure) {
    constexpr double kSmall = 20.0;
    return numberText(figure, figure < kSmall && figure != std::floor(figure) ? 1 : 0);
}

std::string chance(double p) {
    constexpr double kLeast = 0.001;
    return numberText(std::max(p, kLeast), 3);
}

class Saying final {
public:
    Saying(const records::TrendFacts& facts, const Briefing& briefing, const Speech& speech)
        : m_facts{facts}, m_briefing{briefing}, m_speech{speech} {}

    std::string days() const {
        return said("days", {{"from", dayOf(m_briefing.from, m_facts.utcOffsetMinutes)},
                             {"to", dayOf(m_briefing.to - 1, m_facts.utcOffsetMinutes)}});
    }

    std::string lead() const {
        if (m_briefing.lots.week <= 0.0) {
            return said("lead.no-lots");
        }
        return said(std::string{"lead."} + keyOf(m_briefing.failedLots.standing),
                    {{"failed", whole(m_briefing.failedLots.week)},
                     {"lots", whole(m_briefing.lots.week)},
                     {"share", numberText(kHundred * m_briefing.failedShareBefore, 1)},
                     {"weeks", std::to_string(m_briefing.weeksBefore)},
                     {"p", chance(m_briefing.failedP)}});
    }

    std::vector<std::string> week() const {
        std::vector<std::string> out;
        if (m_briefing.margin) {
            out.push_back(said(std::string{"margin."} + keyOf(m_briefing.margin->standing),
                               {{"week", m_speech.figures.signedDifference(m_briefing.margin->week)},
                                {"before", m_speech.figures.signedDifference(m_briefing.margin->before)}}));
        } else {
            out.push_back(said("margin.none"));
        }
        out.push_back(said("readings", {{"readings", whole(m_briefing.readings.week)},
                                        {"readings-before", mean(m_briefing.readings.before)},
                                        {"missed", whole(m_briefing.missed.week)},
                                        {"missed-before", mean(m_briefing.missed.before)}}));
        if (m_briefing.missed.standing == trending::Standing::worse) {
            out.push_back(said("missed-more"));
        }
        return out;
    }

    std::vector<std::string> dryers() const {
        std::vector<std::string> out;
        bool stands = false;
        for (const auto& week : m_briefing.dryers) {
            stands = stands || week.standing == trending::Standing::worse;
            const bool margins = week.margin && week.before;
            Arguments arguments{{"dryer", at(m_facts.dryers, week.dryer).name},
                                {"standing", said(std::string{"standing."} + keyOf(week.standing))},
                                {"failed", std::to_string(week.failed)},
                                {"lots", std::to_string(week.lots)},
                                {"missed", std::to_string(week.missed)}};
            if (margins) {
                arguments["margin"] = m_speech.figures.signedDifference(*week.margin);
                arguments["before"] = m_speech.figures.signedDifference(*week.before);
            }
            out.push_back(said(margins ? "dryer" : "dryer-no-margin", arguments));
        }
        if (!stands) {
            out.insert(out.begin(), said(out.empty() ? "dryers-none" : "dryers-alike"));
        }
        return out;
    }

    std::vector<std::string> shared() const {
        std::vector<std::string> out;
        if (!m_briefing.suspects) {
            out.push_back(said("shared-not", {{"why", whyText(m_briefing.suspects.error(), m_speech)}}));
        } else if (!m_briefing.suspects->names()) {
            out.push_back(said("shared-chance", {{"failed", std::to_string(m_briefing.suspects->failed)},
                                                 {"lots", std::to_string(m_briefing.suspects->lots)}}));
        } else {
            addSuspect(out, m_briefing.suspects->ranked.front());
        }
        addDrifts(out);
        addInstruments(out);
        return out;
    }

    std::vector<std::string> open() const {
        std::vector<std::string> out;
        if (!m_briefing.failedLotsOfWeek.empty()) {
            out.push_back(said("failed-lots", {{"lots", lotList(m_briefing.failedLotsOfWeek)}}));
        }
        out.push_back(m_briefing.onHold.empty() ? said("held-none")
                                                : said("held", {{"count", std::to_string(m_briefing.onHold.size())},
                                                                {"lots", lotList(m_briefing.onHold)}}));
        if (!m_briefing.openComplaints.empty()) {
            out.push_back(said("complaints", {{"count", std::to_string(m_briefing.openComplaints.size())}}));
        }
        return out;
    }

    std::vector<std::string> changed() const {
        constexpr std::size_t kMost = 6;
        std::vector<std::string> out;
        for (std::size_t i = 0; i < std::min(kMost, m_briefing.changed.size()); ++i) {
            const auto& event = at(m_facts.events, m_briefing.changed[i]);
            out.push_back(said("event", {{"day", dayOf(event.at, m_facts.utcOffsetMinutes)},
                                         {"event", eventText(m_facts, event, m_speech)}}));
        }
        if (m_briefing.changed.size() > kMost) {
            out.push_back(said("more", {{"count", std::to_string(m_briefing.changed.size() - kMost)}}));
        }
        if (out.empty()) {
            out.push_back(said("changed-none"));
        }
        return out;
    }

private:
    [[nodiscard]] std::string said(const std::string& key, const Arguments& arguments = {}) const {
        return m_speech.text("briefing." + key, arguments);
    }

    /// "20418 lot 1, 20422 lot 2"
    [[nodiscard]] std::string lotList(const std::vector<FactIndex>& lots) const {
        constexpr std::size_t kMost = 8;
        std::string list;
        for (std::size_t i = 0; i < std::min(kMost, lots.size()); ++i) {
            const auto& lot = at(m_facts.lots, lots[i]);
            const auto run =
                lot.run == trending::kNoFact ? std::string{"?"} : std::to_string(at(m_facts.runs, lot.run).number);
            list += (list.empty() ? "" : ", ") + said("lot", {{"run", run}, {"lot", std::to_string(lot.number)}});
        }
        return lots.size() > kMost ? said("list-more", {{"list", list}, {"count", std::to_string(lots.size() - kMost)}})
                                   : list;
    }

    void addSuspect(std::vector<std::string>& out, const trending::Suspect& suspect) const {
        const bool strong = suspect.strength == trending::Strength::strong;
        out.push_back(
            said(strong ? "shared-strong" : "shared-weak", {{"level", levelText(suspect.level, m_speech)},
                                                            {"failed-with", std::to_string(suspect.failedWith)},
                                                            {"with", std::to_string(suspect.with)},
                                                            {"failed-without", std::to_string(suspect.failedWithout)},
                                                            {"without", std::to_string(suspect.without)}}));
        std::string twins;
        for (const auto& twin : suspect.sameAs) {
            twins += (twins.empty() ? "" : ", ") + levelText(twin, m_speech);
        }
        if (!twins.empty()) {
            out.push_back(said("shared-twins", {{"others", twins}}));
        }
        out.push_back(said("shared-not-causing"));
    }

    void addDrifts(std::vector<std::string>& out) const {
        for (const auto& [dryer, drift] : m_briefing.drifts) {
            if (!drift || drift->mostAWeek.celsius() >= 0.0 || drift->standing == st::DriftStanding::TooFewPoints) {
                continue;
            }
            auto figures = m_speech.figures;
            figures.decimals = std::max(1, figures.decimals);
            const bool crosses = drift->standing == st::DriftStanding::Crosses;
            out.push_back(
                said(crosses ? "drift-crosses" : "drift", {{"dryer", at(m_facts.dryers, dryer).name},
                                                           {"a-week", figures.difference(drift->aWeek)},
                                                           {"least", figures.difference(drift->mostAWeek)},
                                                           {"most", figures.difference(drift->leastAWeek)},
                                                           {"earliest", whole(std::floor(drift->weeksEarliest))},
                                                           {"latest", whole(std::ceil(drift->weeksLatest))}}));
        }
    }

    void addInstruments(std::vector<std::string>& out) const {
        if (!m_briefing.instruments) {
            return;
        }
        for (const auto& offset : *m_briefing.instruments) {
            if (offset.strength != trending::Strength::strong) {
                continue;
            }
            auto figures = m_speech.figures;
            figures.decimals = std::max(1, figures.decimals);
            const bool hotter = offset.hotter.celsius() > 0.0;
            out.push_back(said(hotter ? "reads-hotter" : "reads-colder",
                               {{"instrument", at(m_facts.instruments, offset.instrument).name},
                                {"offset", figures.difference(offset.hotter)},
                                {"least", figures.signedDifference(offset.least)},
                                {"most", figures.signedDifference(offset.most)},
                                {"pairs", std::to_string(offset.pairs)}}));
        }
    }

    const records::TrendFacts& m_facts;
    const Briefing& m_briefing;
    const Speech& m_speech;
};

std::string isoDay(analytics::Date date) {
    const std::chrono::year_month_day day{date};
    char text[40];
    std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                  static_cast<unsigned>(day.day()));
    return text;
}

} // namespace

std::string briefingDue(const records::DueItem& item, const Speech& speech) {
    Arguments arguments{{"subject", item.subject}, {"run", std::to_string(item.runNumber)}};
    if (item.kind == records::DueKind::firstReading) {
        return speech.text("briefing.due.first-reading", arguments);
    }
    const auto key = item.kind == records::DueKind::certificateDue ? "briefing.due.certificate" : "briefing.due.check";
    arguments["day"] = item.due ? isoDay(*item.due) : speech.text("briefing.due.now");
    return speech.text(key, arguments);
}

std::vector<std::string> briefingTestsDue(const shop::TestsDue& tests, const Speech& speech) {
    std::vector<std::string> out;
    if (tests.today > 0) {
        out.push_back(speech.text(tests.late > 0 ? "briefing.due.tests-late" : "briefing.due.tests",
                                  {{"count", std::to_string(tests.today)}, {"late", std::to_string(tests.late)}}));
    }
    for (const auto& one : tests.latest) {
        const auto day = isoDay(one.due.day);
        out.push_back(
            one.print == 0
                ? speech.text("briefing.due.late-load", {{"load", std::to_string(one.due.loadNumber)}, {"day", day}})
                : speech.text("briefing.due.late-print", {{"print", shop::printSigns(one.print)},
                                                          {"run", std::to_string(one.run)},
                                                          {"test", testTitle(one.method, one.due.cycle, speech)},
                                                          {"day", day}}));
    }
    if (tests.soon > 0) {
        out.push_back(speech.text("briefing.due.tests-soon", {{"count", std::to_string(tests.soon)}}));
    }
    return out;
}

BriefingSaid briefingSaid(const records::TrendFacts& facts, const Briefing& briefing, const BriefingDue& due,
                          const Speech& speech) {
    constexpr std::size_t kMost = 6;
    const Saying saying{facts, briefing, speech};
    BriefingSaid said{
        saying.days(),   saying.lead(), saying.week(), saying.dryers(), saying.shared(), saying.open(), {},
        saying.changed()};
    said.due = briefingTestsDue(due.tests, speech);
    for (std::size_t i = 0; i < std::min(kMost, due.items.size()); ++i) {
        said.due.push_back(briefingDue(due.items[i], speech));
    }
    if (due.items.size() > kMost) {
        said.due.push_back(speech.text("briefing.more", {{"count", std::to_string(due.items.size() - kMost)}}));
    }
    if (said.due.empty()) {
        said.due.push_back(speech.text("briefing.due-none"));
    }
    return said;
}

std::vector<std::string> briefingSentences(const records::TrendFacts& facts, const Briefing& briefing,
                                           const BriefingDue& due, const Speech& speech) {
    const auto said = briefingSaid(facts, briefing, due, speech);
    std::vector<std::string> out{speech.text("briefing.heading", {{"days", said.days}}), said.lead};
    out.insert(out.end(), said.week.begin(), said.week.end());
    const auto add = [&](const char* heading, const std::vector<std::string>& lines) {
        out.push_back(speech.text(heading));
        for (const auto& line : lines) {
            out.push_back("  " + line);
        }
    };
    add("briefing.heading.dryers", said.dryers);
    add("briefing.heading.shared", said.shared);
    add("briefing.heading.open", said.open);
    add("briefing.heading.due", said.due);
    add("briefing.heading.changed", said.changed);
    return out;
}

} // namespace holdfast::kiosk::wording
