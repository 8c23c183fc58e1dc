#pragma once

#include <random>

#include "season_bench.h"

namespace tailblock::testing {

/// How an instrument is visited and read.
struct VisitPlan {
  int visits = 4;          ///< the last one included
  double ruler_share = 1;  ///< of the visits that are read with the coarse gauge
  double coarse_gauge_mm = 0.1, fine_gauge_mm = 0.03;
  bool hygrometer_log = false;   ///< the home's air is logged from two months before the first visit
  double hidden_step_mm = 0;     ///< on both sides, before the last visit
  double saddle_work_share = 0;  ///< of the visits at which the saddle is cut and both sides are read again
  bool straightedge = false;     ///< the bridge is read over the rim at each visit
};

/// What the instrument truly is; drawn from data/season_prior.csv.
struct Truth {
  double response, lag_days, treble_ratio, drift_mm_per_year;
  double top_share = 1;  ///< of the middle of the strings, what the top does
};

struct MadeUp {
  ResponseRequest request;
  Truth truth;
  double step_mm;
  /// A further visit, some months later, as it would be read.
  Date next_day;
  double next_bass_mm, next_treble_mm;
  double next_noise_mm;  ///< of that reading: strings, hand and gauge
};

/// One instrument drawn from the prior, its weather, and its visits. Shares no code with the inference but the
/// equilibrium equation and the home's typical year: the weather is drawn every six hours, its departure may drive the
/// room against 0 and 1, the wood follows in two stages (a box of air that takes 85 % of the lag, a plate that takes
/// the rest), and a ruler is read to its nearest tenth of a millimetre. The model only approximates all four.
[[nodiscard]] MadeUp made_up_instrument(std::mt19937_64& random, const VisitPlan& plan);

}  // namespace tailblock::testing
