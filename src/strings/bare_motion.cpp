#include "strings/bare_motion.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <vector>

#include "strings/high_pass.h"

namespace tailblock {
namespace {

using Complex = std::complex<double>;
constexpr std::size_t neighbours_kept = 8;

/// One term of the force on the bridge: the real part of 2 force z^n.
struct Term {
  Complex force, force_high;
  Complex z, z_first, z_end;  ///< z, and its powers at the first instant summed and just after the last
};

/// First and last of the instants over which energies are summed.
struct Instants {
  long first, last;
};

Complex power(Complex z, long n) {
  return std::polar(std::pow(std::abs(z), static_cast<double>(n)), std::arg(z) * static_cast<double>(n));
}

Term term(Complex amplitude, Complex z, double bridge, const HighPass& filter, const Instants& when) {
  const Complex force = amplitude * bridge;
  return {force, force * answer_of(filter, z), z, power(z, when.first), power(z, when.last + 1)};
}

/// Sum of 2 Re(a z^n) 2 Re(b w^n) over the instants.
double sum_of_products(Complex a, const Term& s, Complex b, const Term& t) {
  const auto series = [](Complex w, Complex first, Complex end) { return (first - end) / (1.0 - w); };
  return 2 * (a * b * series(s.z * t.z, s.z_first * t.z_first, s.z_end * t.z_end) +
              a * std::conj(b) *
                  series(s.z * std::conj(t.z), s.z_first * std::conj(t.z_first), s.z_end * std::conj(t.z_end)))
                 .real();
}

/// One partial of the grid: its place among the string's stiffness and how high it stands at release.
struct Partial {
  double e;          ///< its second difference over itself, less the sign, 1/m2
  double restoring;  ///< T e + E I e^2, N/m2
  double height;
};

/// A lossless partial's z, and what the losses leave of it in a step.
struct Course {
  Complex z;
  double left_a_step;
};

Course course(const SpeakingString& s, const StringGrid& grid, const Partial& partial) {
  const double cosine = 1 - grid.k * grid.k * partial.restoring / (2 * s.kg_per_metre);
  return {{cosine, std::sqrt(1 - cosine * cosine)},
          std::pow(left_of_partial(s, grid, partial.e), 1.0 / grid.steps_a_loss)};
}

/// Energy of one lossless partial between two instants, J.
double energy_between(const SpeakingString& s, double k, const Partial& partial, double early, double late) {
  const double v = (late - early) / k;
  return s.length / 4 * (s.kg_per_metre * v * v + partial.restoring * early * late);
}

}  // namespace

BareMotion bare_motion(const SpeakingString& s, const StringGrid& grid, const HeldPluck& pluck, double seconds) {
  const double k = grid.k, h = grid.h;
  const Instants when{std::lround(settled_s / k), std::lround(seconds / k)};
  const HighPass filter = high_pass(high_band_hz, 1 / k);
  const double force = pluck.height / height_per_force(s, pluck.place);
  const std::vector<PointShare> shares = pluck_shares(grid, pluck.place);
  const double per_point = std::numbers::pi / grid.intervals;
  const BridgePull bridge = bridge_pull(s, grid);

  BareMotion told;
  std::vector<Term> terms;
  for (int q = 1; q < grid.intervals; ++q) {
    double share = 0;
    for (const PointShare& point : shares)
      share += point.share * std::sin(q * per_point * static_cast<double>(point.point));
    Partial partial{};
    partial.e = 4 / (h * h) * std::pow(std::sin(q * per_point / 2), 2);
    partial.restoring = s.tension * partial.e + s.bending_stiffness * partial.e * partial.e;
    partial.height = 2 * force / s.length * share / partial.restoring;

    const double before = partial.height * (1 - k * k / 2 * partial.restoring / s.kg_per_metre);
    const Course goes = course(s, grid, partial);
    // height Re(z^n) + side Im(z^n) with u(-1) as at release.
    const double side = (partial.height * goes.z.real() - before) / goes.z.imag();
    const double at_bridge = bridge.near * std::sin(q * per_point * (grid.intervals - 1)) +
                             bridge.far * std::sin(q * per_point * (grid.intervals - 2));
    // A step's force is taken before its losses: on average half a round of them and half a step later.
    const double not_yet_lost = std::pow(goes.left_a_step, -(grid.steps_a_loss + 1) / 2.0);
    terms.push_back(
        term(not_yet_lost * Complex(partial.height, -side) / 2.0, goes.left_a_step * goes.z, at_bridge, filter, when));

    const double left =
        std::pow(left_of_partial(s, grid, partial.e), 2.0 * static_cast<double>(when.last / grid.steps_a_loss));
    told.energy_at_end += left * energy_between(s, k, partial, before, partial.height);
  }
  for (std::size_t i = 0; i < terms.size(); ++i) {
    for (std::size_t j = i; j < std::min(i + neighbours_kept + 1, terms.size()); ++j) {
      const double times = i == j ? 1 : 2;
      told.bridge_energy += times * k * sum_of_products(terms[i].force, terms[i], terms[j].force, terms[j]);
      told.bridge_energy_high +=
          times * k * sum_of_products(terms[i].force_high, terms[i], terms[j].force_high, terms[j]);
    }
  }
  return told;
}

}  // namespace tailblock
