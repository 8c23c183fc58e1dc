# Turns the tables, the pages and the book's migrations into sources, so that the shop runs one file
# (docs/decisions/0004-assets-inside-the-program.md). A changed, new or removed input is seen at the next build.

function(embed_sources result writer)
  set(output ${PROJECT_BINARY_DIR}/embedded/${writer}.cpp)
  set(list_file ${PROJECT_BINARY_DIR}/embedded/${writer}.list)
  list(SORT ARGN)
  list(JOIN ARGN "\n" lines)
  file(CONFIGURE OUTPUT ${list_file} CONTENT "${lines}\n" @ONLY)
  add_custom_command(
    OUTPUT ${output}
    COMMAND ${CMAKE_COMMAND} -DROOT=${PROJECT_SOURCE_DIR} -DLIST=${list_file} -DOUTPUT=${output}
            -P ${PROJECT_SOURCE_DIR}/cmake/write_${writer}.cmake
    DEPENDS ${ARGN} ${list_file} ${PROJECT_SOURCE_DIR}/cmake/write_${writer}.cmake
            ${PROJECT_SOURCE_DIR}/cmake/incbin.cmake
    COMMENT "Embedding ${writer}"
    VERBATIM)
  set_source_files_properties(${output} PROPERTIES OBJECT_DEPENDS "${ARGN}")
  set(${result} ${output} PARENT_SCOPE)
endfunction()

file(GLOB_RECURSE tables CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/data/*.csv)
file(GLOB_RECURSE pages CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/web/dist/*)
file(GLOB migrations CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/book/migrations/*.sql)

embed_sources(TAILBLOCK_ASSET_SOURCE assets ${tables} ${pages})
embed_sources(TAILBLOCK_MIGRATION_SOURCE migrations ${migrations})
