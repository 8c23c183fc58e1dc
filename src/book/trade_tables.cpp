#include "book/trade_tables.h"

#include <algorithm>

#include "book/fret_place.h"
#include "quantity/csv_table.h"

namespace tailblock {
namespace {

constexpr Range any_value{-10000, 10000, ""};
constexpr Range any_spread{1e-6, 1000, ""};

std::string cell_text(const CsvRow& row, std::string_view column) { return std::string(row.text(column)); }
std::string cell_name(const CsvRow& row, std::string_view column) { return std::string(row.name(column)); }

bool yes_rather_than(std::string_view other, const CsvRow& row, std::string_view column) {
  const std::string_view cell = row.name(column);
  if (cell != "yes" && cell != other) {
    throw Refused(row.where(column) + ": \"" + std::string(cell) + "\" is neither yes nor " + std::string(other));
  }
  return cell == "yes";
}

template <class Row>
const Row* row_named(const std::vector<Row>& rows, std::string_view id) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.id == id; });
  return found == rows.end() ? nullptr : &*found;
}

template <class Row, class Read>
std::vector<Row> rows_of(const std::string& file, std::string_view csv, Read read) {
  const CsvTable table(file, csv);
  std::vector<Row> rows;
  for (const CsvRow& row : table.rows()) {
    if (row_named(rows, row.name("id")) != nullptr) throw Refused(row.where("id") + ": comes twice");
    rows.push_back(read(row));
  }
  return rows;
}

void require_in_order(const CsvRow& row, double low, double high) {
  if (!(low < high)) {
    throw Refused(row.where() + ": " + plain_number(low) + " is not below " + plain_number(high));
  }
}

}  // namespace

std::vector<Measure> measures_from_csv(std::string_view csv, const std::string& file) {
  return rows_of<Measure>(file, csv, [](const CsvRow& row) {
    Measure measure{.id = cell_name(row, "id"),
                    .name = cell_name(row, "name"),
                    .unit = cell_name(row, "unit"),
                    .where = cell_name(row, "where"),
                    .how = cell_name(row, "how"),
                    .usual_low = row.number_if_given("usual_low", any_value),
                    .usual_high = row.number_if_given("usual_high", any_value),
                    .hard_low = row.number("hard_low", any_value),
                    .hard_high = row.number("hard_high", any_value),
                    .gauge = cell_name(row, "gauge"),
                    .source = cell_name(row, "source"),
                    .note = cell_text(row, "note")};
    require_in_order(row, measure.hard_low, measure.hard_high);
    require_in_order(row, measure.usual_low.value_or(measure.hard_low), measure.usual_high.value_or(measure.hard_high));
    for (const auto& usual : {measure.usual_low, measure.usual_high}) {
      if (usual) require_within(row.where(), *usual, {measure.hard_low, measure.hard_high, measure.unit});
    }
    return measure;
  });
}

std::vector<Gauge> gauges_from_csv(std::string_view csv) {
  return rows_of<Gauge>("gauges.csv", csv, [](const CsvRow& row) {
    return Gauge{.id = cell_name(row, "id"),
                 .name = cell_name(row, "name"),
                 .unit = cell_name(row, "unit"),
                 .sd = row.number("sd", any_spread),
                 .source = cell_name(row, "source"),
                 .note = cell_text(row, "note")};
  });
}

std::vector<InterventionKind> interventions_from_csv(std::string_view csv) {
  return rows_of<InterventionKind>("interventions.csv", csv, [](const CsvRow& row) {
    return InterventionKind{.id = cell_name(row, "id"),
                            .name = cell_name(row, "name"),
                            .always_moves = yes_rather_than("perhaps", row, "moves_strings"),
                            .moves_relief = yes_rather_than("no", row, "moves_relief"),
                            .moves_bridge = yes_rather_than("no", row, "moves_bridge"),
                            .size_known_by = cell_name(row, "size_known_by"),
                            .change_sd_mm = row.number("change_sd_mm", any_spread),
                            .source = cell_name(row, "source"),
                            .note = cell_text(row, "note")};
  });
}

const Measure* TradeTables::measure(std::string_view id) const {
  if (!is_read_at_frets(id)) return row_named(measures, id);
  const auto place = fret_place(id);
  return place ? row_named(measures, place->measure) : nullptr;
}
const Gauge* TradeTables::gauge(std::string_view id) const { return row_named(gauges, id); }
const InterventionKind* TradeTables::intervention(std::string_view id) const { return row_named(interventions, id); }
const Measure* TradeTables::finding_measure(std::string_view id) const { return row_named(finding_measures, id); }

namespace {

void require_known_measures(const TradeTables& tables) {
  for (const FindingKind& kind : tables.findings) {
    for (const std::string& measure : kind.measures) {
      if (tables.finding_measure(measure) != nullptr) continue;
      throw Refused("finding_kinds.csv, " + kind.name + ": no measure " + measure + " in finding_measures.csv");
    }
  }
}

}  // namespace

TradeTables trade_tables(const TradeTexts& texts, std::vector<FindingKind> findings) {
  TradeTables tables{.measures = measures_from_csv(texts.measures),
                     .gauges = gauges_from_csv(texts.gauges),
                     .interventions = interventions_from_csv(texts.interventions),
                     .findings = std::move(findings),
                     .finding_measures = {}};
  if (!texts.finding_measures.empty()) {
    tables.finding_measures = measures_from_csv(texts.finding_measures, "finding_measures.csv");
  }
  require_known_measures(tables);
  for (const Measure& measure : tables.measures) {
    const Gauge* gauge = tables.gauge(measure.gauge);
    if (is_read_at_frets(measure.id) && !fret_reading_kind(measure.id)) {
      throw Refused("measures.csv, " + measure.id + ": no such reading at a fret is known");
    }
    if (gauge == nullptr) throw Refused("measures.csv, " + measure.id + ": no gauge " + measure.gauge);
    if (gauge->unit != measure.unit) {
      throw Refused("measures.csv, " + measure.id + ": is in " + measure.unit + ", its gauge " + measure.gauge +
                    " reads " + gauge->unit);
    }
  }
  return tables;
}

}  // namespace tailblock
