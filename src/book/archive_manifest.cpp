#include "book/archive_manifest.h"

#include <climits>
#include <nlohmann/json.hpp>

#include "quantity/refused.h"

namespace tailblock {
namespace {

using nlohmann::ordered_json;

constexpr const char* format_name = "tailblock archive";
constexpr int format_number = 1;

[[noreturn]] void refuse(const std::string& why) { throw Refused(std::string(manifest_name) + ": " + why); }

const ordered_json& member(const ordered_json& object, const char* key) {
  const auto found = object.find(key);
  if (found == object.end()) refuse(std::string(key) + " is missing");
  return *found;
}

std::int64_t count_in(const ordered_json& object, const char* key, std::int64_t most) {
  const ordered_json& value = member(object, key);
  if (!value.is_number_integer() || value.get<std::int64_t>() < 0 || value.get<std::int64_t>() > most) {
    refuse(std::string(key) + ": a whole number from 0 to " + std::to_string(most) + " was expected");
  }
  return value.get<std::int64_t>();
}

std::string text_in(const ordered_json& object, const char* key) {
  const ordered_json& value = member(object, key);
  if (!value.is_string()) refuse(std::string(key) + ": text was expected");
  return value.get<std::string>();
}

void require_keys(const ordered_json& object, std::size_t expected) {
  if (object.size() != expected) refuse("it has keys that the format does not know");
}

ArchiveFile file_in(const ordered_json& entry) {
  if (!entry.is_object()) refuse("files: an object a file was expected");
  ArchiveFile file{.name = text_in(entry, "name"),
                   .bytes = static_cast<std::uint64_t>(count_in(entry, "bytes", INT64_MAX)),
                   .sha256 = text_in(entry, "sha256")};
  if (entry.contains("rows")) file.rows = count_in(entry, "rows", INT64_MAX);
  require_keys(entry, file.rows ? 4 : 3);
  return file;
}

}  // namespace

std::string manifest_text(const ArchiveManifest& manifest) {
  ordered_json files = ordered_json::array();
  for (const ArchiveFile& file : manifest.files) {
    ordered_json entry{{"name", file.name}, {"bytes", file.bytes}, {"sha256", file.sha256}};
    if (file.rows) entry["rows"] = *file.rows;
    files.push_back(std::move(entry));
  }
  const ordered_json all{{"format", format_name},
                         {"format_number", format_number},
                         {"schema_number", manifest.schema_number},
                         {"files", std::move(files)}};
  return all.dump(1) + '\n';
}

ArchiveManifest manifest_of_text(const std::string& text) {
  const ordered_json all = ordered_json::parse(text, nullptr, false);
  if (!all.is_object()) refuse("a JSON object was expected");
  if (text_in(all, "format") != format_name) refuse("format: \"" + std::string(format_name) + "\" was expected");
  const std::int64_t number = count_in(all, "format_number", INT_MAX);
  if (number != format_number) {
    refuse("format_number: " + std::to_string(number) + " is not known to this program, which reads " +
           std::to_string(format_number));
  }
  require_keys(all, 4);
  ArchiveManifest manifest{.schema_number = static_cast<int>(count_in(all, "schema_number", INT_MAX)), .files = {}};
  const ordered_json& files = member(all, "files");
  if (!files.is_array()) refuse("files: a list was expected");
  for (const ordered_json& entry : files) manifest.files.push_back(file_in(entry));
  return manifest;
}

}  // namespace tailblock
