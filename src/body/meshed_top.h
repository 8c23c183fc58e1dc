#pragma once

#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "body/braced_plate.h"
#include "body/dissection.h"
#include "body/line_mesh.h"
#include "body/top_damage.h"
#include "body/top_design.h"

namespace tailblock {

struct SpeciesTable;

/// A brace's nodes and how far along it each lies, in shares of what lies inside the outline.
struct MeshedBrace {
  double length = 0;  ///< inside the outline, mm
  std::vector<std::vector<int>> pieces;
  std::vector<std::vector<double>> shares;
};

/// A piece of the saddle line: what share of a load on the saddle each node takes.
struct SaddleNode {
  int node;
  double weight;  ///< all together 1
};

/// A rectangle across the top, mm.
struct Footprint {
  double front = 0, back = 0, half_span = 0;
  [[nodiscard]] bool contains(PlanePoint p) const {
    return front <= p.x && p.x <= back && -half_span <= p.y && p.y <= half_span;
  }
};
[[nodiscard]] Footprint footprint(const CrossPiece& piece);

/// The share of a triangle's area that a rectangle covers.
[[nodiscard]] double covered(PlanePoint a, PlanePoint b, PlanePoint c, const Footprint& rectangle);

/// A top cut into triangles: all that depends on where things lie and not on how thick, tall or stiff they are.
struct MeshedTop {
  TriangleMesh mesh;
  std::vector<int> rim;  ///< nodes along the edge; the last is joined to the first
  std::vector<MeshedBrace> braces;
  std::vector<SaddleNode> saddle;
  std::vector<int> bridge_nodes;                              ///< under the bridge
  std::vector<double> bridge_share, plate_share, ring_share;  ///< of each triangle, covered
  std::vector<PlacedRib> ribs;                                ///< in their places; no wood yet
  std::vector<std::pair<double, double>> rib_shares;          ///< along its brace, of each rib's two nodes
  std::vector<int> rib_slots;
  Dissection dissection;
  double worst_quality = 1, mean_quality = 1;
  std::optional<Length> arch_radius;  ///< of the design it was meshed for
  std::vector<double> arch;           ///< heights of the nodes at that radius
  std::shared_ptr<const std::vector<TriangleStrains>> strains;  ///< the same
};

/// Height of the unloaded top at each node: a shallow dome about the middle of its length, 0 at its crown.
[[nodiscard]] std::vector<double> arch_heights(const TriangleMesh& mesh, const TopDesign& design);

/// @throws Refused when the design cannot be meshed: an outline that does not close, a saddle off the bridge, a hole
/// outside the top, lines too close to each other.
[[nodiscard]] MeshedTop mesh_top(const TopDesign& design, const std::vector<Crack>& cracks, Length spacing);

/// The layers of a triangle of the top; only those that are there.
struct TriangleMake {
  double top = 0;     ///< thickness
  double bridge = 0;  ///< share of the triangle under glued bridge
  double plate = 0;   ///< share over the bridge plate
  double plate_thickness = 0;
  double ring = 0;  ///< share over the hole's reinforcement
  auto operator<=>(const TriangleMake&) const = default;
};

/// The woods a top is made of, as plates and ribs feel them.
struct TopWoods {
  SheetWood top, bridge, bridge_plate, ring;
  std::vector<SheetWood> braces;
};
/// @throws Refused naming a wood that is not in the table.
[[nodiscard]] TopWoods woods_of(const TopDesign& design, const SpeciesTable& species);

/// The plies of a triangle, each with the share of it that it covers.
enum class PlyPart { top, bridge, bridge_plate, ring };
struct SharedPly {
  Ply ply;
  double share;
  PlyPart part;
};
[[nodiscard]] std::vector<SharedPly> plies_of(const TriangleMake& make, const TopDesign& design, const TopWoods& woods);

/// One layer as a section of its own, to share out energy.
struct LayerSection {
  PlyPart part;
  LayeredSection section;
};

/// Where string ends wear the bridge plate: a strip along the pin holes, as long as the saddle.
struct PinLine {
  double behind_saddle_mm = 0, worn_width_mm = 0;
};

/// A top with its wood: ready to be calculated.
struct BracedTop {
  BracedPlate plate;
  std::vector<std::vector<LayerSection>> layers;  ///< of each of the plate's sections
  std::vector<TriangleMake> makes;                ///< one a triangle
};
/// @throws Refused naming a brace that is not there.
[[nodiscard]] BracedTop braced_top(const MeshedTop& meshed, const TopDesign& design, const TopDamage& damage,
                                   const TopWoods& woods, const PinLine& pin_line);

}  // namespace tailblock
