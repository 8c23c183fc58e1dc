#include "strings/fret_contact.h"

#include <cmath>

#include "strings/fretted_motion.h"

namespace tailblock {
namespace {

/// A value and its slope.
struct Rising {
  double value;
  double slope;
};

/// [V(y) - V(a)]/(y - a) over K/2.5, without ever subtracting near-equal numbers.
Rising mean_force(double a, double y) {
  if (a > 0 && y > 0) {
    const double t = std::sqrt(a), s = std::sqrt(y), sum = s + t;
    const double s2 = s * s, t2 = t * t, st = s * t;
    const double value = (s2 * s2 + s2 * st + s2 * t2 + st * t2 + t2 * t2) / sum;
    const double slope = (3 * s2 * s + 6 * s2 * t + 4 * s * t2 + 2 * t2 * t) / (2 * sum * sum);
    return {value, slope};
  }
  if (y > 0) {
    const double force = y * std::sqrt(y);
    const double value = force * y / (y - a);
    return {value, (2.5 * force - value) / (y - a)};
  }
  if (a > 0) {
    const double value = a * a * std::sqrt(a) / (a - y);
    return {value, value / (a - y)};
  }
  return {0, 0};
}

}  // namespace

double contact_force(const FretMeeting& m) {
  constexpr int most_rounds = 60;
  constexpr double rounding = 4e-16;
  const double hard = fret_hardness / 2.5;
  const double c = hard * m.height_per_force;
  double y = m.depth_free;
  Rising mean = mean_force(m.depth_before, y);
  for (int round = 0; round < most_rounds; ++round) {
    const double down = (y - m.depth_free + c * mean.value) / (1 + c * mean.slope);
    if (!(down > rounding * (std::abs(y) + std::abs(m.depth_before)))) break;
    y -= down;
    mean = mean_force(m.depth_before, y);
  }
  return hard * mean.value;
}

double contact_energy(double depth) { return depth > 0 ? fret_hardness / 2.5 * depth * depth * std::sqrt(depth) : 0; }

}  // namespace tailblock
