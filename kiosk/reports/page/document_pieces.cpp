#include "kiosk/reports/page/document_pieces.hpp"

#include "kiosk/reports/page/placed_page.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

constexpr double kPictureHeight = 34.0;
constexpr double kPictureGap = 4.0;

void addText(std::vector<DocPiece>& pieces, const DocText& text, const DocMeasure& m) {
    const auto type = m.type(text.weight);
    const auto lines = wrapped(text.text, m.width, type, text.lines);
    for (qsizetype i = 0; i < lines.size(); ++i) {
        const bool last = i + 1 == lines.size();
        pieces.push_back({i == 0 ? 0.3 * m.em : 0.0, lineHeight(type),
                          !last || text.keepWithNext || text.weight == Weight::lead,
                          [=](PlacedPage& page, double top) { put(page, m.left, top, lines[i], type); }});
    }
}

void addHeading(std::vector<DocPiece>& pieces, const DocHeading& heading, const DocMeasure& m) {
    const auto type = m.type(Weight::lead);
    const auto line = fitted(heading.text, m.width, type);
    const double high = 0.3 * m.em + lineHeight(type);
    pieces.push_back({1.6 * m.em, kStrong + high, true, [=](PlacedPage& page, double top) {
                          page.ink.push_back({m.left, top, m.width, kStrong});
                          put(page, m.left, top + kStrong + 0.3 * m.em, line, type);
                      }});
}

void addFacts(std::vector<DocPiece>& pieces, const DocFacts& facts, const DocMeasure& m) {
    const double label = 0.26 * m.width;
    const auto plain = m.type(Weight::text);
    const auto strong = m.type(Weight::strong);
    for (const auto& fact : facts.facts) {
        const auto lines = wrapped(fact.value, m.width - label, strong, 4);
        if (lines.isEmpty()) {
            continue;
        }
        const auto name = fitted(fact.label, label - 2.0, plain);
        pieces.push_back({0.2 * m.em, static_cast<double>(lines.size()) * lineHeight(strong), false,
                          [=](PlacedPage& page, double top) {
                              put(page, m.left, top, name, plain);
                              for (const auto& line : lines) {
                                  put(page, m.left + label, top, line, strong);
                                  top += lineHeight(strong);
                              }
                          }});
    }
}

Box fittedBox(const QImage& image, const Box& room) {
    const double scale = std::min(room.width / image.width(), room.height / image.height());
    return {room.x, room.y, image.width() * scale, image.height() * scale};
}

void placePicture(PlacedPage& page, const DocPicture& picture, const QStringList& caption, const Type& type,
                  const Box& room) {
    if (picture.image.isNull()) {
        putFrame(page, room, kHair);
    } else {
        page.pictures.push_back({fittedBox(picture.image, room), picture.image});
    }
    double top = room.bottom() + 0.5;
    for (const auto& line : caption) {
        put(page, room.x, top, line, type);
        top += lineHeight(type);
    }
}

/// In even rows: two halves of one print stand side by side.
void addPictures(std::vector<DocPiece>& pieces, const DocPictures& all, const DocMeasure& m) {
    const auto columns = std::size_t{m.width < 150.0 ? 2U : 4U};
    const double width = (m.width - kPictureGap * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    const auto type = m.type(Weight::small);
    for (std::size_t from = 0; from < all.pictures.size(); from += columns) {
        const auto to = std::min(from + columns, all.pictures.size());
        const std::vector<DocPicture> row(all.pictures.begin() + static_cast<std::ptrdiff_t>(from),
                                          all.pictures.begin() + static_cast<std::ptrdiff_t>(to));
        pieces.push_back(
            {0.8 * m.em, kPictureHeight + 0.5 + 3 * lineHeight(type), false, [=](PlacedPage& page, double top) {
                 double x = m.left;
                 for (const auto& picture : row) {
                     placePicture(page, picture, wrapped(picture.caption, width, type, 3), type,
                                  {x, top, width, kPictureHeight});
                     x += width + kPictureGap;
                 }
             }});
    }
}

void addBlanks(std::vector<DocPiece>& pieces, const DocBlanks& blanks, const DocMeasure& m) {
    const auto type = m.type(Weight::text);
    for (const auto& label : blanks.labels) {
        const auto line = fitted(label, 0.3 * m.width, type);
        const double from = m.left + advance(line, type) + 2.0;
        pieces.push_back({1.2 * m.em, 2.4 * m.em, false, [=](PlacedPage& page, double top) {
                              const double base = top + 2.4 * m.em - kHair;
                              put(page, m.left, base - lineHeight(type), line, type);
                              page.ink.push_back({from, base, m.right() - from, kHair});
                          }});
    }
}

} // namespace

Type DocMeasure::type(Weight weight) const {
    switch (weight) {
    case Weight::small:
        return {std::max(2.5, 0.86 * em), false};
    case Weight::strong:
        return {em, true};
    case Weight::lead:
        return {1.35 * em, true};
    case Weight::largest:
        return {2.4 * em, true};
    case Weight::text:
        break;
    }
    return {em, false};
}

void addPieces(std::vector<DocPiece>& pieces, const DocPart& part, const DocMeasure& measure) {
    if (const auto* text = std::get_if<DocText>(&part)) {
        addText(pieces, *text, measure);
    } else if (const auto* heading = std::get_if<DocHeading>(&part)) {
        addHeading(pieces, *heading, measure);
    } else if (const auto* facts = std::get_if<DocFacts>(&part)) {
        addFacts(pieces, *facts, measure);
    } else if (const auto* table = std::get_if<DocTable>(&part)) {
        addTable(pieces, *table, measure);
    } else if (const auto* pictures = std::get_if<DocPictures>(&part)) {
        addPictures(pieces, *pictures, measure);
    } else if (const auto* blanks = std::get_if<DocBlanks>(&part)) {
        addBlanks(pieces, *blanks, measure);
    } else if (const auto* drawing = std::get_if<DocDrawing>(&part)) {
        pieces.push_back({0.6 * measure.em, drawing->height, true,
                          [draw = drawing->draw,
                           box = Box{measure.left, 0, measure.width, drawing->height}](PlacedPage& page, double top) {
                              draw(page, {box.x, top, box.width, box.height});
                          }});
    }
}

} // namespace holdfast::kiosk::reports
