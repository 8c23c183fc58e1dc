#pragma once

#include <functional>
#include <istream>
#include <string>
#include <string_view>

#include "book/archive_manifest.h"
#include "book/archive_tar.h"

namespace tailblock {

/// An archive whose files are all there, no other beside them, each with the bytes that its manifest says.
class ArchiveContents {
 public:
  /// Reads the archive from end to end. `in` outlives this.
  /// @throws Refused naming the file and what is wrong with it.
  explicit ArchiveContents(std::istream& in);

  [[nodiscard]] const ArchiveManifest& manifest() const { return manifest_; }
  /// @throws Refused when the archive has no such file.
  [[nodiscard]] std::uint64_t bytes_of(const std::string& name) const;
  [[nodiscard]] std::string whole(const std::string& name) const { return tar_.whole(name); }
  /// Hands every line over with its number, the first being 1. What `take` refuses is refused with the file's name and
  /// the line's number before it.
  void each_line(const std::string& name, const std::function<void(std::string_view)>& take) const;

 private:
  TarReader tar_;
  ArchiveManifest manifest_;
};

/// A name of the archive in a line for a person: in quotes, whatever bytes it is made of.
[[nodiscard]] std::string name_in_words(const std::string& name);

}  // namespace tailblock
