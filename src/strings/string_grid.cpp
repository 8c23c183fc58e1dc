#include "strings/string_grid.h"

#include <algorithm>
#include <cmath>

namespace tailblock {
namespace {

/// Share of a width centred at `at`, both in grid steps, that a point of the grid carries: the width's overlap with the
/// hat of height 1 over the point and its neighbours.
double share_of_point(double point, double at, double width) {
  const auto hat_integral = [](double s) {  // of the hat of height 1, from its left foot on
    const double t = std::clamp(s, -1.0, 1.0);
    return t < 0 ? (1 + t) * (1 + t) / 2 : 1 - (1 - t) * (1 - t) / 2;
  };
  const double half = std::max(width, 1e-6) / 2;
  return (hat_integral(at + half - point) - hat_integral(at - half - point)) / (2 * half);
}

/// Solves a r_(j-1) + b r_j + a r_(j+1) = f_j for j = 1..n-1 with r_0 = r_n = 0, in place.
void solve_even_tridiagonal(double a, double b, std::vector<double>& f) {
  const std::size_t n = f.size() - 1;
  std::vector<double> upper(n + 1, 0);
  f[0] = f[n] = 0;
  for (std::size_t j = 1; j < n; ++j) {
    const double pivot = b - a * upper[j - 1];
    upper[j] = a / pivot;
    f[j] = (f[j] - a * f[j - 1]) / pivot;
  }
  for (std::size_t j = n - 1; j >= 1; --j) f[j] -= upper[j] * f[j + 1];
}

double second_difference(const std::vector<double>& u, std::size_t j, double h) {
  return (u[j - 1] - 2 * u[j] + u[j + 1]) / (h * h);
}

}  // namespace

double height_per_force(const SpeakingString& string, const PluckPlace& place) {
  const double l = std::sqrt(string.bending_stiffness / string.tension);
  const double x = place.from_stop;
  const double w = place.width;
  const double stiff = l > 0 ? l * l / w * (1 - std::exp(-w / (2 * l))) : 0;
  return (x * (string.length - x) / string.length - w / 8 - stiff) / string.tension;
}

StringGrid finest_grid(const SpeakingString& s, double steps_per_s) {
  StringGrid grid;
  const double k = grid.k = 1 / steps_per_s;
  const double c2 = s.tension / s.kg_per_metre;
  const double q2 = s.bending_stiffness / s.kg_per_metre;
  const double g = c2 * k * k + 4 * s.loss_m2_per_s * k;
  const double least_h = std::sqrt((g + std::sqrt(g * g + 16 * q2 * k * k)) / 2);
  grid.intervals = static_cast<int>(s.length / least_h * (1 + 1e-12));
  const double h = grid.h = s.length / grid.intervals;
  const double wave = c2 * k * k / (h * h);
  const double bend = q2 * k * k / (h * h * h * h);
  const double loss = 2 * s.loss_m2_per_s * k / (h * h);
  const double scale = 1 / (1 + s.loss_per_s * k);
  grid.a0 = scale * (2 - 2 * wave - 6 * bend - 2 * loss);
  grid.a1 = scale * (wave + 4 * bend + loss);
  grid.a2 = scale * -bend;
  grid.b0 = scale * (-1 + s.loss_per_s * k + 2 * loss);
  grid.b1 = scale * -loss;
  grid.height_per_impulse = scale * k * k / (s.kg_per_metre * h);
  return grid;
}

std::vector<PointShare> pluck_shares(const StringGrid& grid, const PluckPlace& place) {
  const double at = place.from_stop / grid.h, width = place.width / grid.h;
  std::vector<PointShare> shares;
  const int first = std::max(1, static_cast<int>(at - width / 2));
  for (int j = first; j < grid.intervals && j <= at + width / 2 + 1; ++j) {
    shares.push_back({static_cast<std::size_t>(j), share_of_point(j, at, width)});
  }
  return shares;
}

BridgePull bridge_pull(const SpeakingString& s, const StringGrid& grid) {
  const double stiff = s.bending_stiffness / (grid.h * grid.h * grid.h);
  return {.near = s.tension / grid.h + 2 * stiff, .far = -stiff};
}

std::vector<double> held_shape(const SpeakingString& s, const StringGrid& grid, const HeldPluck& pluck) {
  const double force = pluck.height / height_per_force(s, pluck.place);
  const double h = grid.h;
  std::vector<double> shape(static_cast<std::size_t>(grid.intervals) + 1, 0);
  for (const PointShare& on : pluck_shares(grid, pluck.place)) shape[on.point] = -force / h * on.share;
  // (T - E I d2) v = -f, then d2 u = v.
  const double bend = s.bending_stiffness / (h * h);
  solve_even_tridiagonal(-bend, s.tension + 2 * bend, shape);
  for (double& curvature : shape) curvature *= h * h;
  solve_even_tridiagonal(1, -2, shape);
  return shape;
}

std::vector<double> before_release(const SpeakingString& s, const StringGrid& grid, const std::vector<double>& shape) {
  const std::size_t n = shape.size() - 1;
  std::vector<double> curvature(n + 1, 0);
  for (std::size_t j = 1; j < n; ++j) curvature[j] = second_difference(shape, j, grid.h);
  std::vector<double> before = shape;
  for (std::size_t j = 1; j < n; ++j) {
    const double pull = s.tension * curvature[j] - s.bending_stiffness * second_difference(curvature, j, grid.h);
    before[j] += grid.k * grid.k / 2 * pull / s.kg_per_metre;
  }
  return before;
}

}  // namespace tailblock
