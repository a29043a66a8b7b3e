#include "tests/kiosk/reports/support/samples.hpp"

namespace holdfast::reports_test {

using namespace kiosk::reports;
using analytics::Temperature;

namespace {

analytics::InkFamily family(const std::string& name, double cureF, analytics::BleedResistance bleed) {
    analytics::InkFamily out;
    out.name = name;
    out.cure = Temperature::fromFahrenheit(cureF);
    out.bleedResistance = bleed;
    out.source = "from memory";
    return out;
}

analytics::Fabric fabric(const std::string& name, double hardF, std::optional<double> bleedF) {
    analytics::Fabric out;
    out.name = name;
    out.hardCeiling = Temperature::fromFahrenheit(hardF);
    if (bleedF) {
        out.bleedCeiling = Temperature::fromFahrenheit(*bleedF);
        out.needOfAtRiskColour = analytics::BleedResistance::low;
    }
    return out;
}

void addLayer(RunTicket& ticket, const std::string& colour, const analytics::InkFamily& ink, bool underbase = false) {
    ticket.plan.layers.push_back({colour, ink.name, {{ink.name, 1.0}}, {}, underbase});
    ticket.layers->layers.push_back({colour, analytics::pureInk(ink), {}});
}

RunTicket started(std::int64_t number, const std::string& title, analytics::Fabric cloth) {
    RunTicket out;
    out.plan.number = number;
    out.plan.title = title;
    out.plan.customer = "Harbour Rowing Club";
    out.plan.reference = "PO 7731-B";
    out.plan.garmentColour = "navy";
    out.plan.pieces = 288;
    out.plan.fabric = cloth.name;
    out.dryer = "North dryer";
    out.layers = analytics::RunPlan{{}, std::move(cloth)};
    return out;
}

void findWindow(RunTicket& ticket) {
    const auto window = analytics::windowOf(*ticket.layers);
    if (window) {
        ticket.window = *window;
    } else {
        ticket.faults = window.error();
    }
}

analytics::Date day() {
    return std::chrono::sys_days{std::chrono::year{2026} / 11 / 25};
}

} // namespace

RunTicket openRun() {
    auto out = started(20418, "Crew shirts, front print", fabric("cotton", 380, std::nullopt));
    auto base = family("standard", 320, analytics::BleedResistance::none);
    base.hold = analytics::Duration{std::chrono::seconds{30}};
    addLayer(out, "white", base, true);
    addLayer(out, "red", family("low-cure", 270, analytics::BleedResistance::none));
    addLayer(out, "blue", family("low-cure", 270, analytics::BleedResistance::none));
    out.plan.childrensWear = true;
    findWindow(out);
    return out;
}

RunTicket closedRun() {
    auto out = started(20414, "Red jerseys", fabric("100% polyester", 300, 290));
    addLayer(out, "white", family("low-cure", 270, analytics::BleedResistance::high), true);
    addLayer(out, "black", family("standard", 320, analytics::BleedResistance::none));
    findWindow(out);
    return out;
}

RunTicket layeredRun(int layers) {
    auto out = started(20500, "All the colours", fabric("cotton", 380, std::nullopt));
    for (int i = 1; i <= layers; ++i) {
        addLayer(out, "colour " + std::to_string(i), family("low-cure", 270, analytics::BleedResistance::none));
    }
    findWindow(out);
    return out;
}

RunTicket runOfTexts(const std::string& text) {
    auto out = started(20501, text, fabric(text, 300, 290));
    out.plan.customer = out.plan.reference = out.plan.garmentColour = out.dryer = text;
    addLayer(out, text, family(text, 320, analytics::BleedResistance::none), true);
    addLayer(out, text, family(text, 270, analytics::BleedResistance::none));
    out.plan.childrensWear = true;
    findWindow(out);
    return out;
}

BucketLabel bucket(const std::string& text) {
    BucketLabel out;
    out.number = 118;
    out.name = out.colour = out.batch = text;
    out.expiry = day();
    out.cure = Temperature::fromFahrenheit(285);
    out.hold = analytics::Duration{std::chrono::seconds{30}};
    out.potLifeUntil = drivers::WallTime{1'795'615'200'000, -300}; // date -d 2026-11-25T09:00:00-05:00 +%s
    for (int i = 0; i < 8; ++i) {
        out.parts.push_back({text, 0.125});
    }
    return out;
}

BinLabel bin(const std::string& text) {
    BinLabel out;
    out.number = 31;
    out.run = 20414;
    out.runTitle = out.reason = text;
    out.lot = 2;
    out.firstPiece = 48;
    out.lastPiece = 97;
    out.count = 50;
    out.date = day();
    return out;
}

PrintLabel printUnderTest(const std::string& text) {
    PrintLabel out;
    out.number = 12'345;
    out.run = 20414;
    out.runTitle = text;
    out.lot = 2;
    out.piece = 48;
    out.position = kiosk::records::BeltPosition::left;
    out.retained = kiosk::records::RetainedPlace{text, day(), false};
    out.printedOn = day();
    return out;
}

PersonBadge badge(const std::string& text) {
    return {12, text, text, text};
}

InstrumentLabel instrument(const std::string& text) {
    return {5, text, text, day()};
}

ActionCards everyCard() {
    ActionCards out;
    for (const double step : {250, 260, 270, 280, 290, 300, 310, 320}) {
        out.stripSteps.push_back(Temperature::fromFahrenheit(step));
    }
    std::uint64_t number = 200;
    for (const int pieces : {1, 2, 3, 5, 6, 10, 12, 24}) {
        out.pulled.push_back({number++, pieces});
    }
    return out;
}

StripLabels strips(int count) {
    return {"Strip 250–320", "B-2207", day(), 400, count};
}

std::vector<Single> everySingle(const ReportStyle& style) {
    using drivers::TicketKind;
    auto window = openRun();
    window.plan.kind = kiosk::records::PlanKind::windowCard;
    window.plan.number = 7;
    window.plan.title = "Standard on cotton";
    return {{runTicket(openRun(), style), codeTextOf(TicketKind::run, 20418)},
            {runTicket(closedRun(), style), codeTextOf(TicketKind::run, 20414)},
            {runTicket(layeredRun(12), style), codeTextOf(TicketKind::run, 20500)},
            {windowCard(window, style), codeTextOf(TicketKind::window, 7)},
            {bucketLabel(bucket("low-cure red"), style), codeTextOf(TicketKind::bucket, 118)},
            {binLabel(bin("The peak was 8 °F under what black needs."), style), codeTextOf(TicketKind::bin, 31)},
            {printLabel(printUnderTest("Crew shirts"), style), codeTextOf(TicketKind::print, 12'345)},
            {personBadge(badge("Night shift"), style), codeTextOf(TicketKind::person, 12)},
            {instrumentLabel(instrument("Probe three"), style), codeTextOf(TicketKind::instrument, 5)}};
}

} // namespace holdfast::reports_test
