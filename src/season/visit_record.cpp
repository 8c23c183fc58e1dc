#include "season/visit_record.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <string>
#include <tuple>

#include "season/season_prior.h"

namespace tailblock {
namespace {

auto moment(const HeightReading& reading) { return std::tuple(reading.date, reading.order); }

auto everything(const HeightReading& reading) {
  return std::tuple(reading.date, reading.order, reading.kind, in_mm(reading.value), in_mm(reading.gauge_sd));
}

void require_past(const char* list, std::size_t index, Date date, Date today) {
  if (date <= today) return;
  throw Refused(std::string(list) + "[" + std::to_string(index) + "].date: " + iso_date(date) + " is after today, " +
                iso_date(today));
}

Side side_of(HeightKind kind) {
  if (kind == HeightKind::bridge_over_rim) return Side::bridge;
  return kind == HeightKind::action12_treble ? Side::treble : Side::bass;
}

Shift shift_of(const SetupChange& change, const SeasonPrior& prior) {
  Shift shift{.date = change.date,
              .order = change.order,
              .known_mm = {},
              .sd_mm = {},
              .correlation = 0,
              .bridge_correlation = 0};
  const std::array<std::optional<Length>, 2> sizes{change.action12_bass_change, change.action12_treble_change};
  for (std::size_t side = 0; side < 2; ++side) {
    shift.known_mm[side] = sizes[side] ? in_mm(*sizes[side]) : 0;
    shift.sd_mm[side] = sizes[side] ? in_mm(change.change_sd) : prior.unknown_change_sd;
  }
  if (change.moves_bridge) shift.sd_mm[static_cast<std::size_t>(Side::bridge)] = prior.unknown_bridge_change_sd;
  return shift;
}

}  // namespace

std::vector<bool> repeats(const std::vector<HeightReading>& readings) {
  std::vector<std::size_t> order(readings.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return everything(readings[a]) < everything(readings[b]); });
  std::vector<bool> repeated(readings.size(), false);
  for (std::size_t i = 1; i < order.size(); ++i) {
    repeated[order[i]] = everything(readings[order[i]]) == everything(readings[order[i - 1]]);
  }
  return repeated;
}

VisitRecord visit_record(const ResponseRequest& request, const SeasonPrior& prior, const std::vector<bool>& set_aside) {
  for (std::size_t i = 0; i < request.readings.size(); ++i) {
    require_past("readings", i, request.readings[i].date, request.today);
    if (request.readings[i].kind == HeightKind::bridge_over_rim) continue;
    (void)require_within("readings[" + std::to_string(i) + "].value_mm", in_mm(request.readings[i].value),
                         {-3, 15, "mm"});
  }
  for (std::size_t i = 0; i < request.changes.size(); ++i) {
    require_past("changes", i, request.changes[i].date, request.today);
  }
  std::vector<std::size_t> in_order;
  for (std::size_t i = 0; i < request.readings.size(); ++i) {
    if (request.readings[i].kind != HeightKind::relief && !set_aside[i]) in_order.push_back(i);
  }
  std::sort(in_order.begin(), in_order.end(), [&](std::size_t a, std::size_t b) {
    return everything(request.readings[a]) < everything(request.readings[b]);
  });

  VisitRecord record{.today = request.today, .days = {}, .observations = {}, .shifts = {}};
  std::size_t sets = 0;
  for (std::size_t k = 0; k < in_order.size(); ++k) {
    const HeightReading& reading = request.readings[in_order[k]];
    if (k == 0 || moment(reading) != moment(request.readings[in_order[k - 1]])) ++sets;
    if (record.days.empty() || record.days.back() != reading.date) record.days.push_back(reading.date);
    record.observations.push_back({.reading = in_order[k],
                                   .day = record.days.size() - 1,
                                   .set = sets - 1,
                                   .side = side_of(reading.kind),
                                   .date = reading.date,
                                   .order = reading.order,
                                   .value_mm = in_mm(reading.value),
                                   .gauge_sd_mm = in_mm(reading.gauge_sd)});
  }
  for (const SetupChange& change : request.changes) record.shifts.push_back(shift_of(change, prior));
  std::stable_sort(record.shifts.begin(), record.shifts.end(), [](const Shift& a, const Shift& b) {
    return std::tuple(a.date, a.order) < std::tuple(b.date, b.order);
  });
  return record;
}

bool is_before(const Observation& observation, const Shift& shift) {
  return std::tuple(observation.date, observation.order) <= std::tuple(shift.date, shift.order);
}

Shift unrecorded_step(const VisitRecord& record, std::size_t interval, const SeasonPrior& prior) {
  return {.date = record.days[interval + 1],
          .order = std::numeric_limits<int>::min(),
          .known_mm = {},
          .sd_mm = {prior.step_sd, prior.step_sd, prior.bridge_step_sd},
          .correlation = prior.step_correlation,
          .bridge_correlation = prior.bridge_step_correlation};
}

}  // namespace tailblock
