#pragma once

#include <span>
#include <vector>

#include "quantity/length.h"
#include "quantity/physical.h"

namespace tailblock {

/// A plate of bare wood in moist air. Source of 1e-10 m2/s and of its range 0.5e-10..2e-10: spruce across the grain by
/// dynamic vapour sorption, Sanchez-Ferrer & Engelhardt, Scientific Reports 2026 (read, abstract: 0.94e-10 R,
/// 1.00e-10 T); it rises with moisture, which is left out.
struct Slab {
  Length thickness = mm(2.8);
  int faces_open = 1;  ///< 1: the other face is sealed by finish; 2: both exchange
  double diffusion_m2_per_s = 1e-10;
};

/// Time in which the slowest mode of a slab falls to 1/e.
///
///     tau = 4 l^2/(pi^2 D)      l the whole thickness with one face open, half of it with two
///
/// Left out: air film, case and finish, which are further stages. Derived here (docs/models/moisture.md); the first
/// mode of Crank, The Mathematics of Diffusion, plane sheet (from memory, equation number not checked).
[[nodiscard]] Days slab_time_constant(const Slab& slab);

/// Dt/l^2 after a time.
[[nodiscard]] double fourier_number(const Slab& slab, Days time);

/// Share of the whole uptake that has happened (0..1) in a slab whose open faces are held at the new moisture.
///
///     E = 1 - sum_n 8/((2n+1)^2 pi^2) exp(-(2n+1)^2 pi^2 Fo/4)        n = 0, 1, 2 ...
///
/// Source: Crank, The Mathematics of Diffusion, plane sheet (from memory, equation number not checked).
/// @throws Refused when `fourier` is negative or not a number.
[[nodiscard]] double slab_uptake(double fourier);

/// The same through an air film, finish or case on the open faces: -D dM/dx = k (M_face - M_air), Bi = k l/D.
///
///     E = 1 - sum_n 2 Bi^2/(b^2 (b^2 + Bi^2 + Bi)) exp(-b^2 Fo)        b_n the roots of b tan b = Bi
///
/// Source: Crank, The Mathematics of Diffusion, surface evaporation from a plane sheet (from memory, equation number
/// not checked). Valid for Bi 1e-4..1e4.
[[nodiscard]] double slab_uptake_through_film(double fourier, double biot);

/// Root `n` (0 first) of b tan b = Bi, in n pi .. n pi + pi/2.
[[nodiscard]] double film_root(double biot, int n);

/// The response of one first-order stage, tau dy/dt = x - y, to an input given day by day.
///
///     y_1 = x_1 - s tau (1 - e) + (y_0 - x_0) e        s = x_1 - x_0 a day, e = exp(-1 day/tau)
///
/// The input runs in straight lines from each day's value to the next; the response to that is exact. The first answer
/// is `start`, the moisture on the first day; the list is as long as the input. A lag of zero gives the input back
/// after the first day.
/// @throws Refused naming `lag_days` when it is negative or not a number.
[[nodiscard]] std::vector<double> follow(std::span<const double> daily, Days lag, double start);

/// Where the two stages begin.
struct TwoStageStart {
  double first;   ///< the stage next to the air (a case, a finish)
  double second;  ///< the wood
};

/// Two stages one behind the other: the second follows the first, which follows the input. Exact for the same broken
/// line: the first stage's answer between days is a line and an exponential, and the second is solved for that.
[[nodiscard]] std::vector<double> follow_twice(std::span<const double> daily, Days first_lag, Days second_lag,
                                               TwoStageStart start);

/// How weather that comes and goes is passed on by a slow stage: the stationary covariance, at two moments
/// `separation` apart, of the response of a first-order stage of time constant tau to an Ornstein-Uhlenbeck input of
/// standard deviation `sd` and memory T.
///
///     S(u) = sd^2 [exp(-u/T) - r exp(-u/tau)]/(1 - r^2)      r = tau/T
///
/// computed as sd^2 exp(-x) [1 + x (1 - exp(-z))/z]/(1 + r), x = u/max(T, tau), z = u/min(T, tau) - x, which is the
/// same and has no trouble at r = 1. Derived here (docs/models/moisture.md).
/// @throws Refused naming `weather_memory_days` (0.01..1000), `lag_days` (0..10000) or `separation_days`.
[[nodiscard]] double followed_weather_covariance(double sd, Days weather_memory, Days lag, Days separation);

}  // namespace tailblock
