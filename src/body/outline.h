#pragma once

#include <vector>

#include "body/triangle_mesh.h"

namespace tailblock {

/// The rim of a top as a closed polygon, counterclockwise, from points of one half (y >= 0): the first at the neck edge
/// and the last at the tail, both on the centre line.
///
/// A periodic cubic spline with the length of the chords as its parameter runs through those points and their mirror
/// images. Source: spline interpolation, textbook.
/// @param points_between on each piece of the spline.
[[nodiscard]] std::vector<PlanePoint> outline(const std::vector<PlanePoint>& half, int points_between = 16);

}  // namespace tailblock
