#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "body/body_size.h"
#include "quantity/length.h"

namespace tailblock {

/// The seven ways an instrument is looked at in a survey.
enum class DrawingView { front, back, bass_side, treble_side, headstock, top_inside, back_inside };
inline constexpr std::array<std::string_view, 7> drawing_view_names{
    "front", "back", "bass_side", "treble_side", "headstock", "top_inside", "back_inside"};

/// A bar across the inside of the back, a row of data/back_braces.csv.
struct BackBrace {
  std::string name;
  double at_share = 0;  ///< of the body's length, from the neck edge
  Length width;
};

/// What a drawing needs beyond the top, by body size: a row of data/drawing_figures.csv.
struct DrawingFigures {
  Length tail_depth, nut_width, board_width_at_joint, neck_depth;
  Length headstock_length, headstock_width_at_nut, headstock_width_at_tip;
};

/// A mark along a drawing that a named place is told from.
enum class DrawingMark {
  neck_edge,
  upper_bout,
  waist,
  lower_bout,
  hole,
  hole_edge,
  bridge_front,
  saddle,
  bridge_back,
  tail,
  nut,
  middle,
  tip
};
inline constexpr std::array<std::string_view, 13> drawing_mark_names{
    "neck_edge", "upper_bout",  "waist", "lower_bout", "hole",   "hole_edge", "bridge_front",
    "saddle",    "bridge_back", "tail",  "nut",        "middle", "tip"};

/// A row of data/drawing_places.csv.
struct NamedPlace {
  std::vector<DrawingView> views;
  std::string name;
  DrawingMark at = DrawingMark::neck_edge;
  Length beyond;      ///< toward the tail; on the headstock toward its tip
  double across = 0;  ///< share of the half width there, bass negative; on a side share of its depth from the top
};

struct DrawingTables {
  std::vector<BackBrace> back_braces;
  std::array<DrawingFigures, body_size_names.size()> figures;  ///< in the order of BodySize
  std::vector<NamedPlace> places;
};

struct DrawingFiles {
  std::string_view back_braces, figures, places;
};

/// @throws Refused naming the row and the cell, or the body size that is missing.
[[nodiscard]] DrawingTables drawing_tables(const DrawingFiles& csv);

/// Views written `front;back`. @throws Refused as `where: "behind" is not a view`.
[[nodiscard]] std::vector<DrawingView> views_from_text(const std::string& where, std::string_view text);

}  // namespace tailblock
