#include "wood/species.h"

#include <algorithm>
#include <array>

#include "quantity/csv_table.h"
#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 5> standings{"read", "read second-hand", "derived here", "from memory",
                                                    "by analogy"};

constexpr Range densities{100, 1400, "kg/m3"};
constexpr Range moduli{1, 40, "GPa"};
constexpr Range ratios{0.001, 0.5, ""};
constexpr Range poisson_ratios{0.01, 0.95, ""};
constexpr Range movements{0, 0.01, "per % of moisture"};
constexpr Range strengths{0.1, 50, "MPa"};
constexpr Range scatters{0, 1, ""};

Standing standing_of(const CsvRow& row, std::string_view column) {
  const std::string_view text = row.name(column);
  const auto found = std::find(standings.begin(), standings.end(), text);
  if (found == standings.end()) throw Refused(row.where(column) + ": " + quoted_text(text) + " is not a standing");
  return static_cast<Standing>(found - standings.begin());
}

std::optional<Strength> strength_of(const CsvRow& row, const std::string& stem) {
  const auto mpa = row.number_if_given(stem + "_mpa", strengths);
  if (!mpa) return std::nullopt;
  const std::string what = stem.substr(0, stem.find('_'));
  return Strength{.mpa = *mpa,
                  .scatter = row.number(what + "_scatter", scatters),
                  .standing = standing_of(row, what + "_standing")};
}

/// The compliance along the three axes must be positive definite: Sylvester's criterion on
/// [1, -a, -b; -a, 1/r, -c/r; -b, -c/r, 1/t] with a = nu_LR, b = nu_LT, c = nu_RT, times 1/E_L.
bool elastic(const Species& wood) {
  const double r = 1 / wood.radial_ratio;
  const double t = 1 / wood.tangential_ratio;
  const double a = -wood.nu_lr;
  const double b = -wood.nu_lt;
  const double c = -wood.nu_rt * r;
  return r - a * a > 0 && (r * t - c * c) - a * (a * t - c * b) + b * (a * c - r * b) > 0;
}

Species species_of(const CsvRow& row) {
  Species wood;
  wood.name = row.name("name");
  wood.botanical_name = row.name("botanical_name");
  wood.density_kg_m3 = row.number("density_kg_m3", densities);
  wood.longitudinal_modulus_gpa = row.number("longitudinal_modulus_gpa", moduli);
  wood.radial_ratio = row.number("radial_ratio", ratios);
  wood.tangential_ratio = row.number("tangential_ratio", ratios);
  wood.shear_lr_ratio = row.number("shear_lr_ratio", ratios);
  wood.shear_lt_ratio = row.number("shear_lt_ratio", ratios);
  wood.shear_rt_ratio = row.number("shear_rt_ratio", ratios);
  wood.nu_lr = row.number("nu_lr", poisson_ratios);
  wood.nu_lt = row.number("nu_lt", poisson_ratios);
  wood.nu_rt = row.number("nu_rt", poisson_ratios);
  wood.longitudinal_per_percent = row.number("longitudinal_per_percent", movements);
  wood.radial_per_percent = row.number("radial_per_percent", movements);
  wood.tangential_per_percent = row.number("tangential_per_percent", movements);
  wood.tension_across = strength_of(row, "tension_across");
  wood.shear_along = strength_of(row, "shear_along");
  wood.density_scatter = row.number("density_scatter", scatters);
  wood.modulus_scatter = row.number("modulus_scatter", scatters);
  wood.movement_scatter = row.number("movement_scatter", scatters);
  wood.density_standing = standing_of(row, "density_standing");
  wood.modulus_standing = standing_of(row, "modulus_standing");
  wood.ratio_standing = standing_of(row, "ratio_standing");
  wood.shear_rt_standing = standing_of(row, "shear_rt_standing");
  wood.poisson_standing = standing_of(row, "poisson_standing");
  wood.movement_standing = standing_of(row, "movement_standing");
  wood.source = row.name("source");
  wood.note = row.text("note");
  wood.provisional = is_provisional(wood.density_standing) || is_provisional(wood.modulus_standing) ||
                     is_provisional(wood.ratio_standing) || is_provisional(wood.shear_rt_standing) ||
                     is_provisional(wood.poisson_standing) || is_provisional(wood.movement_standing) ||
                     (wood.tension_across && is_provisional(wood.tension_across->standing)) ||
                     (wood.shear_along && is_provisional(wood.shear_along->standing));
  if (!elastic(wood)) throw Refused(row.where() + ": no material has these ratios and Poisson ratios together");
  return wood;
}

}  // namespace

void describe(FieldVisitor& visit, Strength& strength) {
  visit.number({"mpa", "strength"}, strength.mpa, strengths);
  visit.number({"scatter", "coefficient of variation between pieces"}, strength.scatter, scatters);
  choice(visit, {"standing", "where the number comes from"}, strength.standing, standings);
}

void describe(FieldVisitor& visit, Species& wood) {
  visit.text({"name", "common name"}, wood.name, 100);
  visit.text({"botanical_name", "botanical name"}, wood.botanical_name, 100);
  visit.number({"density_kg_m3", "mass over volume at 12 % moisture"}, wood.density_kg_m3, densities);
  visit.number({"longitudinal_modulus_gpa", "stiffness along the grain, E_L"}, wood.longitudinal_modulus_gpa, moduli);
  visit.number({"radial_ratio", "E_R over E_L"}, wood.radial_ratio, ratios);
  visit.number({"tangential_ratio", "E_T over E_L"}, wood.tangential_ratio, ratios);
  visit.number({"shear_lr_ratio", "G_LR over E_L"}, wood.shear_lr_ratio, ratios);
  visit.number({"shear_lt_ratio", "G_LT over E_L"}, wood.shear_lt_ratio, ratios);
  visit.number({"shear_rt_ratio", "G_RT over E_L"}, wood.shear_rt_ratio, ratios);
  visit.number({"nu_lr", "Poisson ratio: stretched along the grain, thinner towards the bark"}, wood.nu_lr,
               poisson_ratios);
  visit.number({"nu_lt", "Poisson ratio: stretched along the grain, thinner round the rings"}, wood.nu_lt,
               poisson_ratios);
  visit.number({"nu_rt", "Poisson ratio: stretched towards the bark, thinner round the rings"}, wood.nu_rt,
               poisson_ratios);
  visit.number({"longitudinal_per_percent", "strain along the grain per percent of moisture"},
               wood.longitudinal_per_percent, movements);
  visit.number({"radial_per_percent", "strain towards the bark per percent of moisture"}, wood.radial_per_percent,
               movements);
  visit.number({"tangential_per_percent", "strain round the rings per percent of moisture"},
               wood.tangential_per_percent, movements);
  const auto strength = [&](const Field& field, Strength& value) { object(visit, field, value); };
  maybe(visit, {"tension_across", "strength in tension across the grain"}, wood.tension_across, strength);
  maybe(visit, {"shear_along", "strength in shear along the grain"}, wood.shear_along, strength);
  visit.number({"density_scatter", "coefficient of variation between pieces"}, wood.density_scatter, scatters);
  visit.number({"modulus_scatter", "coefficient of variation between pieces"}, wood.modulus_scatter, scatters);
  visit.number({"movement_scatter", "coefficient of variation between pieces"}, wood.movement_scatter, scatters);
  choice(visit, {"density_standing", "where the density comes from"}, wood.density_standing, standings);
  choice(visit, {"modulus_standing", "where E_L comes from"}, wood.modulus_standing, standings);
  choice(visit, {"ratio_standing", "where the stiffness ratios come from"}, wood.ratio_standing, standings);
  choice(visit, {"shear_rt_standing", "where G_RT comes from"}, wood.shear_rt_standing, standings);
  choice(visit, {"poisson_standing", "where the Poisson ratios come from"}, wood.poisson_standing, standings);
  choice(visit, {"movement_standing", "where the movement comes from"}, wood.movement_standing, standings);
  visit.flag({"provisional", "some number of this wood is from memory or by analogy"}, wood.provisional);
  visit.text({"source", "what the numbers were taken from"}, wood.source, 2000);
  visit.text({"note", "what to mind"}, wood.note, 2000);
}

const Species& SpeciesTable::named(std::string_view name) const {
  const auto found =
      std::find_if(species.begin(), species.end(), [&](const Species& wood) { return wood.name == name; });
  if (found == species.end()) throw Refused("species: " + quoted_text(name) + " is not in the table of woods");
  return *found;
}

SpeciesTable species_table(std::string_view csv) {
  const CsvTable csv_table("species.csv", csv);
  SpeciesTable table;
  for (const CsvRow& row : csv_table.rows()) {
    Species wood = species_of(row);
    const bool known = std::any_of(table.species.begin(), table.species.end(),
                                   [&](const Species& other) { return other.name == wood.name; });
    if (known) throw Refused(row.where("name") + ": \"" + wood.name + "\" comes twice");
    table.species.push_back(std::move(wood));
  }
  return table;
}

}  // namespace tailblock
