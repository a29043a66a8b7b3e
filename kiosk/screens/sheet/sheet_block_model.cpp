#include "kiosk/screens/sheet/sheet_block_model.hpp"

#include "kiosk/screens/parts/gadget_list.hpp"

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
    m_rows.set(block.rows);
    m_fields.set(block.fields);
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
    m_rows.set(block.rows);
    m_fields.set(block.fields);
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
}

QVariantList SheetBlockModel::actions() const {
    return gadgetList(m_block.actions);
}

} // namespace holdfast::kiosk::screens
