#include <algorithm>
#include <cmath>

#include "season/words.h"
#include "setup/saddle_options.h"
#include "setup/words.h"

namespace tailblock {
namespace {

constexpr int days_in_month = 30;
constexpr int late_days = 14;
constexpr int year_least_days = 360;

std::vector<double> expected_bass(const YearPaths& year) {
  std::vector<double> daily(static_cast<std::size_t>(year.count));
  for (const YearPath& path : year.paths) {
    for (std::size_t t = 0; t < daily.size(); ++t) daily[t] += path.weight * path.bass_mm[t];
  }
  return daily;
}

/// Mean of the `count` days from day `from` on, past the end of the year on from its beginning.
double mean_from(const std::vector<double>& daily, int from, int count) {
  double sum = 0;
  for (int t = from; t < from + count; ++t) sum += daily[static_cast<std::size_t>(t) % daily.size()];
  return sum / count;
}

/// Highest less lowest 30-day mean of the bass action that is expected.
double swing_mm(const YearPaths& year) {
  const std::vector<double> daily = expected_bass(year);
  double lowest = 1e300, highest = -1e300;
  for (int t = 0; t < year.count; ++t) {
    const double mean = mean_from(daily, t, days_in_month);
    lowest = std::min(lowest, mean);
    highest = std::max(highest, mean);
  }
  return highest - lowest;
}

int days_in(Stretch part, int count) {
  return part.from < part.until ? part.until - part.from : count - part.from + part.until;
}

/// "winter" where the taller saddle is in around the new year and the room is dry then, as a heated home in the north
/// is; else by the air.
bool taller_is_for_winter(const YearToServe& year, Stretch taller_in) {
  constexpr double heated_home_is_under = 0.5;
  const Date middle = year.home.first + std::chrono::days(taller_in.from + days_in(taller_in, year.home.count) / 2);
  const auto month = static_cast<unsigned>(std::chrono::year_month_day(middle).month());
  const bool new_year = month >= 11 || month <= 3;
  if (year.relative_humidity.empty()) return new_year;
  return new_year &&
         mean_from(year.relative_humidity, taller_in.from, days_in(taller_in, year.home.count)) < heated_home_is_under;
}

double outside(const YearPaths& year, const SaddleQuestion& ends, Stretch days, EndSteps steps,
               const SaddleLimits& limits) {
  const auto one_end = [&](bool bass, const EndQuestion& end, int up) {
    const NormalDays action(year, bass, days);
    const double up_mm = raised_mm(end, up, limits);
    return action.days_under(end.floor_mm - up_mm) + action.days_over(end.ceiling_mm - up_mm);
  };
  return one_end(true, ends.bass, steps.bass) + one_end(false, ends.treble, steps.treble);
}

/// More days outside when both swaps come two weeks late, to a day or so.
double days_when_late(const YearPaths& year, const SaddleQuestion& ends, const TwoSaddles& two,
                      const SaddleLimits& limits) {
  const auto late = [&](int swap, EndSteps stays, EndSteps should) {
    const Stretch days{swap, (swap + late_days - 1) % year.count + 1};
    return outside(year, ends, days, stays, limits) - outside(year, ends, days, should, limits);
  };
  return late(two.taller.stretch.from, two.lower.steps, two.taller.steps) +
         late(two.lower.stretch.from, two.taller.steps, two.lower.steps);
}

std::string swap_in_words(const YearToServe& year, int day, bool taller) {
  const std::string date = day_of_year_in_words(year.home.first + std::chrono::days(day));
  if (year.relative_humidity.empty()) return " In from about " + date + ".";
  const int before = (day + year.home.count - late_days) % year.home.count;
  return " In from about " + date + ", when the room has been " + (taller ? "under " : "over ") +
         percent_in_words(mean_from(year.relative_humidity, before, late_days)) + " for two weeks.";
}

void date_saddle(const YearToServe& year, Stretch in, bool taller, SaddleToMake& saddle) {
  const Date from = year.home.first + std::chrono::days(in.from);
  saddle.from = iso_date(from);
  saddle.until = iso_date(from + std::chrono::days(days_in(in, year.home.count)));
  saddle.how += swap_in_words(year, in.from, taller);
}

void caution_swing(const SaddleCase& asked, SaddleOption& option) {
  const double swing = swing_mm(asked.year.home);
  if (swing < asked.limits.two_saddle_swing_least) {
    option.cautions.push_back("The strings move only " + mm_in_words(swing) + " between summer and winter: under " +
                              mm_in_words(asked.limits.two_saddle_swing_least) + " one saddle is usual.");
  }
  if (swing > asked.limits.two_saddle_swing_most) {
    option.cautions.push_back("The strings move " + mm_in_words(swing) +
                              " between summer and winter: care of the air, or the structure, comes before saddles.");
  }
}

}  // namespace

SaddleOption two_saddles_option(const SaddleCase& asked) {
  SaddleOption option;
  option.choice = SaddleChoice::two_saddles;
  option.worth = asked.limits.worth_two_saddles;
  option.title = "Two saddles, swapped with the seasons";
  const YearPaths& year = asked.year.home;
  if (asked.request.bridge.slot == SaddleSlot::open_ended) {
    refuse(
        "An open-ended saddle is shaped and fitted in its place: it cannot be shimmed from below, raised without a new "
        "one, or swapped by the owner.",
        option);
    return option;
  }
  if (year.count < year_least_days) {
    refuse("Two saddles need a whole year to be judged; " + std::to_string(year.count) + " days were asked for.",
           option);
    return option;
  }
  SaddleQuestion ends = asked.question;
  for (EndQuestion* end : {&ends.bass, &ends.treble}) {
    if (end->bounds.least_mm >= asked.limits.summer_exposure_least) continue;
    end->bounds.least_mm = asked.limits.summer_exposure_least;
    end->bounds.least_because = "the least the lower of two saddles keeps";
  }
  const auto two = best_two_saddles(year, ends, asked.limits);
  if (!two) {
    refuse("No two saddles do better than one inside the limits of this bridge.", option);
    return option;
  }
  const bool winter = taller_is_for_winter(asked.year, two->taller.stretch);
  fit_saddles(asked, year,
              {{winter ? "winter" : "dry months", two->taller}, {winter ? "summer" : "damp months", two->lower}},
              option);
  date_saddle(asked.year, two->taller.stretch, true, option.saddles[0]);
  date_saddle(asked.year, two->lower.stretch, false, option.saddles[1]);
  option.title = std::string(winter ? "A winter saddle, " : "A saddle for the dry months, ") +
                 change_in_words(option.saddles[0]) +
                 (winter ? ", and a summer saddle, " : ", and one for the damp, ") + change_in_words(option.saddles[1]);
  caution_swing(asked, option);
  option.cautions.push_back(
      "The owner swaps them by a hygrometer that has been checked; two weeks late at both swaps costs " +
      decimals(std::max(0.0, days_when_late(year, ends, *two, asked.limits)), 0) + " more days outside.");
  return option;
}

}  // namespace tailblock
