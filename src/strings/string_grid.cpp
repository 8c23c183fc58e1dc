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
  const double g = s.tension / s.kg_per_metre * k * k;
  const double q2 = s.bending_stiffness / s.kg_per_metre;
  const double least_h = std::sqrt((g + std::sqrt(g * g + 16 * q2 * k * k)) / 2);
  grid.intervals = static_cast<int>(s.length / least_h * (1 + 1e-12));
  const double h = grid.h = s.length / grid.intervals;
  const double wave = g / (h * h);
  const double bend = q2 * k * k / (h * h * h * h);
  grid.a0 = 2 - 2 * wave - 6 * bend;
  grid.a1 = wave + 4 * bend;
  grid.a2 = -bend;
  grid.height_per_impulse = k * k / (s.kg_per_metre * h);

  constexpr int most_steps_a_loss = 16;
  constexpr double little = 0.05;  // of the fastest partial, at once
  const double fastest_loss = k * (s.loss_per_s + 4 * s.loss_m2_per_s / (h * h));
  grid.steps_a_loss = fastest_loss > 0
                          ? static_cast<int>(std::clamp(little / fastest_loss, 1.0, 1.0 * most_steps_a_loss))
                          : most_steps_a_loss;
  grid.spread = grid.steps_a_loss * k * s.loss_m2_per_s / (h * h);
  grid.keep = 1 - grid.steps_a_loss * k * s.loss_per_s - 2 * grid.spread;
  return grid;
}

double left_of_partial(const SpeakingString& s, const StringGrid& grid, double e) {
  return 1 - grid.steps_a_loss * grid.k * (s.loss_per_s + s.loss_m2_per_s * e);
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

std::vector<double> static_shape(const SpeakingString& s, const StringGrid& grid, const std::vector<PointShare>& shares,
                                 double force) {
  const double h = grid.h;
  std::vector<double> shape(static_cast<std::size_t>(grid.intervals) + 1, 0);
  for (const PointShare& on : shares) shape[on.point] -= force / h * on.share;
  // (T - E I d2) v = -f, then d2 u = v.
  const double bend = s.bending_stiffness / (h * h);
  solve_even_tridiagonal(-bend, s.tension + 2 * bend, shape);
  for (double& curvature : shape) curvature *= h * h;
  solve_even_tridiagonal(1, -2, shape);
  return shape;
}

std::vector<double> before_release(const SpeakingString& s, const StringGrid& grid,
                                   const std::vector<PointShare>& shares, double force, std::vector<double> shape) {
  const double fall = grid.k * grid.k / 2 * force / (s.kg_per_metre * grid.h);
  for (const PointShare& on : shares) shape[on.point] -= fall * on.share;
  return shape;
}

}  // namespace tailblock
