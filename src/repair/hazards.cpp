#include "repair/hazards.h"

#include "repair/table_cells.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 3> standings{"read", "read second-hand", "from memory"};
constexpr std::array<std::string_view, 7> figure_words{"mean of a working day", "15 minutes",       "ceiling",
                                                       "danger to life",        "flash point from", "flash point to",
                                                       "lower explosive limit"};

void add_limits(std::vector<Hazard>& known, std::string_view csv) {
  const CsvTable table("exposure_limits.csv", csv);
  for (const CsvRow& row : table.rows()) {
    const std::string id = cell_name(row, "hazard");
    const auto hazard =
        std::find_if(known.begin(), known.end(), [&](const Hazard& candidate) { return candidate.id == id; });
    if (hazard == known.end()) throw Refused(row.where("hazard") + ": \"" + id + "\" is not in hazards.csv");
    const int figure = cell_choice(row, "figure", {limit_figure_names.begin(), limit_figure_names.end()});
    (void)cell_choice(row, "standing", {standings.begin(), standings.end()});
    hazard->limits.push_back({.hazard = id,
                              .authority = cell_text(row, "authority"),
                              .figure = static_cast<LimitFigure>(figure),
                              .value = row.number("value", {-100, 1e6, ""}),
                              .unit = cell_name(row, "unit"),
                              .standing = cell_name(row, "standing"),
                              .source = cell_name(row, "source")});
  }
}

std::string limit_words(const ExposureLimit& limit) {
  std::string words = limit.authority;
  if (!words.empty()) words += " ";
  words += plain_number(limit.value) + " " + limit.unit + " (";
  words += figure_words[static_cast<std::size_t>(limit.figure)];
  if (limit.standing != "read") words += ", " + limit.standing;
  return words + ")";
}

}  // namespace

void describe(FieldVisitor& visit, ExposureLimit& limit) {
  visit.text({"hazard", "id in data/hazards.csv"}, limit.hazard, 60);
  visit.text({"authority", "who published it; empty for a property of the substance"}, limit.authority, 60);
  choice(visit, {"figure", "what it is"}, limit.figure, limit_figure_names);
  visit.number({"value", "in its unit"}, limit.value, {-100, 1e6, ""});
  visit.text({"unit", "of the value"}, limit.unit, 20);
  visit.text({"standing", "read, read second-hand or from memory"}, limit.standing, 40);
  visit.text({"source", "where it is published"}, limit.source, 300);
}

std::string Hazard::caution() const {
  std::string words = name + ": " + harm + ". " + controls + ".";
  std::string figures;
  for (const ExposureLimit& limit : limits) {
    const bool said = limit.figure == LimitFigure::twa || limit.figure == LimitFigure::ceiling ||
                      limit.figure == LimitFigure::flash_low;
    if (said) figures += (figures.empty() ? " Limits: " : "; ") + limit_words(limit);
  }
  if (!figures.empty()) words += figures + ".";
  if (!waste.empty()) words += " Waste: " + waste + ".";
  return words;
}

std::vector<Hazard> hazards(const HazardTexts& csv) {
  auto known = rows_with_id<Hazard>("hazards.csv", csv.hazards, [](const CsvRow& row) {
    return Hazard{.id = cell_name(row, "id"),
                  .name = cell_name(row, "name"),
                  .harm = cell_name(row, "harm"),
                  .controls = cell_name(row, "controls"),
                  .waste = cell_text(row, "waste"),
                  .never = cell_yes(row, "never"),
                  .source = cell_name(row, "source"),
                  .limits = {}};
  });
  add_limits(known, csv.exposure_limits);
  return known;
}

std::vector<ListedMaterial> listed_materials(std::string_view csv) {
  return rows_with_id<ListedMaterial>("listed_materials.csv", csv, [](const CsvRow& row) {
    return ListedMaterial{.id = cell_name(row, "id"),
                          .name = cell_name(row, "name"),
                          .rule = cell_name(row, "rule"),
                          .ask = cell_name(row, "ask"),
                          .authority = cell_name(row, "authority"),
                          .source = cell_name(row, "source")};
  });
}

}  // namespace tailblock
