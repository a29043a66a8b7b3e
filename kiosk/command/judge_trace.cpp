#include "kiosk/command/judge_trace.hpp"

#include "kiosk/command/trace_faults.hpp"
#include "kiosk/command/trace_file.hpp"

namespace holdfast::kiosk::command {

tl::expected<analytics::RawTrace, CommandFault> rawTraceFrom(const std::string& path,
                                                             const analytics::Calibration& instrument) {
    TraceFileOptions options;
    options.flagByName = true;
    const auto file = readTraceFile(path, options);
    if (!file) {
        return tl::unexpected(commandFaultOf(file.error(), path));
    }
    auto trace = rawTraceOf(*file);
    const auto& known = instrument.instrument();
    if (known.resolution > analytics::TemperatureDifference{}) {
        trace.resolution = known.resolution;
    }
    if (known.range) {
        trace.range = known.range;
    }
    return trace;
}

} // namespace holdfast::kiosk::command
