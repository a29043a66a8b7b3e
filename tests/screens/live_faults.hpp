#pragma once

#include "tests/screens/kiosk_view.hpp"

/// What may be wrong with a page as it is drawn and with what its scrolling parts hide, as sentences for whoever has to
/// mend it. A scrolling part is measured as a whole, in its own coordinates.
namespace holdfast::tests {

/// Texts cut short, broken within a word, out of their box, button or page, or over one another; sentences without a
/// table or a filling.
[[nodiscard]] QStringList writtenFaults(const KioskView& view);

/// Targets under 15 mm or under 3 mm apart.
[[nodiscard]] QStringList targetFaults(const KioskView& view);

/// Targets without a name or a role for accessibility tools.
[[nodiscard]] QStringList nameFaults(const KioskView& view);

/// Texts in sight under 7:1 on what stands behind them.
[[nodiscard]] QStringList contrastFaults(KioskView& view);

/// Targets that the Tab key does not reach, out of sight when it does, or in another order than they are read.
[[nodiscard]] QStringList tabFaults(KioskView& view);

} // namespace holdfast::tests
