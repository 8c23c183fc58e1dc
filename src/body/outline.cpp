#include "body/outline.h"

#include <Eigen/Dense>

#include "body/point_grid.h"

namespace tailblock {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Second derivatives at the knots of a periodic cubic spline.
Eigen::MatrixXd second_derivatives(const Eigen::MatrixXd& values, const Eigen::VectorXd& step) {
  const int n = static_cast<int>(values.rows());
  Eigen::MatrixXd system = Eigen::MatrixXd::Zero(n, n);
  Eigen::MatrixXd right(n, 2);
  for (int i = 0; i < n; ++i) {
    const int before = (i + n - 1) % n, after = (i + 1) % n;
    system(i, before) += step[before];
    system(i, i) += 2 * (step[before] + step[i]);
    system(i, after) += step[i];
    right.row(i) =
        6 * ((values.row(after) - values.row(i)) / step[i] - (values.row(i) - values.row(before)) / step[before]);
  }
  return system.partialPivLu().solve(right);
}

}  // namespace

std::vector<PlanePoint> outline(const std::vector<PlanePoint>& half, int points_between) {
  std::vector<PlanePoint> knots;  // counterclockwise: tail, down the far side (y > 0) to the neck, back along y < 0
  for (std::size_t k = half.size(); k-- > 0;) knots.push_back(half[k]);
  for (std::size_t k = 1; k + 1 < half.size(); ++k) knots.push_back({half[k].x, -half[k].y});
  const int n = static_cast<int>(knots.size());
  Eigen::MatrixXd values(n, 2);
  Eigen::VectorXd step(n);
  for (int i = 0; i < n; ++i) {
    values.row(i) << knots[at(i)].x, knots[at(i)].y;
    step[i] = distance(knots[at(i)], knots[at((i + 1) % n)]);
  }
  const Eigen::MatrixXd second = second_derivatives(values, step);
  std::vector<PlanePoint> rim;
  for (int i = 0; i < n; ++i) {
    const int after = (i + 1) % n;
    for (int j = 0; j < points_between; ++j) {
      const double b = static_cast<double>(j) / points_between, a = 1 - b, h2 = step[i] * step[i] / 6;
      const Eigen::RowVector2d p = a * values.row(i) + b * values.row(after) +
                                   h2 * ((a * a * a - a) * second.row(i) + (b * b * b - b) * second.row(after));
      rim.push_back({p[0], p[1]});
    }
  }
  return rim;
}

}  // namespace tailblock
