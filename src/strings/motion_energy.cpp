#include "strings/motion_energy.h"

#include <algorithm>
#include <cmath>

#include "strings/fret_contact.h"

namespace tailblock {

double MotionEnergy::energy(const StringRow& early, const StringRow& late, const StepState& state,
                            std::size_t lane) const {
  const Four* u = early.from_stop();
  const Four* w = late.from_stop();
  const double h = grid_.h, k = grid_.k, m = string_.kg_per_metre;
  const double move = m / (2 * k * k), lean = string_.tension / (2 * h * h);
  const double bend = string_.bending_stiffness / (2 * h * h * h * h);
  double sum = 0;
  for (std::ptrdiff_t j = 0; j < grid_.intervals; ++j) {
    const double rise_u = u[j + 1][lane] - u[j][lane], rise_w = w[j + 1][lane] - w[j][lane];
    const double v = w[j][lane] - u[j][lane];
    const double turn_u = u[j - 1][lane] - 2 * u[j][lane] + u[j + 1][lane];
    const double turn_w = w[j - 1][lane] - 2 * w[j][lane] + w[j + 1][lane];
    sum +=
        move * v * v + lean * rise_u * rise_w + bend * turn_u * turn_w;
  }
  double stored = h * sum;
  for (const FretCell& fret : state.frets) {
    for (const Four* row : {u, w}) {
      const double depth = -fret.gap[lane] - fret.left * row[fret.at][lane] - fret.right * row[fret.at + 1][lane];
      stored += contact_energy(depth) / 2;
    }
  }
  return stored;
}

void MotionEnergy::release(const StepState& state, std::vector<PluckMotion>& told) {
  for (std::size_t lane = 0; lane < told.size(); ++lane) {
    told[lane].energy_at_release = energy(state.before, state.now, state, lane);
  }
}

void MotionEnergy::watch(const StepState& state, std::vector<PluckMotion>& told) {
  for (std::size_t lane = 0; lane < told.size(); ++lane) {
    PluckMotion& pluck = told[lane];
    const double off = energy(state.now, state.next, state, lane) + pluck.energy_lost - pluck.energy_at_release;
    pluck.energy_error = std::max(pluck.energy_error, std::abs(off) / pluck.energy_at_release);
  }
}

void MotionEnergy::before_losses(const StepState& state, std::vector<PluckMotion>& told) {
  for (std::size_t lane = 0; lane < told.size(); ++lane) {
    told[lane].energy_lost += energy(state.before, state.now, state, lane);
  }
}

void MotionEnergy::after_losses(const StepState& state, std::vector<PluckMotion>& told) {
  for (std::size_t lane = 0; lane < told.size(); ++lane) {
    told[lane].energy_lost -= energy(state.before, state.now, state, lane);
  }
}

void MotionEnergy::end(const StepState& state, std::vector<PluckMotion>& told) const {
  for (std::size_t lane = 0; lane < told.size(); ++lane) {
    told[lane].energy_at_end = energy(state.before, state.now, state, lane);
  }
}

}  // namespace tailblock
