#include <cmath>
#include <string>

#include "season/moving_floor.h"
#include "season/words.h"
#include "setup/saddle_options.h"
#include "setup/words.h"

namespace tailblock {
namespace {

/// What a turn of the rod does at fret 12, all year through.
struct Turned {
  double relief_mm;                       ///< to set
  double action_mm;                       ///< by which the strings rise
  double action_sd_mm;                    ///< what is not known of that
  double floor_bass_mm, floor_treble_mm;  ///< by which the least clean action rises
};

Turned turned_to(double relief_mm, const SaddleCase& asked) {
  const RodFigure& rod = *asked.request.rod;
  const auto& floors = asked.request.limits.floors;
  const double now_mm = *asked.year.relief_mm;
  const FloorLine before = floor_at(floors, now_mm);
  const FloorLine after = floor_at(floors, relief_mm);
  return {.relief_mm = relief_mm,
          .action_mm = rod.action12_per_relief * (relief_mm - now_mm),
          .action_sd_mm = rod.sd * std::abs(relief_mm - now_mm),
          .floor_bass_mm = after.bass_mm - before.bass_mm,
          .floor_treble_mm = after.treble_mm - before.treble_mm};
}

/// Moves the limits instead of the strings.
EndQuestion with_limits_moved(EndQuestion end, double action_mm, double floor_mm) {
  end.floor_mm += floor_mm - action_mm;
  end.ceiling_mm -= action_mm;
  end.wanted_mm -= action_mm;
  return end;
}

double cost_of(const Turned& turned, const SaddleCase& asked) {
  const SaddleQuestion moved{
      .bass = with_limits_moved(asked.question.bass, turned.action_mm, turned.floor_bass_mm),
      .treble = with_limits_moved(asked.question.treble, turned.action_mm, turned.floor_treble_mm)};
  return saddle_cost(asked.actions, moved, {}, asked.limits);
}

/// The cheapest relief that is worth a turn; the one it has where none is.
Turned cheapest_turn(const SaddleCase& asked) {
  const SaddleLimits& limits = asked.limits;
  Turned best = turned_to(*asked.year.relief_mm, asked);
  double least = cost_of(best, asked) - limits.least_gain;
  const double span = limits.rod_relief_most - limits.rod_relief_least;
  const int steps = static_cast<int>(std::floor(span / limits.rod_relief_step + 1e-6));
  for (int i = 0; i <= steps; ++i) {
    const Turned turned = turned_to(limits.rod_relief_least + i * limits.rod_relief_step, asked);
    if (std::abs(turned.relief_mm - *asked.year.relief_mm) < limits.rod_turn_least - 1e-9) continue;
    const double cost = cost_of(turned, asked);
    if (cost >= least) continue;
    least = cost;
    best = turned;
  }
  return best;
}

void raise(std::vector<double>& heights_mm, double by_mm) {
  for (double& height : heights_mm) height += by_mm;
}

YearPaths year_after(const Turned& turned, const SaddleCase& asked) {
  YearPaths year = asked.year.home;
  for (YearPath& path : year.paths) {
    raise(path.bass_mm, turned.action_mm);
    raise(path.treble_mm, turned.action_mm);
    raise(path.floor_bass.rise_mm, turned.floor_bass_mm);
    raise(path.floor_treble.rise_mm, turned.floor_treble_mm);
    path.level_sd_bass_mm = std::hypot(path.level_sd_bass_mm, turned.action_sd_mm);
    path.level_sd_treble_mm = std::hypot(path.level_sd_treble_mm, turned.action_sd_mm);
  }
  return year;
}

void caution_rod(const Turned& turned, const SaddleCase& asked, SaddleOption& option) {
  const RodFigure& rod = *asked.request.rod;
  const double change_mm = turned.relief_mm - *asked.year.relief_mm;
  const std::string goes = change_mm > 0 ? "rises" : "falls";
  option.cautions.push_back(
      "Fret 12 " + goes + " by about " + moved_in_words(rod, change_mm) +
      (rod.turns == 0 ? ": how this neck bends has not been read yet. Read relief and action before and after the turn."
                      : ", as this neck's own turns have shown."));
  option.cautions.push_back(
      "An eighth of a turn at a time, tuned to pitch and read again. A rod that turns hard is not forced: one that "
      "breaks is in the neck. Ease the strings before tightening.");
}

}  // namespace

SaddleOption turn_rod_option(const SaddleCase& asked) {
  SaddleOption option;
  option.choice = SaddleChoice::turn_rod;
  option.worth = asked.limits.worth_turn_rod;
  option.title = "Turn the rod";
  if (!asked.request.rod) {
    refuse("No rod that can be turned is recorded for this neck.", option);
    return option;
  }
  if (!asked.year.relief_mm || asked.request.limits.floors.size() < 2) {
    refuse("Read the relief first.", option);
    return option;
  }
  const Turned turned = cheapest_turn(asked);
  if (turned.relief_mm == *asked.year.relief_mm) {
    refuse("Not needed: no other relief from " + decimals(asked.limits.rod_relief_least, 2) + " to " +
               mm_in_words(asked.limits.rod_relief_most) + " serves the year better.",
           option);
    return option;
  }
  const YearPaths year = year_after(turned, asked);
  fit_saddles(asked, year, {{"all year", {asked.whole_year, {0, 0}, EndActions(year, asked.whole_year)}}}, option);
  option.saddles.clear();
  option.set_bass_today += mm(turned.action_mm);
  option.set_treble_today += mm(turned.action_mm);
  option.relief_to_set = mm(turned.relief_mm);
  option.title += ": relief from " + decimals(*asked.year.relief_mm, 2) + " to " + mm_in_words(turned.relief_mm);
  caution_rod(turned, asked, option);
  return option;
}

}  // namespace tailblock
