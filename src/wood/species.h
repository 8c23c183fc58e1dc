#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/fields.h"

namespace tailblock {

/// Where a number comes from, surest first.
enum class Standing { read, read_second_hand, derived_here, from_memory, by_analogy };

/// Whether a number waits to be checked against print.
[[nodiscard]] constexpr bool is_provisional(Standing standing) { return standing >= Standing::from_memory; }

/// A number across the grain or along it that not every wood has, with its scatter between pieces.
struct Strength {
  double mpa = 0;
  double scatter = 0.25;  ///< coefficient of variation between pieces
  Standing standing = Standing::from_memory;
};
void describe(FieldVisitor&, Strength&);

/// One wood at 12 % moisture. L along the grain, R towards the bark, T round the rings. The ratios multiply E_L;
/// nu_LR is the strain along R per strain along L, with the sign turned.
struct Species {
  std::string name;
  std::string botanical_name;
  double density_kg_m3 = 0;
  double longitudinal_modulus_gpa = 0;
  double radial_ratio = 0, tangential_ratio = 0;
  double shear_lr_ratio = 0, shear_lt_ratio = 0, shear_rt_ratio = 0;
  double nu_lr = 0, nu_lt = 0, nu_rt = 0;
  double longitudinal_per_percent = 0;  ///< strain per percent of moisture
  double radial_per_percent = 0, tangential_per_percent = 0;
  std::optional<Strength> tension_across;
  std::optional<Strength> shear_along;
  double density_scatter = 0, modulus_scatter = 0, movement_scatter = 0;  ///< coefficients of variation between pieces
  Standing density_standing{}, modulus_standing{}, ratio_standing{}, shear_rt_standing{}, poisson_standing{},
      movement_standing{};
  bool provisional = false;  ///< any number above is from memory or by analogy
  std::string source;
  std::string note;
};
void describe(FieldVisitor&, Species&);

/// The woods known to the shop.
struct SpeciesTable {
  std::vector<Species> species;

  /// @throws Refused when there is no wood of that name.
  [[nodiscard]] const Species& named(std::string_view name) const;
};

/// Reads the table of woods (data/species.csv says what its columns mean).
/// @throws Refused naming the row and the cell: a number out of range, a standing that is not one, a wood that comes
/// twice, or elastic numbers that no material can have (the compliance would not be positive).
[[nodiscard]] SpeciesTable species_table(std::string_view csv);

}  // namespace tailblock
