#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tailblock {

/// A file of an archive as `manifest.json` lists it.
struct ArchiveFile {
  std::string name;
  std::uint64_t bytes = 0;
  std::string sha256{};
  std::optional<std::int64_t> rows{};  ///< of a table
};

/// What an archive says of itself.
struct ArchiveManifest {
  int schema_number = 0;
  std::vector<ArchiveFile> files;  ///< every file but the manifest
};

inline constexpr const char* manifest_name = "manifest.json";
inline constexpr const char* archive_readme_name = "README.txt";

[[nodiscard]] std::string manifest_text(const ArchiveManifest& manifest);
/// @throws Refused naming the key that is not as docs/archive.md says.
[[nodiscard]] ArchiveManifest manifest_of_text(const std::string& text);

}  // namespace tailblock
