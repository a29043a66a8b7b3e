#include "kiosk/records/run_layers.hpp"

#include "analytics/cure/ink.hpp"
#include "analytics/cure/window.hpp"
#include "kiosk/records/bucket_tree.hpp"
#include "kiosk/records/stored_body.hpp"

#include <algorithm>
#include <functional>
#include <set>

namespace holdfast::kiosk::records {
namespace {

using SQLite::Database;

/// The revision that a lot was opened with, else the newest; nothing if there is none of that name.
template <class R>
std::optional<R> revisionOf(const Database& database, const char* table, const std::string& name,
                            const RevisionUsed* used) {
    const std::string sql =
        joined({"SELECT body FROM ", table,
                " WHERE name = ?1 AND (?2 IS NULL OR revision = ?2) ORDER BY revision DESC LIMIT 1"});
    auto query = prepared(database, sql.c_str(), name, used != nullptr ? std::optional{used->revision} : std::nullopt);
    return query.executeStep() ? std::optional{storedBody<R>(query.getColumn(0).getString())} : std::nullopt;
}

const RevisionUsed* usedRevision(const std::vector<RevisionUsed>& all, const std::string& name) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.name == name; });
    return found == all.end() ? nullptr : &*found;
}

/// Families as a run's lot was opened with them, else the newest; remembers which were used.
class RunFamilies final {
public:
    RunFamilies(LayerMemory& memory, RunOnFile& run) : m_memory{memory}, m_run{run} {}
    std::optional<analytics::InkFamily> operator()(const std::string& name) {
        const auto* used = m_run.lot ? usedRevision(m_run.lot->revisions.families, name) : nullptr;
        const auto& family = m_memory.family(name, used != nullptr ? std::optional{used->revision} : std::nullopt);
        if (family && usedRevision(m_run.revisions.families, family->ink.name) == nullptr) {
            m_run.revisions.families.push_back({family->ink.name, family->revision});
        }
        return family ? std::optional{family->ink} : std::nullopt;
    }

private:
    LayerMemory& m_memory;
    RunOnFile& m_run;
};

/// As planned. Nothing if a family is missing or the mix cannot be.
std::optional<analytics::Ink> plannedInk(const PlannedLayer& layer, RunFamilies& families) {
    std::vector<analytics::MixPart> parts;
    for (const auto& part : layer.parts) {
        auto family = families(part.family);
        if (!family) {
            return std::nullopt;
        }
        parts.push_back({analytics::pureInk(std::move(*family)), part.mass});
    }
    if (parts.size() == 1 && layer.ink == layer.parts.front().family) {
        return parts.front().ink;
    }
    auto mixed = analytics::mixInks(layer.ink, parts);
    return mixed ? std::optional{std::move(*mixed)} : std::nullopt;
}

bool asPlanned(const analytics::Ink& ink, const PlannedLayer& layer) {
    std::set<std::string> planned;
    for (const auto& part : layer.parts) {
        if (part.mass > 0.0) {
            planned.insert(part.family);
        }
    }
    std::set<std::string> poured;
    for (const auto& family : ink.parts) {
        poured.insert(family.name);
    }
    return planned == poured;
}

/// The layer as it is printed: from its buckets, if they were scanned, whatever was planned. Nothing if a bucket or a
/// family is missing or the inks cannot be mixed.
std::optional<analytics::Layer> layerOf(LayerMemory& memory, const PlannedLayer& planned, RunFamilies& families,
                                        const std::optional<Moment>& now) {
    analytics::Layer layer{planned.colour, {}, std::nullopt};
    std::vector<analytics::MixPart> parts;
    for (const auto number : planned.buckets) {
        const auto& tree = memory.tree(number);
        auto ink = tree ? inkOfTree(*tree, std::ref(families)) : std::nullopt;
        if (!ink) {
            return std::nullopt;
        }
        const auto trouble = now ? troubleOf(*tree, *ink, now->wallMilliseconds, now->today) : std::nullopt;
        if (trouble && (!layer.bucketTrouble || trouble->fault < layer.bucketTrouble->fault)) {
            layer.bucketTrouble = trouble;
        }
        parts.push_back({std::move(*ink), 1.0});
    }
    std::optional<analytics::Ink> ink;
    if (parts.size() == 1) {
        ink = parts.front().ink;
    } else if (auto mixed = analytics::mixInks(planned.ink, parts)) {
        ink = std::move(*mixed);
    }
    if (planned.buckets.empty() || (ink && asPlanned(*ink, planned))) {
        ink = plannedInk(planned, families);
    }
    if (!ink) {
        return std::nullopt;
    }
    layer.ink = std::move(*ink);
    return layer;
}

} // namespace

const std::optional<LayerMemory::Family>& LayerMemory::family(const std::string& name, std::optional<int> revision) {
    const auto [place, isNew] = m_families.try_emplace({name, revision});
    if (isNew) {
        const RevisionUsed used{name, revision.value_or(0)};
        if (const auto found = revisionOf<FamilyRecord>(m_database, "families", name, revision ? &used : nullptr)) {
            place->second = Family{found->revision, toFamily(*found)};
        }
    }
    return place->second;
}

const std::optional<BucketTree>& LayerMemory::tree(std::int64_t bucket) {
    const auto [place, isNew] = m_trees.try_emplace(bucket);
    if (isNew) {
        place->second = treeOf(m_database, bucket);
    }
    return place->second;
}

void fillInks(LayerMemory& memory, RunOnFile& run, const std::optional<Moment>& now) {
    RunFamilies families{memory, run};
    for (const auto& planned : run.plan.layers) {
        auto layer = layerOf(memory, planned, families, now);
        run.usable = run.usable && layer.has_value();
        run.layers.layers.push_back(std::move(layer).value_or(analytics::Layer{planned.colour, {}, std::nullopt}));
    }
}

void fillLayers(const Database& database, RunOnFile& run, const std::optional<Moment>& now) {
    LayerMemory memory{database};
    fillInks(memory, run, now);
    const auto fabric =
        revisionOf<FabricRecord>(database, "fabrics", run.plan.fabric, run.lot ? &run.lot->revisions.fabric : nullptr);
    run.usable = run.usable && fabric.has_value();
    if (fabric) {
        run.layers.fabric = toFabric(*fabric);
        run.revisions.fabric = {fabric->name, fabric->revision};
    }
    run.usable = run.usable && analytics::windowOf(run.layers).has_value();
}

} // namespace holdfast::kiosk::records
