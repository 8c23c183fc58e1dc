# Writes the source of embedded_files() (src/http/embedded_files.h): data/**.csv as they are named in the repository,
# web/dist/** under web/.
include(${CMAKE_CURRENT_LIST_DIR}/incbin.cmake)

file(STRINGS ${LIST} files)
set(number 0)
set(rows "")
foreach(file IN LISTS files)
  file(RELATIVE_PATH path ${ROOT} ${file})
  string(REGEX REPLACE "^web/dist/" "web/" path ${path})
  file(SHA256 ${file} hash)
  string(SUBSTRING ${hash} 0 16 hash)
  incbin(${number} ${file} ${hash})
  string(APPEND rows "      {\"${path}\", {begin_${number}, end_${number}}, \"${hash}\"},\n")
  math(EXPR number "${number} + 1")
endforeach()

incbin_preamble(http/embedded_files.h)
file(WRITE ${OUTPUT} "${preamble}
namespace tailblock {

std::span<const EmbeddedFile> embedded_files() {
  static const std::array<EmbeddedFile, ${number}> files{{
${rows}  }};
  return files;
}

}  // namespace tailblock
")
