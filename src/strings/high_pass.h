#pragma once

#include <array>
#include <complex>

namespace tailblock {

/// One stage of a digital filter: H(z) = (b0 + b1/z + b2/z^2)/(1 + a1/z + a2/z^2).
struct FilterStage {
  double b0 = 0, b1 = 0, b2 = 0, a1 = 0, a2 = 0;
};

/// Keeps what lies above a corner: Butterworth of fourth order, 3 dB down at the corner.
/// Source: bilinear transform of the analogue filter, first principles.
using HighPass = std::array<FilterStage, 2>;
[[nodiscard]] HighPass high_pass(double corner_hz, double samples_per_s);

/// What the filter makes of z^n.
[[nodiscard]] std::complex<double> answer_of(const HighPass& filter, std::complex<double> z);

}  // namespace tailblock
