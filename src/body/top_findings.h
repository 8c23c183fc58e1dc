#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace tailblock {

/// What the plate model makes of something found on a top.
enum class TakenAs { crack, loose_brace, missing_brace, lifted_bridge, worn_plate, thin_place, cleat, not_modelled };
inline constexpr std::array<std::string_view, 8> taken_as_names{
    "crack", "loose_brace", "missing_brace", "lifted_bridge", "worn_plate", "thin_place", "cleat", "not_modelled"};

/// A row of data/top_findings.csv.
struct TopFindingKind {
  std::string kind;  ///< a name in data/finding_kinds.csv
  TakenAs taken_as = TakenAs::not_modelled;
  std::vector<std::string> mended_by;   ///< operations, any of which takes it away once it is finished
  std::vector<std::string> cleated_by;  ///< operations that leave cleats across it
  std::string because;                  ///< why it counts for nothing, where it does
};

/// @throws Refused naming the cell, or a kind that comes twice.
[[nodiscard]] std::vector<TopFindingKind> top_findings(std::string_view csv);

/// The row of this kind; null when what is found so does nothing to the structure.
[[nodiscard]] const TopFindingKind* top_finding(const std::vector<TopFindingKind>& kinds, std::string_view kind);

}  // namespace tailblock
