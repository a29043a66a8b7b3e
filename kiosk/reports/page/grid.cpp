#include "kiosk/reports/page/grid.hpp"

#include "kiosk/reports/codes/code_size.hpp"
#include "kiosk/reports/page/placed_page.hpp"
#include "kiosk/reports/page/typesetting.hpp"

#include <algorithm>

namespace holdfast::kiosk::reports {

namespace {

constexpr double kCardPad = 2.0;
constexpr double kLeastCell = 44.0;
constexpr double kCardCodeHeight = 9.0;
constexpr double kSquareWidth = 22.0;

struct Frame final {
    double left;
    double width;
    double top;
    double bottom;
    double em;
    int columns;
    double cell;
    double row;

    [[nodiscard]] Type word() const { return {1.05 * em, true}; }
    [[nodiscard]] Type small() const { return {0.8 * em, false}; }
    [[nodiscard]] Type heading() const { return {1.25 * em, true}; }
    [[nodiscard]] double headingHeight() const { return 2.3 * em; }
};

/// Cards are held in a hand: their type is the same on every paper that carries several.
double gridEm(const Paper& paper) {
    return std::min(paper.text, 4.0);
}

std::optional<SizedCode> codeOf(const GridCard& card, const ReportStyle& style, double cell) {
    return sizedCode(style.code, card.code, cell - 2 * kCardPad, kSquareWidth, kCardCodeHeight);
}

/// The tallest card's height sets the row.
tl::expected<Frame, ReportFault> frameOf(const Grid& grid, const ReportStyle& style) {
    const auto& paper = style.paper;
    const double em = gridEm(paper);
    Frame f{paper.margin, paper.width - 2 * paper.margin, paper.margin, paper.height - paper.margin, em, 1, 0, 0};
    f.columns = std::clamp(static_cast<int>(f.width / 57.0), 1, 4);
    f.cell = f.width / f.columns;
    double code = 0;
    for (const auto& group : grid.groups) {
        for (const auto& card : group.cards) {
            const auto sized = codeOf(card, style, f.cell);
            if (f.cell < kLeastCell || !sized) {
                return tl::unexpected(ReportFault{ReportCause::paperTooSmall, {}, {}, "no room for " + card.code});
            }
            code = std::max(code, sized->height);
        }
    }
    f.row = 2 * kCardPad + 2 * lineHeight(f.word()) + lineHeight(f.small()) + code + lineHeight(f.small()) + 1.0;
    return f;
}

void placeCard(PlacedPage& page, const GridCard& card, const ReportStyle& style, const Frame& f, double x, double y) {
    putFrame(page, {x, y, f.cell, f.row}, kHair);
    const double inner = f.cell - 2 * kCardPad;
    double top = y + kCardPad;
    for (const auto& line : wrapped(card.word, inner, f.word(), 2)) {
        put(page, x + kCardPad, top, line, f.word());
        top += lineHeight(f.word());
    }
    if (!card.detail.isEmpty()) {
        put(page, x + kCardPad, top, fitted(card.detail, inner, f.small()), f.small());
    }
    const auto code = codeOf(card, style, f.cell);
    const double codeText = y + f.row - kCardPad - lineHeight(f.small());
    const double codeLeft = x + (f.cell - code->width) / 2;
    page.codes.push_back({{codeLeft, codeText - code->height, code->width, code->height}, code->module, code->modules});
    const auto text = QString::fromStdString(card.code);
    const Type strong{f.small().size, true};
    put(page, x + (f.cell - advance(text, strong)) / 2, codeText, text, strong);
}

/// Fills pages from the top; a new page repeats the heading of a group that goes on.
class GridPages final {
public:
    GridPages(const Grid& grid, const ReportStyle& style, const Frame& frame)
        : m_grid(grid), m_style(style), m_frame(frame),
          m_caution(wrapped(grid.caution, frame.width, frame.small(), 3)) {}

    void addGroup(const GridGroup& group) {
        for (std::size_t i = 0; i < group.cards.size(); ++i) {
            const auto column = static_cast<int>(i) % m_frame.columns;
            if (column == 0) {
                beginRow(group, i == 0);
            }
            placeCard(m_pages.back(), group.cards[i], m_style, m_frame, m_frame.left + column * m_frame.cell, m_row);
        }
    }
    [[nodiscard]] bool fits() const {
        return pageTop() + (m_headed ? m_frame.headingHeight() : 0) + m_frame.row <= pageBottom();
    }
    void setHeaded(bool headed) { m_headed = headed; }
    std::vector<PlacedPage> take() { return std::move(m_pages); }

private:
    [[nodiscard]] double pageTop() const { return m_frame.top + lineHeight({m_frame.em, true}) + 0.5 * m_frame.em; }
    [[nodiscard]] double pageBottom() const {
        const auto lines = static_cast<double>(m_caution.size());
        return m_frame.bottom - lines * lineHeight(m_frame.small()) - (lines > 0 ? 0.5 * m_frame.em : 0);
    }

    void beginRow(const GridGroup& group, bool first) {
        double y = m_pages.empty() ? pageBottom() : m_next;
        const double heading = group.heading.isEmpty() ? 0 : m_frame.headingHeight();
        const bool newPage = m_pages.empty() || y + (first ? heading : 0) + m_frame.row > pageBottom();
        if (newPage) {
            beginPage();
            y = pageTop();
        }
        if ((first || newPage) && heading > 0) {
            const double top = y + heading - lineHeight(m_frame.heading()) - 0.2 * m_frame.em;
            put(m_pages.back(), m_frame.left, top, fitted(group.heading, m_frame.width, m_frame.heading()),
                m_frame.heading());
            y += heading;
        }
        m_row = y;
        m_next = y + m_frame.row;
    }

    void beginPage() {
        m_pages.push_back({m_style.paper.width, m_style.paper.height, {}, {}, {}});
        auto& page = m_pages.back();
        const Type type{m_frame.em, true};
        double wide = m_frame.width;
        if (!m_grid.mark.isEmpty()) {
            const double mark = advance(m_grid.mark, type) + m_frame.em;
            page.ink.push_back({m_frame.left + wide - mark, m_frame.top, mark, lineHeight(type)});
            put(page, m_frame.left + wide - mark + 0.5 * m_frame.em, m_frame.top, m_grid.mark, type, true);
            wide -= mark + m_frame.em;
        }
        put(page, m_frame.left, m_frame.top, fitted(m_grid.kind, wide, type), type);
        double y = m_frame.bottom - static_cast<double>(m_caution.size()) * lineHeight(m_frame.small());
        for (const auto& line : m_caution) {
            put(page, m_frame.left, y, line, m_frame.small());
            y += lineHeight(m_frame.small());
        }
    }

    const Grid& m_grid;
    const ReportStyle& m_style;
    const Frame& m_frame;
    QStringList m_caution;
    bool m_headed = false;
    std::vector<PlacedPage> m_pages{};
    double m_row = 0;
    double m_next = 0;
};

} // namespace

tl::expected<std::vector<PlacedPage>, ReportFault> layOut(const Grid& grid, const ReportStyle& style) {
    const bool any =
        std::any_of(grid.groups.begin(), grid.groups.end(), [](const auto& g) { return !g.cards.empty(); });
    if (!any) {
        return tl::unexpected(ReportFault{ReportCause::nothingToPrint, {}, {}, "no cards"});
    }
    const auto frame = frameOf(grid, style);
    if (!frame) {
        return tl::unexpected(frame.error());
    }
    GridPages pages(grid, style, *frame);
    pages.setHeaded(
        std::any_of(grid.groups.begin(), grid.groups.end(), [](const auto& g) { return !g.heading.isEmpty(); }));
    if (!pages.fits()) {
        return tl::unexpected(ReportFault{ReportCause::paperTooSmall, {}, {}, "not one card fits"});
    }
    for (const auto& group : grid.groups) {
        pages.addGroup(group);
    }
    return pages.take();
}

} // namespace holdfast::kiosk::reports
