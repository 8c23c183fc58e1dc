#include "strings/tension.h"

#include <array>
#include <cmath>
#include <numbers>

namespace tailblock {
namespace {

using std::numbers::pi;
constexpr std::array<std::string_view, 2> core_shapes{"round", "hexagonal"};

/// Area of a circle, or of a hexagon measured across its corners.
double area_m2(CoreShape shape, double across) {
  return shape == CoreShape::round ? pi * across * across / 4 : 3 * std::sqrt(3.0) / 8 * across * across;
}

/// The solid part that carries pull and bending: the core, or all of a plain string.
std::optional<Length> solid_diameter(const GuitarString& string) {
  return string.core_diameter ? string.core_diameter : string.diameter;
}

CoreShape solid_shape(const GuitarString& string) {
  return string.core_diameter ? string.core_shape : CoreShape::round;
}

double wrap_kg_per_metre(const GuitarString& string) {
  const double d = string.diameter->in_base();
  const double c = string.core_diameter->in_base();
  const double w = (d - c) / 2;
  const double turn = pi * (c + w);
  const double fill = pi / 4 * std::sqrt(1 + w * w / (turn * turn));
  return string.wrap_kg_per_m3 * fill * pi * w * (c + w);
}

StringTension string_tension(int number, const GuitarString& string, Length speaking_length) {
  StringTension result;
  result.string = number;
  result.pitch_hz = string.pitch_hz;
  result.kg_per_metre = mass_per_metre(string);
  result.pull =
      tension({.speaking_length = speaking_length, .kg_per_metre = result.kg_per_metre, .pitch_hz = string.pitch_hz});
  result.pull_lbf = in_pounds_force(result.pull);
  if (const auto solid = solid_diameter(string)) {
    const double T = in_newtons(result.pull);
    const double L = speaking_length.in_base();
    result.inharmonicity = pi * pi * bending_stiffness_n_m2(string) / (T * L * L);
    result.core_stress_mpa = T / area_m2(solid_shape(string), solid->in_base()) / 1e6;
  }
  return result;
}

}  // namespace

void describe(FieldVisitor& visit, GuitarString& string) {
  visit.number({"pitch_hz", "pitch of the open string"}, string.pitch_hz, {20, 1500, "Hz"});
  maybe(visit, {"diameter_mm", "over everything; may be left out when the string was weighed"}, string.diameter,
        [&](const Field& field, Length& value) {
          visit.length(field, value, {0.1, 3, "mm"});
        });
  maybe(visit, {"core_diameter_mm", "of a wrapped string; across the corners when hexagonal"}, string.core_diameter,
        [&](const Field& field, Length& value) {
          visit.length(field, value, {0.1, 2, "mm"});
        });
  choice(visit, {"core_shape", "of a wrapped string", Need::has_default}, string.core_shape, core_shapes);
  visit.number({"wrap_kg_per_m3", "density of the wrap wire", Need::has_default}, string.wrap_kg_per_m3,
               {1000, 20000, "kg/m3"});
  maybe(visit, {"weighed_kg_per_metre", "mass per length as weighed; replaces the geometry"},
        string.weighed_kg_per_metre, [&](const Field& field, double& value) {
          visit.number(field, value, {1e-5, 0.1, "kg/m"});
        });
}

void describe(FieldVisitor& visit, TensionRequest& request) {
  visit.length({"scale_length_mm", "speaking length of the open strings", Need::has_default}, request.scale_length,
               {300, 1000, "mm"});
  list(visit, {"strings", "string 1, the thinnest, first"}, request.strings, {1, 12});
}

void describe(FieldVisitor& visit, StringTension& string) {
  visit.integer({"string", "1 is the thinnest"}, string.string, {1, 12, ""});
  visit.number({"pitch_hz", "pitch of the open string"}, string.pitch_hz, {20, 1500, "Hz"});
  visit.number({"kg_per_metre", "mass per length"}, string.kg_per_metre, {0, 1, "kg/m"});
  force(visit, {"pull_n", "pull of this string"}, string.pull, {0, 1e5, "N"});
  visit.number({"pull_lbf", "the same in pounds"}, string.pull_lbf, {0, 1e5, "lbf"});
  maybe(visit, {"inharmonicity", "B of f_n = n f sqrt(1 + B n^2), from the core alone"}, string.inharmonicity,
        [&](const Field& field, double& value) {
          visit.number(field, value, {0, 1e3, ""});
        });
  maybe(visit, {"core_stress_mpa", "pull over the area of the core"}, string.core_stress_mpa,
        [&](const Field& field, double& value) {
          visit.number(field, value, {0, 1e7, "MPa"});
        });
}

void describe(FieldVisitor& visit, TensionResult& result) {
  list(visit, {"strings", "string 1 first"}, result.strings, {1, 12});
  force(visit, {"total_n", "pull of all strings"}, result.total, {0, 1e6, "N"});
  visit.number({"total_lbf", "the same in pounds"}, result.total_lbf, {0, 1e6, "lbf"});
}

double mass_per_metre(const GuitarString& string) {
  if (string.weighed_kg_per_metre) return *string.weighed_kg_per_metre;
  if (!string.diameter) throw Refused("diameter_mm: is needed where the string was not weighed");
  if (!string.core_diameter) return steel_kg_per_m3 * area_m2(CoreShape::round, string.diameter->in_base());
  if (!(*string.core_diameter < *string.diameter)) {
    throw Refused("core_diameter_mm: " + plain_number(in_mm(*string.core_diameter)) +
                  " mm is not thinner than the string, " + plain_number(in_mm(*string.diameter)) + " mm");
  }
  return steel_kg_per_m3 * area_m2(string.core_shape, string.core_diameter->in_base()) + wrap_kg_per_metre(string);
}

double bending_stiffness_n_m2(const GuitarString& string) {
  const auto solid = solid_diameter(string);
  if (!solid) throw Refused("diameter_mm: is needed for the string's stiffness");
  const double fourth = std::pow(solid->in_base(), 4);
  const double I = solid_shape(string) == CoreShape::round ? pi * fourth / 64 : 5 * std::sqrt(3.0) / 256 * fourth;
  return steel_modulus_pa * I;
}

double stretching_stiffness_n(const GuitarString& string) {
  const auto solid = solid_diameter(string);
  if (!solid) throw Refused("diameter_mm: is needed for the string's stiffness");
  return steel_modulus_pa * area_m2(solid_shape(string), solid->in_base());
}

Force tension(const StringAtPitch& string) {
  const double L = require_within("speaking_length_mm", in_mm(string.speaking_length), {300, 1000, "mm"}) / 1000;
  const double m = require_within("kg_per_metre", string.kg_per_metre, {1e-5, 0.1, "kg/m"});
  const double f = require_within("pitch_hz", string.pitch_hz, {20, 1500, "Hz"});
  return newtons(m * std::pow(2 * L * f, 2));
}

double equal_tempered_pitch_hz(std::string_view field, std::string_view note) {
  constexpr std::array<int, 7> semitone_of{9, 11, 0, 2, 4, 5, 7};  // A B C D E F G
  const bool sharp = note.size() == 3 && note[1] == '#';
  const bool flat = note.size() == 3 && note[1] == 'b';
  const bool shaped = (note.size() == 2 || sharp || flat) && 'A' <= note[0] && note[0] <= 'G' && '0' <= note.back() &&
                      note.back() <= '7';
  if (!shaped) throw Refused(std::string(field) + ": \"" + std::string(note) + "\" is not a note such as E2 or F#3");
  const int octave = note.back() - '0';
  const int number =
      12 * (octave + 1) + semitone_of[static_cast<std::size_t>(note[0] - 'A')] + (sharp ? 1 : 0) - (flat ? 1 : 0);
  return 440 * std::exp2((number - 69) / 12.0);
}

TensionResult tension(const TensionRequest& request) {
  require_valid(request);
  TensionResult result;
  for (const GuitarString& string : request.strings) {
    const int number = static_cast<int>(result.strings.size()) + 1;
    result.strings.push_back(string_tension(number, string, request.scale_length));
    result.total += result.strings.back().pull;
  }
  result.total_lbf = in_pounds_force(result.total);
  return result;
}

}  // namespace tailblock
