#pragma once

#include <optional>
#include <string>
#include <vector>

#include "setup/fret_dress.h"

namespace tailblock {

/// The crowns of one side as the readings have them, in mm; index 0 is fret 1. Departures are over the neck's bow, up
/// to a straight line: nothing that touches depends on it.
struct CrownSide {
  std::vector<double> departure;
  std::vector<double> covariance;  ///< row by row, its straight-line part taken out
  std::vector<bool> read;
  std::vector<std::optional<double>> over_board;
  std::vector<double> springs;  ///< already taken off the departure where it says loose
  std::vector<bool> loose;

  [[nodiscard]] double sd(std::size_t i) const;
  /// Variance of a weighted sum of the crowns.
  [[nodiscard]] double variance(const std::vector<double>& weight) const;
};

struct Crowns {
  CrownSide bass, treble;
  bool apart = false;  ///< else bass and treble are one and the same reading
  Length relief;       ///< of the bow the departures are over
  std::vector<std::string> cautions;
};

/// Crowns from whatever was read.
///
///     departure    d_n = v
///     straightedge z_p + (z_q - z_p)(x_n - x_p)/(x_q - x_p) - z_n = v              z = bow + d
///     rocker       z_(n-1) + (z_n - z_(n-1))(x_(n+1) - x_(n-1))/(x_n - x_(n-1)) - z_(n+1) = v; v = 0 says "at most 0"
///
/// each weighted with its own error, with a weak wish that a crown lies near its neighbours' line, which decides only
/// where nobody read. Weighted least squares, that is the mean of a normal distribution; its spread comes with it. With
/// straightedge or rocker alone the bow is fitted to the crowns as well.
///
/// Source: derived here (docs/models/fret-dress.md).
/// @throws Refused when a fret or a straightedge's foot is not on the neck, a crown is read twice in one way, or no
/// reading says how high a crown is.
[[nodiscard]] Crowns crowns_from_readings(const FretDressRequest& request, const FretLimits& limits);

}  // namespace tailblock
