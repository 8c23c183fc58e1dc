#include "study_top.h"

#include <array>

namespace tailblock::testing {
namespace {

Brace straight(const char* name, double x1, double y1, double x2, double y2, double width, double height) {
  return {.name = name,
          .from_x = mm(x1),
          .from_y = mm(y1),
          .to_x = mm(x2),
          .to_y = mm(y2),
          .width = mm(width),
          .heights = {{0, mm(height)}},
          .glued = {}};
}

constexpr SheetWood spruce{10900, 850.2, 697.6, 0.372, 4.93333e-05, 0.00148};
constexpr SheetWood rosewood{12000, 1200, 960, 0.36, 6e-05, 0.0017};
constexpr SheetWood maple{12600, 1663.2, 1398.6, 0.424, 6e-05, 0.00165};

}  // namespace

TopDesign study_top() {
  TopDesign d;
  for (const auto& [x, y] : std::array<std::pair<double, double>, 10>{{{0, 0},
                                                                       {4, 60},
                                                                       {32, 118},
                                                                       {95, 145},
                                                                       {190, 120},
                                                                       {270, 160},
                                                                       {360, 197.5},
                                                                       {440, 165},
                                                                       {486, 95},
                                                                       {500, 0}}}) {
    d.outline.push_back({mm(x), mm(y)});
  }
  // Legs through (228, 0) at 48 degrees, drawn beyond the rim.
  const double c = 0.66913060636 * 400, s = 0.74314482548 * 400;
  d.braces = {straight("X1", 228 - c, -s, 228 + c, s, 8, 14),    straight("X2", 228 - c, s, 228 + c, -s, 8, 14),
              straight("transverse", 72, -300, 72, 300, 12, 16), straight("tone1", 318, -100, 398, 100, 7, 12),
              straight("tone2", 362, -149, 447, 62, 7, 11),      straight("finger1a", 267.6, 44, 250, 125, 6, 9),
              straight("finger1b", 267.6, -44, 250, -125, 6, 9), straight("finger2a", 307.2, 88, 292, 158, 6, 9),
              straight("finger2b", 307.2, -88, 292, -158, 6, 9)};
  d.soundhole = {.centre_x = mm(148), .radius = mm(50), .ring_width = mm(0), .ring_thickness = mm(0)};
  d.bridge = {
      .body = {mm(280), mm(38), mm(150), mm(9), "rosewood of the study"}, .saddle_x = mm(290), .saddle_length = mm(72)};
  d.bridge_plate = {mm(274), mm(56), mm(86), mm(2.5), "maple of the study"};
  d.rim = {.outward_n_mm2 = 0.3,
           .along_n_mm2 = 50,
           .up_n_mm2 = 200,
           .slope_n = 100,
           .block_half_width = mm(50),
           .block_in_plane_n_mm2 = 2000 / 6.0,
           .block_up_n_mm2 = 5000 / 6.0,
           .block_slope_n = 2e5 / 6.0};
  return d;
}

TopWoods study_woods(const TopDesign& design) {
  return {.top = spruce,
          .bridge = rosewood,
          .bridge_plate = maple,
          .ring = spruce,
          .braces = std::vector<SheetWood>(design.braces.size(), spruce)};
}

RimStiffness rim_held_up() {
  return {.outward_n_mm2 = 1e-4, .along_n_mm2 = 1e-4, .up_n_mm2 = 1e6, .slope_n = 0, .block_half_width = mm(0)};
}

RimStiffness rim_pinned() {
  return {.outward_n_mm2 = 1e6, .along_n_mm2 = 1e6, .up_n_mm2 = 1e6, .slope_n = 0, .block_half_width = mm(0)};
}

TopDesign mirrored_study_top() {
  TopDesign d = study_top();
  std::erase_if(d.braces, [](const Brace& brace) { return brace.name.starts_with("tone"); });
  return d;
}

}  // namespace tailblock::testing
