#include "kiosk/screens/presenting/places/plan_layers.hpp"

#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/wording/stock_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::size_t kMostBucketsShown = 24;

std::string bucketName(std::int64_t number, const std::string& name, const wording::Speech& speech) {
    return speech.text("inks.bucket-row", {{"bucket", std::to_string(number)}, {"name", name}});
}

SheetRow bucketRow(const PlanLayersShown& shown, std::size_t index, const wording::Speech& speech) {
    const auto position = std::to_string(index + 1);
    std::string value;
    std::string trouble;
    for (const auto number : shown.draft.layers[index].buckets) {
        const auto* bucket = shop::bucketOf(shown.stock, number);
        value.append(value.empty() ? "" : ", ");
        value.append(bucketName(number, bucket != nullptr ? bucket->name : std::string{}, speech));
        if (bucket != nullptr && bucket->trouble) {
            trouble = wording::sentence(*bucket->trouble, speech);
        }
    }
    auto row = factRow(speech.text("runs.pour-layer", {{"layer", position}}),
                       value.empty() ? speech.text("runs.pour-none") : value, trouble);
    row.id = toQString(std::string{kPlanPour} + position);
    row.chosen = index == shown.pouring;
    return row;
}

/// Of the layer's ink if there are such, else all; the newest first.
std::vector<Choice> bucketChoices(const PlanLayersShown& shown, const wording::Speech& speech) {
    const auto& layer = shown.draft.layers[shown.pouring];
    const bool ofInk =
        std::any_of(shown.open.begin(), shown.open.end(), [&](const auto& one) { return one.name == layer.ink; });
    std::vector<Choice> choices;
    choices.push_back({"runs.bucket.none", speech.text("runs.pour-none")});
    for (auto one = shown.open.rbegin(); one != shown.open.rend() && choices.size() <= kMostBucketsShown; ++one) {
        if (!ofInk || one->name == layer.ink) {
            choices.push_back(
                {std::string{kPlanBucket} + std::to_string(one->number), bucketName(one->number, one->name, speech)});
        }
    }
    return choices;
}

void addPouring(QList<SheetBlock>& blocks, const PlanLayersShown& shown, const wording::Speech& speech) {
    const auto position = std::to_string(shown.pouring + 1);
    const auto& buckets = shown.draft.layers[shown.pouring].buckets;
    auto chosen = std::string{kPlanBucket};
    chosen.append(buckets.empty() ? "none" : std::to_string(buckets.front()));
    blocks.append(
        choicesBlock(speech.text("runs.choose-bucket", {{"layer", position}}), bucketChoices(shown, speech), chosen));
    blocks.append(textBlock(SheetKinds::Note, speech.text("runs.pour-hint", {{"layer", position}})));
}

} // namespace

QList<SheetBlock> planLayerBlocks(const PlanLayersShown& shown, const wording::Speech& speech) {
    QList<SheetBlock> blocks;
    for (std::size_t i = 0; i < shown.draft.layers.size(); ++i) {
        const auto& layer = shown.draft.layers[i];
        const auto position = std::to_string(i + 1);
        blocks.append(fieldsBlock(
            {fieldOf(std::string{kPlanColour} + position, speech.text("runs.field.layer-colour", {{"layer", position}}),
                     layer.colour, speech.text("runs.field.layer-hint"))}));
        std::vector<Choice> inks;
        for (const auto& family : shown.stock.families) {
            inks.push_back({std::string{kPlanInk} + position + "." + family.name, family.name});
        }
        blocks.append(choicesBlock(speech.text("runs.choose-ink", {{"layer", position}}), inks,
                                   std::string{kPlanInk} + position + "." + layer.ink));
        if (!shown.open.empty() || !layer.buckets.empty()) {
            blocks.append(rowsBlock(SheetKinds::Rows, {bucketRow(shown, i, speech)}));
            if (i == shown.pouring) {
                addPouring(blocks, shown, speech);
            }
        }
    }
    return blocks;
}

std::optional<analytics::RunPlan> printOf(const shop::PlanDraft& draft, const shop::Stock& stock) {
    const auto fabric = std::find_if(stock.fabrics.begin(), stock.fabrics.end(),
                                     [&](const auto& one) { return one.name == draft.fabric; });
    if (fabric == stock.fabrics.end() || draft.layers.empty()) {
        return std::nullopt;
    }
    analytics::RunPlan plan;
    plan.fabric = *fabric;
    for (const auto& layer : draft.layers) {
        if (!layer.buckets.empty()) {
            const auto* bucket = shop::bucketOf(stock, layer.buckets.front());
            if (bucket == nullptr || layer.buckets.size() > 1) {
                return std::nullopt;
            }
            plan.layers.push_back({layer.colour, bucket->ink, std::nullopt});
            continue;
        }
        const auto family = std::find_if(stock.families.begin(), stock.families.end(),
                                         [&](const auto& one) { return one.name == layer.ink; });
        if (family == stock.families.end()) {
            return std::nullopt;
        }
        plan.layers.push_back({layer.colour, analytics::pureInk(*family), std::nullopt});
    }
    return plan;
}

} // namespace holdfast::kiosk::screens
