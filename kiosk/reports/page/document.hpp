#pragma once

#include "kiosk/reports/page/film_mark.hpp"
#include "kiosk/reports/report.hpp"

#include <QImage>
#include <QString>
#include <QStringList>
#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// Lists and records of many pages. All texts are finished. Made for A4 and letter; smaller papers down to A6 break
/// earlier.
namespace holdfast::kiosk::reports {

enum class Weight { small, text, strong, lead, largest };

/// Its lines stay on one page; they may stay with what follows.
struct DocText final {
    QString text; ///< empty: left out
    Weight weight = Weight::text;
    int lines = 6;             ///< at most
    bool keepWithNext = false; ///< so does lead type
};

/// Never stands alone at a page's foot.
struct DocHeading final {
    QString text;
};

struct DocFact final {
    QString label;
    QString value; ///< empty: left out
};
struct DocFacts final {
    std::vector<DocFact> facts;
};

struct DocColumn final {
    QString head;
    double share = 1; ///< of the width, among all shares
    bool right = false;
};
struct DocCell final {
    QString text{};
    bool bold = false;
    int indent = 0; ///< steps
    std::optional<FilmMark> mark{};
    std::string code{}; ///< drawn in place of the text
    bool box = false;   ///< an empty square to be ticked
    int lines = 0;      ///< at most; 0: as many as the table allows
};
struct DocTable final {
    std::vector<DocColumn> columns;
    std::vector<std::vector<DocCell>> rows;
    QString empty; ///< said when there is no row
    int lines = 4; ///< of a cell, at most
};

struct DocPicture final {
    QImage image; ///< null: the caption alone
    QString caption;
};
struct DocPictures final {
    std::vector<DocPicture> pictures;
};

/// Stays with what follows.
struct DocDrawing final {
    double height = 0; ///< mm
    std::function<void(PlacedPage&, const Box&)> draw;
};

/// Dotted rules to be filled in by hand.
struct DocBlanks final {
    QStringList labels;
};

using DocPart = std::variant<DocText, DocHeading, DocFacts, DocTable, DocPictures, DocDrawing, DocBlanks>;

struct Document final {
    QString kind;       ///< over each page: "Quarantine list"
    QString subject;    ///< beside it: "Run 20418"; may be empty
    QString mark;       ///< on ink: "DEMO"; may be empty
    QStringList titles; ///< in the largest type at the beginning
    QStringList lines;  ///< under them
    std::string code{}; ///< beside the titles; may be empty
    QString caution;    ///< under each page
    QString from;       ///< under each page: who printed it when
    QString (*pageOf)(int page, int pages, const wording::Speech& speech) = nullptr;
    std::vector<DocPart> parts{};
};

/// A table that goes on repeats its head. paperTooSmall if not even one row fits under it.
[[nodiscard]] tl::expected<std::vector<PlacedPage>, ReportFault> layOut(const Document& document,
                                                                        const ReportStyle& style);

} // namespace holdfast::kiosk::reports
