#include "body/plate_figures.h"

#include <array>
#include <set>

#include "quantity/csv_table.h"

namespace tailblock {

PlateFigures plate_figures(std::string_view csv) {
  PlateFigures figures;
  struct Entry {
    std::string_view name;
    double* place;
    Range range;
  };
  constexpr Range stiffnesses{1e-4, 1e7, "N/mm2"}, slopes{0, 1e7, "N"}, factors{1, 10, ""}, shares{0, 5, ""};
  const std::array entries{
      Entry{"rim_outward", &figures.rim.outward_n_mm2, stiffnesses},
      Entry{"rim_along", &figures.rim.along_n_mm2, stiffnesses},
      Entry{"rim_up", &figures.rim.up_n_mm2, stiffnesses},
      Entry{"rim_slope", &figures.rim.slope_n, slopes},
      Entry{"block_half_width", &figures.block_half_width_mm, {0, 120, "mm"}},
      Entry{"block_in_plane", &figures.rim.block_in_plane_n_mm2, stiffnesses},
      Entry{"block_up", &figures.rim.block_up_n_mm2, stiffnesses},
      Entry{"block_slope", &figures.rim.block_slope_n, slopes},
      Entry{"rotation_calibration", &figures.rotation_calibration, factors},
      Entry{"creep_low", &figures.creep_low, factors},
      Entry{"creep_high", &figures.creep_high, factors},
      Entry{"string_spread", &figures.string_spread_mm, {30, 80, "mm"}},
      Entry{"linear_limit", &figures.linear_limit, {0.1, 5, ""}},
      Entry{"top_factor", &figures.top_factor, factors},
      Entry{"thickness_relative_sd", &figures.thickness_relative_sd, shares},
      Entry{"pins_behind_saddle", &figures.pins_behind_saddle_mm, {5, 40, "mm"}},
      Entry{"worn_width", &figures.worn_width_mm, {1, 60, "mm"}},
      Entry{"neck_relative_sd", &figures.neck_relative_sd, shares},
  };
  const CsvTable table("plate_figures.csv", csv);
  std::set<std::string_view> given;
  for (const CsvRow& row : table.rows()) {
    const std::string_view name = row.name("name");
    const Entry* known = nullptr;
    for (const Entry& entry : entries) {
      if (entry.name == name) known = &entry;
    }
    if (known == nullptr) {
      throw Refused(row.where("name") + ": \"" + std::string(name) + "\" is not a figure of this table");
    }
    if (!given.insert(known->name).second) {
      throw Refused(row.where("name") + ": \"" + std::string(name) + "\" comes twice");
    }
    *known->place = row.number("value", known->range);
    (void)row.name("source");
  }
  for (const Entry& entry : entries) {
    if (!given.contains(entry.name)) throw Refused("plate_figures.csv: " + std::string(entry.name) + " is missing");
  }
  figures.rim.block_half_width = mm(figures.block_half_width_mm);
  return figures;
}

}  // namespace tailblock
