#include "kiosk/screens/presenting/start_failure.hpp"

#include "kiosk/screens/presenting/shown.hpp"

namespace holdfast::kiosk::screens {

KioskState startFailureOf(const wording::Notice& notice, const wording::Speech& speech) {
    KioskState frame;
    frame.place = QStringLiteral("dryer");
    frame.refusal.happened = toQString(notice.happened);
    frame.refusal.keptHeading = toQString(speech.text("section.kept"));
    frame.refusal.kept = toQString(notice.kept);
    frame.refusal.toDoHeading = toQString(speech.text("section.do-now"));
    frame.refusal.toDo = toQString(notice.toDo);
    frame.refusal.leave.id = QStringLiteral("quit");
    frame.refusal.leave.label = toQString(speech.text("action.quit"));
    frame.refusal.leave.primary = true;
    return frame;
}

} // namespace holdfast::kiosk::screens
