#include "study_top.h"

#include <gtest/gtest.h>

#include <numbers>

#include "body/unit_answers.h"
#include "published.h"

namespace tailblock {
namespace {

using namespace testing;

constexpr double spread = 54;
constexpr double degree = 180 / std::numbers::pi;

struct Answers {
  MeshedTop meshed;
  BracedTop top;
  UnitAnswers unit;
  std::vector<SaddleReading> readings;
};

/// The edges of deck c5b are free in the plane but for the neck's, which cannot move along the body.
void hold_neck_edge(const MeshedTop& meshed, BracedPlate& plate) {
  for (std::size_t k = 0; k < meshed.rim.size(); ++k) {
    const PlanePoint p = plate.mesh.nodes[static_cast<std::size_t>(meshed.rim[k])];
    if (p.x < 3 && std::abs(p.y) < 48) plate.springs[k].stiffness(0, 0) += 1e6;
  }
}

Answers answers_of(const TopDesign& design, const TopDamage& damage = {}, double spacing = 6, bool neck_held = false) {
  Answers a{.meshed = mesh_top(design, damage.cracks, mm(spacing)), .top = {}, .unit = {}, .readings = {}};
  a.top = braced_top(a.meshed, design, damage, study_woods(design), {});
  if (neck_held) hold_neck_edge(a.meshed, a.top.plate);
  a.unit = unit_answers(a.meshed, a.top.plate);
  a.readings = saddle_readings(a.meshed, a.unit, spread);
  return a;
}

LoadMix dried(double percent) {
  LoadMix mix = LoadMix::Zero();
  mix.tail<3>().setConstant(-percent);
  return mix;
}

struct Change {
  TopDesign design = study_top();
  TopDamage damage;
};

Change changed(std::string_view rim, std::string_view what) {
  Change c;
  if (rim == "held") c.design.rim = rim_held_up();
  if (rim == "pinned") c.design.rim = rim_pinned();
  if (what == "loose") c.damage.loose_braces = {{.brace = "X1", .end = BraceEnd::second, .length = mm(60)}};
  if (what == "thin_2.0") c.design.thickness = mm(2.0);
  if (what == "thin_2.5") c.design.thickness = mm(2.5);
  if (what == "thick_3.2") c.design.thickness = mm(3.2);
  if (what == "no_bridge_plate") c.design.bridge_plate.thickness = mm(0);
  if (what == "arch_8000") c.design.arch_radius = mm(8000);
  if (what == "slope_20") c.design.rim.slope_n = 20;
  if (what == "slope_1000") c.design.rim.slope_n = 1000;
  if (what == "outward_30") c.design.rim.outward_n_mm2 = 30;
  if (what == "outward_0.03") c.design.rim.outward_n_mm2 = 0.03;
  return c;
}

double lowest_or_highest(const Answers& a, const Eigen::VectorXd& displacements, bool highest) {
  double found = 0;
  for (std::size_t n = 0; n < a.meshed.mesh.nodes.size(); ++n) {
    const double w = displacements[a.unit.first_unknown[n] + 2];
    found = highest ? std::max(found, w) : std::min(found, w);
  }
  return found;
}

double quantity_of(const Answers& a, std::string_view quantity, LoadMix strings) {
  if (quantity == "stiffness_n_per_mm") return 1 / a.readings[static_cast<std::size_t>(UnitLoad::up)].height;
  if (quantity == "dried_saddle_mm") return mixed(a.readings, dried(4)).height;
  if (quantity == "dried_rotation_deg") return degree * mixed(a.readings, dried(4)).rotation;
  if (quantity == "rotation_deg") return degree * mixed(a.readings, strings).rotation;
  if (quantity == "calibrated_rotation_deg") return 1.2 * degree * mixed(a.readings, strings).rotation;
  return lowest_or_highest(a, a.unit.displacements * strings, quantity == "highest_mm");
}

TEST(StudyTop, agrees_with_solids_and_with_the_prototype) {
  Published table("plates_top.csv");
  std::map<std::string, Answers, std::less<>> known;
  for (const CsvRow& row : table.rows()) {
    const std::string rim(row.name("rim")), what(row.name("change"));
    const Change c = changed(rim, what);
    auto found = known.find(rim + what);
    if (found == known.end()) found = known.emplace(rim + what, answers_of(c.design, c.damage, 6, rim == "held")).first;
    // 730 N; at 13 mm over the top on the elastic rim, on the bridge's top (9 mm) in the decks.
    const double height = (rim == "base" ? 13 : 9) + in_mm(c.design.thickness) / 2;
    table.check(row, quantity_of(found->second, row.name("quantity"), string_mix(730, height)));
  }
}

// P26: answers add up and grow in proportion.
TEST(StudyTop, is_linear) {
  const Answers a = answers_of(study_top(), {}, 10);
  const LoadMix both = string_mix(730, 14.4) + dried(2);
  const Eigen::MatrixXd together = Factor(a.top.plate, a.meshed.dissection).displacements(a.unit.loads * both);
  EXPECT_NEAR(mixed(a.readings, dried(2)).height / mixed(a.readings, dried(4)).height, 0.5, 1e-9);
  EXPECT_LT((together - a.unit.displacements * both).cwiseAbs().maxCoeff(), 1e-9);
}

// P27: a top that is its own mirror image moves as one.
TEST(StudyTop, a_mirrored_top_answers_mirrored) {
  const Answers a = answers_of(mirrored_study_top(), {}, 8);
  const Eigen::VectorXd moved = a.unit.displacements * (string_mix(730, 14.4) + dried(4));
  const auto& nodes = a.meshed.mesh.nodes;
  double scale = moved.cwiseAbs().maxCoeff(), worst = 0;
  int pairs = 0;
  for (std::size_t n = 0; n < nodes.size(); ++n) {
    for (std::size_t m = 0; m < nodes.size(); ++m) {
      if (std::abs(nodes[n].x - nodes[m].x) + std::abs(nodes[n].y + nodes[m].y) > 1e-3) continue;
      ++pairs;
      worst = std::max(worst, std::abs(moved[a.unit.first_unknown[n] + 2] - moved[a.unit.first_unknown[m] + 2]));
    }
  }
  EXPECT_EQ(pairs, static_cast<int>(nodes.size())) << "the mesh is its own mirror image";
  EXPECT_LT(worst / scale, 1e-6);
}

TEST(StudyTop, the_answers_balance_the_loads) {
  const Answers a = answers_of(study_top(), {}, 10);
  const Eigen::MatrixXd forces = forces_of(a.top.plate, a.unit.first_unknown, a.unit.displacements);
  for (int load = 0; load < unit_loads; ++load) {
    const double scale = a.unit.loads.col(load).cwiseAbs().maxCoeff();
    EXPECT_LT((forces - a.unit.loads).col(load).cwiseAbs().maxCoeff() / scale, 1e-8) << load;
  }
  // Betti: the work of one load on the movement of another is the same either way round.
  const Eigen::MatrixXd work = a.unit.loads.transpose() * a.unit.displacements;
  EXPECT_LT((work - work.transpose()).cwiseAbs().maxCoeff() / work.cwiseAbs().maxCoeff(), 1e-10);
}

TEST(StudyTop, an_8_mm_mesh_is_within_a_percent_of_a_4_mm_one) {
  const Answers coarse = answers_of(study_top(), {}, 8), fine = answers_of(study_top(), {}, 4);
  const LoadMix strings = string_mix(730, 14.4);
  const auto ratio = [&](std::string_view quantity) {
    return quantity_of(coarse, quantity, strings) / quantity_of(fine, quantity, strings);
  };
  EXPECT_NEAR(ratio("stiffness_n_per_mm"), 1, 0.01);
  EXPECT_NEAR(ratio("rotation_deg"), 1, 0.015);
  EXPECT_NEAR(ratio("dried_saddle_mm"), 1, 0.01);
}

}  // namespace
}  // namespace tailblock
