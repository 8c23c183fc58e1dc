#pragma once

#include <memory>
#include <string>

#include "paper/picture.h"

struct _cairo;  // NOLINT(bugprone-reserved-identifier): cairo's own name for what it draws on

namespace tailblock {

/// Words broken into lines, for one style and one width, ready to be drawn on any sheet.
class SetText {
 public:
  struct Style {
    double size_mm = 3;
    bool bold = false;
    Ink ink = Ink::ink;
    Hold hold = Hold::start;  ///< which edge of the width the lines are against
    bool one_line = false;    ///< ends in … where the width ends
  };
  /// `lead` is set in bold before the words, on the same line.
  SetText(const std::string& words, const Style& style, double wide_mm, const std::string& lead = {});

  [[nodiscard]] int lines() const;
  /// From one baseline to the next.
  [[nodiscard]] double pitch_mm() const;
  [[nodiscard]] double widest_mm() const;
  /// Characters for which this computer has no font: they are drawn as boxes with their number in.
  [[nodiscard]] std::string missing() const;
  [[nodiscard]] const Style& style() const { return style_; }
  /// Draws one line, its baseline at `y_points`, `x_points` being the left of the width it was set for.
  void show(_cairo* draw, int line, double x_points, double y_points) const;

 private:
  struct Layout;
  Style style_;
  std::string words_;
  std::shared_ptr<const Layout> layout_;
};

}  // namespace tailblock
