#pragma once

#include "kiosk/screens/kiosk_state.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::screens {

/// The whole screen while the demo's book is being written; there is nothing to press, it goes by itself.
struct DemoWritingShown final {
    KioskState frame{};
    SheetPageState page{};
};

[[nodiscard]] DemoWritingShown demoWritingShown(const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
