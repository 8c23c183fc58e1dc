# What every file in the house is compiled with: the language, the warnings, the include root.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

# Assertions stay on in a release: the program that is tested is the program that runs
# (docs/decisions/0003-one-build-for-tests-and-shop.md). Eigen's own index checks do not stay.
set(CMAKE_CXX_FLAGS_RELEASE "-O2 -g1 -DEIGEN_NO_DEBUG")

find_program(TAILBLOCK_CCACHE ccache)
if(TAILBLOCK_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  # Without these ccache passes over every file that uses a precompiled header.
  set(CMAKE_CXX_COMPILER_LAUNCHER ${CMAKE_COMMAND} -E env CCACHE_SLOPPINESS=pch_defines,time_macros ${TAILBLOCK_CCACHE})
endif()

find_package(Eigen3 REQUIRED)
find_package(Threads REQUIRED)

add_library(tailblock_house INTERFACE)
target_include_directories(tailblock_house INTERFACE ${PROJECT_SOURCE_DIR}/src)
target_compile_options(tailblock_house INTERFACE -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror)
target_link_libraries(tailblock_house INTERFACE Threads::Threads)

if(TAILBLOCK_SANITIZE)
  set(sanitizers -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_compile_options(tailblock_house INTERFACE ${sanitizers})
  target_link_options(tailblock_house INTERFACE ${sanitizers})
endif()

if(TAILBLOCK_FUZZ)  # clang only: every room tells libFuzzer which of its lines an input reached
  target_compile_options(tailblock_house INTERFACE -fsanitize=fuzzer-no-link -Wno-overloaded-virtual)
endif()

if(TAILBLOCK_TIDY)
  find_program(TAILBLOCK_CLANG_TIDY clang-tidy REQUIRED)
  set(CMAKE_CXX_CLANG_TIDY ${TAILBLOCK_CLANG_TIDY} --quiet --extra-arg=-Wno-unknown-warning-option
      --extra-arg=-Wno-overloaded-virtual)
endif()
