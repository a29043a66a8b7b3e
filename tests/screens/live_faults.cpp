#include "tests/screens/live_faults.hpp"

#include "kiosk/screens/tour/tour_shop.hpp"
#include "tests/screens/page_faults.hpp"

#include <QAccessible>
#include <QFontMetricsF>
#include <QHash>
#include <QPointer>
#include <QRegularExpression>
#include <QtTest/QTest>

#include <algorithm>
#include <cmath>

namespace holdfast::tests {
namespace {

QString who(const QQuickItem& item) {
    return QString::fromStdString(describe(item));
}

/// The scrolling part that an item stands in, or none: then it is measured on the page.
QQuickItem* scrolledBy(const QQuickItem& item) {
    for (QQuickItem* parent = item.parentItem(); parent != nullptr; parent = parent->parentItem()) {
        if (parent->inherits("QQuickFlickable") && parent->clip()) {
            return parent;
        }
    }
    return nullptr;
}

/// A rectangle of an item where it lies: on its scrolling part's whole, or on the page.
struct Place final {
    QQuickItem* scroller = nullptr;
    QRectF box;
};

Place placeOf(const QQuickItem& item, const QRectF& own) {
    auto* scroller = scrolledBy(item);
    if (scroller == nullptr) {
        return {nullptr, item.mapRectToScene(own)};
    }
    auto* content = scroller->property("contentItem").value<QQuickItem*>();
    return {scroller, item.mapRectToItem(content, own)};
}

QRectF roomOf(const KioskView& view, const QQuickItem* scroller) {
    if (scroller == nullptr) {
        return {QPointF{0, 0}, QSizeF{view.size()}};
    }
    // A list of rows begins anywhere.
    const double top = scroller->property("originY").toDouble();
    const double high = std::max(scroller->height(), scroller->property("contentHeight").toDouble());
    return {0, top, std::max(scroller->width(), scroller->property("contentWidth").toDouble()), high};
}

/// What lies over the page while it is locked: it hides what is under it.
bool liesOver(const QQuickItem& item) {
    for (const QQuickItem* parent = item.parentItem(); parent != nullptr; parent = parent->parentItem()) {
        if (parent->inherits("QQuickMouseArea") && parent->size() == item.window()->size()) {
            return true;
        }
    }
    return false;
}

/// The first word that is wider than the text's box and so was broken somewhere; a path may be.
QString brokenWord(const QQuickItem& text) {
    if (text.property("lineCount").toInt() < 2) {
        return {};
    }
    const QFontMetricsF metrics{text.property("font").value<QFont>()};
    for (const auto& word : text.property("text").toString().split(QRegularExpression{QStringLiteral("[ \\n-]")})) {
        if (metrics.horizontalAdvance(word) > text.width() + 1.0 && !word.contains(u'/')) {
            return word;
        }
    }
    return {};
}

/// What the shop itself typed may be of any length, and is cut where it is repeated.
bool repeatsTyped(const QString& words) {
    static const auto typed = kiosk::screens::tourTitles();
    return std::any_of(typed.begin(), typed.end(), [&](const auto& title) { return words.contains(title); });
}

void addOwnFaults(QStringList& faults, const QQuickItem& text) {
    static const QRegularExpression unfilled{QStringLiteral("\\{[a-z-]+\\}|^\\[[a-z]+[.][a-z.-]+\\]$")};
    const auto words = text.property("text").toString();
    if (text.property("truncated").toBool() && !repeatsTyped(words)) {
        faults.append(QStringLiteral("cut short: ") + who(text));
    }
    if (text.property("contentWidth").toDouble() > text.width() + 1.0) {
        faults.append(QStringLiteral("%1 wide in its box: ").arg(text.property("contentWidth").toDouble()) + who(text));
    }
    if (const auto word = brokenWord(text); !word.isEmpty()) {
        faults.append(QStringLiteral("breaks \"%1\": ").arg(word) + who(text));
    }
    if (unfilled.match(words).hasMatch()) {
        faults.append(QStringLiteral("no sentence: ") + who(text));
    }
}

double gapBetween(const QRectF& one, const QRectF& other) {
    const double dx = std::max({0.0, other.left() - one.right(), one.left() - other.right()});
    const double dy = std::max({0.0, other.top() - one.bottom(), one.top() - other.bottom()});
    return std::max(dx, dy);
}

QList<QQuickItem*> textsOf(const KioskView& view) {
    QList<QQuickItem*> texts;
    for (QQuickItem* item : view.visibleItems()) {
        if (isText(*item)) {
            texts.append(item);
        }
    }
    return texts;
}

double luminance(const QColor& color) { // WCAG 2.2, "relative luminance"
    const auto linear = [](double value) {
        return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(color.redF()) + 0.7152 * linear(color.greenF()) + 0.0722 * linear(color.blueF());
}

double contrast(const QColor& one, const QColor& other) { // WCAG 2.2, "contrast ratio"
    const double a = luminance(one);
    const double b = luminance(other);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

/// What most of a rectangle is filled with, as every second pixel of every second line says.
QColor groundOf(const QImage& picture, const QRect& box) {
    QHash<QRgb, int> seen;
    for (int y = box.top(); y <= box.bottom(); y += 2) {
        for (int x = box.left(); x <= box.right(); x += 2) {
            ++seen[picture.pixel(x, y)];
        }
    }
    const auto most = std::max_element(seen.begin(), seen.end());
    return QColor::fromRgb(most.key());
}

} // namespace

QStringList writtenFaults(const KioskView& view) {
    QStringList faults;
    const double dead = 2.0 * view.pxPerMm(); // joined cells: their sides are dead
    QList<std::pair<const QQuickItem*, Place>> buttons;
    for (QQuickItem* target : view.touchTargets()) {
        buttons.append({target, placeOf(*target, {0, 0, target->width(), target->height()})});
    }
    QList<std::pair<const QQuickItem*, Place>> inks;
    for (const QQuickItem* text : textsOf(view)) {
        addOwnFaults(faults, *text);
        const auto ink = placeOf(*text, inkOf(*text));
        if (!roomOf(view, ink.scroller).adjusted(-1, -1, 1, 1).contains(ink.box)) {
            faults.append(QStringLiteral("off its page: ") + who(*text));
        }
        for (const auto& [button, place] : buttons) {
            if (place.scroller == ink.scroller && place.box.contains(ink.box.center()) &&
                !place.box.adjusted(-dead, -1, dead, 1).contains(ink.box)) {
                faults.append(QStringLiteral("out of its button: ") + who(*text) + QStringLiteral(" in ") +
                              who(*button));
            }
        }
        for (const auto& [other, place] : inks) {
            if (place.scroller == ink.scroller && place.box.intersects(ink.box) &&
                liesOver(*other) == liesOver(*text)) {
                faults.append(QStringLiteral("over another: ") + who(*text) + QStringLiteral(" and ") + who(*other));
            }
        }
        inks.append({text, ink});
    }
    return faults;
}

QStringList targetFaults(const KioskView& view) {
    QStringList faults;
    const double least = 15.0 * view.pxPerMm() - 0.5; // screens.md: at least 15 mm, 3 mm apart
    const double apart = 3.0 * view.pxPerMm() - 0.5;
    struct Seen final {
        const QQuickItem* item;
        Place place;
        QRectF sight;
    };
    QList<Seen> all;
    for (const QQuickItem* target : view.touchTargets()) {
        const Seen one{target, placeOf(*target, {0, 0, target->width(), target->height()}), inSight(*target)};
        if (one.place.box.width() < least || one.place.box.height() < least) {
            faults.append(QStringLiteral("too small: ") + who(*target));
        }
        for (const auto& other : all) {
            const bool together = other.place.scroller == one.place.scroller;
            const bool seen = !one.sight.isEmpty() && !other.sight.isEmpty();
            const double gap = together ? gapBetween(one.place.box, other.place.box)
                               : seen   ? gapBetween(one.sight, other.sight)
                                        : apart;
            if (gap < apart) {
                faults.append(QStringLiteral("too close: ") + who(*target) + QStringLiteral(" and ") +
                              who(*other.item));
            }
        }
        all.append(one);
    }
    return faults;
}

QStringList nameFaults(const KioskView& view) {
    QStringList faults;
    for (QQuickItem* target : view.touchTargets()) {
        auto* access = QAccessible::queryAccessibleInterface(target);
        if (access == nullptr || access->text(QAccessible::Name).isEmpty() || access->role() == QAccessible::NoRole) {
            faults.append(QStringLiteral("no name: ") + who(*target));
        }
    }
    return faults;
}

QStringList contrastFaults(KioskView& view) {
    QStringList faults;
    const auto& picture = view.picture();
    const auto texts = textsOf(view);
    for (qsizetype i = 0; i < texts.size(); ++i) {
        const auto* text = texts[i];
        const auto box = text->mapRectToScene(inkOf(*text)).toAlignedRect();
        // What stays in sight while the rest scrolls is drawn later, over what it hides.
        const bool hidden = std::any_of(texts.begin() + i + 1, texts.end(), [&](const QQuickItem* later) {
            return scrolledBy(*later) != scrolledBy(*text) && onScreen(*later).intersects(box);
        });
        if (hidden || !inSight(*text).contains(box) || !picture.rect().contains(box)) {
            continue;
        }
        const auto around = box.adjusted(-6, -4, 6, 4) & picture.rect(); // a wide letter alone is mostly ink
        const auto found = contrast(text->property("color").value<QColor>(), groundOf(picture, around));
        if (found < 7.0) { // screens.md: 7:1 for text
            faults.append(QStringLiteral("contrast %1: ").arg(found) + who(*text));
        }
    }
    return faults;
}

QStringList tabFaults(KioskView& view) {
    QStringList faults;
    // Of a long list rows come and go as it is walked along.
    QList<QPointer<QQuickItem>> targets;
    for (QQuickItem* target : view.touchTargets()) {
        targets.append(target);
    }
    QList<QPointer<QQuickItem>> reached;
    constexpr int kMost = 500;
    for (int i = 0; i < kMost; ++i) {
        QTest::keyClick(&view.window(), Qt::Key_Tab);
        auto* item = view.window().activeFocusItem();
        if (item == nullptr || reached.contains(item)) {
            break;
        }
        if (inSight(*item) != onScreen(*item)) {
            faults.append(QStringLiteral("reached out of sight: ") + who(*item));
        }
        reached.append(item);
    }
    for (const auto& target : targets) {
        if (target.isNull()) {
            continue;
        }
        // Of a list the Tab key stops once.
        const bool walked = target->property("walked").toBool() && !target->activeFocusOnTab();
        if (!walked && !reached.contains(target)) {
            faults.append(QStringLiteral("not reached: ") + who(*target));
        }
    }
    reached.removeAll({});
    for (qsizetype i = 1; i < reached.size(); ++i) {
        const auto before = placeOf(*reached[i - 1], {0, 0, reached[i - 1]->width(), reached[i - 1]->height()});
        const auto now = placeOf(*reached[i], {0, 0, reached[i]->width(), reached[i]->height()});
        const bool later = now.box.top() >= before.box.bottom() - 1.0 || now.box.left() >= before.box.right() - 1.0;
        if (now.scroller != nullptr && now.scroller == before.scroller && !later) {
            faults.append(QStringLiteral("reached too late: ") + who(*reached[i]));
        }
    }
    return faults;
}

} // namespace holdfast::tests
