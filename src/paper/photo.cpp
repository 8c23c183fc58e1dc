#include "paper/photo.h"

#include <cairo.h>
#include <libexif/exif-data.h>
#include <turbojpeg.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>

#include "quantity/refused.h"

namespace tailblock {
namespace {

using Decoder = std::unique_ptr<void, decltype(&tjDestroy)>;
using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using Pen = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;
using Camera = std::unique_ptr<ExifData, decltype(&exif_data_unref)>;

// cairo's RGB24 lies in memory as blue, green, red, nothing on every machine whose low byte comes first.
constexpr int pixel_order = TJPF_BGRX;
constexpr int jpeg_quality = 87;

struct Size {
  int width = 0, height = 0;
};

[[noreturn]] void refuse(const std::string& why) { throw Refused("photo: " + why); }

std::string millions(double count) {
  const auto tenths = static_cast<long long>(std::ceil(count / 1e5));
  std::string text = std::to_string(tenths / 10);
  text += ".";
  text += std::to_string(tenths % 10);
  return text;
}

void require_size(const Size& size, const PhotoLimits& limits) {
  if (size.width < 1 || size.height < 1) refuse("it has no size");
  const double pixels = static_cast<double>(size.width) * size.height;
  if (pixels > limits.pixels || std::max(size.width, size.height) > limits.side_px) {
    std::string line = std::to_string(size.width);
    line += " by ";
    line += std::to_string(size.height);
    line += " pixels are more than the ";
    line += std::to_string(limits.pixels / 1'000'000);
    line += " million, or the ";
    line += std::to_string(limits.side_px);
    line += " a side, that are taken";
    refuse(line);
  }
}

Surface blank(const Size& size) {
  Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, size.width, size.height), &cairo_surface_destroy);
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) refuse("there is no memory for its pixels");
  return surface;
}

Size size_of(const Surface& surface) {
  return {cairo_image_surface_get_width(surface.get()), cairo_image_surface_get_height(surface.get())};
}

/// EXIF's number for how the picture lies: 1 upright, 3 upside down, 6 to be turned right, 8 to be turned left; 2, 4, 5
/// and 7 are those seen in a mirror.
int orientation(std::string_view jpeg) {
  const Camera camera(
      exif_data_new_from_data(reinterpret_cast<const unsigned char*>(jpeg.data()), static_cast<unsigned>(jpeg.size())),
      &exif_data_unref);
  if (!camera) return 1;
  const ExifEntry* entry = exif_content_get_entry(camera->ifd[EXIF_IFD_0], EXIF_TAG_ORIENTATION);
  if (entry == nullptr || entry->format != EXIF_FORMAT_SHORT || entry->components < 1) return 1;
  const int number = exif_get_short(entry->data, exif_data_get_byte_order(camera.get()));
  return 1 <= number && number <= 8 ? number : 1;
}

/// The smallest eighths of the size whose longer side is still as long as wanted: the decoder then makes no more pixels
/// than are needed.
Size decoded_size(const Size& whole, int wanted_side) {
  for (int eighths = 1; eighths < 8; ++eighths) {
    const tjscalingfactor factor{eighths, 8};
    const Size scaled{TJSCALED(whole.width, factor), TJSCALED(whole.height, factor)};
    if (std::max(scaled.width, scaled.height) >= wanted_side) return scaled;
  }
  return whole;
}

struct JpegHead {
  Size size;
  int colours = 0;
};

JpegHead head_of(const Decoder& decoder, std::string_view jpeg) {
  const auto* data = reinterpret_cast<const unsigned char*>(jpeg.data());
  JpegHead head;
  int sampling = 0;
  if (tjDecompressHeader3(decoder.get(), data, jpeg.size(), &head.size.width, &head.size.height, &sampling,
                          &head.colours) != 0) {
    refuse("its beginning is not that of a JPEG that can be read");
  }
  return head;
}

Surface decoded_jpeg(std::string_view bytes, const PhotoLimits& limits) {
  const Decoder decoder(tjInitDecompress(), &tjDestroy);
  const auto* data = reinterpret_cast<const unsigned char*>(bytes.data());
  const auto [whole, colours] = head_of(decoder, bytes);
  require_size(whole, limits);
  if (colours == TJCS_CMYK || colours == TJCS_YCCK) refuse("it is in printing colours, not those of a camera");
  const Size size = decoded_size(whole, limits.kept_side_px);
  Surface surface = blank(size);
  cairo_surface_flush(surface.get());
  const int code =
      tjDecompress2(decoder.get(), data, bytes.size(), cairo_image_surface_get_data(surface.get()), size.width,
                    cairo_image_surface_get_stride(surface.get()), size.height, pixel_order, TJFLAG_LIMITSCANS);
  const std::string said = code == 0 ? "" : tjGetErrorStr2(decoder.get());
  // A camera's slip that costs no pixel is a warning and is let pass; a missing end is not.
  if (said.find("remature end") != std::string::npos) refuse("it is cut short");
  if (code != 0 && tjGetErrorCode(decoder.get()) == TJERR_FATAL) refuse("it is damaged and cannot be read");
  cairo_surface_mark_dirty(surface.get());
  return surface;
}

struct Reading {
  std::string_view left;
  bool ended = false;
};

cairo_status_t give_bytes(void* closure, unsigned char* data, unsigned length) {
  auto& reading = *static_cast<Reading*>(closure);
  if (reading.left.size() < length) {
    reading.ended = true;
    return CAIRO_STATUS_READ_ERROR;
  }
  std::copy_n(reading.left.data(), length, data);
  reading.left.remove_prefix(length);
  return CAIRO_STATUS_SUCCESS;
}

constexpr std::string_view png_mark = "\x89PNG\r\n\x1a\n";

/// Width and height stand in the first chunk, before any pixel (PNG specification, IHDR).
Size png_size(std::string_view bytes) {
  if (bytes.size() < 24 || bytes.substr(12, 4) != "IHDR") refuse("its beginning is not that of a PNG that can be read");
  const auto number = [&](std::size_t at) {
    unsigned value = 0;
    for (std::size_t k = at; k < at + 4; ++k) value = value << 8U | static_cast<unsigned char>(bytes[k]);
    return static_cast<int>(std::min(value, 1'000'000'000U));
  };
  return {number(16), number(20)};
}

Surface decoded_png(std::string_view bytes, const PhotoLimits& limits) {
  require_size(png_size(bytes), limits);
  Reading reading{bytes};
  const Surface decoded(cairo_image_surface_create_from_png_stream(give_bytes, &reading), &cairo_surface_destroy);
  if (cairo_surface_status(decoded.get()) != CAIRO_STATUS_SUCCESS) {
    refuse(reading.ended ? "it is cut short" : "it is damaged and cannot be read");
  }
  Surface on_white = blank(size_of(decoded));
  const Pen pen(cairo_create(on_white.get()), &cairo_destroy);
  cairo_set_source_rgb(pen.get(), 1, 1, 1);
  cairo_paint(pen.get());
  cairo_set_source_surface(pen.get(), decoded.get(), 0, 0);
  cairo_paint(pen.get());
  return on_white;
}

/// Where a picture of size 1 by 1 goes: x' = xx x + xy y + x0, y' = yx x + yy y + y0.
cairo_matrix_t turn_of(int orientation) {
  constexpr std::array<cairo_matrix_t, 8> turns{{{1, 0, 0, 1, 0, 0},     // upright
                                                 {-1, 0, 0, 1, 1, 0},    // seen in a mirror
                                                 {-1, 0, 0, -1, 1, 1},   // upside down
                                                 {1, 0, 0, -1, 0, 1},    // upside down in a mirror
                                                 {0, 1, 1, 0, 0, 0},     // first row at the left
                                                 {0, 1, -1, 0, 1, 0},    // first row at the right
                                                 {0, -1, -1, 0, 1, 1},   // first row at the right, in a mirror
                                                 {0, -1, 1, 0, 0, 1}}};  // first row at the left, in a mirror
  return turns.at(static_cast<std::size_t>(orientation - 1));
}

/// The picture turned upright, its longer side at most `side` pixels.
Surface redrawn(const Surface& picture, int orientation, int side) {
  const Size lies = size_of(picture);
  const bool turned = orientation >= 5;
  const Size stands{turned ? lies.height : lies.width, turned ? lies.width : lies.height};
  const double shrink = std::min(1.0, static_cast<double>(side) / std::max(stands.width, stands.height));
  const auto pixels = [&](int of) { return std::max(1, static_cast<int>(std::lround(of * shrink))); };
  const Size size{pixels(stands.width), pixels(stands.height)};
  Surface surface = blank(size);
  const Pen pen(cairo_create(surface.get()), &cairo_destroy);
  const cairo_matrix_t turn = turn_of(orientation);
  cairo_scale(pen.get(), size.width, size.height);
  cairo_transform(pen.get(), &turn);
  cairo_scale(pen.get(), 1.0 / lies.width, 1.0 / lies.height);
  cairo_set_source_surface(pen.get(), picture.get(), 0, 0);
  cairo_pattern_set_filter(cairo_get_source(pen.get()), CAIRO_FILTER_GOOD);
  cairo_pattern_set_extend(cairo_get_source(pen.get()), CAIRO_EXTEND_PAD);  // no soft edge toward nothing
  cairo_paint(pen.get());
  cairo_surface_flush(surface.get());
  return surface;
}

std::string as_jpeg(const Surface& picture) {
  const Decoder encoder(tjInitCompress(), &tjDestroy);
  const Size size = size_of(picture);
  unsigned char* bytes = nullptr;
  unsigned long count = 0;
  const int code = tjCompress2(encoder.get(), cairo_image_surface_get_data(picture.get()), size.width,
                               cairo_image_surface_get_stride(picture.get()), size.height, pixel_order, &bytes, &count,
                               TJSAMP_420, jpeg_quality, TJFLAG_ACCURATEDCT);
  const std::unique_ptr<unsigned char, decltype(&tjFree)> owned(bytes, &tjFree);
  if (code != 0) refuse("it cannot be written as JPEG");
  return {reinterpret_cast<const char*>(bytes), count};
}

bool is_jpeg(std::string_view bytes) { return bytes.starts_with("\xff\xd8\xff"); }

}  // namespace

JpegSize jpeg_size(std::string_view jpeg) {
  const Decoder decoder(tjInitDecompress(), &tjDestroy);
  const Size size = head_of(decoder, jpeg).size;
  return {.width_px = size.width, .height_px = size.height};
}

UprightPhoto upright_photo(std::string_view bytes, const PhotoLimits& limits) {
  if (bytes.empty()) refuse("it is empty");
  if (bytes.size() > limits.bytes) {
    std::string line = millions(static_cast<double>(bytes.size()));
    line += " MB are more than the ";
    line += millions(static_cast<double>(limits.bytes));
    line += " MB that are taken";
    refuse(line);
  }
  const bool png = bytes.starts_with(png_mark);
  if (!png && !is_jpeg(bytes)) refuse("it is neither a JPEG nor a PNG");
  const Surface lies = png ? decoded_png(bytes, limits) : decoded_jpeg(bytes, limits);
  const Surface whole = redrawn(lies, png ? 1 : orientation(bytes), limits.kept_side_px);
  const Surface small = redrawn(whole, 1, limits.thumbnail_side_px);
  const Size size = size_of(whole);
  return {.whole = as_jpeg(whole), .thumbnail = as_jpeg(small), .width_px = size.width, .height_px = size.height};
}

}  // namespace tailblock
