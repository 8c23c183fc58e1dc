#include "strings/high_pass.h"

#include <cmath>
#include <numbers>

namespace tailblock {

HighPass high_pass(double corner_hz, double samples_per_s) {
  using std::numbers::pi;
  const double w = std::tan(pi * corner_hz / samples_per_s);
  HighPass filter;
  for (std::size_t stage = 0; stage < filter.size(); ++stage) {
    const double damping = 2 * std::sin(pi * (2 * static_cast<double>(stage) + 1) / 8);  // poles on a circle
    const double scale = 1 / (1 + damping * w + w * w);
    filter[stage] = {.b0 = scale,
                     .b1 = -2 * scale,
                     .b2 = scale,
                     .a1 = 2 * (w * w - 1) * scale,
                     .a2 = (1 - damping * w + w * w) * scale};
  }
  return filter;
}

std::complex<double> answer_of(const HighPass& filter, std::complex<double> z) {
  const std::complex<double> back = 1.0 / z;
  std::complex<double> answer = 1;
  for (const FilterStage& s : filter) {
    answer *= (s.b0 + back * (s.b1 + back * s.b2)) / (1.0 + back * (s.a1 + back * s.a2));
  }
  return answer;
}

}  // namespace tailblock
