#pragma once

#include <cstdint>
#include <functional>
#include <iosfwd>
#include <map>
#include <string>
#include <string_view>

namespace tailblock {

/// Writes files one after the other in the POSIX ustar format (IEEE Std 1003.1, pax, "ustar Interchange Format"): plain
/// files, owned by nobody, of the first second of 1970, so that the same files are the same bytes.
class TarWriter {
 public:
  /// `out` can be sought in: a file's size is written once its bytes are.
  explicit TarWriter(std::ostream& out) : out_(out) {}

  struct Written {
    std::uint64_t bytes = 0;
    std::string sha256;
  };
  using Write = std::function<void(std::string_view)>;
  /// Adds a file, whose bytes `fill` hands piece by piece to the function it is given.
  /// @throws Refused for a name longer than 100 bytes or a file of 8 GiB, StorageFault when the disk refuses.
  Written add(const std::string& name, const std::function<void(const Write&)>& fill);
  /// Ends the archive.
  void finish();

 private:
  void put(std::string_view bytes);
  std::ostream& out_;
};

/// The files of a ustar archive, by name. Only plain files without a prefix are taken.
class TarReader {
 public:
  /// Reads every header. `in` can be sought in and outlives this.
  /// @throws Refused as `archive: byte 1536: the header's checksum is wrong`.
  explicit TarReader(std::istream& in);

  struct Entry {
    std::uint64_t at = 0, bytes = 0;
  };
  [[nodiscard]] const std::map<std::string, Entry>& entries() const { return entries_; }
  /// Hands the bytes of one file over, piece by piece.
  void read(const std::string& name, const std::function<void(std::string_view)>& take) const;
  [[nodiscard]] std::string whole(const std::string& name) const;

 private:
  void read_headers();
  std::istream& in_;
  std::uint64_t size_ = 0;
  std::map<std::string, Entry> entries_;
};

}  // namespace tailblock
