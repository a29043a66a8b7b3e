#include "kiosk/shop/stock/fabric_draft.hpp"

#include "kiosk/shop/stock/form_reader.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

/// Each name once, without blanks at its ends.
std::vector<std::string> namesIn(const std::string& text) {
    std::vector<std::string> names;
    std::size_t begin = 0;
    while (begin <= text.size()) {
        const auto end = std::min(text.find(',', begin), text.size());
        auto name = trimmed(text.substr(begin, end - begin));
        if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) {
            names.push_back(std::move(name));
        }
        begin = end + 1;
    }
    return names;
}

} // namespace

FabricDraft draftOf(const records::FabricRecord& fabric, analytics::TemperatureUnit unit) {
    FabricDraft draft;
    draft.unit = unit;
    draft.name = fabric.name;
    draft.hardCeiling = authoredTyped(fabric.hardCeiling, unit);
    draft.bleedCeiling = authoredTyped(fabric.bleedCeiling, unit);
    draft.need = fabric.needOfAtRiskColour;
    for (const auto& colour : fabric.coloursNotAtRisk) {
        draft.coloursNotAtRisk += (draft.coloursNotAtRisk.empty() ? "" : ", ") + colour;
    }
    draft.mark = fabric.mark;
    draft.source = fabric.source;
    draft.before = fabric;
    return draft;
}

tl::expected<records::FabricRecord, std::vector<StockFault>> fabricFrom(const FabricDraft& draft,
                                                                        const std::vector<std::string>& taken) {
    StockReader read{draft.unit};
    const auto& before = draft.before;
    records::FabricRecord fabric;
    if (before) {
        fabric.name = before->name;
        fabric.revision = before->revision + 1;
    } else {
        fabric.name = read.name(draft.name, "name");
        read.newName(fabric.name, "name", taken);
    }
    fabric.hardCeiling =
        read.temperature(draft.hardCeiling, "hard-ceiling", before ? before->hardCeiling : std::nullopt);
    fabric.bleedCeiling =
        read.temperature(draft.bleedCeiling, "bleed-ceiling", before ? before->bleedCeiling : std::nullopt);
    fabric.needOfAtRiskColour = draft.need;
    fabric.coloursNotAtRisk = namesIn(read.text(draft.coloursNotAtRisk, "colours"));
    fabric.mark = draft.mark;
    fabric.source = read.text(draft.source, "source");
    read.source(fabric.mark, fabric.source);
    for (const auto fault : analytics::faultsOf(records::toFabric(fabric))) {
        if (fault != analytics::FabricFault::nameEmpty) {
            StockFault one{StockFaultCause::fabric, "bleed-ceiling"};
            one.fabric = fault;
            read.fault(std::move(one));
        }
    }
    if (!read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    return fabric;
}

} // namespace holdfast::kiosk::shop
