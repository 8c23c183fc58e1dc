#include "paper/sheet.h"

#include <cairo-pdf.h>
#include <cairo.h>

#include <array>
#include <map>
#include <numbers>
#include <stdexcept>

namespace tailblock {
namespace {

constexpr double points_per_mm = 72 / 25.4;

double points(double mm) { return mm * points_per_mm; }

cairo_status_t keep(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

/// Where a picture lies on the sheet.
struct Place {
  double x_mm, y_mm, scale;
  [[nodiscard]] double x(const Shape& shape, std::size_t i) const {
    return points(x_mm + scale * shape.points_mm[2 * i]);
  }
  [[nodiscard]] double y(const Shape& shape, std::size_t i) const {
    return points(y_mm + scale * shape.points_mm[2 * i + 1]);
  }
};

void trace(cairo_t* draw, const Shape& shape, const Place& place) {
  const std::size_t count = shape.points_mm.size() / 2;
  for (std::size_t i = 0; i < count; ++i) {
    const double x = place.x(shape, i), y = place.y(shape, i);
    switch (shape.kind) {
      case ShapeKind::line:
      case ShapeKind::area:
        i == 0 ? cairo_move_to(draw, x, y) : cairo_line_to(draw, x, y);
        break;
      case ShapeKind::dot:
      case ShapeKind::ring:
        cairo_new_sub_path(draw);
        cairo_arc(draw, x, y, points(place.scale * shape.size_mm / 2), 0, 2 * std::numbers::pi);
        cairo_close_path(draw);
        break;
      case ShapeKind::blocks:
        if (i % 2 == 0) cairo_rectangle(draw, x, y, place.x(shape, i + 1) - x, place.y(shape, i + 1) - y);
        break;
      case ShapeKind::words:
        break;
    }
  }
}

}  // namespace

struct Sheet::Surface {
  std::string bytes;
  cairo_surface_t* surface = nullptr;
  cairo_t* draw = nullptr;
  std::map<std::string, cairo_surface_t*> photos;  ///< by their bytes, which they point into

  Surface() = default;
  Surface(const Surface&) = delete;
  Surface& operator=(const Surface&) = delete;
  ~Surface() {
    if (draw != nullptr) cairo_destroy(draw);
    if (surface != nullptr) cairo_surface_destroy(surface);
    for (const auto& [jpeg, image] : photos) cairo_surface_destroy(image);
  }
  /// The same bytes are the same surface, so that they lie in the file once.
  cairo_surface_t* photo(const JpegOnSheet& jpeg) {
    const auto [at, fresh] = photos.try_emplace(std::string(jpeg.bytes), nullptr);
    if (!fresh) return at->second;
    const std::string& kept = at->first;
    at->second = cairo_image_surface_create(CAIRO_FORMAT_RGB24, jpeg.width_px, jpeg.height_px);
    const cairo_status_t laid =
        cairo_surface_set_mime_data(at->second, CAIRO_MIME_TYPE_JPEG,
                                    reinterpret_cast<const unsigned char*>(kept.data()), kept.size(), nullptr, nullptr);
    if (laid != CAIRO_STATUS_SUCCESS) throw std::runtime_error("a photo could not be laid on the sheet");
    return at->second;
  }
  void set_ink(Ink ink) const {
    const auto [red, green, blue] = rgb(ink);
    cairo_set_source_rgb(draw, red, green, blue);
  }
  void set_pen(double thick_mm, bool dashed) const {
    const std::array<double, 2> dashes{points(1.6), points(1.2)};
    cairo_set_line_width(draw, points(thick_mm));
    cairo_set_dash(draw, dashes.data(), dashed ? 2 : 0, 0);
    cairo_set_line_join(draw, CAIRO_LINE_JOIN_ROUND);
  }
};

Sheet::Sheet(const SheetTitle& title, double wide_mm, double high_mm) : surface_(std::make_unique<Surface>()) {
  cairo_surface_t* surface = surface_->surface =
      cairo_pdf_surface_create_for_stream(&keep, &surface_->bytes, points(wide_mm), points(high_mm));
  const std::string when = iso_date(title.day) + "T00:00:00Z";  // no clock: the same sheet is the same file
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title.title.c_str());
  if (!title.author.empty()) cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_AUTHOR, title.author.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Tailblock");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, when.c_str());
  surface_->draw = cairo_create(surface);
}

Sheet::~Sheet() = default;

void Sheet::text(double x_mm, double y_mm, const std::string& words, const Text& how) {
  constexpr double no_end = 5000;
  const SetText set(words, {.size_mm = how.size_mm, .bold = how.weight == Weight::bold}, no_end);
  const double wide = how.anchor == Anchor::start ? 0 : set.widest_mm();
  if (set.lines() > 0) draw(set, 0, x_mm - (how.anchor == Anchor::middle ? wide / 2 : wide), y_mm);
}

double Sheet::paragraph(double x_mm, double y_mm, double wide_mm, const std::string& words, const Text& how) {
  const SetText set(words, {.size_mm = how.size_mm, .bold = how.weight == Weight::bold}, wide_mm);
  for (int i = 0; i < set.lines(); ++i, y_mm += set.pitch_mm()) draw(set, i, x_mm, y_mm);
  return y_mm;
}

void Sheet::draw(const SetText& text, int line, double x_mm, double y_mm) {
  text.show(surface_->draw, line, points(x_mm), points(y_mm));
}

void Sheet::line(double x1_mm, double y1_mm, double x2_mm, double y2_mm, double thick_mm, Ink ink, bool dashed) {
  cairo_t* draw = surface_->draw;
  surface_->set_ink(ink);
  surface_->set_pen(thick_mm, dashed);
  cairo_move_to(draw, points(x1_mm), points(y1_mm));
  cairo_line_to(draw, points(x2_mm), points(y2_mm));
  cairo_stroke(draw);
}

void Sheet::box(double x_mm, double y_mm, double wide_mm, double high_mm, double grey) {
  cairo_set_source_rgb(surface_->draw, grey, grey, grey);
  cairo_rectangle(surface_->draw, points(x_mm), points(y_mm), points(wide_mm), points(high_mm));
  cairo_fill(surface_->draw);
}

void Sheet::fill(double x_mm, double y_mm, double wide_mm, double high_mm, Ink ink) {
  surface_->set_ink(ink);
  cairo_rectangle(surface_->draw, points(x_mm), points(y_mm), points(wide_mm), points(high_mm));
  cairo_fill(surface_->draw);
}

void Sheet::picture(const Picture& picture, double x_mm, double y_mm, double scale) {
  require_drawable(picture);
  cairo_t* draw = surface_->draw;
  const Place place{x_mm, y_mm, scale};
  for (const Shape& shape : picture.shapes) {
    if (shape.kind == ShapeKind::words) {
      show_words(shape, x_mm + scale * shape.points_mm[0], y_mm + scale * shape.points_mm[1], scale);
      continue;
    }
    surface_->set_ink(shape.ink);
    trace(draw, shape, place);
    if (shape.kind == ShapeKind::line || shape.kind == ShapeKind::ring) {
      surface_->set_pen(scale * shape.thick_mm, shape.dashed);
      cairo_stroke(draw);
    } else {
      cairo_fill(draw);
    }
  }
  surface_->set_pen(0.3, false);
}

void Sheet::photo(const JpegOnSheet& jpeg, double x_mm, double y_mm, double wide_mm) {
  cairo_surface_t* image = surface_->photo(jpeg);
  cairo_t* draw = surface_->draw;
  cairo_save(draw);
  cairo_translate(draw, points(x_mm), points(y_mm));
  const double scale = points(wide_mm) / jpeg.width_px;
  cairo_scale(draw, scale, scale);
  cairo_set_source_surface(draw, image, 0, 0);
  cairo_paint(draw);
  cairo_restore(draw);
}

void Sheet::show_words(const Shape& shape, double x_mm, double y_mm, double scale) {
  const SetText set(shape.words, {.size_mm = scale * shape.size_mm, .ink = shape.ink}, 5000);
  if (set.lines() == 0) return;
  const double wide = set.widest_mm();
  draw(set, 0, x_mm - (shape.hold == Hold::start ? 0 : shape.hold == Hold::middle ? wide / 2 : wide), y_mm);
}

void Sheet::begin(const char* tag) { cairo_tag_begin(surface_->draw, tag, nullptr); }
void Sheet::end(const char* tag) { cairo_tag_end(surface_->draw, tag); }
void Sheet::next_page() { cairo_show_page(surface_->draw); }

std::string Sheet::bytes() {
  cairo_show_page(surface_->draw);
  cairo_surface_finish(surface_->surface);
  const cairo_status_t status = cairo_surface_status(surface_->surface);
  if (status != CAIRO_STATUS_SUCCESS) {
    throw std::runtime_error(std::string("the sheet could not be drawn: ") + cairo_status_to_string(status));
  }
  return surface_->bytes;
}

}  // namespace tailblock
