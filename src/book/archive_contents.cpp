#include "book/archive_contents.h"

#include <nlohmann/json.hpp>
#include <set>

#include "book/sha256.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

[[noreturn]] void refuse(const std::string& why) { throw Refused("archive: " + why); }

ArchiveManifest manifest_in(const TarReader& tar) {
  if (!tar.entries().contains(manifest_name)) refuse(std::string(manifest_name) + " is missing");
  try {
    return manifest_of_text(tar.whole(manifest_name));
  } catch (const Refused& refused) {
    refuse(refused.what());
  }
}

std::string sha256_of(const TarReader& tar, const std::string& name) {
  RunningSha256 sum;
  tar.read(name, [&](std::string_view piece) { sum.take(piece); });
  return sum.digits();
}

void require_whole(const TarReader& tar, const ArchiveFile& file) {
  const auto entry = tar.entries().find(file.name);
  if (entry == tar.entries().end()) refuse(name_in_words(file.name) + " is missing; the manifest lists it");
  if (entry->second.bytes != file.bytes) {
    refuse(name_in_words(file.name) + " has " + std::to_string(entry->second.bytes) + " bytes; the manifest says " +
           std::to_string(file.bytes));
  }
  if (sha256_of(tar, file.name) != file.sha256) {
    refuse(name_in_words(file.name) + " is not as it was written: its SHA-256 is not the manifest's");
  }
}

}  // namespace

std::string name_in_words(const std::string& name) {
  using nlohmann::json;
  return json(name).dump(-1, ' ', true, json::error_handler_t::replace);
}

ArchiveContents::ArchiveContents(std::istream& in) : tar_(in), manifest_(manifest_in(tar_)) {
  std::set<std::string> listed{manifest_name};
  for (const ArchiveFile& file : manifest_.files) {
    if (!listed.insert(file.name).second) refuse(name_in_words(file.name) + " stands twice in the manifest");
  }
  for (const auto& [name, entry] : tar_.entries()) {
    if (!listed.contains(name)) refuse(name_in_words(name) + " is not in the manifest");
  }
  for (const ArchiveFile& file : manifest_.files) require_whole(tar_, file);
}

std::uint64_t ArchiveContents::bytes_of(const std::string& name) const {
  const auto entry = tar_.entries().find(name);
  if (entry == tar_.entries().end()) refuse(name_in_words(name) + " is missing");
  return entry->second.bytes;
}

void ArchiveContents::each_line(const std::string& name, const std::function<void(std::string_view)>& take) const {
  std::string line;
  int number = 1;
  const auto refuse_line = [&](const std::string& why) {
    refuse(name + ": line " + std::to_string(number) + ": " + why);
  };
  tar_.read(name, [&](std::string_view piece) {
    for (auto end = piece.find('\n'); end != std::string_view::npos; end = piece.find('\n')) {
      line += piece.substr(0, end);
      try {
        take(line);
      } catch (const Refused& refused) {
        refuse_line(refused.what());
      }
      line.clear();
      ++number;
      piece.remove_prefix(end + 1);
    }
    line += piece;
  });
  if (!line.empty()) refuse_line("the line has no end");
}

}  // namespace tailblock
