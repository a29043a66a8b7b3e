holdfast_library(command_facts
  SOURCES facts.cpp greatest_rise.cpp trace_columns.cpp trace_file.cpp trace_stamp.cpp trace_table.cpp trace_text.cpp
  PUBLIC holdfast::cure_trace holdfast::cure_names nlohmann_json::nlohmann_json tl::expected)
