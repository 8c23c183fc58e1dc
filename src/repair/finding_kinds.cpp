#include "repair/finding_kinds.h"

#include <algorithm>

#include "repair/table_cells.h"

namespace tailblock {
namespace {

constexpr std::size_t words_bytes = 1000;
constexpr Count many{0, 1000};

FindingShape shape_in(const CsvRow& row) {
  const std::string_view name = row.name("shape");
  const auto found = std::ranges::find(finding_shape_names, name);
  if (found == finding_shape_names.end()) {
    throw Refused(row.where("shape") + ": \"" + std::string(name) + "\" is not point, line or area");
  }
  return static_cast<FindingShape>(found - finding_shape_names.begin());
}

}  // namespace

void describe(FieldVisitor& visit, FindingKind& kind) {
  visit.text({"name", "as records name it"}, kind.name, words_bytes);
  visit.text({"words", "as the bench says it"}, kind.words, words_bytes);
  choice(visit, {"shape", "how it is drawn"}, kind.shape, finding_shape_names);
  visit.texts({"measures", "worth reading at it, the deciding one first"}, kind.measures, words_bytes, many);
  std::vector<std::string> places;
  for (const DrawingView view : kind.places) places.emplace_back(drawing_view_names[static_cast<std::size_t>(view)]);
  visit.texts({"places", "the views it can be drawn on"}, places, words_bytes, many);
  visit.text({"note", "what to know of it"}, kind.note, words_bytes);
}

std::vector<FindingKind> finding_kinds(std::string_view csv, const std::function<bool(std::string_view)>& is_measure) {
  const CsvTable table("finding_kinds.csv", csv);
  std::vector<FindingKind> kinds;
  for (const CsvRow& row : table.rows()) {
    if (finding_kind(kinds, row.name("name")) != nullptr) throw Refused(row.where("name") + ": it comes twice");
    kinds.push_back({.name = std::string(row.name("name")),
                     .words = std::string(row.name("words")),
                     .shape = shape_in(row),
                     .measures = listed(row.text("measures")),
                     .places = views_from_text(row.where("places"), row.name("places")),
                     .source = std::string(row.name("source")),
                     .note = std::string(row.text("note"))});
    for (const std::string& measure : kinds.back().measures) {
      if (is_measure && !is_measure(measure)) {
        throw Refused(row.where("measures") + ": \"" + measure + "\" is not in finding_measures.csv");
      }
    }
  }
  return kinds;
}

const FindingKind* finding_kind(const std::vector<FindingKind>& kinds, std::string_view name) {
  const auto found = std::ranges::find(kinds, name, &FindingKind::name);
  return found == kinds.end() ? nullptr : &*found;
}

}  // namespace tailblock
