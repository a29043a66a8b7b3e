#include "kiosk/demo/demo_shop.hpp"

#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink_family.hpp"
#include "drivers/protocol/ticket_code.hpp"

#include <algorithm>
#include <utility>

namespace holdfast::kiosk::demo {

using analytics::AuthoredDifference;
using analytics::AuthoredTemperature;
using analytics::TemperatureUnit;

namespace {

AuthoredTemperature fahrenheit(double value) {
    return {value, TemperatureUnit::fahrenheit};
}
AuthoredTemperature celsius(double value) {
    return {value, TemperatureUnit::celsius};
}

constexpr const char* kHeatSensitive = "Coated nylon";

records::FabricRecord coatedNylon() {
    records::FabricRecord fabric;
    fabric.name = kHeatSensitive;
    fabric.hardCeiling = fahrenheit(292.0);
    fabric.source = "demo shop";
    return fabric;
}

records::InstrumentDescribed probe(const std::string& id, const std::string& address) {
    records::InstrumentDescribed described;
    described.instrument = id;
    described.number = 3;
    described.spec.name = kDemoProbe;
    described.spec.kind = analytics::InstrumentKind::probe;
    described.spec.type = analytics::ThermocoupleType::k;
    described.spec.toleranceClass = analytics::ToleranceClass::iecClass1;
    described.spec.resolution = AuthoredDifference{0.1, TemperatureUnit::celsius};
    described.spec.range = records::AuthoredRange{celsius(-50.0), celsius(1000.0)};
    described.spec.placement = analytics::Placement::wetInk;
    described.catalogue = kDemoCatalogueId;
    described.address = address;
    return described;
}

records::InstrumentDescribed strip(const std::string& id, std::chrono::sys_days today) {
    records::InstrumentDescribed described;
    described.instrument = id;
    described.number = 12;
    described.spec.name = "S-12";
    described.spec.kind = analytics::InstrumentKind::strip;
    described.spec.placement = analytics::Placement::wetInk;
    records::AuthoredStrip steps;
    for (const double step : {280.0, 290.0, 300.0, 320.0, 330.0}) {
        steps.steps.push_back(fahrenheit(step));
    }
    steps.tolerance = AuthoredDifference{2.0, TemperatureUnit::fahrenheit};
    steps.expiry = today + std::chrono::days{365};
    described.spec.strip = steps;
    return described;
}

struct PlannedRun final {
    std::int64_t number;
    const char* title;
    const char* customer;
    int pieces;
    const char* fabric;
    std::vector<std::pair<const char*, const char*>> layers; ///< colour, family; bottom first
};

std::vector<PlannedRun> plannedRuns() {
    return {
        {20411, "white tees", "Harbour choir", 60, "100% cotton", {{"black", "standard"}}},
        {20412, "navy hoodies", "Rowing club", 96, "50/50 blend", {{"white", "blend"}, {"gold", "blend"}}},
        {20413,
         "red jerseys",
         "Hill school",
         144,
         "100% polyester",
         {{"white", "low-cure"}, {"black", "low-cure"}, {"yellow", "low-cure"}}},
        {20414,
         "red jerseys",
         "Valley school",
         120,
         "100% polyester",
         {{"white", "low-cure"}, {"black", "standard"}, {"yellow", "low-cure"}}},
        {20415, "tote bags", "Book fair", 80, kHeatSensitive, {{"black", "low-cure"}}},
        {20416, "black tees", "Summer band", 72, "100% cotton", {{"white", "standard"}, {"red", "standard"}}},
    };
}

records::RunPlanned planOf(const PlannedRun& run, const std::string& id, const std::string& dryer) {
    records::RunPlanned plan;
    plan.run = id;
    plan.number = run.number;
    plan.title = run.title;
    plan.customer = run.customer;
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

void addPeople(DemoShop& shop) {
    using records::Role;
    shop.records.push_back(records::PersonAdded{1, {}, {Role::operatorAtDryer}});
    shop.records.push_back(records::PersonAdded{2, {}, {Role::operatorAtDryer, Role::qualityAssurance}});
    shop.records.push_back(records::PersonAdded{3, {}, {Role::owner}});
    shop.names = {{1, "Ana"}, {2, "Mara"}, {3, "Teo"}};
    shop.records.push_back(records::CrewChanged{{1, 2}, 1});
}

void addStock(DemoShop& shop) {
    for (const auto& family : analytics::starterFamilies()) {
        shop.records.push_back(records::recordOf(family, TemperatureUnit::fahrenheit));
    }
    for (const auto& fabric : analytics::starterFabrics()) {
        shop.records.push_back(records::recordOf(fabric, TemperatureUnit::fahrenheit));
    }
    shop.records.push_back(coatedNylon());
}

void addInstruments(DemoShop& shop, const MakeId& makeId, std::chrono::sys_days today, const std::string& address) {
    const auto probeId = makeId();
    shop.records.push_back(probe(probeId, address));
    for (const auto kind : {analytics::CheckKind::ice, analytics::CheckKind::boiling}) {
        shop.records.push_back(
            records::CheckDone{probeId, {kind, true, today, today + std::chrono::days{365}}, std::nullopt});
    }
    shop.records.push_back(strip(makeId(), today));
}

} // namespace

DemoShop demoShop(const MakeId& makeId, std::chrono::sys_days today, const std::string& probeAddress) {
    DemoShop shop;
    shop.records.push_back(records::BookOpened{"Demo shop", "Dryer end", "0.1.0", true});
    addPeople(shop);
    records::DryerDescribed dryer;
    dryer.dryer = makeId();
    dryer.name = "North";
    dryer.heatedLengthMetres = 3.0;
    dryer.beltMetresPerMinute = 4.5;
    dryer.setPoint = fahrenheit(360.0);
    shop.dryer = dryer.dryer;
    shop.records.push_back(dryer);
    addStock(shop);
    addInstruments(shop, makeId, today, probeAddress);
    for (const auto& run : plannedRuns()) {
        const auto plan = planOf(run, makeId(), shop.dryer);
        shop.records.push_back(plan);
        shop.records.push_back(lotOf(plan, makeId()));
    }
    return shop;
}

const std::vector<DemoRide>& demoRides() {
    static const std::vector<DemoRide> rides = {
        {20411, 306.0, 0, 310},
        {20412, 352.0, 0, 240},
        {20416, 334.0, 7, 150},
        {20413, 294.2, 0, 45},
    };
    return rides;
}

} // namespace holdfast::kiosk::demo
