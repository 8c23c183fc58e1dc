#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strings/compensation.h"
#include "strings/crest_fit.h"

namespace tailblock {

/// What was read with a tuner: fret 12 against the octave of the open string; positive is sharp.
struct OctaveError {
  int string = 1;
  double cents = 0;
  double sd_cents = 1;
};
void describe(FieldVisitor&, OctaveError&);

struct IntonationRequest {
  NeckLine neck;
  StringAction action;
  std::vector<GuitarString> strings;  ///< string 1, the thinnest, first; as many as neck.string_count
  /// Crest of each string behind the scale length, string 1 first; empty: straight between the neck's two setbacks.
  std::vector<double> setbacks_mm;
  Length setback_sd = mm(0.2);  ///< one standard deviation of where a crest was read
  std::vector<OctaveError> octave_errors;
  std::optional<SaddleTop> saddle;
  Length dead_length{};  ///< string beyond nut and saddle that slides freely over both
  Length press_depth{};  ///< how far a finger pushes the string down behind the fret
  int last_fret = 15;    ///< frets 1 to this are weighed where nut and saddle are both free
};
void describe(FieldVisitor&, IntonationRequest&);

/// What the intonation question takes for granted: data/intonation_limits.csv.
struct IntonationLimits {
  double firm_ends_least, firm_ends_most;  ///< between which the ends of a string that was not read may lie
  double spreads;                          ///< standard deviations either way that a reading is given
  double crest_land_least;                 ///< mm of saddle kept before and behind a crest
  double slot_width_most;                  ///< mm; a slot is not widened beyond
  double in_tune_cents;                    ///< nobody asks for better
};
/// @throws Refused naming the row: a figure missing, unknown, given twice, out of range or without a source.
[[nodiscard]] IntonationLimits intonation_limits(std::string_view csv);

/// One string as it stands, and where its crest is wanted.
struct StringIntonation {
  int string = 1;
  Length setback;                            ///< of the crest now
  Length setback_a_firm_end;                 ///< sqrt(E I/T): what each clamped end asks of the crest
  std::optional<double> octave_error_cents;  ///< as read
  double firm_ends_low = 0, firm_ends = 1, firm_ends_high = 2;
  bool believable = true;  ///< no octave error was read, or some end of a string may well be held so
  /// Cents sharp at fret 1, 2 ... as it stands: by stretch alone, which is certain, and with the ends as little and as
  /// firmly held as they may be.
  std::vector<double> stretch_cents, low_cents, high_cents;
  /// Where the crest is wanted for the octave: for the stretch alone, and within the range that is left.
  Length wanted_for_stretch, wanted_low, wanted, wanted_high;
  /// The same cents with the crest where it is wanted.
  std::vector<double> after_low_cents, after_cents, after_high_cents;
  /// Where nut and saddle may both be moved.
  Length both_setback, both_nut_shift;
  double both_rms_cents = 0, both_worst_cents = 0;
  double cents_per_mm = 0;                ///< at fret 12, for a crest set back by 1 mm
  Force finger_force_1, finger_force_12;  ///< least that lays the open string on the crown
};
void describe(FieldVisitor&, StringIntonation&);

struct IntonationResult {
  std::vector<StringIntonation> strings;
  std::optional<SlotFit> slot;  ///< where the saddle's top was given
  std::string verdict;          ///< one sentence
  std::vector<std::string> cautions;
};
void describe(FieldVisitor&, IntonationResult&);

/// How sharp every stopped note is, where the crests are wanted, and whether they fit on this saddle.
///
/// Stretch follows from geometry and the core's stiffness and is certain. What the bending stiffness adds depends on
/// how firmly nut, fret and saddle hold the string, which no geometry tells: between 0 and 2 clamped ends, 0 to 2
/// sqrt(E I/T) of setback. One octave error read on a string settles it for that string.
///
/// Valid for scales of 500..700 mm and strings whose diameter is known. Left out: what the hand adds (figures are a
/// floor), yielding top and neck, strings that are not uniform, the stretch of the scale itself.
/// Source: derived here (docs/models/intonation.md).
/// @throws Refused naming the field outside the valid range.
[[nodiscard]] IntonationResult intonation(const IntonationRequest& request, const IntonationLimits& limits);

}  // namespace tailblock
