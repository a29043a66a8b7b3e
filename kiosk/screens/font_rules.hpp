#pragma once

namespace holdfast::kiosk::screens {

/// Points fontconfig at the rules that keep B612 Mono from answering to "B612" (deploy/fontconfig/holdfast.conf,
/// written into the user's cache). Call it before the QGuiApplication is made; later calls do nothing. A
/// FONTCONFIG_FILE that is already set is left alone. False: the file could not be written, and the system's rules
/// hold.
bool applyFontRules();

/// True if regular B612 is there and is not the monospaced one: "iiii" is narrower than "mmmm". Needs a
/// QGuiApplication.
[[nodiscard]] bool fontIsRight();

} // namespace holdfast::kiosk::screens
