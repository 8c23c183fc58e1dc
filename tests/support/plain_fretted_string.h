#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

/// One pluck over frets, the scheme of strings/fretted_motion.h said in the plainest way: one string, one number at a
/// time, no closed forms, roots by halving. SI throughout. The judge of the fast one, and its peer in perf/.
namespace tailblock::testing {

struct PlainFret {
  double from_stop = 0;
  double gap = 0;
  double impulse = 0;  ///< filled by the run
};

struct PlainString {
  double length = 0, tension = 0, kg_per_metre = 0, bending_stiffness = 0, loss_per_s = 0, loss_m2_per_s = 0;
  double pluck_from_stop = 0, pluck_width = 0, pluck_force = 0;
  std::vector<PlainFret> frets;
};

struct PlainRun {
  double first_touch_s = -1;
  std::vector<double> bridge_force;
  std::vector<PlainFret> frets;
};

inline double plain_dent_energy(double depth) { return depth > 0 ? 2e9 / 2.5 * std::pow(depth, 2.5) : 0; }

/// Force over a step in which the depth goes from `before` to free - rise * force.
inline double plain_contact_force(double before, double free, double rise) {
  const auto excess = [&](double depth) {
    const double moved = depth - before;
    const double force = std::abs(moved) > 1e-14 ? (plain_dent_energy(depth) - plain_dent_energy(before)) / moved
                                                 : 2e9 * std::pow(std::max(0.0, (depth + before) / 2), 1.5);
    return depth - free + rise * force;
  };
  double high = free, low = free - 1e-9;
  while (excess(low) > 0) low = free - 2 * (free - low);
  for (int i = 0; i < 60; ++i) (excess((low + high) / 2) > 0 ? high : low) = (low + high) / 2;
  return (free - (low + high) / 2) / rise;
}

/// A point force's share of a grid point: the width overlapping the hat over it, added up finely.
inline double plain_share(double point, double at, double width) {
  constexpr int pieces = 2000;
  double sum = 0;
  for (int i = 0; i < pieces; ++i) {
    const double x = at + width * ((i + 0.5) / pieces - 0.5);
    sum += std::max(0.0, 1 - std::abs(x - point)) / pieces;
  }
  return sum;
}

class PlainMotion {
 public:
  PlainMotion(const PlainString& string, double steps_per_s) : s_(string), k_(1 / steps_per_s) {
    const double c2 = s_.tension / s_.kg_per_metre, q2 = s_.bending_stiffness / s_.kg_per_metre;
    const double g = c2 * k_ * k_;
    n_ = static_cast<std::size_t>(s_.length / std::sqrt((g + std::sqrt(g * g + 16 * q2 * k_ * k_)) / 2));
    h_ = s_.length / static_cast<double>(n_);
    hold();
  }

  [[nodiscard]] PlainRun run(double seconds) {
    PlainRun told{.first_touch_s = -1, .bridge_force = {}, .frets = s_.frets};
    const auto steps = static_cast<long>(std::llround(seconds / k_));
    for (long step = 1; step <= steps; ++step) {
      move();
      for (PlainFret& fret : told.frets) strike(fret, told, static_cast<double>(step) * k_);
      told.bridge_force.push_back(s_.tension * next_[n_ - 1] / h_ +
                                  s_.bending_stiffness * (2 * next_[n_ - 1] - next_[n_ - 2]) / (h_ * h_ * h_));
      before_.swap(now_);
      now_.swap(next_);
      if (step % 16 != 0) continue;
      lose(before_);
      lose(now_);
    }
    return told;
  }

 private:
  static double bend(const std::vector<double>& u, std::size_t j) { return u[j - 1] - 2 * u[j] + u[j + 1]; }

  /// The static shape by the sum of the grid's partials.
  void hold() {
    now_.assign(n_ + 1, 0);
    std::vector<double> force(n_ + 1, 0);
    for (std::size_t j = 1; j < n_; ++j) {
      force[j] =
          s_.pluck_force / h_ * plain_share(static_cast<double>(j), s_.pluck_from_stop / h_, s_.pluck_width / h_);
    }
    const double turn = std::acos(-1) / static_cast<double>(n_);
    for (std::size_t q = 1; q < n_; ++q) {
      double amount = 0;
      for (std::size_t j = 1; j < n_; ++j) amount += 2.0 / static_cast<double>(n_) * force[j] * sine(q, j, turn);
      const double e = 4 / (h_ * h_) * std::pow(std::sin(static_cast<double>(q) * turn / 2), 2);
      amount /= s_.tension * e + s_.bending_stiffness * e * e;
      for (std::size_t j = 1; j < n_; ++j) now_[j] += amount * sine(q, j, turn);
    }
    before_ = now_;
    for (std::size_t j = 1; j < n_; ++j) before_[j] -= k_ * k_ / 2 * force[j] / s_.kg_per_metre;
    next_ = now_;
  }
  static double sine(std::size_t q, std::size_t j, double turn) { return std::sin(static_cast<double>(q * j) * turn); }

  void move() {
    const double wave = s_.tension / s_.kg_per_metre * k_ * k_ / (h_ * h_);
    const double stiff = s_.bending_stiffness / s_.kg_per_metre * k_ * k_ / (h_ * h_ * h_ * h_);
    for (std::size_t j = 1; j < n_; ++j) {
      const double here = bend(now_, j);
      const double left = j == 1 ? 0 : bend(now_, j - 1), right = j == n_ - 1 ? 0 : bend(now_, j + 1);
      next_[j] = 2 * now_[j] - before_[j] + wave * here - stiff * (left - 2 * here + right);
    }
  }

  /// Sixteen steps' losses at once.
  void lose(std::vector<double>& u) {
    std::vector<double> kept = u;
    for (std::size_t j = 1; j < n_; ++j) {
      kept[j] -= 16 * k_ * (s_.loss_per_s * u[j] - s_.loss_m2_per_s * bend(u, j) / (h_ * h_));
    }
    u = kept;
  }

  void strike(PlainFret& fret, PlainRun& told, double time) {
    const auto j = static_cast<std::size_t>(fret.from_stop / h_);
    const double right = fret.from_stop / h_ - static_cast<double>(j), left = 1 - right;
    const auto depth = [&](const std::vector<double>& u) { return -fret.gap - left * u[j] - right * u[j + 1]; };
    const double free = depth(next_), before = depth(before_);
    if (free <= 0 && before <= 0) return;
    const double rise = k_ * k_ / (s_.kg_per_metre * h_);
    const double force = plain_contact_force(before, free, rise * (left * left + right * right));
    next_[j] += left * rise * force;
    next_[j + 1] += right * rise * force;
    fret.impulse += force * k_;
    if (told.first_touch_s < 0 && force > 0) told.first_touch_s = time;
  }

  PlainString s_;
  double k_, h_ = 0;
  std::size_t n_ = 0;
  std::vector<double> before_, now_, next_;
};

}  // namespace tailblock::testing
