#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace tailblock {

/// A built page, or a part of one, as it is sent.
struct PageFile {
  std::string_view content;
  std::string content_type;
  std::string entity_tag;  ///< quoted, of these very bytes
  bool is_compressed = false;
  bool is_asset = false;  ///< named by its content: whoever has it need not ask again
};

/// What is sent for `path`: the file of that name, else the first page, which shows what its address asks for.
/// @param takes_gzip the reader unpacks gzip, and gets the file as the build packed it, where packing made it smaller.
/// @return nothing when the pages are not built into the program.
[[nodiscard]] std::optional<PageFile> page_file(std::string_view path, bool takes_gzip);

}  // namespace tailblock
