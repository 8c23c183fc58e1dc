#include "strings/relief_change.h"

namespace tailblock {

HeldSetUp held_set_up(const NeckLine& neck, const StringAction& action) {
  const OuterHeights now = outer_heights(neck, action);
  return {.neck = with_nut_held(neck, action),
          .action = {.saddle_over_frets_bass = now.saddle_over_frets_bass,
                     .saddle_over_frets_treble = now.saddle_over_frets_treble}};
}

HeldSetUp with_relief_changed(const HeldSetUp& before, Length relief_change, double action12_per_relief) {
  HeldSetUp after = before;
  NeckLine& neck = after.neck;
  const auto from_nut = [&](int fret) { return fret_from_nut(neck.scale_length, fret); };
  const Length x1 = from_nut(1), x12 = from_nut(12), xj = from_nut(neck.body_joint_fret);
  const Length middle_saddle = neck.scale_length + 0.5 * (neck.setback_bass + neck.setback_treble);
  const Length nut_rise = 4 * (x1 / (xj - x1)) * (xj / (xj - x1)) * relief_change;
  // From nut and crown 12 alone, and by as much as is missing from the turn of the body.
  const Length without_turn = (1 - x12 / middle_saddle) * nut_rise + relief_effect(neck, relief_change).at_held_ends;
  const Length lift_of_turn = x12 / middle_saddle * (middle_saddle - xj) - (x12 > xj ? x12 - xj : Length{});
  const double turn = (action12_per_relief * relief_change - without_turn) / lift_of_turn;

  neck.relief = neck.relief + relief_change;
  *neck.nut_over_frets_bass += nut_rise;
  *neck.nut_over_frets_treble += nut_rise;
  *after.action.saddle_over_frets_bass += turn * (neck.scale_length + neck.setback_bass - xj);
  *after.action.saddle_over_frets_treble += turn * (neck.scale_length + neck.setback_treble - xj);

  neck.crown_departures_mm.resize(static_cast<std::size_t>(neck.fret_count), 0);
  for (int fret = neck.body_joint_fret + 1; fret <= neck.fret_count; ++fret) {
    neck.crown_departures_mm[static_cast<std::size_t>(fret - 1)] += in_mm(turn * (from_nut(fret) - xj));
  }
  return after;
}

std::vector<CleanAtRelief> least_clean_by_relief(const ClearanceRequest& request, const UnitEnvelopes& envelopes,
                                                 std::span<const Length> reliefs) {
  const HeldSetUp measured = held_set_up(request.neck, request.action);
  const double figure = in_mm(relief_effect(request.neck, mm(1)).at_held_joint);
  std::vector<CleanAtRelief> clean;
  ClearanceRequest changed = request;
  for (const Length relief : reliefs) {
    const HeldSetUp there = with_relief_changed(measured, relief - measured.neck.relief, figure);
    changed.neck = there.neck;
    changed.action = there.action;
    clean.push_back({.relief = relief, .outer = least_clean_action(changed, envelopes).outer});
  }
  return clean;
}

}  // namespace tailblock
