#pragma once

#include <string>
#include <vector>

#include "season/calibration.h"

namespace tailblock {

/// How one instrument is expected to answer the air before its own readings have spoken: log-normal in the response of
/// the bass side and in the lag.
struct ResponsePrior {
  double log_response, log_response_sd;  ///< of mm at fret 12 per percent of moisture
  double log_lag, log_lag_sd;            ///< of days
  double instrument_log_sd;              ///< that part of log_response_sd which instruments of one kind do not share
  double top_share,
      top_share_sd;  ///< of the response, what the top and the bridge's height do; over 1: the neck works against it
  FirstGuess guess;
  std::vector<std::string> assumptions;  ///< what was taken for granted, in plain words
};

/// The prior of an instrument of this design, sharpened by what its kindred have shown.
///
///     response = hysteresis x shortfall x (top + thickness + neck)
///     top = row x (width/usual)^a x (thickness/usual)^b x f(movement, stiffness along, across, in shear)
///     Sitka
///
/// row, a, b, f and the spread of the row are what the plate model gives for the body size and bracing
/// (season/top_movement.h). Means and variances of the parts add up; the sum is taken as log-normal of that mean and
/// variance. Kindred: log response of one instrument is the kind's mean plus N(0, instrument_log_sd^2); each kindred
/// instrument is one reading of that mean with variance instrument_log_sd^2 + log_sd^2. docs/models/response.md.
/// @throws Refused when `top_species` is not in the table.
[[nodiscard]] ResponsePrior response_prior(const InstrumentDesign& design, const std::vector<KindredResponse>& kindred,
                                           const SeasonTables& tables);

}  // namespace tailblock
