#include "repair/finish_day.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "air/moist_air.h"
#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

/// Air temperature less dew point, or that of colder work.
double spread_of(double air_c, double humidity_percent_value, std::optional<double> work_c) {
  AirRequest request;
  request.temperature = celsius(air_c);
  request.relative_humidity = humidity_percent(humidity_percent_value);
  const double dew_point = air(request).dew_point_c.value_or(-60);
  return std::min(air_c, work_c.value_or(air_c)) - dew_point;
}

void add_spread(FinishDayResult& result, const FinishDayRequest& request, const RepairFigures& figures) {
  const double t = in_celsius(request.air_temperature), rh = in_percent(request.relative_humidity);
  std::optional<double> work;
  if (request.work_temperature) work = in_celsius(*request.work_temperature);
  result.spread_c = spread_of(t, rh, work);
  const double own = std::min(t, work.value_or(t));
  result.dew_point = celsius(own - result.spread_c);
  const double dt = 0.1, drh = 0.1;
  const double low = std::max(0.2, rh - drh), high = std::min(100.0, rh + drh);
  const double by_t = (spread_of(t + dt, rh, work) - spread_of(t - dt, rh, work)) / (2 * dt);
  const double by_rh = (spread_of(t, high, work) - spread_of(t, low, work)) / (high - low);
  result.spread_sd_c = std::hypot(by_t * request.temperature_sd_c.value_or(figures.thermometer_sd),
                                  by_rh * request.humidity_sd_percent.value_or(figures.hygrometer_sd));
}

CoatVerdict verdict_of(const FinishDayResult& result) {
  if (result.spread_c < result.stop_spread_c - result.spread_sd_c) return CoatVerdict::stop;
  if (result.spread_c < result.stop_spread_c + result.spread_sd_c) return CoatVerdict::too_near;
  return result.spread_c < result.free_spread_c + result.spread_sd_c ? CoatVerdict::trial : CoatVerdict::free;
}

void add_reasons(FinishDayResult& result, const FinishDayRequest& request, const FinishClass& finish) {
  const double rh = in_percent(request.relative_humidity), t = in_celsius(request.air_temperature);
  const auto outside = [&](const std::string& what, double value, double low, double high, const std::string& unit) {
    if (low <= value && value <= high) return;
    result.reasons.push_back(what + " of " + plain_number(value) + " " + unit + " is outside " + plain_number(low) +
                             " to " + plain_number(high) + " " + unit + " for " + finish.name + ".");
  };
  outside("Humidity", rh, finish.humidity_low, finish.humidity_high, "percent");
  outside("Temperature", t, finish.temperature_low, finish.temperature_high, "C");
  if (request.work_temperature && in_celsius(*request.work_temperature) < t - 2) {
    result.reasons.emplace_back("The work is colder than the air: an hour on the rack first.");
  }
}

/// The next coat: from when, until when, and how many more fit today.
void add_window(FinishDayResult& result, const FinishDayRequest& request, const FinishClass& finish) {
  const bool begun = request.coats_done > 0 && request.hours_since_last_coat.has_value();
  const double since = begun ? *request.hours_since_last_coat : 0;
  const double from = begun ? std::max(0.0, finish.recoat_low_hours - since) : 0;
  result.next_coat_from_hours = from;
  if (begun && finish.recoat_high_hours) result.next_coat_until_hours = *finish.recoat_high_hours - since;
  const int left = std::max(0, request.coats_wanted - request.coats_done);
  const double room = request.hours_left_today - from;
  const int fit = room < 0 ? 0 : 1 + static_cast<int>(room / std::max(finish.recoat_low_hours, 0.25));
  const bool may =
      result.reasons.empty() && result.verdict != CoatVerdict::stop && result.verdict != CoatVerdict::too_near;
  result.coats_today = may ? std::min({left, finish.coats_a_day, fit}) : 0;
  if (left == 0) {
    result.window = "All coats are on.";
  } else if (result.next_coat_until_hours && *result.next_coat_until_hours < 0) {
    result.window = "The window closed " + plain_number(std::round(-*result.next_coat_until_hours)) + " h ago";
    result.window += finish.after_window.empty() ? "." : ": " + finish.after_window + ".";
  } else if (from > 0) {
    result.window = "The next coat in " + plain_number(std::round(10 * from) / 10) + " h.";
  } else {
    result.window = "The next coat may go on";
    result.window += result.next_coat_until_hours
                         ? " for " + plain_number(std::round(*result.next_coat_until_hours)) + " h yet."
                         : ".";
  }
}

/// The day of the last coat: today is day 0; on later days `a_day` coats each.
int day_of_last_coat(int left, int today, int a_day) {
  const int later = left - today;
  return later <= 0 ? 0 : (later + a_day - 1) / a_day;
}

/// From as many coats a day as the finish takes to one a day.
void add_calendar(FinishDayResult& result, const FinishDayRequest& request, const FinishClass& finish) {
  const int left = std::max(0, request.coats_wanted - request.coats_done);
  const int fast = day_of_last_coat(left, result.coats_today, finish.coats_a_day);
  const int slow = std::max(fast, day_of_last_coat(left, std::min(result.coats_today, 1), 1));
  const auto add = [&](const std::string& what, double low, double high) {
    const auto day = [&](double days_on) {
      return request.today + std::chrono::days(static_cast<int>(std::ceil(days_on - 1e-9)));
    };
    result.calendar.push_back({what, day(fast + low), day(slow + high)});
  };
  if (left > 0) add("last coat", 0, 0);
  if (finish.sand_after_hours) add("sand from", *finish.sand_after_hours / 24, *finish.sand_after_hours / 24);
  if (finish.level_after_days) add("level and rub out", *finish.level_after_days, finish.cure_days_high);
  add("cured: case, strap and stand", finish.cure_days_low, finish.cure_days_high);
}

void add_budget(FinishDayResult& result, const FinishDayRequest& request, const RepairFigures& figures) {
  for (const PlateThickness& place : request.thickness) {
    const double now = in_mm(place.now), sd = place.sd ? in_mm(*place.sd) : figures.thickness_gauge_sd;
    const double to_least = now - sd - figures.plate_least;
    double may = to_least;
    std::string by = "the least of " + plain_number(figures.plate_least) + " mm";
    if (place.before) {
      const double spent = in_mm(*place.before) - now;
      const double to_loss = figures.loss_most - spent - sd;
      if (to_loss < may) {
        may = to_loss;
        by = plain_number(figures.loss_most) + " mm lost in one job";
      }
    } else if (figures.loss_most < may) {
      may = figures.loss_most;
      by = plain_number(figures.loss_most) + " mm lost in one job";
    }
    result.thickness.push_back({place.where, mm(std::max(0.0, may)), by});
  }
}

std::string words_of(const FinishDayResult& result) {
  const std::string spread = plain_number(std::round(10 * result.spread_c) / 10) + " C over the dew point";
  if (!result.reasons.empty()) return "No coat: " + result.reasons.front();
  switch (result.verdict) {
    case CoatVerdict::stop:
      return "No coat: the air is only " + spread + ".";
    case CoatVerdict::too_near:
      return "Wait: " + spread + " is nearer the limit than hygrometer and thermometer can tell.";
    case CoatVerdict::trial:
      return "A trial panel first: " + spread + ".";
    case CoatVerdict::free:
      return "Go: " + spread + ".";
  }
  return spread;
}

void add_cautions(FinishDayResult& result, const FinishClass& finish, const OperationTables& tables) {
  if (!finish.caution.empty()) result.cautions.push_back(finish.caution);
  for (const std::string& id : finish.hazards) {
    result.cautions.push_back(row_of_id(tables.hazards, id)->caution());
  }
  result.cautions.emplace_back(defers_to);
}

}  // namespace

FinishDayResult finish_day(const FinishDayRequest& request, const OperationTables& tables,
                           const RepairFigures& figures) {
  require_valid(request);
  const FinishClass* finish = row_of_id(tables.finishes, request.finish);
  if (finish == nullptr) {
    std::string known;
    for (const FinishClass& one : tables.finishes) known += (known.empty() ? "" : ", ") + one.id;
    throw Refused("finish: " + quoted_text(request.finish) + " is none of " + known);
  }
  FinishDayResult result;
  result.stop_spread_c = finish->stop_spread_c;
  result.free_spread_c = finish->free_spread_c;
  add_spread(result, request, figures);
  result.verdict = verdict_of(result);
  add_reasons(result, request, *finish);
  add_window(result, request, *finish);
  add_calendar(result, request, *finish);
  result.film_um_low = finish->um_film_low;
  result.film_um = request.coats_wanted * finish->um_a_coat;
  result.film_um_high = finish->um_film_high;
  add_budget(result, request, figures);
  add_cautions(result, *finish, tables);
  result.words = words_of(result);
  return result;
}

}  // namespace tailblock
