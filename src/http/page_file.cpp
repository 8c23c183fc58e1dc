#include "http/page_file.h"

#include <algorithm>
#include <array>
#include <utility>

#include "http/embedded_files.h"

namespace tailblock {
namespace {

std::string content_type(std::string_view path) {
  constexpr std::pair<std::string_view, std::string_view> types[] = {{".html", "text/html; charset=utf-8"},
                                                                     {".js", "text/javascript"},
                                                                     {".css", "text/css"},
                                                                     {".svg", "image/svg+xml"},
                                                                     {".woff2", "font/woff2"},
                                                                     {".png", "image/png"},
                                                                     {".json", "application/json"},
                                                                     {".webmanifest", "application/manifest+json"}};
  for (const auto& [ending, type] : types) {
    if (path.ends_with(ending)) return std::string(type);
  }
  return "application/octet-stream";
}

const EmbeddedFile* embedded_page(std::string_view path) {
  const auto files = embedded_files();
  const auto found = std::ranges::find_if(
      files, [&](const EmbeddedFile& file) { return file.path.starts_with("web/") && file.path.substr(3) == path; });
  return found == files.end() ? nullptr : &*found;
}

}  // namespace

std::optional<PageFile> page_file(std::string_view path, std::string_view accepted) {
  constexpr std::string_view first_page = "/index.html";
  constexpr std::array<std::pair<std::string_view, std::string_view>, 2> packings{{{"br", ".br"}, {"gzip", ".gz"}}};
  const EmbeddedFile* sent = embedded_page(path);
  if (!sent) sent = embedded_page(path = first_page);
  if (!sent) return std::nullopt;
  PageFile file{.content = {}, .content_type = content_type(path), .entity_tag = {}, .encoding = {}};
  for (const auto& [encoding, ending] : packings) {
    if (accepted.find(encoding) == std::string_view::npos) continue;
    const EmbeddedFile* packed = embedded_page(std::string(path) + std::string(ending));
    if (!packed) continue;
    sent = packed;
    file.encoding = encoding;
    break;
  }
  file.content = sent->content;
  file.entity_tag = "\"" + std::string(sent->content_hash) + "\"";
  file.is_asset = path != first_page;
  return file;
}

}  // namespace tailblock
