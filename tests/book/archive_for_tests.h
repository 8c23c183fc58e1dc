#pragma once

#include <fstream>
#include <iterator>
#include <map>
#include <sstream>
#include <string>

#include "book/sha256.h"
#include "book/archive_tar.h"
#include "book_rows.h"
#include "shop_for_tests.h"

namespace tailblock::testing {

/// The book that the program with this schema number left, kept in tests/book/books as text.
inline std::filesystem::path book_left_with(const TemporaryFolder& folder, int number) {
  const std::string digits = std::to_string(number);
  const auto file = folder / ("left" + digits + ".book");
  Session(file, Session::May::write)
      .script(repository_file("tests/book/books/" + std::string(4 - digits.size(), '0') + digits + ".sql"));
  return file;
}

inline std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

inline void put_bytes(const std::filesystem::path& file, std::string_view bytes) {
  std::ofstream(file, std::ios::binary) << bytes;
}

using ArchiveParts = std::map<std::string, std::string>;

inline ArchiveParts parts_of(const std::filesystem::path& archive) {
  std::ifstream in(archive, std::ios::binary);
  const TarReader tar(in);
  ArchiveParts parts;
  for (const auto& [name, entry] : tar.entries()) parts[name] = tar.whole(name);
  return parts;
}

inline std::string archive_of(const ArchiveParts& parts) {
  std::ostringstream out;
  TarWriter tar(out);
  for (const auto& [name, bytes] : parts) tar.add(name, [&](const TarWriter::Write& write) { write(bytes); });
  tar.finish();
  return out.str();
}

inline void replace(std::string& text, const std::string& old, const std::string& fresh) {
  const auto at = text.find(old);
  ASSERT_NE(at, std::string::npos) << old;
  text.replace(at, old.size(), fresh);
}

/// Changes a file of the archive and makes the manifest agree with it, so that what is in it is looked at.
inline void change_and_sign(ArchiveParts& parts, const std::string& name, const std::string& old,
                            const std::string& fresh) {
  const auto sum_of = [](const std::string& bytes) {
    RunningSha256 sum;
    sum.take(bytes);
    return sum.digits();
  };
  std::string& part = parts.at(name);
  const std::string sum = sum_of(part), size = std::to_string(part.size());
  replace(part, old, fresh);
  std::string& manifest = parts.at("manifest.json");
  const auto at = manifest.find("\"sha256\": \"" + sum);
  ASSERT_NE(at, std::string::npos);
  manifest.replace(at, 11 + sum.size(), "\"sha256\": \"" + sum_of(part));
  const auto size_at = manifest.rfind("\"bytes\": " + size, at);
  ASSERT_NE(size_at, std::string::npos);
  manifest.replace(size_at, 9 + size.size(), "\"bytes\": " + std::to_string(part.size()));
}

}  // namespace tailblock::testing
