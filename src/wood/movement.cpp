#include "wood/movement.h"

#include <cmath>

namespace tailblock {

double movement_per_percent(const Species& wood, Angle ring_angle) {
  require_within("ring_angle_deg", in_degrees(ring_angle), {0, 90, "deg"});
  const double c = std::cos(in_radians(ring_angle));
  const double s = std::sin(in_radians(ring_angle));
  return wood.radial_per_percent * c * c + wood.tangential_per_percent * s * s;
}

Length width_change(const Species& wood, Angle ring_angle, Length width, const MoistureSpan& change) {
  const double from = require_within("from_percent", in_percent(change.from), {0, 25, "%"});
  const double to = require_within("to_percent", in_percent(change.to), {0, 25, "%"});
  return width * (movement_per_percent(wood, ring_angle) * (to - from));
}

double movement_from_shrinkage(double shrinkage_percent) {
  return 1 / (3000 / require_within("shrinkage_percent", shrinkage_percent, {0.1, 20, "%"}) - 20);
}

}  // namespace tailblock
