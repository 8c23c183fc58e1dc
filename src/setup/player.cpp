#include "setup/player.h"

#include <map>
#include <string>

#include "quantity/csv_table.h"

namespace tailblock {

PlayerDefaults player_defaults(std::string_view csv) {
  PlayerDefaults defaults;
  std::map<std::string, Length*, std::less<>> wanted{{"wanted_bass", &defaults.bass.wanted},
                                                     {"wanted_treble", &defaults.treble.wanted},
                                                     {"least_margin_bass", &defaults.bass.least_margin},
                                                     {"least_margin_treble", &defaults.treble.least_margin},
                                                     {"comfort_bass", &defaults.bass.comfort},
                                                     {"comfort_treble", &defaults.treble.comfort},
                                                     {"relief", &defaults.relief}};
  const CsvTable table("player_defaults.csv", csv);
  for (const CsvRow& row : table.rows()) {
    const auto found = wanted.find(row.name("what"));
    if (found == wanted.end()) throw Refused(row.where("what") + ": unknown, or comes twice");
    *found->second = mm(row.number("value_mm", {0, 6, "mm"}));
    wanted.erase(found);
  }
  if (!wanted.empty()) throw Refused("player_defaults.csv: " + wanted.begin()->first + " is missing");
  return defaults;
}

}  // namespace tailblock
