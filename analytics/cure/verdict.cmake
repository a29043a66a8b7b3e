holdfast_library(cure_verdict
  SOURCES
    dose.cpp
    findings.cpp
    flash.cpp
    hold_level.cpp
    join.cpp
    layer_verdict.cpp
    pass_evidence.cpp
    peak_verdict.cpp
    remedies.cpp
    retake.cpp
    spot_verdict.cpp
    strip_verdict.cpp
    surface_verdict.cpp
    trace_verdict.cpp
  PUBLIC holdfast_cure_window holdfast_cure_trace)
