#include "kiosk/screens/tour/tour_shop.hpp"

#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink_family.hpp"

#include <algorithm>
#include <utility>

namespace holdfast::kiosk::screens {

using analytics::AuthoredDifference;
using analytics::AuthoredTemperature;
using analytics::InstrumentKind;
using analytics::TemperatureUnit;

namespace {

constexpr const char* kHeatSensitive = "coated nylon";

AuthoredTemperature fahrenheit(double value) {
    return {value, TemperatureUnit::fahrenheit};
}

struct PlannedRun final {
    std::int64_t number;
    const char* title;
    const char* customer;
    const char* garment;
    int pieces;
    const char* fabric;
    std::vector<std::pair<const char*, const char*>> layers; ///< colour, family; bottom first
};

std::vector<PlannedRun> plannedRuns() {
    const auto red = "red";
    return {
        {20411, "white tees", "Harbour choir", "white", 60, "100% cotton", {{"black", "standard"}}},
        {20412, "navy hoodies", "Rowing club", "navy", 96, "50/50 blend", {{"white", "blend"}, {"gold", "blend"}}},
        {20413,
         "red jerseys",
         "Hill school",
         red,
         144,
         "100% polyester",
         {{"white", "low-cure"}, {"black", "low-cure"}, {"yellow", "low-cure"}}},
        {20414,
         "red jerseys",
         "Valley school",
         red,
         120,
         "100% polyester",
         {{"white", "low-cure"}, {"black", "standard"}, {"yellow", "low-cure"}}},
        {20415, "tote bags", "Book fair", "black", 80, kHeatSensitive, {{"black", "low-cure"}}},
        {20416, "black tees", "Summer band", "black", 72, "100% cotton", {{"white", "standard"}, {"red", "standard"}}},
        {20417,
         "festival shirts, print on front, back and left sleeve",
         "Lakeside summer festival",
         "heather grey",
         1200,
         "100% polyester",
         {{"white", "low-cure"},
          {"sky blue", "low-cure"},
          {"grass green", "low-cure"},
          {"orange", "standard"},
          {"lemon yellow", "low-cure"},
          {"magenta", "low-cure"},
          {"silver", "low-cure"},
          {"black", "low-cure"}}},
        {20418, "white tees", "Corner bakery", "white", 48, "100% cotton", {{"brown", "standard"}}},
        {20419, "staff shirts", "Corner bakery", "white", 36, "100% cotton", {{"green", "standard"}}},
    };
}

records::RunPlanned planOf(const PlannedRun& run, const std::string& id, const std::string& dryer) {
    records::RunPlanned plan;
    plan.run = id;
    plan.number = run.number;
    plan.title = run.title;
    plan.customer = run.customer;
    plan.garmentColour = run.garment;
    plan.pieces = run.pieces;
    plan.dryer = dryer;
    plan.fabric = run.fabric;
    for (const auto& [colour, family] : run.layers) {
        plan.layers.push_back({colour, family, {{family, 1.0}}});
    }
    return plan;
}

records::LotOpened lotOf(const records::RunPlanned& plan, const std::string& id) {
    records::LotOpened lot;
    lot.lot = id;
    lot.run = plan.run;
    lot.dryer = plan.dryer;
    lot.firstPiece = 1;
    for (const auto& layer : plan.layers) {
        const records::RevisionUsed used{layer.ink, 1};
        if (std::find(lot.revisions.families.begin(), lot.revisions.families.end(), used) ==
            lot.revisions.families.end()) {
            lot.revisions.families.push_back(used);
        }
    }
    lot.revisions.fabric = {plan.fabric, 1};
    return lot;
}

void addPeople(TourShop& shop) {
    using records::Role;
    shop.records.push_back(records::PersonAdded{1, {}, {Role::operatorAtDryer}});
    shop.records.push_back(records::PersonAdded{2, {}, {Role::operatorAtDryer, Role::qualityAssurance}});
    shop.records.push_back(records::PersonAdded{3, {}, {Role::owner}});
    shop.names = {{1, "Ana"}, {2, "Mara"}, {3, "Teo"}};
    shop.records.push_back(records::CrewChanged{{1, 2}, 1});
}

void addStock(TourShop& shop, const std::function<std::string()>& makeId) {
    for (const auto& family : analytics::starterFamilies()) {
        shop.records.push_back(records::recordOf(family, TemperatureUnit::fahrenheit));
    }
    for (const auto& fabric : analytics::starterFabrics()) {
        shop.records.push_back(records::recordOf(fabric, TemperatureUnit::fahrenheit));
    }
    records::FabricRecord nylon;
    nylon.name = kHeatSensitive;
    nylon.hardCeiling = fahrenheit(292.0);
    nylon.source = "data sheet of the cloth";
    shop.records.push_back(nylon);
    for (const auto& [number, family, colour] : std::vector<std::tuple<std::int64_t, const char*, const char*>>{
             {291, "low-cure", "white"}, {292, "standard", "warm red"}}) {
        records::BucketOpened bucket;
        bucket.bucket = makeId();
        bucket.number = number;
        bucket.family = family;
        bucket.colour = colour;
        bucket.batch = "L 20 114";
        shop.records.push_back(bucket);
    }
}

records::InstrumentDescribed described(const std::string& id, std::int64_t number, const char* name,
                                       InstrumentKind kind) {
    records::InstrumentDescribed one;
    one.instrument = id;
    one.number = number;
    one.spec.name = name;
    one.spec.kind = kind;
    one.spec.placement = analytics::Placement::wetInk;
    return one;
}

records::InstrumentDescribed probe(const std::string& id) {
    auto one = described(id, 3, kTourProbe, InstrumentKind::probe);
    one.spec.type = analytics::ThermocoupleType::k;
    one.spec.toleranceClass = analytics::ToleranceClass::iecClass1;
    one.spec.resolution = AuthoredDifference{0.1, TemperatureUnit::celsius};
    one.spec.range = records::AuthoredRange{{-50.0, TemperatureUnit::celsius}, {1000.0, TemperatureUnit::celsius}};
    one.catalogue = kTourCatalogueId;
    one.address = "by-id:usb-serial-004217";
    return one;
}

records::InstrumentDescribed strip(const std::string& id, std::chrono::sys_days today) {
    auto one = described(id, 12, "S-12", InstrumentKind::strip);
    records::AuthoredStrip steps;
    for (const double step : {280.0, 290.0, 300.0, 310.0, 320.0, 330.0, 340.0, 350.0}) {
        steps.steps.push_back(fahrenheit(step));
    }
    steps.tolerance = AuthoredDifference{2.0, TemperatureUnit::fahrenheit};
    steps.expiry = today + std::chrono::days{365};
    one.spec.strip = steps;
    return one;
}

records::InstrumentDescribed byHand(const std::string& id, std::int64_t number, const char* name, InstrumentKind kind) {
    auto one = described(id, number, name, kind);
    one.spec.statedTolerance = AuthoredDifference{3.0, TemperatureUnit::fahrenheit};
    one.spec.resolution = AuthoredDifference{1.0, TemperatureUnit::fahrenheit};
    one.spec.range = records::AuthoredRange{fahrenheit(30.0), fahrenheit(600.0)};
    return one;
}

void addInstruments(TourShop& shop, const std::function<std::string()>& makeId, std::chrono::sys_days today) {
    const auto probeId = makeId();
    shop.records.push_back(probe(probeId));
    for (const auto kind : {analytics::CheckKind::ice, analytics::CheckKind::boiling}) {
        const auto day = today - std::chrono::days{12};
        shop.records.push_back(records::CheckDone{probeId, {kind, true, day, day + std::chrono::days{30}}});
    }
    shop.records.push_back(strip(makeId(), today));
    shop.records.push_back(byHand(makeId(), 7, "H-7", InstrumentKind::spot));
    shop.records.push_back(byHand(makeId(), 8, "G-8", InstrumentKind::gun));
}

} // namespace

QStringList tourTitles() {
    QStringList titles;
    for (const auto& run : plannedRuns()) {
        titles.append(QString::fromUtf8(run.title));
    }
    return titles;
}

TourShop tourShop(const std::function<std::string()>& makeId, std::chrono::sys_days today) {
    TourShop shop;
    shop.records.push_back(records::BookOpened{"Demo shop", "Dryer end", "0.1.0", true});
    addPeople(shop);
    records::DryerDescribed dryer;
    dryer.dryer = makeId();
    dryer.name = "North";
    dryer.heatedLengthMetres = 3.0;
    dryer.beltMetresPerMinute = 4.5;
    dryer.setPoint = fahrenheit(360.0);
    dryer.piecesPerMetre = 2.0;
    shop.records.push_back(dryer);
    addStock(shop, makeId);
    addInstruments(shop, makeId, today);
    for (const auto& run : plannedRuns()) {
        const auto plan = planOf(run, makeId(), dryer.dryer);
        shop.records.push_back(plan);
        shop.records.push_back(lotOf(plan, makeId()));
    }
    records::RunPlanned card =
        planOf({7, "standard on cotton", "", "", 0, "100% cotton", {{"white", "standard"}}}, makeId(), dryer.dryer);
    card.kind = records::PlanKind::windowCard;
    card.pieces.reset();
    shop.records.push_back(card);
    return shop;
}

} // namespace holdfast::kiosk::screens
