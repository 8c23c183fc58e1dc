#pragma once

#include <Eigen/Core>
#include <array>
#include <span>

#include "quantity/physical.h"

namespace tailblock {

struct Species;

/// Which wood of the top: what dries together and is told apart in the answer.
enum class WoodGroup { top, inside, bridge };
inline constexpr std::size_t wood_groups = 3;

/// A thin sheet of wood as a plate feels it: moduli in MPa, strain per percent of moisture.
struct SheetWood {
  double along_mpa = 0, across_mpa = 0, shear_mpa = 0;
  double nu = 0;  ///< strain across per strain along, sign turned, pulled along the grain
  double along_per_percent = 0, across_per_percent = 0;
};

/// A sheet cut from this wood, its growth rings at `ring_angle` to its thickness: 0 quartersawn, 90 flat-sawn.
///
///     1/E = c^4/E_R + s^4/E_T + c^2 s^2 (1/G_RT - 2 nu_RT/E_R)     across the grain
///     1/G = c^2/G_LR + s^2/G_LT,   nu = c^2 nu_LR + s^2 nu_LT,   C = c^2 C_R + s^2 C_T
///
/// c, s cosine and sine of the ring angle. Source: turning the compliance of an orthotropic solid about L, derived
/// here.
[[nodiscard]] SheetWood sheet_of(const Species& wood, Angle ring_angle);

/// Plane-stress stiffness Q, MPa, of a sheet whose grain runs at `grain` radians to x (towards y).
[[nodiscard]] Eigen::Matrix3d plane_stress(const SheetWood& wood, double grain);

/// Strain (x, y, shear) per percent of moisture of a sheet left free.
[[nodiscard]] Eigen::Vector3d free_strain(const SheetWood& wood, double grain);

/// One layer; heights over the middle of the top, outside positive, mm.
struct Ply {
  SheetWood wood;
  double grain = 0;  ///< radians to x
  double lower = 0, upper = 0;
  WoodGroup group = WoodGroup::top;
};

/// A layered plate over its reference plane, per width. N and mm.
///
///     A = sum Q (z2 - z1)   B = sum Q (z2^2 - z1^2)/2   D = sum Q (z2^3 - z1^3)/3
///     N = sum Q a (z2 - z1)   M = sum Q a (z2^2 - z1^2)/2       a free strain per percent, one N and M for each group
struct LayeredSection {
  Eigen::Matrix3d A = Eigen::Matrix3d::Zero(), B = Eigen::Matrix3d::Zero(), D = Eigen::Matrix3d::Zero();
  std::array<Eigen::Vector3d, wood_groups> N{Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero()};
  std::array<Eigen::Vector3d, wood_groups> M{Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero()};
  bool coupled = false;  ///< B is not zero

  /// Adds a layer, or the share of it that covers this place.
  void add(const Ply& ply, double share = 1);
};

[[nodiscard]] LayeredSection layered(std::span<const Ply> plies);

}  // namespace tailblock
