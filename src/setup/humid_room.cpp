#include <algorithm>
#include <utility>
#include <vector>

#include "air/saturation.h"
#include "season/words.h"
#include "setup/saddle_options.h"
#include "setup/words.h"

namespace tailblock {
namespace {

struct ExpectedDays {
  double low_bass, low_treble, high_bass, high_treble;
  [[nodiscard]] double worst() const { return std::max({low_bass, low_treble, high_bass, high_treble}); }
};

ExpectedDays expected_days(const SaddleCase& asked, const EndActions& actions, EndSteps steps) {
  const EndQuestion& bass = asked.question.bass;
  const EndQuestion& treble = asked.question.treble;
  const double bass_mm = raised_mm(bass, steps.bass, asked.limits);
  const double treble_mm = raised_mm(treble, steps.treble, asked.limits);
  return {actions.bass.days_under(bass.floor_mm - bass_mm), actions.treble.days_under(treble.floor_mm - treble_mm),
          actions.bass.days_over(bass.ceiling_mm - bass_mm), actions.treble.days_over(treble.ceiling_mm - treble_mm)};
}

/// A room that opens cracks is kept humid for the sake of the top, whatever the strings need: that is no extra trouble.
bool too_dry_for_the_top(const SaddleCase& asked) {
  const auto& home = asked.year.relative_humidity;
  return !home.empty() && *std::min_element(home.begin(), home.end()) < asked.limits.room_humidity_cracks;
}

/// One saddle made for a room, and what is left outside.
struct Room {
  double humidity;
  YearPaths year;
  SaddleInPart saddle;
  double worst_days;
  double cost;
};

Room room_kept_above(const SaddleCase& asked, double humidity) {
  YearPaths year = asked.year.kept_above(humidity_fraction(humidity));
  EndActions actions(year, asked.whole_year);
  const EndSteps better = *best_heights(actions, asked.question, asked.limits);
  const auto serves = [&](EndSteps steps) {
    return expected_days(asked, actions, steps).worst() <= asked.limits.few_days;
  };
  EndSteps steps = worth_cutting(actions, asked.question, better, asked.limits);
  if (serves(better) && !serves(steps)) steps = better;
  const double worst_days = expected_days(asked, actions, steps).worst();
  const double cost = saddle_cost(actions, asked.question, steps, asked.limits);
  return {humidity, std::move(year), {asked.whole_year, steps, std::move(actions)}, worst_days, cost};
}

/// The humidities to try that are damper than the driest day of the home as it is.
std::vector<double> humidities_to_try(const SaddleCase& asked) {
  const SaddleLimits& limits = asked.limits;
  const auto& home = asked.year.relative_humidity;
  const double driest = home.empty() ? 0 : *std::min_element(home.begin(), home.end());
  std::vector<double> tried;
  const int steps =
      static_cast<int>((limits.room_humidity_last - limits.room_humidity_first) / limits.room_humidity_step + 1e-6);
  for (int i = 0; i <= steps; ++i) {
    const double humidity = limits.room_humidity_first + i * limits.room_humidity_step;
    if (humidity > driest) tried.push_back(humidity);
  }
  return tried;
}

/// The driest room that is good enough, by halving: a damper room is taken never to be worse. Good enough is to serve,
/// or, where not even the dampest serves, to cost hardly more than that one.
Room least_humid_room(const SaddleCase& asked, const std::vector<double>& humidities) {
  Room best = room_kept_above(asked, humidities.back());
  const bool serves = best.worst_days <= asked.limits.few_days;
  const double dampest_cost = best.cost;
  std::size_t too_dry = 0, enough = humidities.size() - 1;  // humidities before `too_dry` are not good enough
  while (too_dry < enough) {
    const std::size_t middle = (too_dry + enough) / 2;
    Room room = room_kept_above(asked, humidities[middle]);
    const bool good =
        serves ? room.worst_days <= asked.limits.few_days : room.cost <= dampest_cost + asked.limits.worth_humid_room;
    if (good) {
      enough = middle;
      best = std::move(room);
    } else {
      too_dry = middle + 1;
    }
  }
  return best;
}

/// ` from about 20 October to 12 April`: the year less the longest run of days that need no humidifier.
std::string when_needed(const YearToServe& year, double humidity) {
  const auto count = static_cast<int>(year.relative_humidity.size());
  const auto dry = [&](int t) { return year.relative_humidity[static_cast<std::size_t>(t % count)] < humidity; };
  int longest = 0, longest_end = 0, run = 0;
  for (int t = 0; t < 2 * count; ++t) {
    run = dry(t) ? 0 : run + 1;
    if (run > longest && run <= count) longest = run, longest_end = t + 1;
  }
  if (longest == 0) return " all through the year";
  const auto date = [&](int t) { return day_of_year_in_words(year.home.first + std::chrono::days(t % count)); };
  return " from about " + date(longest_end) + " to " + date(longest_end + count - longest - 1);
}

/// A caution where the room still saves its trouble against one saddle in the home as it is, else a refusal.
void say_it_does_not_serve(const SaddleCase& asked, const Room& room, EndSteps as_it_is, SaddleOption& option) {
  const std::string text = "Even at " + percent_in_words(asked.limits.room_humidity_last) +
                           " one side would stay outside its range: at " + percent_in_words(room.humidity) + " on " +
                           decimals(room.worst_days, 0) + " days of the year.";
  const double one_saddle = saddle_cost(asked.actions, asked.question, as_it_is, asked.limits);
  if (room.cost + asked.limits.worth_humid_room < one_saddle) {
    option.cautions.push_back(text);
  } else {
    refuse(text, option);
  }
}

void caution_condensation(const SaddleCase& asked, double humidity, SaddleOption& option) {
  const Temperature air = celsius(asked.year.room_temperature_c);
  const double dew_c = in_celsius(dew_point(humidity * saturation_pa_over_water(air)));
  option.cautions.push_back("Air at " + decimals(asked.year.room_temperature_c, 0) + " C and " +
                            percent_in_words(humidity) + " wets whatever is colder than " + decimals(dew_c, 0) +
                            " C (" + decimals(dew_c * 1.8 + 32, 0) +
                            " F): cold panes and outside walls. Where they sweat, keep one closed room or the case "
                            "humid instead, and never over 60 %.");
}

}  // namespace

SaddleOption humid_room_option(const SaddleCase& asked) {
  SaddleOption option;
  option.choice = SaddleChoice::humid_room;
  option.worth = too_dry_for_the_top(asked) ? 0 : asked.limits.worth_humid_room;
  option.title = "Keep the room humid in the dry months, with one saddle";
  const auto as_it_is = best_heights(asked.actions, asked.question, asked.limits);
  if (!as_it_is) {
    refuse_for_height(asked, option);
    return option;
  }
  if (expected_days(asked, asked.actions, *as_it_is).worst() <= asked.limits.few_days) {
    refuse(
        "Not needed for the strings: one saddle serves the room as it is, with no side outside its range for more "
        "than " +
            decimals(asked.limits.few_days, 0) + " days.",
        option);
    return option;
  }
  const std::vector<double> humidities = humidities_to_try(asked);
  if (humidities.empty()) {
    refuse("The room is never drier than " + percent_in_words(asked.limits.room_humidity_last) +
               " as it is: a humidifier changes nothing.",
           option);
    return option;
  }
  const Room room = least_humid_room(asked, humidities);
  option.keep_relative_humidity = room.humidity;
  fit_saddles(asked, room.year, {{"all year", room.saddle}}, option);
  option.reversible = can_be_put_back(asked.request.bridge.slot, option.saddles[0]);
  if (room.saddle.steps != EndSteps{}) option.worth += asked.limits.worth_one_saddle;
  option.title = "Keep the room at " + percent_in_words(room.humidity) + " or more" +
                 when_needed(asked.year, room.humidity) + ", and the saddle " + change_in_words(option.saddles[0]);
  if (room.worst_days > asked.limits.few_days) say_it_does_not_serve(asked, room, *as_it_is, option);
  caution_condensation(asked, room.humidity, option);
  option.cautions.push_back("Somebody has to keep it filled every dry season, by a hygrometer that has been checked.");
  return option;
}

}  // namespace tailblock
