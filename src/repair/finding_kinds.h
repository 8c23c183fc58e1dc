#pragma once

#include <array>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "body/drawing_tables.h"
#include "quantity/fields.h"

namespace tailblock {

/// How a finding lies on the drawing.
enum class FindingShape { point, line, area };
inline constexpr std::array<std::string_view, 3> finding_shape_names{"point", "line", "area"};

/// What a survey can find, a row of data/finding_kinds.csv.
struct FindingKind {
  std::string name;   ///< as records name it: brace_loose
  std::string words;  ///< as the bench says it
  FindingShape shape = FindingShape::point;
  std::vector<std::string> measures;  ///< worth reading at it: ids in data/finding_measures.csv, the deciding one first
  std::vector<DrawingView> places;    ///< the views it can be drawn on
  std::string source;
  std::string note;
};
void describe(FieldVisitor&, FindingKind&);

/// @param is_measure whether something can be read at a finding; without it any name passes.
/// @throws Refused naming the cell, or a name that comes twice.
[[nodiscard]] std::vector<FindingKind> finding_kinds(std::string_view csv,
                                                     const std::function<bool(std::string_view)>& is_measure = nullptr);

/// The row with this name; null when there is none.
[[nodiscard]] const FindingKind* finding_kind(const std::vector<FindingKind>& kinds, std::string_view name);

}  // namespace tailblock
