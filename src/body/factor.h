#pragma once

#include <Eigen/Core>
#include <span>
#include <vector>

#include "body/braced_plate.h"
#include "body/dissection.h"

namespace tailblock {

/// Memory that a factor works in. Handed from one to the next it is not asked of the machine again, which would take
/// longer than the arithmetic.
struct FactorMemory {
  std::vector<double> columns;                  ///< of L, the blocks of the fronts one after the other
  std::vector<std::vector<double>> remainders;  ///< of fronts, free to be used
  std::vector<double> scratch, unknowns;
};

/// A plate's stiffness, factorised: answers any load in a few milliseconds.
///
/// K = L L' front by front (multifrontal Cholesky: Duff & Reid 1983, ACM Trans. Math. Softw. 9, 302, from memory): the
/// parts of the plate are summed straight into the dense block of the front that eliminates them, so that no sparse
/// matrix is ever built (dense_front.h).
class Factor {
 public:
  /// @throws Refused when the plate is not held (the stiffness is not positive).
  Factor(const BracedPlate& plate, const Dissection& dissection, FactorMemory memory = {});

  /// Displacements under each column of loads, unknowns in the order of `first_unknowns`.
  [[nodiscard]] Eigen::MatrixXd displacements(const Eigen::MatrixXd& loads);

  /// The memory back, for the next.
  [[nodiscard]] FactorMemory taken_apart() && { return std::move(memory_); }

 private:
  /// The unknowns stand in the order of elimination, `right_sides` columns a row.
  void solve();
  [[nodiscard]] std::span<double> block(std::size_t front) {
    return {memory_.columns.data() + first_entry_[front], first_entry_[front + 1] - first_entry_[front]};
  }

  const Dissection* dissection_;
  std::vector<int> first_unknown_;
  std::vector<std::size_t> first_entry_;  ///< of each front's block; the last is how many there are
  FactorMemory memory_;
};

}  // namespace tailblock
