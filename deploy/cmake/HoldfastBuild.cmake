# One place for what every target shares: language, warnings, ccache, packages.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
set(CMAKE_CXX_FLAGS_RELEASE "-O2") # without NDEBUG: a broken invariant stops the program instead of shipping a verdict
set(QT_QML_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/qml)

option(HOLDFAST_TESTS "Build the tests" ON)
option(HOLDFAST_BENCH "Build tests/bench" ON)
option(HOLDFAST_WERROR "Warnings are errors" ON)
option(HOLDFAST_SANITIZE "Address and undefined-behaviour sanitizers" OFF)
option(HOLDFAST_FUZZ "Build tests/fuzz with libFuzzer (clang only)" OFF)

find_program(HOLDFAST_CCACHE ccache)
if(HOLDFAST_CCACHE)
  set(CMAKE_CXX_COMPILER_LAUNCHER
    ${CMAKE_COMMAND} -E env "CCACHE_SLOPPINESS=pch_defines,time_macros" ${HOLDFAST_CCACHE})
endif()

find_package(Qt6 6.4 REQUIRED COMPONENTS Core Gui Qml Quick QuickControls2 SerialPort)
if(HOLDFAST_TESTS)
  find_package(Qt6 6.4 REQUIRED COMPONENTS Test QuickTest)
endif()
find_package(Boost 1.74 REQUIRED)
find_package(SQLiteCpp REQUIRED)
find_package(nlohmann_json REQUIRED)
find_package(tl-expected REQUIRED)
find_package(CLI11 REQUIRED)
find_package(zstd REQUIRED)
find_package(PkgConfig REQUIRED)
pkg_check_modules(sodium REQUIRED IMPORTED_TARGET libsodium)
qt_standard_project_setup()
set(CMAKE_AUTOMOC OFF) # only targets marked QT pay for it
set(CMAKE_AUTOUIC OFF)

# Flags every target of ours carries; third-party headers come in as SYSTEM.
add_library(holdfast_flags INTERFACE)
add_library(holdfast::flags ALIAS holdfast_flags)
target_compile_features(holdfast_flags INTERFACE cxx_std_20)
target_include_directories(holdfast_flags INTERFACE ${CMAKE_SOURCE_DIR})
target_compile_options(holdfast_flags INTERFACE -Wall -Wextra -Wpedantic -Wconversion -Wshadow -fpch-preprocess)
if(HOLDFAST_WERROR)
  target_compile_options(holdfast_flags INTERFACE -Werror)
endif()
if(HOLDFAST_SANITIZE)
  target_compile_options(holdfast_flags INTERFACE -fsanitize=address,undefined -fno-omit-frame-pointer)
  target_link_options(holdfast_flags INTERFACE -fsanitize=address,undefined)
endif()

# The standard headers nearly every file of ours reads, compiled once. Everything is position independent, since Qt's
# targets must be and a precompiled header is only reused under the same flags.
set(CMAKE_POSITION_INDEPENDENT_CODE ON)
add_library(holdfast_prelude STATIC ${CMAKE_SOURCE_DIR}/deploy/cmake/prelude.cpp)
target_link_libraries(holdfast_prelude PUBLIC holdfast::flags tl::expected)
target_precompile_headers(holdfast_prelude PRIVATE
  <algorithm> <array> <chrono> <cmath> <cstdint> <functional> <map> <memory> <optional> <string> <string_view>
  <tl/expected.hpp> <utility> <variant> <vector>)

# holdfast_library(NAME [QT] SOURCES … [PUBLIC …] [PRIVATE …]): a static library with the alias holdfast::NAME.
# QT runs moc over its headers.
function(holdfast_library name)
  cmake_parse_arguments(A "QT" "" "SOURCES;PUBLIC;PRIVATE" ${ARGN})
  add_library(holdfast_${name} STATIC ${A_SOURCES})
  if(A_QT)
    set_target_properties(holdfast_${name} PROPERTIES AUTOMOC ON)
  endif()
  add_library(holdfast::${name} ALIAS holdfast_${name})
  target_link_libraries(holdfast_${name} PUBLIC holdfast::flags ${A_PUBLIC} PRIVATE ${A_PRIVATE})
  target_precompile_headers(holdfast_${name} REUSE_FROM holdfast_prelude)
endfunction()
