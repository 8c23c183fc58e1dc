#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "repair/hazards.h"
#include "repair/table_cells.h"

namespace tailblock {

/// Whether what was done can be taken back.
enum class Reversible { yes, hardly, no };
inline constexpr std::array<std::string_view, 3> reversible_names{"yes", "hardly", "no"};

/// What wood is glued with: data/adhesives.csv.
struct AdhesiveClass {
  std::string id, name;
  double open_low = 0, open_high = 0;  ///< minutes
  Spread clamp;                        ///< minutes
  std::optional<double> string_load_hours;
  double cure_hours_low = 0, cure_hours_high = 0;
  double gap_mm = 0;
  Reversible reversible = Reversible::yes;
  bool string_load = false, blocks_later_glue = false;
  std::optional<double> opened_months, mixed_days;  ///< good for, once opened or mixed
  std::string undo_with, lot_rule, best_for, avoid_for;
  std::vector<std::string> hazards;
  std::string source, note;

  /// `hot hide glue: 1 to 4 min open, 120 min clamped, strings after 24 h, undone with warm water`.
  [[nodiscard]] std::string words() const;
};

/// What wood is finished with: data/finishes.csv.
struct FinishClass {
  std::string id, name, solvent;
  int coats_low = 1, coats_high = 1, coats_a_day = 1;
  double recoat_low_hours = 0;
  std::optional<double> recoat_high_hours;
  std::string after_window;
  double touch_dry_hours = 0;
  std::optional<double> sand_after_hours;
  std::optional<double> level_after_days;
  double cure_days_low = 0, cure_days_high = 0;
  double humidity_low = 0, humidity_high = 100;
  double stop_spread_c = 0, free_spread_c = 0;  ///< air less dew point
  double temperature_low = 0, temperature_high = 50;
  double um_a_coat = 0, um_film_low = 0, um_film_high = 0;
  std::string goes_over, not_over, reversibility, caution;
  std::vector<std::string> hazards;
  std::string source;

  /// `nitrocellulose lacquer: 1 to 168 h between coats, 4 coats a day at most, cured in 14 to 42 days`.
  [[nodiscard]] std::string words() const;
};

/// @throws Refused naming the row.
[[nodiscard]] std::vector<AdhesiveClass> adhesive_classes(std::string_view csv, const std::vector<Hazard>& hazards);
[[nodiscard]] std::vector<FinishClass> finish_classes(std::string_view csv, const std::vector<Hazard>& hazards);

/// A place or fixture of the shop: data/shop_stations.csv.
struct ShopStation {
  std::string name;
  int count = 1;
  bool held_while_hands_on = true;  ///< put on by hands; else an instrument is put there when they let go
};
[[nodiscard]] std::vector<ShopStation> shop_stations(std::string_view csv);

/// @throws Refused naming the cell, when one of the ids is not among the hazards.
void require_known_hazards(const CsvRow& row, const std::vector<std::string>& ids, const std::vector<Hazard>& hazards);

}  // namespace tailblock
