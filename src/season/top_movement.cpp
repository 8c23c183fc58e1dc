#include "season/top_movement.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <memory>

#include "body/plate_figures.h"
#include "body/prepared_top.h"
#include "body/top_designs.h"
#include "quantity/named_values.h"
#include "wood/species.h"

namespace tailblock {
namespace {

constexpr std::string_view built_of = "Sitka spruce";
constexpr Length mesh = mm(8);

/// What one top is over the usual one, factor by factor.
struct Factors {
  double movement = 1, modulus = 1, across = 1, shear = 1;
  double brace_modulus = 1, brace_height = 1, thickness = 1, arch = 1;
  double rim_outward = 1, rim_slope = 1;
  double width = 1;
};

/// The usual top of one size and bracing, ready to be calculated with any factors. Meshes once.
class VariedTop {
 public:
  VariedTop(BodySize size, std::string_view bracing, const PlateTables& tables) : tables_(tables) {
    request_.top.body_size = size;
    request_.moisture = {1, 1, 1, 1};
    usual_ = tables.designs->design(size, bracing);
  }

  [[nodiscard]] WithMoisture moved(const Factors& f) {
    SpeciesTable species = *tables_.species;
    const Species wood = species.named(built_of);
    species.species.push_back(top_wood(wood, f));
    species.species.push_back(brace_wood(wood, f));
    const TopDesign design = varied(f);
    const PlateTables tables{.species = &species, .designs = tables_.designs, .figures = tables_.figures};
    const bool as_drawn = f.width == 1;
    const PreparedTop top = prepare_top(design, {}, mesh, tables, as_drawn ? meshed_ : nullptr);
    if (as_drawn) meshed_ = top.meshed;
    return plate(request_, top, tables).moisture;
  }

 private:
  static Species top_wood(Species wood, const Factors& f) {
    wood.name = "wood of the top";
    wood.radial_per_percent *= f.movement;
    wood.longitudinal_modulus_gpa *= f.modulus;
    wood.radial_ratio *= f.across;
    wood.shear_lr_ratio *= f.shear;
    return wood;
  }

  static Species brace_wood(Species wood, const Factors& f) {
    wood.name = "wood of the braces";
    wood.longitudinal_modulus_gpa *= f.brace_modulus;
    return wood;
  }

  [[nodiscard]] TopDesign varied(const Factors& f) const {
    TopDesign design = usual_;
    design.species = "wood of the top";
    design.thickness = f.thickness * design.thickness;
    if (design.arch_radius) design.arch_radius = f.arch * *design.arch_radius;
    design.rim.outward_n_mm2 *= f.rim_outward;
    design.rim.slope_n *= f.rim_slope;
    for (OutlinePoint& point : design.outline) point.half_width = f.width * point.half_width;
    for (Brace& brace : design.braces) {
      brace.species = "wood of the braces";
      brace.from_y = f.width * brace.from_y;
      brace.to_y = f.width * brace.to_y;
      for (BraceHeight& station : brace.heights) station.height = f.brace_height * station.height;
    }
    return design;
  }

  PlateTables tables_;
  PlateRequest request_;
  TopDesign usual_;
  std::shared_ptr<const MeshedTop> meshed_;
};

/// What one unknown does to ln(top).
struct Spread {
  double mean_shift, variance, slope, curvature;
};

Spread spread_by(VariedTop& top, Factors at, double Factors::*unknown, double log_sd, double log_middle) {
  const double reach = std::sqrt(3.0) * log_sd, middle = at.*unknown;
  const auto log_moved = [&](double away) {
    at.*unknown = middle * std::exp(away);
    return std::log(in_mm(top.moved(at).action12_from_top)) - log_middle;
  };
  const double low = log_moved(-reach), high = log_moved(reach);
  const double mean = (low + high) / 6;
  return {.mean_shift = mean,
          .variance = (low * low + high * high) / 6 - mean * mean,
          .slope = (high - low) / (2 * reach),
          .curvature = (high + low) / (reach * reach)};
}

}  // namespace

TopSpreads top_spreads(std::string_view csv) {
  TopSpreads s{};
  constexpr Range log_sds{0, 2, ""};
  const std::array values{NamedValue{"top_movement", &s.top_movement, log_sds},
                          NamedValue{"top_modulus", &s.top_modulus, log_sds},
                          NamedValue{"top_across_ratio", &s.top_across_ratio, log_sds},
                          NamedValue{"top_shear_ratio", &s.top_shear_ratio, log_sds},
                          NamedValue{"brace_modulus", &s.brace_modulus, log_sds},
                          NamedValue{"brace_height", &s.brace_height, log_sds},
                          NamedValue{"top_thickness", &s.top_thickness, log_sds},
                          NamedValue{"arch_radius", &s.arch_radius, log_sds},
                          NamedValue{"rim_outward", &s.rim_outward, log_sds},
                          NamedValue{"rim_slope", &s.rim_slope, log_sds},
                          NamedValue{"relaxing", &s.relaxing, log_sds}};
  read_named_values({.name = "season_spreads.csv", .each = "value", .value_column = "log_sd"}, csv, values);
  return s;
}

TopMovement top_movement(BodySize size, std::string_view bracing, double relaxed_share, const TopSpreads& spreads,
                         const PlateTables& tables) {
  VariedTop top(size, bracing, tables);
  TopMovement row{.body_size = size, .bracing = std::string(bracing)};
  row.relaxed_share_used = relaxed_share;
  row.elastic_mm = in_mm(top.moved({}).action12_from_top);
  const Factors relaxed{.across = relaxed_share};
  const WithMoisture middle = top.moved(relaxed);
  const double log_middle = std::log(in_mm(middle.action12_from_top));
  row.thickness_mm = in_mm(middle.action12_from_thickness);
  row.neck_mm = in_mm(middle.action12_from_neck);

  double shift = 0, instrument = 0, kind = 0;
  const auto spread = [&](double Factors::*unknown, double log_sd, double& into) {
    const Spread found = spread_by(top, relaxed, unknown, log_sd, log_middle);
    shift += found.mean_shift;
    into += found.variance;
    return found;
  };
  row.movement_exponent = spread(&Factors::movement, spreads.top_movement, instrument).slope;
  row.along_exponent = spread(&Factors::modulus, spreads.top_modulus, instrument).slope;
  spread(&Factors::across, spreads.top_across_ratio, instrument);
  row.shear_exponent = spread(&Factors::shear, spreads.top_shear_ratio, instrument).slope;
  spread(&Factors::brace_modulus, spreads.brace_modulus, instrument);
  spread(&Factors::brace_height, spreads.brace_height, instrument);
  const Spread thickness = spread(&Factors::thickness, spreads.top_thickness, instrument);
  row.thickness_exponent = thickness.slope;
  row.thickness_log_sd = std::sqrt(thickness.variance);
  spread(&Factors::arch, spreads.arch_radius, instrument);
  spread(&Factors::rim_outward, spreads.rim_outward, kind);
  spread(&Factors::rim_slope, spreads.rim_slope, kind);
  const Spread relaxing = spread(&Factors::across, spreads.relaxing, kind);  // reaches farther than the ratio's own
  row.across_exponent = relaxing.slope;
  row.across_curvature = relaxing.curvature;
  constexpr double wider = 0.03;
  row.width_exponent = spread_by(top, relaxed, &Factors::width, wider, log_middle).slope;
  row.top_mm = std::exp(log_middle + shift);
  row.instrument_log_sd = std::sqrt(instrument);
  row.kind_log_sd = std::sqrt(kind);
  return row;
}

const TopMovement& TopMovements::of(BodySize size, std::string_view bracing) const {
  for (const TopMovement& row : rows) {
    if (row.body_size == size && row.bracing == bracing) return row;
  }
  throw Refused("season_structure.csv: no row for " + std::string(body_size_names[static_cast<std::size_t>(size)]) +
                ", " + std::string(bracing));
}

namespace {

/// The numbers of a row in the order of their columns.
struct Column {
  const char* name;
  double TopMovement::*value;
  Range range;
};
constexpr Range rises{0.001, 2, "mm per percent"}, either_way{-1, 1, "mm per percent"}, log_sds{0, 2, ""},
    exponents{-5, 5, ""};
constexpr std::array columns{Column{"elastic_mm", &TopMovement::elastic_mm, rises},
                             Column{"top_mm", &TopMovement::top_mm, rises},
                             Column{"thickness_mm", &TopMovement::thickness_mm, either_way},
                             Column{"neck_mm", &TopMovement::neck_mm, either_way},
                             Column{"instrument_log_sd", &TopMovement::instrument_log_sd, log_sds},
                             Column{"kind_log_sd", &TopMovement::kind_log_sd, log_sds},
                             Column{"thickness_log_sd", &TopMovement::thickness_log_sd, log_sds},
                             Column{"thickness_exponent", &TopMovement::thickness_exponent, exponents},
                             Column{"width_exponent", &TopMovement::width_exponent, exponents},
                             Column{"movement_exponent", &TopMovement::movement_exponent, exponents},
                             Column{"across_exponent", &TopMovement::across_exponent, exponents},
                             Column{"across_curvature", &TopMovement::across_curvature, exponents},
                             Column{"shear_exponent", &TopMovement::shear_exponent, exponents},
                             Column{"along_exponent", &TopMovement::along_exponent, exponents},
                             Column{"relaxed_share", &TopMovement::relaxed_share_used, {0.05, 1, ""}}};

}  // namespace

TopMovements top_movements(std::string_view csv) {
  const CsvTable table("season_structure.csv", csv);
  TopMovements movements;
  for (const CsvRow& row : table.rows()) {
    const auto size = std::ranges::find(body_size_names, row.name("body_size"));
    if (size == body_size_names.end()) {
      throw Refused(row.where("body_size") + ": \"" + std::string(row.name("body_size")) + "\" is not a body size");
    }
    TopMovement movement{.body_size = static_cast<BodySize>(size - body_size_names.begin()),
                         .bracing = std::string(row.name("bracing"))};
    for (const TopMovement& other : movements.rows) {
      if (other.body_size == movement.body_size && other.bracing == movement.bracing) {
        throw Refused(row.where("bracing") + ": \"" + movement.bracing + "\" comes twice for this body size");
      }
    }
    for (const Column& column : columns) movement.*column.value = row.number(column.name, column.range);
    (void)row.name("source");
    movements.rows.push_back(std::move(movement));
  }
  return movements;
}

std::string as_csv(const TopMovements& movements) {
  std::string csv = "body_size,bracing";
  for (const Column& column : columns) csv += std::string(",") + column.name;
  csv += ",source,note\n";
  for (const TopMovement& row : movements.rows) {
    csv += std::string(body_size_names[static_cast<std::size_t>(row.body_size)]) + "," + row.bracing;
    for (const Column& column : columns) {
      std::array<char, 32> cell{};
      (void)std::snprintf(cell.data(), cell.size(), ",%.4f", row.*column.value);
      csv += cell.data();
    }
    csv += ",derived here: plate model,\n";
  }
  return csv;
}

}  // namespace tailblock
