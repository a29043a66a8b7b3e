#pragma once

#include "kiosk/records/kinds.hpp"
#include "kiosk/records/run_on_file.hpp"

#include <chrono>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::demo {

/// Every instrument as described on `today`, with its certificates and the checks before that day. The shop's own probe
/// is attached at `probeAddress`.
[[nodiscard]] std::vector<records::Record> demoInstruments(const std::function<std::string()>& makeId,
                                                           std::chrono::sys_days today,
                                                           const std::string& probeAddress);

/// The ice point, or water boiling at the pressure of that day; it reads so much too high.
[[nodiscard]] records::Record demoCheck(const records::InstrumentOnFile& instrument, analytics::CheckKind kind,
                                        std::chrono::sys_days today, double errorFahrenheit = 0.2);

/// The same; nothing if the bath was not known well enough to decide.
[[nodiscard]] std::optional<records::CheckDone> demoCheckIfDecided(const records::InstrumentOnFile& instrument,
                                                                   analytics::CheckKind kind,
                                                                   std::chrono::sys_days today, double errorFahrenheit);

} // namespace holdfast::kiosk::demo
