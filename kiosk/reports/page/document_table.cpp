#include "kiosk/reports/codes/code_size.hpp"
#include "kiosk/reports/page/document_pieces.hpp"
#include "kiosk/reports/page/placed_page.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

constexpr double kRowPad = 0.8;        ///< over and under a row's text
constexpr double kBetween = 3.0;       ///< of two columns
constexpr double kRowCodeHeight = 7.5; ///< of a code in a row
constexpr double kTick = 5.0;          ///< side of a box to be ticked
constexpr double kMarkWidth = 6.0;
constexpr double kMarkHeight = 4.8;
constexpr double kIndent = 3.0;

struct Column final {
    double x = 0;
    double width = 0;
    bool right = false;
};

std::vector<Column> columnsOf(const DocTable& table, const DocMeasure& m) {
    double shares = 0;
    for (const auto& column : table.columns) {
        shares += column.share;
    }
    const auto gaps = kBetween * static_cast<double>(table.columns.size() - 1);
    std::vector<Column> out;
    double x = m.left;
    for (const auto& column : table.columns) {
        const double width = (m.width - gaps) * column.share / shares;
        out.push_back({x, width, column.right});
        x += width + kBetween;
    }
    return out;
}

/// A cell measured: what is drawn is what was measured.
struct Set final {
    QStringList lines;
    Type type;
    double indent = 0;
    double height = 0;
    std::optional<SizedCode> code;
};

constexpr double kLeast = 2.3; ///< em; no smaller to keep a word whole

/// Smaller where its longest word would else be broken.
Type typeFor(const QString& text, double width, Type type) {
    for (const auto& word : text.split(QChar::Space)) {
        if (word.size() < 24) { // longer ones are no words
            type.size = sizeToFit(word, width, type, std::min(kLeast, type.size));
        }
    }
    return type;
}

Set setCell(const DocCell& cell, const Column& column, int most, const DocMeasure& m) {
    Set set;
    set.type = {m.em, cell.bold};
    if (!cell.code.empty()) {
        set.code = sizedCode(m.code, cell.code, column.width, 18.0, kRowCodeHeight);
    }
    if (set.code) {
        set.height = set.code->height;
        return set;
    }
    const double aside = cell.mark ? kMarkWidth + 1.0 : cell.box ? kTick + 1.0 : 0.0;
    set.indent = std::min(aside + cell.indent * kIndent, column.width / 2);
    set.type = typeFor(cell.text, column.width - set.indent, set.type);
    set.lines = wrapped(cell.text, column.width - set.indent, set.type, cell.lines > 0 ? cell.lines : most);
    set.height = static_cast<double>(set.lines.size()) * lineHeight(set.type);
    set.height = std::max({set.height, cell.mark ? kMarkHeight : 0.0, cell.box ? kTick : 0.0});
    return set;
}

void placeCell(PlacedPage& page, const DocCell& cell, const Set& set, const Column& column, double top) {
    if (set.code) {
        page.codes.push_back({{column.x, top, set.code->width, set.code->height}, set.code->module, set.code->modules});
        return;
    }
    if (cell.mark) {
        putMark(page, *cell.mark, {column.x, top, kMarkWidth, kMarkHeight});
    }
    if (cell.box) {
        putFrame(page, {column.x, top, kTick, kTick}, 0.4);
    }
    for (const auto& line : set.lines) {
        if (column.right) {
            putRight(page, column.x + column.width, top, line, set.type);
        } else {
            put(page, column.x + set.indent, top, line, set.type);
        }
        top += lineHeight(set.type);
    }
}

DocPiece rowPiece(const std::vector<DocCell>& cells, const std::vector<Column>& columns, int lines, const DocMeasure& m,
                  double rule) {
    std::vector<Set> sets;
    double height = lineHeight({m.em, false});
    for (std::size_t i = 0; i < cells.size() && i < columns.size(); ++i) {
        sets.push_back(setCell(cells[i], columns[i], lines, m));
        height = std::max(height, sets.back().height);
    }
    DocPiece piece;
    piece.height = height + 2 * kRowPad + rule;
    piece.place = [=](PlacedPage& page, double top) {
        for (std::size_t i = 0; i < sets.size(); ++i) {
            placeCell(page, cells[i], sets[i], columns[i], top + kRowPad);
        }
        page.ink.push_back({m.left, top + height + 2 * kRowPad, m.width, rule});
    };
    return piece;
}

} // namespace

void addTable(std::vector<DocPiece>& pieces, const DocTable& table, const DocMeasure& m) {
    if (table.rows.empty() || table.columns.empty()) {
        addPieces(pieces, DocText{table.empty, Weight::text, 4}, m);
        return;
    }
    const auto columns = columnsOf(table, m);
    std::vector<DocCell> heads;
    for (const auto& column : table.columns) {
        heads.push_back({column.head, true});
    }
    DocMeasure small = m;
    small.em = m.type(Weight::small).size;
    auto head = rowPiece(heads, columns, 2, small, kStrong);
    head.keepWithNext = true;
    const auto again = std::make_shared<const DocPiece>(head);
    pieces.push_back(std::move(head));
    for (const auto& row : table.rows) {
        pieces.push_back(rowPiece(row, columns, table.lines, m, kHair));
        pieces.back().repeat = again;
    }
}

} // namespace holdfast::kiosk::reports
