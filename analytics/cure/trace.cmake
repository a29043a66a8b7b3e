holdfast_library(cure_trace
  SOURCES median.cpp passes.cpp short_runs.cpp spikes.cpp sustained_peak.cpp time_above.cpp trace.cpp trace_facts.cpp
          unit_switch.cpp valid_rows.cpp
  PUBLIC holdfast::quantity)
if(TARGET holdfast::metrology)
  target_link_libraries(holdfast_cure_trace PUBLIC holdfast::metrology)
endif()
