#include "season/relaxing_stress.h"

#include <cmath>

namespace tailblock {

void RelaxingStress::day(double change_percent) {
  for (std::size_t k = 0; k < stress_.size(); ++k) {
    const Relaxation::Branch& branch = relaxation_.branches[k];
    const double rate =
        (branch.days > 0 ? 1 / branch.days : 0) + relaxation_.per_percent * std::abs(change_percent);  // of one day
    const double averaged = rate > 0 ? -std::expm1(-rate) / rate : 1;
    stress_[k] = stress_[k] * std::exp(-rate) - branch.share * change_percent * averaged;
  }
}

void RelaxingStress::rest(double days) {
  for (std::size_t k = 0; k < stress_.size(); ++k) {
    const double span = relaxation_.branches[k].days;
    if (span > 0) stress_[k] *= std::exp(-days / span);
  }
}

}  // namespace tailblock
