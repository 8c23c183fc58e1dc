#include <array>

#include "repair/cleats.h"

namespace tailblock {
namespace {

constexpr auto optional = Need::has_default;
constexpr Range places{-400, 800, "mm"};
constexpr Range sizes{0, 800, "mm"};
constexpr std::array<std::string_view, 2> plate_names{"top", "back"};

}  // namespace

void describe(FieldVisitor& visit, HoldingStrip& strip) {
  visit.text({"name", "what it is"}, strip.name, 60);
  visit.length({"from_x_mm", "from the neck edge"}, strip.from_x, places);
  visit.length({"from_y_mm", "from the centre line, treble side positive"}, strip.from_y, places);
  visit.length({"to_x_mm", "its other end"}, strip.to_x, places);
  visit.length({"to_y_mm", "its other end"}, strip.to_y, places);
  visit.length({"width_mm", "across it", optional}, strip.width, {1, 100, "mm"});
}

void describe(FieldVisitor& visit, CleatsRequest& request) {
  choice(visit, {"plate", "which plate is cracked", optional}, request.plate, plate_names);
  object(visit, {"top", "outline, bracing and soundhole", optional}, request.top);
  visit.length({"from_x_mm", "first end of the crack, from the neck edge"}, request.from_x, places);
  visit.length({"from_y_mm", "from the centre line, treble side positive"}, request.from_y, places);
  visit.length({"to_x_mm", "its other end"}, request.to_x, places);
  visit.length({"to_y_mm", "its other end"}, request.to_y, places);
  maybe_length(visit, {"plate_thickness_mm", "beside the crack; absent: as built"}, request.plate_thickness,
               {0.8, 8, "mm"});
  maybe_length(visit, {"plate_thickness_sd_mm", "one standard deviation of that"}, request.plate_thickness_sd,
               {0, 1, "mm"});
  list(visit, {"braces", "beside those of the top; all of them for a back", optional}, request.braces, {0, 40});
  visit.flag({"glued_before", "then a short crack gets cleats too", optional}, request.glued_before);
  visit.text({"wood", "of the cleats", optional}, request.wood, 60);
}

void describe(FieldVisitor& visit, CleatShown& cleat) {
  visit.length({"along_mm", "its middle, from the crack's first end"}, cleat.along, sizes);
  visit.length({"x_mm", "from the neck edge"}, cleat.x, places);
  visit.length({"y_mm", "from the centre line, treble side positive"}, cleat.y, places);
  visit.length({"reach_mm", "from the edge of the soundhole"}, cleat.reach, sizes);
  visit.flag({"within_reach", "of an arm through the soundhole"}, cleat.within_reach);
}

void describe(FieldVisitor& visit, CleatsResult& result) {
  visit.flag({"called_for", "long enough, or glued before"}, result.called_for);
  visit.text({"words", "one sentence"}, result.words, 300);
  visit.length({"crack_length_mm", "end to end"}, result.crack_length, sizes);
  list(visit, {"cleats", "from the crack's first end"}, result.cleats, {0, 60});
  visit.length({"along_crack_mm", "size of each along the crack"}, result.along_crack, sizes);
  visit.length({"across_crack_mm", "size of each across it, along its grain"}, result.across_crack, sizes);
  visit.length({"thickness_mm", "of each, before the edges are feathered"}, result.thickness, sizes);
  angle(visit, {"grain_deg", "grain of the cleats, from the centre line"}, result.grain, {-360, 360, "degrees"});
  visit.length({"longest_without_hold_mm", "of crack, between cleats, braces and its ends"},
               result.longest_without_hold, sizes);
  visit.length({"strip_length_mm", "to cut them from, saw cuts included; grain along it"}, result.strip_length,
               {0, 5000, "mm"});
  visit.length({"strip_width_mm", "of that strip"}, result.strip_width, sizes);
  visit.texts({"held_by", "what crosses the crack"}, result.held_by, 60, {0, 60});
  visit.texts({"cautions", "read where the step is read"}, result.cautions, 300, {0, 20});
  object(visit, {"as_damage", "the crack with its cleats, for the model plate"}, result.as_damage);
}

}  // namespace tailblock
