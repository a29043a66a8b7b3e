#include "kiosk/screens/presenting/refusal_presenter.hpp"

#include "kiosk/screens/presenting/shown.hpp"

namespace holdfast::kiosk::screens {

RefusalState refusalOf(const wording::Notice& notice, const char* leaveId, const char* leaveKey,
                       const wording::Speech& speech) {
    RefusalState refusal;
    refusal.happened = toQString(notice.happened);
    refusal.keptHeading = toQString(speech.text("section.kept"));
    refusal.kept = toQString(notice.kept);
    refusal.toDoHeading = toQString(speech.text("section.do-now"));
    refusal.toDo = toQString(notice.toDo);
    refusal.leave.id = QString::fromLatin1(leaveId);
    refusal.leave.label = toQString(speech.text(leaveKey));
    refusal.leave.primary = false;
    return refusal;
}

} // namespace holdfast::kiosk::screens
