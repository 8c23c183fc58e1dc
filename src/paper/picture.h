#pragma once

#include <string>
#include <vector>

#include "quantity/fields.h"

namespace tailblock {

/// The inks of paper. On a printer without colour each is told from its neighbours by its lightness.
enum class Ink { ink, soft, rule, accent, wash, band_wide, band_half, wood, tint, white };

/// Red, green and blue, 0..1.
struct Rgb {
  double red, green, blue;
};
[[nodiscard]] Rgb rgb(Ink ink);

/// One mark of a picture, in millimetres from its top left corner, y downwards.
enum class ShapeKind {
  line,    ///< through its points
  area,    ///< filled, closed from the last point to the first
  dot,     ///< filled, about each point, `size_mm` across
  ring,    ///< outlined, about each point, `size_mm` across
  blocks,  ///< filled rectangles; points are pairs of opposite corners, filled as one so that no seam shows
  words,   ///< `words` at the one point, on the baseline, `size_mm` high
};
enum class Hold { start, middle, end };  ///< which part of the words the point holds

struct Shape {
  ShapeKind kind = ShapeKind::line;
  std::vector<double> points_mm;  ///< x, y, x, y ...
  Ink ink = Ink::ink;
  double thick_mm = 0.3;  ///< of a line or a ring
  bool dashed = false;
  double size_mm = 2.6;
  std::string words{};
  Hold hold = Hold::start;
};
void describe(FieldVisitor&, Shape&);

/// A drawing in plain shapes: the instrument with its findings, the bands of the year, a code to scan.
struct Picture {
  double width_mm = 160;
  double height_mm = 60;
  std::vector<Shape> shapes{};
  std::string says;  ///< what it shows, in words, for who cannot see it
};
void describe(FieldVisitor&, Picture&);

/// @throws Refused naming the shape whose points do not come in pairs, or are too few for its kind.
void require_drawable(const Picture& picture);

}  // namespace tailblock
