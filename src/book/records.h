#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "air/home.h"
#include "quantity/fields.h"
#include "season/response.h"
#include "setup/saddle.h"

namespace tailblock {

/// Row number in the book; 0 means not kept yet.
using RecordId = int;

struct Owner {
  RecordId id = 0;
  std::string name{};
  std::string contact{};
  std::string note{};
};
void describe(FieldVisitor&, Owner&);

/// Where an instrument lives. `air.log` stays empty here: air readings are rows of their own.
struct Home {
  RecordId id = 0;
  std::string name{};
  HomeAir air{};
  std::string note{};
};
void describe(FieldVisitor&, Home&);

/// How hard the player drives the strings; the amplitudes are in data/attacks.csv.
enum class AttackLevel { soft, medium, hard };
inline constexpr std::array<std::string_view, 3> attack_level_names{"soft", "medium", "hard"};

/// One instrument. Free text says who made it; no maker is assumed.
struct Instrument {
  RecordId id = 0;
  RecordId owner_id = 0;
  RecordId home_id = 0;
  std::string name{};  ///< as the shop calls it: "the blackened parlour with the bar frets"
  std::string made{};  ///< year and maker as far as known, free text
  InstrumentDesign design{};
  Length scale_length = mm(645);
  int body_joint_fret = 14;
  int fret_count = 20;
  bool adjustable_rod = false;
  SaddleSlot slot = SaddleSlot::closed;
  std::optional<Length> slot_depth{};
  std::optional<Length> slot_width{};
  std::optional<Length> slot_length{};
  std::string string_set = "light";  ///< a name in data/string_sets.csv
  std::string tuning = "standard";   ///< a name in data/tunings.csv
  AttackLevel attack = AttackLevel::medium;
  std::optional<Length> wanted_action12_bass{};  ///< what this player likes
  std::optional<Length> wanted_action12_treble{};
  std::optional<Length> highest_action12_bass{};  ///< and still puts up with
  std::optional<Length> highest_action12_treble{};
  std::string note{};
};
void describe(FieldVisitor&, Instrument&);

struct Visit {
  RecordId id = 0;
  RecordId instrument_id = 0;
  Date date{};
  std::string reason{};  ///< what the owner said, in the owner's words
  std::string note{};
};
void describe(FieldVisitor&, Visit&);

enum class ReadingState { as_found, as_left };
inline constexpr std::array<std::string_view, 2> reading_state_names{"as_found", "as_left"};

/// One measured value. What was typed is kept beside what it means. Never overwritten: a correction is a new reading
/// whose `supersedes` names the old one.
struct Reading {
  RecordId id = 0;
  RecordId visit_id = 0;
  std::string measure{};  ///< an id in data/measures.csv: action12_bass, relief, saddle_exposure_treble, body_humidity
  std::string typed{};    ///< as entered: "5/64", "2,1 mm"
  double value = 0;       ///< in the measure's unit (mm, degree, percent)
  std::string gauge{};    ///< an id in data/gauges.csv
  double gauge_sd = 0;    ///< in the measure's unit
  ReadingState state = ReadingState::as_found;
  RecordId supersedes = 0;
  RecordId superseded_by = 0;
  std::string note{};
};
void describe(FieldVisitor&, Reading&);

/// Work that moved the strings, recorded at a visit, between the as-found and the as-left readings.
struct Intervention {
  RecordId id = 0;
  RecordId visit_id = 0;
  std::string kind{};  ///< an id in data/interventions.csv: saddle_lowered, new_saddle, rod_adjusted, neck_reset
  std::optional<Length> action12_bass_change{};  ///< positive raises the strings
  std::optional<Length> action12_treble_change{};
  std::optional<Length> change_sd{};
  std::string note{};
  bool moves_relief = true;   ///< of its kind, as the book's table has it; not kept with the record
  bool moves_bridge = false;  ///< the same
};
void describe(FieldVisitor&, Intervention&);

/// A saddle choice the repairer took, with the figures it rested on.
struct SaddleDecision {
  RecordId id = 0;
  RecordId visit_id = 0;
  std::string choice{};                                     ///< one_saddle, two_saddles, humid_room, neck_angle, leave
  Length raise_bass_at_saddle{}, raise_treble_at_saddle{};  ///< positive is a taller saddle
  Length set_bass_at_fret12{}, set_treble_at_fret12{};      ///< the action to leave today, in today's air
  std::string reason{};
};
void describe(FieldVisitor&, SaddleDecision&);

/// One line of the instrument list.
struct InstrumentLine {
  RecordId id = 0;
  std::string name{};
  std::string owner{};
  std::string home{};
  BodySize body_size = BodySize::mid_size;
  Bracing bracing = Bracing::x_braced;
  SaddleSlot slot = SaddleSlot::closed;
  int visits = 0;
  std::optional<Date> last_visit{};
  std::optional<double> last_action12_bass_mm{};
  std::optional<double> last_action12_treble_mm{};
};
void describe(FieldVisitor&, InstrumentLine&);

/// One visit with everything recorded at it.
struct VisitStory {
  Visit visit{};
  std::vector<Reading> readings{};  ///< superseded ones included, oldest first
  std::vector<Intervention> interventions{};
  std::vector<SaddleDecision> decisions{};
};
void describe(FieldVisitor&, VisitStory&);

/// One instrument with its people, its home and its visits, newest last.
struct InstrumentStory {
  Instrument instrument{};
  Owner owner{};
  Home home{};
  int logged_days = 0;
  std::vector<VisitStory> visits{};
};
void describe(FieldVisitor&, InstrumentStory&);

}  // namespace tailblock
