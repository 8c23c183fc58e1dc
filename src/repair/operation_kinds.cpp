#include "repair/operation_kinds.h"

namespace tailblock {
namespace {

constexpr Range minutes{0, 100000, "min"};

template <class Enum, std::size_t count>
Enum enum_cell(const CsvRow& row, std::string_view column, const std::array<std::string_view, count>& names) {
  return static_cast<Enum>(cell_choice(row, column, {names.begin(), names.end()}));
}

OpenRange range_cells(const CsvRow& row, const std::string& what, const Range& allowed) {
  const OpenRange range{row.number_if_given(what + "_low", allowed), row.number_if_given(what + "_high", allowed)};
  if (range.low && range.high && !(*range.low <= *range.high)) {
    throw Refused(row.where(what + "_high") + ": is under " + what + "_low");
  }
  return range;
}

template <class Row>
void require_known(const CsvRow& row, std::string_view column, const std::vector<std::string>& ids,
                   const std::vector<Row>& known) {
  for (const std::string& id : ids) {
    if (row_of_id(known, id) == nullptr) throw Refused(row.where(column) + ": \"" + id + "\" is in no table");
  }
}

std::optional<GrowsWith> grows_cells(const CsvRow& row) {
  if (row.text("amount").empty()) return std::nullopt;
  return GrowsWith{.amount = cell_name(row, "amount"),
                   .usual = row.number("usual_amount", {0.1, 10000, ""}),
                   .fixed_share = row.number("fixed_share", {0, 1, ""})};
}

bool held_while_hands_on(const std::string& station, const std::vector<ShopStation>& stations) {
  const auto found = std::ranges::find(stations, station, &ShopStation::name);
  return found != stations.end() && found->held_while_hands_on;
}

void require_station(const CsvRow& row, std::string_view column, const std::vector<ShopStation>& stations) {
  const std::string_view name = row.text(column);
  const bool known = name.empty() || std::any_of(stations.begin(), stations.end(),
                                                 [&](const ShopStation& station) { return station.name == name; });
  if (!known) throw Refused(row.where(column) + ": \"" + std::string(name) + "\" is not in shop_stations.csv");
}

void require_sound(const CsvRow& row, const OperationKind& kind, const OperationTables& tables) {
  require_station(row, "hands_on_station", tables.stations);
  require_station(row, "wait_station", tables.stations);
  if (!kind.skill.empty() && row_of_id(tables.skills, kind.skill) == nullptr) {
    throw Refused(row.where("skill") + ": \"" + kind.skill + "\" is not in work_skills.csv");
  }
  require_known(row, "adhesives", kind.adhesives, tables.adhesives);
  require_known(row, "finishes", kind.finishes, tables.finishes);
  require_known_hazards(row, kind.hazards, tables.hazards);
  if (kind.station_wait > kind.wait.typical) throw Refused(row.where("station_wait") + ": is longer than the wait");
  if (kind.asks_owner && kind.gentler.empty()) {
    throw Refused(row.where("gentler") + ": a step that asks the owner says what may be done instead");
  }
  if (!kind.asks_owner && (kind.reversible == Reversible::no || kind.value == ValueEffect::lowers)) {
    throw Refused(row.where("asks_owner") + ": what cannot be undone or lowers value asks the owner");
  }
}

void require_known_operations(const std::vector<OperationKind>& kinds) {
  const auto require = [&](const OperationKind& kind, const std::string& id) {
    if (row_of_id(kinds, id) == nullptr) {
      throw Refused("operations.csv, " + kind.id + ": \"" + id + "\" is not an operation");
    }
  };
  for (const OperationKind& kind : kinds) {
    for (const AllOfAny* all : {&kind.needs, &kind.after}) {
      for (const auto& any : *all) {
        for (const std::string& id : any) require(kind, id);
      }
    }
    for (const std::string& id : kind.counts_as) require(kind, id);
    for (const std::string& id : kind.greatest_gap_to) require(kind, id);
  }
}

}  // namespace

std::vector<OperationKind> operation_kinds(std::string_view csv, const OperationTables& tables) {
  auto kinds = rows_with_id<OperationKind>("operations.csv", csv, [&](const CsvRow& row) {
    OperationKind kind{.id = cell_name(row, "id"),
                       .name = cell_name(row, "name"),
                       .family = enum_cell<WorkFamily>(row, "family", work_family_names),
                       .hands_on = cell_spread(row, "hands_on_low", "hands_on", "hands_on_high", minutes),
                       .wait = cell_spread(row, "wait_low", "wait", "wait_high", minutes),
                       .wait_for = cell_text(row, "wait_for"),
                       .hands_on_station = cell_text(row, "hands_on_station"),
                       .wait_station = cell_text(row, "wait_station"),
                       .station_wait = row.number("station_wait", minutes),
                       .wait_station_hands_on = held_while_hands_on(cell_text(row, "wait_station"), tables.stations),
                       .skill = cell_text(row, "skill"),
                       .needs = all_of_any(row.text("needs")),
                       .after = all_of_any(row.text("after")),
                       .counts_as = listed(row.text("counts_as")),
                       .where = cell_text(row, "where"),
                       .materials = cell_text(row, "materials"),
                       .adhesives = listed(row.text("adhesives")),
                       .finishes = listed(row.text("finishes")),
                       .hazards = listed(row.text("hazards")),
                       .air = enum_cell<WorkAir>(row, "air", work_air_names),
                       .needs_dust_free = cell_yes(row, "dust_free"),
                       .humidity = range_cells(row, "humidity", {0, 100, "percent"}),
                       .temperature = range_cells(row, "temperature", {-20, 60, "C"}),
                       .greatest_gap = row.number_if_given("greatest_gap", {1, 100000, "min"}),
                       .greatest_gap_to = listed(row.text("greatest_gap_to"), '|'),
                       .grows = grows_cells(row),
                       .humidity_gate = cell_yes(row, "humidity_gate"),
                       .offered = cell_choice(row, "offered", {"on_request", "yes"}) == 1,
                       .reversible = enum_cell<Reversible>(row, "reversible", reversible_names),
                       .asks_owner = cell_yes(row, "asks_owner"),
                       .value = enum_cell<ValueEffect>(row, "value", value_effect_names),
                       .gentler = cell_text(row, "gentler"),
                       .caution = cell_text(row, "caution"),
                       .source = cell_name(row, "source"),
                       .note = cell_text(row, "note")};
    require_sound(row, kind, tables);
    return kind;
  });
  require_known_operations(kinds);
  return kinds;
}

Spread hands_on_for(const OperationKind& kind, std::optional<double> count) {
  if (!kind.grows || !count) return kind.hands_on;
  const double factor = kind.grows->fixed_share + (1 - kind.grows->fixed_share) * *count / kind.grows->usual;
  return {kind.hands_on.low * factor, kind.hands_on.typical * factor, kind.hands_on.high * factor};
}

bool counts_as_done(std::string_view id, const std::vector<OperationKind>& kinds,
                    const std::vector<std::string>& done) {
  return std::any_of(done.begin(), done.end(), [&](const std::string& had) {
    if (had == id) return true;
    const OperationKind* kind = row_of_id(kinds, had);
    return kind != nullptr && std::find(kind->counts_as.begin(), kind->counts_as.end(), id) != kind->counts_as.end();
  });
}

}  // namespace tailblock
