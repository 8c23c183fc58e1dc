#pragma once

#include <vector>

#include "repair/table_cells.h"

namespace tailblock {

/// One piece of work whose minutes are not known: low is undercut and high exceeded as seldom as `low_high_chance`
/// says.
struct WorkMinutes {
  Spread hands_on;
  double learnt_factor = 1;    ///< how many times the estimate it has taken, in the middle
  double learnt_scatter = -1;  ///< standard deviation of ln(actual/estimate); negative: from low and high
};

/// How the minutes of several pieces of work add up.
///
///     one:  ln t = ln(typical x learnt_factor) + s z,  s = (ln high - ln low)/(2 z_c),  z_c the normal exceeded with
///     chance c sum:  mean = sum exp(m + s^2/2),  var = sum_ij rho_ij sd_i sd_j,  rho 1 on the diagonal, else the
///     shared correlation S^2 = ln(1 + var/mean^2),  typical = mean exp(-S^2/2),  low and high = typical exp(-+ z_c S)
///
/// Log-normal matched to mean and variance (Fenton-Wilkinson). The mode and the tails of a sum are not exactly
/// log-normal: tests hold it against simulation within a few percent.
/// Source: moment matching of log-normal sums, L. F. Fenton 1960 (from memory).
[[nodiscard]] Spread summed_minutes(const std::vector<WorkMinutes>& work, double low_high_chance,
                                    double shared_correlation);

/// The normal deviate exceeded with the chance `c` of 0..0.5, by halving the error function's complement: 1.2816 for
/// 0.1.
[[nodiscard]] double normal_exceeded_with(double c);

}  // namespace tailblock
