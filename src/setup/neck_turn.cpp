#include <algorithm>
#include <cmath>

#include "setup/neck_angle.h"

namespace tailblock {

NeckTurn neck_turn(const NeckLever& lever, Length rise) {
  const Length D = lever.scale_length - fret_from_nut(lever.scale_length, lever.body_joint_fret) + lever.saddle_setback;
  return {.turn = radians(std::atan(rise / D)),
          .heel_removal = rise / D * lever.heel_depth,
          .joint_to_saddle = D,
          .saddle_per_heel = D / lever.heel_depth};
}

double under_least_mm(const AskedExposure& bass, const AskedExposure& treble) {
  return std::max(bass.least_mm - bass.mm, treble.least_mm - treble.mm);
}

double uncertainty_mm(const AskedExposure& bass, const AskedExposure& treble) {
  return std::max(bass.sd_mm, treble.sd_mm);
}

NeckVerdict neck_verdict(const AskedExposure& bass, const AskedExposure& treble) {
  const double sd = uncertainty_mm(bass, treble);
  const double under = under_least_mm(bass, treble);
  const double over = std::max(bass.mm - bass.most_mm, treble.mm - treble.most_mm);
  if (over > 0) return NeckVerdict::too_tall;
  if (under < -2 * sd) return NeckVerdict::not_needed;
  return under < 2 * sd ? NeckVerdict::withheld : NeckVerdict::called_for;
}

Length neck_rise(const AskedExposure& bass, const AskedExposure& treble, Length step) {
  const double wanted_mm = (bass.middle_mm - bass.mm + treble.middle_mm - treble.mm) / 2;
  return static_cast<double>(std::lround(wanted_mm / in_mm(step))) * step;
}

StringAfterTurn after_turn(const NeckLever& lever, Length hinge_under_frets, Angle turn, const StringBeforeTurn& before,
                           Length saddle_raise) {
  const double sine = std::sin(in_radians(turn)), cosine = std::cos(in_radians(turn));
  const Length D = neck_turn(lever, {}).joint_to_saddle;
  const Length up = before.saddle_over_frets + saddle_raise + hinge_under_frets;
  const Length saddle_x = fret_from_nut(lever.scale_length, lever.body_joint_fret) + cosine * D + sine * up;
  const Length saddle_y = cosine * up - sine * D - hinge_under_frets;
  const double share = fret_from_nut(lever.scale_length, 12) / saddle_x;
  return {.action12 = before.nut_over_frets + share * (saddle_y - before.nut_over_frets) - before.crown12,
          .saddle_over_frets = saddle_y,
          .saddle_from_nut_change = saddle_x - lever.scale_length - lever.saddle_setback};
}

}  // namespace tailblock
