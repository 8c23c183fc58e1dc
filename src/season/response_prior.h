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
  std::vector<std::string> assumptions;  ///< what was taken for granted, in plain words
};

/// The prior of an instrument of this design, sharpened by what its kindred have shown.
///
///     mean = structure x transmission x (width/reference width)^2 x C(a)/C(0 of Sitka)
///     C(a) = C_R cos^2 a + C_T sin^2 a        a ring angle, C strain per percent
///
/// Kindred: log response of one instrument is the kind's mean plus N(0, instrument_log_sd^2); each kindred instrument
/// is one reading of that mean with variance instrument_log_sd^2 + log_sd^2. Top thickness is not used: thinning a
/// braced top from 2.8 to 2.0 mm changed its moisture movement by 7 % (docs/models/response.md).
/// @throws Refused when `top_species` is not in the table.
[[nodiscard]] ResponsePrior response_prior(const InstrumentDesign& design, const std::vector<KindredResponse>& kindred,
                                           const SeasonTables& tables);

}  // namespace tailblock
