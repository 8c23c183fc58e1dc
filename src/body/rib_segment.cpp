#include "body/rib_segment.h"

#include <algorithm>
#include <cmath>

namespace tailblock {

RibStrains rib_strains(const RibSegment& rib) {
  const double l = std::hypot(rib.dx, rib.dy);
  const double c = rib.dx / l, s = rib.dy / l;
  RibStrains strains{RibStrain::Zero(), RibStrain::Zero(), RibStrain::Zero(), RibStrain::Zero(), l};
  for (const int at : {0, rib_unknowns}) {
    const double rise = (at == 0 ? -1 : 1) / l;  // slope of the node's share
    strains.axial[at] = rise * c;
    strains.axial[at + 1] = rise * s;
    strains.axial[at + 2] = rib.arch_rise / l * rise;
    strains.axial[at + 3] = rise * rib.under_middle * c;  // b_s = -dw/ds at the plate's nodes
    strains.axial[at + 4] = rise * rib.under_middle * s;
    strains.axial[at + 5] = -rise * rib.height / 2;
    strains.bending[at + 5] = rise;
    strains.shear[at + 2] = rise;
    strains.shear[at + 5] = 0.5;
    strains.twist[at + 3] = rise * s;
    strains.twist[at + 4] = -rise * c;
  }
  return strains;
}

double torsion_constant(double width, double height) {
  const double a = std::max(width, height), b = std::min(width, height);
  const double slim = b / a;
  return a * b * b * b * (1.0 / 3 - 0.21 * slim * (1 - std::pow(slim, 4) / 12));
}

RibStiffness rib_stiffness(const RibSegment& rib) {
  const RibStrains strains = rib_strains(rib);
  const double l = strains.length * rib.glued;
  const double area = rib.width * rib.height;
  RibStiffness K = RibStiffness::Zero();
  const auto add = [&](const RibStrain& strain, double stiffness) {
    K += (l * stiffness) * strain.transpose().lazyProduct(strain);
  };
  add(strains.axial, rib.along_mpa * area);
  add(strains.bending, rib.along_mpa * area * rib.height * rib.height / 12);
  add(strains.shear, 5.0 / 6 * rib.shear_mpa * area);
  add(strains.twist, rib.shear_mpa * torsion_constant(rib.width, rib.height));
  return K;
}

RibLoad moisture_load(const RibSegment& rib) {
  const RibStrains strains = rib_strains(rib);
  const double pull = strains.length * rib.glued * rib.along_mpa * rib.width * rib.height * rib.along_per_percent;
  return pull * strains.axial.transpose();
}

}  // namespace tailblock
