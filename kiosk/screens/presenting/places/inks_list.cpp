// What the Inks show.
#include "kiosk/screens/presenting/places/inks_place.hpp"
#include "kiosk/screens/presenting/places/inks_words.hpp"

namespace holdfast::kiosk::screens {
namespace {

SheetRow headingRow(const std::string& title) {
    auto row = factRow(title, {});
    row.strong = true;
    return row;
}

} // namespace

SheetPageState InksPlace::sheet() const {
    SheetPageState page;
    page.heading = toQString(text("inks.heading"));
    page.listNone = toQString(text("inks.none"));
    addList(page);
    page.listActions = {pressOf("inks.open-bucket", text("inks.open-bucket")), pressOf("inks.mix", text("inks.mix")),
                        pressOf("inks.new-family", text("inks.new-family")),
                        pressOf("inks.new-cloth", text("inks.new-cloth"))};
    page.back = pressOf("inks.back", text("inks.back"));
    page.detailOnly = m_form || !m_chosen.empty();
    if (m_form && m_aside) {
        page.listActions.prepend(pressOf("inks.resume", text("inks.resume")));
    }
    if (isFormShown()) {
        page.title = toQString(m_form->title(m_needs.speech()));
        page.blocks = m_form->blocks(m_needs.speech());
        page.actions = {pressOf("inks.save", text("inks.save"), true), pressOf("inks.back", text("inks.leave"))};
    } else {
        addChosen(page);
    }
    return page;
}

void InksPlace::addList(SheetPageState& page) const {
    const auto add = [&](const std::string& id, const std::string& title, const std::string& detail,
                         const std::string& value) {
        auto row = factRow(title, value, detail);
        row.id = toQString(id);
        row.chosen = isChosen(id);
        page.list.append(row);
    };
    const auto& figures = m_needs.speech().figures;
    if (!m_buckets.empty()) {
        page.list.append(headingRow(text("inks.buckets")));
    }
    for (const auto& bucket : m_buckets) {
        const auto number = std::to_string(bucket.number);
        add(std::string{kInksBucket} + number, text("inks.bucket-row", {{"bucket", number}, {"name", bucket.name}}),
            bucket.colour, bucket.batch);
    }
    if (!m_families.empty()) {
        page.list.append(headingRow(text("inks.families")));
    }
    for (const auto& family : m_families) {
        add(std::string{kInksFamily} + family.name, family.name,
            text("inks.row-family", {{"chemistry", wording::word(family.chemistry, m_needs.speech())},
                                     {"revision", std::to_string(family.revision)}}),
            figures.temperature(family.cure.temperature()));
    }
    if (!m_fabrics.empty()) {
        page.list.append(headingRow(text("inks.cloths")));
    }
    for (const auto& fabric : m_fabrics) {
        add(std::string{kInksCloth} + fabric.name, fabric.name,
            fabric.hardCeiling
                ? text("inks.row-ceiling", {{"ceiling", figures.temperature(fabric.hardCeiling->temperature())}})
                : text("inks.row-no-ceiling"),
            {});
    }
}

void InksPlace::addChosen(SheetPageState& page) const {
    const auto& speech = m_needs.speech();
    if (const auto* family = std::get_if<Families>(&m_shown)) {
        page.title = toQString(family->back().name);
        page.blocks = familyBlocks(*family, speech);
        page.actions = {pressOf("inks.revise", text("inks.revise"), true)};
    } else if (const auto* fabric = std::get_if<Fabrics>(&m_shown)) {
        page.title = toQString(fabric->back().name);
        page.blocks = fabricBlocks(*fabric, speech);
        page.actions = {pressOf("inks.revise", text("inks.revise"), true)};
    } else if (const auto* shown = std::get_if<ShownBucket>(&m_shown)) {
        auto bucket = *shown;
        const auto wall = m_needs.clock->wall(); // pot life runs on while it is looked at
        bucket.now = wall.millisecondsSinceEpoch;
        bucket.today = drivers::localDay(wall);
        const auto& file = bucket.tree.bucket;
        page.title =
            toQString(text(file.colour.empty() ? "inks.bucket-title" : "inks.bucket-title-colour",
                           {{"bucket", std::to_string(file.number)}, {"name", file.name}, {"colour", file.colour}}));
        if (m_closing) {
            addClosing(page, file);
            return;
        }
        page.blocks = bucketBlocks(bucket, speech);
        page.actions = {pressOf("inks.label", text("inks.label"), true)};
        for (const auto& row : kInksEnds) {
            if (!file.closed) {
                page.actions.append(pressOf(row.id, text(row.id)));
            }
        }
    } else {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("inks.pick")));
    }
}

/// Asked once: a closed bucket is not opened again.
void InksPlace::addClosing(SheetPageState& page, const records::BucketOnFile& bucket) const {
    page.blocks.append(
        textBlock(SheetKinds::Lead, text("inks.close-ask", {{"bucket", std::to_string(bucket.number)},
                                                            {"name", bucket.name},
                                                            {"end", wording::word(*m_closing, m_needs.speech())}})));
    page.blocks.append(textBlock(SheetKinds::Sentence, text("inks.close-after")));
    page.blocks.append(textBlock(SheetKinds::Note, text("inks.caution")));
    page.actions = {pressOf("inks.close-now", text("inks.close-now"), true), pressOf("inks.back", text("inks.leave"))};
}

} // namespace holdfast::kiosk::screens
