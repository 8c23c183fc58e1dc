#pragma once

#include <vector>

#include "air/home.h"

namespace tailblock {

struct HomeAirRequest {
  HomeAir home;
  Date first;
  int count = 365;
};
void describe(FieldVisitor&, HomeAirRequest&);

/// The days of one month, over all years asked for.
struct MonthOfAir {
  int month = 1;  ///< 1 January
  int days = 0;
  double temperature_c = 0;
  double relative_humidity = 0;
};
void describe(FieldVisitor&, MonthOfAir&);

/// The air of a home day by day: expected from its typical year, or as its hygrometer logged it.
struct HomeAirResult {
  Date first;
  std::vector<double> temperature_c;
  std::vector<double> relative_humidity;
  std::vector<double> logged;      ///< 1 where the log has the day, else 0
  std::vector<MonthOfAir> months;  ///< means of the months the days fall in, January first
};
void describe(FieldVisitor&, HomeAirResult&);

/// `home_days` (air/home.h) as a computation of its own, with the means of its months. Valid for 1..1100 days.
[[nodiscard]] HomeAirResult home_air(const HomeAirRequest& request);

}  // namespace tailblock
