#pragma once

#include "season/calibration.h"
#include "season/learning.h"

namespace tailblock {

/// The hypotheses that together weigh all but a thousandth. A cell's two stories, without and with a move in the last
/// interval, become one normal of the same mean and covariance.
[[nodiscard]] Calibration calibration_of(const Learnt& learnt);

}  // namespace tailblock
