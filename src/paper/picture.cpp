#include "paper/picture.h"

#include <array>

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 10> inks{"ink",       "soft",      "rule", "accent", "wash",
                                                "band_wide", "band_half", "wood", "tint",   "white"};
constexpr std::array<std::string_view, 6> kinds{"line", "area", "dot", "ring", "blocks", "words"};
constexpr std::array<std::string_view, 3> holds{"start", "middle", "end"};

std::size_t least_numbers(ShapeKind kind) {
  switch (kind) {
    case ShapeKind::line:
    case ShapeKind::blocks:
      return 4;
    case ShapeKind::area:
      return 6;
    default:
      return 2;
  }
}

}  // namespace

void describe(FieldVisitor& visit, Shape& shape) {
  choice(visit, {"kind", "what is drawn"}, shape.kind, kinds);
  visit.numbers({"points_mm", "x, y, x, y ... from the picture's top left corner"}, shape.points_mm,
                {-2000, 2000, "mm"}, {2, 20000});
  choice(visit, {"ink", "which of the inks of paper", Need::has_default}, shape.ink, inks);
  visit.number({"thick_mm", "of a line or a ring", Need::has_default}, shape.thick_mm, {0.05, 10, "mm"});
  visit.flag({"dashed", "a line in dashes", Need::has_default}, shape.dashed);
  visit.number({"size_mm", "height of words, width of a dot or ring", Need::has_default}, shape.size_mm,
               {0.2, 50, "mm"});
  visit.text({"words", "what the words say", Need::has_default}, shape.words, 200);
  choice(visit, {"hold", "which part of the words the point holds", Need::has_default}, shape.hold, holds);
}

void describe(FieldVisitor& visit, Picture& picture) {
  visit.number({"width_mm", "of the drawing's own sheet"}, picture.width_mm, {5, 2000, "mm"});
  visit.number({"height_mm", "of the drawing's own sheet"}, picture.height_mm, {5, 2000, "mm"});
  list(visit, {"shapes", "from the bottom up"}, picture.shapes, {0, 5000});
  visit.text({"says", "what it shows, in words"}, picture.says, 1000);
}

Rgb rgb(Ink ink) {
  constexpr std::array<Rgb, 10> inks{{{0.14, 0.12, 0.09},
                                      {0.36, 0.33, 0.27},
                                      {0.80, 0.76, 0.69},
                                      {0.64, 0.20, 0.11},
                                      {0.97, 0.91, 0.87},
                                      {0.90, 0.86, 0.79},
                                      {0.79, 0.73, 0.63},
                                      {0.72, 0.60, 0.42},
                                      {0.96, 0.94, 0.90},
                                      {1, 1, 1}}};
  return inks[static_cast<std::size_t>(ink)];
}

void require_drawable(const Picture& picture) {
  for (std::size_t i = 0; i < picture.shapes.size(); ++i) {
    const Shape& shape = picture.shapes[i];
    const std::string where = "shapes[" + std::to_string(i) + "].points_mm: ";
    const std::size_t have = shape.points_mm.size(), least = least_numbers(shape.kind);
    const std::size_t whole = shape.kind == ShapeKind::blocks ? 4 : 2;
    if (have % whole != 0) {
      throw Refused(where + std::to_string(have) + " numbers is not a multiple of " + std::to_string(whole));
    }
    if (have < least) {
      const std::string_view kind = kinds[static_cast<std::size_t>(shape.kind)];
      throw Refused(where + std::to_string(have) + " numbers is fewer than the " + std::to_string(least) + " of kind " +
                    std::string(kind));
    }
  }
}

}  // namespace tailblock
