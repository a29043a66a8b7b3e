#include "kiosk/command/book_trends.hpp"

#include "kiosk/command/suspects_command.hpp"
#include "kiosk/command/trace_text.hpp"
#include "kiosk/command/typed_values.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/shop/trending/suspects.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/risk_sentences.hpp"

#include <array>
#include <ostream>

namespace holdfast::kiosk::command {

namespace {

namespace trending = shop::trending;

Json levelJson(const trending::FactorLevel& level) {
    constexpr std::array<std::string_view, 10> kKinds{"dryer",  "bucket",   "family",    "fabric",     "cloth-lot",
                                                      "finish", "position", "wash-load", "instrument", "shift"};
    const bool numbered = level.kind == trending::FactorKind::bucket || level.kind == trending::FactorKind::washLoad;
    return {{"factor", kKinds[static_cast<std::size_t>(level.kind)]},
            {"level", wording::levelText(level, {})},
            {"number", numbered ? Json(level.number) : Json()}};
}

std::string_view strengthName(trending::Strength strength) {
    return strength == trending::Strength::strong ? "strong"
           : strength == trending::Strength::weak ? "weak"
                                                  : "by-chance";
}

Json suspectJson(const trending::Suspect& suspect) {
    Json json = levelJson(suspect.level);
    json["strength"] = strengthName(suspect.strength);
    json["failed_with"] = suspect.failedWith;
    json["with"] = suspect.with;
    json["failed_without"] = suspect.failedWithout;
    json["without"] = suspect.without;
    json["episodes"] = suspect.episodes;
    json["p"] = figure(suspect.p);
    json["exact"] = suspect.exact;
    json["q"] = figure(suspect.q);
    json["odds"] = figure(suspect.odds);
    json["odds_lower"] = suspect.odds ? figure(suspect.oddsLow) : Json();
    json["odds_upper"] = suspect.odds ? figure(suspect.oddsHigh) : Json();
    Json twins = Json::array();
    for (const auto& twin : suspect.sameAs) {
        twins.push_back(levelJson(twin));
    }
    json["cannot_be_told_apart_from"] = std::move(twins);
    json["trial_pieces_each_way"] = suspect.trial ? Json(suspect.trial->perArm) : Json();
    return json;
}

void saySuspect(Answer& answer, const trending::Suspect& suspect) {
    answer.say("suspect-of-book", {{"level", wording::levelText(suspect.level, {})},
                                   {"strength", said("strength." + std::string{strengthName(suspect.strength)})},
                                   {"failed-with", count(suspect.failedWith)},
                                   {"with", count(suspect.with)},
                                   {"failed-without", count(suspect.failedWithout)},
                                   {"without", count(suspect.without)},
                                   {"q", chanceShown(suspect.q)}});
    std::string others;
    for (const auto& twin : suspect.sameAs) {
        others += (others.empty() ? "" : ", ") + wording::levelText(twin, {});
    }
    if (!others.empty()) {
        answer.say("suspect-twins", {{"others", others}});
    }
}

Answer answerOf(const trending::Figure<trending::Suspects>& found, std::size_t most) {
    Answer answer;
    if (!found) {
        answer.json = refusalJson(found.error());
        answer.json["ranked"] = Json::array();
        answer.lines.push_back(refusalSaid(found.error()));
        return answer;
    }
    answer.json = {{"lots", found->lots},
                   {"failed", found->failed},
                   {"episodes", found->episodes},
                   {"looked_at", found->looked},
                   {"caveat", Json()}};
    answer.say("suspects", {{"failed", count(found->failed)},
                            {"lots", count(found->lots)},
                            {"episodes", count(found->episodes)},
                            {"looked", count(found->looked)}});
    Json ranked = Json::array();
    for (const auto& suspect : found->ranked) {
        if (ranked.size() == most) {
            break;
        }
        ranked.push_back(suspectJson(suspect));
        if (suspect.strength != trending::Strength::byChance) {
            saySuspect(answer, suspect);
        }
    }
    if (!found->names()) {
        answer.say("suspects-chance");
        if (!found->ranked.empty()) {
            saySuspect(answer, found->ranked.front());
        }
    } else {
        answer.say("suspects-sharing");
    }
    answer.json["ranked"] = std::move(ranked);
    return answer;
}

} // namespace

ledger::Result<BookRead> readBook(const std::filesystem::path& data) {
    auto book = ledger::Book::open(data, std::make_shared<records::ShopProjection>(), ledger::OpenMode::readOnly);
    if (!book) {
        return tl::unexpected(book.error());
    }
    auto facts = records::trendFacts((*book)->reader());
    if (!facts) {
        return tl::unexpected(facts.error());
    }
    return BookRead{std::move(*book), std::move(*facts)};
}

tl::expected<trending::TrendFilter, CommandFault> filterFrom(const FilterTyped& typed,
                                                             const records::TrendFacts& facts) {
    constexpr std::int64_t kMinuteMs = 60'000;
    trending::TrendFilter filter;
    if (!typed.dryer.empty()) {
        std::string known;
        for (const auto& dryer : facts.dryers) {
            known += (known.empty() ? "" : ", ") + dryer.name;
            if (tracefile::sameWord(dryer.name, typed.dryer)) {
                filter.dryer = dryer.id;
            }
        }
        if (!filter.dryer) {
            return tl::unexpected(CommandFault{"dryer-unknown", {{"name", typed.dryer}, {"known", known}}});
        }
    }
    if (!typed.family.empty()) {
        filter.family = typed.family;
    }
    const auto beginOf = [&](analytics::Date day) {
        return std::int64_t{day.time_since_epoch().count()} * trending::kDayMs - facts.utcOffsetMinutes * kMinuteMs;
    };
    for (const auto& [text, last] : {std::pair{typed.from, false}, std::pair{typed.to, true}}) {
        const auto day = text.empty() ? std::nullopt : dateFrom(text);
        if (!text.empty() && !day) {
            return tl::unexpected(
                CommandFault{"day-unreadable", {{"option", last ? "--to" : "--from"}, {"text", text}}});
        }
        if (day) {
            (last ? filter.to : filter.from) = beginOf(*day) + (last ? trending::kDayMs : 0);
        }
    }
    return filter;
}

std::string_view nameOf(trending::NoFigure why) noexcept {
    constexpr std::array<std::string_view, 22> kNames{
        "no-readings",         "no-lots",           "too-few-episodes", "too-few-failures",  "too-few-survivals",
        "too-few-failed-lots", "too-few-held-lots", "too-few-weeks",    "too-few-pairs",     "all-equal",
        "only-strips",         "too-many-open",     "nothing-failed",   "everything-failed", "one-episode",
        "nothing-to-compare",  "no-change",         "separated",        "not-fitted",        "not-finite",
        "nothing-shared",      "too-early"};
    static_assert(static_cast<std::size_t>(trending::NoFigure::tooEarly) == kNames.size() - 1);
    return kNames[static_cast<std::size_t>(why)];
}

Json refusalJson(const trending::Refusal& refusal) {
    return {{"why_not", nameOf(refusal.why)}, {"have", refusal.have}, {"need", refusal.need}};
}

std::string refusalSaid(const trending::Refusal& refusal) {
    return said("why-not", {{"why", wording::whyText(refusal, {})}});
}

std::string daySaid(std::int64_t at, const records::TrendFacts& facts) {
    return wording::dayOf(at, facts.utcOffsetMinutes);
}

int runBookSuspects(const SuspectsTyped& typed, const std::filesystem::path& data, std::ostream& out,
                    std::ostream& err) {
    const auto book = readBook(data);
    if (!book) {
        return tell(book.error(), err);
    }
    const auto filter = filterFrom({{}, {}, typed.from, typed.to}, book->facts);
    if (!filter) {
        return tell(tl::unexpected(filter.error()), typed.json, out, err);
    }
    trending::SuspectQuestion question;
    question.filter = *filter;
    question.shift = typed.shift;
    question.most = typed.most;
    return tell(answerOf(trending::suspects(book->facts, question), typed.most), typed.json, out, err);
}

} // namespace holdfast::kiosk::command
