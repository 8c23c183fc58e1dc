#include "strings/bowed_neck.h"

#include <cmath>

namespace tailblock {

void describe(FieldVisitor& visit, RodFigure& figure) {
  visit.number({"action12_per_relief", "mm that fret 12 rises for a mm of relief"}, figure.action12_per_relief,
               {0, 10, "mm per mm"});
  visit.number({"sd", "one standard deviation of what is not known of it"}, figure.sd, {0.001, 5, "mm per mm"});
  visit.integer({"turns", "of this rod, read before and after, that it was learnt from", Need::has_default},
                figure.turns, {0, 1000, ""});
}

RodFigure rod_figure(const NeckLine& neck, double prior_sd, std::span<const RodTurn> turns) {
  constexpr double least_turn_mm = 0.03;
  const double even = in_mm(relief_effect(neck, mm(1)).at_held_joint);
  double precision = 1 / (prior_sd * prior_sd);
  double weighted = even * precision;
  RodFigure figure;
  for (const RodTurn& turn : turns) {
    const double relief = in_mm(turn.relief_change);
    if (std::abs(relief) < least_turn_mm) continue;
    const double spread = std::hypot(in_mm(turn.action12_change_sd), even * in_mm(turn.relief_change_sd)) / relief;
    precision += 1 / (spread * spread);
    weighted += in_mm(turn.action12_change) / relief / (spread * spread);
    ++figure.turns;
  }
  figure.action12_per_relief = weighted / precision;
  figure.sd = 1 / std::sqrt(precision);
  return figure;
}

BowedNeck bowed_to(const NeckLine& neck, const StringAction& action, Length relief, double action12_per_relief) {
  const OuterHeights now = outer_heights(neck, action);
  BowedNeck bowed{.neck = with_nut_held(neck, action), .action = {}};
  const Length change = relief - neck.relief;
  const double x1 = in_mm(fret_from_nut(neck.scale_length, 1));
  const double xj = in_mm(fret_from_nut(neck.scale_length, neck.body_joint_fret));
  const Length nut_rise = 4 * x1 * xj / ((xj - x1) * (xj - x1)) * change;
  bowed.neck.relief = relief;
  *bowed.neck.nut_over_frets_bass += nut_rise;
  *bowed.neck.nut_over_frets_treble += nut_rise;
  bowed.action.action12_bass = now.action12_bass + action12_per_relief * change;
  bowed.action.action12_treble = now.action12_treble + action12_per_relief * change;
  return bowed;
}

std::vector<CleanAtRelief> least_clean_by_relief(const ClearanceRequest& request, const UnitEnvelopes& envelopes,
                                                 std::span<const Length> reliefs) {
  std::vector<CleanAtRelief> clean;
  ClearanceRequest bowed = request;
  for (const Length relief : reliefs) {
    // Only the nut counts here: the saddle is what is sought.
    BowedNeck there = bowed_to(request.neck, request.action, relief, 0);
    bowed.neck = there.neck;
    bowed.action = there.action;
    clean.push_back({.relief = relief, .outer = least_clean_action(bowed, envelopes).outer});
  }
  return clean;
}

}  // namespace tailblock
