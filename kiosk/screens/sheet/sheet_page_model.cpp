#include "kiosk/screens/sheet/sheet_page_model.hpp"

#include "kiosk/screens/parts/gadget_list.hpp"

#include <QSet>

namespace holdfast::kiosk::screens {
namespace {

qsizetype chosenOf(const QList<SheetRow>& rows) {
    const auto found = std::find_if(rows.begin(), rows.end(), [](const SheetRow& row) { return row.chosen; });
    return found == rows.end() ? -1 : found - rows.begin();
}

QString chosenIdOf(const QList<SheetRow>& rows) {
    const qsizetype chosen = chosenOf(rows);
    return chosen < 0 ? QString{} : rows[chosen].id;
}

bool shareRows(const QList<SheetRow>& a, const QList<SheetRow>& b) {
    QSet<QString> ids;
    for (const SheetRow& row : a) {
        ids.insert(row.id);
    }
    return std::any_of(b.begin(), b.end(), [&](const SheetRow& row) { return ids.contains(row.id); });
}

bool sameFrame(const SheetPageState& a, const SheetPageState& b) {
    return a.heading == b.heading && a.listNone == b.listNone && a.title == b.title && a.detailOnly == b.detailOnly &&
           a.back == b.back;
}

bool isOfTests(SheetKinds::Block kind) {
    return kind >= SheetKinds::GradeChart;
}

/// Pictures under a chart share its axis.
QList<SheetBlock> withCharts(QList<SheetBlock> blocks) {
    for (qsizetype i = 1; i < blocks.size(); ++i) {
        if (blocks[i].kind == SheetKinds::Pictures && blocks[i - 1].kind == SheetKinds::GradeChart) {
            blocks[i].chart = blocks[i - 1].chart;
        } else {
            blocks[i].underChart = false;
        }
    }
    return blocks;
}

/// Blocks of tests are parted by thin rules, unless a section's rule or its chart stands above.
bool isRuled(const SheetBlock& before, const SheetBlock& block) {
    return isOfTests(block.kind) && before.kind != SheetKinds::Heading && !block.underChart;
}

} // namespace

SheetPageModel::SheetPageModel(QObject* parent) : QObject(parent) {}

void SheetPageModel::setState(const SheetPageState& state) {
    if (state == m_state) {
        return;
    }
    const SheetPageState old = m_state;
    m_state = state;
    if (!sameFrame(old, state)) {
        emit frameChanged();
    }
    m_list.set(state.list);
    setBlocks(m_blocks, withCharts(state.blocks));
    setBlocks(m_beside, withCharts(state.beside));
    if (old.listActions != state.listActions) {
        emit listActionsChanged();
    }
    if (old.actions != state.actions) {
        emit actionsChanged();
    }
    if (old.besideActions != state.besideActions || old.beside.isEmpty() != state.beside.isEmpty()) {
        emit besideChanged();
    }
    if (old.list != state.list || old.heading != state.heading || old.listActions != state.listActions) {
        emit listChanged();
    }
    const bool another = chosenIdOf(old.list) != chosenIdOf(state.list);
    if (old.list != state.list && !shareRows(old.list, state.list)) {
        emit listReplaced();
    } else if (another) {
        emit choiceReplaced();
    }
    if (another || old.title != state.title) {
        emit detailReplaced();
    }
}

void SheetPageModel::setBlocks(GadgetModel<SheetBlockModel*>& shown, const QList<SheetBlock>& blocks) {
    const QList<SheetBlockModel*> old = shown.items();
    const qsizetype both = std::min(old.size(), blocks.size());
    qsizetype head = 0;
    while (head < both && old[head]->kind() == blocks[head].kind) {
        ++head;
    }
    qsizetype tail = 0;
    while (tail < both - head && old[old.size() - 1 - tail]->kind() == blocks[blocks.size() - 1 - tail].kind) {
        ++tail;
    }
    QList<SheetBlockModel*> now;
    for (qsizetype i = 0; i < blocks.size(); ++i) {
        const qsizetype fromEnd = blocks.size() - 1 - i;
        SheetBlockModel* kept = i < head ? old[i] : fromEnd < tail ? old[old.size() - 1 - fromEnd] : nullptr;
        if (kept != nullptr) {
            kept->setBlock(blocks[i]);
        }
        now.append(kept != nullptr ? kept : new SheetBlockModel(blocks[i], this));
        now.last()->setRuled(i > 0 && isRuled(blocks[i - 1], blocks[i]));
    }
    shown.set(now);
    for (SheetBlockModel* block : old) {
        if (!now.contains(block)) {
            block->deleteLater();
        }
    }
}

bool SheetPageModel::hasList() const {
    return !m_state.heading.isEmpty() || !m_state.list.isEmpty() || !m_state.listActions.isEmpty();
}

int SheetPageModel::chosenIndex() const {
    return static_cast<int>(chosenOf(m_state.list));
}

QVariantList SheetPageModel::listActions() const {
    return gadgetList(m_state.listActions);
}

QVariantList SheetPageModel::actions() const {
    return gadgetList(m_state.actions);
}

QVariantList SheetPageModel::besideActions() const {
    return gadgetList(m_state.besideActions);
}

} // namespace holdfast::kiosk::screens
