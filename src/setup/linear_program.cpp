#include "setup/linear_program.h"

#include <ClpSimplex.hpp>
#include <stdexcept>

namespace tailblock {

void LinearProgram::add_column(double cost_of_one, double least, double most) {
  cost.push_back(cost_of_one);
  lower.push_back(least);
  upper.push_back(most);
}

void LinearProgram::add_entry(int column_of_entry, double value) {
  column.push_back(column_of_entry);
  entry.push_back(value);
}

void LinearProgram::end_row(double least) {
  row_least.push_back(least);
  start.push_back(static_cast<int>(column.size()));
}

LinearAnswer least_cost(const LinearProgram& program) {
  constexpr double tolerance = 1e-9;  // in mm: a millionth of what a file takes
  const int rows = program.rows();
  const auto columns = static_cast<int>(program.cost.size());
  if (rows == 0) {
    LinearAnswer at_least{.feasible = true, .cost = 0, .x = program.lower, .row_price = {}};
    for (std::size_t i = 0; i < program.cost.size(); ++i) at_least.cost += program.cost[i] * program.lower[i];
    return at_least;
  }
  std::vector<int> row_of_entry;
  row_of_entry.reserve(program.column.size());
  for (std::size_t row = 0; row + 1 < program.start.size(); ++row) {
    row_of_entry.insert(row_of_entry.end(), static_cast<std::size_t>(program.start[row + 1] - program.start[row]),
                        static_cast<int>(row));
  }
  const CoinPackedMatrix matrix(true, row_of_entry.data(), program.column.data(), program.entry.data(),
                                static_cast<CoinBigIndex>(program.entry.size()));
  const std::vector<double> row_most(static_cast<std::size_t>(rows), COIN_DBL_MAX);

  ClpSimplex solver;
  solver.setLogLevel(0);
  CoinPackedMatrix sized(matrix);
  sized.setDimensions(rows, columns);
  solver.loadProblem(sized, program.lower.data(), program.upper.data(), program.cost.data(), program.row_least.data(),
                     row_most.data());
  solver.setPrimalTolerance(tolerance);
  solver.setDualTolerance(tolerance);
  solver.dual();

  LinearAnswer answer;
  if (solver.isProvenPrimalInfeasible()) return answer;
  if (!solver.isProvenOptimal()) throw std::runtime_error("the linear program was not solved");
  answer.feasible = true;
  answer.cost = solver.objectiveValue();
  answer.x.assign(solver.primalColumnSolution(), solver.primalColumnSolution() + columns);
  answer.row_price.assign(solver.dualRowSolution(), solver.dualRowSolution() + rows);
  return answer;
}

}  // namespace tailblock
