#include "strings/thin_out.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace tailblock {
namespace {

using std::numbers::pi;

/// A sinc cut at half the new rate under a Kaiser window.
std::vector<double> low_pass(int every) {
  constexpr double kaiser_beta = 8.96;
  const int half = 70 * every;
  std::vector<double> taps;
  const double bottom = std::cyl_bessel_i(0.0, kaiser_beta);
  for (int i = -half; i <= half; ++i) {
    const double x = static_cast<double>(i) / every;
    const double sinc = i == 0 ? 1 : std::sin(pi * x) / (pi * x);
    const double edge = static_cast<double>(i) / (half + 1);
    taps.push_back(sinc / every * std::cyl_bessel_i(0.0, kaiser_beta * std::sqrt(1 - edge * edge)) / bottom);
  }
  return taps;
}

}  // namespace

std::vector<double> thinned_out(const std::vector<double>& fine, int every) {
  const std::vector<double> taps = low_pass(every);
  const auto half = static_cast<std::ptrdiff_t>(taps.size() / 2);
  const auto count = static_cast<std::ptrdiff_t>(fine.size());
  std::vector<double> coarse;
  for (std::ptrdiff_t centre = 0; centre < count; centre += every) {
    double sum = 0;
    for (std::ptrdiff_t i = std::max<std::ptrdiff_t>(-half, -centre); i <= half && centre + i < count; ++i) {
      sum += taps[static_cast<std::size_t>(i + half)] * fine[static_cast<std::size_t>(centre + i)];
    }
    coarse.push_back(sum);
  }
  return coarse;
}

}  // namespace tailblock
