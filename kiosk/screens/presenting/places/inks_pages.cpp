#include "kiosk/screens/presenting/places/inks_pages.hpp"

#include "kiosk/records/json_object.hpp"
#include "kiosk/screens/presenting/places/inks_words.hpp"
#include "kiosk/screens/presenting/places/listed.hpp"
#include "kiosk/shop/stock/company.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

using analytics::Duration;
using wording::Speech;

constexpr double kPercent = 100.0;

/// What was authored in the shown unit stands as it was typed.
std::string asAuthored(const analytics::AuthoredTemperature& t, const Speech& speech) {
    return t.unit == speech.figures.unit ? shop::numberTyped(t.value) + "\xC2\xA0" + speech.figures.unitSign()
                                         : speech.figures.temperature(t.temperature());
}

std::string percent(double value, const Speech& speech) {
    return speech.text("inks.percent", {{"percent", shop::numberTyped(value)}});
}

class InkFacts final {
public:
    explicit InkFacts(const Speech& speech) : m_speech{speech} {}

    void add(const char* name, const std::string& value) {
        m_rows.push_back(factRow(m_speech.text(std::string{"inks.fact."} + name),
                                 value.empty() ? m_speech.text("inks.fact.not-stated") : value));
    }
    void addIf(const char* name, const std::string& value) {
        if (!value.empty()) {
            add(name, value);
        }
    }
    [[nodiscard]] SheetBlock block() const { return rowsBlock(SheetKinds::Facts, m_rows); }

private:
    const Speech& m_speech;
    std::vector<SheetRow> m_rows;
};

std::string cureOf(const records::FamilyRecord& family, const Speech& speech) {
    const auto cure = asAuthored(family.cure, speech);
    return family.hold.count() > 0.0 ? speech.text(family.unbroken ? "inks.cure-unbroken" : "inks.cure-hold",
                                                   {{"cure", cure}, {"hold", wording::durationText(family.hold)}})
                                     : cure;
}

template <class T>
std::string authoredOr(const std::optional<T>& t, const Speech& speech) {
    return t ? asAuthored(*t, speech) : std::string{};
}

std::string hoursOr(const std::optional<Duration>& span, const Speech& speech) {
    return span ? wording::hoursText(*span, speech) : std::string{};
}

std::string bandOr(const std::optional<analytics::AdditiveBand>& band, const Speech& speech) {
    return band ? speech.text("inks.range", {{"low", shop::numberTyped(band->low * kPercent)},
                                             {"high", percent(band->high * kPercent, speech)}})
                : std::string{};
}

SheetBlock familyFacts(const records::FamilyRecord& family, const Speech& speech) {
    InkFacts facts{speech};
    facts.add("chemistry", wording::word(family.chemistry, speech));
    facts.add("gel", family.gel ? speech.text("inks.range", {{"low", asAuthored(family.gel->low, speech)},
                                                             {"high", asAuthored(family.gel->high, speech)}})
                                : std::string{});
    facts.add("cure", cureOf(family, speech));
    facts.add("ceiling", authoredOr(family.ceiling, speech));
    facts.add("bleed", wording::word(family.bleedResistance, speech));
    facts.add("ease", std::to_string(family.ease));
    if (family.pairs) {
        const auto& [hotter, cooler] = *family.pairs;
        facts.add("pairs", speech.text("inks.fact.pairs-value", {{"hotter", asAuthored(hotter.temperature, speech)},
                                                                 {"hotterTime", wording::durationText(hotter.time)},
                                                                 {"cooler", asAuthored(cooler.temperature, speech)},
                                                                 {"coolerTime", wording::durationText(cooler.time)}}));
    }
    facts.addIf("pot-life", hoursOr(family.potLife, speech));
    facts.addIf("band", bandOr(family.additiveBand, speech));
    facts.addIf("rest", hoursOr(family.restBeforeTest, speech));
    return facts.block();
}

/// Where the figures come from; said loudest when from memory.
void addMark(QList<SheetBlock>& blocks, analytics::Mark mark, const std::string& source, const char* of,
             const Speech& speech) {
    if (mark == analytics::Mark::fromMemory) {
        blocks.append(textBlock(SheetKinds::Sentence, speech.text(std::string{"inks.memory-"} + of)));
    } else if (mark == analytics::Mark::commonPractice) {
        blocks.append(textBlock(SheetKinds::Sentence, speech.text(std::string{"inks.practice-"} + of)));
    }
    if (!source.empty()) {
        blocks.append(textBlock(SheetKinds::Note, speech.text("inks.source", {{"source", source}})));
    }
}

template <class Record, class Summary>
void addRevisions(QList<SheetBlock>& blocks, const std::vector<Record>& revisions, const Speech& speech,
                  const Summary& summary) {
    blocks.append(textBlock(SheetKinds::Heading, speech.text("inks.revisions")));
    std::vector<SheetRow> rows;
    for (auto one = revisions.rbegin(); one != revisions.rend(); ++one) {
        auto mark = wording::word(one->mark, speech);
        if (!one->source.empty()) {
            mark += " · " + one->source;
        }
        rows.push_back(
            factRow(speech.text("inks.revision", {{"revision", std::to_string(one->revision)}}), summary(*one), mark));
    }
    blocks.append(rowsBlock(SheetKinds::Facts, rows));
}

void addTree(std::vector<SheetRow>& rows, const records::BucketTree& tree, int depth, const Speech& speech) {
    auto row = factRow(
        speech.text("inks.bucket-row", {{"bucket", std::to_string(tree.bucket.number)}, {"name", tree.bucket.name}}),
        speech.text("inks.percent", {{"percent", wording::numberText(tree.share * kPercent, 1)}}), tree.bucket.colour);
    row.indent = depth;
    row.id = toQString("inks.pick.bucket." + std::to_string(tree.bucket.number));
    rows.push_back(row);
    for (const auto& part : tree.parts) {
        addTree(rows, part, depth + 1, speech);
    }
}

/// The earliest catalysing in the tree: what is left of the pot life counts from it.
std::optional<std::int64_t> catalysedAt(const records::BucketTree& tree) {
    auto earliest = tree.bucket.potLifeStartsAt;
    for (std::size_t i = 0; i < tree.parts.size(); ++i) {
        const auto below = tree.bucket.parts[i].mass > 0.0 ? catalysedAt(tree.parts[i]) : std::nullopt;
        earliest = below && (!earliest || *below < *earliest) ? below : earliest;
    }
    return earliest;
}

std::string potLifeLeft(const ShownBucket& bucket, const Speech& speech) {
    if (!bucket.ink || !bucket.ink->requirement.potLife) {
        return {};
    }
    const auto start = catalysedAt(bucket.tree);
    if (!start) {
        return speech.text("inks.fact.not-catalysed");
    }
    constexpr double kMillisecondsPerSecond = 1000.0;
    const Duration gone{static_cast<double>(bucket.now - *start) / kMillisecondsPerSecond};
    const auto left = *bucket.ink->requirement.potLife - gone;
    return left.count() > 0.0 ? wording::hoursText(left, speech) : speech.text("inks.fact.pot-life-over");
}

void addBucketFacts(QList<SheetBlock>& blocks, const ShownBucket& shown, const Speech& speech) {
    const auto& bucket = shown.tree.bucket;
    InkFacts facts{speech};
    facts.addIf("closed", bucket.closed ? wording::word(*bucket.closed, speech) : std::string{});
    facts.addIf("batch", bucket.batch);
    facts.addIf("expiry", bucket.expiry ? records::toText(*bucket.expiry) : std::string{});
    facts.addIf("catalysed", potLifeLeft(shown, speech));
    facts.addIf("additive", bucket.additivePercent ? percent(*bucket.additivePercent, speech) : std::string{});
    if (shown.ink) {
        facts.addIf("band", shown.ink->additiveBandsExclude() ? std::string{}
                                                              : bandOr(shown.ink->requirement.additiveBand, speech));
        facts.addIf("ceiling", shown.ink->requirement.ceiling
                                   ? speech.figures.temperature(*shown.ink->requirement.ceiling)
                                   : std::string{});
        facts.add("bleed", wording::word(shown.ink->requirement.bleedResistance, speech));
    }
    blocks.append(facts.block());
}

std::string besideText(const shop::Company& one, const Speech& speech) {
    if (one.window.state == analytics::WindowState::closed) {
        return {};
    }
    if (one.with.empty()) {
        return speech.text("inks.company-alone");
    }
    return speech.text(one.notWith.empty() ? "inks.company-with" : "inks.company-with-not",
                       {{"inks", listed(one.with)}, {"others", listed(one.notWith)}});
}

void addCompany(QList<SheetBlock>& blocks, const ShownBucket& shown, const Speech& speech) {
    blocks.append(textBlock(SheetKinds::Heading, speech.text("inks.company")));
    const auto company = shop::companyOf(*shown.ink, shown.tree.bucket.colour, shown.families, shown.fabrics);
    if (company.empty()) {
        blocks.append(textBlock(SheetKinds::Sentence, speech.text("inks.no-cloths")));
        return;
    }
    std::vector<SheetRow> rows;
    for (const auto& one : company) {
        const bool closed = one.window.state == analytics::WindowState::closed;
        rows.push_back(
            factRow(speech.text(closed ? "inks.company-closed" : "inks.company-window",
                                {{"fabric", one.fabric}, {"window", wording::windowText(one.window, speech)}}),
                    {}, besideText(one, speech)));
    }
    blocks.append(rowsBlock(SheetKinds::Facts, rows));
    blocks.append(textBlock(SheetKinds::Note, speech.text("inks.company-note")));
}

} // namespace

QList<SheetBlock> familyBlocks(const std::vector<records::FamilyRecord>& revisions, const Speech& speech) {
    QList<SheetBlock> blocks;
    const auto& newest = revisions.back();
    blocks.append(textBlock(SheetKinds::Lead, speech.text("inks.cures-at", {{"cure", cureOf(newest, speech)}})));
    addMark(blocks, newest.mark, newest.source, "family", speech);
    blocks.append(familyFacts(newest, speech));
    addRevisions(blocks, revisions, speech, [&](const auto& one) { return cureOf(one, speech); });
    blocks.append(textBlock(SheetKinds::Note, speech.text("inks.caution")));
    return blocks;
}

QList<SheetBlock> fabricBlocks(const std::vector<records::FabricRecord>& revisions, const Speech& speech) {
    QList<SheetBlock> blocks;
    const auto& newest = revisions.back();
    addMark(blocks, newest.mark, newest.source, "cloth", speech);
    InkFacts facts{speech};
    facts.add("hard-ceiling", authoredOr(newest.hardCeiling, speech));
    facts.add("bleed-ceiling", authoredOr(newest.bleedCeiling, speech));
    facts.add("need", wording::word(newest.needOfAtRiskColour, speech));
    facts.add("colours", newest.coloursNotAtRisk.empty() ? speech.text("inks.fact.colours-none")
                                                         : listed(newest.coloursNotAtRisk));
    blocks.append(facts.block());
    addRevisions(blocks, revisions, speech, [&](const auto& one) { return authoredOr(one.hardCeiling, speech); });
    return blocks;
}

QList<SheetBlock> bucketBlocks(const ShownBucket& bucket, const Speech& speech) {
    QList<SheetBlock> blocks;
    const auto trouble =
        bucket.ink ? records::troubleOf(bucket.tree, *bucket.ink, bucket.now, bucket.today) : std::nullopt;
    if (trouble) {
        blocks.append(textBlock(SheetKinds::Lead, wording::sentence(trouble->fault, speech)));
    }
    if (bucket.ink) {
        blocks.append(
            textBlock(trouble ? SheetKinds::Sentence : SheetKinds::Lead,
                      speech.text("inks.cures-at", {{"cure", wording::cureText(bucket.ink->requirement, speech)}})));
    } else {
        blocks.append(textBlock(SheetKinds::Lead, speech.text("inks.cures-unknown")));
    }
    addBucketFacts(blocks, bucket, speech);
    if (bucket.ink) {
        addCompany(blocks, bucket, speech);
    }
    if (!bucket.tree.parts.empty()) {
        blocks.append(textBlock(SheetKinds::Heading, speech.text("inks.made-of")));
        std::vector<SheetRow> rows;
        addTree(rows, bucket.tree, 0, speech);
        blocks.append(rowsBlock(SheetKinds::Rows, rows));
    }
    blocks.append(textBlock(SheetKinds::Note, speech.text("inks.caution")));
    return blocks;
}

} // namespace holdfast::kiosk::screens
