#include "repair/hours.h"

#include <cmath>
#include <numbers>

namespace tailblock {

/// Taken where a low of nothing tells none: a factor of two at one in twelve.
constexpr double scatter_without_low = 0.5;

double normal_exceeded_with(double c) {
  double low = 0, high = 10;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (std::erfc(middle / std::numbers::sqrt2) / 2 > c ? low : high) = middle;
  }
  return (low + high) / 2;
}

namespace {

/// One log-normal: its mean, and the scatter of its logarithm.
struct LogNormal {
  double mean, scatter;
};

std::vector<LogNormal> pieces(const std::vector<WorkMinutes>& work, double z) {
  std::vector<LogNormal> all;
  for (const WorkMinutes& one : work) {
    if (!(one.hands_on.typical > 0)) continue;  // a wait alone
    double s = one.learnt_scatter;
    if (s < 0)
      s = one.hands_on.low > 0 ? std::log(one.hands_on.high / one.hands_on.low) / (2 * z) : scatter_without_low;
    all.push_back({one.hands_on.typical * one.learnt_factor * std::exp(s * s / 2), s});
  }
  return all;
}

}  // namespace

Spread summed_minutes(const std::vector<WorkMinutes>& work, double low_high_chance, double shared_correlation) {
  const double z = normal_exceeded_with(low_high_chance);
  const std::vector<LogNormal> all = pieces(work, z);
  double mean = 0, variance = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    mean += all[i].mean;
    for (std::size_t j = 0; j < all.size(); ++j) {
      const double rho = i == j ? 1 : shared_correlation;
      variance += all[i].mean * all[j].mean * std::expm1(rho * all[i].scatter * all[j].scatter);
    }
  }
  if (!(mean > 0)) return {};
  const double s2 = std::log1p(variance / (mean * mean));
  const double typical = mean * std::exp(-s2 / 2), reach = std::exp(z * std::sqrt(s2));
  return {typical / reach, typical, typical * reach};
}

}  // namespace tailblock
