#include "kiosk/demo/demo_clerk.hpp"

#include "kiosk/demo/demo_instruments.hpp"
#include "kiosk/demo/demo_people.hpp"
#include "kiosk/demo/demo_stock.hpp"
#include "kiosk/records/stock_queries.hpp"
#include "kiosk/shop/planning/layer_bucket.hpp"
#include "kiosk/shop/planning/replan.hpp"
#include "kiosk/shop/planning/revisions.hpp"
#include "kiosk/shop/testing/starters.hpp"

#include <algorithm>
#include <map>

namespace holdfast::kiosk::demo {
namespace {

ledger::Result<void> cannot(const std::string& what) {
    return tl::unexpected(ledger::Failure{ledger::FailureCode::refused, "demo: " + what});
}

} // namespace

ledger::Result<void> DemoClerk::operator()(const OpensShop&) {
    if (const auto head = m_book.head(); head && head->sequence > 0) {
        return bringUpToDate();
    }
    const auto makeId = [this] { return m_pen.newId(); };
    std::vector<records::Record> list{records::BookOpened{"Demo shop", "Dryer end", "0.1.0", true}};
    const auto people = demoPeople();
    for (const auto& part :
         {people.list, demoDryers(makeId), demoInks(), demoInstruments(makeId, today(), m_probeAddress)}) {
        list.insert(list.end(), part.begin(), part.end());
    }
    const auto methods = shop::starterMethods();
    list.insert(list.end(), methods.begin(), methods.end());
    return m_pen.write(list, people.names);
}

/// After a past: of the instruments only what is new on that day, the strip packs and the checks.
ledger::Result<void> DemoClerk::bringUpToDate() {
    std::map<std::string, std::string> known; // ids as the book has them, by those made up here
    std::vector<records::Record> list;
    const auto all = records::instruments(m_book.reader(), true);
    const auto idInBook = [&](const std::string& name) {
        for (const auto& one : all ? *all : std::vector<records::InstrumentOnFile>{}) {
            if (one.instrument.name == name) {
                return one.described.instrument;
            }
        }
        return std::string{};
    };
    for (auto& record : demoInstruments([this] { return m_pen.newId(); }, today(), m_probeAddress)) {
        if (auto* described = std::get_if<records::InstrumentDescribed>(&record)) {
            const auto id = idInBook(described->spec.name);
            if (id.empty()) {
                list.push_back(std::move(record));
            } else {
                known[described->instrument] = id;
            }
        } else if (auto* check = std::get_if<records::CheckDone>(&record)) {
            check->instrument = known.count(check->instrument) == 1 ? known[check->instrument] : check->instrument;
            list.push_back(std::move(record));
        }
    }
    return m_pen.write(list);
}

ledger::Result<void> DemoClerk::operator()(const ChangesCrew& crew) {
    return m_pen.write({records::CrewChanged{crew.persons, crew.unnamed}});
}

ledger::Result<void> DemoClerk::operator()(const OpensBucket& bucket) {
    std::vector<std::string> names;
    for (const auto& family : families()) {
        names.push_back(family.name);
    }
    const auto wall = m_clock.wall().millisecondsSinceEpoch;
    auto opened = shop::bucketFrom(draftOf(demoBucket(bucket.number), today()), names, wall);
    if (!opened) {
        return cannot("bucket " + std::to_string(bucket.number));
    }
    opened->bucket = m_pen.newId();
    opened->number = bucket.number;
    return m_pen.write({*opened});
}

ledger::Result<void> DemoClerk::operator()(const MakesMix& mix) {
    const auto draft = draftOf(demoMix(mix.number));
    shop::MixStock stock{{}, families(), m_clock.wall().millisecondsSinceEpoch, today()};
    for (const auto& part : draft.parts) {
        if (auto tree = records::ancestry(m_book.reader(), part.bucket); tree && *tree) {
            stock.trees.emplace(part.bucket, **tree);
        }
    }
    auto made = shop::mixFrom(draft, stock);
    if (!made) {
        return cannot("mix " + std::to_string(mix.number));
    }
    made->bucket = m_pen.newId();
    return m_pen.write({*made});
}

ledger::Result<void> DemoClerk::operator()(const ClosesBucket& bucket) {
    const auto onFile = records::bucketByNumber(m_book.reader(), bucket.number);
    if (!onFile || !*onFile) {
        return cannot("no bucket " + std::to_string(bucket.number));
    }
    return m_pen.write({records::BucketClosed{(*onFile)->id, bucket.why}});
}

ledger::Result<void> DemoClerk::operator()(const EntersSheet&) {
    const auto all = records::newestFamilies(m_book.reader());
    for (const auto& family : all ? *all : std::vector<records::FamilyRecord>{}) {
        if (family.name == "water-based") {
            return m_pen.write({demoWaterBasedSheet(family)});
        }
    }
    return cannot("no water-based ink");
}

ledger::Result<void> DemoClerk::operator()(const Checks& check) {
    const auto all = records::instruments(m_book.reader());
    for (const auto& one : all ? *all : std::vector<records::InstrumentOnFile>{}) {
        if (one.instrument.name == check.instrument) {
            return m_pen.write({demoCheck(one, check.kind, today())});
        }
    }
    return cannot("no instrument " + check.instrument);
}

ledger::Result<void> DemoClerk::operator()(const PlansRuns& runs) {
    std::vector<DemoRun> list;
    const auto& all = demoRuns();
    std::copy_if(all.begin(), all.end(), std::back_inserter(list),
                 [&](const DemoRun& run) { return run.number >= runs.first && run.number <= runs.last; });
    return plan(list, records::PlanKind::run);
}

ledger::Result<void> DemoClerk::operator()(const PlansCards&) {
    return plan(demoWindowCards(), records::PlanKind::windowCard);
}

ledger::Result<void> DemoClerk::operator()(const TakesWayOut& way) {
    const auto onFile = run(way.run);
    const auto window = onFile ? windowOf(*onFile, demoRun(way.run)->dryer) : std::nullopt;
    if (!window || window->waysOut.empty()) {
        return cannot("no way out of run " + std::to_string(way.run));
    }
    return m_pen.write(shop::recordsOfWayOut(*onFile, window->waysOut.front(), families(), m_pen.newId()));
}

ledger::Result<void> DemoClerk::operator()(const OpensLot& lot) {
    const auto onFile = run(lot.run);
    if (!onFile) {
        return cannot("no run " + std::to_string(lot.run));
    }
    auto opened = shop::nextLot(onFile->plan, *onFile, families(), m_pen.newId());
    opened.firstPiece = 1;
    return m_pen.write({opened});
}

ledger::Result<void> DemoClerk::operator()(const FinishesRun& finished) {
    const auto onFile = run(finished.run);
    if (!onFile) {
        return cannot("no run " + std::to_string(finished.run));
    }
    return m_pen.write(shop::recordsOfFinish(*onFile, onFile->plan.pieces, finished.spoiled));
}

std::vector<analytics::InkFamily> DemoClerk::families() const {
    std::vector<analytics::InkFamily> list;
    const auto newest = records::newestFamilies(m_book.reader());
    for (const auto& family : newest ? *newest : std::vector<records::FamilyRecord>{}) {
        list.push_back(records::toFamily(family));
    }
    return list;
}

shop::Stock DemoClerk::stock(const std::vector<DemoRun>& runs) const {
    shop::Stock stock;
    stock.families = families();
    const auto newest = records::newestFabrics(m_book.reader());
    for (const auto& fabric : newest ? *newest : std::vector<records::FabricRecord>{}) {
        stock.fabrics.push_back(records::toFabric(fabric));
    }
    for (const auto& run : runs) {
        for (const auto& layer : run.layers) {
            if (layer.bucket == 0 || shop::bucketOf(stock, layer.bucket) != nullptr) {
                continue;
            }
            const auto tree = records::ancestry(m_book.reader(), layer.bucket);
            const auto ink = records::inkOfBucket(m_book.reader(), layer.bucket);
            const auto bucket = shop::layerBucket(layer.bucket, tree ? *tree : std::nullopt, ink ? *ink : std::nullopt,
                                                  m_clock.wall().millisecondsSinceEpoch, today());
            if (bucket) {
                stock.buckets.push_back(*bucket);
            }
        }
    }
    return stock;
}

std::optional<records::RunOnFile> DemoClerk::run(std::int64_t number) const {
    auto found = records::runByNumber(m_book.reader(), records::PlanKind::run, number);
    return found ? *found : std::nullopt;
}

std::string DemoClerk::dryerId(DemoDryer dryer) const {
    const auto all = records::dryers(m_book.reader());
    for (const auto& one : all ? *all : std::vector<records::DryerDescribed>{}) {
        if (one.name == nameOf(dryer)) {
            return one.dryer;
        }
    }
    return {};
}

std::optional<analytics::RunWindow> DemoClerk::windowOf(const records::RunOnFile& run, DemoDryer dryer) const {
    analytics::Choices choices;
    choices.families = families();
    const analytics::Calibration* probe = nullptr;
    const auto all = records::instruments(m_book.reader());
    for (const auto& one : all ? *all : std::vector<records::InstrumentOnFile>{}) {
        choices.instruments.emplace_back(one.instrument, today());
    }
    for (const auto& one : choices.instruments) {
        probe = one.instrument().name == probeOf(dryer) ? &one : probe;
    }
    auto window = analytics::windowWithWaysOut(run.layers, probe, choices);
    return window ? std::optional{*std::move(window)} : std::nullopt;
}

ledger::Result<void> DemoClerk::plan(const std::vector<DemoRun>& runs, records::PlanKind kind) {
    const auto now = stock(runs);
    std::vector<records::Record> list;
    for (const auto& run : runs) {
        const auto dryer = kind == records::PlanKind::run ? dryerId(run.dryer) : std::string{};
        auto planned = shop::planFrom(draftOf(run, kind, dryer), now);
        if (!planned) {
            return cannot("plan " + std::to_string(run.number) + ": " + planned.error().front().field);
        }
        planned->run = m_pen.newId();
        const auto records = shop::recordsOfPlan(*planned, nullptr, now.families, {});
        list.insert(list.end(), records.begin(), records.end());
    }
    return m_pen.write(list);
}

} // namespace holdfast::kiosk::demo
