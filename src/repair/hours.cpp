#include "repair/hours.h"

#include <cmath>
#include <numbers>

namespace tailblock {

double normal_exceeded_with(double c) {
  double low = 0, high = 10;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (std::erfc(middle / std::numbers::sqrt2) / 2 > c ? low : high) = middle;
  }
  return (low + high) / 2;
}

Spread summed_minutes(const std::vector<WorkMinutes>& work, double low_high_chance, double shared_correlation) {
  const double z = normal_exceeded_with(low_high_chance);
  double mean = 0, own_variance = 0, sum_of_sds = 0;
  for (const WorkMinutes& one : work) {
    if (!(one.hands_on.typical > 0)) continue;  // a wait alone
    const double from_table = one.hands_on.low > 0 ? std::log(one.hands_on.high / one.hands_on.low) / (2 * z) : 0.5;
    const double s = one.learnt_scatter >= 0 ? one.learnt_scatter : from_table;
    const double middle = one.hands_on.typical * one.learnt_factor;
    const double its_mean = middle * std::exp(s * s / 2);
    const double sd = its_mean * std::sqrt(std::expm1(s * s));
    mean += its_mean;
    own_variance += sd * sd;
    sum_of_sds += sd;
  }
  if (!(mean > 0)) return {};
  const double variance = own_variance * (1 - shared_correlation) + shared_correlation * sum_of_sds * sum_of_sds;
  const double s2 = std::log1p(variance / (mean * mean));
  const double typical = mean * std::exp(-s2 / 2), reach = std::exp(z * std::sqrt(s2));
  return {typical / reach, typical, typical * reach};
}

}  // namespace tailblock
