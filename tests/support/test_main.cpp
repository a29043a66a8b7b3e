// Built once for all test executables; compiled without the shared precompiled header, which lacks the runner.
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
