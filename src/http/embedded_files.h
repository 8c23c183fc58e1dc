#pragma once

#include <span>
#include <string_view>

namespace tailblock {

/// One file that the build put into the program: a table of `data/` or a built page of `web/dist/`.
struct EmbeddedFile {
  std::string_view path;          ///< `data/species.csv`; `web/index.html` for web/dist/index.html
  std::string_view content;       ///< the bytes as they were at the build
  std::string_view content_hash;  ///< first 16 hexadecimal digits of the SHA-256 of `content`
};

/// Every embedded file, ordered by its place in the repository. Without a built web side only `data/` is there.
[[nodiscard]] std::span<const EmbeddedFile> embedded_files();

}  // namespace tailblock
