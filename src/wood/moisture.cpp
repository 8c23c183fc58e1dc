#include "wood/moisture.h"

#include <algorithm>
#include <cmath>

#include "wood/equilibrium.h"

namespace tailblock {
namespace {

constexpr Count day_count{1, 1100};
constexpr Range moistures{0, 40, "%"};
constexpr Range lags{0, 1000, "days"};

/// After this many time constants what went before is forgotten to a part in 3000.
constexpr double lags_to_forget = 8;

MoistureDays moisture_days(const MoistureRequest& request, Days slab_lag) {
  const Days extra_lag = request.plate.extra_lag;
  const int before = static_cast<int>(std::ceil(lags_to_forget * in_days(slab_lag + extra_lag)));
  const auto air = home_days(*request.home, *request.first - std::chrono::days(before), before + request.count);
  std::vector<double> asked;
  asked.reserve(air.size());
  for (const HomeDay& day : air) {
    asked.push_back(
        in_percent(equilibrium_moisture(celsius(day.temperature_c), humidity_fraction(day.relative_humidity))));
  }
  auto held = follow_twice(asked, extra_lag, slab_lag, {.first = asked[0], .second = asked[0]});
  MoistureDays days_of_wood;
  days_of_wood.first = *request.first;
  days_of_wood.equilibrium_percent.assign(asked.begin() + before, asked.end());
  days_of_wood.moisture_percent.assign(held.begin() + before, held.end());
  const auto [low, high] =
      std::minmax_element(days_of_wood.moisture_percent.begin(), days_of_wood.moisture_percent.end());
  days_of_wood.lowest_percent = *low;
  days_of_wood.highest_percent = *high;
  return days_of_wood;
}

void require_one_air(const MoistureRequest& request) {
  if (request.home.has_value() == request.still_air.has_value()) {
    throw Refused(std::string("home, still_air: ") + (request.home ? "both are" : "neither is") +
                  " given, and exactly one is due");
  }
  if (request.home && !request.first) throw Refused("first: the first day is due with a home");
}

}  // namespace

void describe(FieldVisitor& visit, Plate& plate) {
  constexpr Need free = Need::has_default;
  visit.length({"thickness_mm", "of the plate", free}, plate.slab.thickness, {0.5, 20, "mm"});
  visit.integer({"faces_open", "1: the other face is finished; 2: both are bare", free}, plate.slab.faces_open,
                {1, 2, ""});
  visit.number({"diffusion_m2_per_s", "how fast water spreads in the wood: spruce 1e-10, within 0.5e-10..2e-10", free},
               plate.slab.diffusion_m2_per_s, {2e-11, 1e-9, "m2/s"});
  span_of_days(visit, {"extra_lag_days", "case, finish and air in the box, as one more stage", free}, plate.extra_lag,
               {0, 60, "days"});
}

void describe(FieldVisitor& visit, StillAir& still) {
  temperature(visit, {"temperature_c", "of the air"}, still.temperature, {-40, 60, "C"});
  relative_humidity(visit, {"relative_humidity", "0..1, over liquid water"}, still.humidity);
}

void describe(FieldVisitor& visit, MoistureRequest& request) {
  const auto nested = [&](const Field& field, auto& value) { object(visit, field, value); };
  maybe(visit, {"home", "the home; this or still_air"}, request.home, nested);
  maybe(visit, {"first", "the first day, with a home"}, request.first,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  visit.integer({"count", "how many days, with a home", Need::has_default}, request.count, {1, 1100, "days"});
  object(visit, {"plate", "the plate that follows the air", Need::has_default}, request.plate);
  maybe(visit, {"still_air", "air that stays as it is; this or home"}, request.still_air, nested);
}

void describe(FieldVisitor& visit, Equilibrium& equilibrium) {
  visit.number({"moisture_percent", "that wood comes to in this air"}, equilibrium.moisture_percent, moistures);
  visit.number({"percent_per_percent", "percent of moisture for one percent of relative humidity more"},
               equilibrium.percent_per_percent, {0, 10, ""});
}

void describe(FieldVisitor& visit, MoistureDays& days_of_wood) {
  visit.date({"first", "the first day"}, days_of_wood.first);
  visit.numbers({"equilibrium_percent", "moisture that the day's air asks for"}, days_of_wood.equilibrium_percent,
                moistures, day_count);
  visit.numbers({"moisture_percent", "moisture of the plate"}, days_of_wood.moisture_percent, moistures, day_count);
  visit.number({"lowest_percent", "the least moisture of the plate"}, days_of_wood.lowest_percent, moistures);
  visit.number({"highest_percent", "the most moisture of the plate"}, days_of_wood.highest_percent, moistures);
}

void describe(FieldVisitor& visit, MoistureResult& result) {
  const auto nested = [&](const Field& field, auto& value) { object(visit, field, value); };
  visit.number({"slab_lag_days", "time constant of the bare plate"}, result.slab_lag_days, lags);
  visit.number({"extra_lag_days", "time constant of what stands before it"}, result.extra_lag_days, lags);
  maybe(visit, {"equilibrium", "with still_air"}, result.equilibrium, nested);
  maybe(visit, {"days", "with a home"}, result.days, nested);
}

MoistureResult moisture(const MoistureRequest& request) {
  require_valid(request);
  require_one_air(request);
  const Days slab_lag = slab_time_constant(request.plate.slab);
  MoistureResult result{.slab_lag_days = in_days(slab_lag),
                        .extra_lag_days = in_days(request.plate.extra_lag),
                        .equilibrium = {},
                        .days = {}};
  if (request.home) {
    result.days = moisture_days(request, slab_lag);
  } else {
    const Temperature temperature = request.still_air->temperature;
    const RelativeHumidity humidity = request.still_air->humidity;
    result.equilibrium = {.moisture_percent = in_percent(equilibrium_moisture(temperature, humidity)),
                          .percent_per_percent = equilibrium_slope(temperature, humidity)};
  }
  return result;
}

}  // namespace tailblock
