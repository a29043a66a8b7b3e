#include "kiosk/screens/presenting/places/plan_advice.hpp"

#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/wording/stock_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

using wording::Speech;

std::vector<const shop::DraftLayer*> colouredLayers(const shop::PlanDraft& draft) {
    std::vector<const shop::DraftLayer*> layers;
    for (const auto& layer : draft.layers) {
        if (!layer.colour.empty() && !layer.underbase) {
            layers.push_back(&layer);
        }
    }
    return layers;
}

const shop::DraftLayer* underbaseOf(const shop::PlanDraft& draft) {
    const auto found =
        std::find_if(draft.layers.begin(), draft.layers.end(), [](const auto& one) { return one.underbase; });
    return found == draft.layers.end() ? nullptr : &*found;
}

std::optional<analytics::PlanAdvice> adviceFor(const shop::PlanDraft& draft, const shop::Stock& stock) {
    const auto fabric = std::find_if(stock.fabrics.begin(), stock.fabrics.end(),
                                     [&](const auto& one) { return one.name == draft.fabric; });
    std::vector<std::string> colours;
    for (const auto* layer : colouredLayers(draft)) {
        colours.push_back(layer->colour);
    }
    if (fabric == stock.fabrics.end() || colours.empty()) {
        return std::nullopt;
    }
    return analytics::adviseRun(*fabric, draft.garmentColour, colours, stock.families, stock.habits);
}

const analytics::InkFamily* familyOf(const shop::Stock& stock, const std::string& name) {
    const auto found =
        std::find_if(stock.families.begin(), stock.families.end(), [&](const auto& one) { return one.name == name; });
    return found == stock.families.end() ? nullptr : &*found;
}

class Parts final {
public:
    void add(const std::string& more) { m_text += (m_text.empty() || more.empty() ? "" : " · ") + more; }
    [[nodiscard]] const std::string& text() const noexcept { return m_text; }

private:
    std::string m_text;
};

/// What a choice costs, and at what risk of bleed it is.
std::string costText(const analytics::FamilyChoice& choice, const analytics::LayerAdvice& layer,
                     const shop::Stock& stock, const Speech& speech) {
    const auto& cost = choice.cost;
    Parts parts;
    parts.add(cost.harderBy > 0 ? speech.text("runs.advice-harder-by", {{"count", std::to_string(cost.harderBy)}})
                                : speech.text("runs.advice-easiest"));
    if (cost.needsHold) {
        parts.add(speech.text("runs.advice-hold"));
    }
    if (cost.hasPotLife) {
        parts.add(speech.text("runs.advice-pot-life"));
    }
    if (cost.lowersCeiling) {
        parts.add(speech.text("runs.advice-ceiling"));
    }
    const auto* family = familyOf(stock, choice.family);
    if (layer.need != analytics::BleedResistance::none && family != nullptr) {
        parts.add(speech.text(
            family->bleedResistance < layer.need ? "runs.advice-risk-open" : "runs.advice-risk-met",
            {{"need", wording::word(layer.need, speech)}, {"has", wording::word(family->bleedResistance, speech)}}));
    }
    return parts.text();
}

std::string layerText(const analytics::LayerAdvice& layer, const shop::Stock& stock, const Speech& speech) {
    Parts parts;
    parts.add(costText(*layer.choice, layer, stock, speech));
    if (layer.underbase) {
        parts.add(speech.text("runs.advice-underbase"));
    }
    if (layer.flash) {
        parts.add(speech.text("runs.advice-flash", {{"low", speech.figures.bare(layer.flash->low)},
                                                    {"high", speech.figures.temperature(layer.flash->high)}}));
    }
    return parts.text();
}

void addLayer(std::vector<SheetRow>& rows, const analytics::LayerAdvice& layer, const shop::Stock& stock,
              const Speech& speech) {
    if (!layer.choice) {
        rows.push_back(factRow(speech.text("runs.advice-none", {{"colour", layer.colour}}), {}));
        return;
    }
    rows.push_back(factRow(speech.text("runs.advice-layer", {{"colour", layer.colour},
                                                             {"ink", layer.choice->family},
                                                             {"cure", speech.figures.temperature(layer.choice->cure)}}),
                           {}, layerText(layer, stock, speech)));
    for (const auto& other : layer.others) {
        auto row = factRow(
            speech.text("runs.advice-other", {{"ink", other.family}, {"cure", speech.figures.temperature(other.cure)}}),
            {}, costText(other, layer, stock, speech));
        row.indent = 1;
        rows.push_back(row);
    }
}

} // namespace

std::vector<shop::DraftLayer> advisedLayers(const shop::PlanDraft& draft, const shop::Stock& stock) {
    const auto advice = adviceFor(draft, stock);
    if (!advice || advice->layers.empty()) {
        return draft.layers;
    }
    const auto coloured = colouredLayers(draft);
    std::size_t next = 0; // the advice gives them in their order, with an underbase among them
    std::vector<shop::DraftLayer> layers;
    for (const auto& layer : advice->layers) {
        const auto* before = layer.underbase ? underbaseOf(draft) : next < coloured.size() ? coloured[next++] : nullptr;
        if (before != nullptr && !before->buckets.empty()) {
            layers.push_back(*before);
        } else {
            layers.push_back({layer.colour, layer.choice ? layer.choice->family : std::string{}, {}, layer.underbase});
        }
    }
    return layers;
}

QList<SheetBlock> adviceBlocks(const shop::PlanDraft& draft, const shop::Stock& stock, const Speech& speech) {
    QList<SheetBlock> blocks;
    blocks.append(textBlock(SheetKinds::Heading, speech.text("runs.advice-heading")));
    const auto advice = adviceFor(draft, stock);
    if (!advice) {
        blocks.append(textBlock(SheetKinds::Sentence, speech.text("runs.advice-colours-first")));
        return blocks;
    }
    std::vector<SheetRow> rows;
    for (const auto& layer : advice->layers) {
        addLayer(rows, layer, stock, speech);
    }
    blocks.append(rowsBlock(SheetKinds::Facts, rows));
    if (advice->bleedWatchDue) {
        blocks.append(textBlock(SheetKinds::Sentence, speech.text("runs.advice-bleed")));
    }
    blocks.append(textBlock(SheetKinds::Note, speech.text("runs.advice-source")));
    blocks.append(textBlock(SheetKinds::Note, speech.text("runs.advice-habits")));
    return blocks;
}

} // namespace holdfast::kiosk::screens
