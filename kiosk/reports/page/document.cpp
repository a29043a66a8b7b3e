#include "kiosk/reports/page/document.hpp"

#include "kiosk/reports/codes/code_size.hpp"
#include "kiosk/reports/page/document_pieces.hpp"
#include "kiosk/reports/page/placed_page.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

/// Records are read at a desk: smaller type than what hangs at a dryer, never under 7 pt.
double documentEm(const Paper& paper) {
    return std::clamp(0.6 * paper.text, 2.6, 3.2);
}

/// Titles in the largest type with what stands under them, the code beside both.
DocPiece titlePiece(const Document& document, const DocMeasure& m) {
    const auto code = document.code.empty() ? std::optional<SizedCode>{}
                                            : sizedCode(m.code, document.code, 0.42 * m.width, 22.0, 10.0);
    const Type codeType{1.1 * m.em, true};
    const double width = code ? m.width - code->width - 4.0 : m.width;
    struct Line final {
        QString text;
        Type type;
    };
    std::vector<Line> lines;
    const auto largest = m.type(Weight::largest);
    for (const auto& title : document.titles) {
        const Type type{sizeToFit(title, width, largest, 1.5 * m.em), true};
        for (const auto& line : wrapped(title, width, type, 2)) {
            lines.push_back({line, type});
        }
    }
    for (const auto& text : document.lines) {
        for (const auto& line : wrapped(text, width, m.type(Weight::text), 3)) {
            lines.push_back({line, m.type(Weight::text)});
        }
    }
    double height = 0;
    for (const auto& line : lines) {
        height += lineHeight(line.type);
    }
    DocPiece piece;
    piece.height = std::max(height, code ? code->height + lineHeight(codeType) + 0.5 : 0.0);
    piece.place = [=, text = QString::fromStdString(document.code)](PlacedPage& page, double top) {
        if (code) {
            const double x = m.right() - code->width;
            page.codes.push_back({{x, top, code->width, code->height}, code->module, code->modules});
            put(page, x + (code->width - advance(text, codeType)) / 2, top + code->height + 0.5, text, codeType);
        }
        for (const auto& line : lines) {
            put(page, m.left, top, line.text, line.type);
            top += lineHeight(line.type);
        }
    };
    return piece;
}

class Pages final {
public:
    Pages(const Document& document, const ReportStyle& style, const DocMeasure& measure)
        : m_document(document), m_style(style), m_m(measure),
          m_caution(wrapped(document.caution, measure.width, measure.type(Weight::small), 5)) {}

    [[nodiscard]] double top() const {
        return m_style.paper.margin + lineHeight(m_m.type(Weight::strong)) + kStrong + 1.2 * m_m.em;
    }
    [[nodiscard]] double bottom() const { return footTop() - 0.6 * m_m.em; }

    void begin() {
        const auto& paper = m_style.paper;
        m_pages.push_back({paper.width, paper.height, {}, {}, {}});
        auto& page = m_pages.back();
        const auto type = m_m.type(Weight::strong);
        double wide = m_m.width;
        if (!m_document.mark.isEmpty()) {
            const double mark = advance(m_document.mark, type) + m_m.em;
            page.ink.push_back({m_m.right() - mark, paper.margin, mark, lineHeight(type)});
            put(page, m_m.right() - mark + 0.5 * m_m.em, paper.margin, m_document.mark, type, true);
            wide -= mark + m_m.em;
        }
        const auto head = m_document.subject.isEmpty() ? m_document.kind
                                                       : m_document.kind + QStringLiteral(" · ") + m_document.subject;
        put(page, m_m.left, paper.margin, fitted(head, wide, type), type);
        page.ink.push_back({m_m.left, paper.margin + lineHeight(type) + 0.3 * m_m.em, m_m.width, kHair});
        m_next = top();
    }

    /// Pieces that stay together; false if they are higher than a page.
    [[nodiscard]] bool add(const std::vector<const DocPiece*>& group) {
        if (m_next + heightOf(group, m_next > top()) > bottom()) {
            begin();
            const auto& repeat = group.front()->repeat;
            if (repeat) {
                place(*repeat);
            }
            if (m_next + heightOf(group, false) > bottom()) {
                return false;
            }
        }
        for (const auto* piece : group) {
            place(*piece);
        }
        return true;
    }

    std::vector<PlacedPage> finish() {
        const auto type = m_m.type(Weight::small);
        int number = 0;
        for (auto& page : m_pages) {
            double y = footTop();
            page.ink.push_back({m_m.left, y, m_m.width, kHair});
            y += 0.3 * m_m.em;
            for (const auto& line : m_caution) {
                put(page, m_m.left, y, line, type);
                y += lineHeight(type);
            }
            const auto count = m_document.pageOf != nullptr
                                   ? m_document.pageOf(++number, static_cast<int>(m_pages.size()), m_style.speech)
                                   : QString();
            putRight(page, m_m.right(), y, count, type);
            const double room = m_m.width - advance(count, type) - 4.0;
            put(page, m_m.left, y, fitted(m_document.from, room, type), type);
        }
        return std::move(m_pages);
    }

private:
    [[nodiscard]] double footTop() const {
        const auto lines = static_cast<double>(m_caution.size()) + 1;
        return m_style.paper.height - m_style.paper.margin - lines * lineHeight(m_m.type(Weight::small)) -
               0.3 * m_m.em - 0.01;
    }
    static double heightOf(const std::vector<const DocPiece*>& group, bool firstGap) {
        double height = 0;
        for (const auto* piece : group) {
            height += piece->height + (firstGap || piece != group.front() ? piece->gap : 0.0);
        }
        return height;
    }
    void place(const DocPiece& piece) {
        m_next += m_next > top() ? piece.gap : 0.0;
        piece.place(m_pages.back(), m_next);
        m_next += piece.height;
    }

    const Document& m_document;
    const ReportStyle& m_style;
    const DocMeasure& m_m;
    QStringList m_caution;
    std::vector<PlacedPage> m_pages{};
    double m_next = 0;
};

} // namespace

tl::expected<std::vector<PlacedPage>, ReportFault> layOut(const Document& document, const ReportStyle& style) {
    const auto& paper = style.paper;
    const DocMeasure measure{paper.margin, paper.width - 2 * paper.margin, documentEm(paper), style.code};
    std::vector<DocPiece> pieces;
    if (!document.titles.isEmpty() || !document.lines.isEmpty() || !document.code.empty()) {
        pieces.push_back(titlePiece(document, measure));
    }
    for (const auto& part : document.parts) {
        addPieces(pieces, part, measure);
    }
    Pages pages(document, style, measure);
    pages.begin();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        std::vector<const DocPiece*> group{&pieces[i]};
        while (pieces[i].keepWithNext && i + 1 < pieces.size()) {
            group.push_back(&pieces[++i]);
        }
        if (!pages.add(group)) {
            return tl::unexpected(ReportFault{ReportCause::paperTooSmall, {}, {}, "a row is higher than a page"});
        }
    }
    return pages.finish();
}

} // namespace holdfast::kiosk::reports
