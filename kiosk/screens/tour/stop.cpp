#include "kiosk/screens/tour/stop.hpp"

namespace holdfast::kiosk::screens {

Stop Stop::of(KioskModel& kiosk, const QString& name) {
    return {name,
            kiosk.state(),
            kiosk.dryer()->state(),
            kiosk.run()->state(),
            kiosk.strip()->state(),
            kiosk.sheet()->state(),
            kiosk.typePad(),
            kiosk.language(),
            kiosk.scanEntryOpen()};
}

void Stop::show(KioskModel& kiosk) const {
    kiosk.setLanguage(language);
    kiosk.dryer()->setState(dryer);
    kiosk.run()->setState(run);
    kiosk.strip()->setState(strip);
    kiosk.sheet()->setState(sheet);
    kiosk.setState(frame);
    kiosk.openScanEntry(scanEntry);
    kiosk.openPad(pad); // after the place, whose change closes it
}

} // namespace holdfast::kiosk::screens
