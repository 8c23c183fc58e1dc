#include "repair/bench_materials.h"

namespace tailblock {
namespace {

constexpr Range minutes{0, 100000, "min"};
constexpr Range in_hours_range{0, 10000, "h"};
constexpr Range in_days_range{0, 1000, "d"};
constexpr Range percent{0, 100, "percent"};
constexpr Range in_c_range{-20, 200, "C"};

Reversible reversible_cell(const CsvRow& row) {
  return static_cast<Reversible>(cell_choice(row, "reversible", {reversible_names.begin(), reversible_names.end()}));
}

}  // namespace

void require_known_hazards(const CsvRow& row, const std::vector<std::string>& ids, const std::vector<Hazard>& hazards) {
  for (const std::string& id : ids) {
    if (row_of_id(hazards, id) == nullptr) {
      throw Refused(row.where("hazards") + ": \"" + id + "\" is not in hazards.csv");
    }
  }
}

std::string AdhesiveClass::words() const {
  std::string said = name + ": " + plain_number(open_low) + " to " + plain_number(open_high) + " min open, " +
                     plain_number(clamp.typical) + " min clamped";
  if (string_load_hours) said += ", strings after " + plain_number(*string_load_hours) + " h";
  said += string_load ? "" : ", not under the pull of strings";
  return said + ", undone with " + undo_with;
}

std::string FinishClass::words() const {
  std::string said = name + ": " + plain_number(recoat_low_hours);
  said += recoat_high_hours ? " to " + plain_number(*recoat_high_hours) : std::string(" and more");
  said += " h between coats, " + std::to_string(coats_a_day) + (coats_a_day == 1 ? " coat" : " coats");
  said += " a day at most, cured in " + plain_number(cure_days_low) + " to ";
  return said + plain_number(cure_days_high) + " days";
}

std::vector<AdhesiveClass> adhesive_classes(std::string_view csv, const std::vector<Hazard>& hazards) {
  return rows_with_id<AdhesiveClass>("adhesives.csv", csv, [&](const CsvRow& row) {
    AdhesiveClass glue{.id = cell_name(row, "id"),
                       .name = cell_name(row, "name"),
                       .open_low = row.number("open_low", minutes),
                       .open_high = row.number("open_high", minutes),
                       .clamp = cell_spread(row, "clamp_low", "clamp", "clamp_high", minutes),
                       .string_load_hours = row.number_if_given("string_load_hours", in_hours_range),
                       .cure_hours_low = row.number("cure_hours_low", in_hours_range),
                       .cure_hours_high = row.number("cure_hours_high", in_hours_range),
                       .gap_mm = row.number("gap_mm", {0, 5, "mm"}),
                       .reversible = reversible_cell(row),
                       .string_load = cell_yes(row, "string_load"),
                       .blocks_later_glue = cell_yes(row, "blocks_later_glue"),
                       .opened_months = row.number_if_given("opened_months", {0, 240, "months"}),
                       .mixed_days = row.number_if_given("mixed_days", in_days_range),
                       .undo_with = cell_name(row, "undo_with"),
                       .lot_rule = cell_text(row, "lot_rule"),
                       .best_for = cell_text(row, "best_for"),
                       .avoid_for = cell_text(row, "avoid_for"),
                       .hazards = listed(row.text("hazards")),
                       .source = cell_name(row, "source"),
                       .note = cell_text(row, "note")};
    require_known_hazards(row, glue.hazards, hazards);
    return glue;
  });
}

std::vector<FinishClass> finish_classes(std::string_view csv, const std::vector<Hazard>& hazards) {
  return rows_with_id<FinishClass>("finishes.csv", csv, [&](const CsvRow& row) {
    FinishClass finish{.id = cell_name(row, "id"),
                       .name = cell_name(row, "name"),
                       .solvent = cell_name(row, "solvent"),
                       .coats_low = row.whole_number("coats_low", {1, 200, ""}),
                       .coats_high = row.whole_number("coats_high", {1, 200, ""}),
                       .coats_a_day = row.whole_number("coats_a_day", {1, 50, ""}),
                       .recoat_low_hours = row.number("recoat_low", in_hours_range),
                       .recoat_high_hours = row.number_if_given("recoat_high", in_hours_range),
                       .after_window = cell_text(row, "after_window"),
                       .touch_dry_hours = row.number("touch_dry_hours", in_hours_range),
                       .sand_after_hours = row.number_if_given("sand_after_hours", in_hours_range),
                       .level_after_days = row.number_if_given("level_after_days", in_days_range),
                       .cure_days_low = row.number("cure_days_low", in_days_range),
                       .cure_days_high = row.number("cure_days_high", in_days_range),
                       .humidity_low = row.number("humidity_low", percent),
                       .humidity_high = row.number("humidity_high", percent),
                       .stop_spread_c = row.number("stop_spread_c", in_c_range),
                       .free_spread_c = row.number("free_spread_c", in_c_range),
                       .temperature_low = row.number("temperature_low", in_c_range),
                       .temperature_high = row.number("temperature_high", in_c_range),
                       .um_a_coat = row.number("um_a_coat", {0, 500, "um"}),
                       .um_film_low = row.number("um_film_low", {0, 2000, "um"}),
                       .um_film_high = row.number("um_film_high", {0, 2000, "um"}),
                       .goes_over = cell_text(row, "goes_over"),
                       .not_over = cell_text(row, "not_over"),
                       .reversibility = cell_text(row, "reversibility"),
                       .caution = cell_text(row, "caution"),
                       .hazards = listed(row.text("hazards")),
                       .source = cell_name(row, "source")};
    require_known_hazards(row, finish.hazards, hazards);
    if (!(finish.stop_spread_c <= finish.free_spread_c)) {
      throw Refused(row.where("free_spread_c") + ": is under stop_spread_c");
    }
    if (finish.recoat_high_hours && !(finish.recoat_low_hours <= *finish.recoat_high_hours)) {
      throw Refused(row.where("recoat_high") + ": is under recoat_low");
    }
    return finish;
  });
}

std::vector<ShopStation> shop_stations(std::string_view csv) {
  const CsvTable table("shop_stations.csv", csv);
  std::vector<ShopStation> stations;
  for (const CsvRow& row : table.rows()) {
    (void)row.name("source");
    stations.push_back({.name = cell_name(row, "name"),
                        .count = row.whole_number("count", {1, 100, ""}),
                        .held_while_hands_on = cell_choice(row, "held_from", {"hands_on", "wait"}) == 0});
  }
  return stations;
}

}  // namespace tailblock
