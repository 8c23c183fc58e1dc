#include <array>

#include "repair/finish_day.h"

namespace tailblock {
namespace {

constexpr auto optional = Need::has_default;
constexpr std::array<std::string_view, 4> verdict_names{"stop", "too_near", "trial", "free"};

}  // namespace

void describe(FieldVisitor& visit, PlateThickness& place) {
  visit.text({"where", "in words"}, place.where, 120);
  visit.length({"now_mm", "plate and finish"}, place.now, {0.5, 10, "mm"});
  maybe_length(visit, {"before_mm", "when this job began"}, place.before, {0.5, 10, "mm"});
  maybe_length(visit, {"sd_mm", "one standard deviation of a reading"}, place.sd, {0, 1, "mm"});
}

void describe(FieldVisitor& visit, FinishDayRequest& request) {
  visit.text({"finish", "id in data/finishes.csv", optional}, request.finish, 60);
  temperature(visit, {"air_temperature_c", "of the finishing room", optional}, request.air_temperature, {0, 45, "C"});
  relative_humidity(visit, {"relative_humidity", "of the finishing room, 0..1", optional}, request.relative_humidity);
  maybe_number(visit, {"humidity_sd_percent", "one standard deviation of the hygrometer"}, request.humidity_sd_percent,
               {0, 15, "percent"});
  maybe_number(visit, {"temperature_sd_c", "one standard deviation of the thermometer"}, request.temperature_sd_c,
               {0, 5, "C"});
  maybe(visit, {"work_temperature_c", "of the instrument, where it differs"}, request.work_temperature,
        [&](const Field& field, Temperature& value) {
          temperature(visit, field, value, {-10, 45, "C"});
        });
  visit.integer({"coats_wanted", "in all", optional}, request.coats_wanted, {1, 200, ""});
  visit.integer({"coats_done", "so far", optional}, request.coats_done, {0, 200, ""});
  maybe_number(visit, {"hours_since_last_coat", "absent: none is on"}, request.hours_since_last_coat, {0, 20000, "h"});
  visit.number({"hours_left_today", "in which a coat may go on", optional}, request.hours_left_today, {0, 24, "h"});
  visit.date({"today", "the day"}, request.today);
  list(visit, {"thickness", "readings of the plate", optional}, request.thickness, {0, 100});
}

void describe(FieldVisitor& visit, FinishCalendarLine& line) {
  visit.text({"what", "what may be done"}, line.what, 120);
  visit.date({"earliest", "as many coats a day as the finish takes"}, line.earliest);
  visit.date({"latest", "one coat a day, slow cure"}, line.latest);
}

void describe(FieldVisitor& visit, ThicknessBudget& budget) {
  visit.text({"where", "in words"}, budget.where, 120);
  visit.length({"may_come_off_mm", "surely, the reading's own error taken off"}, budget.may_come_off, {0, 10, "mm"});
  visit.text({"limited_by", "what sets it"}, budget.limited_by, 120);
}

void describe(FieldVisitor& visit, FinishDayResult& result) {
  choice(visit, {"verdict", "whether a coat goes on"}, result.verdict, verdict_names);
  visit.text({"words", "one sentence"}, result.words, 300);
  temperature(visit, {"dew_point_c", "of that air"}, result.dew_point, {-80, 60, "C"});
  visit.number({"spread_c", "air or work over the dew point"}, result.spread_c, {-60, 120, "C"});
  visit.number({"spread_sd_c", "one standard deviation"}, result.spread_sd_c, {0, 100, "C"});
  visit.number({"stop_spread_c", "under it no coat"}, result.stop_spread_c, {0, 60, "C"});
  visit.number({"free_spread_c", "over it nothing holds the coat back"}, result.free_spread_c, {0, 60, "C"});
  visit.texts({"reasons", "humidity or temperature out of their range"}, result.reasons, 300, {0, 10});
  visit.integer({"coats_today", "at most"}, result.coats_today, {0, 200, ""});
  visit.text({"window", "of the next coat"}, result.window, 300);
  maybe_number(visit, {"next_coat_from_hours", "from now"}, result.next_coat_from_hours, {-20000, 20000, "h"});
  maybe_number(visit, {"next_coat_until_hours", "from now; negative: it has closed"}, result.next_coat_until_hours,
               {-20000, 20000, "h"});
  list(visit, {"calendar", "from today"}, result.calendar, {0, 10});
  visit.number({"film_um", "what the wanted coats leave"}, result.film_um, {0, 100000, "um"});
  visit.number({"film_low_um", "usual"}, result.film_um_low, {0, 5000, "um"});
  visit.number({"film_high_um", "usual"}, result.film_um_high, {0, 5000, "um"});
  list(visit, {"thickness", "how much may still come off"}, result.thickness, {0, 100});
  visit.texts({"cautions", "read where the step is read"}, result.cautions, 2000, {0, 30});
}

}  // namespace tailblock
