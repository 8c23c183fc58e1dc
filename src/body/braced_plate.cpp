#include "body/braced_plate.h"

namespace tailblock {
namespace {

constexpr std::array all_groups{WoodGroup::top, WoodGroup::inside, WoodGroup::bridge};

std::size_t at(int index) { return static_cast<std::size_t>(index); }

std::array<int, 12> rib_places(const PlacedRib& rib, const std::vector<int>& first_unknown) {
  std::array<int, 12> places{};
  int k = 0;
  for (const auto& [node, slot] : {std::pair{rib.first, rib.first_slot}, std::pair{rib.second, rib.second_slot}}) {
    const int base = first_unknown[at(node)];
    for (int i = 0; i < plate_unknowns; ++i) places[at(k++)] = base + i;
    places[at(k++)] = base + plate_unknowns + slot;
  }
  return places;
}

}  // namespace

ArchHeights BracedPlate::arch_of(const std::array<int, 3>& triangle) const {
  return {arch[at(triangle[0])], arch[at(triangle[1])], arch[at(triangle[2])]};
}

void BracedPlate::find_strains() {
  auto found = std::make_shared<std::vector<TriangleStrains>>();
  found->reserve(mesh.triangles.size());
  for (const auto& corners : mesh.triangles) {
    found->push_back(triangle_strains(mesh.nodes[at(corners[0])], mesh.nodes[at(corners[1])],
                                      mesh.nodes[at(corners[2])], arch_of(corners)));
  }
  strains = std::move(found);
}

std::vector<int> first_unknowns(const BracedPlate& plate) {
  std::vector<int> first(plate.mesh.nodes.size() + 1, 0);
  for (std::size_t n = 0; n < plate.mesh.nodes.size(); ++n)
    first[n + 1] = first[n] + plate_unknowns + plate.rib_slots[n];
  return first;
}

TriangleLoad unknowns_of_triangle(const std::array<int, 3>& triangle, const std::vector<int>& first_unknown,
                                  const Eigen::Ref<const Eigen::VectorXd>& all) {
  TriangleLoad own;
  for (int corner = 0; corner < 3; ++corner) {
    own.segment<plate_unknowns>(plate_unknowns * corner) =
        all.segment<plate_unknowns>(first_unknown[at(triangle[at(corner)])]);
  }
  return own;
}

RibLoad unknowns_of_rib(const PlacedRib& rib, const std::vector<int>& first_unknown,
                        const Eigen::Ref<const Eigen::VectorXd>& all) {
  RibLoad own;
  const auto places = rib_places(rib, first_unknown);
  for (int i = 0; i < 12; ++i) own[i] = all[places[at(i)]];
  return own;
}

Eigen::MatrixXd moisture_loads(const BracedPlate& plate, const std::vector<int>& first_unknown) {
  Eigen::MatrixXd loads = Eigen::MatrixXd::Zero(first_unknown.back(), static_cast<int>(wood_groups));
  for (std::size_t t = 0; t < plate.mesh.triangles.size(); ++t) {
    const TriangleStrains& strains = (*plate.strains)[t];
    const LayeredSection& section = plate.sections[at(plate.section_of[t])];
    for (const WoodGroup group : all_groups) {
      if (section.N[static_cast<std::size_t>(group)].isZero(0)) continue;
      const TriangleLoad load = moisture_load(strains, section, group);
      for (int corner = 0; corner < 3; ++corner) {
        const int base = first_unknown[at(plate.mesh.triangles[t][at(corner)])];
        loads.col(static_cast<int>(group)).segment<plate_unknowns>(base) +=
            load.segment<plate_unknowns>(plate_unknowns * corner);
      }
    }
  }
  for (const PlacedRib& rib : plate.ribs) {
    const RibLoad load = moisture_load(rib.segment);
    const auto places = rib_places(rib, first_unknown);
    for (int i = 0; i < 12; ++i) loads(places[at(i)], static_cast<int>(WoodGroup::inside)) += load[i];
  }
  return loads;
}

Eigen::MatrixXd forces_of(const BracedPlate& plate, const std::vector<int>& first_unknown,
                          const Eigen::MatrixXd& displacements) {
  Eigen::MatrixXd forces = Eigen::MatrixXd::Zero(displacements.rows(), displacements.cols());
  for (Eigen::Index column = 0; column < displacements.cols(); ++column) {
    const auto all = displacements.col(column);
    for (std::size_t t = 0; t < plate.mesh.triangles.size(); ++t) {
      const auto& corners = plate.mesh.triangles[t];
      const TriangleLoad own = triangle_stiffness((*plate.strains)[t], plate.sections[at(plate.section_of[t])]) *
                               unknowns_of_triangle(corners, first_unknown, all);
      for (int corner = 0; corner < 3; ++corner) {
        forces.col(column).segment<plate_unknowns>(first_unknown[at(corners[at(corner)])]) +=
            own.segment<plate_unknowns>(plate_unknowns * corner);
      }
    }
    for (const PlacedRib& rib : plate.ribs) {
      const RibLoad own = rib_stiffness(rib.segment) * unknowns_of_rib(rib, first_unknown, all);
      const auto places = rib_places(rib, first_unknown);
      for (int i = 0; i < 12; ++i) forces(places[at(i)], column) += own[i];
    }
    for (const NodeSpring& spring : plate.springs) {
      const int base = first_unknown[at(spring.node)];
      forces.col(column).segment<plate_unknowns>(base) += spring.stiffness * all.segment<plate_unknowns>(base);
    }
  }
  return forces;
}

}  // namespace tailblock
