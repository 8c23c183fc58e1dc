#pragma once

#include <span>
#include <vector>

#include "strings/string_line.h"

namespace tailblock {

/// How far fret 12 rises for a mm of relief when rod, heat or season bows the neck.
struct RodFigure {
  double action12_per_relief = 2.4;
  double sd = 0.6;  ///< one standard deviation of what is not known of it
  int turns = 0;    ///< of this instrument's rod, read before and after, that it was learnt from
};
void describe(FieldVisitor&, RodFigure&);

/// A rod turned and read on both sides of the turn.
struct RodTurn {
  Length relief_change, action12_change;
  Length relief_change_sd, action12_change_sd;
};

/// The figure of this neck: evenly bent until its own turns have been read.
///
///     prior N(g, s^2), each turn's d = da/dR with variance (sd_a^2 + g^2 sd_R^2)/dR^2
///
/// g of relief_effect at the held joint; s from what bends at other places than evenly would give. Turns under 0.03 mm
/// of relief say nothing and are passed over. Source: derived here (docs/models/string-line.md).
[[nodiscard]] RodFigure rod_figure(const NeckLine& neck, double prior_sd, std::span<const RodTurn> turns);

}  // namespace tailblock
