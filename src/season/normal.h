#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace tailblock {

/// Area of the standard normal distribution below `z`, and its density there.
struct NormalValue {
  double below;
  double density;
};

namespace normal_table {
inline constexpr double reach = 6.5;
inline constexpr int nodes_a_unit = 128;
extern const std::array<NormalValue, 13 * nodes_a_unit + 1> nodes;
}  // namespace normal_table

/// From a table, with one term for the density's slope between its nodes: the area within 5e-9 of std::erfc, the
/// density within 5e-6. Flat beyond 6.5, where 4e-11 is left. In the header because a year of quantiles asks a quarter
/// of a million times.
[[nodiscard]] inline NormalValue standard_normal(double z) {
  using namespace normal_table;
  if (!(z > -reach)) return {.below = 0, .density = 0};
  if (z >= reach) return {.below = 1, .density = 0};
  const double place = (z + reach) * nodes_a_unit;
  const int i = static_cast<int>(place + 0.5);
  const NormalValue node = nodes[static_cast<std::size_t>(i)];
  const double d = (place - i) * (1.0 / nodes_a_unit);
  const double slope = (z - d) * d;  // the density at the node falls by this share
  return {.below = node.below + node.density * d * (1 - slope * 0.5), .density = node.density * (1 - slope)};
}

/// Quantile of the standard normal distribution, 0 < p < 1, to 1e-12: rational start (Abramowitz & Stegun 26.2.23,
/// from memory) and Newton steps.
[[nodiscard]] double standard_normal_quantile(double p);

/// A distribution made of weighted normal ones. Weights need not sum to 1.
struct NormalMixture {
  std::vector<double> weight, mean, sd;

  void add(double w, double m, double s) {
    weight.push_back(w);
    mean.push_back(m);
    sd.push_back(s);
  }
  /// Value below which lies the share `p`, within `tolerance`.
  [[nodiscard]] double quantile(double p, double tolerance = 1e-6) const;
};

/// The same over plain arrays that hold 1/sd, from a first guess: the inner loop of a year of quantiles. Newton steps,
/// kept inside a bracket once one is needed; `weight` sums to 1.
[[nodiscard]] double mixture_quantile(std::span<const double> weight, std::span<const double> mean,
                                      std::span<const double> inverse_sd, double p, double guess, double tolerance);

/// Share below each of five points, and the density there, in one pass over the mixture.
using FivePoints = std::array<double, 5>;
[[nodiscard]] std::array<NormalValue, 5> mixture_at(std::span<const double> weight, std::span<const double> mean,
                                                    std::span<const double> inverse_sd, const FivePoints& points);

}  // namespace tailblock
