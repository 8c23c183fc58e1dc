#include "setup/neck_angle.h"

#include <algorithm>
#include <cmath>

#include "season/words.h"
#include "setup/words.h"

namespace tailblock {
namespace {

NeckLever lever_of(const NeckAngleRequest& request) {
  return {.scale_length = request.scale_length,
          .saddle_setback = request.saddle_setback,
          .body_joint_fret = request.body_joint_fret,
          .heel_depth = request.heel_depth};
}

void require_consistent(const NeckAngleRequest& request) {
  if (request.body_joint_fret > request.fret_count) {
    throw Refused("body_joint_fret: " + std::to_string(request.body_joint_fret) + " is outside 10.." +
                  std::to_string(request.fret_count));
  }
  const auto in_order = [](const char* name, const NeckSide& side) {
    if (side.exposure_least < side.exposure_most) return;
    throw Refused(std::string(name) + ".exposure_most_mm: " + plain_number(in_mm(side.exposure_most)) +
                  " mm is not over the least, " + plain_number(in_mm(side.exposure_least)) + " mm");
  };
  in_order("bass", request.bass);
  in_order("treble", request.treble);
}

double saddle_per_action(const NeckAngleRequest& request) {
  return (request.scale_length + request.saddle_setback) / fret_from_nut(request.scale_length, 12);
}

AskedExposure asked_of(const NeckAngleRequest& request, const NeckSide& side) {
  const double k = saddle_per_action(request);
  return {.mm = in_mm(side.exposure + k * (side.action12_wanted - side.action12)),
          .sd_mm = std::hypot(in_mm(request.exposure_sd), k * in_mm(side.action12_sd)),
          .least_mm = in_mm(side.exposure_least),
          .middle_mm = in_mm(side.exposure_wanted),
          .most_mm = in_mm(side.exposure_most)};
}

std::vector<HeelDepth> heel_taper(const NeckAngleRequest& request, const NeckTurn& turn, const NeckLimits& limits) {
  std::vector<HeelDepth> lines;
  const auto at = [&](Length depth, std::string where) {
    lines.push_back({depth, depth / request.heel_depth * turn.heel_removal, std::move(where)});
  };
  const Length wood = request.heel_depth - request.heel_cap_thickness;
  at({}, "edge under the board: nothing");
  for (int n = 1; mm(n * limits.heel_step) < wood - mm(limits.heel_step / 4); ++n) at(mm(n * limits.heel_step), "");
  if (in_mm(request.heel_cap_thickness) > 0) at(wood, "heel, over its cap");
  at(request.heel_depth, "outside of the heel cap");
  return lines;
}

std::vector<TonguePlace> tongue(const NeckAngleRequest& request, const NeckTurn& turn) {
  constexpr Length past_last_fret = mm(8);  // a board ends a little beyond its last fret
  std::vector<TonguePlace> places;
  const Length joint = fret_from_nut(request.scale_length, request.body_joint_fret);
  const double slope = std::tan(in_radians(turn.turn));
  const auto at = [&](int fret, Length from_joint) { places.push_back({fret, from_joint, slope * from_joint}); };
  for (int fret = request.body_joint_fret + 1; fret <= request.fret_count; ++fret) {
    at(fret, fret_from_nut(request.scale_length, fret) - joint);
  }
  at(0,
     request.tongue_length.value_or(fret_from_nut(request.scale_length, request.fret_count) - joint + past_last_fret));
  return places;
}

NeckSideAfter side_after(const NeckAngleRequest& request, const NeckTurn& turn, const NeckSide& side, Length rise) {
  const NeckLever lever = lever_of(request);
  const double k = saddle_per_action(request);
  NeckSideAfter after;
  after.exposure_asked = mm(asked_of(request, side).mm);
  after.exposure_asked_highest = after.exposure_asked - k * side.highest_over_mean;
  after.saddle_raise = after.exposure_asked + rise - side.exposure;
  after.exposure = side.exposure + after.saddle_raise;
  const StringBeforeTurn before{
      .nut_over_frets = request.nut_over_frets,
      .saddle_over_frets = request.nut_over_frets + k * (side.action12 - request.nut_over_frets)};
  const auto turned = [&](Length raise) {
    return after_turn(lever, request.hinge_under_frets, turn.turn, before, raise);
  };
  after.action12_saddle_kept = turned({}).action12;
  after.action12 = turned(after.saddle_raise).action12;
  return after;
}

/// The straightedge lies on the frets: damp wood lifts the bridge towards it, a bow of the neck points it downward.
void correct_straightedge(const NeckAngleRequest& request, NeckAngleResult& result) {
  if (!request.straightedge_over_bridge) return;
  const Length over_mean = 0.5 * (request.bass.today_over_mean + request.treble.today_over_mean);
  const Length joint = fret_from_nut(request.scale_length, request.body_joint_fret);
  const Length D = neck_turn(lever_of(request), {}).joint_to_saddle;
  result.straightedge_by_season = saddle_per_action(request) * over_mean;
  result.straightedge_by_relief =
      4 * (D / (joint - fret_from_nut(request.scale_length, 1))) * (request.relief - request.relief_wanted);
  result.straightedge_of_year =
      *request.straightedge_over_bridge + result.straightedge_by_season + result.straightedge_by_relief;
}

void count_years(const NeckAngleRequest& request, NeckAngleResult& result) {
  if (!request.drift_mm_per_year) return;
  const double room_mm =
      std::max(0.0, -under_least_mm(asked_of(request, request.bass), asked_of(request, request.treble)));
  const double k = saddle_per_action(request);
  const auto years = [&](double drift) -> std::optional<double> {
    constexpr double nobody_waits = 200;
    if (!(drift > 0) || room_mm > k * drift * nobody_waits) return std::nullopt;
    return room_mm / (k * drift);
  };
  result.years_left = years(request.drift_mm_per_year->median);
  result.years_left_least = years(request.drift_mm_per_year->high);
}

std::string years_in_words(double years) {
  return years < 1 ? "under a year" : counted(static_cast<std::size_t>(std::lround(years)), "year");
}

std::string verdict_words(const NeckAngleRequest& request, const NeckAngleResult& result) {
  const std::string asked = "set right for the year, the saddle would stand out by " +
                            both_ends_in_words(in_mm(result.bass.exposure_asked), in_mm(result.treble.exposure_asked));
  const std::string least =
      both_ends_in_words(in_mm(request.bass.exposure_least), in_mm(request.treble.exposure_least));
  const std::string uncertain = mm_in_words(in_mm(result.uncertainty));
  switch (result.verdict) {
    case NeckVerdict::called_for:
      return "The neck angle is called for: " + asked + ", under the least of " + least +
             " by more than twice the uncertainty of " + uncertain + ".";
    case NeckVerdict::withheld:
      return "No verdict: " + asked + ", too near the least of " + least + " for an uncertainty of " + uncertain +
             "; read action and exposure again in another season.";
    case NeckVerdict::too_tall:
      return "Not this way: " + asked + ", too tall already; taking wood off the heel would make it worse.";
    case NeckVerdict::not_needed:
      break;
  }
  std::string words = "Not called for: " + asked + ", over the least of " + least +
                      " by more than twice the uncertainty of " + uncertain;
  if (result.years_left) words += "; at the drift measured that lasts about " + years_in_words(*result.years_left);
  return words + ".";
}

void caution_evidence(const NeckAngleRequest& request, const NeckLimits& limits, NeckAngleResult& result) {
  auto& said = result.cautions;
  if (result.straightedge_of_year) {
    const double line = in_mm(*result.straightedge_of_year);
    const double sd = in_mm(request.straightedge_sd);
    const bool low = line < limits.straightedge_low - 2 * sd;
    const bool fine = line > limits.straightedge_low + 2 * sd;
    if (fine && result.verdict == NeckVerdict::called_for) {
      said.push_back("The straightedge, " + mm_in_words(line) +
                     " over the bridge for the year, does not speak of a low neck: read action, exposure and nut again "
                     "before the neck is touched.");
    }
    if (low && result.verdict == NeckVerdict::not_needed) {
      said.push_back("The straightedge, " + mm_in_words(line) +
                     " over the bridge for the year, is low although the saddle has room: was the bridge made lower?");
    }
  }
  const Length highest = std::min(result.bass.exposure_asked_highest, result.treble.exposure_asked_highest);
  if (result.verdict == NeckVerdict::not_needed &&
      (result.bass.exposure_asked_highest < request.bass.exposure_least ||
       result.treble.exposure_asked_highest < request.treble.exposure_least)) {
    said.push_back("A saddle cut for the year's highest month alone would stand out by " + mm_in_words(in_mm(highest)) +
                   " only: the season uses up what is left.");
  }
  if (result.years_left_least && *result.years_left_least < limits.years_few &&
      result.verdict != NeckVerdict::called_for) {
    said.push_back("If it drifts as fast as it may, the saddle is used up in " +
                   years_in_words(*result.years_left_least) + ".");
  }
}

void caution_work(const NeckAngleRequest& request, const NeckLimits& limits, const NeckTurn& turn, Length heel_error,
                  NeckAngleResult& result) {
  auto& said = result.cautions;
  const Length at_saddle = turn.saddle_per_heel * heel_error;
  said.push_back("Each " + mm_in_words(in_mm(heel_error)) + " of error at the heel cap is " +
                 mm_in_words(in_mm(at_saddle)) + " at the saddle and " +
                 mm_in_words(in_mm(at_saddle) / saddle_per_action(request)) + " at fret 12.");
  const bool idle = result.verdict == NeckVerdict::not_needed && !request.rise;
  const double shim = idle ? 0 : in_mm(result.tongue.back().shim);
  if (shim > limits.tongue_shim_least) {
    said.push_back("Glued down without its shim the board falls away beyond the joint, by " + mm_in_words(shim) +
                   " at its end: a kink at the joint, no harm to clean notes but to look and feel.");
  }
  if (shim < -limits.tongue_shim_least) {
    said.push_back("The board would rise beyond the joint by " + mm_in_words(-shim) +
                   " at its end: thin the tongue or level the frets there, or high notes buzz.");
  }
  said.push_back(
      "Only after season, relief, loose braces and a loose bridge are cleared, and read at 45 to 50 % humidity.");
}

}  // namespace

NeckAngleResult neck_angle(const NeckAngleRequest& request, const NeckLimits& limits, Length heel_error,
                           const std::vector<NeckStep>& steps) {
  constexpr Length step = mm(0.05);
  require_valid(request);
  require_consistent(request);
  const AskedExposure bass = asked_of(request, request.bass), treble = asked_of(request, request.treble);
  NeckAngleResult result;
  result.verdict = neck_verdict(bass, treble);
  result.uncertainty = mm(uncertainty_mm(bass, treble));
  result.rise = request.rise.value_or(neck_rise(bass, treble, step));
  const NeckTurn turn = neck_turn(lever_of(request), result.rise);
  result.turn = turn.turn;
  result.heel = heel_taper(request, turn, limits);
  result.tongue = tongue(request, turn);
  result.bass = side_after(request, turn, request.bass, result.rise);
  result.treble = side_after(request, turn, request.treble, result.rise);
  const Length nut_over_hinge = request.nut_over_frets + request.hinge_under_frets;
  const Length joint = fret_from_nut(request.scale_length, request.body_joint_fret);
  const double angle = in_radians(turn.turn);
  result.nut_back = std::sin(angle) * nut_over_hinge - (1 - std::cos(angle)) * joint;
  const double k = saddle_per_action(request);
  const Length saddle_now =
      request.nut_over_frets + k * (0.5 * (request.bass.action12 + request.treble.action12) - request.nut_over_frets);
  result.saddle_from_nut_change =
      after_turn(lever_of(request), request.hinge_under_frets, turn.turn,
                 {.nut_over_frets = request.nut_over_frets, .saddle_over_frets = saddle_now},
                 0.5 * (result.bass.saddle_raise + result.treble.saddle_raise))
          .saddle_from_nut_change;
  result.saddle_per_heel = turn.saddle_per_heel;
  result.action12_per_heel = turn.saddle_per_heel / k;
  correct_straightedge(request, result);
  count_years(request, result);
  result.words = verdict_words(request, result);
  caution_evidence(request, limits, result);
  caution_work(request, limits, turn, heel_error, result);
  result.steps = steps;
  return result;
}

}  // namespace tailblock
