#include "kiosk/screens/presenting/start_failure.hpp"

#include "kiosk/screens/presenting/refusal_presenter.hpp"

namespace holdfast::kiosk::screens {

KioskState startFailureOf(const wording::Notice& notice, const wording::Speech& speech) {
    KioskState frame;
    frame.place = QStringLiteral("dryer");
    frame.refusal = refusalOf(notice, "quit", "action.quit", speech);
    return frame;
}

} // namespace holdfast::kiosk::screens
