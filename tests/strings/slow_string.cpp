#include "slow_string.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tailblock::testing {
namespace {

constexpr double duration_s = 0.25;
using std::numbers::pi;

/// Static shape under a unit force spread evenly over the width: the mean of point loads across it.
double static_shape(const SlowString& s, double x) {
  constexpr int loads = 41;
  const double l = std::sqrt(s.bending_stiffness / s.tension);
  double sum = 0;
  for (int i = 0; i < loads; ++i) {
    const double at = s.pluck_from_stop + s.pluck_width * ((i + 0.5) / loads - 0.5);
    const double near = std::min(x, at), far = std::max(x, at);
    const double rounding = l > 0 ? l / 2 *
                                        (std::exp(-(far - near) / l) - std::exp(-(far + near) / l) -
                                         std::exp(-(2 * s.length - far - near) / l))
                                  : 0;
    sum += near * (s.length - far) / s.length - rounding;
  }
  return sum / loads;
}

void widen(Reach& reach, double u) {
  reach.away = std::max(reach.away, -u);
  reach.toward = std::max(reach.toward, u);
}

/// Points of a string on a grid with a few more beyond each end, where a pinned string goes on upside down.
class Grid {
 public:
  Grid(double length, double spacing)
      : intervals_(static_cast<std::size_t>(std::round(length / spacing))),
        h_(length / static_cast<double>(intervals_)) {}

  using Row = std::vector<double>;
  static constexpr std::size_t beyond = 4;

  [[nodiscard]] Row row() const { return Row(intervals_ + 1 + 2 * beyond, 0); }
  [[nodiscard]] std::size_t first() const { return beyond + 1; }
  [[nodiscard]] std::size_t last() const { return beyond + intervals_ - 1; }
  [[nodiscard]] double place(std::size_t i) const {
    return h_ * (static_cast<double>(i) - static_cast<double>(beyond));
  }

  void pin(Row& u) const {
    const std::size_t far = beyond + intervals_;
    u[beyond] = u[far] = 0;
    for (std::size_t i = 1; i <= beyond; ++i) {
      u[beyond - i] = -u[beyond + i];
      u[far + i] = -u[far - i];
    }
  }

  /// Second derivative, eighth order.
  void second(const Row& u, Row& out) const {
    for (std::size_t i = first(); i <= last(); ++i) {
      out[i] = (-205.0 / 72 * u[i] + 8.0 / 5 * (u[i - 1] + u[i + 1]) - 1.0 / 5 * (u[i - 2] + u[i + 2]) +
                8.0 / 315 * (u[i - 3] + u[i + 3]) - 1.0 / 560 * (u[i - 4] + u[i + 4])) /
               (h_ * h_);
    }
    pin(out);
  }

  /// Cubic through the four nearest points.
  [[nodiscard]] double at(const Row& u, double x) const {
    const double place = x / h_;
    const auto i = static_cast<std::size_t>(place) + beyond;
    const double t = place - std::floor(place);
    return -t * (t - 1) * (t - 2) / 6 * u[i - 1] + (t + 1) * (t - 1) * (t - 2) / 2 * u[i] -
           (t + 1) * t * (t - 2) / 2 * u[i + 1] + (t + 1) * t * (t - 1) / 6 * u[i + 2];
  }

 private:
  std::size_t intervals_;
  double h_;
};

}  // namespace

std::vector<Reach> added_up(const SlowString& s, const std::vector<double>& from_stop, Release release,
                            double highest_hz, double samples_per_s) {
  struct Partial {
    double k, omega, decay, amplitude;
  };
  std::vector<Partial> partials;
  const double share = s.pluck_from_stop / s.length;
  for (int q = 1;; ++q) {
    const double k = q * pi / s.length;
    const double undamped = (s.tension * k * k + s.bending_stiffness * std::pow(k, 4)) / s.kg_per_metre;
    const double decay = s.loss_per_s + s.loss_m2_per_s * k * k;
    if (std::sqrt(undamped) > 2 * pi * highest_hz) break;
    double amplitude = std::sin(k * s.pluck_from_stop) * std::sin(k * s.pluck_width / 2) / (k * s.pluck_width / 2);
    if (release == Release::triangle) {
      amplitude *= 2 / (q * q * pi * pi * share * (1 - share));
    } else {
      amplitude *= 2 / s.length / (k * k + s.bending_stiffness / s.tension * std::pow(k, 4)) /
                   static_shape(s, s.pluck_from_stop);
    }
    partials.push_back({k, std::sqrt(undamped - decay * decay), decay, amplitude});
  }
  std::vector<Reach> reach(from_stop.size(), {0, 0});
  std::vector<double> course(partials.size());
  for (int step = 0; step <= duration_s * samples_per_s; ++step) {
    const double t = step / samples_per_s;
    for (std::size_t q = 0; q < partials.size(); ++q) {
      const Partial& p = partials[q];
      course[q] =
          p.amplitude * std::exp(-p.decay * t) * (std::cos(p.omega * t) + p.decay / p.omega * std::sin(p.omega * t));
    }
    for (std::size_t n = 0; n < from_stop.size(); ++n) {
      double u = 0;
      for (std::size_t q = 0; q < partials.size(); ++q) u += course[q] * std::sin(partials[q].k * from_stop[n]);
      widen(reach[n], u);
    }
  }
  return reach;
}

std::vector<Reach> stepped(const SlowString& s, const std::vector<double>& from_stop, double spacing,
                           double steps_per_s) {
  const Grid grid(s.length, spacing);
  const double dt = 1 / steps_per_s;
  Grid::Row u = grid.row(), v = grid.row(), bend = grid.row(), fourth = grid.row(), v_bend = grid.row();
  const double high = static_shape(s, s.pluck_from_stop);
  for (std::size_t i = grid.first(); i <= grid.last(); ++i) u[i] = static_shape(s, grid.place(i)) / high;
  grid.pin(u);

  auto accelerations = [&](const Grid::Row& at_u, const Grid::Row& at_v, Grid::Row& out) {
    grid.second(at_u, bend);
    grid.second(bend, fourth);
    grid.second(at_v, v_bend);
    for (std::size_t i = grid.first(); i <= grid.last(); ++i) {
      out[i] = (s.tension * bend[i] - s.bending_stiffness * fourth[i]) / s.kg_per_metre - 2 * s.loss_per_s * at_v[i] +
               2 * s.loss_m2_per_s * v_bend[i];
    }
    grid.pin(out);
  };
  auto moved = [&](const Grid::Row& from, double by, const Grid::Row& along, Grid::Row& out) {
    for (std::size_t i = 0; i < from.size(); ++i) out[i] = from[i] + by * along[i];
  };

  std::vector<Reach> reach(from_stop.size(), {0, 0});
  Grid::Row a1 = grid.row(), a2 = grid.row(), a3 = grid.row(), a4 = grid.row();
  Grid::Row u2 = grid.row(), v2 = grid.row(), u3 = grid.row(), v3 = grid.row(), u4 = grid.row(), v4 = grid.row();
  for (int step = 0; step <= duration_s * steps_per_s; ++step) {
    for (std::size_t n = 0; n < from_stop.size(); ++n) widen(reach[n], grid.at(u, from_stop[n]));
    accelerations(u, v, a1);
    moved(u, dt / 2, v, u2);
    moved(v, dt / 2, a1, v2);
    accelerations(u2, v2, a2);
    moved(u, dt / 2, v2, u3);
    moved(v, dt / 2, a2, v3);
    accelerations(u3, v3, a3);
    moved(u, dt, v3, u4);
    moved(v, dt, a3, v4);
    accelerations(u4, v4, a4);
    for (std::size_t i = 0; i < u.size(); ++i) {
      u[i] += dt / 6 * (v[i] + 2 * v2[i] + 2 * v3[i] + v4[i]);
      v[i] += dt / 6 * (a1[i] + 2 * a2[i] + 2 * a3[i] + a4[i]);
    }
  }
  return reach;
}

}  // namespace tailblock::testing
