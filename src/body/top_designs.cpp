#include "body/top_designs.h"

#include <algorithm>
#include <cmath>

#include "body/plate_figures.h"
#include "quantity/csv_table.h"

namespace tailblock {
namespace {

constexpr Range places{-600, 1200, "mm"};

// The top on which data/top_braces.csv is drawn.
constexpr double drawn_length = 500, drawn_width = 395, drawn_saddle = 290;

std::size_t size_in(const CsvRow& row) {
  const std::string_view name = row.name("body_size");
  const auto found = std::ranges::find(body_size_names, name);
  if (found == body_size_names.end())
    throw Refused(row.where("body_size") + ": \"" + std::string(name) + "\" is not a body size");
  return static_cast<std::size_t>(found - body_size_names.begin());
}

/// Heights along a brace, written `0:3 0.1:14 1:3`.
std::vector<BraceHeight> heights_in(const CsvRow& row) {
  std::vector<BraceHeight> heights;
  std::string_view text = row.name("heights_mm");
  while (!text.empty()) {
    const std::string_view one = text.substr(0, text.find(' '));
    text.remove_prefix(std::min(text.size(), one.size() + 1));
    const auto colon = std::min(one.find(':'), one.size());
    const double share = number_from_text(one.substr(0, colon)).value_or(-1);
    const double height = number_from_text(one.substr(std::min(colon + 1, one.size()))).value_or(-1);
    const bool rises = 0 <= share && share <= 1 && (heights.empty() || heights.back().share < share);
    if (!rises || !(0.5 <= height && height <= 30)) {
      throw Refused(row.where("heights_mm") + ": \"" + std::string(one) +
                    "\" is not a rising share:height such as 0.5:14");
    }
    heights.push_back({share, mm(height)});
  }
  return heights;
}

void read_outlines(TopDesignTable& designs, std::string_view csv) {
  const CsvTable table("top_outlines.csv", csv);
  for (const CsvRow& row : table.rows()) {
    auto& outline = designs.builds[size_in(row)].top.outline;
    const OutlinePoint point{mm(row.number("x_mm", {0, 700, "mm"})), mm(row.number("half_width_mm", {0, 300, "mm"}))};
    if (!outline.empty() && !(outline.back().x < point.x))
      throw Refused(row.where("x_mm") + ": points run from the neck edge to the tail");
    outline.push_back(point);
    (void)row.name("source");
  }
  for (std::size_t size = 0; size < body_size_names.size(); ++size) {
    const auto& outline = designs.builds[size].top.outline;
    if (outline.size() < 5 || outline.front().half_width.in_base() != 0 || outline.back().half_width.in_base() != 0) {
      throw Refused("top_outlines.csv: " + std::string(body_size_names[size]) +
                    " needs 5 points or more, the first and last on the centre line");
    }
  }
}

void read_builds(TopDesignTable& designs, std::string_view csv, const PlateFigures& figures) {
  const CsvTable table("top_builds.csv", csv);
  std::array<bool, body_size_names.size()> seen{};
  for (const CsvRow& row : table.rows()) {
    const std::size_t size = size_in(row);
    if (seen[size]) throw Refused(row.where("body_size") + ": it comes twice");
    seen[size] = true;
    const auto length = [&](std::string_view column, double low, double high) {
      return mm(row.number(column, {low, high, "mm"}));
    };
    TopBuild& build = designs.builds[size];
    TopDesign& top = build.top;
    top.thickness = length("top_thickness_mm", 1, 6);
    top.arch_radius = length("arch_radius_mm", 1500, 50000);
    top.species = row.name("top_species");
    top.soundhole = {.centre_x = length("hole_x_mm", 20, 500),
                     .radius = length("hole_radius_mm", 10, 90),
                     .ring_width = length("ring_width_mm", 0, 60),
                     .ring_thickness = length("ring_thickness_mm", 0, 6),
                     .ring_species = top.species};
    const Length saddle = length("saddle_x_mm", 20, 600);
    constexpr double saddle_from_front = 10, saddle_length = 72;  // mm; common practice, no source
    top.bridge = {.body = {.front_x = saddle - mm(saddle_from_front),
                           .depth = length("bridge_depth_mm", 10, 120),
                           .span = length("bridge_span_mm", 40, 260),
                           .thickness = length("bridge_thickness_mm", 0, 15),
                           .species = std::string(row.name("bridge_species"))},
                  .saddle_x = saddle,
                  .saddle_length = mm(saddle_length)};
    constexpr double plate_before_bridge = 6;  // mm; common practice, no source
    top.bridge_plate = {.front_x = top.bridge.body.front_x - mm(plate_before_bridge),
                        .depth = length("plate_depth_mm", 10, 120),
                        .span = length("plate_span_mm", 40, 260),
                        .thickness = length("plate_thickness_mm", 0, 15),
                        .species = std::string(row.name("plate_species"))};
    top.rim = figures.rim;
    build.behind = {.scale_length = length("scale_length_mm", 300, 1000),
                    .body_joint_fret = row.whole_number("body_joint_fret", {9, 18, ""}),
                    .block_depth = length("block_depth_mm", 40, 200),
                    .back_arch_radius = length("back_arch_radius_mm", 1500, 50000),
                    .back_species = std::string(row.name("back_species"))};
    (void)row.name("source");
  }
  for (std::size_t size = 0; size < seen.size(); ++size) {
    if (!seen[size]) throw Refused("top_builds.csv: " + std::string(body_size_names[size]) + " is missing");
  }
}

void read_braces(TopDesignTable& designs, std::string_view csv) {
  const CsvTable table("top_braces.csv", csv);
  for (const CsvRow& row : table.rows()) {
    const std::string name(row.name("bracing"));
    auto pattern = std::ranges::find(designs.patterns, name, &BracingPattern::name);
    if (pattern == designs.patterns.end()) pattern = designs.patterns.insert(pattern, {.name = name, .braces = {}});
    const auto place = [&](std::string_view column) { return mm(row.number(column, places)); };
    Brace brace{.name = std::string(row.name("brace")),
                .from_x = place("from_x_mm"),
                .from_y = place("from_y_mm"),
                .to_x = place("to_x_mm"),
                .to_y = place("to_y_mm"),
                .width = mm(row.number("width_mm", {2, 40, "mm"})),
                .heights = heights_in(row),
                .species = std::string(row.name("species")),
                .glued = {}};
    (void)row.name("source");
    const std::string_view mirrored = row.name("mirrored");
    if (mirrored != "yes" && mirrored != "no")
      throw Refused(row.where("mirrored") + ": \"" + std::string(mirrored) + "\" is not yes or no");
    if (mirrored == "no") {
      pattern->braces.push_back(std::move(brace));
      continue;
    }
    Brace twin = brace;
    twin.from_y = -brace.from_y;
    twin.to_y = -brace.to_y;
    brace.name += brace.from_y.in_base() > 0 ? ", treble" : ", bass";
    twin.name += brace.from_y.in_base() > 0 ? ", bass" : ", treble";
    pattern->braces.push_back(std::move(brace));
    pattern->braces.push_back(std::move(twin));
  }
}

}  // namespace

std::vector<Brace> stretched(const std::vector<Brace>& braces, const TopDesign& top) {
  const double length = in_mm(top.outline.back().x), saddle = in_mm(top.bridge.saddle_x);
  Length widest;
  for (const OutlinePoint& p : top.outline) widest = std::max(widest, p.half_width);
  const auto x = [&](Length drawn) { return mm(saddle + (in_mm(drawn) - drawn_saddle) * length / drawn_length); };
  const auto y = [&](Length drawn) { return drawn * (2 * in_mm(widest) / drawn_width); };
  std::vector<Brace> fitted = braces;
  for (Brace& brace : fitted) {
    brace.from_x = x(brace.from_x), brace.to_x = x(brace.to_x);
    brace.from_y = y(brace.from_y), brace.to_y = y(brace.to_y);
  }
  return fitted;
}

const BracingPattern& TopDesignTable::pattern(std::string_view bracing) const {
  const auto found = std::ranges::find(patterns, bracing, &BracingPattern::name);
  if (found != patterns.end()) return *found;
  std::string known;
  for (const BracingPattern& p : patterns) known += (known.empty() ? "" : ", ") + p.name;
  throw Refused("bracing: \"" + std::string(bracing) + "\" is not one of: " + known);
}

TopDesign TopDesignTable::design(BodySize size, std::string_view bracing) const {
  TopDesign top = builds[static_cast<std::size_t>(size)].top;
  top.braces = stretched(pattern(bracing).braces, top);
  return top;
}

void fit_outline(TopDesign& top, const std::optional<Length>& lower_bout_width) {
  if (!lower_bout_width) return;
  Length widest;
  for (const OutlinePoint& p : top.outline) widest = std::max(widest, p.half_width);
  const double stretch = in_mm(*lower_bout_width) / (2 * in_mm(widest));
  for (OutlinePoint& p : top.outline) p.half_width = p.half_width * stretch;
}

void fit(TopDesign& top, const NeckAndBack& usual, const OwnMeasures& own) {
  fit_outline(top, own.lower_bout_width);
  const auto from_joint = [](Length scale, int joint) { return scale * std::pow(2.0, -joint / 12.0); };
  const Length moved =
      from_joint(own.scale_length, own.body_joint_fret) - from_joint(usual.scale_length, usual.body_joint_fret);
  for (Length* place : {&top.bridge.saddle_x, &top.bridge.body.front_x, &top.bridge_plate.front_x}) {
    *place = *place + moved;
  }
}

TopDesignTable top_design_table(const TopDesignFiles& csv, const PlateFigures& figures) {
  TopDesignTable designs;
  read_outlines(designs, csv.outlines);
  read_builds(designs, csv.builds, figures);
  read_braces(designs, csv.braces);
  return designs;
}

}  // namespace tailblock
