#include "season/normal.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

namespace tailblock {
namespace {

constexpr double reach = 8;
constexpr int nodes_a_unit = 64;
constexpr std::size_t node_count = 2 * 8 * nodes_a_unit + 1;

double density_at(double z) { return std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi); }

std::array<NormalValue, node_count> make_table() {
  std::array<NormalValue, node_count> table{};
  for (std::size_t i = 0; i < node_count; ++i) {
    const double z = static_cast<double>(i) / nodes_a_unit - reach;
    table[i] = {.below = std::erfc(-z / std::numbers::sqrt2) / 2, .density = density_at(z)};
  }
  return table;
}

const std::array<NormalValue, node_count> table = make_table();

}  // namespace

NormalValue standard_normal(double z) {
  if (!(z > -reach)) return {.below = 0, .density = 0};
  if (z >= reach) return {.below = 1, .density = 0};
  const double place = (z + reach) * nodes_a_unit;
  const int i = static_cast<int>(place + 0.5);
  const NormalValue node = table[static_cast<std::size_t>(i)];
  const double x = static_cast<double>(i) / nodes_a_unit - reach;
  const double d = z - x;
  // Derivatives of the density at the node: -x f, (x^2 - 1) f, (3 x - x^3) f.
  const double second = (x * x - 1) * d * d;
  return {.below = node.below + node.density * d * (1 - x * d / 2 + second / 6),
          .density = node.density * (1 - x * d + second / 2 + (3 - x * x) * x * d * d * d / 6)};
}

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
