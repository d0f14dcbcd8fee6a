# What every target of the project shares: language, warnings, sanitizers, and the two ways a target is made.

option(SWATHBOOK_DEVELOPER "warnings are errors" OFF)
option(SWATHBOOK_TESTS "build the tests" ON)
option(SWATHBOOK_BENCH "build the benchmarks" OFF)
option(SWATHBOOK_FUZZ "build the fuzz targets (clang)" OFF)
option(SWATHBOOK_PRECOMPILED "read the headers of libraries once for each target (half the time of a build)" OFF)
option(SWATHBOOK_WASM "build the core for WebAssembly" OFF)
set(SWATHBOOK_SANITIZE "" CACHE STRING "sanitizers, as -fsanitize= takes them")

set(CMAKE_CXX_STANDARD 23)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
set(CMAKE_POSITION_INDEPENDENT_CODE ON)

find_program(SWATHBOOK_CCACHE ccache)
if(SWATHBOOK_CCACHE)
    # Paths count from the root of this copy, so that every copy of the repository shares the cache.
    set(CMAKE_CXX_COMPILER_LAUNCHER "${CMAKE_COMMAND}" -E env "CCACHE_BASEDIR=${CMAKE_SOURCE_DIR}"
        CCACHE_NOHASHDIR=true CCACHE_SLOPPINESS=pch_defines,time_macros "${SWATHBOOK_CCACHE}")
endif()

add_library(swathbook_flags INTERFACE)
target_include_directories(swathbook_flags INTERFACE "${CMAKE_SOURCE_DIR}")
# The same sums in native code and in WebAssembly: no fused multiply-add behind our back.
target_compile_options(swathbook_flags INTERFACE -ffp-contract=off -Wall -Wextra -Wpedantic -Wshadow -Wconversion
                       -Wno-sign-conversion)
if(SWATHBOOK_WASM)
    target_compile_definitions(swathbook_flags INTERFACE FMT_HEADER_ONLY=1 SWATHBOOK_WORDLESS)
else()
    # The compiled library: header-only fmt nearly doubles the time each source takes.
    find_package(fmt REQUIRED)
    target_link_libraries(swathbook_flags INTERFACE fmt::fmt)
endif()
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_BUILD_TYPE STREQUAL "Release")
    # g++ 12 sees overlaps in std::string's own operator+ that are not there (GCC bug 105651).
    target_compile_options(swathbook_flags INTERFACE -Wno-restrict)
endif()
if(SWATHBOOK_DEVELOPER)
    target_compile_options(swathbook_flags INTERFACE -Werror)
endif()
if(SWATHBOOK_SANITIZE)
    target_compile_options(swathbook_flags INTERFACE -fsanitize=${SWATHBOOK_SANITIZE} -fno-omit-frame-pointer
                           -fno-sanitize-recover=all)
    target_link_options(swathbook_flags INTERFACE -fsanitize=${SWATHBOOK_SANITIZE})
endif()
if(SWATHBOOK_FUZZ)
    # Every layer tells the fuzzer which branches an input took.
    target_compile_options(swathbook_flags INTERFACE -fsanitize=fuzzer-no-link)
endif()

# Headers of libraries that nearly every file reads. The dev build goes without, so that a missing #include is seen.
function(swathbook_precompile target)
    if(SWATHBOOK_PRECOMPILED)
        target_precompile_headers(${target} PRIVATE <algorithm> <map> <optional> <string> <string_view> <vector>
                                  <fmt/format.h> <nlohmann/json.hpp> <tl/expected.hpp> ${ARGN})
    endif()
endfunction()

# swathbook_layer(core/quantity DEPENDS core/base): every .cpp of this folder (and its subfolders) is one library;
# main*.cpp are programs of their own.
function(swathbook_layer name)
    cmake_parse_arguments(layer "" "" "DEPENDS;LIBRARIES" ${ARGN})
    string(REPLACE "/" "_" target "swathbook_${name}")
    file(GLOB_RECURSE sources CONFIGURE_DEPENDS "${CMAKE_CURRENT_SOURCE_DIR}/*.cpp")
    list(FILTER sources EXCLUDE REGEX "/main[a-z_]*\\.cpp$")
    set(dependencies swathbook_flags ${layer_LIBRARIES})
    foreach(dependency IN LISTS layer_DEPENDS)
        string(REPLACE "/" "_" dependency_target "swathbook_${dependency}")
        list(APPEND dependencies ${dependency_target})
    endforeach()
    if(sources)
        add_library(${target} STATIC ${sources})
        target_link_libraries(${target} PUBLIC ${dependencies})
        swathbook_precompile(${target})
    else()
        add_library(${target} INTERFACE)
        target_link_libraries(${target} INTERFACE ${dependencies})
    endif()
endfunction()

# What sanitized builds need to know: leaks that are not ours, and that Pango reads the fonts in a thread of its own
# (its libraries are not instrumented, so their locks are not seen).
set(SWATHBOOK_TEST_ENVIRONMENT "LSAN_OPTIONS=suppressions=${CMAKE_SOURCE_DIR}/tools/leaks.txt:print_suppressions=0"
    "TSAN_OPTIONS=ignore_noninstrumented_modules=1")

# swathbook_test(quantity DEPENDS core/quantity): tests/unit/quantity/*.cpp is one test program.
function(swathbook_test name)
    cmake_parse_arguments(test "" "FOLDER" "DEPENDS;LIBRARIES;LABELS" ${ARGN})
    if(NOT test_FOLDER)
        set(test_FOLDER "${CMAKE_SOURCE_DIR}/tests/unit/${name}")
    endif()
    file(GLOB sources CONFIGURE_DEPENDS "${test_FOLDER}/*.cpp")
    if(NOT sources)
        return()
    endif()
    set(dependencies swathbook_flags ${test_LIBRARIES})
    foreach(dependency IN LISTS test_DEPENDS)
        string(REPLACE "/" "_" dependency_target "swathbook_${dependency}")
        list(APPEND dependencies ${dependency_target})
    endforeach()
    add_executable(${name}_test ${sources})
    target_link_libraries(${name}_test PRIVATE ${dependencies} GTest::gtest_main GTest::gmock rapidcheck
                          rapidcheck_gtest)
    swathbook_precompile(${name}_test <gtest/gtest.h> <gmock/gmock.h>)
    add_test(NAME ${name} COMMAND ${name}_test WORKING_DIRECTORY "${CMAKE_SOURCE_DIR}")
    set_tests_properties(${name} PROPERTIES LABELS "${test_LABELS}" TIMEOUT 600
                         ENVIRONMENT "${SWATHBOOK_TEST_ENVIRONMENT}")
endfunction()
