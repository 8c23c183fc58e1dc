#pragma once

#include <utility>
#include <vector>

#include "season/crack_risk.h"

namespace tailblock {

struct SheetWood;

/// Stretches of a crack that nothing holds, as lengths along it in mm: what is left of it between cleats, glued braces,
/// bridge and bridge plate.
[[nodiscard]] std::vector<std::pair<double, double>> free_stretches(const Crack& crack, const TopDesign& design,
                                                                    const TopDamage& damage);

/// 1/E' of an orthotropic sheet with a crack along its grain, 1/MPa: the energy released is K^2/E'.
///
///     1/E' = sqrt(a_L a_R/2) [ sqrt(a_R/a_L) + (2 a_LR + a_S)/(2 a_L) ]^(1/2)     a the compliances; isotropic: 1/E
///
/// Source: Sih, Paris & Irwin 1965 (from memory).
[[nodiscard]] double crack_compliance(const SheetWood& wood);

/// Stress intensity at the ends of a crack of this length under a stress across it, MPa m^0.5.
///
///     K = s sqrt(pi a)      a half the length, in metres
///
/// A straight crack in a wide sheet. Source: common to all books on fracture (from memory).
[[nodiscard]] double stress_intensity(double stress_mpa, double length_mm);

}  // namespace tailblock
