holdfast_test(command_facts_test
  SOURCES facts_reference_test.cpp facts_test.cpp trace_file_test.cpp
  LIBS holdfast::command_facts)
