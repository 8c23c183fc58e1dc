#include "body/drawing_tables.h"

#include <algorithm>

#include "quantity/csv_table.h"

namespace tailblock {
namespace {

template <std::size_t count>
std::size_t index_of(const std::array<std::string_view, count>& names, const std::string& where, std::string_view text,
                     const std::string& what) {
  const auto found = std::ranges::find(names, text);
  if (found == names.end()) throw Refused(where + ": \"" + std::string(text) + "\" is not " + what);
  return static_cast<std::size_t>(found - names.begin());
}

std::vector<BackBrace> back_braces(std::string_view csv) {
  const CsvTable table("back_braces.csv", csv);
  std::vector<BackBrace> braces;
  for (const CsvRow& row : table.rows()) {
    braces.push_back({.name = std::string(row.name("name")),
                      .at_share = row.number("at_share", {0.02, 0.98, ""}),
                      .width = mm(row.number("width_mm", {2, 40, "mm"}))});
    (void)row.name("source");
  }
  return braces;
}

void read_figures(DrawingTables& tables, std::string_view csv) {
  const CsvTable table("drawing_figures.csv", csv);
  std::array<bool, body_size_names.size()> seen{};
  for (const CsvRow& row : table.rows()) {
    const std::size_t size = index_of(body_size_names, row.where("body_size"), row.name("body_size"), "a body size");
    if (seen[size]) throw Refused(row.where("body_size") + ": it comes twice");
    seen[size] = true;
    const auto length = [&](std::string_view column, double low, double high) {
      return mm(row.number(column, {low, high, "mm"}));
    };
    tables.figures[size] = {.tail_depth = length("tail_depth_mm", 50, 200),
                            .nut_width = length("nut_width_mm", 30, 70),
                            .board_width_at_joint = length("board_width_at_joint_mm", 40, 80),
                            .neck_depth = length("neck_depth_mm", 12, 40),
                            .headstock_length = length("headstock_length_mm", 80, 260),
                            .headstock_width_at_nut = length("headstock_width_at_nut_mm", 35, 120),
                            .headstock_width_at_tip = length("headstock_width_at_tip_mm", 35, 140)};
    (void)row.name("source");
  }
  for (std::size_t size = 0; size < seen.size(); ++size) {
    if (!seen[size]) throw Refused("drawing_figures.csv: " + std::string(body_size_names[size]) + " is missing");
  }
}

std::vector<NamedPlace> named_places(std::string_view csv) {
  const CsvTable table("drawing_places.csv", csv);
  std::vector<NamedPlace> places;
  for (const CsvRow& row : table.rows()) {
    places.push_back(
        {.views = views_from_text(row.where("views"), row.name("views")),
         .name = std::string(row.name("name")),
         .at = static_cast<DrawingMark>(index_of(drawing_mark_names, row.where("at"), row.name("at"), "a mark")),
         .beyond = mm(row.number("beyond_mm", {-300, 300, "mm"})),
         .across = row.number("across", {-1, 1, ""})});
    (void)row.name("source");
  }
  return places;
}

}  // namespace

std::vector<DrawingView> views_from_text(const std::string& where, std::string_view text) {
  std::vector<DrawingView> views;
  while (!text.empty()) {
    const std::string_view one = text.substr(0, text.find(';'));
    text.remove_prefix(std::min(text.size(), one.size() + 1));
    views.push_back(static_cast<DrawingView>(index_of(drawing_view_names, where, one, "a view")));
  }
  return views;
}

DrawingTables drawing_tables(const DrawingFiles& csv) {
  DrawingTables tables{.back_braces = back_braces(csv.back_braces), .figures = {}, .places = named_places(csv.places)};
  read_figures(tables, csv.figures);
  return tables;
}

}  // namespace tailblock
