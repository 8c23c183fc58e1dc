#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "body/neck_and_back.h"
#include "body/top_design.h"

namespace tailblock {

struct PlateFigures;

/// How a top of one body size is usually built, without its braces.
struct TopBuild {
  TopDesign top;
  NeckAndBack behind;
};

/// A pattern of braces on the table's own top, from which it is stretched to any other.
struct BracingPattern {
  std::string name;
  std::vector<Brace> braces;
};

/// The tops known by name. data/top_outlines.csv, top_builds.csv and top_braces.csv.
struct TopDesignTable {
  std::array<TopBuild, body_size_names.size()> builds;  ///< in the order of BodySize
  std::vector<BracingPattern> patterns;

  /// @throws Refused naming the patterns there are.
  [[nodiscard]] TopDesign design(BodySize size, std::string_view bracing) const;
  /// @throws Refused naming the patterns there are.
  [[nodiscard]] const BracingPattern& pattern(std::string_view bracing) const;
};

/// What was measured of one instrument, where the usual top of its size would have it otherwise.
struct OwnMeasures {
  std::optional<Length> lower_bout_width;
  Length scale_length = mm(645);
  int body_joint_fret = 14;
};

/// The outline stretched across to a lower bout that was measured.
void fit_outline(TopDesign& top, const std::optional<Length>& lower_bout_width);

/// The usual top without braces as this instrument has it: the outline stretched across to its lower bout, saddle,
/// bridge and bridge plate where its neck puts the saddle (what the table gives it beyond the nominal scale is kept).
void fit(TopDesign& top, const NeckAndBack& usual, const OwnMeasures& own);

struct TopDesignFiles {
  std::string_view outlines, builds, braces;
};

/// @throws Refused naming the row and the cell, or what is missing.
[[nodiscard]] TopDesignTable top_design_table(const TopDesignFiles& csv, const PlateFigures& figures);

/// Braces drawn as in data/top_braces.csv, fitted to `top`: they keep their place about the saddle, x grows with the
/// body's length and y with the lower bout, so that straight braces stay straight and cross where they did.
[[nodiscard]] std::vector<Brace> stretched(const std::vector<Brace>& braces, const TopDesign& top);

}  // namespace tailblock
