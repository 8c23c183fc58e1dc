#include "strings/string_tables.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "quantity/csv_table.h"

namespace tailblock {
namespace {

/// Rows of one name follow each other and number their strings 1, 2, 3 ...; `have` is how many came before this one.
void require_next_string(const CsvRow& row, std::size_t have) {
  const auto expected = static_cast<double>(have + 1);
  require_within(row.where("string"), row.whole_number("string", {1, 12, ""}), {expected, expected, ""});
}

CoreShape core_shape(const CsvRow& row) {
  const std::string_view text = row.text("core_shape");
  if (text.empty() || text == "round") return CoreShape::round;
  if (text == "hexagonal") return CoreShape::hexagonal;
  throw Refused(row.where("core_shape") + ": \"" + std::string(text) + "\" is not round or hexagonal");
}

template <class Row>
Row& row_of_name(std::vector<Row>& rows, const CsvRow& cell, std::string_view column) {
  const std::string_view name = cell.name(column);
  if (rows.empty() || rows.back().name != name) {
    for (const Row& earlier : rows) {
      if (earlier.name == name) throw Refused(cell.where(column) + ": rows of one name must stand together");
    }
    rows.push_back({std::string(name), {}});
  }
  return rows.back();
}

template <class Row>
const Row& named(const std::vector<Row>& rows, std::string_view field, std::string_view name) {
  std::string names;
  for (const Row& row : rows) {
    if (row.name == name) return row;
    names += (names.empty() ? "" : ", ") + row.name;
  }
  throw Refused(std::string(field) + ": \"" + std::string(name) + "\" is not one of " + names);
}

}  // namespace

std::vector<StringSet> string_sets(std::string_view csv) {
  const CsvTable table("string_sets.csv", csv);
  std::vector<StringSet> sets;
  for (const CsvRow& row : table.rows()) {
    StringSet& set = row_of_name(sets, row, "set");
    require_next_string(row, set.strings.size());
    GuitarString string;
    string.diameter = inches(row.number("diameter_in", {0.004, 0.12, "in"}));
    if (const auto core = row.number_if_given("core_in", {0.004, 0.08, "in"})) string.core_diameter = inches(*core);
    string.core_shape = core_shape(row);
    if (const auto density = row.number_if_given("wrap_kg_per_m3", {1000, 20000, "kg/m3"})) {
      string.wrap_kg_per_m3 = *density;
    }
    (void)row.name("source");
    if (string.core_diameter && !(*string.core_diameter < *string.diameter)) {
      throw Refused(row.where("core_in") + ": is not thinner than the string");
    }
    set.strings.push_back(string);
  }
  return sets;
}

std::vector<Tuning> tunings(std::string_view csv) {
  const CsvTable table("tunings.csv", csv);
  std::vector<Tuning> tunings;
  for (const CsvRow& row : table.rows()) {
    Tuning& tuning = row_of_name(tunings, row, "tuning");
    require_next_string(row, tuning.pitch_hz.size());
    tuning.pitch_hz.push_back(equal_tempered_pitch_hz(row.where("pitch"), row.name("pitch")));
    (void)row.name("source");
  }
  return tunings;
}

std::vector<AttackLevelRow> attack_levels(std::string_view csv) {
  const CsvTable table("attacks.csv", csv);
  std::vector<AttackLevelRow> levels;
  for (const CsvRow& row : table.rows()) {
    (void)row.name("source");
    levels.push_back({std::string(row.name("level")),
                      {.amplitude_bass = mm(row.number("amplitude_bass_mm", {0.05, 5, "mm"})),
                       .amplitude_treble = mm(row.number("amplitude_treble_mm", {0.05, 5, "mm"})),
                       .pluck_from_saddle = mm(row.number("pluck_from_saddle_mm", {20, 250, "mm"})),
                       .pluck_width = mm(row.number("pluck_width_mm", {0.5, 20, "mm"}))}});
  }
  return levels;
}

const StringSet& string_set_named(const std::vector<StringSet>& sets, std::string_view name) {
  return named(sets, "string_set", name);
}

const Tuning& tuning_named(const std::vector<Tuning>& tunings, std::string_view name) {
  return named(tunings, "tuning", name);
}

const Attack& attack_named(const std::vector<AttackLevelRow>& levels, std::string_view name) {
  return named(levels, "attack", name).attack;
}

Attack attack_of(const std::vector<AttackLevelRow>& levels, const Attack& own, Length amplitude_bass) {
  std::vector<std::pair<Length, Length>> known;  // bass, treble
  for (const AttackLevelRow& level : levels) {
    known.emplace_back(level.attack.amplitude_bass, level.attack.amplitude_treble);
  }
  std::sort(known.begin(), known.end());
  const auto above =
      std::find_if(known.begin(), known.end(), [&](const auto& one) { return one.first > amplitude_bass; });
  Attack attack = own;
  attack.amplitude_bass = amplitude_bass;
  if (above == known.begin() || above == known.end()) {
    const auto& [bass, treble] = above == known.begin() ? known.front() : known.back();
    attack.amplitude_treble = (amplitude_bass / bass) * treble;
  } else {
    const auto& [bass, treble] = *std::prev(above);
    attack.amplitude_treble = treble + (amplitude_bass - bass) / (above->first - bass) * (above->second - treble);
  }
  return attack;
}

Attack hardest_of(const std::vector<AttackLevelRow>& levels, const Attack& own) {
  const double harder = attack_named(levels, "hard").amplitude_bass / attack_named(levels, "medium").amplitude_bass;
  Attack attack = own;
  attack.amplitude_bass = harder * own.amplitude_bass;
  attack.amplitude_treble = harder * own.amplitude_treble;
  return attack;
}

std::vector<GuitarString> tuned(const StringSet& set, const Tuning& tuning) {
  if (set.strings.size() != tuning.pitch_hz.size()) {
    throw Refused("tuning: " + tuning.name + " has " + std::to_string(tuning.pitch_hz.size()) + " strings, the set " +
                  set.name + " has " + std::to_string(set.strings.size()));
  }
  std::vector<GuitarString> strings = set.strings;
  for (std::size_t i = 0; i < strings.size(); ++i) strings[i].pitch_hz = tuning.pitch_hz[i];
  return strings;
}

}  // namespace tailblock
