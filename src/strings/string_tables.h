#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "strings/clearance.h"
#include "strings/tension.h"

namespace tailblock {

/// A set of strings by its gauges; no pitch yet. String 1, the thinnest, first.
struct StringSet {
  std::string name;  ///< `light`
  std::vector<GuitarString> strings;
};

/// What each open string is tuned to. String 1 first.
struct Tuning {
  std::string name;  ///< `standard`
  std::vector<double> pitch_hz;
};

/// How hard a player plays, by name: `soft`, `medium`, `hard`.
struct AttackLevelRow {
  std::string name;
  Attack attack;
};

/// Read data/string_sets.csv, data/tunings.csv and data/attacks.csv.
/// @throws Refused naming the row and column it refuses.
[[nodiscard]] std::vector<StringSet> string_sets(std::string_view csv);
[[nodiscard]] std::vector<Tuning> tunings(std::string_view csv);
[[nodiscard]] std::vector<AttackLevelRow> attack_levels(std::string_view csv);

/// One row of a table by its name.
/// @throws Refused naming the names there are.
[[nodiscard]] const StringSet& string_set_named(const std::vector<StringSet>& sets, std::string_view name);
[[nodiscard]] const Tuning& tuning_named(const std::vector<Tuning>& tunings, std::string_view name);
[[nodiscard]] const Attack& attack_named(const std::vector<AttackLevelRow>& levels, std::string_view name);

/// A player's attack made harder or softer: treble follows bass as from one level to the next, and in proportion beyond
/// the softest and the hardest. Where and with what the string is plucked stays.
[[nodiscard]] Attack attack_of(const std::vector<AttackLevelRow>& levels, const Attack& own, Length amplitude_bass);

/// The hardest such a player plays: as much harder as `hard` is than `medium`.
[[nodiscard]] Attack hardest_of(const std::vector<AttackLevelRow>& levels, const Attack& own);

/// The strings of a set, tuned.
/// @throws Refused when the tuning has another number of strings.
[[nodiscard]] std::vector<GuitarString> tuned(const StringSet& set, const Tuning& tuning);

}  // namespace tailblock
