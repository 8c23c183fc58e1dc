#pragma once

#include <string>
#include <string_view>

namespace tailblock {

/// The most that is taken, judged before a pixel is decoded.
struct PhotoLimits {
  std::size_t bytes = 24u << 20u;  ///< a phone's photo has 2 to 12 MB
  int pixels = 60'000'000;         ///< of the picture; a phone's has 8 to 50 million
  int side_px = 20000;
  int kept_side_px = 2560;  ///< the longer side as kept: a hairline crack still shows
  int thumbnail_side_px = 320;
};

/// A photo as the book keeps it: JPEG, upright, without the camera's own notes.
struct UprightPhoto {
  std::string whole, thumbnail;
  int width_px = 0, height_px = 0;  ///< of `whole`
};

/// How many pixels a JPEG is wide and high.
struct JpegSize {
  int width_px = 0, height_px = 0;
};
/// @throws Refused when it is not a JPEG.
[[nodiscard]] JpegSize jpeg_size(std::string_view jpeg);

/// Turns a photo as a camera gives it, JPEG or PNG, into one as the book keeps it.
///
/// The picture is decoded and written anew, so nothing but its pixels goes along: no place, no time, no serial number,
/// no colour profile (colours are taken as sRGB). It is turned as its EXIF orientation says (CIPA DC-008, tag 0x0112,
/// from memory; all eight cases are tested) and made smaller where its longer side is above `kept_side_px`. A PNG's
/// orientation, which cameras do not write, is not looked for.
/// @throws Refused in one line: not a photo, too large, or cut short.
[[nodiscard]] UprightPhoto upright_photo(std::string_view bytes, const PhotoLimits& limits = {});

}  // namespace tailblock
