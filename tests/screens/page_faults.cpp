#include "tests/screens/page_faults.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

namespace holdfast::tests {

using kiosk::screens::gallery;
using kiosk::screens::GalleryState;

std::string describe(const QQuickItem& item) {
    const QRectF box = onScreen(item);
    const QString name = item.property("spoken").toString() + item.property("text").toString();
    return QStringLiteral("\"%1\" at %2,%3 size %4x%5")
        .arg(name)
        .arg(box.x())
        .arg(box.y())
        .arg(box.width())
        .arg(box.height())
        .toStdString();
}

bool isText(const QQuickItem& item) {
    return item.inherits("QQuickText") && !item.property("text").toString().isEmpty();
}

QRectF inkOf(const QQuickItem& text) {
    const double width = text.property("contentWidth").toDouble();
    const double height = text.property("contentHeight").toDouble();
    const int align = text.property("horizontalAlignment").toInt();
    const double x = align == Qt::AlignHCenter ? (text.width() - width) / 2.0
                     : align == Qt::AlignRight ? text.width() - width
                                               : 0.0;
    const double air = text.property("lineHeight").toDouble() * 0.2;
    return {x, air, width, std::max(1.0, height - 2.0 * air)};
}

namespace {

const QQuickItem* clippedBy(const QQuickItem& text, const QRectF& ink) {
    for (const QQuickItem* parent = text.parentItem(); parent != nullptr; parent = parent->parentItem()) {
        if (parent->clip() && !onScreen(*parent).adjusted(-1, -1, 1, 1).contains(ink)) {
            return parent;
        }
    }
    return nullptr;
}

} // namespace

QStringList textFaults(KioskView& view, bool scrolls) {
    QStringList faults;
    const QRectF page(QPointF(0, 0), QSizeF(view.window().size()));
    QList<QPair<const QQuickItem*, QRectF>> inks;
    for (const QQuickItem* item : view.visibleItems()) {
        if (!isText(*item)) {
            continue;
        }
        const QRectF ink = item->mapRectToScene(inkOf(*item));
        const QString who = QString::fromStdString(describe(*item));
        if (item->property("truncated").toBool()) {
            faults.append(QStringLiteral("cut short: ") + who);
        }
        if (item->property("contentWidth").toDouble() > item->width() + 1.0) {
            faults.append(QStringLiteral("wider than its box: ") + who);
        }
        if (clippedBy(*item, ink) != nullptr) {
            if (!scrolls) {
                faults.append(QStringLiteral("clipped: ") + who);
            }
            continue;
        }
        if (!page.contains(ink)) {
            faults.append(QStringLiteral("off the page: ") + who);
        }
        for (const auto& [other, otherInk] : inks) {
            if (otherInk.intersects(ink)) {
                faults.append(QStringLiteral("overlaps: ") + who + QStringLiteral(" and ") +
                              QString::fromStdString(describe(*other)));
            }
        }
        inks.append({item, ink});
    }
    return faults;
}

QStringList touchFaults(const KioskView& view) {
    QStringList faults;
    const double least = 15.0 * view.pxPerMm() - 0.5; // screens.md: at least 15 mm, 3 mm apart
    const double apart = 3.0 * view.pxPerMm() - 0.5;
    QList<QPair<QQuickItem*, QRectF>> seen;
    for (QQuickItem* target : view.touchTargets()) {
        const QRectF whole = onScreen(*target);
        const QRectF box = inSight(*target);
        if (box.isEmpty()) {
            continue;
        }
        if (whole.width() < least || whole.height() < least) {
            faults.append(QStringLiteral("too small: ") + QString::fromStdString(describe(*target)));
        }
        for (const auto& [other, near] : seen) {
            const double dx = std::max({0.0, near.left() - box.right(), box.left() - near.right()});
            const double dy = std::max({0.0, near.top() - box.bottom(), box.top() - near.bottom()});
            if (std::max(dx, dy) < apart) {
                faults.append(QStringLiteral("too close: ") + QString::fromStdString(describe(*target)) +
                              QStringLiteral(" and ") + QString::fromStdString(describe(*other)));
            }
        }
        seen.append({target, box});
    }
    return faults;
}

GalleryState stateNamed(const QString& name) {
    const std::vector<GalleryState> states = gallery();
    const auto found =
        std::find_if(states.begin(), states.end(), [&](const GalleryState& state) { return state.name == name; });
    REQUIRE(found != states.end());
    return *found;
}

bool scrolls(const GalleryState& state) {
    return state.name == QStringLiteral("run-closed-many-layers") || state.name.startsWith(QStringLiteral("sheet"));
}

void requireNone(const QStringList& faults) {
    INFO(faults.join(u'\n').toStdString());
    REQUIRE(faults.isEmpty());
}

} // namespace holdfast::tests
