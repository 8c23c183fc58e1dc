#pragma once

#include <memory>
#include <string>

#include "quantity/date.h"

namespace tailblock {

/// A4 landscape sheets of a PDF, in millimetres from the top left corner. Text is set in Inter, embedded.
class Sheet {
 public:
  Sheet(const std::string& title, Date day);
  ~Sheet();
  Sheet(const Sheet&) = delete;
  Sheet& operator=(const Sheet&) = delete;

  static constexpr double width_mm = 297, height_mm = 210;

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
  void line(double x1_mm, double y1_mm, double x2_mm, double y2_mm, double thick_mm);
  /// Filled, 0 black to 1 white.
  void box(double x_mm, double y_mm, double wide_mm, double high_mm, double grey);
  void next_page();

  /// Ends the file and gives its bytes.
  [[nodiscard]] std::string bytes();

 private:
  struct Surface;
  std::unique_ptr<Surface> surface_;
};

}  // namespace tailblock
