#include "paper/sheet.h"

#include <cairo-pdf.h>
#include <cairo.h>

#include <sstream>
#include <stdexcept>

namespace tailblock {
namespace {

constexpr double points_per_mm = 72 / 25.4;
constexpr double line_spacing = 1.35;

cairo_status_t keep(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

struct Sheet::Surface {
  std::string bytes;
  cairo_surface_t* surface = nullptr;
  cairo_t* draw = nullptr;

  Surface() = default;
  Surface(const Surface&) = delete;
  Surface& operator=(const Surface&) = delete;
  ~Surface() {
    if (draw != nullptr) cairo_destroy(draw);
    if (surface != nullptr) cairo_surface_destroy(surface);
  }
  void set_font(const Text& how) const {
    cairo_select_font_face(draw, "Inter", CAIRO_FONT_SLANT_NORMAL,
                           how.weight == Weight::bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
    cairo_set_font_size(draw, how.size_mm);
  }
  [[nodiscard]] double width_of(const std::string& words) const {
    cairo_text_extents_t extents;
    cairo_text_extents(draw, words.c_str(), &extents);
    return extents.x_advance;
  }
};

Sheet::Sheet(const std::string& title, Date day) : surface_(std::make_unique<Surface>()) {
  surface_->surface =
      cairo_pdf_surface_create_for_stream(&keep, &surface_->bytes, width_mm * points_per_mm, height_mm * points_per_mm);
  const std::string when = iso_date(day) + "T00:00:00Z";  // no clock: the same sheet is the same file
  cairo_pdf_surface_set_metadata(surface_->surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
  cairo_pdf_surface_set_metadata(surface_->surface, CAIRO_PDF_METADATA_CREATOR, "Tailblock");
  cairo_pdf_surface_set_metadata(surface_->surface, CAIRO_PDF_METADATA_CREATE_DATE, when.c_str());
  surface_->draw = cairo_create(surface_->surface);
  cairo_scale(surface_->draw, points_per_mm, points_per_mm);
}

Sheet::~Sheet() = default;

void Sheet::text(double x_mm, double y_mm, const std::string& words, const Text& how) {
  surface_->set_font(how);
  const double wide = how.anchor == Anchor::start ? 0 : surface_->width_of(words);
  cairo_set_source_rgb(surface_->draw, 0, 0, 0);
  cairo_move_to(surface_->draw, x_mm - (how.anchor == Anchor::middle ? wide / 2 : wide), y_mm);
  cairo_show_text(surface_->draw, words.c_str());
}

double Sheet::paragraph(double x_mm, double y_mm, double wide_mm, const std::string& words, const Text& how) {
  surface_->set_font(how);
  std::istringstream rest(words);
  std::string line, word;
  while (rest >> word) {
    const std::string longer = line.empty() ? word : line + " " + word;
    if (!line.empty() && surface_->width_of(longer) > wide_mm) {
      text(x_mm, y_mm, line, how);
      y_mm += line_spacing * how.size_mm;
      line = word;
    } else {
      line = longer;
    }
  }
  if (!line.empty()) {
    text(x_mm, y_mm, line, how);
    y_mm += line_spacing * how.size_mm;
  }
  return y_mm;
}

void Sheet::line(double x1_mm, double y1_mm, double x2_mm, double y2_mm, double thick_mm) {
  cairo_set_source_rgb(surface_->draw, 0, 0, 0);
  cairo_set_line_width(surface_->draw, thick_mm);
  cairo_move_to(surface_->draw, x1_mm, y1_mm);
  cairo_line_to(surface_->draw, x2_mm, y2_mm);
  cairo_stroke(surface_->draw);
}

void Sheet::box(double x_mm, double y_mm, double wide_mm, double high_mm, double grey) {
  cairo_set_source_rgb(surface_->draw, grey, grey, grey);
  cairo_rectangle(surface_->draw, x_mm, y_mm, wide_mm, high_mm);
  cairo_fill(surface_->draw);
}

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
