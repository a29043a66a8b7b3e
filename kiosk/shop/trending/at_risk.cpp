#include "kiosk/shop/trending/at_risk.hpp"

#include "kiosk/shop/trending/episodes.hpp"
#include "kiosk/shop/trending/risk_evidence.hpp"

#include <algorithm>
#include <tuple>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;
using analytics::TemperatureDifference;
using analytics::Word;
using records::TestOutcome;

constexpr std::size_t kPiecesToWash = 3;
constexpr std::size_t kSuspectsLooked = 60; ///< of which those that the lot carries are given

/// The lot that is asked about: named, else the run's that failed, else its first.
FactIndex lotAsked(const TrendFacts& facts, const RiskQuestion& question, const std::vector<LotOutcome>& outcomes) {
    FactIndex first = kNoFact;
    for (std::size_t i = 0; i < facts.lots.size(); ++i) {
        const auto& lot = facts.lots[i];
        if (question.lot && lot.id == *question.lot) {
            return static_cast<FactIndex>(i);
        }
        const bool ofRun =
            question.run && lot.run != kNoFact && facts.runs[static_cast<std::size_t>(lot.run)].id == *question.run;
        if (!question.lot && ofRun && !lot.isReRun && first == kNoFact) {
            first = static_cast<FactIndex>(i);
        }
    }
    if (question.lot || first == kNoFact) {
        return kNoFact;
    }
    for (const auto& outcome : outcomes) {
        const auto& lot = facts.lots[static_cast<std::size_t>(outcome.lot)];
        if (outcome.failed && lot.run == facts.lots[static_cast<std::size_t>(first)].run) {
            return outcome.lot;
        }
    }
    return first;
}

/// Bad of looked at, by what found the failures: washed prints where tests found most of them, else readings.
struct Counted final {
    std::vector<st::CountOf> byLot{};
    bool byTests = false;
};

Counted countOf(const TrendFacts& facts, const std::vector<FactIndex>& lots, const std::vector<LotOutcome>& outcomes) {
    std::int64_t tests = 0;
    std::int64_t readings = 0;
    for (const auto& outcome : outcomes) {
        if (std::binary_search(lots.begin(), lots.end(), outcome.lot)) {
            tests += outcome.failedTests.empty() && outcome.complaints.empty() ? 0 : 1;
            readings += outcome.badReadings.empty() ? 0 : 1;
        }
    }
    Counted counted{std::vector<st::CountOf>(facts.lots.size()), tests > readings};
    if (!counted.byTests) {
        for (const auto& outcome : outcomes) {
            counted.byLot[static_cast<std::size_t>(outcome.lot)] = {outcome.badDrawn, outcome.drawn};
        }
        return counted;
    }
    std::vector<int> state(facts.prints.size(), 0); // 1 passed, 2 failed
    for (const auto& test : facts.tests) {
        if (test.print != kNoFact) {
            auto& print = state[static_cast<std::size_t>(test.print)];
            print = test.counts == TestOutcome::failed   ? 2
                    : test.counts == TestOutcome::passed ? std::max(print, 1)
                                                         : print;
        }
    }
    for (std::size_t i = 0; i < state.size(); ++i) {
        auto& count = counted.byLot[static_cast<std::size_t>(facts.prints[i].lot)];
        count.of += state[i] != 0 ? 1 : 0;
        count.hits += state[i] == 2 ? 1 : 0;
    }
    return counted;
}

LotAtRisk lotAtRisk(const TrendFacts& facts, FactIndex index) {
    const auto& lot = facts.lots[static_cast<std::size_t>(index)];
    LotAtRisk at;
    at.lot = index;
    at.run = lot.run;
    at.pieces = lot.made;
    at.shipped = lot.shipped;
    at.state = lot.state;
    if (lot.made) {
        at.here = std::max(0, *lot.made - lot.shipped);
    }
    return at;
}

void addReadings(const TrendFacts& facts, std::vector<LotAtRisk>& lots, const std::vector<std::size_t>& placeOf) {
    constexpr auto kNot = static_cast<std::size_t>(-1);
    for (const auto& reading : facts.readings) {
        const auto place = reading.lot == kNoFact ? kNot : placeOf[static_cast<std::size_t>(reading.lot)];
        const auto& low = reading.margin.low ? reading.margin.low : reading.margin.high;
        if (place == kNot || !isDrawn(reading.reason) || !low || !low->isFinite()) {
            continue;
        }
        if (auto& lot = lots[place]; !lot.margin || *low < *lot.margin) {
            lot.margin = low;
            lot.worst = reading.word;
        }
    }
    for (const auto& test : facts.tests) {
        const auto place = placeOf[static_cast<std::size_t>(test.lot)];
        if (place != kNot) {
            lots[place].badTests += test.counts == TestOutcome::failed ? 1 : 0;
            lots[place].tests += test.counts == TestOutcome::failed || test.counts == TestOutcome::passed ? 1 : 0;
        }
    }
    for (std::size_t i = 0; i < facts.shipments.size(); ++i) {
        const auto place = placeOf[static_cast<std::size_t>(facts.shipments[i].lot)];
        if (place != kNot) {
            lots[place].shipments.push_back(static_cast<FactIndex>(i));
        }
    }
}

st::LotAsked askedOf(const LotAtRisk& lot, const st::CountOf& own) {
    return {own, std::max<std::int64_t>(lot.pieces.value_or(0), own.of)};
}

void addChance(const Counted& counted, AtRisk& risk) {
    std::vector<st::CountOf> known;
    std::vector<st::LotAsked> asked;
    for (const auto& lot : risk.lots) {
        const auto& own = counted.byLot[static_cast<std::size_t>(lot.lot)];
        if (own.of > 0) {
            known.push_back(own);
        }
        if (lot.pieces) {
            asked.push_back(askedOf(lot, own));
        }
    }
    const auto model = st::fitLots(known);
    if (!model) {
        risk.bad = tl::unexpected(Refusal{NoFigure::noReadings, 0, 1});
        for (auto& lot : risk.lots) {
            lot.bad = tl::unexpected(Refusal{NoFigure::noReadings, 0, 1});
        }
        return;
    }
    risk.caveat = model->caveat;
    const auto figureOf = [](const tl::expected<st::BadPieces, st::StatisticsFault>& bad) {
        return bad ? Figure<st::BadPieces>{*bad} : Figure<st::BadPieces>{tl::unexpected(refusalOf(bad.error()))};
    };
    for (auto& lot : risk.lots) {
        lot.bad = lot.pieces
                      ? figureOf(st::predictBad(*model, askedOf(lot, counted.byLot[static_cast<std::size_t>(lot.lot)])))
                      : Figure<st::BadPieces>{tl::unexpected(Refusal{NoFigure::noLots, 0, 1})};
    }
    risk.bad = figureOf(st::predictBadTogether(*model, asked));
}

double chanceOf(const LotAtRisk& lot) {
    return lot.bad && lot.pieces.value_or(0) > 0 ? lot.bad->expected / *lot.pieces : 0.0;
}

/// Most likely bad first, lowest margin, oldest; one a lot before a second.
void chooseWash(const TrendFacts& facts, AtRisk& risk, const std::vector<std::size_t>& placeOf) {
    struct Choice final {
        std::tuple<int, double, double, std::int64_t> order{};
        PieceToWash piece{};
    };
    std::vector<char> tested(facts.prints.size(), 0);
    for (const auto& test : facts.tests) {
        if (test.print != kNoFact) {
            tested[static_cast<std::size_t>(test.print)] = 1;
        }
    }
    std::vector<Choice> choices;
    std::vector<int> ofLot(facts.lots.size(), 0);
    for (std::size_t i = 0; i < facts.prints.size(); ++i) {
        const auto& print = facts.prints[i];
        const auto place = placeOf[static_cast<std::size_t>(print.lot)];
        if (place == static_cast<std::size_t>(-1) || print.shelf.empty() || print.ended || tested[i] != 0) {
            continue;
        }
        const auto& lot = risk.lots[place];
        const double margin = lot.margin ? lot.margin->celsius() : 0.0;
        const int turn = ofLot[static_cast<std::size_t>(print.lot)]++;
        choices.push_back({{turn, -chanceOf(lot), margin, print.namedAt},
                           {static_cast<FactIndex>(i), print.lot, print.shelf, chanceOf(lot)}});
    }
    std::stable_sort(choices.begin(), choices.end(), [](const auto& a, const auto& b) { return a.order < b.order; });
    for (std::size_t i = 0; i < choices.size() && i < kPiecesToWash; ++i) {
        risk.wash.push_back(choices[i].piece);
    }
}

/// Those that the lot carries, the strongest first; the named one whatever its strength.
void takeSuspects(const TrendFacts& facts, const RiskQuestion& question, FactIndex lot, AtRisk& risk) {
    SuspectQuestion asked;
    asked.filter = question.filter;
    asked.seed = question.seed;
    asked.most = question.suspect ? static_cast<std::size_t>(-1) : kSuspectsLooked;
    auto found = suspects(facts, asked);
    if (!found) {
        risk.suspect = tl::unexpected(found.error());
        return;
    }
    const auto levels = levelsOfLot(facts, lot);
    risk.suspect = tl::unexpected(Refusal{NoFigure::noChange, found->failed, found->lots});
    for (auto& one : found->ranked) {
        const bool carried = std::find(levels.begin(), levels.end(), one.level) != levels.end();
        const bool named = question.suspect && one.level == *question.suspect;
        if (named || (!question.suspect && carried && !risk.suspect && one.strength != Strength::byChance)) {
            risk.suspect = one;
        } else if (carried && risk.others.size() < kPiecesToWash) {
            risk.others.push_back(std::move(one));
        }
    }
}

std::vector<FactIndex> sharing(const TrendFacts& facts, FactIndex lot, const AtRisk& risk) {
    if (risk.suspect) {
        auto lots = lotsWith(facts, risk.suspect->level);
        if (!std::binary_search(lots.begin(), lots.end(), lot)) {
            lots.insert(std::upper_bound(lots.begin(), lots.end(), lot), lot);
        }
        return lots;
    }
    const auto episodes = episodeOfLots(facts);
    std::vector<FactIndex> lots;
    for (std::size_t i = 0; i < episodes.size(); ++i) {
        if (episodes[i] == episodes[static_cast<std::size_t>(lot)] && !facts.lots[i].isReRun) {
            lots.push_back(static_cast<FactIndex>(i));
        }
    }
    return lots;
}

} // namespace

Figure<AtRisk> atRisk(const TrendFacts& facts, const RiskQuestion& question) {
    const auto outcomes = lotOutcomes(facts, question.filter);
    const auto lot = lotAsked(facts, question, outcomes);
    if (lot == kNoFact) {
        return tl::unexpected(Refusal{NoFigure::noLots, 0, 1});
    }
    AtRisk risk;
    takeSuspects(facts, question, lot, risk);
    const auto with = sharing(facts, lot, risk);
    const auto suspect = risk.suspect ? std::optional{*risk.suspect} : std::nullopt;
    risk.evidence = evidenceOf(facts, lot, outcomes, suspect, with, question.complaint);
    risk.ours = judgeEvidence(risk.evidence, suspect);
    std::vector<std::size_t> placeOf(facts.lots.size(), static_cast<std::size_t>(-1));
    for (const auto one : with) {
        placeOf[static_cast<std::size_t>(one)] = risk.lots.size();
        risk.lots.push_back(lotAtRisk(facts, one));
        risk.lots.back().asked = one == lot;
    }
    for (const auto& outcome : outcomes) {
        if (const auto place = placeOf[static_cast<std::size_t>(outcome.lot)]; place != static_cast<std::size_t>(-1)) {
            risk.lots[place].failed = outcome.failed;
        }
    }
    addReadings(facts, risk.lots, placeOf);
    addChance(countOf(facts, with, outcomes), risk);
    chooseWash(facts, risk, placeOf);
    std::stable_sort(risk.lots.begin(), risk.lots.end(), [](const LotAtRisk& a, const LotAtRisk& b) {
        return std::tuple{!a.asked, -chanceOf(a)} < std::tuple{!b.asked, -chanceOf(b)};
    });
    for (const auto& one : risk.lots) {
        risk.pieces += one.pieces.value_or(0);
        risk.shipped += one.shipped;
        risk.here += one.here.value_or(0);
    }
    if (risk.suspect) {
        risk.since = sinceWhen(facts, question.filter, risk.suspect->level, question.seed);
    } else {
        risk.since = tl::unexpected(Refusal{NoFigure::nothingShared, 0, 1});
    }
    return risk;
}

} // namespace holdfast::kiosk::shop::trending
