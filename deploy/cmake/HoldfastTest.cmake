# holdfast_test(NAME SOURCES … LIBS … [SERIAL] [QT]): a Catch2 executable whose cases ctest discovers one by one.
# A case that prints "SKIPPED:" is reported as skipped (Catch2 2 has no SKIP).

if(HOLDFAST_TESTS)
  find_package(Catch2 2 REQUIRED)
  include(Catch)
endif()

function(holdfast_test name)
  cmake_parse_arguments(A "SERIAL;QT" "" "SOURCES;LIBS" ${ARGN})
  add_executable(${name} ${A_SOURCES})
  target_link_libraries(${name} PRIVATE holdfast::flags holdfast_test_main ${A_LIBS})
  target_precompile_headers(${name} REUSE_FROM holdfast_test_main)
  if(A_QT)
    set_target_properties(${name} PROPERTIES AUTOMOC ON)
  endif()
  set(extra "")
  if(A_SERIAL)
    set(extra RUN_SERIAL TRUE)
  endif()
  catch_discover_tests(${name} TEST_PREFIX "${name}: "
    PROPERTIES SKIP_REGULAR_EXPRESSION "SKIPPED:" TIMEOUT 300 ${extra}
    ENVIRONMENT "QT_QPA_PLATFORM=offscreen;QT_QUICK_BACKEND=software;LC_ALL=C.UTF-8")
endfunction()
