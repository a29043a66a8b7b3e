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

/// How a film looks after a pull, best first.
enum class CrackKind { Whole, Hairline, Breaks, Powders };
Q_ENUM_NS(CrackKind)

/// The point of a line on a chart of grades. In ink, so the shape alone tells one line from the other: colour is a
/// disc, staining an open square, the others as they come.
enum class PointShape { Disc, Square, Triangle, Diamond };
Q_ENUM_NS(PointShape)

/// What is known of a stretch of a run's pieces. Proven: clear paper. Waiting: made and not proven yet. Bracket: to be
/// pulled, hatched. Gone: scrapped or run again, an empty broken outline. Pieces without a stretch are not made yet.
enum class PieceKind { Proven, Waiting, Bracket, Gone };
Q_ENUM_NS(PieceKind)

} // namespace holdfast::kiosk::screens
