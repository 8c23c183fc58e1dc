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
  std::string encoding;    ///< as HTTP names it; empty: as it is
  bool is_asset = false;   ///< named by its content: whoever has it need not ask again
};

/// What is sent for `path`: the file of that name, else the first page, which shows what its address asks for.
/// @param accepted the reader's Accept-Encoding: it gets the smallest of what the build packed and it unpacks.
/// @return nothing when the pages are not built into the program.
[[nodiscard]] std::optional<PageFile> page_file(std::string_view path, std::string_view accepted);

}  // namespace tailblock
