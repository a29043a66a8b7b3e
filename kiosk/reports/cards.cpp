#include "kiosk/reports/cards.hpp"

#include "kiosk/reports/page/grid.hpp"
#include "kiosk/reports/page/typesetting.hpp"
#include "kiosk/reports/said.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

using shop::ActionCard;

constexpr int kMostLabels = 2000;

std::string_view keyOf(ActionCard card) noexcept {
    switch (card) {
    case ActionCard::setUp:
        return "reports.card.set-up";
    case ActionCard::ready:
        return "reports.card.ready";
    case ActionCard::retake:
        return "reports.card.retake";
    case ActionCard::beltSlower:
        return "reports.card.belt-slower";
    case ActionCard::hotter:
        return "reports.card.hotter";
    case ActionCard::feedStopped:
        return "reports.card.feed-stopped";
    case ActionCard::pulled:
        return "reports.card.pulled";
    case ActionCard::problem:
        return "reports.card.problem";
    case ActionCard::wipe:
        return "reports.card.wipe";
    case ActionCard::next:
        return "reports.card.next";
    case ActionCard::stop:
        return "reports.card.stop";
    case ActionCard::tryAgain:
        return "reports.card.try-again";
    case ActionCard::keepStrip:
        return "reports.card.keep-strip";
    case ActionCard::beltFaster:
        return "reports.card.belt-faster";
    case ActionCard::cooler:
        return "reports.card.cooler";
    case ActionCard::started:
        return "reports.card.started";
    case ActionCard::alsoOnBelt:
        return "reports.card.also-on-belt";
    case ActionCard::takenOver:
        return "reports.card.taken-over";
    case ActionCard::worry:
        return "reports.card.worry";
    case ActionCard::drawn:
        return "reports.card.drawn";
    case ActionCard::left:
        return "reports.card.left";
    case ActionCard::centre:
        return "reports.card.centre";
    case ActionCard::right:
        return "reports.card.right";
    case ActionCard::allLight:
        return "reports.card.all-light";
    default: // strip steps, which say their temperature, and cards newer than this list
        return {};
    }
}

std::string actionCode(std::uint64_t number) {
    return drivers::encode(drivers::TicketKind::action, number, 3);
}

GridCard cardOf(ActionCard card, const wording::Speech& speech) {
    const auto number = static_cast<std::uint64_t>(card);
    const auto key = keyOf(card);
    return {key.empty() ? QString::number(number) : said(speech, key), {}, actionCode(number)};
}

GridGroup groupOf(std::string_view heading, const std::vector<ActionCard>& cards, const wording::Speech& speech) {
    GridGroup group{said(speech, heading), {}};
    for (const auto card : cards) {
        group.cards.push_back(cardOf(card, speech));
    }
    return group;
}

GridGroup stepsGroup(const std::vector<analytics::Temperature>& steps, const wording::Speech& speech) {
    GridGroup group{said(speech, "reports.cards-strip"), {}};
    if (steps.empty()) {
        return group;
    }
    group.cards.push_back(cardOf(ActionCard::allLight, speech));
    const auto count = std::min<std::uint64_t>(steps.size(), shop::kMostStripSteps);
    for (std::uint64_t i = 0; i < count; ++i) {
        group.cards.push_back({cleaned(speech.figures.temperature(steps[static_cast<std::size_t>(i)])),
                               said(speech, "reports.card.last-dark"),
                               actionCode(static_cast<std::uint64_t>(ActionCard::firstStep) + i)});
    }
    return group;
}

GridGroup pulledGroup(const std::vector<PulledCard>& cards, const wording::Speech& speech) {
    GridGroup group{said(speech, "reports.cards-pulled"), {}};
    for (const auto& card : cards) {
        group.cards.push_back({said(speech, "reports.card.pulled-count", {{"count", std::to_string(card.pieces)}}),
                               {},
                               actionCode(card.number)});
    }
    return group;
}

Reported laidOut(std::string_view name, const Grid& grid, const ReportStyle& style) {
    auto pages = layOut(grid, style);
    if (!pages) {
        return tl::unexpected(pages.error());
    }
    return Report{speakingName(name), *std::move(pages)};
}

QString markOf(const ReportStyle& style) {
    return marksOf(style).join(QString());
}

} // namespace

Reported actionCards(const ActionCards& cards, const ReportStyle& style) {
    const auto& speech = style.speech;
    const Grid grid{said(speech, "reports.action-cards"),
                    markOf(style),
                    said(speech, "reports.caution-dryer"),
                    {groupOf("reports.cards-dryer", cards.dryer, speech),
                     groupOf("reports.cards-readings", cards.readings, speech),
                     groupOf("reports.cards-positions", cards.positions, speech), stepsGroup(cards.stripSteps, speech),
                     pulledGroup(cards.pulled, speech)}};
    return laidOut("action-cards", grid, style);
}

Reported stripLabels(const StripLabels& labels, const ReportStyle& style) {
    const auto& speech = style.speech;
    if (labels.firstNumber < 0 || labels.firstNumber > INT64_MAX - kMostLabels) {
        return tl::unexpected(ReportFault{ReportCause::numberUnusable, {}, {}, std::to_string(labels.firstNumber)});
    }
    Grid grid{said(speech, "reports.strip-labels", {{"name", tidy(labels.name).toStdString()}}), markOf(style), {}, {}};
    QStringList detail;
    if (!labels.batch.empty()) {
        detail += tidy(labels.batch);
    }
    if (labels.expiry) {
        detail += said(speech, "reports.until", {{"date", dateText(*labels.expiry).toStdString()}});
    }
    GridGroup group;
    for (int i = 0; i < std::min(labels.count, kMostLabels); ++i) {
        group.cards.push_back(
            {said(speech, "reports.strip-number", {{"number", std::to_string(labels.firstNumber + i)}}),
             detail.join(QStringLiteral(" · ")), codeTextOf(drivers::TicketKind::instrument, labels.firstNumber + i)});
    }
    grid.groups.push_back(std::move(group));
    return laidOut("strip-labels-" + std::to_string(labels.firstNumber), grid, style);
}

} // namespace holdfast::kiosk::reports
