#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "paper/picture.h"
#include "paper/set_text.h"
#include "quantity/date.h"

namespace tailblock {

/// What a PDF says of itself.
struct SheetTitle {
  std::string title;
  std::string author{};
  Date day;
};

struct JpegOnSheet {
  std::string_view bytes;
  int width_px, height_px;
};

/// Sheets of a PDF, in millimetres from the top left corner. Text is set in Inter, embedded; characters that Inter
/// lacks come from whatever font of this computer has them. The same calls give the same bytes: no clock is asked.
class Sheet {
 public:
  static constexpr double width_mm = 297, height_mm = 210;
  /// A4 landscape.
  Sheet(const std::string& title, Date day) : Sheet({.title = title, .day = day}, width_mm, height_mm) {}
  Sheet(const SheetTitle& title, double wide_mm, double high_mm);
  ~Sheet();
  Sheet(const Sheet&) = delete;
  Sheet& operator=(const Sheet&) = delete;

  enum class Weight { light, bold };
  enum class Anchor { start, middle, end };
  struct Text {
    double size_mm = 3;
    Weight weight = Weight::light;
    Anchor anchor = Anchor::start;
  };
  void text(double x_mm, double y_mm, const std::string& words, const Text& how);
  /// Breaks between words; returns where the line after the last would stand.
  double paragraph(double x_mm, double y_mm, double wide_mm, const std::string& words, const Text& how);
  /// One line of set text with its baseline at `y_mm`; `x_mm` is the left of the width it was set for.
  void draw(const SetText& text, int line, double x_mm, double y_mm);
  void line(double x1_mm, double y1_mm, double x2_mm, double y2_mm, double thick_mm, Ink ink = Ink::ink,
            bool dashed = false);
  /// Filled, 0 black to 1 white.
  void box(double x_mm, double y_mm, double wide_mm, double high_mm, double grey);
  void fill(double x_mm, double y_mm, double wide_mm, double high_mm, Ink ink);
  /// Its top left corner where said, its millimetres `scale` times as long.
  void picture(const Picture& picture, double x_mm, double y_mm, double scale);
  /// A JPEG as it is, not decoded: the same bytes lie in the file once, however often they are drawn.
  void photo(const JpegOnSheet& jpeg, double x_mm, double y_mm, double wide_mm);

  /// Says what the marks that follow are, for programs that read the page aloud: `H2`, `P`, `TD` ... Pair with end().
  void begin(const char* tag);
  void end(const char* tag);
  void next_page();

  /// Ends the file and gives its bytes.
  [[nodiscard]] std::string bytes();

 private:
  void show_words(const Shape& shape, double x_mm, double y_mm, double scale);
  struct Surface;
  std::unique_ptr<Surface> surface_;
};

}  // namespace tailblock
