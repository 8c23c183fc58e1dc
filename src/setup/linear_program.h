#pragma once

#include <vector>

namespace tailblock {

/// Least cost of x with lower <= x <= upper and every row of A x at or above its bound.
///
///     min c x,   A x >= b
///
/// A is kept row by row: row i has the entries `start[i]` up to `start[i + 1]`.
struct LinearProgram {
  std::vector<double> cost, lower, upper;  ///< one a column
  std::vector<int> start = {0};
  std::vector<int> column;
  std::vector<double> entry;
  std::vector<double> row_least;  ///< b

  void add_column(double cost_of_one, double least, double most);
  void add_entry(int column_of_entry, double value);
  /// Ends the row whose entries were just added.
  void end_row(double least);
  [[nodiscard]] int rows() const { return static_cast<int>(row_least.size()); }
};

struct LinearAnswer {
  bool feasible = false;
  double cost = 0;
  std::vector<double> x;
  std::vector<double> row_price;  ///< by how much the least cost grows for a unit of the row's bound
};

/// The optimum by the dual simplex method; the same program always gives the same answer. An infeasible one is said to
/// be so. Costs are not negative.
/// @throws std::runtime_error when the solver gives up, which no program of this house should make it do.
[[nodiscard]] LinearAnswer least_cost(const LinearProgram& program);

}  // namespace tailblock
