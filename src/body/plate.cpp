#include "body/plate.h"

#include <algorithm>
#include <cmath>

#include "body/plate_figures.h"
#include "body/prepared_top.h"
#include "body/top_designs.h"
#include "body/top_stress.h"
#include "wood/species.h"

namespace tailblock {
namespace {

constexpr double percent_90 = 1.645;  // standard deviations either way that hold 90 % of a normal

LoadMix moisture_mix(const MoistureChange& change) {
  LoadMix mix = LoadMix::Zero();
  mix[static_cast<int>(UnitLoad::top_moisture)] = change.top;
  mix[static_cast<int>(UnitLoad::inside_moisture)] = change.braces;
  mix[static_cast<int>(UnitLoad::bridge_moisture)] = change.bridge;
  return mix;
}

struct Extremes {
  double low = 0, high = 0;
  [[nodiscard]] double greatest() const { return std::abs(low) > high ? low : high; }
};

/// Lowest and highest w over the nodes that count.
template <class Counts>
Extremes extremes(const PreparedTop& top, const Eigen::VectorXd& displacements, Counts counts) {
  Extremes found;
  for (std::size_t n = 0; n < top.meshed->mesh.nodes.size(); ++n) {
    if (!counts(top.meshed->mesh.nodes[n])) continue;
    const double w = displacements[top.answers.first_unknown[n] + 2];
    found.low = std::min(found.low, w);
    found.high = std::max(found.high, w);
  }
  return found;
}

void require_small(std::string_view what, double greatest_mm, const TopDesign& design, const PlateFigures& figures) {
  const double most = figures.linear_limit * in_mm(design.thickness);
  if (std::abs(greatest_mm) <= most) return;
  throw Refused(std::string(what) + ": the top would move " +
                plain_number(std::round(std::abs(greatest_mm) * 100) / 100) + " mm, more than the " +
                plain_number(most) + " mm up to which this model holds");
}

UnderStrings under_strings(const PreparedTop& top, const Eigen::VectorXd& displacements, const LoadMix& mix,
                           const PlateFigures& figures) {
  const SaddleReading read = mixed(top.readings, mix);
  const double saddle_x = in_mm(top.design.bridge.saddle_x);
  const Extremes behind = extremes(top, displacements, [&](PlanePoint p) { return p.x > saddle_x; });
  const Extremes before = extremes(top, displacements, [&](PlanePoint p) { return p.x < saddle_x; });
  require_small("strings", std::max(behind.high, -before.low), top.design, figures);
  const Angle rotation = radians(figures.rotation_calibration * read.rotation);
  return {.bridge_rotation = rotation,
          .bridge_rotation_years_low = figures.creep_low * rotation,
          .bridge_rotation_years_high = figures.creep_high * rotation,
          .belly = mm(behind.high),
          .dip = mm(before.low),
          .saddle_rise = mm(read.height),
          .stiffness_n_per_mm = 1 / top.readings[static_cast<std::size_t>(UnitLoad::up)].height};
}

/// Strain through the thickness: tangential for a quartersawn top; the middle of both for a bridge, whose cut is
/// unknown.
Length thickness_change(const PreparedTop& top, const MoistureChange& change, const SpeciesTable& species) {
  const Species& wood = species.named(top.design.species);
  const Species& bridge = species.named(top.design.bridge.body.species);
  const double c2 = std::pow(std::cos(in_radians(top.design.ring_angle)), 2);
  const double through_top = c2 * wood.tangential_per_percent + (1 - c2) * wood.radial_per_percent;
  const double through_bridge = (bridge.tangential_per_percent + bridge.radial_per_percent) / 2;
  return top.design.thickness * (through_top * change.top) +
         top.design.bridge.body.thickness * (through_bridge * change.bridge);
}

WithMoisture with_moisture(const PlateRequest& request, const NeckAndBack& behind, const PreparedTop& top,
                           const Eigen::VectorXd& displacements, const LoadMix& mix, const PlateTables& tables) {
  const PlateFigures& figures = *tables.figures;
  const SaddleReading read = mixed(top.readings, mix);
  const double greatest = extremes(top, displacements, [](PlanePoint) { return true; }).greatest();
  require_small("moisture", greatest, top.design, figures);

  const SaddleReading one_drier = mixed(top.readings, moisture_mix({-1, -1, -1, 0}));
  const Angle turn = neck_turn(behind,
                               {.top_length = top.design.outline.back().x,
                                .top_along_per_percent = top.woods.top.along_per_percent,
                                .top_across_per_percent = top.woods.top.across_per_percent,
                                .sink_per_percent = mm(-one_drier.height)},
                               request.moisture, *tables.species);
  const Length from_top = 0.5 * mm(read.height);
  const Length from_thickness = 0.5 * thickness_change(top, request.moisture, *tables.species);
  const Length from_neck = in_radians(turn) * action12_per_radian(behind);
  const double top_sd = in_mm(from_top) * std::log(figures.top_factor) / percent_90;
  const double thickness_sd = in_mm(from_thickness) * figures.thickness_relative_sd;
  const double neck_sd = in_mm(from_neck) * figures.neck_relative_sd;
  const Length all = from_top + from_thickness + from_neck;
  const Length either_way =
      mm(percent_90 * std::sqrt(top_sd * top_sd + thickness_sd * thickness_sd + neck_sd * neck_sd));

  std::vector<double> across;
  for (const TriangleStress& stress : top_stress(top, displacements, request.moisture.top))
    across.push_back(stress.middle.across);
  return {.saddle_rise = mm(read.height),
          .saddle_rise_bass = mm(read.height_bass),
          .saddle_rise_treble = mm(read.height_treble),
          .bridge_rotation = radians(read.rotation),
          .greatest_move = mm(greatest),
          .action12_from_top = from_top,
          .action12_from_thickness = from_thickness,
          .action12_from_neck = from_neck,
          .action12_change = all,
          .action12_change_low = all - either_way,
          .action12_change_high = all + either_way,
          .stress_across_p95_mpa = area_quantile(top, std::move(across), 0.95)};
}

std::vector<PartEnergy> carried_by(const PreparedTop& top, const Eigen::VectorXd& displacements) {
  const PartEnergies energies = part_energies(top, displacements);
  std::vector<PartEnergy> parts{{"top", energies.top},
                                {"bridge", energies.bridge},
                                {"bridge plate", energies.bridge_plate},
                                {"hole reinforcement", energies.ring},
                                {"rim", energies.rim}};
  for (std::size_t b = 0; b < energies.braces.size(); ++b)
    parts.push_back({top.design.braces[b].name, energies.braces[b]});
  double all = 0;
  for (const PartEnergy& part : parts) all += part.energy_mj;
  for (PartEnergy& part : parts) part.share = all > 0 ? part.energy_mj / all : 0;  // N mm are mJ
  std::ranges::stable_sort(parts, std::ranges::greater{}, &PartEnergy::energy_mj);
  return parts;
}

/// To a ten-thousandth: far below anything that is drawn.
double drawn(double value) { return std::round(value * 1e4) / 1e4; }

PlateFields fields_of(const PreparedTop& top, const Eigen::VectorXd& strings, const Eigen::VectorXd& moisture,
                      double top_moisture) {
  constexpr double degree = 180 / 3.14159265358979323846;
  PlateFields fields;
  for (std::size_t n = 0; n < top.meshed->mesh.nodes.size(); ++n) {
    const PlanePoint p = top.meshed->mesh.nodes[n];
    const int base = top.answers.first_unknown[n];
    fields.x_mm.push_back(drawn(p.x));
    fields.y_mm.push_back(drawn(p.y));
    fields.strings_height_mm.push_back(drawn(strings[base + 2]));
    fields.moisture_height_mm.push_back(drawn(moisture[base + 2]));
    fields.strings_slope_deg.push_back(drawn(degree * strings[base + 3]));
    fields.moisture_slope_deg.push_back(drawn(degree * moisture[base + 3]));
  }
  const std::vector<TriangleStress> stress = top_stress(top, strings + moisture, top_moisture);
  for (std::size_t t = 0; t < stress.size(); ++t) {
    const auto& corners = top.meshed->mesh.triangles[t];
    fields.first_corner.push_back(corners[0]);
    fields.second_corner.push_back(corners[1]);
    fields.third_corner.push_back(corners[2]);
    fields.outer_along_mpa.push_back(drawn(stress[t].outer.along));
    fields.outer_across_mpa.push_back(drawn(stress[t].outer.across));
    fields.inner_along_mpa.push_back(drawn(stress[t].inner.along));
    fields.inner_across_mpa.push_back(drawn(stress[t].inner.across));
  }
  return fields;
}

std::vector<std::string> cautions_of(const PreparedTop& top, const WithMoisture& moisture, const TopDamage& damage) {
  std::vector<std::string> cautions{
      "Seasonal movement is good to a factor of about two until this instrument's own readings sharpen it; differences "
      "between two tops are worth more than either figure."};
  if (std::abs(in_mm(moisture.greatest_move)) > 0.9 * in_mm(top.design.thickness)) {
    cautions.emplace_back(
        "The top moves by about its own thickness: a calculation without small deflections would differ by 7 % or "
        "more.");
  }
  if (moisture.stress_across_p95_mpa > 0) {
    cautions.emplace_back("Stress is as if nothing ever relaxed; it does not say by itself that the top will crack.");
  }
  if (!damage.loose_braces.empty())
    cautions.emplace_back("A loose stretch is taken to carry nothing and to touch nothing.");
  return cautions;
}

}  // namespace

TopDesign design_of(const WhichTop& which, const TopDesignTable& designs) {
  if (which.drawn) return *which.drawn;
  TopDesign design = designs.design(which.body_size, which.bracing);
  if (which.thickness) design.thickness = *which.thickness;
  if (which.species) design.species = *which.species;
  if (which.ring_angle) design.ring_angle = *which.ring_angle;
  if (which.arch_radius) design.arch_radius = which.arch_radius;
  return design;
}

TopDesign drawing_of(TopDesign design) {
  const TopDesign plain;
  design.thickness = plain.thickness;
  design.species = plain.species;
  design.ring_angle = plain.ring_angle;
  design.arch_radius = plain.arch_radius;
  design.rim = plain.rim;
  for (Brace& brace : design.braces) {
    brace.width = Brace{}.width;
    brace.species = Brace{}.species;
    brace.heights.clear();
    brace.glued.clear();
  }
  for (CrossPiece* piece : {&design.bridge.body, &design.bridge_plate}) {
    piece->species.clear();
    piece->thickness = mm(in_mm(piece->thickness) > 0 ? 1 : 0);
  }
  return design;
}

PreparedTop prepare_top(const TopDesign& design, const TopDamage& damage, Length mesh, const PlateTables& tables,
                        std::shared_ptr<const MeshedTop> meshed, FactorMemory* memory) {
  PreparedTop prepared{.design = design,
                       .woods = woods_of(design, *tables.species),
                       .meshed = std::move(meshed),
                       .top = {},
                       .answers = {},
                       .readings = {}};
  if (!prepared.meshed) prepared.meshed = std::make_shared<const MeshedTop>(mesh_top(design, damage.cracks, mesh));
  prepared.top = braced_top(*prepared.meshed, design, damage, prepared.woods,
                            {tables.figures->pins_behind_saddle_mm, tables.figures->worn_width_mm});
  prepared.answers = unit_answers(*prepared.meshed, prepared.top.plate, memory);
  prepared.readings = saddle_readings(*prepared.meshed, prepared.answers, tables.figures->string_spread_mm);
  return prepared;
}

PlateResult plate(const PlateRequest& request, const PreparedTop& top, const PlateTables& tables) {
  require_valid(request);
  const NeckAndBack behind =
      request.behind.value_or(tables.designs->builds[static_cast<std::size_t>(request.top.body_size)].behind);
  const LoadMix strings_mix = string_mix(in_newtons(request.strings.pull),
                                         in_mm(request.strings.height_over_top) + in_mm(top.design.thickness) / 2);
  const LoadMix air_mix = moisture_mix(request.moisture);
  const Eigen::VectorXd strings = top.answers.displacements * strings_mix;
  const Eigen::VectorXd moisture = top.answers.displacements * air_mix;

  PlateResult result;
  result.strings = under_strings(top, strings, strings_mix, *tables.figures);
  result.moisture = with_moisture(request, behind, top, moisture, air_mix, tables);
  result.carries = carried_by(top, strings);
  result.nodes = static_cast<int>(top.meshed->mesh.nodes.size());
  result.triangles = static_cast<int>(top.meshed->mesh.triangles.size());
  result.unknowns = top.meshed->dissection.unknowns;
  result.worst_triangle = top.meshed->worst_quality;
  result.design = top.design;
  result.cautions = cautions_of(top, result.moisture, request.damage);
  if (request.with_fields) result.fields = fields_of(top, strings, moisture, request.moisture.top);
  return result;
}

PlateResult plate(const PlateRequest& request, const PlateTables& tables) {
  require_valid(request);
  const TopDesign design = design_of(request.top, *tables.designs);
  return plate(request, prepare_top(design, request.damage, request.mesh, tables), tables);
}

}  // namespace tailblock
