#pragma once

#include <array>
#include <string>
#include <vector>

#include "body/drawing_tables.h"
#include "body/top_designs.h"
#include "quantity/fields.h"

namespace tailblock {

/// What is known of an instrument that its drawing is made from.
struct DrawingRequest {
  BodySize body_size = BodySize::mid_size;
  Bracing bracing = Bracing::x_braced;
  std::optional<Length> lower_bout_width;
  Length scale_length = mm(645);
  int body_joint_fret = 14;
  int fret_count = 20;
};
void describe(FieldVisitor&, DrawingRequest&);

/// A point of a view, in the view's own axes.
struct DrawingPoint {
  Length x, y;
};
void describe(FieldVisitor&, DrawingPoint&);

/// What a drawn line is.
enum class DrawnPart { edge, hole, bridge, saddle, board, fret, neck, nut, brace, plate, block, seam, tuner };
inline constexpr std::array<std::string_view, 13> drawn_part_names{
    "edge", "hole", "bridge", "saddle", "board", "fret", "neck", "nut", "brace", "plate", "block", "seam", "tuner"};

struct DrawnLine {
  DrawnPart part = DrawnPart::edge;
  std::string name;     ///< as the bench calls it; empty for what has no name of its own
  bool closed = false;  ///< the last point joins the first
  Length width;         ///< of a brace; 0: a line without width
  std::vector<DrawingPoint> points;
};
void describe(FieldVisitor&, DrawnLine&);

/// A place that can be told by name, and where it is on the view.
struct DrawnPlace {
  std::string name;
  DrawingPoint at;
};
void describe(FieldVisitor&, DrawnPlace&);

/// One way of looking at the instrument, in millimetres.
///
/// front, back, top_inside, back_inside share the axes of the top: x from the neck edge along the centre line to the
/// tail (the neck is negative), y across, treble side positive, so that a crack seen from outside has the same
/// coordinates inside. bass_side, treble_side: x along the rim from the centre line at the neck to the centre line at
/// the tail, y from the top's edge toward the back. headstock: x from the nut toward the tip, y as on the front.
struct ViewDrawing {
  DrawingView view = DrawingView::front;
  bool upright = true;                ///< x runs down the page and y across it; false: x across and y down
  bool mirrored = false;              ///< what runs across the page grows to the left
  bool upside_down = false;           ///< what runs down the page grows upward
  Length x_from, x_to, y_from, y_to;  ///< what the drawing fills
  std::vector<DrawnLine> lines;
  std::vector<DrawnPlace> places;
};
void describe(FieldVisitor&, ViewDrawing&);

struct InstrumentDrawing {
  std::vector<ViewDrawing> views;  ///< all seven, in the order of DrawingView
  std::vector<std::string> assumed;
};
void describe(FieldVisitor&, InstrumentDrawing&);

/// The instrument as a survey draws it: its own outline, scale, frets and bracing; back bars, sides and headstock as
/// they usually are (data/back_braces.csv, data/drawing_figures.csv). Made to point at, not to cut by.
///
/// The outline of the body size is stretched across to the lower bout that was measured. Frets stand at L (1 -
/// 2^(-n/12)) from the nut (equal temperament); the joint fret over the neck edge; the saddle L 2^(-joint/12) from
/// there and about 3 mm more (data/top_builds.csv says where the 3 mm come from). Braces drawn longer than the top are
/// cut at its edge.
/// @throws Refused naming the field outside its range.
[[nodiscard]] InstrumentDrawing instrument_drawing(const DrawingRequest& request, const TopDesignTable& tops,
                                                   const DrawingTables& tables);

}  // namespace tailblock
