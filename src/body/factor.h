#pragma once

#include <Eigen/Core>
#include <vector>

#include "body/braced_plate.h"
#include "body/dissection.h"

namespace tailblock {

/// A plate's stiffness, factorised: answers any load in a few milliseconds.
///
/// K = L L' front by front (multifrontal Cholesky: Duff & Reid 1983, ACM Trans. Math. Softw. 9, 302, from memory): the
/// parts of the plate are summed straight into the dense block of the front that eliminates them, so that no sparse
/// matrix is ever built (dense_front.h).
class Factor {
 public:
  /// @throws Refused when the plate is not held (the stiffness is not positive).
  Factor(const BracedPlate& plate, const Dissection& dissection);

  /// Displacements under each column of loads, unknowns in the order of `first_unknowns`.
  [[nodiscard]] Eigen::MatrixXd displacements(const Eigen::MatrixXd& loads) const;

 private:
  /// x in the order of elimination, `right_sides` columns a row; z is room to work in.
  void solve(std::vector<double>& x, std::vector<double>& z) const;

  const Dissection* dissection_;
  std::vector<int> first_unknown_;
  std::vector<std::vector<double>> columns_;  ///< of L, one block a front
};

}  // namespace tailblock
