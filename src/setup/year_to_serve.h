#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "setup/raised_year.h"
#include "setup/saddle.h"
#include "setup/saddle_limits.h"

namespace tailblock {

/// What the season model says of one instrument, as far as a saddle has to know it. The saddle question is answered
/// from this alone, so that a test can put a year in by hand.
struct YearToServe {
  YearPaths home;  ///< at home as it is
  /// The same paths in a room that is never drier than this.
  std::function<YearPaths(RelativeHumidity)> kept_above;
  /// The room through the year as expected, daily, 0..1.
  std::vector<double> relative_humidity;
  double room_temperature_c = 20;  ///< in the driest weeks

  ActionToday today;  ///< under each path of `home`
  double moisture_today_percent = 0;

  double reading_sd_mm = 0.1;       ///< of the gauge that last read the action
  std::optional<double> relief_mm;  ///< last read
  double prior_weight = 1;          ///< 1 nothing learnt from the readings, 0 all
  std::vector<ChangeShare> last_change;
};

/// Which saddle serves this year.
[[nodiscard]] SaddleResult choose_saddle(const SaddleRequest& request, const YearToServe& year,
                                         const SaddleLimits& limits);

}  // namespace tailblock
