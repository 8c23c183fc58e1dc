#include "body/unit_answers.h"

#include <Eigen/Cholesky>
#include <cmath>

namespace tailblock {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }
constexpr int column(UnitLoad load) { return static_cast<int>(load); }

/// Coefficients of a mean of w over nodes, as weights.
using Weights = std::vector<SaddleNode>;

double weighted(const Weights& weights, const UnitAnswers& answers, int load) {
  double sum = 0;
  for (const SaddleNode& node : weights) {
    sum += node.weight * answers.displacements(answers.first_unknown[at(node.node)] + 2, load);
  }
  return sum;
}

/// w on the saddle line at y, straight between its nodes; beyond its ends that of the end.
Weights under_string(const MeshedTop& meshed, double y) {
  const auto place = [&](std::size_t k) { return meshed.mesh.nodes[at(meshed.saddle[k].node)].y; };
  for (std::size_t k = 0; k + 1 < meshed.saddle.size(); ++k) {
    const double from = place(k), to = place(k + 1);
    if ((from - y) * (to - y) > 0) continue;
    const double share = (y - from) / (to - from);
    return {{meshed.saddle[k].node, 1 - share}, {meshed.saddle[k + 1].node, share}};
  }
  const bool first = std::abs(place(0) - y) < std::abs(place(meshed.saddle.size() - 1) - y);
  return {{first ? meshed.saddle.front().node : meshed.saddle.back().node, 1}};
}

/// Slope along x of the plane that fits w best under the bridge, as weights of w.
Weights fitted_slope(const MeshedTop& meshed) {
  Eigen::MatrixXd plane(static_cast<int>(meshed.bridge_nodes.size()), 3);
  for (std::size_t k = 0; k < meshed.bridge_nodes.size(); ++k) {
    const PlanePoint p = meshed.mesh.nodes[at(meshed.bridge_nodes[k])];
    plane.row(static_cast<int>(k)) << 1, p.x, p.y;
  }
  const Eigen::MatrixXd fit = (plane.transpose() * plane).ldlt().solve(plane.transpose());
  Weights weights;
  for (std::size_t k = 0; k < meshed.bridge_nodes.size(); ++k) {
    weights.push_back({meshed.bridge_nodes[k], fit(1, static_cast<int>(k))});
  }
  return weights;
}

}  // namespace

Eigen::MatrixXd unit_load_columns(const MeshedTop& meshed, const BracedPlate& plate) {
  const std::vector<int> first = first_unknowns(plate);
  Eigen::MatrixXd loads = Eigen::MatrixXd::Zero(first.back(), unit_loads);
  for (const SaddleNode& node : meshed.saddle) {
    const int base = first[at(node.node)];
    loads(base, column(UnitLoad::pull)) -= node.weight;
    loads(base + 3, column(UnitLoad::turn)) += node.weight;
    loads(base + 2, column(UnitLoad::up)) += node.weight;
  }
  loads.rightCols(static_cast<int>(wood_groups)) = moisture_loads(plate, first);
  return loads;
}

UnitAnswers unit_answers(const MeshedTop& meshed, const BracedPlate& plate, FactorMemory* memory) {
  UnitAnswers answers{
      .first_unknown = first_unknowns(plate), .loads = unit_load_columns(meshed, plate), .displacements = {}};
  Factor factor(plate, meshed.dissection, memory != nullptr ? std::move(*memory) : FactorMemory{});
  answers.displacements = factor.displacements(answers.loads);
  if (memory != nullptr) *memory = std::move(factor).taken_apart();
  return answers;
}

LoadMix string_mix(double pull_n, double height_over_middle_mm) {
  LoadMix mix = LoadMix::Zero();
  mix[column(UnitLoad::pull)] = pull_n;
  mix[column(UnitLoad::turn)] = pull_n * height_over_middle_mm;
  return mix;
}

std::vector<SaddleReading> saddle_readings(const MeshedTop& meshed, const UnitAnswers& answers, double spread) {
  const Weights bass = under_string(meshed, -spread / 2), treble = under_string(meshed, spread / 2);
  const Weights slope = fitted_slope(meshed);
  std::vector<SaddleReading> readings;
  for (int load = 0; load < unit_loads; ++load) {
    readings.push_back({.height = weighted(meshed.saddle, answers, load),
                        .height_bass = weighted(bass, answers, load),
                        .height_treble = weighted(treble, answers, load),
                        .rotation = weighted(slope, answers, load)});
  }
  return readings;
}

SaddleReading mixed(const std::vector<SaddleReading>& readings, const LoadMix& mix) {
  SaddleReading sum;
  for (int load = 0; load < unit_loads; ++load) {
    const SaddleReading& one = readings[at(load)];
    sum.height += mix[load] * one.height;
    sum.height_bass += mix[load] * one.height_bass;
    sum.height_treble += mix[load] * one.height_treble;
    sum.rotation += mix[load] * one.rotation;
  }
  return sum;
}

}  // namespace tailblock
