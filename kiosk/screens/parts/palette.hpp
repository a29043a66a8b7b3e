#pragma once

#include "kiosk/screens/parts/kinds.hpp"

#include <QColor>
#include <QtQml/qqmlregistration.h>

namespace holdfast::kiosk::screens {

/// The inks and papers of one theme: the only place where a colour stands. Contrast on paper, light/dark:
/// ink 15.9/15.4, second ink 8.3/9.2, cured 7.04/8.6, under-cured 8.4/7.6, overheated 12.5/8.5. Verdict colours never
/// set text on tint.
struct InkPalette {
    Q_GADGET
    QML_VALUE_TYPE(inkPalette)
    Q_PROPERTY(QColor paper MEMBER paper)
    Q_PROPERTY(QColor clear MEMBER clear)
    Q_PROPERTY(QColor tint MEMBER tint)
    Q_PROPERTY(QColor rule MEMBER rule)
    Q_PROPERTY(QColor ink MEMBER ink)
    Q_PROPERTY(QColor ink2 MEMBER ink2)
    Q_PROPERTY(QColor cured MEMBER cured)
    Q_PROPERTY(QColor underCured MEMBER underCured)
    Q_PROPERTY(QColor overheated MEMBER overheated)
public:
    QColor paper;
    QColor clear; ///< ground of the window
    QColor tint;  ///< ground of what is not proven
    QColor rule;
    QColor ink;
    QColor ink2;
    QColor cured;
    QColor underCured;
    QColor overheated;
    double hatchAlpha = 0.0;
    double dotAlpha = 0.0;

    /// The verdict's colour; ink for every kind that is none.
    Q_INVOKABLE QColor of(holdfast::kiosk::screens::MarkKind kind) const;

    bool operator==(const InkPalette&) const = default;
};

[[nodiscard]] InkPalette lightPalette();
[[nodiscard]] InkPalette darkPalette();

/// Both palettes for Theme.qml.
class Palettes final : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_SINGLETON
    Q_PROPERTY(holdfast::kiosk::screens::InkPalette light READ light CONSTANT)
    Q_PROPERTY(holdfast::kiosk::screens::InkPalette dark READ dark CONSTANT)
public:
    using QObject::QObject;
    [[nodiscard]] InkPalette light() const { return lightPalette(); }
    [[nodiscard]] InkPalette dark() const { return darkPalette(); }
};

} // namespace holdfast::kiosk::screens
