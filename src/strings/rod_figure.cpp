#include "strings/rod_figure.h"

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

}  // namespace tailblock
