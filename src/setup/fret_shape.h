#pragma once

#include <optional>
#include <vector>

#include "setup/fret_notes.h"

namespace tailblock {

/// The straight line that fits some crowns best (least squares), drawn over every fret.
[[nodiscard]] std::vector<double> best_line(const std::vector<double>& from_nut, const std::vector<double>& departures,
                                            const std::vector<bool>& counts);

/// The highest straight line, its middle counting, that lies on or under every crown: what a beam comes to rest on when
/// every crown has been touched. `fall` is how far the wanted profile lies under the line at each fret; it is taken
/// off.
///
///     line(xm) = min over crowns i left and j right of the middle xm of the chord through i and j at xm
///
/// Source: first principles (the lower hull's edge under the middle).
[[nodiscard]] std::vector<double> line_touching_all(const std::vector<double>& from_nut,
                                                    const std::vector<double>& departures,
                                                    const std::vector<double>& fall);

/// Crowns that hang together round the body joint. The neck's line and the tongue's meet at the joint j,
///
///     l(x) = a + b x + c max(0, x - x_j)
///
/// least squares over the frets from eight below the joint to the last, the five round the joint left out. The hump is
/// the mean height over l of the higher neighbouring pair among crowns j - 1, j, j + 1; c (x_last - x_j) is how far the
/// last fret rises from the neck's line. Needs four frets beyond the joint.
///
/// Source: derived here; the pieces are the trade's own straightedge test, held on both sides of the joint.
struct JointShape {
  FretFigure hump, tongue_rise;
  bool several = false;  ///< both crowns of the pair stand above the lines, each by half of the hump at least
};
[[nodiscard]] std::optional<JointShape> joint_shape(const NeckLine& neck, const Crowns& crowns);

}  // namespace tailblock
