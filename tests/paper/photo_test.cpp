#include "paper/photo.h"

#include <gtest/gtest.h>
#include <libexif/exif-data.h>
#include <turbojpeg.h>

#include <array>
#include <cmath>
#include <memory>
#include <string>
#include <vector>

#include "quantity/refused.h"

namespace tailblock {
namespace {

struct Colour {
  int red = 0, green = 0, blue = 0;
};

/// A picture in memory, three bytes a pixel, row by row.
struct Pixels {
  int width = 0, height = 0;
  std::vector<unsigned char> bytes;

  Pixels(int wide, int high)
      : width(wide), height(high), bytes(static_cast<std::size_t>(wide) * static_cast<std::size_t>(high) * 3) {}
  [[nodiscard]] std::size_t at(int x, int y) const {
    return (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)) * 3;
  }
  void set(int x, int y, const Colour& colour) {
    bytes[at(x, y)] = static_cast<unsigned char>(colour.red);
    bytes[at(x, y) + 1] = static_cast<unsigned char>(colour.green);
    bytes[at(x, y) + 2] = static_cast<unsigned char>(colour.blue);
  }
  [[nodiscard]] Colour get(int x, int y) const { return {bytes[at(x, y)], bytes[at(x, y) + 1], bytes[at(x, y) + 2]}; }
};

std::string jpeg_of(const Pixels& pixels, int flags = 0) {
  void* encoder = tjInitCompress();
  unsigned char* made = nullptr;
  unsigned long size = 0;
  tjCompress2(encoder, pixels.bytes.data(), pixels.width, 0, pixels.height, TJPF_RGB, &made, &size, TJSAMP_444, 95,
              flags);
  std::string bytes(reinterpret_cast<const char*>(made), size);
  tjFree(made);
  tjDestroy(encoder);
  return bytes;
}

Pixels pixels_of(const std::string& jpeg) {
  void* decoder = tjInitDecompress();
  const auto* data = reinterpret_cast<const unsigned char*>(jpeg.data());
  int width = 0, height = 0, sampling = 0, colours = 0;
  EXPECT_EQ(tjDecompressHeader3(decoder, data, jpeg.size(), &width, &height, &sampling, &colours), 0);
  Pixels pixels(width, height);
  EXPECT_EQ(tjDecompress2(decoder, data, jpeg.size(), pixels.bytes.data(), width, 0, height, TJPF_RGB, 0), 0);
  tjDestroy(decoder);
  return pixels;
}

/// An EXIF segment written by hand as the standard lays it out: big-endian TIFF with the orientation, a camera's
/// maker and, in a GPS directory, a latitude.
std::string exif_segment(int orientation) {
  const auto big2 = [](unsigned value) {
    return std::string{static_cast<char>(value >> 8U), static_cast<char>(value & 255U)};
  };
  const auto big4 = [&](unsigned value) { return big2(value >> 16U) + big2(value & 65535U); };
  const std::string maker("SECRETCAM\0", 10);
  std::string tiff = "MM" + big2(42) + big4(8);
  const unsigned directory = 8 + 2 + 3 * 12 + 4, maker_at = directory, gps_at = maker_at + 10,
                 latitude_at = gps_at + 2 + 2 * 12 + 4;
  tiff += big2(3);
  tiff += big2(0x010F) + big2(2) + big4(10) + big4(maker_at);
  tiff += big2(0x0112) + big2(3) + big4(1) + big2(static_cast<unsigned>(orientation)) + big2(0);
  tiff += big2(0x8825) + big2(4) + big4(1) + big4(gps_at);
  tiff += big4(0);
  tiff += maker;
  tiff += big2(2);
  tiff += big2(1) + big2(2) + big4(2) + std::string("N\0\0\0", 4);
  tiff += big2(2) + big2(5) + big4(3) + big4(latitude_at);
  tiff += big4(0);
  for (const unsigned part : {52U, 1U, 31U, 1U, 12U, 1U}) tiff += big4(part);
  const std::string body = std::string("Exif\0\0", 6) + tiff;
  return "\xff\xe1" + big2(static_cast<unsigned>(body.size()) + 2) + body;
}

std::string with_exif(const std::string& jpeg, int orientation) {
  return jpeg.substr(0, 2) + exif_segment(orientation) + jpeg.substr(2);
}

constexpr Colour red{220, 20, 20}, green{20, 200, 20}, blue{20, 20, 220}, yellow{230, 220, 20};

/// How the standard tells the eight cases: at which side of the upright picture the stored row 0 and column 0 are.
struct Case {
  int orientation;
  std::string row0, column0;
};
// CIPA DC-008 (Exif), Orientation, tag 0x0112: "the 0th row is at the visual top of the image, and the 0th column is
// the visual left-hand side", and so on through 8. From memory.
const std::array<Case, 8> cases{{{1, "top", "left"},
                                 {2, "top", "right"},
                                 {3, "bottom", "right"},
                                 {4, "bottom", "left"},
                                 {5, "left", "top"},
                                 {6, "right", "top"},
                                 {7, "right", "bottom"},
                                 {8, "left", "bottom"}}};

std::string opposite(const std::string& side) {
  if (side == "top") return "bottom";
  if (side == "bottom") return "top";
  return side == "left" ? "right" : "left";
}

/// The upright picture has red top left, green top right, blue bottom left, yellow bottom right.
Colour upright_corner(const std::string& one, const std::string& other) {
  const bool top = one == "top" || other == "top", left = one == "left" || other == "left";
  return top ? (left ? red : green) : (left ? blue : yellow);
}

/// The picture as a camera held so would store it: each stored corner has the colour of the upright corner it shows.
Pixels as_stored(const Case& which, int upright_width, int upright_height) {
  const bool turned = which.row0 == "left" || which.row0 == "right";
  Pixels stored(turned ? upright_height : upright_width, turned ? upright_width : upright_height);
  for (int y = 0; y < stored.height; ++y) {
    for (int x = 0; x < stored.width; ++x) {
      const std::string row_side = y < stored.height / 2 ? which.row0 : opposite(which.row0);
      const std::string column_side = x < stored.width / 2 ? which.column0 : opposite(which.column0);
      stored.set(x, y, upright_corner(row_side, column_side));
    }
  }
  return stored;
}

void expect_near(const Colour& found, const Colour& wanted, const std::string& where) {
  // 12 of 255: two JPEG passes over a flat field stay within that; the four colours are 180 apart.
  EXPECT_NEAR(found.red, wanted.red, 12) << where;
  EXPECT_NEAR(found.green, wanted.green, 12) << where;
  EXPECT_NEAR(found.blue, wanted.blue, 12) << where;
}

void expect_upright(const std::string& jpeg, int width, int height) {
  const Pixels picture = pixels_of(jpeg);
  ASSERT_EQ(picture.width, width);
  ASSERT_EQ(picture.height, height);
  expect_near(picture.get(width / 4, height / 4), red, "top left");
  expect_near(picture.get(3 * width / 4, height / 4), green, "top right");
  expect_near(picture.get(width / 4, 3 * height / 4), blue, "bottom left");
  expect_near(picture.get(3 * width / 4, 3 * height / 4), yellow, "bottom right");
}

TEST(Photo, every_one_of_the_eight_orientations_comes_out_upright) {
  for (const Case& which : cases) {
    SCOPED_TRACE("orientation " + std::to_string(which.orientation));
    const auto photo = upright_photo(with_exif(jpeg_of(as_stored(which, 320, 192)), which.orientation));
    EXPECT_EQ(photo.width_px, 320);
    EXPECT_EQ(photo.height_px, 192);
    expect_upright(photo.whole, 320, 192);
    expect_upright(photo.thumbnail, 320, 192);
  }
}

TEST(Photo, a_large_one_is_made_smaller_and_turned_in_one_go) {
  const PhotoLimits small{.kept_side_px = 200, .thumbnail_side_px = 50};
  for (const Case& which : cases) {
    SCOPED_TRACE("orientation " + std::to_string(which.orientation));
    const auto photo = upright_photo(with_exif(jpeg_of(as_stored(which, 960, 480)), which.orientation), small);
    expect_upright(photo.whole, 200, 100);
    expect_upright(photo.thumbnail, 50, 25);
  }
}

TEST(Photo, one_without_notes_or_with_a_number_that_means_nothing_is_taken_as_it_lies) {
  expect_upright(upright_photo(jpeg_of(as_stored(cases[0], 320, 192))).whole, 320, 192);
  for (const int nonsense : {0, 9, 77}) {
    expect_upright(upright_photo(with_exif(jpeg_of(as_stored(cases[0], 320, 192)), nonsense)).whole, 320, 192);
  }
}

TEST(Photo, nothing_of_the_cameras_own_notes_goes_along) {
  const std::string given = with_exif(jpeg_of(as_stored(cases[5], 320, 192)), 6);
  const auto read = [](const std::string& bytes) {
    return std::unique_ptr<ExifData, decltype(&exif_data_unref)>(
        exif_data_new_from_data(reinterpret_cast<const unsigned char*>(bytes.data()),
                                static_cast<unsigned>(bytes.size())),
        &exif_data_unref);
  };
  const auto before = read(given);
  ASSERT_NE(exif_content_get_entry(before->ifd[EXIF_IFD_GPS], static_cast<ExifTag>(EXIF_TAG_GPS_LATITUDE)), nullptr)
      << "the case itself has no place in it";
  const auto photo = upright_photo(given);
  for (const std::string& made : {photo.whole, photo.thumbnail}) {
    EXPECT_EQ(made.find("Exif"), std::string::npos);
    EXPECT_EQ(made.find("SECRETCAM"), std::string::npos);
    const auto after = read(made);
    EXPECT_EQ(exif_content_get_entry(after->ifd[EXIF_IFD_GPS], static_cast<ExifTag>(EXIF_TAG_GPS_LATITUDE)), nullptr);
    // Markers before the picture: a JPEG file's own (APP0), tables, the frame. No application segment, no comment.
    for (std::size_t at = 2; at + 4 < made.size();) {
      const auto marker = static_cast<unsigned char>(made[at + 1]);
      if (marker == 0xda) break;
      EXPECT_FALSE((0xe1 <= marker && marker <= 0xef) || marker == 0xfe) << "segment " << std::hex << int{marker};
      at += 2 + (static_cast<unsigned char>(made[at + 2]) << 8U | static_cast<unsigned char>(made[at + 3]));
    }
  }
}

TEST(Photo, the_same_photo_gives_the_same_bytes) {
  const std::string given = with_exif(jpeg_of(as_stored(cases[2], 640, 480)), 3);
  EXPECT_EQ(upright_photo(given).whole, upright_photo(given).whole);
}

void expect_refused(const std::string& bytes, const std::string& line, const PhotoLimits& limits = {}) {
  try {
    (void)upright_photo(bytes, limits);
    ADD_FAILURE() << "not refused; expected: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

/// A JPEG that says in its first lines that it is `width` by `height`, whatever it holds.
std::string claiming(std::string jpeg, unsigned width, unsigned height) {
  const std::size_t frame = jpeg.find("\xff\xc0");
  EXPECT_NE(frame, std::string::npos);
  jpeg[frame + 5] = static_cast<char>(height >> 8U);
  jpeg[frame + 6] = static_cast<char>(height & 255U);
  jpeg[frame + 7] = static_cast<char>(width >> 8U);
  jpeg[frame + 8] = static_cast<char>(width & 255U);
  return jpeg;
}

/// The first 33 bytes of a PNG that says it is 60,000 by 60,000.
const std::string huge_png("\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\xea\x60\0\0\xea\x60\x08\x02\0\0\0\0\0\0\0", 33);

TEST(Photo, what_is_no_photo_is_refused_in_one_line) {
  expect_refused("", "photo: it is empty");
  expect_refused("%PDF-1.7 a paper", "photo: it is neither a JPEG nor a PNG");
  expect_refused("GIF89a", "photo: it is neither a JPEG nor a PNG");
  expect_refused("\xff\xd8\xff nonsense", "photo: its beginning is not that of a JPEG that can be read");
  expect_refused("\x89PNG\r\n\x1a\n", "photo: its beginning is not that of a PNG that can be read");
}

TEST(Photo, more_bytes_than_are_taken_are_refused_before_a_look) {
  expect_refused(jpeg_of(as_stored(cases[0], 320, 192)) + std::string(2'000'000, 'x'),
                 "photo: 2.1 MB are more than the 1.0 MB that are taken", {.bytes = 1'000'000});
}

TEST(Photo, a_picture_that_would_fill_the_memory_is_refused_before_a_pixel_is_decoded) {
  const std::string tail = " pixels are more than the 60 million, or the 20000 a side, that are taken";
  const std::string small = jpeg_of(as_stored(cases[0], 320, 192));
  expect_refused(claiming(small, 60000, 60000), "photo: 60000 by 60000" + tail);
  expect_refused(claiming(small, 30000, 10), "photo: 30000 by 10" + tail);
  expect_refused(huge_png, "photo: 60000 by 60000" + tail);
}

TEST(Photo, one_cut_short_is_refused_wherever_it_was_cut) {
  const std::string whole = with_exif(jpeg_of(as_stored(cases[0], 640, 480)), 1);
  ASSERT_GT(whole.size(), 2000U);
  for (const double share : {0.5, 0.75, 0.9}) {
    expect_refused(whole.substr(0, static_cast<std::size_t>(share * static_cast<double>(whole.size()))),
                   "photo: it is cut short");
  }
  const std::string progressive = jpeg_of(as_stored(cases[0], 640, 480), TJFLAG_PROGRESSIVE);
  expect_refused(progressive.substr(0, progressive.size() / 2), "photo: it is cut short");
}

TEST(Photo, what_a_phone_appends_after_the_picture_does_no_harm) {
  const std::string moving = jpeg_of(as_stored(cases[0], 320, 192)) + std::string(5000, 'v');
  expect_upright(upright_photo(moving).whole, 320, 192);
}

TEST(Photo, no_bytes_crash_it) {
  std::string given = with_exif(jpeg_of(as_stored(cases[4], 64, 48)), 5);
  unsigned dice = 1927;
  for (int round = 0; round < 3000; ++round) {
    std::string hurt = given;
    for (int hit = 0; hit < 3; ++hit) {
      dice = dice * 1664525U + 1013904223U;
      hurt[(dice >> 8U) % hurt.size()] = static_cast<char>(dice & 255U);
    }
    try {
      (void)upright_photo(hurt, {.pixels = 1'000'000});
    } catch (const Refused&) {
    }
  }
}

}  // namespace
}  // namespace tailblock
