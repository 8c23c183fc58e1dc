#include "season/top_movement.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <random>

#include "body/plate_figures.h"
#include "body/prepared_top.h"
#include "body/top_designs.h"
#include "season/response_prior.h"
#include "season_bench.h"

namespace tailblock::testing {
namespace {

#if defined(__SANITIZE_ADDRESS__) || !defined(__OPTIMIZE__)
constexpr bool quick = false;
#else
constexpr bool quick = true;
#endif

const PlateTables& plate_tables() {
  static const PlateFigures figures = plate_figures(repository_file("data/plate_figures.csv"));
  static const TopDesignTable designs = top_design_table({.outlines = repository_text("data/top_outlines.csv"),
                                                          .builds = repository_text("data/top_builds.csv"),
                                                          .braces = repository_text("data/top_braces.csv")},
                                                         figures);
  static const PlateTables tables{.species = season_tables().species, .designs = &designs, .figures = &figures};
  return tables;
}

/// Draws all unknowns at once, each log-normal about its median: the slow and obvious counterpart.
class DrawnTop {
 public:
  DrawnTop(BodySize size, const std::string& bracing) {
    request_.top.body_size = size;
    request_.moisture = {1, 1, 1, 1};
    usual_ = plate_tables().designs->design(size, bracing);
  }
  double log_top(std::mt19937_64& random, const TopSpreads& s, double share) {
    std::normal_distribution<double> normal;
    const auto factor = [&](double log_sd) { return std::exp(log_sd * normal(random)); };
    SpeciesTable species = *season_tables().species;
    Species top = species.named("Sitka spruce"), brace = top;
    top.name = "top", brace.name = "brace";
    top.radial_per_percent *= factor(s.top_movement);
    top.longitudinal_modulus_gpa *= factor(s.top_modulus);
    top.radial_ratio *= share * factor(s.top_across_ratio) * factor(s.relaxing);
    top.shear_lr_ratio *= factor(s.top_shear_ratio);
    brace.longitudinal_modulus_gpa *= factor(s.brace_modulus);
    TopDesign design = usual_;
    design.species = "top";
    design.thickness = factor(s.top_thickness) * design.thickness;
    design.arch_radius = factor(s.arch_radius) * *design.arch_radius;
    design.rim.outward_n_mm2 *= factor(s.rim_outward);
    design.rim.slope_n *= factor(s.rim_slope);
    const double height = factor(s.brace_height);
    for (Brace& one : design.braces) {
      one.species = "brace";
      for (BraceHeight& station : one.heights) station.height = height * station.height;
    }
    species.species.insert(species.species.end(), {top, brace});
    const PlateTables tables{.species = &species, .designs = plate_tables().designs, .figures = plate_tables().figures};
    const PreparedTop prepared = prepare_top(design, {}, mm(8), tables, meshed_);
    meshed_ = prepared.meshed;
    return std::log(in_mm(plate(request_, prepared, tables).moisture.action12_from_top));
  }

 private:
  PlateRequest request_;
  TopDesign usual_;
  std::shared_ptr<const MeshedTop> meshed_;
};

TopSpreads spreads_of_the_table() { return top_spreads(repository_file("data/season_spreads.csv")); }

TopMovement computed(BodySize size, const std::string& bracing) {
  return top_movement(size, bracing, season_tables().prior->relaxed_share, spreads_of_the_table(), plate_tables());
}

/// A row as the table prints it is within half a unit of its last place; a little more for another machine's rounding.
void same_row(const TopMovement& found, const TopMovement& listed) {
  constexpr double printed = 1.0e-4;
  const std::string what =
      listed.bracing + ", " + std::string(body_size_names[static_cast<std::size_t>(listed.body_size)]);
  for (double TopMovement::*value :
       {&TopMovement::elastic_mm, &TopMovement::top_mm, &TopMovement::thickness_mm, &TopMovement::neck_mm,
        &TopMovement::instrument_log_sd, &TopMovement::kind_log_sd, &TopMovement::thickness_log_sd,
        &TopMovement::thickness_exponent, &TopMovement::width_exponent, &TopMovement::across_exponent,
        &TopMovement::movement_exponent, &TopMovement::across_curvature, &TopMovement::shear_exponent,
        &TopMovement::along_exponent, &TopMovement::relaxed_share_used}) {
    EXPECT_NEAR(found.*value, listed.*value, printed) << what;
  }
}

void write_table(const char* file) {
  TopMovements movements;
  for (std::size_t size = 0; size < body_size_names.size(); ++size) {
    for (const BracingPattern& pattern : plate_tables().designs->patterns) {
      movements.rows.push_back(computed(static_cast<BodySize>(size), pattern.name));
    }
  }
  std::ofstream(file) << as_csv(movements);
}

// Three rows whole; the medians of all below. The table is what the plate model gives today. When
// the plate model, a usual top or a spread has changed, set TAILBLOCK_WRITE_STRUCTURE to a file's name: this test then
// writes the whole table there (a minute), to go under the notes of data/season_structure.csv.
TEST(TopMovement, the_table_is_what_the_plate_model_gives) {
  if (const char* file = std::getenv("TAILBLOCK_WRITE_STRUCTURE")) write_table(file);
  constexpr std::array<std::pair<BodySize, const char*>, 3> rows{
      {{BodySize::parlour, "ladder"}, {BodySize::mid_size, "x_scalloped"}, {BodySize::square_large, "fan"}}};
  for (const auto& [size, bracing] : rows) {
    same_row(computed(size, bracing), season_tables().movements->of(size, bracing));
    if (!quick) return;
  }
}

TEST(TopMovement, every_row_has_the_median_of_the_plate_model) {
  for (const TopMovement& row : season_tables().movements->rows) {
    PlateRequest request;
    request.top.body_size = row.body_size;
    request.top.bracing = row.bracing;
    request.moisture = {1, 1, 1, 1};
    EXPECT_NEAR(in_mm(plate(request, plate_tables()).moisture.action12_from_top), row.elastic_mm, 1e-4);
    EXPECT_EQ(row.relaxed_share_used, season_tables().prior->relaxed_share);
    if (!quick) return;
  }
  EXPECT_EQ(season_tables().movements->rows.size(), 20U);
}

// One unknown at a time, added up, against draws of all of them. Tolerances: three standard errors of the draws.
TEST(TopMovement, spread_agrees_with_drawing_every_unknown_at_once) {
  if (!quick) GTEST_SKIP() << "hundreds of plates";
  constexpr int draws = 120;
  std::mt19937_64 random(20261125);
  for (const char* bracing : {"x_scalloped", "ladder"}) {
    const TopMovement& row = season_tables().movements->of(BodySize::mid_size, bracing);
    DrawnTop top(BodySize::mid_size, bracing);
    double sum = 0, squares = 0;
    for (int i = 0; i < draws; ++i) {
      const double drawn = top.log_top(random, spreads_of_the_table(), row.relaxed_share_used);
      sum += drawn;
      squares += drawn * drawn;
    }
    const double mean = sum / draws, sd = std::sqrt(squares / draws - mean * mean);
    const double added = std::hypot(row.instrument_log_sd, row.kind_log_sd);
    std::printf("  %-12s median %.4f mm, drawn %.4f; log sd %.3f, drawn %.3f\n", bracing, row.top_mm, std::exp(mean),
                added, sd);
    EXPECT_NEAR(std::log(row.top_mm), mean, 3 * sd / std::sqrt(draws));
    EXPECT_NEAR(added / sd, 1, 3 / std::sqrt(2.0 * draws));
  }
}

/// The prior's median of the top's part for a design that the table was not made for, over the table's own.
double by_exponents(const InstrumentDesign& design) {
  const auto top = [&](const InstrumentDesign& one) {
    return response_prior(one, {}, season_tables()).guess.parts.at(0).value.median;
  };
  InstrumentDesign usual;
  usual.body_size = design.body_size;
  usual.bracing = design.bracing;
  return top(design) / top(usual);
}

// Another wood, a slanting cut, another thickness: the table's exponents against the plate model itself. 8 %: they are
// slopes at one place, used as far as a factor of two.
TEST(TopMovement, exponents_carry_to_other_woods_cuts_and_thicknesses) {
  const auto check = [](const std::string& what, const std::string& species, Angle ring_angle, Length thickness) {
    InstrumentDesign design;
    design.bracing = Bracing::ladder;
    design.top_species = species;
    design.ring_angle = ring_angle;
    design.top_thickness = thickness;
    PlateRequest request;
    request.top.body_size = design.body_size;
    request.top.bracing = "ladder";
    request.moisture = {1, 1, 1, 1};
    const auto relaxed = [&](const std::string& wood, Angle angle, Length thick) {
      SpeciesTable table = *season_tables().species;
      for (Species& one : table.species) {
        if (one.name != wood) continue;
        Species top = one;
        top.name = "top";
        for (double Species::*ratio : {&Species::radial_ratio, &Species::tangential_ratio, &Species::shear_rt_ratio}) {
          top.*ratio *= season_tables().prior->relaxed_share;
        }
        table.species.push_back(top);
        break;
      }
      request.top.species = "top";
      request.top.ring_angle = angle;
      request.top.thickness = thick;
      const PlateTables tables{.species = &table, .designs = plate_tables().designs, .figures = plate_tables().figures};
      return in_mm(plate(request, tables).moisture.action12_from_top);
    };
    const double plate_says = relaxed(species, ring_angle, thickness) / relaxed("Sitka spruce", degrees(0), mm(2.7));
    const double table_says = by_exponents(design);
    std::printf("  %-28s plate %.3f, table %.3f\n", what.c_str(), plate_says, table_says);
    EXPECT_NEAR(table_says / plate_says, 1, 0.08) << what;
  };
  check("western redcedar", "western redcedar", degrees(0), mm(2.7));
  check("Engelmann spruce", "Engelmann spruce", degrees(0), mm(2.7));
  check("rings at 30 degrees", "Sitka spruce", degrees(30), mm(2.7));
  check("flat-sawn", "Sitka spruce", degrees(90), mm(2.7));
  check("thinned to 2.2 mm", "Sitka spruce", degrees(0), mm(2.2));
}

}  // namespace
}  // namespace tailblock::testing
