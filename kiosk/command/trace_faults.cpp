#include "kiosk/command/trace_faults.hpp"

namespace holdfast::kiosk::command {

namespace {

std::string keyOf(TraceFileFault fault) {
    switch (fault) {
    case TraceFileFault::unreadable:
        return "trace-unreadable";
    case TraceFileFault::tooLarge:
        return "trace-too-large";
    case TraceFileFault::empty:
        return "trace-empty";
    case TraceFileFault::utf16:
        return "trace-utf16";
    case TraceFileFault::noRows:
        return "trace-no-rows";
    case TraceFileFault::noTimeColumn:
        return "trace-no-time-column";
    case TraceFileFault::timeAmbiguous:
        return "trace-time-ambiguous";
    case TraceFileFault::noTemperatureColumn:
        return "trace-no-temperature-column";
    case TraceFileFault::temperatureAmbiguous:
        return "trace-temperature-ambiguous";
    case TraceFileFault::columnNotFound:
        return "trace-column-not-found";
    case TraceFileFault::columnNotUnique:
        return "trace-column-not-unique";
    case TraceFileFault::badRange:
        return "trace-bad-range";
    }
    return "trace-unreadable";
}

} // namespace

CommandFault commandFaultOf(const TraceFileFailure& failure, const std::string& path) {
    std::string columns;
    for (const auto& name : failure.columns) {
        columns += (columns.empty() ? "" : ", ") + name;
    }
    return {keyOf(failure.fault), {{"path", path}, {"asked", failure.asked}, {"columns", columns}}};
}

} // namespace holdfast::kiosk::command
