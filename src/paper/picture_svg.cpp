#include "paper/picture_svg.h"

#include <array>
#include <cmath>

#include "paper/document_html.h"
#include "season/words.h"

namespace tailblock {
namespace {

std::string millimetres(double mm) { return decimals(mm, 3); }

std::string colour(Ink ink) {
  const auto [red, green, blue] = rgb(ink);
  std::string text = "#";
  for (const double part : {red, green, blue}) {
    constexpr std::string_view digits = "0123456789abcdef";
    const auto level = static_cast<std::size_t>(std::lround(255 * part));
    text += digits[level / 16];
    text += digits[level % 16];
  }
  return text;
}

std::string x(const Shape& shape, std::size_t i) { return millimetres(shape.points_mm[2 * i]); }
std::string y(const Shape& shape, std::size_t i) { return millimetres(shape.points_mm[2 * i + 1]); }

std::string pen(const Shape& shape) {
  return " fill=\"none\" stroke=\"" + colour(shape.ink) + "\" stroke-width=\"" + millimetres(shape.thick_mm) + "\"" +
         (shape.dashed ? " stroke-dasharray=\"1.6 1.2\"" : "");
}

std::string rectangle(const Shape& shape, std::size_t i) {
  return "M" + x(shape, i) + " " + y(shape, i) + "H" + x(shape, i + 1) + "V" + y(shape, i + 1) + "H" + x(shape, i) +
         "Z";
}

std::string path(const Shape& shape) {
  std::string steps;
  for (std::size_t i = 0; i < shape.points_mm.size() / 2; i += shape.kind == ShapeKind::blocks ? 2 : 1) {
    steps +=
        shape.kind == ShapeKind::blocks ? rectangle(shape, i) : (i == 0 ? "M" : "L") + x(shape, i) + " " + y(shape, i);
  }
  if (shape.kind == ShapeKind::line) return "<path d=\"" + steps + "\"" + pen(shape) + "/>";
  return "<path d=\"" + steps + "Z\" fill=\"" + colour(shape.ink) + "\"/>";
}

std::string circles(const Shape& shape) {
  const std::string how = shape.kind == ShapeKind::ring ? pen(shape) : " fill=\"" + colour(shape.ink) + "\"";
  std::string all;
  for (std::size_t i = 0; i < shape.points_mm.size() / 2; ++i) {
    all += "<circle cx=\"" + x(shape, i) + "\" cy=\"" + y(shape, i) + "\" r=\"" + millimetres(shape.size_mm / 2) +
           "\"" + how + "/>";
  }
  return all;
}

std::string element(const Shape& shape) {
  constexpr std::array<std::string_view, 3> anchors{"start", "middle", "end"};
  switch (shape.kind) {
    case ShapeKind::line:
    case ShapeKind::area:
    case ShapeKind::blocks:
      return path(shape);
    case ShapeKind::dot:
    case ShapeKind::ring:
      return circles(shape);
    case ShapeKind::words:
      break;
  }
  return "<text x=\"" + x(shape, 0) + "\" y=\"" + y(shape, 0) + "\" font-size=\"" + millimetres(shape.size_mm) +
         "\" text-anchor=\"" + std::string(anchors[static_cast<std::size_t>(shape.hold)]) + "\" fill=\"" +
         colour(shape.ink) + "\">" + html_text(shape.words) + "</text>";
}

}  // namespace

std::string svg(const Picture& picture) {
  require_drawable(picture);
  std::string text = "<svg role=\"img\" aria-label=\"" + html_text(picture.says) + "\" viewBox=\"0 0 " +
                     millimetres(picture.width_mm) + " " + millimetres(picture.height_mm) + "\" width=\"" +
                     millimetres(picture.width_mm) + "mm\">";
  for (const Shape& shape : picture.shapes) text += element(shape);
  return text + "</svg>";
}

}  // namespace tailblock
