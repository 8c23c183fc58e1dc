#include "flat_plates.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "published.h"

namespace tailblock {
namespace {

using namespace testing;

constexpr double quarter_turn = std::numbers::pi / 2;

struct Case {
  std::string_view name, quantity;
  int intervals;
};

enum class Edge { simple, clamped };

/// w at the middle of a rectangle held round its edges, under a pressure or a load at the middle.
double middle_deflection(const Rectangle& shape, const LayeredSection& section, Edge edge, double q, double point) {
  BracedPlate plate = rectangle_plate(shape, section);
  on_edges(plate, shape, [&](int node, bool on_x, bool on_y) {
    hold(plate, node, {0, 1, 2});
    if (edge == Edge::clamped || on_x) hold(plate, node, {4});  // the slope along the edge
    if (edge == Edge::clamped || on_y) hold(plate, node, {3});
  });
  Eigen::VectorXd load = pressure_load(plate, q);
  const int middle = grid_node(shape, shape.across_a / 2, shape.across_b / 2);
  load[first_unknowns(plate)[static_cast<std::size_t>(middle)] + 2] += point;
  return solve(plate, load).w(middle);
}

LayeredSection one_ply(const SheetWood& wood, double thickness, double grain = 0) {
  return layered(std::array{Ply{wood, grain, -thickness / 2, thickness / 2, WoodGroup::top}});
}

double isotropic(const Case& c) {
  const SheetWood steel{.along_mpa = 200000, .across_mpa = 200000, .shear_mpa = 200000 / 2.6, .nu = 0.3};
  const LayeredSection section = one_ply(steel, 1);
  const Edge edge = c.name == "isotropic_clamped" ? Edge::clamped : Edge::simple;
  const Rectangle square{100, 100, c.intervals, c.intervals};
  const double D = section.D(0, 0);
  if (c.quantity == "point") return middle_deflection(square, section, edge, 0, 1) * D / 1e4;
  const double w = middle_deflection(square, section, edge, 0.001, 0) * D / (0.001 * 1e8);
  return c.quantity == "ratio" ? w / 0.0040624 : w;
}

double orthotropic(const Case& c) {
  const LayeredSection section = one_ply(study_spruce, 3);
  const Rectangle plate{400, 300, c.intervals, c.intervals};
  if (c.quantity == "point") return middle_deflection(plate, section, Edge::simple, 0, 10);
  const double w = middle_deflection(plate, section, Edge::simple, 0.001, 0);
  return c.quantity == "ratio" ? w / 9.29191 : w;
}

/// Two sheets without Poisson's ratio, glued flat, dried by 4 %: the curvature of a cantilever of them.
double bimaterial(const Case& c) {
  const SheetWood below{.along_mpa = 10900, .across_mpa = 10900, .shear_mpa = 5450, .along_per_percent = 0.0000493};
  const SheetWood above{.along_mpa = 850, .across_mpa = 850, .shear_mpa = 425, .along_per_percent = 0.00148};
  const LayeredSection section =
      layered(std::array{Ply{below, 0, -3, 0, WoodGroup::top}, Ply{above, 0, 0, 3, WoodGroup::top}});
  const Rectangle strip{200, 20, 8 * c.intervals, c.intervals};
  BracedPlate plate = rectangle_plate(strip, section);
  for (int j = 0; j <= strip.across_b; ++j) hold(plate, grid_node(strip, 0, j), {0, 2, 3, 4});
  hold(plate, grid_node(strip, 0, 0), {1});
  const Solved solved = solve(plate, -4 * moisture_loads(plate, first_unknowns(plate)));
  const int end = grid_node(strip, strip.across_a, strip.across_b / 2);
  return 2 * std::abs(solved.w(end)) / (200 * 200);
}

double restrained(const Case&) {
  const LayeredSection section = one_ply(study_spruce, 2.8);
  return 4 * section.N[0][1] / 2.8;
}

double bending_stiffness(const Case& c) {
  const LayeredSection section = one_ply(study_spruce, 2.8);
  if (c.quantity == "D11") return section.D(0, 0);
  if (c.quantity == "D12") return section.D(0, 1);
  return c.quantity == "D66" ? section.D(2, 2) : section.D(1, 1);
}

/// Largest strain of a distorted mesh held at three points and dried by 4 %.
double free_drying(const Case& c) {
  const Rectangle shape{300, 200, c.intervals, c.intervals};
  BracedPlate plate = rectangle_plate(shape, one_ply(study_spruce, 2.8));
  for (std::size_t n = 0; n < plate.mesh.nodes.size(); ++n) {
    PlanePoint& p = plate.mesh.nodes[n];
    if (p.x == 0 || p.x == 300 || p.y == 0 || p.y == 200) continue;
    p.x += 9 * std::sin(7.0 * static_cast<double>(n)), p.y += 6 * std::cos(5.0 * static_cast<double>(n));
  }
  plate.find_strains();
  hold(plate, grid_node(shape, 0, 0), {0, 1, 2});
  hold(plate, grid_node(shape, shape.across_a, 0), {1, 2});
  hold(plate, grid_node(shape, 0, shape.across_b), {2});
  const Solved solved = solve(plate, -4 * moisture_loads(plate, first_unknowns(plate)));
  EXPECT_LT(solved.displacements.col(0).cwiseAbs().maxCoeff(), 1.3) << "only the strain across the grain moves it";
  const int corner = grid_node(shape, shape.across_a, shape.across_b);
  EXPECT_NEAR(solved.w(corner), 0, 1e-9);
  const int base = solved.first_unknown[static_cast<std::size_t>(corner)];
  return c.quantity == "along" ? solved.displacements(base, 0) / 300 : solved.displacements(base + 1, 0) / 200;
}

/// Plate with its grain across a rib under its middle, edges held up, in the plane free or pinned.
double ribbed(const Case& c) {
  const Rectangle shape{400, 300, c.intervals, c.intervals};
  BracedPlate plate = rectangle_plate(shape, one_ply(study_spruce, 2.8, quarter_turn));
  add_rib_along_x(plate, shape, c.intervals / 2,
                  {.width = 8,
                   .height = 14,
                   .under_middle = 1.4,
                   .along_mpa = study_spruce.along_mpa,
                   .shear_mpa = study_spruce.shear_mpa,
                   .along_per_percent = study_spruce.along_per_percent});
  const bool pinned = c.name == "rib_pinned";
  on_edges(plate, shape, [&](int node, bool, bool) { hold(plate, node, {2}); });
  if (pinned) on_edges(plate, shape, [&](int node, bool, bool) { hold(plate, node, {0, 1}); });
  hold(plate, grid_node(shape, 0, c.intervals / 2), {0, 1});
  hold(plate, grid_node(shape, c.intervals, c.intervals / 2), {1});
  const auto first = first_unknowns(plate);
  Eigen::VectorXd load = pressure_load(plate, -0.001);
  if (c.quantity == "moisture") load = -4 * moisture_loads(plate, first).rowwise().sum();
  return solve(plate, load).w(grid_node(shape, c.intervals / 2, c.intervals / 2));
}

double dome(const Case& c) {
  const Rectangle shape{400, 300, c.intervals, c.intervals};
  BracedPlate plate = rectangle_plate(shape, one_ply(study_spruce, 2.8), [](double x, double y) {
    return -((x - 200) * (x - 200) + (y - 150) * (y - 150)) / (2 * 2000);
  });
  on_edges(plate, shape, [&](int node, bool, bool) { hold(plate, node, {0, 1, 2, 3, 4}); });
  Eigen::VectorXd load = pressure_load(plate, -0.001);
  if (c.quantity == "moisture") load = -4 * moisture_loads(plate, first_unknowns(plate)).col(0);
  return solve(plate, load).w(grid_node(shape, c.intervals / 2, c.intervals / 2));
}

TEST(FlatPlates, agree_with_published_values) {
  const std::map<std::string, std::function<double(const Case&)>, std::less<>> computed{
      {"isotropic_simply_supported", isotropic},
      {"isotropic_clamped", isotropic},
      {"orthotropic_simply_supported", orthotropic},
      {"bimaterial_strip", bimaterial},
      {"fully_restrained", restrained},
      {"free_drying", free_drying},
      {"bending_stiffness", bending_stiffness},
      {"rib_free", ribbed},
      {"rib_pinned", ribbed},
      {"shallow_dome", dome}};
  Published table("plates_flat.csv");
  for (const CsvRow& row : table.rows()) {
    const Case c{row.name("case"), row.name("quantity"), row.whole_number("intervals", {1, 128, ""})};
    table.check(row, computed.find(c.name)->second(c));
  }
}

// Timoshenko 1925, J. Opt. Soc. Am. 11, 233 (from memory): k = 6 (a2 - a1) dM (1 + m)^2/(h (3 (1 + m)^2 + (1 + m n)
// (m^2 + 1/(m n)))), m ratio of thicknesses, n of moduli, h both together.
TEST(FlatPlates, a_bimaterial_strip_curves_as_timoshenko_says) {
  const double m = 1, n = 10900.0 / 850, h = 6, strain = 4 * (0.00148 - 0.0000493);
  const double formula =
      6 * strain * (1 + m) * (1 + m) / (h * (3 * (1 + m) * (1 + m) + (1 + m * n) * (m * m + 1 / (m * n))));
  EXPECT_NEAR(bimaterial({"bimaterial_strip", "curvature", 8}) / formula, 1, 1e-6);
}

// P28 of the design study: no motion of a rigid body costs force, on a flat or arched plate with a rib.
TEST(FlatPlates, rigid_motions_cost_no_force) {
  const Rectangle shape{300, 200, 6, 4};
  for (const double radius : {1e12, 2000.0}) {
    BracedPlate plate = rectangle_plate(shape,
                                        layered(std::array{Ply{study_spruce, 0.3, -1.4, 1.4, WoodGroup::top},
                                                           Ply{study_spruce, 1.2, 1.4, 9, WoodGroup::bridge}}),
                                        [&](double x, double y) { return -(x * x + y * y) / (2 * radius); });
    add_rib_along_x(plate, shape, 2,
                    {.width = 8, .height = 14, .under_middle = 1.4, .along_mpa = 10900, .shear_mpa = 697.6});
    for (PlacedRib& rib : plate.ribs) {
      rib.segment.arch_rise =
          plate.arch[static_cast<std::size_t>(rib.second)] - plate.arch[static_cast<std::size_t>(rib.first)];
    }
    const auto first = first_unknowns(plate);
    Eigen::MatrixXd motions = Eigen::MatrixXd::Zero(first.back(), 6);
    for (std::size_t k = 0; k < plate.mesh.nodes.size(); ++k) {
      const PlanePoint at = plate.mesh.nodes[k];
      const double z = plate.arch[k];
      const int b = first[k];
      motions(b, 0) = motions(b + 1, 1) = motions(b + 2, 2) = 1;
      motions(b, 3) = -z, motions(b + 2, 3) = at.x, motions(b + 3, 3) = 1;      // tilt along x
      motions(b + 1, 4) = -z, motions(b + 2, 4) = at.y, motions(b + 4, 4) = 1;  // tilt along y
      motions(b, 5) = -at.y, motions(b + 1, 5) = at.x;                          // turn in the plane
      if (plate.rib_slots[k] > 0) motions(b + 5, 3) = -1;
    }
    const Eigen::MatrixXd bent = Eigen::MatrixXd::Random(first.back(), 1);
    const double scale = forces_of(plate, first, bent).cwiseAbs().maxCoeff() * motions.cwiseAbs().maxCoeff();
    EXPECT_LT(forces_of(plate, first, motions).cwiseAbs().maxCoeff() / scale, 1e-9) << radius;
  }
}

// Any state of constant strain and curvature passes through a distorted mesh: no node inside feels a force.
TEST(FlatPlates, constant_strains_pass_the_patch_test) {
  const Rectangle shape{300, 200, 6, 4};
  BracedPlate plate = rectangle_plate(shape, layered(std::array{Ply{study_spruce, 0.3, -1.4, 1.4, WoodGroup::top},
                                                                Ply{study_spruce, 1.2, 1.4, 9, WoodGroup::bridge}}));
  std::vector<bool> inside(plate.mesh.nodes.size(), false);
  for (std::size_t n = 0; n < plate.mesh.nodes.size(); ++n) {
    PlanePoint& p = plate.mesh.nodes[n];
    if (p.x == 0 || p.x == 300 || p.y == 0 || p.y == 200) continue;
    p.x += 15 * std::sin(7.0 * static_cast<double>(n)), p.y += 11 * std::cos(5.0 * static_cast<double>(n));
    inside[n] = true;
  }
  plate.find_strains();
  const auto first = first_unknowns(plate);
  Eigen::MatrixXd states = Eigen::MatrixXd::Zero(first.back(), 6);
  for (std::size_t k = 0; k < plate.mesh.nodes.size(); ++k) {
    const auto [x, y] = plate.mesh.nodes[k];
    const int b = first[k];
    states(b, 0) = x, states(b + 1, 1) = y, states(b, 2) = y;
    states(b + 2, 3) = x * x / 2, states(b + 3, 3) = x;
    states(b + 2, 4) = y * y / 2, states(b + 4, 4) = y;
    states(b + 2, 5) = x * y, states(b + 3, 5) = y, states(b + 4, 5) = x;
  }
  const Eigen::MatrixXd forces = forces_of(plate, first, states);
  for (int state = 0; state < 6; ++state) {
    const double scale = forces.col(state).cwiseAbs().maxCoeff();
    ASSERT_GT(scale, 0);
    for (std::size_t k = 0; k < inside.size(); ++k) {
      if (!inside[k]) continue;
      EXPECT_LT(forces.col(state).segment<5>(first[k]).cwiseAbs().maxCoeff() / scale, 1e-12) << state;
    }
  }
}

TEST(FlatPlates, halving_the_mesh_quarters_the_error) {
  const auto error = [](int intervals) {
    return std::abs(orthotropic({"orthotropic_simply_supported", "uniform", intervals}) / 9.29191 - 1);
  };
  EXPECT_NEAR(std::log2(error(8) / error(16)), 2, 0.15);
  EXPECT_NEAR(std::log2(error(16) / error(32)), 2, 0.15);
}

TEST(FlatPlates, what_is_not_held_is_refused) {
  const Rectangle shape{300, 200, 6, 4};
  const BracedPlate plate = rectangle_plate(shape, one_ply(study_spruce, 2.8));
  EXPECT_THROW((void)solve(plate, pressure_load(plate, 1)), Refused);
}

}  // namespace
}  // namespace tailblock
