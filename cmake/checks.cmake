# Tests, the checks of the house itself, and the benchmarks.

find_package(GTest REQUIRED)
find_package(rapidcheck REQUIRED)
include(GoogleTest)

add_library(tailblock_test_support_headers INTERFACE)
target_include_directories(tailblock_test_support_headers INTERFACE ${PROJECT_SOURCE_DIR}/tests/support)
target_compile_definitions(tailblock_test_support_headers INTERFACE TEST_SOURCE_DIR="${PROJECT_SOURCE_DIR}"
                           TEST_PROGRAM="${TAILBLOCK_PROGRAM}")
target_link_libraries(tailblock_test_support_headers INTERFACE tailblock_house)

add_library(tailblock_test_support INTERFACE)
target_link_libraries(tailblock_test_support INTERFACE tailblock_test_support_headers GTest::gtest GTest::gtest_main
                                                       rapidcheck)
# A test's own lines run once: -O1 compiles them in two thirds of the time. The rooms they test are the shop's.
target_compile_options(tailblock_test_support INTERFACE $<$<CONFIG:Release>:-O1>)

# What nearly every test includes and never changes, compiled once: it halves the time of a test.
add_library(tailblock_test_prefix OBJECT ${PROJECT_SOURCE_DIR}/cmake/test_prefix.cpp)
target_link_libraries(tailblock_test_prefix PRIVATE tailblock_test_support)
target_precompile_headers(tailblock_test_prefix PRIVATE <gtest/gtest.h> <rapidcheck/gtest.h> <algorithm> <array> <cmath>
                          <functional> <map> <optional> <string> <vector>)

file(GLOB support_sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/tests/support/*.cpp)
if(support_sources)
  add_library(tailblock_test_support_files STATIC ${support_sources})
  target_link_libraries(tailblock_test_support_files PUBLIC tailblock_test_support ${rooms_to_quantity})
  set(support_library tailblock_test_support_files)
endif()

file(GLOB_RECURSE facts CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/data/*.csv ${PROJECT_SOURCE_DIR}/tests/published/*.csv)

# tests/<room>/*_test.cpp, with whatever slow and obvious references lie beside them, become <room>_test.
# `<room>_test.passed` runs it only when it, a table or a published value changed: `make fast` builds all of those.
add_custom_target(fast)
foreach(room IN LISTS TAILBLOCK_ROOMS)
  file(GLOB sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/tests/${room}/*.cpp)
  list(FILTER sources EXCLUDE REGEX "_fuzz\\.cpp$")
  if(NOT sources)
    continue()
  endif()
  set(test ${room}_test)
  add_executable(${test} ${sources})
  target_link_libraries(${test} PRIVATE tailblock_test_support ${support_library} ${rooms_to_${room}} ${needs_${room}}
                                        nlohmann_json::nlohmann_json)
  target_precompile_headers(${test} REUSE_FROM tailblock_test_prefix)
  if(room STREQUAL "cli" AND TARGET tailblock)
    add_dependencies(${test} tailblock)
  endif()
  gtest_discover_tests(${test} DISCOVERY_MODE PRE_TEST TEST_PREFIX ${room}. PROPERTIES LABELS unit TIMEOUT 300)
  add_custom_command(
    OUTPUT ${test}.passed
    COMMAND ${test} --gtest_brief=1
    COMMAND ${CMAKE_COMMAND} -E touch ${test}.passed
    DEPENDS ${test} ${facts}
    COMMENT "Running ${test}")
  add_custom_target(${test}_fast DEPENDS ${test}.passed)
  add_dependencies(fast ${test}_fast)
endforeach()

# tests/bench/gecode holds the planner against a general solver's proofs. Where libgecode-dev is missing the test is named
# all the same and shown as not run.
find_library(GECODE_KERNEL gecodekernel)
find_library(GECODE_SUPPORT gecodesupport)
find_library(GECODE_INT gecodeint)
find_library(GECODE_MINIMODEL gecodeminimodel)
find_library(GECODE_SEARCH gecodesearch)
set(gecode ${GECODE_SEARCH} ${GECODE_MINIMODEL} ${GECODE_INT} ${GECODE_KERNEL} ${GECODE_SUPPORT})
if(gecode MATCHES "NOTFOUND")
  add_test(NAME bench.BenchOptimum.needs_libgecode_dev COMMAND bench_gecode_test)
  set_tests_properties(bench.BenchOptimum.needs_libgecode_dev PROPERTIES DISABLED ON LABELS unit)
else()
  file(GLOB sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/tests/bench/gecode/*.cpp)
  add_executable(bench_gecode_test ${sources} ${PROJECT_SOURCE_DIR}/tests/bench/plan_checker.cpp)
  target_include_directories(bench_gecode_test PRIVATE ${PROJECT_SOURCE_DIR}/tests/bench)
  target_link_libraries(bench_gecode_test PRIVATE tailblock_test_support ${support_library} ${rooms_to_bench} ${gecode})
  gtest_discover_tests(bench_gecode_test DISCOVERY_MODE PRE_TEST TEST_PREFIX bench. PROPERTIES LABELS unit TIMEOUT 300)
endif()

# tests/<room>/<stem>_fuzz.cpp become <stem>_fuzz: searching with libFuzzer in the preset fuzz (`make fuzz`), elsewhere
# fed the same invented inputs on every run: 20,000, or as many as are said here, of any bytes.
set(inputs_of_compute_request_fuzz 3000)
foreach(room IN LISTS TAILBLOCK_ROOMS)
  file(GLOB targets CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/tests/${room}/*_fuzz.cpp)
  foreach(source IN LISTS targets)
    get_filename_component(stem ${source} NAME_WE)
    add_executable(${stem} ${source})
    target_link_libraries(${stem} PRIVATE tailblock_test_support_headers ${rooms_to_${room}} ${needs_${room}})
    if(TAILBLOCK_FUZZ)
      target_link_options(${stem} PRIVATE -fsanitize=fuzzer)
      set_target_properties(${stem} PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR}/fuzz)
    else()
      target_sources(${stem} PRIVATE ${PROJECT_SOURCE_DIR}/tests/fuzz/without_libfuzzer.cpp)
      if(inputs_of_${stem})
        target_compile_definitions(${stem} PRIVATE FUZZ_INPUTS=${inputs_of_${stem}})
      endif()
      add_test(NAME fuzz.${stem} COMMAND ${stem})
      set_tests_properties(fuzz.${stem} PROPERTIES LABELS unit TIMEOUT 300)
    endif()
  endforeach()
endforeach()

# tests/<room>/<stem>_peer.mjs hold the program against a package of the npm registry.
find_program(NODE node)
file(GLOB peers CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/tests/*/*_peer.mjs)
if(NODE AND NOT TAILBLOCK_SANITIZE)
  foreach(peer IN LISTS peers)
    get_filename_component(stem ${peer} NAME_WE)
    add_test(NAME peer.${stem} COMMAND ${NODE} ${peer} ${TAILBLOCK_PROGRAM})
    set_tests_properties(peer.${stem} PROPERTIES LABELS web TIMEOUT 300)
  endforeach()
endif()

add_subdirectory(tests/architecture)

# The pages: their types and layout, their marks and words, and one test for each story told in a real Chromium.
find_program(NPM npm)
file(GLOB stories CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/web/tests/browser/*.test.ts)
if(NPM AND NOT TAILBLOCK_SANITIZE)
  set(web ${PROJECT_SOURCE_DIR}/web)
  add_test(NAME web.check COMMAND ${NPM} run --silent check WORKING_DIRECTORY ${web})
  add_test(NAME web.units COMMAND ${NPM} run --silent test WORKING_DIRECTORY ${web})
  set_tests_properties(web.check web.units PROPERTIES LABELS web TIMEOUT 300)
  foreach(story IN LISTS stories)
    get_filename_component(stem ${story} NAME_WE)
    add_test(NAME browser.${stem} COMMAND ${NPM} run --silent test:browser -- ${stem}.test.ts WORKING_DIRECTORY ${web})
    # Begun first: they are the longest.
    set_tests_properties(browser.${stem} PROPERTIES LABELS browser TIMEOUT 1200 COST 100
                         ENVIRONMENT TAILBLOCK_PROGRAM=${TAILBLOCK_PROGRAM})
  endforeach()
  set_tests_properties(browser.pages PROPERTIES COST 200)
endif()

if(TAILBLOCK_PERF)
  find_package(benchmark REQUIRED)
  set(rooms_below_http ${rooms_to_paper})
  add_custom_target(benchmarks)  # by `make build` and `make perf`
  file(GLOB benchmarks CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/perf/*_perf.cpp)
  foreach(source IN LISTS benchmarks)
    get_filename_component(stem ${source} NAME_WE)
    add_executable(${stem} EXCLUDE_FROM_ALL ${source})
    add_dependencies(benchmarks ${stem})
    target_link_libraries(${stem} PRIVATE tailblock_test_support_headers ${rooms_below_http} benchmark::benchmark)
    set_target_properties(${stem} PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR}/perf)
  endforeach()
endif()
