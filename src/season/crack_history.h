#pragma once

#include <vector>

#include "season/crack_risk.h"
#include "season/relaxing_stress.h"

namespace tailblock {

/// The days that are asked about: the air of the room and what wood in it has.
struct CrackHistory {
  std::vector<double> temperature_c, relative_humidity;  ///< the room, daily
  bool wood_is_given = false;                            ///< the air is only what would keep the given wood so
  double lag_days = 0;
  double hysteresis = 1;
  double mean_asked_percent = 0;
  bool repeats = false;  ///< long enough to be a year that comes again

  /// Moisture of the wood when the room is as in `humidity`.
  [[nodiscard]] std::vector<double> moisture(const std::vector<double>& humidity) const;
  /// The room with its driest week at `lowest`: dry days drier in proportion, or none drier than that.
  [[nodiscard]] std::vector<double> with_lowest_week(double lowest) const;
};

/// @throws Refused unless exactly one history is given.
[[nodiscard]] CrackHistory crack_history(const CrackRiskRequest& request, const SeasonPrior& prior);

/// Least and highest mean of seven days on end.
[[nodiscard]] double lowest_week(const std::vector<double>& daily);
[[nodiscard]] double highest_week(const std::vector<double>& daily);

/// The life of one top until the days that are asked about, under one way of relaxing.
class TopLife {
 public:
  TopLife(const CrackRiskRequest& request, const CrackHistory& history, const Relaxation& relaxation);

  /// Highest weekly mean of the stress in these days, in percent; not under a hundredth.
  [[nodiscard]] double highest_percent(const std::vector<double>& moisture) const;
  /// Highest before; absent when it has not lived.
  [[nodiscard]] std::optional<double> survived_percent() const { return survived_; }

 private:
  double live(RelaxingStress& stress, const std::vector<double>& moisture);
  RelaxingStress now_;
  double moisture_now_ = 0;
  std::optional<double> survived_{};
};

}  // namespace tailblock
