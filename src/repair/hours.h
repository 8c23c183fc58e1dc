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
///     one:  ln t = ln(typical x learnt_factor) + s z,  s = ln(high/low)/(2 z_c),  mu = exp(m + s^2/2)
///     sum:  mean = sum mu_i,  var = sum_ij mu_i mu_j (exp(rho s_i s_j) - 1),  rho 1 for i = j, else what is shared
///     S^2 = ln(1 + var/mean^2),  typical = mean exp(-S^2/2),  low, high = typical exp(-+ z_c S)
///
/// z_c is the normal deviate exceeded with the chance c.
/// Log-normal matched to mean and variance (Fenton-Wilkinson). The mode and the tails of a sum are not exactly
/// log-normal: tests hold it against simulation within a few percent.
/// Source: moment matching of log-normal sums, L. F. Fenton 1960 (from memory).
[[nodiscard]] Spread summed_minutes(const std::vector<WorkMinutes>& work, double low_high_chance,
                                    double shared_correlation);

/// The normal deviate exceeded with the chance `c` of 0..0.5, by halving the error function's complement: 1.2816 for
/// 0.1.
[[nodiscard]] double normal_exceeded_with(double c);

}  // namespace tailblock
