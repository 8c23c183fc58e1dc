#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/fields.h"

namespace tailblock {

/// What a published figure is.
enum class LimitFigure { twa, stel, ceiling, danger_to_life, flash_low, flash_high, lower_explosive };
inline constexpr std::array<std::string_view, 7> limit_figure_names{
    "twa", "stel", "ceiling", "danger_to_life", "flash_low", "flash_high", "lower_explosive"};

/// One published figure on one hazard: data/exposure_limits.csv.
struct ExposureLimit {
  std::string hazard;
  std::string authority;  ///< empty for a property of the substance
  LimitFigure figure = LimitFigure::twa;
  double value = 0;
  std::string unit;
  std::string standing;  ///< read, read second-hand or from memory
  std::string source;
};
void describe(FieldVisitor&, ExposureLimit&);

/// What can hurt: data/hazards.csv, its limits beside it.
struct Hazard {
  std::string id, name, harm, controls, waste;
  bool never = false;  ///< never proposed by the program
  std::string source;
  std::vector<ExposureLimit> limits;

  /// One line for the place where the step is read: harm, what keeps from it, and the limits that were published.
  [[nodiscard]] std::string caution() const;
};

/// A material that trade rules may protect: data/listed_materials.csv.
struct ListedMaterial {
  std::string id, name, rule, ask, authority, source;
};

struct HazardTexts {
  std::string_view hazards, exposure_limits;
};

/// @throws Refused naming the row: an unknown hazard, figure or standing, a unit missing.
[[nodiscard]] std::vector<Hazard> hazards(const HazardTexts& csv);
[[nodiscard]] std::vector<ListedMaterial> listed_materials(std::string_view csv);

/// What every caution ends with.
inline constexpr std::string_view defers_to =
    "The data sheet of the product in hand, local rules and licensed people come first.";

}  // namespace tailblock
