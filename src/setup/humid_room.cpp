#include <algorithm>
#include <utility>

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

/// One saddle made for a room, and what is left outside.
struct Room {
  double humidity;
  YearPaths year;
  SaddleInPart saddle;
  double worst_days;
};

/// The driest of the rooms tried that serves; else the dampest one. Absent when no room tried is damper than the home.
std::optional<Room> least_humid_room(const SaddleCase& asked) {
  const SaddleLimits& limits = asked.limits;
  const auto& home = asked.year.relative_humidity;
  const double driest = home.empty() ? 0 : *std::min_element(home.begin(), home.end());
  std::optional<Room> room;
  for (double humidity = limits.room_humidity_first; humidity <= limits.room_humidity_last + 1e-9;
       humidity += limits.room_humidity_step) {
    if (humidity <= driest) continue;
    YearPaths year = asked.year.kept_above(humidity_fraction(humidity));
    EndActions actions(year, asked.whole_year);
    const auto steps = best_heights(actions, asked.question, asked.limits);
    if (!steps) return std::nullopt;
    const double worst_days = expected_days(asked, actions, *steps).worst();
    room = Room{humidity, std::move(year), {asked.whole_year, *steps, std::move(actions)}, worst_days};
    if (room->worst_days <= limits.few_days) return room;
  }
  return room;
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
  option.worth = asked.limits.worth_humid_room;
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
  const auto room = least_humid_room(asked);
  if (!room) {
    refuse("The room is never drier than " + percent_in_words(asked.limits.room_humidity_last) +
               " as it is: a humidifier changes nothing.",
           option);
    return option;
  }
  option.keep_relative_humidity = room->humidity;
  fit_saddles(asked, room->year, {{"all year", room->saddle}}, option);
  option.reversible = asked.request.bridge.slot == SaddleSlot::closed || option.saddles[0].new_bone;
  option.title = "Keep the room at " + percent_in_words(room->humidity) + " or more" +
                 when_needed(asked.year, room->humidity) + ", and the saddle " + change_in_words(option.saddles[0]);
  if (room->worst_days > asked.limits.few_days) {
    option.possible = false;
    option.why_not = "Even at " + percent_in_words(room->humidity) + " one side is outside its range on " +
                     decimals(room->worst_days, 0) + " days of the year.";
  }
  caution_condensation(asked, room->humidity, option);
  option.cautions.push_back("Somebody has to keep it filled every winter, by a hygrometer that has been checked.");
  return option;
}

}  // namespace tailblock
