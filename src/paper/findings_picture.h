#pragma once

#include <vector>

#include "body/instrument_drawing.h"
#include "paper/picture.h"
#include "repair/finding_kinds.h"

namespace tailblock {

/// A finding as it is marked on the drawing.
struct MarkedFinding {
  int number = 0;
  DrawingView view = DrawingView::front;
  FindingShape shape = FindingShape::point;
  std::vector<DrawingPoint> points{};
};

/// `Inside of the top`.
[[nodiscard]] std::string_view view_in_words(DrawingView view);

/// The views of the instrument on which something was found, each finding marked by its number: a line along what it
/// is, an area filled, a number in a ring. Upright views stand side by side at one scale, those that lie come under
/// them, all with their names. Empty of shapes where nothing is marked.
[[nodiscard]] Picture findings_picture(const InstrumentDrawing& drawing, const std::vector<MarkedFinding>& findings,
                                       double wide_mm);

}  // namespace tailblock
