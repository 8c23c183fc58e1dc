#include "setup/saddle_options.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "season/words.h"
#include "setup/words.h"

namespace tailblock {
namespace {

double action_per_saddle(const SaddleRequest& request) {
  return 0.5 / (1 + request.saddle_setback / request.scale_length);
}

EndQuestion end_question(const SaddleRequest& request, const SaddleLimits& limits, bool bass) {
  const ActionLimits& action = request.limits;
  return {.floor_mm = in_mm(bass ? action.lowest_bass : action.lowest_treble),
          .ceiling_mm = in_mm(bass ? action.highest_bass : action.highest_treble),
          .wanted_mm = in_mm(bass ? request.wanted_bass : request.wanted_treble),
          .action_per_saddle = action_per_saddle(request),
          .exposure_mm = in_mm(bass ? request.bridge.exposure_bass : request.bridge.exposure_treble),
          .pull_to_usual =
              request.bridge.slot == SaddleSlot::closed ? limits.pull_to_usual_closed : limits.pull_to_usual_open_ended,
          .bounds = exposure_bounds(request.bridge, limits, bass)};
}

}  // namespace

SaddleCase::SaddleCase(const SaddleRequest& asked, const YearToServe& ahead, const SaddleLimits& rules)
    : request(asked),
      year(ahead),
      limits(rules),
      question{end_question(asked, rules, true), end_question(asked, rules, false)},
      whole_year{0, ahead.home.count},
      actions(ahead.home, whole_year) {}

SaddleOption leave_option(const SaddleCase& asked) {
  SaddleOption option;
  option.choice = SaddleChoice::leave;
  option.title = "Leave the saddle as it is";
  fit_saddles(asked, asked.year.home, {{"all year", {asked.whole_year, {0, 0}, asked.actions}}}, option);
  option.saddles.clear();
  option.days_more_if_misread = 0;  // nothing is set
  return option;
}

SaddleOption one_saddle_option(const SaddleCase& asked) {
  SaddleOption option;
  option.choice = SaddleChoice::one_saddle;
  option.worth = asked.limits.worth_one_saddle;
  option.title = "One saddle for the whole year";
  const auto heights = best_heights(asked.actions, asked.question, asked.limits);
  if (!heights) {
    refuse_for_height(asked, option);
    return option;
  }
  fit_saddles(asked, asked.year.home, {{"all year", {asked.whole_year, *heights, asked.actions}}}, option);
  option.title += ", " + change_in_words(option.saddles[0]);
  option.reversible = can_be_put_back(asked.request.bridge.slot, option.saddles[0]);
  caution_held_back(asked, *heights, option);
  return option;
}

EndSteps unbounded_heights(const SaddleCase& asked) {
  constexpr double far_mm = 6;
  const auto freed = [](EndQuestion end) {
    ExposureBounds& bounds = end.bounds;
    bounds = {};
    bounds.least_mm = bounds.usual_least_mm = bounds.trade_least_mm = end.exposure_mm - far_mm;
    bounds.usual_most_mm = bounds.most_mm = end.exposure_mm + far_mm;
    return end;
  };
  return {*best_steps(asked.actions.bass, freed(asked.question.bass), asked.limits),
          *best_steps(asked.actions.treble, freed(asked.question.treble), asked.limits)};
}

bool can_be_put_back(SaddleSlot slot, const SaddleToMake& saddle) {
  const bool changed = saddle.raise_bass != mm(0) || saddle.raise_treble != mm(0);
  return !changed || saddle.new_bone || slot == SaddleSlot::closed;
}

void refuse(std::string why_not, SaddleOption& option) {
  option.possible = false;
  option.why_not = std::move(why_not);
}

void refuse_for_height(const SaddleCase& asked, SaddleOption& option) {
  const StepRange bass = steps_within(asked.question.bass, asked.limits);
  const bool stuck_at_bass = bass.least > bass.most;
  const ExposureBounds& stuck = stuck_at_bass ? asked.question.bass.bounds : asked.question.treble.bounds;
  refuse(std::string(stuck_at_bass ? "No height at the bass" : "No height at the treble") + " is both over " +
             mm_in_words(stuck.least_mm) + " (" + stuck.least_because + ") and under " + mm_in_words(stuck.most_mm) +
             " (" + stuck.most_because + ").",
         option);
}

void caution_held_back(const SaddleCase& asked, EndSteps steps, SaddleOption& option) {
  const EndSteps free = unbounded_heights(asked);
  const auto check = [&](const char* where, const EndQuestion& end, int made, int asked_for) {
    const double exposure_mm = end.exposure_mm + asked_for * asked.limits.cut_precision;
    const double short_by_mm = (asked_for - made) * asked.limits.cut_precision;
    if (exposure_mm > end.bounds.most_mm + 1e-9) {
      option.cautions.push_back("The year asks for " + mm_in_words(short_by_mm) + " more at the " + where + " than " +
                                end.bounds.most_because + " allows.");
    } else if (exposure_mm < end.bounds.least_mm - 1e-9) {
      option.cautions.push_back("The year asks for " + mm_in_words(-short_by_mm) + " less at the " + where + " than " +
                                end.bounds.least_because + " allows." +
                                (end.bounds.least_mm > end.bounds.trade_least_mm ? " Ramp the pin holes first." : ""));
    }
  };
  check("bass", asked.question.bass, steps.bass, free.bass);
  check("treble", asked.question.treble, steps.treble, free.treble);
}

}  // namespace tailblock
