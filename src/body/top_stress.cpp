#include "body/top_stress.h"

#include <algorithm>
#include <numeric>

namespace tailblock {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

struct Strain {
  Eigen::Vector3d membrane;
  std::array<Eigen::Vector3d, 3> curvature;
  double area;
};

Strain strain_of(const PreparedTop& prepared, std::size_t triangle, const Eigen::VectorXd& displacements) {
  const TriangleStrains& strains = (*prepared.top.plate.strains)[triangle];
  const TriangleLoad own =
      unknowns_of_triangle(prepared.meshed->mesh.triangles[triangle], prepared.answers.first_unknown, displacements);
  Eigen::Matrix<double, 9, 1> stretching, bending;
  for (std::size_t i = 0; i < 9; ++i) {
    stretching[static_cast<int>(i)] = own[membrane_places[i]];
    bending[static_cast<int>(i)] = own[bending_places[i]];
  }
  Strain strain{.membrane = strains.membrane * stretching, .curvature = {}, .area = strains.area};
  for (std::size_t k = 0; k < 3; ++k) strain.curvature[k] = strains.bending[k] * bending;
  return strain;
}

double* place_of(PartEnergies& energies, PlyPart part) {
  switch (part) {
    case PlyPart::bridge:
      return &energies.bridge;
    case PlyPart::bridge_plate:
      return &energies.bridge_plate;
    case PlyPart::ring:
      return &energies.ring;
    case PlyPart::top:
      break;
  }
  return &energies.top;
}

}  // namespace

std::vector<TriangleStress> top_stress(const PreparedTop& prepared, const Eigen::VectorXd& displacements,
                                       double top_moisture_change) {
  // The grain of the top runs along x.
  const Eigen::Matrix3d Q = plane_stress(prepared.woods.top, 0);
  const Eigen::Vector3d free = top_moisture_change * free_strain(prepared.woods.top, 0);
  std::vector<TriangleStress> stress;
  for (std::size_t t = 0; t < prepared.meshed->mesh.triangles.size(); ++t) {
    const Strain strain = strain_of(prepared, t, displacements);
    const Eigen::Vector3d curvature = (strain.curvature[0] + strain.curvature[1] + strain.curvature[2]) / 3;
    const auto at_height = [&](double z) {
      const Eigen::Vector3d s = Q * (strain.membrane + z * curvature - free);
      return FaceStress{s[0], s[1]};
    };
    const double half = prepared.top.makes[t].top / 2;
    stress.push_back({at_height(half), at_height(0), at_height(-half)});
  }
  return stress;
}

double area_quantile(const PreparedTop& prepared, std::vector<double> per_triangle, double share) {
  const TriangleMesh& mesh = prepared.meshed->mesh;
  std::vector<std::size_t> order(per_triangle.size());
  std::iota(order.begin(), order.end(), 0u);
  std::ranges::sort(order, {}, [&](std::size_t t) { return per_triangle[t]; });
  const auto area = [&](std::size_t t) {
    const auto& c = mesh.triangles[t];
    return turn(mesh.nodes[at(c[0])], mesh.nodes[at(c[1])], mesh.nodes[at(c[2])]) / 2;
  };
  double all = 0;
  for (const std::size_t t : order) all += area(t);
  double below = 0;
  for (const std::size_t t : order) {
    below += area(t);
    if (below >= share * all) return per_triangle[t];
  }
  return per_triangle[order.back()];
}

PartEnergies part_energies(const PreparedTop& prepared, const Eigen::VectorXd& displacements) {
  PartEnergies energies;
  const BracedPlate& plate = prepared.top.plate;
  for (std::size_t t = 0; t < plate.mesh.triangles.size(); ++t) {
    const Strain strain = strain_of(prepared, t, displacements);
    for (const auto& [part, section] : prepared.top.layers[at(plate.section_of[t])]) {
      double energy = 3 * strain.membrane.dot(section.A * strain.membrane);
      for (const Eigen::Vector3d& k : strain.curvature) {
        energy += 2 * strain.membrane.dot(section.B * k) + k.dot(section.D * k);
      }
      *place_of(energies, part) += strain.area / 6 * energy;
    }
  }
  energies.braces.assign(prepared.design.braces.size(), 0);
  for (const PlacedRib& rib : plate.ribs) {
    const RibLoad own = unknowns_of_rib(rib, prepared.answers.first_unknown, displacements);
    energies.braces[at(rib.brace)] += 0.5 * own.dot(rib_stiffness(rib.segment) * own);
  }
  for (const NodeSpring& spring : plate.springs) {
    const auto own = displacements.segment<plate_unknowns>(prepared.answers.first_unknown[at(spring.node)]);
    energies.rim += 0.5 * own.dot(spring.stiffness * own);
  }
  return energies;
}

}  // namespace tailblock
