#include "body/layered_section.h"

#include <cmath>

#include "wood/species.h"

namespace tailblock {

SheetWood sheet_of(const Species& wood, Angle ring_angle) {
  const double E_L = wood.longitudinal_modulus_gpa * 1000;
  const double E_R = E_L * wood.radial_ratio, E_T = E_L * wood.tangential_ratio;
  const double c2 = std::pow(std::cos(in_radians(ring_angle)), 2), s2 = 1 - c2;
  const double across =
      1 / (c2 * c2 / E_R + s2 * s2 / E_T + c2 * s2 * (1 / (E_L * wood.shear_rt_ratio) - 2 * wood.nu_rt / E_R));
  return {.along_mpa = E_L,
          .across_mpa = across,
          .shear_mpa = E_L / (c2 / wood.shear_lr_ratio + s2 / wood.shear_lt_ratio),
          .nu = c2 * wood.nu_lr + s2 * wood.nu_lt,
          .along_per_percent = wood.longitudinal_per_percent,
          .across_per_percent = c2 * wood.radial_per_percent + s2 * wood.tangential_per_percent};
}

Eigen::Matrix3d plane_stress(const SheetWood& wood, double grain) {
  const double held = 1 - wood.nu * wood.nu * wood.across_mpa / wood.along_mpa;
  Eigen::Matrix3d own = Eigen::Matrix3d::Zero();
  own(0, 0) = wood.along_mpa / held;
  own(1, 1) = wood.across_mpa / held;
  own(0, 1) = own(1, 0) = wood.nu * wood.across_mpa / held;
  own(2, 2) = wood.shear_mpa;
  const double c = std::cos(grain), s = std::sin(grain);
  Eigen::Matrix3d strain_along_grain;         // of a strain in x, y
  strain_along_grain << c * c, s * s, s * c,  //
      s * s, c * c, -s * c,                   //
      -2 * s * c, 2 * s * c, c * c - s * s;
  return strain_along_grain.transpose() * own * strain_along_grain;
}

Eigen::Vector3d free_strain(const SheetWood& wood, double grain) {
  const double c = std::cos(grain), s = std::sin(grain);
  const double along = wood.along_per_percent, across = wood.across_per_percent;
  return {along * c * c + across * s * s, along * s * s + across * c * c, 2 * (along - across) * s * c};
}

void LayeredSection::add(const Ply& ply, double share) {
  const Eigen::Matrix3d Q = share * plane_stress(ply.wood, ply.grain);
  const Eigen::Vector3d Qa = Q * free_strain(ply.wood, ply.grain);
  const double z1 = ply.lower, z2 = ply.upper;
  const double first = z2 - z1, second = (z2 * z2 - z1 * z1) / 2, third = (z2 * z2 * z2 - z1 * z1 * z1) / 3;
  A += Q * first;
  B += Q * second;
  D += Q * third;
  const auto group = static_cast<std::size_t>(ply.group);
  N[group] += Qa * first;
  M[group] += Qa * second;
  coupled = coupled || second != 0;
}

LayeredSection layered(std::span<const Ply> plies) {
  LayeredSection section;
  for (const Ply& ply : plies) section.add(ply);
  return section;
}

}  // namespace tailblock
