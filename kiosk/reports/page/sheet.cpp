#include "kiosk/reports/page/sheet.hpp"

#include "kiosk/reports/codes/code_size.hpp"
#include "kiosk/reports/page/placed_page.hpp"
#include "kiosk/reports/page/stack.hpp"
#include "kiosk/reports/page/typesetting.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

constexpr double kUnder = 0.5; ///< between bars and their text

/// The page's inner column and its type.
struct Measure final {
    double left;
    double width;
    double em;

    [[nodiscard]] double right() const { return left + width; }
    [[nodiscard]] Type text() const { return {em, false}; }
    [[nodiscard]] Type strong() const { return {em, true}; }
    [[nodiscard]] Type small() const { return {0.84 * em, false}; }
    [[nodiscard]] Type smallStrong() const { return {0.84 * em, true}; }
    [[nodiscard]] Type lead() const { return {1.4 * em, true}; }
    [[nodiscard]] Type figure() const { return {(width < 50 ? 2.0 : 2.3) * em, true}; }
    /// Over a rule that begins a section.
    [[nodiscard]] double sectionGap() const { return (width < 50 ? 0.3 : 0.5) * em; }
    /// The smallest labels have more to say than to show.
    [[nodiscard]] Type number() const { return {(width < 60 ? 2.7 : 3.6) * em, true}; }
};

Block linesBlock(const QStringList& lines, const Measure& m, Type type, Worth worth, double gap = 0) {
    return {worth, gap, static_cast<double>(lines.size()) * lineHeight(type), [=](PlacedPage& page, double top) {
                for (const auto& line : lines) {
                    put(page, m.left, top, line, type);
                    top += lineHeight(type);
                }
            }};
}

Block ruleBlock(const Measure& m, double thickness, double gap, Worth worth = Worth::must) {
    return {worth, gap, thickness, [=](PlacedPage& page, double top) {
                page.ink.push_back({m.left, top, m.width, thickness});
            }};
}

double padOf(const Measure& m) {
    return 0.5 * m.em;
}

QString fittedMark(const QString& mark, const Measure& m) {
    return fitted(mark, m.width - 2 * padOf(m), m.strong());
}

double markWidth(const QString& mark, const Measure& m) {
    return advance(fittedMark(mark, m), m.strong()) + 2 * padOf(m);
}

double marksWidth(const QStringList& marks, const Measure& m) {
    double wide = 0;
    for (const auto& mark : marks) {
        wide += markWidth(mark, m) + padOf(m);
    }
    return wide;
}

void placeMarks(PlacedPage& page, const QStringList& marks, const Measure& m, double x, double top) {
    for (const auto& mark : marks) {
        const double wide = markWidth(mark, m);
        page.ink.push_back({x, top, wide, lineHeight(m.strong())});
        put(page, x + padOf(m), top, fittedMark(mark, m), m.strong(), true);
        x += wide + padOf(m);
    }
}

/// Words on ink: side by side where they fit, else under one another.
std::vector<Block> marksBlocks(const QStringList& marks, const Measure& m) {
    const double high = lineHeight(m.strong());
    if (marks.isEmpty()) {
        return {};
    }
    if (marksWidth(marks, m) - padOf(m) <= m.width) {
        return {{Worth::must, 0.3 * m.em, high,
                 [=](PlacedPage& page, double top) { placeMarks(page, marks, m, m.left, top); }}};
    }
    std::vector<Block> blocks;
    for (const auto& mark : marks) {
        blocks.push_back({Worth::must, 0.3 * m.em, high,
                          [=](PlacedPage& page, double top) { placeMarks(page, {mark}, m, m.left, top); }});
    }
    return blocks;
}

struct CodePiece final {
    SizedCode code;
    std::string text;
    Type type;

    [[nodiscard]] double width() const { return code.width; }
    [[nodiscard]] double height() const { return code.height + kUnder + lineHeight(type); }
    void place(PlacedPage& page, double x, double y) const {
        const auto line = QString::fromStdString(text);
        page.codes.push_back({{x, y, code.width, code.height}, code.module, code.modules});
        put(page, x + std::max(0.0, (code.width - advance(line, type)) / 2), y + code.height + kUnder, line, type);
    }
};

Block kindBlock(const Sheet& sheet, const Measure& m) {
    return linesBlock(wrapped(sheet.kind, m.width, m.smallStrong(), 1), m, m.smallStrong(), Worth::must);
}

Block numberBlock(const Sheet& sheet, const Measure& m) {
    const Type type{sizeToFit(sheet.number, m.width, m.number(), 1.2 * m.em), true};
    return linesBlock({fitted(sheet.number, m.width, type)}, m, type, Worth::must);
}

/// Kind and number at the left of the code, if they have room there; else the code stands under them. The marks stand
/// at the end of the kind's line, or in lines of their own.
std::vector<Block> headBlocks(const Sheet& sheet, const Measure& m, const CodePiece& code) {
    const double gap = 1.5 * m.em;
    const bool beside = m.width - code.width() - gap >= std::max(7.0 * m.em, 0.8 * advance(sheet.number, m.number()));
    Measure left = m;
    left.width = beside ? m.width - code.width() - gap : m.width;
    std::vector<Block> pile{kindBlock(sheet, left)};
    const double marks = marksWidth(sheet.marks, m);
    const bool inLine = !beside && advance(sheet.kind, m.smallStrong()) + m.em + marks <= m.width;
    if (inLine) {
        pile.push_back({Worth::must, -pile.back().height, lineHeight(m.strong()), [=](PlacedPage& page, double top) {
                            placeMarks(page, sheet.marks, m, m.right() - marks + padOf(m), top);
                        }});
    }
    if (!sheet.number.isEmpty()) {
        pile.push_back(numberBlock(sheet, left));
    }
    if (beside) {
        const double high = std::max(heightOf(pile), code.height());
        pile = {{Worth::must, 0, high, [=](PlacedPage& page, double top) {
                     placeAll(pile, page, top);
                     code.place(page, m.right() - code.width(), top);
                 }}};
    }
    for (auto& block : inLine ? std::vector<Block>{} : marksBlocks(sheet.marks, m)) {
        pile.push_back(std::move(block));
    }
    if (!beside) {
        pile.push_back({Worth::must, 0.4 * m.em, code.height(), [=](PlacedPage& page, double top) {
                            code.place(page, m.left + (m.width - code.width()) / 2, top);
                        }});
    }
    return pile;
}

void addTitle(std::vector<Block>& blocks, const Sheet& sheet, const Measure& m, int most) {
    const auto lines = wrapped(sheet.title, m.width, m.lead(), most);
    if (!lines.isEmpty()) {
        blocks.push_back(linesBlock(lines, m, m.lead(), Worth::must, 0.3 * m.em));
    }
    for (const auto& text : sheet.underTitle) {
        blocks.push_back(linesBlock(wrapped(text, m.width, m.text(), 2), m, m.text(), Worth::useful));
    }
}

void addFacts(std::vector<Block>& blocks, const Sheet& sheet, const Measure& m) {
    double labels = 0;
    for (const auto& fact : sheet.facts) {
        labels = std::max(labels, fact.value.isEmpty() ? 0 : advance(fact.label, m.small()));
    }
    labels = std::min(labels + 0.8 * m.em, 0.45 * m.width);
    bool first = true;
    for (const auto& fact : sheet.facts) {
        const auto lines = wrapped(fact.value, m.width - labels, m.strong(), fact.lines);
        if (lines.isEmpty()) {
            continue;
        }
        const auto label = fitted(fact.label, labels - 0.4 * m.em, m.small());
        const double lower = (lineHeight(m.text()) - lineHeight(m.small())) / 2 + 0.06 * m.em;
        blocks.push_back({fact.worth, first ? 0.5 * m.em : 0, static_cast<double>(lines.size()) * lineHeight(m.text()),
                          [=](PlacedPage& page, double top) {
                              put(page, m.left, top + lower, label, m.small());
                              for (const auto& line : lines) {
                                  put(page, m.left + labels, top, line, m.strong());
                                  top += lineHeight(m.text());
                              }
                          }});
        first = false;
    }
}

/// A row of the core: its outline with the position, then name, ink and figure; the ink in a second line where all
/// three do not fit in one.
Block layerBlock(const SheetLayer& layer, const Measure& m) {
    const double core = 2.4 * m.em;
    const double gap = 0.6 * m.em;
    const double x = m.left + core + gap;
    const auto figure = fitted(layer.figure, 0.5 * m.width, m.strong());
    const double room = m.right() - advance(figure, m.strong()) - gap - x;
    const auto name = fitted(layer.name, room, m.strong());
    const double used = advance(name, m.strong()) + gap;
    const bool oneLine = layer.ink.isEmpty() || used + advance(layer.ink, m.text()) <= room;
    const auto ink = oneLine ? layer.ink : fitted(layer.ink, m.right() - x, m.text());
    const double line = lineHeight(m.text());
    const double high = (oneLine ? line : 2 * line) + 0.25 * m.em;
    return {Worth::must, -kHair, high, [=](PlacedPage& page, double top) {
                putFrame(page, {m.left, top, core, high}, kHair);
                const auto number = QString::number(layer.position);
                put(page, m.left + (core - advance(number, m.text())) / 2, top + (high - line) / 2, number, m.text());
                const double y = top + 0.12 * m.em;
                put(page, x, y, name, m.strong());
                putRight(page, m.right(), y, figure, m.strong());
                put(page, oneLine ? x + used : x, oneLine ? y : y + line, ink, m.text());
            }};
}

/// The cloth: a bar of ink under the core.
Block clothBlock(const QString& cloth, const Measure& m) {
    const double core = 2.4 * m.em;
    const double high = lineHeight(m.strong());
    return {Worth::must, 0.15 * m.em, high, [=](PlacedPage& page, double top) {
                page.ink.push_back({m.left, top, core, 0.45 * m.em});
                const double x = m.left + core + 0.6 * m.em;
                put(page, x, top, fitted(cloth, m.right() - x, m.strong()), m.strong());
            }};
}

/// The uppermost `shown` layers; fewer than all: a line says how many are not shown.
void addLayers(std::vector<Block>& blocks, const Sheet& sheet, const ReportStyle& style, const Measure& m,
               std::size_t shown) {
    if (sheet.layers.empty() && sheet.cloth.isEmpty()) {
        return;
    }
    blocks.push_back(ruleBlock(m, kStrong, m.sectionGap()));
    blocks.push_back(linesBlock(wrapped(sheet.layersLabel, m.width, m.smallStrong(), 1), m, m.smallStrong(),
                                Worth::extra, 0.15 * m.em));
    blocks.push_back({Worth::must, 0.35 * m.em, 0, [](PlacedPage&, double) {}});
    for (std::size_t i = 0; i < shown; ++i) {
        blocks.push_back(layerBlock(sheet.layers[i], m));
    }
    if (shown < sheet.layers.size() && sheet.moreLayers != nullptr) {
        const auto more = sheet.moreLayers(static_cast<int>(sheet.layers.size() - shown), style.speech);
        blocks.push_back(linesBlock(wrapped(more, m.width, m.text(), 2), m, m.text(), Worth::must, 0.1 * m.em));
    }
    if (!sheet.cloth.isEmpty()) {
        blocks.push_back(clothBlock(sheet.cloth, m));
    }
}

void addWindow(std::vector<Block>& blocks, const SheetWindow& window, const Measure& m) {
    blocks.push_back(ruleBlock(m, kStrong, m.sectionGap()));
    blocks.push_back(
        linesBlock(wrapped(window.label, m.width, m.smallStrong(), 1), m, m.smallStrong(), Worth::useful, 0.15 * m.em));
    if (!window.figure.isEmpty()) {
        const Type type{sizeToFit(window.figure, m.width, m.figure(), m.em), true};
        blocks.push_back(linesBlock({fitted(window.figure, m.width, type)}, m, type, Worth::must));
    }
    bool first = true;
    for (const auto& sentence : window.sentences) {
        const bool must = first && window.sentenceIsMust;
        blocks.push_back(linesBlock(wrapped(sentence, m.width, m.text(), m.width < 50 ? 3 : 4), m, m.text(),
                                    must ? Worth::must : Worth::important));
        first = false;
    }
}

std::vector<Block> bodyBlocks(const Sheet& sheet, const ReportStyle& style, const Measure& m, const CodePiece& code,
                              std::size_t layersShown) {
    auto blocks = headBlocks(sheet, m, code);
    addTitle(blocks, sheet, m, style.paper.height < 120 && !sheet.layers.empty() ? 1 : 2);
    addFacts(blocks, sheet, m);
    addLayers(blocks, sheet, style, m, layersShown);
    if (sheet.window && !(sheet.window->figure.isEmpty() && sheet.window->sentences.isEmpty())) {
        addWindow(blocks, *sheet.window, m);
    }
    return blocks;
}

Block cautionBlock(const Sheet& sheet, const Measure& m) {
    auto lines = wrapped(sheet.caution, m.width, m.small(), 4);
    if (lines.size() > 3 && !sheet.shortCaution.isEmpty()) {
        lines = wrapped(sheet.shortCaution, m.width, m.small(), 3);
    }
    return linesBlock(lines, m, m.small(), Worth::must);
}

/// An empty frame for a strip and handwriting, if at least five lines are free.
void placeRoom(PlacedPage& page, const QString& label, const Measure& m, double top, double bottom) {
    top += 0.8 * m.em;
    const double high = std::min(bottom - top, 14 * m.em);
    if (label.isEmpty() || high < 6.5 * m.em) {
        return;
    }
    putFrame(page, {m.left, top, m.width, high}, kHair);
    put(page, m.left + 0.5 * m.em, top + 0.2 * m.em, fitted(label, m.width - m.em, m.small()), m.small());
}

} // namespace

tl::expected<PlacedPage, ReportFault> layOut(const Sheet& sheet, const ReportStyle& style) {
    const auto& paper = style.paper;
    const Measure m{paper.margin, paper.width - 2 * paper.margin, paper.text};
    const auto sized =
        sizedCode(style.code, sheet.code, m.width, std::max(18.2, 0.42 * m.width), std::max(9.0, 2.6 * m.em));
    if (!sized) {
        return tl::unexpected(ReportFault{ReportCause::paperTooSmall, {}, {}, "no room for " + sheet.code});
    }
    const CodePiece code{*sized, sheet.code, {1.15 * m.em, true}};
    const auto caution = cautionBlock(sheet, m);
    const double cautionTop = paper.height - paper.margin - caution.height;
    const double bottom = caution.height > 0 ? cautionTop - 0.4 * m.em : cautionTop;
    for (std::size_t shown = sheet.layers.size() + 1; shown-- > 0;) {
        auto blocks = bodyBlocks(sheet, style, m, code, shown);
        if (dropToFit(blocks, bottom - paper.margin)) {
            PlacedPage page{paper.width, paper.height, {}, {}, {}};
            const double end = placeAll(blocks, page, paper.margin);
            placeRoom(page, sheet.room, m, end, bottom);
            if (caution.height > 0) {
                page.ink.push_back({m.left, cautionTop - 0.25 * m.em, m.width, kHair});
                caution.place(page, cautionTop);
            }
            return page;
        }
    }
    return tl::unexpected(ReportFault{ReportCause::paperTooSmall, {}, {}, "no room for what must stand there"});
}

} // namespace holdfast::kiosk::reports
