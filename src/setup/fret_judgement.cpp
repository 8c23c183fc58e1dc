#include "setup/fret_judgement.h"

#include <algorithm>
#include <cmath>

namespace tailblock {
namespace {

constexpr double relief_step = 0.01;  // mm, a third of the thinnest feeler

bool clean(const std::vector<NoteOverFret>& notes) { return touching_notes(notes) == 0; }

/// What a crown's own reading cannot tell from level.
double level_within(const FretCase& c, const CrownSide& side, std::size_t i) {
  return std::max(c.limits.level_within, c.limits.withheld_within_sd * side.sd(i));
}

bool is_level(const FretCase& c, const CrownSide& side) {
  const auto joint = static_cast<std::size_t>(c.request.neck.body_joint_fret);
  std::vector<bool> on_neck(side.departure.size());
  for (std::size_t i = 0; i < joint; ++i) on_neck[i] = true;
  const std::vector<double> line = best_line(c.from_nut, side.departure, on_neck);
  for (std::size_t i = 0; i < side.departure.size(); ++i) {
    const double off = side.departure[i] - line[i];
    const double within = level_within(c, side, i);
    // A tongue that falls away is level enough.
    if (off > within || (i < joint && off < -within)) return false;
  }
  return true;
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, middle);
  return *middle;
}

/// A line that a quarter of the crowns, worn or proud, hardly moves: median of the slopes between every two crowns, and
/// median height. Theil 1950, Sen 1968 (from memory).
std::vector<double> steady_line(const std::vector<double>& from_nut, const std::vector<double>& departures) {
  std::vector<double> slopes, heights, line;
  for (std::size_t i = 0; i < from_nut.size(); ++i) {
    for (std::size_t j = i + 1; j < from_nut.size(); ++j) {
      slopes.push_back((departures[j] - departures[i]) / (from_nut[j] - from_nut[i]));
    }
  }
  const double slope = median(slopes);
  for (std::size_t i = 0; i < from_nut.size(); ++i) heights.push_back(departures[i] - slope * from_nut[i]);
  const double height = median(heights);
  for (const double x : from_nut) line.push_back(height + slope * x);
  return line;
}

/// The smallest change of relief in one direction, 0 when none within the reliefs that may be aimed at.
double smallest_change(const FretCase& c, const CrownPair& crowns, double direction, double action_per_relief) {
  const double now = in_mm(c.crowns.relief);
  for (int step = 1; step <= 100; ++step) {
    const double change = direction * step * relief_step;
    const double after = now + change;
    if (after < c.limits.relief_aim_least || after > c.limits.relief_aim_most) continue;
    FretSetting turned = c.setting;
    turned.relief = mm(after);
    turned.action_raise_mm = std::max(0.0, change) * action_per_relief;
    if (clean(c.notes.over_frets(crowns, turned))) return change;
  }
  return 0;
}

/// How many mm fret 12 rises for a mm of relief: this neck's own turns, or the usual range.
struct ReliefGain {
  double low, high;
};

ReliefGain relief_gain(const FretCase& c) {
  const auto& rod = c.request.rod;
  if (!rod || rod->turns == 0) return {c.limits.relief_gain_low, c.limits.relief_gain_high};
  const double within = c.limits.withheld_within_sd * rod->sd;
  return {std::max(0.0, rod->action12_per_relief - within), rod->action12_per_relief + within};
}

}  // namespace

bool crowns_are_level(const FretCase& c) { return is_level(c, c.crowns.bass) && is_level(c, c.crowns.treble); }

std::optional<ReliefInstead> relief_that_does(const FretCase& c, const CrownPair& crowns) {
  const ReliefGain gain = relief_gain(c);
  const double tighter = smallest_change(c, crowns, -1, 0);
  double looser_low = smallest_change(c, crowns, 1, gain.high);
  const double looser_high = smallest_change(c, crowns, 1, gain.low);
  if (looser_low > 0 && looser_high == 0) looser_low = 0;
  if (looser_high * gain.high > c.limits.relief_rise_most) looser_low = 0;
  const bool loosen = looser_low > 0 && (tighter == 0 || looser_high <= -tighter);
  if (!loosen && tighter == 0) return std::nullopt;
  const double least = loosen ? looser_low : tighter, most = loosen ? looser_high : tighter;
  const double now = in_mm(c.crowns.relief);
  return ReliefInstead{.change_least = mm(least),
                       .change_most = mm(most),
                       .relief_after_least = mm(now + least),
                       .relief_after_most = mm(now + most),
                       .action12_rise_most = mm(loosen ? most * gain.high : 0)};
}

std::optional<double> nut_rise(const FretCase& c) {
  double rise = 0;
  for (const NoteOverFret& note : c.notes_with(c.level)) {
    if (note.shortfall <= 1e-6) continue;
    if (note.stopped_fret > 0 || note.fret >= 12) return std::nullopt;
    const double share = 1 - c.from_nut[static_cast<std::size_t>(note.fret - 1)] / c.from_nut[11];
    rise = std::max(rise, note.shortfall / share);
  }
  return rise > 0 ? std::optional(rise) : std::nullopt;
}

WornFrets worn_frets(const FretCase& c) {
  const std::vector<double> bass = steady_line(c.from_nut, c.found.bass);
  const std::vector<double> treble = steady_line(c.from_nut, c.found.treble);
  WornFrets worn{.frets = {}, .renewed = c.found};
  for (std::size_t i = 0; i < c.from_nut.size(); ++i) {
    const double below = std::max(bass[i] - c.found.bass[i] - level_within(c, c.crowns.bass, i),
                                  treble[i] - c.found.treble[i] - level_within(c, c.crowns.treble, i));
    if (below <= 0) continue;
    worn.frets.push_back(static_cast<int>(i) + 1);
    worn.renewed.bass[i] = bass[i];
    worn.renewed.treble[i] = treble[i];
  }
  return worn;
}

bool stands_out_of_the_readings(const FretCase& c, const std::vector<NoteOverFret>& notes) {
  return std::ranges::any_of(notes, [&](const NoteOverFret& note) {
    return note.shortfall > 1e-6 && note.shortfall > c.limits.withheld_within_sd * c.notes.shortfall_sd(note, c.crowns);
  });
}

}  // namespace tailblock
