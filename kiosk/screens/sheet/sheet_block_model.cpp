#include "kiosk/screens/sheet/sheet_block_model.hpp"

#include "kiosk/screens/parts/gadget_list.hpp"
#include "kiosk/screens/parts/grade_chart_layout.hpp"

#include <QFontMetricsF>

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

constexpr int kDeepest = 30; ///< bits of an int; a deeper tree is drawn without trunks below

/// From the last row upwards: a trunk goes on if a later row of its depth comes before a shallower one.
QList<int> trunksOf(const QList<SheetRow>& rows) {
    QList<int> trunks;
    int open = 0;
    for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
        const int depth = std::min(row->indent, kDeepest);
        const int upTo = depth > 0 ? (1 << depth) - 1 : 0;
        trunks.prepend(open & upTo);
        open = (open & (upTo >> 1)) | (depth > 0 ? 1 << (depth - 1) : 0);
    }
    return trunks;
}

} // namespace

SheetBlockModel::SheetBlockModel(const SheetBlock& block, QObject* parent)
    : QObject(parent), m_block{block}, m_trunks{trunksOf(block.rows)} {
    setLists(block);
}

void SheetBlockModel::setLists(const SheetBlock& block) {
    m_rows.set(block.rows);
    m_fields.set(block.fields);
    m_pictures.set(block.pictures);
    m_ticks.set(block.ticks);
    m_trail.set(block.trail);
}

void SheetBlockModel::setBlock(const SheetBlock& block) {
    if (block == m_block) {
        return;
    }
    const SheetBlock old = m_block;
    m_block = block;
    // Before the rows: a new row asks for its trunk.
    if (QList<int> trunks = trunksOf(block.rows); trunks != m_trunks) {
        m_trunks = std::move(trunks);
        emit trunksChanged();
    }
    setLists(block);
    if (old.text != block.text || old.note != block.note) {
        emit textChanged();
    }
    if (old.actions != block.actions) {
        emit actionsChanged();
    }
    if (old.chosenId != block.chosenId) {
        emit chosenChanged();
    }
    if (old.scale != block.scale) {
        emit scaleChanged();
    }
    if (old.chart != block.chart || old.pieces != block.pieces || old.underChart != block.underChart ||
        old.pictures != block.pictures) {
        emit chartChanged();
    }
    if (old.halves != block.halves) {
        emit halvesChanged();
    }
    if (old.cracks != block.cracks) {
        emit cracksChanged();
    }
    if (old.pulls != block.pulls || old.result != block.result || old.resultNote != block.resultNote) {
        emit pullsChanged();
    }
    if (old.trend != block.trend) {
        emit trendChanged();
    }
}

void SheetBlockModel::setRuled(bool ruled) {
    if (ruled != m_ruled) {
        m_ruled = ruled;
        emit ruledChanged();
    }
}

QVariantList SheetBlockModel::actions() const {
    return gadgetList(m_block.actions);
}

QVariantList SheetBlockModel::cracks() const {
    return gadgetList(m_block.cracks);
}

QVariantList SheetBlockModel::pulls() const {
    return gadgetList(m_block.pulls);
}

QList<double> SheetBlockModel::pictureLefts(double width, double unit, const QString& family, double each,
                                            double gap) const {
    if (!m_block.underChart || unit <= 0.0) {
        return {};
    }
    const CycleAxis axis = cycleAxis(m_block.chart, {.palette = lightPalette(), .unit = unit, .family = family}, width);
    QList<double> lefts;
    for (const PictureEntry& picture : m_block.pictures) {
        const double left = axis.x(picture.cycle) - each / 2.0;
        const bool fits = picture.cycle >= 0 && picture.cycle <= axis.last && left + each <= width + 1.0;
        if (!fits || (!lefts.isEmpty() && left < lefts.last() + each + gap)) {
            return {};
        }
        lefts.append(std::max(0.0, left));
    }
    return lefts;
}

double SheetBlockModel::pictureWordWidth(double unit, const QString& family) const {
    const ChartStyle style{.palette = lightPalette(), .unit = unit, .family = family};
    const QFontMetricsF metrics(style.font(true));
    double widest = 0.0;
    for (const PictureEntry& picture : m_block.pictures) {
        for (const QString& word : picture.word.split(u' ')) {
            widest = std::max(widest, metrics.horizontalAdvance(word));
        }
    }
    return std::min(widest, style.px(160.0));
}

double SheetBlockModel::pictureLabelWidth(double unit, const QString& family) const {
    const ChartStyle style{.palette = lightPalette(), .unit = unit, .family = family};
    const QFontMetricsF metrics(style.font(true));
    double widest = 0.0;
    for (const PictureEntry& picture : m_block.pictures) {
        widest = std::max(widest, metrics.horizontalAdvance(picture.label) + 2.0);
    }
    return std::min(widest, style.px(240.0));
}

} // namespace holdfast::kiosk::screens
