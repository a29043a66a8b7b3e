#include "kiosk/shop/trending/fix_worked.hpp"

#include <algorithm>
#include <map>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;

std::int64_t weeksFrom(std::int64_t earlier, std::int64_t later) {
    return later <= earlier ? 0 : (later - earlier) / kWeekMs;
}

/// Which lots are asked about, when each first went out, and how many complaints of print failure name it.
struct Sent final {
    std::vector<char> asked{};
    std::vector<std::int64_t> first{}; ///< 0: nothing went out
};

Sent sentOf(const TrendFacts& facts, const FixAsked& asked) {
    Sent sent{std::vector<char>(facts.lots.size(), asked.level ? 0 : 1),
              std::vector<std::int64_t>(facts.lots.size(), 0)};
    if (asked.level) {
        for (const auto lot : lotsWith(facts, *asked.level)) {
            sent.asked[static_cast<std::size_t>(lot)] = 1;
        }
    }
    for (const auto& shipment : facts.shipments) {
        auto& first = sent.first[static_cast<std::size_t>(shipment.lot)];
        first = first == 0 ? shipment.at : std::min(first, shipment.at);
    }
    return sent;
}

FactIndex lotOf(const TrendFacts& facts, const records::TrendComplaint& complaint) {
    if (complaint.lot != kNoFact || complaint.run == kNoFact) {
        return complaint.lot;
    }
    for (std::size_t i = 0; i < facts.lots.size(); ++i) {
        if (facts.lots[i].run == complaint.run) {
            return static_cast<FactIndex>(i);
        }
    }
    return kNoFact;
}

using Weeks = std::map<std::int64_t, st::ShippedWeek>; ///< by age

std::vector<st::ShippedWeek> listOf(const Weeks& weeks) {
    std::vector<st::ShippedWeek> all;
    for (const auto& [age, week] : weeks) {
        all.push_back(week);
    }
    return all;
}

struct Told final {
    Weeks before{};
    Weeks after{};
    std::vector<st::DelayCount> delays{};
};

Told toldOf(const TrendFacts& facts, const FixAsked& asked, FixVerdict& verdict) {
    const auto sent = sentOf(facts, asked);
    Told told;
    const auto oldest = asked.at - asked.lookBackWeeks * kWeekMs;
    const auto isAsked = [&](FactIndex lot) {
        return lot != kNoFact && sent.asked[static_cast<std::size_t>(lot)] != 0;
    };
    const auto weekFor = [&](std::int64_t at) -> st::ShippedWeek& {
        const auto age = weeksFrom(at, asked.now);
        auto& week = (at < asked.at ? told.before : told.after)[age];
        week.age = age;
        return week;
    };
    for (const auto& shipment : facts.shipments) {
        if (isAsked(shipment.lot) && shipment.at >= oldest && shipment.at <= asked.now) {
            weekFor(shipment.at).shipped += shipment.pieces;
            (shipment.at < asked.at ? verdict.shippedBefore : verdict.shippedAfter) += shipment.pieces;
        }
    }
    for (const auto& complaint : facts.complaints) {
        const auto lot = lotOf(facts, complaint);
        const auto first = lot == kNoFact ? 0 : sent.first[static_cast<std::size_t>(lot)];
        if (!records::isPrintFailure(complaint.what) || first == 0 || complaint.at > asked.now || first > asked.now) {
            continue;
        }
        const auto age = weeksFrom(first, asked.now);
        told.delays.push_back({std::min(weeksFrom(first, complaint.at), age), age, 1});
        if (isAsked(lot) && first >= oldest) {
            ++weekFor(first).complaints;
            ++(first < asked.at ? verdict.complaintsBefore : verdict.complaintsAfter);
        }
    }
    return told;
}

/// The same weeks as they will be seen so many weeks later.
std::vector<st::ShippedWeek> aged(std::vector<st::ShippedWeek> weeks, std::int64_t later) {
    for (auto& week : weeks) {
        week.age += later;
    }
    return weeks;
}

/// When nothing that went out since can have come back yet: the first later week in which something can, with what goes
/// out until then, and from there on as ever. Nothing if that is beyond the question's horizon.
std::optional<std::int64_t> weeksUntilShown(const st::DelayCurve& curve, const Told& told,
                                            const st::FixQuestion& question) {
    for (std::int64_t later = 1; later <= question.horizon; ++later) {
        auto after = aged(listOf(told.after), later);
        for (std::int64_t age = 0; age < later; ++age) {
            after.push_back({age, question.weeklyShipped, 0});
        }
        if (const auto check = st::checkFix(curve, aged(listOf(told.before), later), after, question)) {
            return check->weeksToShow ? std::optional{later + *check->weeksToShow} : std::nullopt;
        }
    }
    return std::nullopt;
}

} // namespace

Figure<FixVerdict> fixWorked(const TrendFacts& facts, const FixAsked& asked) {
    FixVerdict verdict;
    const auto told = toldOf(facts, asked, verdict);
    if (told.delays.empty() || verdict.complaintsBefore == 0) {
        return tl::unexpected(Refusal{NoFigure::tooFewFailures, verdict.complaintsBefore, 1});
    }
    if (verdict.shippedBefore == 0) {
        return tl::unexpected(Refusal{NoFigure::noLots, 0, 1});
    }
    const auto curve = st::delayCurve(told.delays);
    if (!curve) {
        return tl::unexpected(refusalOf(curve.error()));
    }
    st::FixQuestion question;
    const auto weeks =
        std::max<std::int64_t>(1, std::min(asked.lookBackWeeks, static_cast<std::int64_t>(told.before.size())));
    question.weeklyShipped = static_cast<double>(verdict.shippedBefore) / static_cast<double>(weeks);
    std::optional<std::int64_t> wait;
    if (const auto check = st::checkFix(*curve, listOf(told.before), listOf(told.after), question)) {
        verdict.check = *check;
        verdict.worked = check->afterOverBefore.less <= question.risk / 2.0;
        verdict.gotWorse = check->afterOverBefore.greater <= question.risk / 2.0;
        verdict.tooEarly = !verdict.worked && !verdict.gotWorse && check->powerNow < question.power;
        wait = check->weeksToShow;
    } else {
        verdict.tooEarly = true;
        wait = weeksUntilShown(*curve, told, question);
    }
    if (verdict.tooEarly && wait) {
        verdict.askAgain = asked.now + std::max<std::int64_t>(1, *wait) * kWeekMs;
    }
    return verdict;
}

} // namespace holdfast::kiosk::shop::trending
