# Writes the source of migration_files() (src/book/migration_files.h) from src/book/migrations/0001-what-it-does.sql
# and so on. A name of another form, or a gap in the numbers, stops the build.
include(${CMAKE_CURRENT_LIST_DIR}/incbin.cmake)

file(STRINGS ${LIST} files)
set(number 0)
set(rows "")
foreach(file IN LISTS files)
  get_filename_component(stem ${file} NAME_WE)
  math(EXPR expected "${number} + 1")
  if(NOT stem MATCHES "^([0-9][0-9][0-9][0-9])-([a-z0-9-]+)$")
    message(FATAL_ERROR "${file}: a migration is named 0001-what-it-does.sql")
  endif()
  set(found ${CMAKE_MATCH_1})
  set(name ${CMAKE_MATCH_2})
  if(NOT found EQUAL expected)
    message(FATAL_ERROR "${file}: expected migration number ${expected}; numbers have no gaps")
  endif()
  file(SHA256 ${file} hash)
  string(SUBSTRING ${hash} 0 16 hash)
  incbin(${number} ${file} ${hash})
  string(APPEND rows "      {${expected}, \"${name}\", {begin_${number}, end_${number}}},\n")
  set(number ${expected})
endforeach()

incbin_preamble(book/migration_files.h)
file(WRITE ${OUTPUT} "${preamble}
namespace tailblock {

std::span<const MigrationFile> migration_files() {
  static const std::array<MigrationFile, ${number}> files{{
${rows}  }};
  return files;
}

}  // namespace tailblock
")
