#include <algorithm>
#include <cmath>

#include "season/words.h"
#include "setup/saddle_options.h"
#include "setup/words.h"

namespace tailblock {
namespace {

/// Where the year would put the top of one saddle if the bridge set no limits.
struct AskedExposure {
  double mm;
  double sd_mm;
  double under_mm;  ///< how far under the least a saddle stands out, the break angle apart; negative is over it
  double over_mm;   ///< how far over the most
};

AskedExposure asked_exposure(const SaddleCase& asked, bool bass, int steps) {
  const EndQuestion& end = bass ? asked.question.bass : asked.question.treble;
  const double raise_sd_mm = mean_action(asked.year.home, bass, asked.whole_year).sd / end.action_per_saddle;
  const double exposure = end.exposure_mm + steps * asked.limits.cut_precision;
  return {exposure, std::hypot(in_mm(asked.request.bridge.exposure_sd), raise_sd_mm),
          end.bounds.trade_least_mm - exposure, exposure - end.bounds.most_mm};
}

double middle_of_usual_mm(const EndQuestion& end) { return (end.bounds.usual_least_mm + end.bounds.usual_most_mm) / 2; }

std::string exposures_in_words(const AskedExposure& bass, const AskedExposure& treble) {
  return both_ends_in_words(bass.mm, treble.mm);
}

/// By how much the neck must turn so that the same action is had with the saddle in the middle of its usual range.
///
///     t = rise heel_depth/D,  turn = atan(rise/D),  D = L 2^(-n/12) + c      n body joint fret, c setback
///
/// Source: derived here (similar triangles about the edge of the fingerboard at the body joint); the neck alone turns.
void turn_neck(const SaddleCase& asked, double rise_mm, double rise_sd_mm, SaddleOption& option) {
  const SaddleRequest& request = asked.request;
  const double joint_to_saddle_mm =
      in_mm(request.scale_length) * std::exp2(-request.body_joint_fret / 12.0) + in_mm(request.saddle_setback);
  const double heel_per_saddle = in_mm(request.heel_depth) / joint_to_saddle_mm;
  option.heel_removal = mm(rise_mm * heel_per_saddle);
  option.heel_removal_sd = mm(rise_sd_mm * heel_per_saddle);
  option.neck_turn = radians(std::atan(rise_mm / joint_to_saddle_mm));
  const double error_mm = asked.limits.heel_error;
  option.cautions.push_back("Each " + mm_in_words(error_mm) + " of error at the heel cap is " +
                            mm_in_words(error_mm / heel_per_saddle) + " at the saddle and " +
                            mm_in_words(error_mm / heel_per_saddle * asked.question.bass.action_per_saddle) +
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
  const double under_mm = std::max(bass.under_mm, treble.under_mm);
  const double over_mm = std::max(bass.over_mm, treble.over_mm);
  const double sd_mm = std::max(bass.sd_mm, treble.sd_mm);
  if (over_mm > 0) {
    refuse("Not this way: one saddle would stand out by " + exposures_in_words(bass, treble) +
               ", too tall. The neck is set too far back or the top has sunk; taking wood off the heel would make it "
               "worse.",
           option);
    return option;
  }
  if (under_mm < -2 * sd_mm) {
    refuse("Not needed: one saddle would stand out by " + exposures_in_words(bass, treble) +
               ", well over the least that a saddle stands out.",
           option);
    return option;
  }
  if (under_mm < 2 * sd_mm) {
    refuse("No verdict: one saddle would stand out by " + exposures_in_words(bass, treble) +
               ", too near the least for an uncertainty of " + mm_in_words(sd_mm) +
               ". Read it again in another season.",
           option);
    return option;
  }
  const double rise_mm =
      (middle_of_usual_mm(asked.question.bass) - bass.mm + middle_of_usual_mm(asked.question.treble) - treble.mm) / 2;
  const int rise_steps = static_cast<int>(std::lround(rise_mm / asked.limits.cut_precision));
  fit_saddles(asked, home, {{"all year", {asked.whole_year, steps, asked.actions}, rise_steps}}, option);
  turn_neck(asked, rise_steps * asked.limits.cut_precision, sd_mm, option);
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

}  // namespace tailblock
