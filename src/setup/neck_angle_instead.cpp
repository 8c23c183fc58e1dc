#include <algorithm>
#include <cmath>

#include "season/words.h"
#include "setup/neck_angle.h"
#include "setup/saddle_options.h"
#include "setup/words.h"

namespace tailblock {
namespace {

double middle_of_usual_mm(const EndQuestion& end) { return (end.bounds.usual_least_mm + end.bounds.usual_most_mm) / 2; }

/// Where the year would put the top of one saddle if the bridge set no limits.
AskedExposure asked_exposure(const SaddleCase& asked, bool bass, int steps) {
  const EndQuestion& end = bass ? asked.question.bass : asked.question.treble;
  const double raise_sd_mm = mean_action(asked.year.home, bass, asked.whole_year).sd / end.action_per_saddle;
  return {.mm = end.exposure_mm + steps * asked.limits.cut_precision,
          .sd_mm = std::hypot(in_mm(asked.request.bridge.exposure_sd), raise_sd_mm),
          .least_mm = end.bounds.trade_least_mm,
          .middle_mm = middle_of_usual_mm(end),
          .most_mm = end.bounds.most_mm};
}

NeckSide need_of_side(const SaddleCase& asked, bool bass, int steps) {
  const EndQuestion& end = bass ? asked.question.bass : asked.question.treble;
  const WithSpread mean = mean_action(asked.year.home, bass, asked.whole_year);
  return {.action12 = mm(mean.value),
          .action12_wanted = mm(mean.value + raised_mm(end, steps, asked.limits)),
          .action12_sd = mm(mean.sd),
          .exposure = mm(end.exposure_mm),
          .exposure_wanted = mm(middle_of_usual_mm(end)),
          .exposure_least = mm(end.bounds.trade_least_mm),
          .exposure_most = mm(end.bounds.most_mm),
          .highest_over_mean = {},
          .today_over_mean = mm(today_over_mean(asked.year.home, bass, asked.whole_year, asked.year.today).value)};
}

std::string exposures_in_words(const AskedExposure& bass, const AskedExposure& treble) {
  return both_ends_in_words(bass.mm, treble.mm);
}

/// The neck turned so far that the same action is had with the saddle so much taller.
void turn_neck(const SaddleCase& asked, Length rise, double rise_sd_mm, SaddleOption& option) {
  const SaddleRequest& request = asked.request;
  const NeckTurn turn = neck_turn({.scale_length = request.scale_length,
                                   .saddle_setback = request.saddle_setback,
                                   .body_joint_fret = request.body_joint_fret,
                                   .heel_depth = request.heel_depth},
                                  rise);
  option.heel_removal = turn.heel_removal;
  option.heel_removal_sd = mm(rise_sd_mm / turn.saddle_per_heel);
  option.neck_turn = turn.turn;
  const double error_mm = asked.limits.heel_error;
  option.cautions.push_back("Each " + mm_in_words(error_mm) + " of error at the heel cap is " +
                            mm_in_words(error_mm * turn.saddle_per_heel) + " at the saddle and " +
                            mm_in_words(error_mm * turn.saddle_per_heel * asked.question.bass.action_per_saddle) +
                            " at fret 12.");
}

}  // namespace

SaddleOption neck_angle_option(const SaddleCase& asked) {
  SaddleOption option;
  option.choice = SaddleChoice::neck_angle;
  option.worth = asked.limits.worth_neck_angle;
  option.title = "Turn the neck instead";
  option.reversible = false;
  const YearPaths& home = asked.year.home;
  const EndSteps steps = unbounded_heights(asked);
  const AskedExposure bass = asked_exposure(asked, true, steps.bass);
  const AskedExposure treble = asked_exposure(asked, false, steps.treble);
  const double sd_mm = uncertainty_mm(bass, treble);
  const NeckVerdict verdict = neck_verdict(bass, treble);
  if (verdict == NeckVerdict::too_tall) {
    refuse("Not this way: one saddle would stand out by " + exposures_in_words(bass, treble) +
               ", too tall. The neck is set too far back or the top has sunk; taking wood off the heel would make it "
               "worse.",
           option);
    return option;
  }
  if (verdict == NeckVerdict::not_needed) {
    refuse("Not needed: one saddle would stand out by " + exposures_in_words(bass, treble) +
               ", well over the least that a saddle stands out.",
           option);
    return option;
  }
  if (verdict == NeckVerdict::withheld) {
    refuse("No verdict: one saddle would stand out by " + exposures_in_words(bass, treble) +
               ", too near the least for an uncertainty of " + mm_in_words(sd_mm) +
               ". Read it again in another season.",
           option);
    return option;
  }
  const Length step = mm(asked.limits.cut_precision);
  const Length rise = neck_rise(bass, treble, step);
  const int rise_steps = static_cast<int>(std::lround(rise / step));
  fit_saddles(asked, home, {{"all year", {asked.whole_year, steps, asked.actions}, rise_steps}}, option);
  turn_neck(asked, rise, sd_mm, option);
  option.title = "Set the neck back by " + decimals(in_degrees(*option.neck_turn), 2) + " degrees, " +
                 mm_in_words(in_mm(*option.heel_removal)) + " off the heel cap, with a new saddle";
  const auto broken =
      std::find_if(option.checks.begin(), option.checks.end(), [](const LimitCheck& check) { return !check.kept; });
  if (broken != option.checks.end())
    refuse("A limit would be broken: " + broken->limit + ", " + broken->figure + ".", option);
  option.cautions.push_back(
      "Only after season, relief, loose braces and a loose bridge are cleared, and read at 45 to 50 % humidity.");
  return option;
}

NeckNeed neck_need(const SaddleCase& asked) {
  const EndSteps steps = unbounded_heights(asked);
  return {need_of_side(asked, true, steps.bass), need_of_side(asked, false, steps.treble)};
}

}  // namespace tailblock
