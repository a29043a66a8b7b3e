#pragma once

#include "kiosk/reports/report.hpp"

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

/// One thing a page: its code, its number large, what is known of it, and the window. Tickets, window cards and labels
/// are sheets. All texts are finished.
namespace holdfast::kiosk::reports {

/// What goes first when a small paper cannot hold everything: the least.
enum class Worth { extra, useful, important, must };

struct SheetFact final {
    QString label;
    QString value; ///< empty: the fact is left out
    Worth worth = Worth::useful;
    int lines = 2; ///< at most
};

struct SheetLayer final {
    int position = 1;
    QString name;   ///< colour
    QString ink;    ///< family or mix
    QString figure; ///< cure temperature, hold
};

struct SheetWindow final {
    QString label;
    QString figure;        ///< "285–300 °F", "No window"
    QStringList sentences; ///< most important first
    bool sentenceIsMust = false;
};

struct Sheet final {
    QString kind; ///< "Run ticket"
    std::string code;
    QString number;    ///< large
    QStringList marks; ///< on ink: "Children's wear"
    QString title;
    QStringList underTitle;
    std::vector<SheetFact> facts;
    QString layersLabel;
    std::vector<SheetLayer> layers; ///< top first
    QString cloth;                  ///< under the layers
    /// Said in place of layers that did not fit, with their count.
    QString (*moreLayers)(int count, const wording::Speech& speech) = nullptr;
    std::optional<SheetWindow> window;
    QString room; ///< names the empty frame that is drawn if there is room for it
    QString caution;
    QString shortCaution; ///< where the other would take more than three lines
};

[[nodiscard]] tl::expected<PlacedPage, ReportFault> layOut(const Sheet& sheet, const ReportStyle& style);

} // namespace holdfast::kiosk::reports
