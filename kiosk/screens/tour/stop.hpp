#pragma once

#include "kiosk/screens/kiosk_model.hpp"

#include <QString>

namespace holdfast::kiosk::screens {

/// What the kiosk showed at one moment, as values: any model can show it again.
struct Stop final {
    QString name{}; ///< as a file may be named, "run-cured"
    KioskState frame{};
    DryerPageState dryer{};
    RunPageState run{};
    StripPageState strip{};
    SheetPageState sheet{};
    TypePadState pad{};
    QString language{};
    bool scanEntry = false;

    [[nodiscard]] static Stop of(KioskModel& kiosk, const QString& name);
    void show(KioskModel& kiosk) const;
};

} // namespace holdfast::kiosk::screens
