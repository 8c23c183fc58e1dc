#pragma once

#include <memory>
#include <vector>

#include "body/plate.h"
#include "body/unit_answers.h"

namespace tailblock {

/// A top calculated under its unit loads: all that does not change when the strings or the air do.
struct PreparedTop {
  TopDesign design;
  TopWoods woods;
  std::shared_ptr<const MeshedTop> meshed;
  BracedTop top;
  UnitAnswers answers;
  std::vector<SaddleReading> readings;
};

/// @param meshed of the same drawing and cracks, to be used again; null: it is meshed.
/// @param memory of an earlier one to work in, left for the next; null: its own.
/// @throws Refused when the design cannot be meshed or calculated.
[[nodiscard]] PreparedTop prepare_top(const TopDesign& design, const TopDamage& damage, Length mesh,
                                      const PlateTables& tables, std::shared_ptr<const MeshedTop> meshed = nullptr,
                                      FactorMemory* memory = nullptr);

/// Whether a mesh made for one design serves another: same lines, whatever woods and thicknesses.
[[nodiscard]] TopDesign drawing_of(TopDesign design);

/// The answer of `plate`, on a top that is at hand.
[[nodiscard]] PlateResult plate(const PlateRequest& request, const PreparedTop& prepared, const PlateTables& tables);

}  // namespace tailblock
