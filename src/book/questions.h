#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/records.h"
#include "models/data_tables.h"
#include "models/envelope_memo.h"
#include "setup/neck_angle.h"
#include "setup/saddle.h"
#include "strings/rod_figure.h"
#include "strings/clearance.h"
#include "strings/intonation.h"
#include "strings/least_cure.h"
#include "strings/note_swing.h"

namespace tailblock {

/// The questions that the pages ask about an instrument in the book. Each builds a model's request from the records and
/// says what it had to assume; the numbers come from the models.

/// The newest reading of a measure that was not superseded, up to a day; as left counts after as found.
[[nodiscard]] std::optional<double> latest_reading(const InstrumentStory& story, std::string_view measure, Date until);

/// The same with what it was read with; null when there is none. Points into the story.
[[nodiscard]] const Reading* latest_kept(const InstrumentStory& story, std::string_view measure, Date until);

/// The standing reading of a measure at one visit, before or after its work.
[[nodiscard]] std::optional<Reading> reading_at(const VisitStory& visit, std::string_view measure, ReadingState state);

/// Neck, strings and player as far as the book knows them.
struct KnownSetup {
  ClearanceRequest clearance;
  std::vector<std::string> assumed;  ///< what no record says, in plain words
};
[[nodiscard]] KnownSetup known_setup(const InstrumentStory& story, const DataTables& tables, Date today);

/// The same, with nothing said of how the crowns stand: for a question that reads them itself.
[[nodiscard]] KnownSetup setup_without_crowns(const InstrumentStory& story, const DataTables& tables, Date today);

/// How far fret 12 moves when the rod of this neck is turned, from its own turns where they were read before and after.
/// Absent when it has no rod that can be turned.
[[nodiscard]] std::optional<RodFigure> known_rod(const InstrumentStory& story, const NeckLine& neck,
                                                 const DataTables& tables, Date today);

/// What the strings need under them and what the player puts up with. A player who wants the strings lower than they
/// play clean is given the least clean action, and one who then has no room above it a margin; both are said.
struct PlayerNeeds {
  ActionLimits limits;
  Length wanted_bass, wanted_treble;
  LeastCleanAction least_clean;
  /// Crowns that stand too high to choose a saddle by, and what they cost; the limits are then those of level frets.
  std::string frets_first;
  std::vector<std::string> assumed;
};
[[nodiscard]] PlayerNeeds player_needs(const InstrumentStory& story, const KnownSetup& setup, const DataTables& tables,
                                       EnvelopeMemo& memo);

/// One instrument's season: what was learnt, and the year ahead.
struct SeasonAnswer {
  Date today;
  ResponseRequest request;
  ResponseResult response;
  YearResult year;
  ActionLimits limits;
  LeastCleanAction least_clean;
  std::string frets_first;  ///< as in PlayerNeeds
  std::vector<std::string> assumed;
};
void describe(FieldVisitor&, SeasonAnswer&);

/// Which days to answer for.
struct Span {
  Date today;
  Date first;
  int count = 365;
};
[[nodiscard]] SeasonAnswer season_answer(const InstrumentStory& story, std::vector<LoggedDay> log,
                                         const DataTables& tables, EnvelopeMemo& memo, const Span& span);

/// What the repairer wants otherwise than the records say, when asking for the saddle.
struct SaddleWishes {
  std::optional<Date> today, first;
  std::optional<ActionLimits> limits;
  std::optional<Length> wanted_bass, wanted_treble;
  std::optional<BridgeMeasures> bridge;
};
void describe(FieldVisitor&, SaddleWishes&);

struct SaddleAnswer {
  SaddleRequest request;
  SaddleResult result;
  std::string frets_first;  ///< as in PlayerNeeds
  std::vector<std::string> assumed;
};
void describe(FieldVisitor&, SaddleAnswer&);

[[nodiscard]] SaddleAnswer saddle_answer(const InstrumentStory& story, std::vector<LoggedDay> log,
                                         const DataTables& tables, EnvelopeMemo& memo, const SaddleWishes& wishes,
                                         Date today);

/// The saddle question of an instrument, as its records put it.
struct SaddleQuestion {
  SaddleRequest request;
  std::string frets_first;  ///< as in PlayerNeeds
  std::vector<std::string> assumed;
};
[[nodiscard]] SaddleQuestion saddle_question(const InstrumentStory& story, std::vector<LoggedDay> log,
                                             const DataTables& tables, EnvelopeMemo& memo, const SaddleWishes& wishes,
                                             Date today);

/// What is wanted of the neck otherwise than the year and the bridge ask for.
struct NeckWishes {
  std::optional<Length> action12_wanted_bass, action12_wanted_treble;  ///< mean of the year
  std::optional<Length> exposure_wanted_bass, exposure_wanted_treble;
  std::optional<Length> relief_wanted;
};

struct NeckAnswer {
  NeckAngleRequest request;
  NeckAngleResult result;
  std::vector<std::string> assumed;
};
void describe(FieldVisitor&, NeckAnswer&);

/// Whether an instrument's neck angle is called for and what it takes, from the same year and the same function as the
/// saddle's offer to turn the neck.
[[nodiscard]] NeckAnswer neck_answer(const InstrumentStory& story, std::vector<LoggedDay> log, const DataTables& tables,
                                     EnvelopeMemo& memo, const NeckWishes& wishes, Date today);

/// How far the page's sliders stand from what the book knows.
struct Sliders {
  Length saddle_raise_bass{}, saddle_raise_treble{};  ///< at the saddle; positive is taller
  std::optional<Length> relief{};                     ///< the rod turned until this is read: the strings move with it
  std::optional<Length> relief_read{};     ///< read again, before the rod is turned: the measured heights stay
  std::optional<Length> amplitude_bass{};  ///< played harder or softer; treble follows
  std::vector<double>
      crown_departures_mm{};  ///< raised over the crowns known, fret 1 first; may be shorter than the frets
  std::optional<int> string{}, stopped_fret{};  ///< the note whose swing is wanted; the worst where not both are given
};

/// How hard a player plays, by name, for the marks beside a slider.
struct AttackMark {
  std::string name;
  Length amplitude_bass, amplitude_treble;
};
void describe(FieldVisitor&, AttackMark&);

struct StringLineAnswer {
  StringLineResult string_line;
  ClearanceResult clearance;
  NoteSwing swing;
  LeastCure cure;
  ClearanceRequest request;  ///< what clearance was asked, for contact to be asked the same
  Attack hard_attack;        ///< the hardest this player plays
  Length relief;
  RodFigure rod;  ///< how the action was taken to follow the relief: its own turns, or an even bow
  std::vector<AttackMark> attacks;
  std::vector<std::string> assumed;
};
void describe(FieldVisitor&, StringLineAnswer&);

[[nodiscard]] StringLineAnswer string_line_answer(const InstrumentStory& story, const DataTables& tables,
                                                  EnvelopeMemo& memo, const Sliders& sliders, Date today);

/// How an instrument plays in tune, and whether its saddle can make it.
struct IntonationAnswer {
  IntonationRequest request;
  IntonationResult result;
  std::vector<std::string> assumed;
};
void describe(FieldVisitor&, IntonationAnswer&);

/// `press_depth` is how far this player's finger pushes a string down behind the fret. An octave error counts only
/// until the next work on the instrument.
[[nodiscard]] IntonationAnswer intonation_answer(const InstrumentStory& story, const DataTables& tables,
                                                 Length press_depth, Date today);

}  // namespace tailblock
