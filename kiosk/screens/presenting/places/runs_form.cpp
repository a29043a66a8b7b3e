#include "kiosk/screens/presenting/places/runs_form.hpp"

#include "analytics/cure/advice/advice.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/wording/plan_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kFabric = "runs.fabric.";
constexpr std::string_view kInk = "runs.ink."; ///< then the layer's position, a point, the family's name

bool takesPrefix(std::string& id, std::string_view prefix) {
    if (id.compare(0, prefix.size(), prefix) != 0) {
        return false;
    }
    id.erase(0, prefix.size());
    return true;
}

const analytics::Fabric* fabricOf(const shop::Stock& stock, const std::string& name) {
    const auto found =
        std::find_if(stock.fabrics.begin(), stock.fabrics.end(), [&](const auto& one) { return one.name == name; });
    return found == stock.fabrics.end() ? nullptr : &*found;
}

std::vector<std::string> coloursOf(const shop::PlanDraft& draft) {
    std::vector<std::string> colours;
    for (const auto& layer : draft.layers) {
        if (!layer.colour.empty() && !layer.underbase) {
            colours.push_back(layer.colour);
        }
    }
    return colours;
}

/// The layers as the analytics judge them; nothing while something is missing.
std::optional<analytics::RunPlan> printOf(const shop::PlanDraft& draft, const shop::Stock& stock) {
    const auto* fabric = fabricOf(stock, draft.fabric);
    if (fabric == nullptr || draft.layers.empty()) {
        return std::nullopt;
    }
    analytics::RunPlan plan;
    plan.fabric = *fabric;
    for (const auto& layer : draft.layers) {
        const auto family = std::find_if(stock.families.begin(), stock.families.end(),
                                         [&](const auto& one) { return one.name == layer.ink; });
        if (family == stock.families.end()) {
            return std::nullopt;
        }
        plan.layers.push_back({layer.colour, analytics::pureInk(*family), std::nullopt});
    }
    return plan;
}

std::string costText(const analytics::LayerAdvice& layer, const wording::Speech& speech) {
    const auto& cost = layer.choice->cost;
    std::string text = speech.text(cost.harderBy > 0 ? "runs.advice-harder" : "runs.advice-easiest");
    const auto add = [&text](const std::string& more) { text += " · " + more; };
    if (layer.underbase) {
        add(speech.text("runs.advice-underbase"));
    }
    if (layer.flash) {
        add(speech.text("runs.advice-flash", {{"low", speech.figures.bare(layer.flash->low)},
                                              {"high", speech.figures.temperature(layer.flash->high)}}));
    }
    if (cost.needsHold) {
        add(speech.text("runs.advice-hold"));
    }
    if (cost.hasPotLife) {
        add(speech.text("runs.advice-pot-life"));
    }
    std::string others;
    for (const auto& other : layer.others) {
        others += (others.empty() ? "" : ", ") + other.family;
    }
    if (!others.empty()) {
        add(speech.text("runs.advice-others", {{"inks", others}}));
    }
    return text;
}

} // namespace

std::optional<records::RunPlanned> RunsForm::plan() {
    auto made = shop::planFrom(m_draft, m_stock);
    m_faults = made ? std::vector<shop::PlanFault>{} : std::move(made.error());
    return made ? std::optional{std::move(*made)} : std::nullopt;
}

bool RunsForm::act(const std::string& id) {
    auto rest = id;
    if (id == "runs.kind.run" || id == "runs.kind.card") {
        m_draft.kind = id == "runs.kind.run" ? records::PlanKind::run : records::PlanKind::windowCard;
    } else if (id == "runs.children.no" || id == "runs.children.yes") {
        m_draft.childrensWear = id == "runs.children.yes";
    } else if (id == "runs.layer.add") {
        if (m_draft.layers.size() < shop::kMostLayers) {
            m_draft.layers.emplace_back();
        }
    } else if (id == "runs.layer.remove") {
        if (!m_draft.layers.empty()) {
            m_draft.layers.pop_back();
        }
    } else if (id == "runs.advise") {
        advise();
    } else if (takesPrefix(rest, kFabric)) {
        m_draft.fabric = rest;
    } else if (takesPrefix(rest, kInk)) {
        const auto point = rest.find('.');
        const auto position = static_cast<std::size_t>(std::atoi(rest.c_str()));
        if (point != std::string::npos && position >= 1 && position <= m_draft.layers.size()) {
            m_draft.layers[position - 1].ink = rest.substr(point + 1);
        }
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

bool RunsForm::enter(const std::string& field, const std::string& text) {
    auto rest = field;
    if (field == "runs.title") {
        m_draft.title = text;
    } else if (field == "runs.customer") {
        m_draft.customer = text;
    } else if (field == "runs.reference") {
        m_draft.reference = text;
    } else if (field == "runs.pieces") {
        m_draft.pieces = text;
    } else if (field == "runs.garment") {
        m_draft.garmentColour = text;
    } else if (takesPrefix(rest, "runs.colour.")) {
        const auto position = static_cast<std::size_t>(std::atoi(rest.c_str()));
        if (position >= 1 && position <= m_draft.layers.size()) {
            m_draft.layers[position - 1].colour = text;
        }
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

/// Lays the underbase that is missing and gives each layer the easiest ink that will do.
void RunsForm::advise() {
    m_advised = true;
    const auto* fabric = fabricOf(m_stock, m_draft.fabric);
    if (fabric == nullptr) {
        return;
    }
    const auto advice = analytics::adviseRun(*fabric, m_draft.garmentColour, coloursOf(m_draft), m_stock.families);
    std::vector<shop::DraftLayer> layers;
    for (const auto& layer : advice.layers) {
        layers.push_back({layer.colour, layer.choice ? layer.choice->family : std::string{}, {}, layer.underbase});
    }
    if (!layers.empty()) {
        m_draft.layers = std::move(layers);
    }
}

SheetField RunsForm::field(const std::string& name, const std::string& label, const std::string& value,
                           const std::string& hint, SheetKinds::Keys keys, const wording::Speech& speech) const {
    auto field = fieldOf("runs." + name, label, value, hint, keys);
    const auto fault =
        std::find_if(m_faults.begin(), m_faults.end(), [&](const auto& one) { return one.field == name; });
    if (fault != m_faults.end()) {
        field.fault = toQString(wording::sentence(*fault, speech));
    }
    return field;
}

QList<SheetBlock> RunsForm::blocks(const wording::Speech& speech) const {
    const auto text = [&](const char* key) { return speech.text(key); };
    QList<SheetBlock> blocks;
    for (const auto& fault : m_faults) {
        if (fault.field == "fabric" || fault.field == "layers" || fault.field.find(".ink") != std::string::npos) {
            blocks.append(textBlock(SheetKinds::Lead, wording::sentence(fault, speech)));
        }
    }
    blocks.append(
        fieldsBlock({field("title", text("runs.field.title"), m_draft.title, text("runs.field.title-hint"),
                           SheetKinds::Text, speech),
                     field("pieces", text("runs.field.pieces"), m_draft.pieces, {}, SheetKinds::Number, speech),
                     field("garment", text("runs.field.garment"), m_draft.garmentColour,
                           text("runs.field.garment-hint"), SheetKinds::Text, speech),
                     field("customer", text("runs.field.customer"), m_draft.customer, {}, SheetKinds::Text, speech),
                     field("reference", text("runs.field.reference"), m_draft.reference,
                           text("runs.field.reference-hint"), SheetKinds::Text, speech)}));
    std::vector<Choice> fabrics;
    for (const auto& fabric : m_stock.fabrics) {
        fabrics.push_back({std::string{kFabric} + fabric.name, fabric.name});
    }
    blocks.append(choicesBlock(text("runs.choose-fabric"), fabrics, std::string{kFabric} + m_draft.fabric));
    addLayers(blocks, speech);
    addAdvice(blocks, speech);
    addWindow(blocks, speech);
    blocks.append(choicesBlock(text("runs.choose-children"),
                               {{"runs.children.no", text("runs.no")}, {"runs.children.yes", text("runs.yes")}},
                               m_draft.childrensWear ? "runs.children.yes" : "runs.children.no"));
    if (m_draft.run.empty()) {
        blocks.append(
            choicesBlock(text("runs.choose-kind"),
                         {{"runs.kind.run", text("runs.kind-run")}, {"runs.kind.card", text("runs.kind-card")}},
                         m_draft.kind == records::PlanKind::run ? "runs.kind.run" : "runs.kind.card"));
    }
    return blocks;
}

void RunsForm::addLayers(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    blocks.append(textBlock(SheetKinds::Heading, speech.text("runs.layers-heading")));
    for (std::size_t i = 0; i < m_draft.layers.size(); ++i) {
        const auto position = std::to_string(i + 1);
        auto colour =
            field("layer." + position + ".colour", speech.text("runs.field.layer-colour", {{"layer", position}}),
                  m_draft.layers[i].colour, speech.text("runs.field.layer-hint"), SheetKinds::Text, speech);
        colour.id = toQString("runs.colour." + position);
        blocks.append(fieldsBlock({colour}));
        std::vector<Choice> inks;
        for (const auto& family : m_stock.families) {
            inks.push_back({std::string{kInk} + position + "." + family.name, family.name});
        }
        blocks.append(choicesBlock(speech.text("runs.choose-ink", {{"layer", position}}), inks,
                                   std::string{kInk} + position + "." + m_draft.layers[i].ink));
    }
    std::vector<ActionState> actions{pressOf("runs.layer.add", speech.text("runs.add-layer")),
                                     pressOf("runs.advise", speech.text("runs.advise"))};
    if (!m_draft.layers.empty()) {
        actions.insert(actions.begin() + 1, pressOf("runs.layer.remove", speech.text("runs.remove-layer")));
    }
    blocks.append(pressBlock(actions));
}

void RunsForm::addAdvice(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    if (!m_advised) {
        return;
    }
    blocks.append(textBlock(SheetKinds::Heading, speech.text("runs.advice-heading")));
    const auto* fabric = fabricOf(m_stock, m_draft.fabric);
    const auto colours = coloursOf(m_draft);
    if (fabric == nullptr || colours.empty()) {
        blocks.append(textBlock(SheetKinds::Sentence, speech.text("runs.advice-colours-first")));
        return;
    }
    const auto advice = analytics::adviseRun(*fabric, m_draft.garmentColour, colours, m_stock.families);
    std::vector<SheetRow> rows;
    for (const auto& layer : advice.layers) {
        rows.push_back(layer.choice ? factRow(speech.text("runs.advice-layer",
                                                          {{"colour", layer.colour},
                                                           {"ink", layer.choice->family},
                                                           {"cure", speech.figures.temperature(layer.choice->cure)}}),
                                              {}, costText(layer, speech))
                                    : factRow(speech.text("runs.advice-none", {{"colour", layer.colour}}), {}));
    }
    blocks.append(rowsBlock(SheetKinds::Facts, rows));
    if (advice.bleedWatchDue) {
        blocks.append(textBlock(SheetKinds::Sentence, speech.text("runs.advice-bleed")));
    }
    blocks.append(textBlock(SheetKinds::Note, speech.text("runs.advice-source")));
}

void RunsForm::addWindow(QList<SheetBlock>& blocks, const wording::Speech& speech) const {
    blocks.append(textBlock(SheetKinds::Heading, speech.text("runs.window-heading")));
    const auto print = printOf(m_draft, m_stock);
    const auto window = print ? analytics::windowOf(*print) : tl::unexpected(std::vector<analytics::WindowFault>{});
    if (!window) {
        blocks.append(textBlock(SheetKinds::Note, speech.text("runs.window-not-yet")));
        return;
    }
    blocks.append(textBlock(SheetKinds::Lead, wording::windowText(*window, speech)));
    for (const auto& line : wording::windowSentences(*print, *window, wording::speechFor(speech, *print))) {
        blocks.append(textBlock(SheetKinds::Sentence, line));
    }
}

} // namespace holdfast::kiosk::screens
