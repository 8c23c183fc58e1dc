#include "cli/demo_tables.h"

#include <algorithm>
#include <array>
#include <map>

#include "quantity/csv_table.h"
#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

constexpr Range any_mm{-20, 20, "mm"};
constexpr Range any_days{0, 4000, "days"};
constexpr Range fractions{0, 1, ""};
constexpr Range temperatures{-60, 60, "C"};
constexpr Range small_spreads{0, 100, ""};

using TextOf = std::function<std::string_view(std::string_view)>;
using Groups = std::map<std::string, std::vector<std::string>, std::less<>>;

std::string cell(const CsvRow& row, std::string_view column) { return std::string(row.text(column)); }
std::string name(const CsvRow& row, std::string_view column) { return std::string(row.name(column)); }
double mm_in(const CsvRow& row, std::string_view column) { return row.number(column, any_mm); }

bool yes(const CsvRow& row, std::string_view column) {
  const std::string_view written = row.name(column);
  if (written != "yes" && written != "no") throw Refused(row.where(column) + ": is neither yes nor no");
  return written == "yes";
}

template <class Enum, std::size_t count>
Enum one_of(const CsvRow& row, std::string_view column, const std::array<std::string_view, count>& names) {
  const auto found = std::ranges::find(names, row.name(column));
  if (found == names.end()) throw Refused(row.where(column) + ": \"" + cell(row, column) + "\" is not known here");
  return static_cast<Enum>(found - names.begin());
}

std::optional<Length> length(const CsvRow& row, std::string_view column) {
  if (row.text(column).empty()) return std::nullopt;
  return length_from_text(row.where(column), row.text(column));
}

template <class Read>
auto rows_of(const TextOf& text, const std::string& file, Read read) {
  const CsvTable table(file, text("data/demo/" + file));
  std::vector<decltype(read(table.rows().front()))> rows;
  for (const CsvRow& row : table.rows()) rows.push_back(read(row));
  return rows;
}

template <class Row>
Row& with_key(std::vector<Row>& rows, const CsvRow& row, std::string_view column) {
  const auto found = std::ranges::find(rows, row.name(column), &Row::key);
  if (found == rows.end()) throw Refused(row.where(column) + ": there is no " + cell(row, column));
  return *found;
}

void read_shop(DemoTables& tables, const TextOf& text) {
  const CsvTable table("shop.csv", text("data/demo/shop.csv"));
  const auto row_of = [&](std::string_view wanted) -> const CsvRow& {
    for (const CsvRow& row : table.rows()) {
      if (row.name("name") == wanted) return row;
    }
    throw Refused("shop.csv: has no row " + std::string(wanted));
  };
  tables.shop_name = name(row_of("shop_name"), "value");
  tables.seed = row_of("seed").whole_number("value", {0, 1'000'000'000, ""});
  tables.season_visit_least_days_ago = row_of("season_visit_least_days_ago").whole_number("value", {0, 300, "days"});
  tables.years_lived = row_of("years_lived").whole_number("value", {1, 20, "years"});
}

DemoOwner owner(const CsvRow& row) {
  return {.key = name(row, "key"),
          .record = {.name = name(row, "name"), .contact = name(row, "contact"), .note = cell(row, "shop_note")}};
}

DemoHome home(const CsvRow& row) {
  constexpr std::array<std::string_view, 2> kinds{"indoor_months", "outdoor_months"};
  DemoHome home;
  home.key = name(row, "key");
  home.record.name = name(row, "name");
  home.record.note = cell(row, "shop_note");
  HomeAir& air = home.record.air;
  air.kind = one_of<HomeKind>(row, "kind", kinds);
  air.heating_set_point = celsius(row.number("heating_set_point_c", temperatures));
  air.moisture_gain_g_per_m3 = row.number("moisture_gain_g_per_m3", small_spreads);
  air.humidifier_floor = humidity_fraction(row.number("humidifier_floor", fractions));
  air.dehumidifier_ceiling = humidity_fraction(row.number("dehumidifier_ceiling", fractions));
  air.weather_sd_relative_humidity = row.number("weather_sd_relative_humidity", fractions);
  air.weather_memory = days(row.number("weather_memory_days", any_days));
  if (!row.text("log_first_days_ago").empty()) {
    home.log = {.first_days_ago = row.whole_number("log_first_days_ago", any_days),
                .last_days_ago = row.whole_number("log_last_days_ago", any_days)};
  }
  return home;
}

void read_homes(DemoTables& tables, const TextOf& text) {
  tables.homes = rows_of(text, "homes.csv", home);
  rows_of(text, "home_months.csv", [&](const CsvRow& row) {
    HomeAir& air = with_key(tables.homes, row, "home").record.air;
    const auto month = static_cast<std::size_t>(row.whole_number("month", {1, 12, ""}) - 1);
    air.temperature_c[month] = row.number("temperature_c", temperatures);
    if (const auto dew = row.number_if_given("dew_point_c", temperatures)) air.dew_point_c[month] = *dew;
    if (const auto rh = row.number_if_given("relative_humidity", fractions)) air.relative_humidity[month] = *rh;
    return month;
  });
  rows_of(text, "log_gaps.csv", [&](const CsvRow& row) {
    with_key(tables.homes, row, "home")
        .gaps.push_back(
            {.from_days_ago = row.whole_number("from_days_ago", any_days), .days = row.whole_number("days", any_days)});
    return 0;
  });
}

InstrumentDesign design(const CsvRow& row) {
  return {.body_size = one_of<BodySize>(row, "body_size", body_size_names),
          .bracing = one_of<Bracing>(row, "bracing", bracing_names),
          .lower_bout_width = length(row, "lower_bout_width"),
          .top_thickness = length(row, "top_thickness"),
          .ring_angle = degrees(row.number("ring_angle_deg", {0, 90, "deg"})),
          .top_species = cell(row, "top_species"),
          .kept_in_case = yes(row, "kept_in_case")};
}

DemoInstrument instrument(const CsvRow& row) {
  constexpr std::array<std::string_view, 3> attacks = attack_level_names;
  return {.key = name(row, "key"),
          .owner = name(row, "owner"),
          .home = name(row, "home"),
          .record = {.name = name(row, "name"),
                     .made = cell(row, "made"),
                     .design = design(row),
                     .scale_length = length_from_text(row.where("scale_length"), row.name("scale_length")),
                     .body_joint_fret = row.whole_number("body_joint_fret", {10, 16, ""}),
                     .fret_count = row.whole_number("fret_count", {12, 26, ""}),
                     .adjustable_rod = yes(row, "adjustable_rod"),
                     .slot = one_of<SaddleSlot>(row, "slot", saddle_slot_names),
                     .slot_depth = length(row, "slot_depth"),
                     .slot_width = length(row, "slot_width"),
                     .slot_length = length(row, "slot_length"),
                     .string_set = name(row, "string_set"),
                     .tuning = name(row, "tuning"),
                     .attack = one_of<AttackLevel>(row, "attack", attacks),
                     .wanted_action12_bass = length(row, "wanted_bass"),
                     .wanted_action12_treble = length(row, "wanted_treble"),
                     .highest_action12_bass = length(row, "highest_bass"),
                     .highest_action12_treble = length(row, "highest_treble"),
                     .note = cell(row, "shop_note")}};
}

void read_instruments(DemoTables& tables, const TextOf& text) {
  tables.instruments = rows_of(text, "instruments.csv", [&](const CsvRow& row) {
    with_key(tables.owners, row, "owner");
    with_key(tables.homes, row, "home");
    return instrument(row);
  });
}

HiddenNature nature(const CsvRow& row) {
  return {.instrument = name(row, "instrument"),
          .reference_moisture_percent = row.number("reference_moisture_percent", {2, 20, "%"}),
          .action12_bass_mm = mm_in(row, "action12_bass_mm"),
          .action12_treble_mm = mm_in(row, "action12_treble_mm"),
          .response_bass = row.number("response_bass", {0, 1, "mm per %"}),
          .response_treble = row.number("response_treble", {0, 1, "mm per %"}),
          .lag = days(row.number("lag_days", {0, 200, "days"})),
          .drift_mm_per_year = row.number("drift_mm_per_year", {-1, 1, "mm per year"}),
          .relief_mm = mm_in(row, "relief_mm"),
          .relief_mm_per_percent = row.number("relief_mm_per_percent", {-0.1, 0.1, "mm per %"}),
          .saddle_exposure_bass_mm = mm_in(row, "saddle_exposure_bass_mm"),
          .saddle_exposure_treble_mm = mm_in(row, "saddle_exposure_treble_mm"),
          .nut_bass_mm = mm_in(row, "nut_bass_mm"),
          .nut_treble_mm = mm_in(row, "nut_treble_mm"),
          .saddle_crown_mm = mm_in(row, "saddle_crown_mm"),
          .sink_at_soundhole_mm = mm_in(row, "sink_at_soundhole_mm"),
          .bridge_over_rim_mm = mm_in(row, "bridge_over_rim_mm"),
          .bridge_over_rim_mm_per_percent = row.number("bridge_over_rim_mm_per_percent", {0, 1, "mm per %"})};
}

Groups reading_groups(const TextOf& text) {
  Groups groups;
  rows_of(text, "reading_groups.csv", [&](const CsvRow& row) {
    groups[name(row, "group")].push_back(name(row, "measure"));
    return 0;
  });
  return groups;
}

/// `heights relief air` as the measures of those groups.
std::vector<std::string> measures(const CsvRow& row, std::string_view column, const Groups& groups) {
  std::vector<std::string> all;
  std::string_view rest = row.text(column);
  while (!rest.empty()) {
    const std::string_view word = rest.substr(0, rest.find(' '));
    const auto group = groups.find(word);
    if (group == groups.end()) throw Refused(row.where(column) + ": no group " + std::string(word));
    all.insert(all.end(), group->second.begin(), group->second.end());
    rest.remove_prefix(std::min(rest.size(), word.size() + 1));
  }
  return all;
}

DemoWhen when(const CsvRow& row) {
  if (!row.text("days_ago").empty()) return {.days_ago = row.whole_number("days_ago", any_days)};
  return {.month = static_cast<unsigned>(row.whole_number("month", {1, 12, ""})),
          .day = static_cast<unsigned>(row.whole_number("day", {1, 28, ""})),
          .years_back = row.whole_number("years_back", {0, 5, "years"})};
}

DemoVisit visit(const CsvRow& row, const Groups& groups) {
  constexpr std::array<std::string_view, 4> airs{"any", "dry", "middling", "damp"};
  return {.instrument = name(row, "instrument"),
          .key = name(row, "visit"),
          .when = when(row),
          .air = one_of<DemoAir>(row, "air", airs),
          .kit = name(row, "kit"),
          .found = measures(row, "found", groups),
          .left = measures(row, "left", groups),
          .reason = cell(row, "reason"),
          .note = cell(row, "shop_note")};
}

/// A visit is told once, or once for each third of the year's moisture.
void require_told_whole(const std::vector<DemoVisit>& visits) {
  std::map<std::string, int> told;
  for (const DemoVisit& visit : visits) {
    told[visit.instrument + ", " + visit.key] |= visit.air == DemoAir::any ? 7 : 1 << (static_cast<int>(visit.air) - 1);
  }
  for (const auto& [which, thirds] : told) {
    if (thirds != 7) throw Refused("visits.csv, " + which + ": is not told for every third of the year's moisture");
  }
}

void require_visit(const DemoTables& tables, const CsvRow& row) {
  const bool known = std::ranges::any_of(tables.visits, [&](const DemoVisit& visit) {
    return visit.instrument == row.name("instrument") && visit.key == row.name("visit");
  });
  if (!known) throw Refused(row.where("visit") + ": that instrument has no such visit");
}

void read_visits(DemoTables& tables, const TextOf& text) {
  const Groups groups = reading_groups(text);
  tables.visits = rows_of(text, "visits.csv", [&](const CsvRow& row) {
    with_key(tables.instruments, row, "instrument");
    return visit(row, groups);
  });
  require_told_whole(tables.visits);
}

DemoWork work(const CsvRow& row) {
  constexpr std::array<std::string_view, 3> records{"size", "done", "hidden"};
  return {.instrument = name(row, "instrument"),
          .visit = name(row, "visit"),
          .recorded = one_of<DemoWorkRecord>(row, "recorded", records),
          .kind = cell(row, "kind"),
          .moved = {.action12_bass_mm = mm_in(row, "action12_bass_mm"),
                    .action12_treble_mm = mm_in(row, "action12_treble_mm"),
                    .saddle_bass_mm = mm_in(row, "saddle_bass_mm"),
                    .saddle_treble_mm = mm_in(row, "saddle_treble_mm"),
                    .relief_mm = mm_in(row, "relief_mm"),
                    .sink_mm = mm_in(row, "sink_mm")},
          .note = cell(row, "shop_note")};
}

DemoGauge gauge(const CsvRow& row) {
  constexpr std::array<std::string_view, 5> notations{"64ths", "64ths and thou", "thou", "mm", "plain"};
  return {.kit = name(row, "kit"),
          .measure = name(row, "measure"),
          .gauge = name(row, "gauge"),
          .notation = one_of<Notation>(row, "notation", notations),
          .step = row.number("step", {1e-4, 10, ""}),
          .hand_sd = row.number("hand_sd", small_spreads)};
}

void read_what_was_done(DemoTables& tables, const TextOf& text) {
  tables.work = rows_of(text, "work.csv", [&](const CsvRow& row) {
    require_visit(tables, row);
    return work(row);
  });
  tables.slips = rows_of(text, "slips.csv", [&](const CsvRow& row) {
    require_visit(tables, row);
    return DemoSlip{.instrument = name(row, "instrument"),
                    .visit = name(row, "visit"),
                    .measure = name(row, "measure"),
                    .typed = name(row, "typed")};
  });
  tables.fret_readings = rows_of(text, "fret_readings.csv", [&](const CsvRow& row) {
    require_visit(tables, row);
    return DemoFretReading{.instrument = name(row, "instrument"),
                           .visit = name(row, "visit"),
                           .measure = name(row, "measure"),
                           .typed = name(row, "typed"),
                           .gauge = name(row, "gauge")};
  });
  tables.decisions = rows_of(text, "decisions.csv", [&](const CsvRow& row) {
    require_visit(tables, row);
    return DemoDecision{.instrument = name(row, "instrument"),
                        .visit = name(row, "visit"),
                        .choice = name(row, "choice"),
                        .raise_bass = mm(mm_in(row, "raise_bass_mm")),
                        .raise_treble = mm(mm_in(row, "raise_treble_mm")),
                        .reason = cell(row, "reason")};
  });
}

void read_findings(DemoTables& tables, const TextOf& text) {
  const std::string_view findings = text("data/demo/findings.csv"), changes = text("data/demo/finding_changes.csv");
  for (const std::string_view csv : {findings, changes}) {
    const CsvTable table(csv == findings ? "findings.csv" : "finding_changes.csv", csv);
    for (const CsvRow& row : table.rows()) require_visit(tables, row);
  }
  tables.findings = demo_findings(findings);
  tables.finding_changes = demo_finding_changes(changes, tables.findings);
}

}  // namespace

DemoTables demo_tables(const TextOf& text) {
  DemoTables tables;
  read_shop(tables, text);
  tables.owners = rows_of(text, "owners.csv", owner);
  read_homes(tables, text);
  read_instruments(tables, text);
  tables.natures = rows_of(text, "hidden.csv", [&](const CsvRow& row) {
    with_key(tables.instruments, row, "instrument");
    return nature(row);
  });
  read_visits(tables, text);
  read_what_was_done(tables, text);
  read_findings(tables, text);
  tables.gauges = rows_of(text, "kits.csv", gauge);
  return tables;
}

}  // namespace tailblock
