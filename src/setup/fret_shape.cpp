#include "setup/fret_shape.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>

namespace tailblock {

std::vector<double> best_line(const std::vector<double>& from_nut, const std::vector<double>& departures,
                              const std::vector<bool>& counts) {
  double n = 0, sum_x = 0, sum_d = 0;
  for (std::size_t i = 0; i < from_nut.size(); ++i) {
    if (counts[i]) n += 1, sum_x += from_nut[i], sum_d += departures[i];
  }
  const double mean_x = sum_x / n, mean_d = sum_d / n;
  double xx = 0, xd = 0;
  for (std::size_t i = 0; i < from_nut.size(); ++i) {
    if (!counts[i]) continue;
    xx += (from_nut[i] - mean_x) * (from_nut[i] - mean_x);
    xd += (from_nut[i] - mean_x) * (departures[i] - mean_d);
  }
  const double slope = xx > 0 ? xd / xx : 0;
  std::vector<double> line;
  for (const double x : from_nut) line.push_back(mean_d + slope * (x - mean_x));
  return line;
}

std::vector<double> line_touching_all(const std::vector<double>& from_nut, const std::vector<double>& departures,
                                      const std::vector<double>& fall) {
  const std::size_t frets = from_nut.size();
  const double middle = (from_nut.front() + from_nut.back()) / 2;
  double lowest = std::numeric_limits<double>::infinity(), slope = 0;
  for (std::size_t i = 0; i < frets; ++i) {
    for (std::size_t j = i + 1; j < frets; ++j) {
      if (from_nut[i] > middle || from_nut[j] < middle) continue;
      const double rise = (departures[j] + fall[j] - departures[i] - fall[i]) / (from_nut[j] - from_nut[i]);
      const double at_middle = departures[i] + fall[i] + rise * (middle - from_nut[i]);
      if (at_middle < lowest) lowest = at_middle, slope = rise;
    }
  }
  std::vector<double> profile;
  for (std::size_t i = 0; i < frets; ++i) {
    profile.push_back(std::min(lowest + slope * (from_nut[i] - middle) - fall[i], departures[i]));
  }
  return profile;
}

std::optional<JointShape> joint_shape(const NeckLine& neck, const Crowns& crowns) {
  constexpr int looked_at_below = 8, left_out = 2, needed_beyond = 4;
  const int joint = neck.body_joint_fret, last = neck.fret_count;
  if (last < joint + needed_beyond) return std::nullopt;
  const auto place = [&](int fret) { return in_mm(fret_from_nut(neck.scale_length, fret)); };
  const auto shape_at = [&](int fret) {
    const double beyond = std::max(0.0, place(fret) - place(joint)) / (place(last) - place(joint));
    return Eigen::RowVector3d(1, place(fret) / place(last), beyond);
  };
  std::vector<int> fitted;
  for (int fret = std::max(1, joint - looked_at_below); fret <= last; ++fret) {
    if (std::abs(fret - joint) > left_out) fitted.push_back(fret);
  }
  Eigen::MatrixX3d shape(static_cast<Eigen::Index>(fitted.size()), 3);
  for (std::size_t row = 0; row < fitted.size(); ++row)
    shape.row(static_cast<Eigen::Index>(row)) = shape_at(fitted[row]);
  const Eigen::Matrix3Xd solve = (shape.transpose() * shape).ldlt().solve(shape.transpose());

  /// The weight of every crown in a + b x + c max(0, x - x_j) at `at`.
  const auto weights = [&](const Eigen::RowVector3d& at) {
    std::vector<double> weight(static_cast<std::size_t>(last));
    const Eigen::RowVectorXd of_fitted = at * solve;
    for (std::size_t k = 0; k < fitted.size(); ++k) {
      weight[static_cast<std::size_t>(fitted[k] - 1)] = of_fitted[static_cast<Eigen::Index>(k)];
    }
    return weight;
  };
  const auto figure = [&](const std::vector<double>& weight) {
    double value = 0;
    for (std::size_t i = 0; i < weight.size(); ++i) {
      value += weight[i] * (crowns.bass.departure[i] + crowns.treble.departure[i]) / 2;
    }
    const double variance = crowns.apart ? (crowns.bass.variance(weight) + crowns.treble.variance(weight)) / 4
                                         : crowns.bass.variance(weight);
    return FretFigure{mm(value), mm(std::sqrt(variance))};
  };
  const auto over_lines = [&](int fret) {
    std::vector<double> weight = weights(-shape_at(fret));
    weight[static_cast<std::size_t>(fret - 1)] += 1;
    return weight;
  };

  JointShape result{.hump = {}, .tongue_rise = figure(weights({0, 0, 1}))};
  for (const int lower : {joint - 1, joint}) {
    std::vector<double> pair = over_lines(lower);
    const std::vector<double> upper = over_lines(lower + 1);
    const double one = in_mm(figure(pair).value), other = in_mm(figure(upper).value);
    for (std::size_t i = 0; i < pair.size(); ++i) pair[i] = (pair[i] + upper[i]) / 2;
    const FretFigure both = figure(pair);
    if (lower == joint && both.value <= result.hump.value) continue;
    result.hump = both;
    result.several = std::min(one, other) > in_mm(both.value) / 2;
  }
  return result;
}

}  // namespace tailblock
