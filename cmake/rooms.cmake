# One static library a room, in the order of src/rooms.txt, each linking the rooms above it.
# A room without a .cpp has no library; its headers are found all the same.

find_package(PkgConfig REQUIRED)
pkg_check_modules(cairo REQUIRED IMPORTED_TARGET cairo cairo-pdf pangocairo)
# Pango asks for -pthread, which tailblock_house links already; said again it unfits the precompiled headers.
set_property(TARGET PkgConfig::cairo PROPERTY INTERFACE_COMPILE_OPTIONS)
pkg_check_modules(clp REQUIRED IMPORTED_TARGET clp)
pkg_check_modules(httplib REQUIRED IMPORTED_TARGET cpp-httplib)
pkg_check_modules(exif REQUIRED IMPORTED_TARGET libexif)
pkg_check_modules(qpdf REQUIRED IMPORTED_TARGET libqpdf)
pkg_check_modules(qrencode REQUIRED IMPORTED_TARGET libqrencode)
pkg_check_modules(sodium REQUIRED IMPORTED_TARGET libsodium)
pkg_check_modules(sqlite3 REQUIRED IMPORTED_TARGET sqlite3)
pkg_check_modules(turbojpeg REQUIRED IMPORTED_TARGET libturbojpeg)
find_package(CLI11 REQUIRED)
find_package(nlohmann_json REQUIRED)
find_package(OpenSSL REQUIRED)
find_library(SOCI_CORE soci_core REQUIRED)
find_library(SOCI_SQLITE3 soci_sqlite3 REQUIRED)

set(needs_body Eigen3::Eigen)
set(needs_season Eigen3::Eigen)
set(needs_setup PkgConfig::clp Eigen3::Eigen)
set(needs_models nlohmann_json::nlohmann_json)
set(needs_book ${SOCI_SQLITE3} ${SOCI_CORE} PkgConfig::sqlite3 PkgConfig::sodium nlohmann_json::nlohmann_json)
set(needs_paper PkgConfig::cairo PkgConfig::exif PkgConfig::qpdf PkgConfig::qrencode PkgConfig::turbojpeg)
set(needs_http $<LINK_ONLY:PkgConfig::httplib> OpenSSL::SSL OpenSSL::Crypto nlohmann_json::nlohmann_json)
set(needs_cli CLI11::CLI11 nlohmann_json::nlohmann_json)

# Files written by the build (embed.cmake) belong to the room that declares them.
set(generated_book ${TAILBLOCK_MIGRATION_SOURCE})
set(generated_http ${TAILBLOCK_ASSET_SOURCE})

set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/rooms.txt)
file(STRINGS src/rooms.txt TAILBLOCK_ROOMS)

# What most files include and never change, compiled once (docs/decisions/0014-compile-shared-headers-once.md). Off for
# clang-tidy and where each file shall prove that it includes what it uses.
option(TAILBLOCK_PREFIX "Compile the standard headers that most files include once" ON)
if(TAILBLOCK_PREFIX)
  add_library(tailblock_prefix OBJECT ${PROJECT_SOURCE_DIR}/cmake/prefix.cpp)
  target_link_libraries(tailblock_prefix PRIVATE tailblock_house)
  target_precompile_headers(tailblock_prefix PRIVATE <algorithm> <array> <chrono> <cmath> <functional> <map> <memory>
                            <optional> <span> <string> <string_view> <vector>)
endif()

set(rooms_above "")  # libraries of the rooms already made
foreach(room IN LISTS TAILBLOCK_ROOMS)
  file(GLOB sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/${room}/*.cpp)
  list(REMOVE_ITEM sources ${PROJECT_SOURCE_DIR}/src/cli/main.cpp)
  list(APPEND sources ${generated_${room}})
  if(sources)
    add_library(tailblock_${room} STATIC ${sources})
    target_link_libraries(tailblock_${room} PUBLIC tailblock_house ${rooms_above} ${needs_${room}})
    if(TAILBLOCK_PREFIX)
      target_precompile_headers(tailblock_${room} REUSE_FROM tailblock_prefix)
    endif()
    list(PREPEND rooms_above tailblock_${room})
  endif()
  set(rooms_to_${room} ${rooms_above})  # this room and those above it
endforeach()

# The HTTP library carries the macros that Debian built it with. The two files that see it see them, and so go without the
# precompiled headers.
set_source_files_properties(
  ${PROJECT_SOURCE_DIR}/src/http/server.cpp ${PROJECT_SOURCE_DIR}/tests/http/served_shop_test.cpp
  PROPERTIES COMPILE_OPTIONS "${httplib_CFLAGS_OTHER}" SKIP_PRECOMPILE_HEADERS ON)

# Its tiles stay in registers only when their small loops are unrolled whole.
set_source_files_properties(${PROJECT_SOURCE_DIR}/src/body/dense_front.cpp PROPERTIES COMPILE_OPTIONS -O3
                            SKIP_PRECOMPILE_HEADERS ON)

set(TAILBLOCK_PROGRAM ${PROJECT_BINARY_DIR}/tailblock)
file(GLOB main_file CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/cli/main.cpp)
if(main_file)
  add_executable(tailblock ${main_file})
  target_link_libraries(tailblock PRIVATE tailblock_house ${rooms_to_cli} CLI11::CLI11)
endif()
