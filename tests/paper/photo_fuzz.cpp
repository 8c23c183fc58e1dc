// Fuzz target: any bytes are made into an upright photo within its bounds, or refused in one line. The first byte puts the
// beginning of a JPEG or a PNG before the others half of the time, so that more of them reach a decoder.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "paper/photo.h"
#include "quantity/refused.h"

using namespace tailblock;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
  if (count == 0) return 0;
  std::string given;
  if (bytes[0] % 4 == 1) given = "\xff\xd8\xff";
  if (bytes[0] % 4 == 3) given = std::string("\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16);
  given.append(reinterpret_cast<const char*>(bytes) + 1, count - 1);
  const PhotoLimits limits{.bytes = 1'000'000, .pixels = 1'000'000, .kept_side_px = 64, .thumbnail_side_px = 16};
  try {
    const UprightPhoto photo = upright_photo(given, limits);
    if (photo.width_px < 1 || photo.width_px > 64 || photo.height_px < 1 || photo.height_px > 64) std::abort();
    if (photo.whole.empty() || photo.thumbnail.empty()) std::abort();
  } catch (const Refused& refused) {
    if (std::string_view(refused.what()).find('\n') != std::string_view::npos) std::abort();
  }
  return 0;
}
