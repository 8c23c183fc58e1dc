#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "body/meshed_top.h"
#include "body/point_grid.h"
#include "wood/species.h"

namespace tailblock {
namespace {

constexpr double across_the_top = std::numbers::pi / 2;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

PlanePoint middle_of(const TriangleMesh& mesh, std::size_t triangle) {
  PlanePoint middle{};
  for (const int node : mesh.triangles[triangle]) {
    middle.x += mesh.nodes[at(node)].x / 3;
    middle.y += mesh.nodes[at(node)].y / 3;
  }
  return middle;
}

std::vector<TriangleMake> makes_of(const MeshedTop& meshed, const TopDesign& design, const TopDamage& damage,
                                   const PinLine& pin_line) {
  const Footprint bridge = footprint(design.bridge.body);
  const double pins = in_mm(design.bridge.saddle_x) + pin_line.behind_saddle_mm;
  const Footprint worn{pins - pin_line.worn_width_mm / 2, pins + pin_line.worn_width_mm / 2,
                       in_mm(design.bridge.saddle_length) / 2};
  const double glue_ends = bridge.back - in_mm(damage.bridge_lifted);
  const Footprint lifted{glue_ends, bridge.back, bridge.half_span};
  std::vector<TriangleMake> makes;
  for (std::size_t t = 0; t < meshed.mesh.triangles.size(); ++t) {
    TriangleMake make{.top = thickness_at(middle_of(meshed.mesh, t), damage.thickness, in_mm(design.thickness)),
                      .bridge = meshed.bridge_share[t],
                      .plate = meshed.plate_share[t],
                      .plate_thickness = in_mm(design.bridge_plate.thickness),
                      .ring = meshed.ring_share[t]};
    const auto& corners = meshed.mesh.triangles[t];
    const auto share_in = [&](const Footprint& f) {
      return covered(meshed.mesh.nodes[at(corners[0])], meshed.mesh.nodes[at(corners[1])],
                     meshed.mesh.nodes[at(corners[2])], f);
    };
    if (make.bridge > 0 && in_mm(damage.bridge_lifted) > 0) make.bridge = std::max(0.0, make.bridge - share_in(lifted));
    if (make.plate > 0 && damage.bridge_plate_worn > 0) {
      make.plate_thickness *= 1 - damage.bridge_plate_worn * share_in(worn);
    }
    makes.push_back(make);
  }
  return makes;
}

double height_at(const Brace& brace, double share) {
  const auto& stations = brace.heights;
  if (share <= stations.front().share) return in_mm(stations.front().height);
  for (std::size_t k = 1; k < stations.size(); ++k) {
    const double from = stations[k - 1].share, to = stations[k].share;
    if (share > to) continue;
    const double part = to > from ? (share - from) / (to - from) : 1;
    return in_mm(stations[k - 1].height) * (1 - part) + in_mm(stations[k].height) * part;
  }
  return in_mm(stations.back().height);
}

/// How much of a stretch of a brace holds: its glued stretches less what has come loose.
class Glue {
 public:
  Glue(const Brace& brace, double length, const TopDamage& damage) {
    stretches_ = brace.glued;
    if (stretches_.empty()) stretches_.push_back({0, 1});
    for (const LooseBrace& loose : damage.loose_braces) {
      if (loose.brace != brace.name) continue;
      const double from = in_mm(loose.from_end) / length, to = (in_mm(loose.from_end) + in_mm(loose.length)) / length;
      remove(loose.end == BraceEnd::first ? from : 1 - to, loose.end == BraceEnd::first ? to : 1 - from);
    }
  }
  [[nodiscard]] double share_of(double from, double to) const {
    if (from > to) std::swap(from, to);
    double held = 0;
    for (const GluedStretch& s : stretches_)
      held += std::max(0.0, std::min(to, s.to_share) - std::max(from, s.from_share));
    return to > from ? std::min(1.0, held / (to - from)) : 0;
  }

 private:
  void remove(double from, double to) {
    std::vector<GluedStretch> left;
    for (const GluedStretch& s : stretches_) {
      if (s.from_share < std::min(from, s.to_share)) left.push_back({s.from_share, std::min(from, s.to_share)});
      if (std::max(to, s.from_share) < s.to_share) left.push_back({std::max(to, s.from_share), s.to_share});
    }
    stretches_ = std::move(left);
  }
  std::vector<GluedStretch> stretches_;
};

std::vector<PlacedRib> ribs_of(const MeshedTop& meshed, const TopDesign& design, const TopDamage& damage,
                               const TopWoods& woods, const std::vector<double>& arch) {
  std::vector<Glue> glue;
  for (std::size_t b = 0; b < design.braces.size(); ++b)
    glue.emplace_back(design.braces[b], meshed.braces[b].length, damage);
  std::vector<PlacedRib> ribs = meshed.ribs;
  for (std::size_t r = 0; r < ribs.size(); ++r) {
    PlacedRib& rib = ribs[r];
    const Brace& brace = design.braces[at(rib.brace)];
    const SheetWood& wood = woods.braces[at(rib.brace)];
    const auto [from, to] = meshed.rib_shares[r];
    const PlanePoint a = meshed.mesh.nodes[at(rib.first)], b = meshed.mesh.nodes[at(rib.second)];
    rib.segment.width = in_mm(brace.width);
    rib.segment.height = height_at(brace, (from + to) / 2);
    rib.segment.under_middle =
        thickness_at({(a.x + b.x) / 2, (a.y + b.y) / 2}, damage.thickness, in_mm(design.thickness)) / 2;
    rib.segment.along_mpa = wood.along_mpa;
    rib.segment.shear_mpa = wood.shear_mpa;
    rib.segment.along_per_percent = wood.along_per_percent;
    rib.segment.arch_rise = arch[at(rib.second)] - arch[at(rib.first)];
    rib.segment.glued = glue[at(rib.brace)].share_of(from, to);
  }
  return ribs;
}

std::vector<NodeSpring> rim_springs(const MeshedTop& meshed, const TopDesign& design) {
  const RimStiffness& rim = design.rim;
  std::vector<NodeSpring> springs;
  for (const int node : meshed.rim) springs.push_back({.node = node});
  for (std::size_t k = 0; k < meshed.rim.size(); ++k) {
    const std::size_t next = (k + 1) % meshed.rim.size();
    const PlanePoint a = meshed.mesh.nodes[at(meshed.rim[k])], b = meshed.mesh.nodes[at(meshed.rim[next])];
    const double length = distance(a, b);
    const Eigen::Vector2d along((b.x - a.x) / length, (b.y - a.y) / length), outward(along[1], -along[0]);
    const PlanePoint m{(a.x + b.x) / 2, (a.y + b.y) / 2};
    // The blocks end across the neck and tail edges, where these run more across than along.
    const bool block = std::abs(m.y) < in_mm(rim.block_half_width) && std::abs(outward[0]) > 0.7;
    const double in_plane = block ? rim.block_in_plane_n_mm2 : 0;
    NodeStiffness own = NodeStiffness::Zero();
    own.topLeftCorner<2, 2>() = (rim.outward_n_mm2 + in_plane) * outward * outward.transpose() +
                                (rim.along_n_mm2 + in_plane) * along * along.transpose();
    own(2, 2) = rim.up_n_mm2 + (block ? rim.block_up_n_mm2 : 0);
    own.bottomRightCorner<2, 2>() = (rim.slope_n + (block ? rim.block_slope_n : 0)) * outward * outward.transpose();
    springs[k].stiffness += length / 2 * own;
    springs[next].stiffness += length / 2 * own;
  }
  return springs;
}

}  // namespace

TopWoods woods_of(const TopDesign& design, const SpeciesTable& species) {
  const auto sheet = [&](const std::string& name) { return sheet_of(species.named(name), degrees(0)); };
  TopWoods woods{.top = sheet_of(species.named(design.species), design.ring_angle),
                 .bridge = sheet(design.bridge.body.species),
                 .bridge_plate = sheet(design.bridge_plate.species),
                 .ring = sheet(design.soundhole.ring_species),
                 .braces = {}};
  for (const Brace& brace : design.braces) woods.braces.push_back(sheet(brace.species));
  return woods;
}

std::vector<SharedPly> plies_of(const TriangleMake& make, const TopDesign& design, const TopWoods& woods) {
  const double half = make.top / 2;
  std::vector<SharedPly> plies{{Ply{woods.top, 0, -half, half, WoodGroup::top}, 1, PlyPart::top}};
  if (make.bridge > 0) {
    const double over = half + in_mm(design.bridge.body.thickness);
    plies.push_back({Ply{woods.bridge, across_the_top, half, over, WoodGroup::bridge}, make.bridge, PlyPart::bridge});
  }
  if (make.plate > 0 && make.plate_thickness > 0) {
    plies.push_back({Ply{woods.bridge_plate, across_the_top, -half - make.plate_thickness, -half, WoodGroup::inside},
                     make.plate, PlyPart::bridge_plate});
  }
  if (make.ring > 0) {
    const double under = half + in_mm(design.soundhole.ring_thickness);
    plies.push_back({Ply{woods.ring, across_the_top, -under, -half, WoodGroup::inside}, make.ring, PlyPart::ring});
  }
  return plies;
}

BracedTop braced_top(const MeshedTop& meshed, const TopDesign& design, const TopDamage& damage, const TopWoods& woods,
                     const PinLine& pin_line) {
  for (const LooseBrace& loose : damage.loose_braces) (void)brace_named(design, loose.brace);
  BracedTop top;
  BracedPlate& plate = top.plate;
  plate.mesh = meshed.mesh;
  plate.rib_slots = meshed.rib_slots;
  if (design.arch_radius == meshed.arch_radius) {
    plate.arch = meshed.arch;
    plate.strains = meshed.strains;
  } else {
    plate.arch = arch_heights(plate.mesh, design);
    plate.find_strains();
  }
  top.makes = makes_of(meshed, design, damage, pin_line);
  std::map<TriangleMake, int> known;
  for (const TriangleMake& make : top.makes) {
    const auto [entry, is_new] = known.try_emplace(make, static_cast<int>(plate.sections.size()));
    if (is_new) {
      LayeredSection& section = plate.sections.emplace_back();
      auto& layers = top.layers.emplace_back();
      for (const SharedPly& shared : plies_of(make, design, woods)) {
        section.add(shared.ply, shared.share);
        layers.push_back({.part = shared.part, .section = {}});
        layers.back().section.add(shared.ply, shared.share);
      }
    }
    plate.section_of.push_back(entry->second);
  }
  plate.ribs = ribs_of(meshed, design, damage, woods, plate.arch);
  plate.springs = rim_springs(meshed, design);
  return top;
}

}  // namespace tailblock
