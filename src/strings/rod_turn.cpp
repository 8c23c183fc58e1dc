#include "strings/rod_turn.h"

namespace tailblock {

HeldSetUp held_set_up(const NeckLine& neck, const StringAction& action) {
  const OuterHeights now = outer_heights(neck, action);
  return {.neck = with_nut_held(neck, action),
          .action = {.saddle_over_frets_bass = now.saddle_over_frets_bass,
                     .saddle_over_frets_treble = now.saddle_over_frets_treble}};
}

HeldSetUp with_rod_turned(const HeldSetUp& before, Length relief_change) {
  HeldSetUp after = before;
  NeckLine& neck = after.neck;
  const Length x1 = fret_from_nut(neck.scale_length, 1);
  const Length xj = fret_from_nut(neck.scale_length, neck.body_joint_fret);
  const double tangent = 4 * (relief_change / (xj - x1));  // how far the body turns against the fret plane

  neck.relief = neck.relief + relief_change;
  const Length nut_rise = tangent * (xj / (xj - x1)) * x1;
  *neck.nut_over_frets_bass += nut_rise;
  *neck.nut_over_frets_treble += nut_rise;
  *after.action.saddle_over_frets_bass += tangent * (neck.scale_length + neck.setback_bass - xj);
  *after.action.saddle_over_frets_treble += tangent * (neck.scale_length + neck.setback_treble - xj);

  neck.crown_departures_mm.resize(static_cast<std::size_t>(neck.fret_count), 0);
  for (int fret = neck.body_joint_fret + 1; fret <= neck.fret_count; ++fret) {
    neck.crown_departures_mm[static_cast<std::size_t>(fret - 1)] +=
        in_mm(tangent * (fret_from_nut(neck.scale_length, fret) - xj));
  }
  return after;
}

}  // namespace tailblock
