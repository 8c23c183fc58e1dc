#include <algorithm>

#include "season/words.h"
#include "setup/saddle_options.h"
#include "setup/words.h"

namespace tailblock {
namespace {

/// What an option that cannot be done shows: how things are without it.
void take_figures_of(const SaddleOption& leave, SaddleOption& refused) {
  refused.days = leave.days;
  refused.set_bass_today = leave.set_bass_today;
  refused.set_treble_today = leave.set_treble_today;
  refused.set_today_sd = leave.set_today_sd;
  refused.cost = leave.cost;
}

bool something_else_moved(const YearToServe& year) {
  return std::any_of(year.last_change.begin(), year.last_change.end(),
                     [](const ChangeShare& change) { return change.something_else; });
}

bool nothing_learnt(const YearToServe& year, const SaddleLimits& limits) {
  return year.prior_weight >= limits.nothing_learnt;
}

/// The cheapest option, the work counted in; of two as cheap the one that is less work. Where the season is not known
/// yet, only what can be undone; where something else moved, nothing.
std::size_t best_of(const std::vector<SaddleOption>& options, const YearToServe& year, const SaddleLimits& limits) {
  std::size_t best = 0;
  if (something_else_moved(year)) return best;
  for (std::size_t i = 1; i < options.size(); ++i) {
    const SaddleOption& option = options[i];
    if (!option.possible || (nothing_learnt(year, limits) && !option.reversible)) continue;
    if (option.cost + option.worth < options[best].cost + options[best].worth) best = i;
  }
  return best;
}

std::string low_and_high(const DaysOutside& days) {
  return days_in_words(days.low_either) + " too low and " + days_in_words(days.high_either) + " too high";
}

/// Outside on few days as likely as not, and in a bad year on three times as many.
bool serves(const SaddleOption& leave, const SaddleLimits& limits) {
  const auto few = [&](const Estimate& days) {
    return days.median <= limits.few_days && days.high <= 3 * limits.few_days;
  };
  return few(leave.days.low_either) && few(leave.days.high_either);
}

/// What comes before the advice while hardly anything is known of this guitar.
std::string until_it_is_known(const SaddleCase& asked, const SaddleOption& chosen) {
  if (!nothing_learnt(asked.year, asked.limits)) return {};
  const bool shim =
      asked.request.bridge.slot == SaddleSlot::closed && !chosen.saddles.empty() && chosen.saddles[0].new_bone;
  const std::string wait = "Before bone is cut, one more reading in another season. ";
  if (chosen.choice == SaddleChoice::leave) return wait + "Until then: ";
  return wait + (shim ? "If it cannot wait, with a marked shim rather than new bone: " : "If it cannot wait: ");
}

std::string advice_for(const SaddleCase& asked, const std::vector<SaddleOption>& options, std::size_t best) {
  const SaddleOption& leave = options[0];
  const SaddleOption& chosen = options[best];
  const std::string as_it_is = low_and_high(leave.days);
  if (something_else_moved(asked.year)) {
    return "Leave the saddle: something other than the season moved. Find that first; as it is, expect " + as_it_is +
           " in the year.";
  }
  const std::string wait = until_it_is_known(asked, chosen);
  if (best == 0) {
    return wait +
           (serves(leave, asked.limits)
                ? "Leave the saddle, it serves the year."
                : "Leave the saddle: nothing that can be done here saves enough days to be worth the work.") +
           " Expect " + as_it_is + " in the year.";
  }
  const bool unusual =
      std::any_of(chosen.checks.begin(), chosen.checks.end(), [](const LimitCheck& check) { return !check.usual; });
  return wait + chosen.title + ". Expect " + low_and_high(chosen.days) + " in the year; as it is, " + as_it_is + "." +
         (unusual ? " It goes outside what is usual on this bridge: read its cautions first." : "");
}

void caution_season(const YearToServe& year, const SaddleLimits& limits, std::vector<std::string>& cautions) {
  for (const ChangeShare& change : year.last_change) {
    if (!change.something_else) continue;
    cautions.push_back("SOMETHING ELSE MOVED between " + day_in_words(change.from) + " and " + day_in_words(change.to) +
                       ": no bone is cut until it is found. " + change.verdict);
  }
  if (nothing_learnt(year, limits)) {
    cautions.push_back(
        "ONE MORE READING IN ANOTHER SEASON before bone is cut: this forecast is nearly all from guitars of the kind "
        "and "
        "hardly from this one. Until then only what can be undone.");
  }
}

NeckLine neck_of(const SaddleRequest& request) {
  NeckLine neck;
  neck.scale_length = request.scale_length;
  neck.body_joint_fret = request.body_joint_fret;
  return neck;
}

void caution_relief(const SaddleRequest& request, const YearToServe& year, const SaddleLimits& limits,
                    std::vector<std::string>& cautions) {
  const RodFigure rod = request.rod.value_or(rod_figure(neck_of(request), limits.rod_figure_sd, {}));
  const std::string worth = " 0.10 mm of it is worth " + moved_in_words(rod, 0.1) + " at fret 12.";
  if (!year.relief_mm) {
    cautions.push_back("Relief was not read: read and set it before the saddle." + worth);
  } else if (!(limits.relief_least <= *year.relief_mm && *year.relief_mm <= limits.relief_most)) {
    cautions.push_back("Relief was last read at " + mm_in_words(*year.relief_mm) + ", outside " +
                       decimals(limits.relief_least, 2) + ".." + mm_in_words(limits.relief_most) +
                       ": set it before the saddle." + worth);
  }
}

void caution_wood(const YearToServe& year, const SaddleLimits& limits, std::vector<std::string>& cautions) {
  if (limits.wood_moisture_least <= year.moisture_today_percent &&
      year.moisture_today_percent <= limits.wood_moisture_most) {
    return;
  }
  cautions.push_back("The wood is at about " + decimals(year.moisture_today_percent, 1) + " % today, outside " +
                     decimals(limits.wood_moisture_least, 0) + " to " + decimals(limits.wood_moisture_most, 0) +
                     " %: the careful way is some days at 45 to 50 % humidity before the cut. The figures to set today "
                     "allow for the air, within what they say.");
}

void caution_room(const YearToServe& year, const SaddleLimits& limits, std::vector<std::string>& cautions) {
  if (year.relative_humidity.empty()) return;
  const double driest = *std::min_element(year.relative_humidity.begin(), year.relative_humidity.end());
  if (driest >= limits.room_humidity_cracks) return;
  cautions.push_back("The room is expected to fall to " + percent_in_words(driest) +
                     ": dry enough to crack a top, whatever the saddle. Tell the owner.");
}

void caution_bridge(const SaddleRequest& request, std::vector<std::string>& cautions) {
  const BridgeMeasures& bridge = request.bridge;
  if (!bridge.break_angle && !bridge.pin_to_saddle) {
    cautions.push_back(
        "The break angle was not measured, so it is not checked: measure it, or from pin hole to saddle.");
  }
  if (!bridge.slot_depth) {
    cautions.push_back(
        "The slot's depth is not known, so neither the blank nor whether more bone stands out of the slot than in it.");
  }
}

}  // namespace

SaddleResult choose_saddle(const SaddleRequest& request, const YearToServe& year, const SaddleLimits& limits) {
  const SaddleCase asked(request, year, limits);
  SaddleResult result;
  result.options = {leave_option(asked),       turn_rod_option(asked),   one_saddle_option(asked),
                    two_saddles_option(asked), humid_room_option(asked), neck_angle_option(asked)};
  for (SaddleOption& option : result.options) {
    if (!option.possible && option.saddles.empty()) take_figures_of(result.options[0], option);
  }
  const std::size_t best = best_of(result.options, year, limits);
  result.best = static_cast<int>(best);
  result.advice = advice_for(asked, result.options, best);
  result.reading_sd = mm(year.reading_sd_mm);
  result.saddle_per_action = 1 / asked.question.bass.action_per_saddle;
  result.cut_precision = mm(limits.cut_precision);
  caution_season(year, limits, result.cautions);
  caution_relief(request, year, limits, result.cautions);
  caution_wood(year, limits, result.cautions);
  caution_room(year, limits, result.cautions);
  caution_bridge(request, result.cautions);
  return result;
}

}  // namespace tailblock
