#pragma once

#include <Eigen/Core>

#include "body/factor.h"
#include "body/meshed_top.h"

namespace tailblock {

/// Loads of size one. Every load case of the plate model is a sum of these, so that a slider of string gauge, saddle
/// height or air solves nothing.
enum class UnitLoad {
  pull,             ///< 1 N at the saddle towards the neck, in the middle of the top
  turn,             ///< 1 N mm at the saddle, turning its top towards the neck
  up,               ///< 1 N at the saddle, outward
  top_moisture,     ///< 1 percent more in the top
  inside_moisture,  ///< in braces, bridge plate and hole reinforcement
  bridge_moisture   ///< in the bridge
};
inline constexpr int unit_loads = 6;

/// Displacements under each unit load.
struct UnitAnswers {
  std::vector<int> first_unknown;
  Eigen::MatrixXd loads, displacements;  ///< one column for each UnitLoad
};
[[nodiscard]] Eigen::MatrixXd unit_load_columns(const MeshedTop& meshed, const BracedPlate& plate);
/// @param memory to work in, left for the next; null: its own.
[[nodiscard]] UnitAnswers unit_answers(const MeshedTop& meshed, const BracedPlate& plate,
                                       FactorMemory* memory = nullptr);

/// How much of each unit load acts.
using LoadMix = Eigen::Matrix<double, unit_loads, 1>;

/// The free strings pull with `pull_n` at a height over the middle of the top; nothing else acts on the bridge as a
/// whole (the turn over the saddle and the pins are inside it). Their slope, under 1 degree, is left out.
[[nodiscard]] LoadMix string_mix(double pull_n, double height_over_middle_mm);

/// What is read on the top.
struct SaddleReading {
  double height = 0;                          ///< w at the saddle, mean, mm
  double height_bass = 0, height_treble = 0;  ///< under the outer strings
  double rotation = 0;  ///< slope of the plane fitted under the bridge, radians; positive leans to the neck
};
/// One reading for each unit load; readings add like loads.
[[nodiscard]] std::vector<SaddleReading> saddle_readings(const MeshedTop& meshed, const UnitAnswers& answers,
                                                         double string_spread_mm);
[[nodiscard]] SaddleReading mixed(const std::vector<SaddleReading>& readings, const LoadMix& mix);

}  // namespace tailblock
