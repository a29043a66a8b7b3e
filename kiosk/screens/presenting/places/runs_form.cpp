#include "kiosk/screens/presenting/places/runs_form.hpp"

#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/places/plan_advice.hpp"
#include "kiosk/screens/presenting/places/plan_layers.hpp"
#include "kiosk/shop/planning/layer_bucket.hpp"
#include "kiosk/wording/plan_sentences.hpp"

#include <algorithm>
#include <charconv>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kFabric = "runs.fabric.";

bool takesPrefix(std::string& id, std::string_view prefix) {
    if (id.compare(0, prefix.size(), prefix) != 0) {
        return false;
    }
    id.erase(0, prefix.size());
    return true;
}

std::size_t positionIn(const std::string& text) {
    std::size_t position = 0;
    (void)std::from_chars(text.data(), text.data() + text.size(), position);
    return position;
}

} // namespace

RunsForm::RunsForm(shop::PlanDraft draft, shop::Stock stock, std::vector<records::BucketOnFile> open, BucketOf bucketOf)
    : m_draft{std::move(draft)}, m_first{m_draft}, m_stock{std::move(stock)}, m_open{std::move(open)},
      m_bucketOf{std::move(bucketOf)} {
    for (const auto& layer : m_draft.layers) {
        for (const auto number : layer.buckets) {
            learn(number, true); // one that was closed since stays where it stood
        }
    }
    pourNext(0);
}

std::optional<shop::PlanFault> RunsForm::learn(std::int64_t number, bool closedToo) {
    if (shop::bucketOf(m_stock, number) != nullptr) {
        return std::nullopt;
    }
    auto bucket = m_bucketOf(number, closedToo);
    if (!bucket) {
        return bucket.error();
    }
    m_stock.buckets.push_back(std::move(*bucket));
    return std::nullopt;
}

/// To the first layer from there on that names no bucket; where it is if all do.
void RunsForm::pourNext(std::size_t from) {
    for (auto i = from; i < m_draft.layers.size(); ++i) {
        if (m_draft.layers[i].buckets.empty()) {
            m_pouring = i;
            return;
        }
    }
    m_pouring = m_draft.layers.empty() ? 0 : std::min(m_pouring, m_draft.layers.size() - 1);
}

std::optional<shop::PlanFault> RunsForm::pour(std::int64_t number) {
    if (m_pouring >= m_draft.layers.size()) {
        return shop::PlanFault{shop::PlanFaultCause::noLayer, "layers", {}, {}};
    }
    if (auto fault = learn(number, false)) {
        return fault;
    }
    shop::pourInto(m_draft.layers[m_pouring], *shop::bucketOf(m_stock, number));
    m_faults.clear();
    pourNext(m_pouring + 1);
    return std::nullopt;
}

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
    } else if (id == "runs.advise") {
        m_advised = true;
        m_draft.layers = advisedLayers(m_draft, m_stock);
        pourNext(0);
    } else if (takesPrefix(rest, kFabric)) {
        m_draft.fabric = rest;
    } else {
        return actOnLayers(id);
    }
    m_faults.clear();
    return true;
}

bool RunsForm::actOnLayers(const std::string& id) {
    auto rest = id;
    if (id == "runs.layer.add") {
        if (m_draft.layers.size() < shop::kMostLayers) {
            m_draft.layers.emplace_back();
        }
    } else if (id == "runs.layer.remove") {
        if (!m_draft.layers.empty()) {
            m_draft.layers.pop_back();
        }
        pourNext(0);
    } else if (takesPrefix(rest, kPlanPour)) {
        const auto position = positionIn(rest);
        m_pouring = position >= 1 && position <= m_draft.layers.size() ? position - 1 : m_pouring;
    } else if (takesPrefix(rest, kPlanBucket)) {
        pressBucket(rest);
        return true;
    } else if (takesPrefix(rest, kPlanInk)) {
        const auto point = rest.find('.');
        const auto position = positionIn(rest);
        if (point != std::string::npos && position >= 1 && position <= m_draft.layers.size()) {
            m_draft.layers[position - 1].ink = rest.substr(point + 1);
            m_draft.layers[position - 1].buckets.clear(); // the bucket that stood there may hold another ink
        }
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

void RunsForm::pressBucket(const std::string& number) {
    m_faults.clear();
    if (number == "none") {
        if (m_pouring < m_draft.layers.size()) {
            m_draft.layers[m_pouring].buckets.clear();
        }
    } else if (auto fault = pour(static_cast<std::int64_t>(positionIn(number)))) {
        m_faults.push_back(std::move(*fault));
    }
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
    } else if (field == "runs.cloth-lot") {
        m_draft.clothLot = text;
    } else if (field == "runs.finish") {
        m_draft.finish = text;
    } else if (takesPrefix(rest, kPlanColour)) {
        const auto position = positionIn(rest);
        if (position >= 1 && position <= m_draft.layers.size()) {
            m_draft.layers[position - 1].colour = text;
        }
    } else {
        return false;
    }
    m_faults.clear();
    return true;
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
                     field("cloth-lot", text("runs.field.cloth-lot"), m_draft.clothLot,
                           text("runs.field.cloth-lot-hint"), SheetKinds::Text, speech),
                     field("finish", text("runs.field.finish"), m_draft.finish, text("runs.field.finish-hint"),
                           SheetKinds::Text, speech),
                     field("customer", text("runs.field.customer"), m_draft.customer, {}, SheetKinds::Text, speech),
                     field("reference", text("runs.field.reference"), m_draft.reference,
                           text("runs.field.reference-hint"), SheetKinds::Text, speech)}));
    std::vector<Choice> fabrics;
    for (const auto& fabric : m_stock.fabrics) {
        fabrics.push_back({std::string{kFabric} + fabric.name, fabric.name});
    }
    blocks.append(choicesBlock(text("runs.choose-fabric"), fabrics, std::string{kFabric} + m_draft.fabric));
    addLayers(blocks, speech);
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
    blocks.append(planLayerBlocks({m_draft, m_stock, m_pouring, m_open}, speech));
    std::vector<ActionState> actions{pressOf("runs.layer.add", speech.text("runs.add-layer")),
                                     pressOf("runs.advise", speech.text("runs.advise"))};
    if (!m_draft.layers.empty()) {
        actions.insert(actions.begin() + 1, pressOf("runs.layer.remove", speech.text("runs.remove-layer")));
    }
    blocks.append(pressBlock(actions));
    if (m_advised) {
        blocks.append(adviceBlocks(m_draft, m_stock, speech));
    }
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
