# Shared by the writers of embedded sources. `incbin` appends to `blobs` the assembler lines that lay one file's bytes
# between the symbols begin_N and end_N, and to `symbols` their declarations. The hash in the lines makes the text
# change when the bytes do.

function(incbin number file hash)
  string(APPEND blobs
    "    \"begin_${number}: .incbin \\\"${file}\\\"\\n\"  // ${hash}\n"
    "    \"end_${number}:\\n\"\n"
    "    \".byte 0\\n\"\n")
  string(APPEND symbols
    "extern const char begin_${number}[] asm(\"begin_${number}\");\n"
    "extern const char end_${number}[] asm(\"end_${number}\");\n")
  set(blobs "${blobs}" PARENT_SCOPE)
  set(symbols "${symbols}" PARENT_SCOPE)
endfunction()

# Assigns to `preamble` the part of the source that lays the bytes down and names them.
function(incbin_preamble header)
  set(preamble "// Written by the build; do not edit.\n#include \"${header}\"\n\n#include <array>\n")
  if(blobs)
    string(APPEND preamble
      "\nasm(\n    \".section .rodata\\n\"\n${blobs}    \".text\\n\");\n\nextern \"C\" {\n${symbols}}\n")
  endif()
  set(preamble "${preamble}" PARENT_SCOPE)
endfunction()
