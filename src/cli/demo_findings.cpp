#include "cli/demo_findings.h"

#include <algorithm>

#include "quantity/csv_table.h"
#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

std::string cell(const CsvRow& row, std::string_view column) { return std::string(row.text(column)); }

template <class Enum, std::size_t count>
Enum one_of(const CsvRow& row, std::string_view column, const std::array<std::string_view, count>& names) {
  const auto found = std::ranges::find(names, row.name(column));
  if (found == names.end()) throw Refused(row.where(column) + ": \"" + cell(row, column) + "\" is not known here");
  return static_cast<Enum>(found - names.begin());
}

/// Hands over the parts of a cell, and each as what stands before and after its middle sign.
template <class Take>
void each_pair(const CsvRow& row, std::string_view column, char between, char middle, Take take) {
  std::string_view text = row.text(column);
  while (!text.empty()) {
    const std::string_view one = text.substr(0, text.find(between));
    text.remove_prefix(std::min(text.size(), one.size() + 1));
    const std::size_t at = one.find(middle);
    if (at == std::string_view::npos) {
      throw Refused(row.where(column) + ": \"" + std::string(one) + "\" is not in two halves");
    }
    take(one.substr(0, at), one.substr(at + 1));
  }
}

std::vector<DrawingPoint> points(const CsvRow& row) {
  std::vector<DrawingPoint> all;
  each_pair(row, "points", ' ', ':', [&](std::string_view x, std::string_view y) {
    const auto number = [&](std::string_view text) {
      const auto read = number_from_text(text);
      if (!read) throw Refused(row.where("points") + ": \"" + std::string(text) + "\" is not a number");
      return mm(*read);
    };
    all.push_back({number(x), number(y)});
  });
  return all;
}

std::vector<FindingExtent> readings(const CsvRow& row) {
  std::vector<FindingExtent> all;
  each_pair(row, "readings", ';', '=', [&](std::string_view measure, std::string_view typed) {
    all.push_back({.measure = std::string(measure),
                   .typed = std::string(typed),
                   .value = length_from_text(row.where("readings"), typed)});
  });
  return all;
}

FindingShape shape_of(const std::vector<DrawingPoint>& points) {
  if (points.size() == 1) return FindingShape::point;
  return points.size() == 2 ? FindingShape::line : FindingShape::area;
}

}  // namespace

std::vector<DemoFinding> demo_findings(std::string_view csv) {
  const CsvTable table("findings.csv", csv);
  std::vector<DemoFinding> all;
  for (const CsvRow& row : table.rows()) {
    const auto lies = points(row);
    all.push_back({.instrument = std::string(row.name("instrument")),
                   .visit = std::string(row.name("visit")),
                   .key = std::string(row.name("key")),
                   .record = {.kind = std::string(row.name("kind")),
                              .view = one_of<DrawingView>(row, "view", drawing_view_names),
                              .shape = shape_of(lies),
                              .points = lies,
                              .place = cell(row, "place"),
                              .part = cell(row, "part"),
                              .opening = one_of<Opening>(row, "opening", opening_names),
                              .moving = one_of<Moving>(row, "moving", moving_names),
                              .severity = one_of<Severity>(row, "severity", severity_names),
                              .certainty = one_of<Certainty>(row, "certainty", certainty_names),
                              .extents = readings(row),
                              .note = cell(row, "shop_note")}});
  }
  return all;
}

std::vector<DemoFindingChange> demo_finding_changes(std::string_view csv, const std::vector<DemoFinding>& findings) {
  const CsvTable table("finding_changes.csv", csv);
  std::vector<DemoFindingChange> all;
  for (const CsvRow& row : table.rows()) {
    const bool known = std::ranges::any_of(findings, [&](const DemoFinding& finding) {
      return finding.instrument == row.name("instrument") && finding.key == row.name("finding");
    });
    if (!known) throw Refused(row.where("finding") + ": that instrument has no such finding");
    all.push_back({.instrument = std::string(row.name("instrument")),
                   .visit = std::string(row.name("visit")),
                   .finding = std::string(row.name("finding")),
                   .record = {.state = one_of<FindingState>(row, "state", finding_state_names),
                              .extents = readings(row),
                              .note = cell(row, "shop_note")}});
  }
  return all;
}

}  // namespace tailblock
