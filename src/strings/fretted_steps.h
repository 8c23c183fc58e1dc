#pragma once

#include <cstddef>
#include <vector>

#include "strings/fretted_motion.h"
#include "strings/high_pass.h"
#include "strings/string_grid.h"

namespace tailblock {

/// One number for each of the plucks that are stepped together; the compiler keeps it in one vector register.
struct alignas(plucks_at_once * sizeof(double)) Four {
  using Vector [[gnu::vector_size(plucks_at_once * sizeof(double))]] = double;
  Vector of = {};
  [[nodiscard]] double operator[](std::size_t pluck) const { return of[pluck]; }
  void set(std::size_t pluck, double value) { of[pluck] = value; }
};

/// A fret between two points of the grid: it feels left u(at) + right u(at + 1) and pushes on both in the same shares.
struct FretCell {
  std::size_t at = 0;
  double left = 1, right = 0;
  Four gap;  ///< out of reach where a pluck is without frets
};

/// Heights of the string at one instant, from one point before the stop to a few beyond the saddle.
class StringRow {
 public:
  static constexpr std::size_t points_at_once = 4;
  explicit StringRow(int intervals) : heights_(static_cast<std::size_t>(intervals) + 3 + points_at_once) {}
  [[nodiscard]] Four* from_stop() { return heights_.data() + 1; }
  [[nodiscard]] const Four* from_stop() const { return heights_.data() + 1; }

 private:
  std::vector<Four> heights_;
};

/// All that one step reads and writes.
struct StepState {
  StringGrid grid;
  StringRow before, now, next;
  std::vector<FretCell> frets;
  BridgePull bridge{};
  HighPass filter{};
  std::array<std::array<Four, 2>, 2> filter_memory{};
  bool settled = false;  ///< the bridge's energy is being summed
  Four bridge_force{}, bridge_energy{}, bridge_energy_high{};
};

/// The parts of a step; contacts are settled between the first two.
struct StepWork {
  bool (*free_step)(StepState&);    ///< fills `next` as if no fret pushed; whether any pluck lies below a fret there
  void (*finish_step)(StepState&);  ///< pins the ends, takes the force on the bridge
  void (*take_losses)(StepState&);  ///< from `before` and `now`
};
/// For this processor: with wide registers where it has them. Both give the same to rounding.
[[nodiscard]] StepWork fastest_step_work();
[[nodiscard]] StepWork plain_step_work();

}  // namespace tailblock
