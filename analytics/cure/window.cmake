holdfast_library(cure_window
  SOURCES
    belt_window.cpp
    fabric.cpp
    ink.cpp
    ink_family.cpp
    joint_window.cpp
    prover.cpp
    starters.cpp
    way_counts.cpp
    ways_out.cpp
    ways_out_ranking.cpp
    ways_out_search.cpp
    window.cpp
  PUBLIC holdfast::quantity holdfast::metrology tl::expected)
