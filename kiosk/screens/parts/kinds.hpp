#pragma once

#include <QObject>
#include <QtQml/qqmlregistration.h>

/// Closed lists the pages choose between. In QML: `Kinds.Cured`, `Kinds.Running`.
namespace holdfast::kiosk::screens {
Q_NAMESPACE
QML_NAMED_ELEMENT(Kinds)

/// What a film section shows (look.md, "Verdict mark"). Blank: no verdict yet. Closed is not a verdict and has its own
/// sign; as a layer of the print it is the layer that closes the window.
enum class MarkKind { Blank, Cured, UnderCured, Overheated, NotProven, Closed };
Q_ENUM_NS(MarkKind)

/// How a drawn trace ends: complete; a dot that still runs; an open ring where the probe fell silent.
enum class TraceEnd { Complete, Running, Lost };
Q_ENUM_NS(TraceEnd)

/// One step of a strip as it lies: dark steps before the chosen one, the chosen last dark one, light after it.
enum class StepKind { Unknown, Dark, LastDark, Light };
Q_ENUM_NS(StepKind)

/// How a sentence of the right column is set: Lead is what to do now (28 bold), Text is everything else (21).
enum class AdviceWeight { Lead, Text };
Q_ENUM_NS(AdviceWeight)

} // namespace holdfast::kiosk::screens
