#include "season/normal.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

namespace tailblock {
namespace {

double density_at(double z) { return std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi); }

auto make_table() {
  std::array<NormalValue, std::tuple_size_v<decltype(normal_table::nodes)>> table{};
  for (std::size_t i = 0; i < table.size(); ++i) {
    const double z = static_cast<double>(i) / normal_table::nodes_a_unit - normal_table::reach;
    table[i] = {.below = std::erfc(-z / std::numbers::sqrt2) / 2, .density = density_at(z)};
  }
  return table;
}

}  // namespace

const decltype(normal_table::nodes) normal_table::nodes = make_table();

double standard_normal_quantile(double p) {
  const double tail = std::min(p, 1 - p);
  const double t = std::sqrt(-2 * std::log(tail));
  double z = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  for (int step = 0; step < 3; ++step) z += (std::erfc(z / std::numbers::sqrt2) / 2 - tail) / density_at(z);
  return p < 0.5 ? -z : z;
}

double mixture_quantile(std::span<const double> weight, std::span<const double> mean,
                        std::span<const double> inverse_sd, double p, double guess, double tolerance) {
  double low = -INFINITY;
  double high = INFINITY;
  double x = guess;
  for (int step = 0; step < 200; ++step) {
    double below = 0;
    double density = 0;
    for (std::size_t k = 0; k < weight.size(); ++k) {
      const NormalValue value = standard_normal((x - mean[k]) * inverse_sd[k]);
      below += weight[k] * value.below;
      density += weight[k] * value.density * inverse_sd[k];
    }
    (below < p ? low : high) = x;
    double next = density > 0 ? x + (p - below) / density : NAN;
    const bool bracketed = std::isfinite(low) && std::isfinite(high);
    if (bracketed && !(low < next && next < high)) next = (low + high) / 2;
    if (!bracketed && !(std::abs(next - x) < 10)) next = x + (below < p ? 1 : -1);
    const double moved = std::abs(next - x);
    x = next;
    // Newton squares the error: what is left is about moved^2 over a few standard deviations.
    if (moved < tolerance || (bracketed && high - low < tolerance)) break;
  }
  return x;
}

std::array<NormalValue, 5> mixture_at(std::span<const double> weight, std::span<const double> mean,
                                      std::span<const double> inverse_sd, const FivePoints& points) {
  std::array<NormalValue, 5> sums{};
  for (std::size_t k = 0; k < weight.size(); ++k) {
    for (std::size_t q = 0; q < points.size(); ++q) {
      const NormalValue value = standard_normal((points[q] - mean[k]) * inverse_sd[k]);
      sums[q].below += weight[k] * value.below;
      sums[q].density += weight[k] * inverse_sd[k] * value.density;
    }
  }
  return sums;
}

double NormalMixture::quantile(double p, double tolerance) const {
  const double total = std::accumulate(weight.begin(), weight.end(), 0.0);
  std::vector<double> share(weight.size());
  std::vector<double> inverse_sd(weight.size());
  double guess = 0;
  double variance = 0;
  for (std::size_t k = 0; k < weight.size(); ++k) {
    share[k] = weight[k] / total;
    inverse_sd[k] = 1 / std::max(sd[k], 1e-9);
    guess += share[k] * mean[k];
  }
  for (std::size_t k = 0; k < weight.size(); ++k) {
    variance += share[k] * (sd[k] * sd[k] + (mean[k] - guess) * (mean[k] - guess));
  }
  guess += standard_normal_quantile(p) * std::sqrt(variance);
  return mixture_quantile(share, mean, inverse_sd, p, guess, tolerance);
}

}  // namespace tailblock
