#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "air/home.h"
#include "body/body_size.h"
#include "quantity/fields.h"

namespace tailblock {

/// What the season model reads on an instrument. Heights are at pitch, over the top of the named fret.
/// The bridge over the rim is the height of the bridge's top, between strings 3 and 4, over a straightedge line from
/// rim to rim beside it.
enum class HeightKind { action12_bass, action12_treble, relief, bridge_over_rim };
inline constexpr std::array<std::string_view, 4> height_kind_names{"action12_bass", "action12_treble", "relief",
                                                                   "bridge_over_rim"};

/// One reading. `order` tells readings and interventions of one day apart: as found 0, work 1, as left 2, and so on.
struct HeightReading {
  Date date;
  int order = 0;
  HeightKind kind = HeightKind::action12_bass;
  Length value;
  Length gauge_sd = mm(0.1);  ///< one standard deviation of the gauge in this hand
};
void describe(FieldVisitor&, HeightReading&);

/// A recorded change to the set-up: by how much it moved the strings at fret 12, where that is known.
struct SetupChange {
  Date date;
  int order = 1;
  std::string what;  ///< in the repairer's words: "saddle lowered"
  /// Positive raises the strings. Absent: something was done, its size is not known (a neck reset, a new saddle).
  std::optional<Length> action12_bass_change{};
  std::optional<Length> action12_treble_change{};
  Length change_sd = mm(0.05);
  bool moves_relief = true;   ///< it may have left the neck with another relief
  bool moves_bridge = false;  ///< it may have left the bridge at another height over the rim
};
void describe(FieldVisitor&, SetupChange&);

/// What is known of an instrument that bears on how it answers the air.
struct InstrumentDesign {
  BodySize body_size = BodySize::mid_size;
  Bracing bracing = Bracing::x_braced;
  std::optional<Length> lower_bout_width;
  std::optional<Length> top_thickness;
  Angle ring_angle = degrees(0);  ///< 0 quartersawn, 90 flat-sawn
  std::string top_species;        ///< a name in the species table; empty: Sitka spruce is assumed and said
  bool kept_in_case = false;
};
void describe(FieldVisitor&, InstrumentDesign&);

/// What another instrument of the kind in this shop has shown.
struct KindredResponse {
  double response_mm_per_percent = 0;
  double log_sd = 0.3;  ///< standard deviation of its natural logarithm
};
void describe(FieldVisitor&, KindredResponse&);

/// Everything the season model is told about one instrument up to `today`.
struct ResponseRequest {
  Date today;
  InstrumentDesign design;
  HomeAir home;
  std::vector<HeightReading> readings;
  std::vector<SetupChange> changes;
  std::vector<KindredResponse> kindred;
};
void describe(FieldVisitor&, ResponseRequest&);

/// A number with the interval that holds it with 90 % probability.
struct Estimate {
  double median = 0;
  double low = 0;   ///< 5 %
  double high = 0;  ///< 95 %
};
void describe(FieldVisitor&, Estimate&);

/// A reading that does not fit the others and is not obeyed.
struct FlaggedReading {
  Date date;
  int order = 0;
  HeightKind kind = HeightKind::action12_bass;
  Length value;
  Length expected;
  Length expected_sd;
  std::string why;
};
void describe(FieldVisitor&, FlaggedReading&);

/// The change since the last set of readings before the latest, split into what is explained and what is not. Bass and
/// treble; positive is higher. Absent with fewer than two days of readings.
struct ChangeShare {
  Date from;
  Date to;
  Estimate measured_bass_mm, measured_treble_mm;  ///< recorded interventions taken out
  Estimate season_bass_mm, season_treble_mm;      ///< what the air between the two days explains
  Estimate unexplained_bass_mm, unexplained_treble_mm;
  Estimate season_share;                  ///< 0..1 of the measured change, both sides together; may exceed 1
  double something_else_probability = 0;  ///< that a step nobody recorded happened between the two days
  bool something_else = false;            ///< beyond the threshold at which false alarms are below 5 %
  std::string verdict;                    ///< one plain sentence
  std::string better_reading;             ///< the reading that would settle it better, with its effect
};
void describe(FieldVisitor&, ChangeShare&);

/// One thing that goes into the first guess: its middle, and the interval that holds it with 90 %.
struct GuessPart {
  std::string what;
  std::string unit;
  Estimate value;
};
void describe(FieldVisitor&, GuessPart&);

/// What is believed of an instrument of this design before it has been read, and what was assumed for it.
struct FirstGuess {
  BodySize body_size = BodySize::mid_size;
  Bracing bracing = Bracing::x_braced;
  Length lower_bout_width;
  Length top_thickness;
  Angle ring_angle;
  std::string top_species;
  std::vector<GuessPart> parts;  ///< the last is the response itself
};
void describe(FieldVisitor&, FirstGuess&);

/// What the instrument has shown so far.
struct ResponseResult {
  Estimate response_bass_mm_per_percent;  ///< action at fret 12 per percent of wood moisture (EMC as the air asks)
  Estimate response_treble_mm_per_percent;
  Estimate top_mm_per_percent;            ///< of the middle of the strings: what the top and the bridge's height do
  Estimate neck_and_back_mm_per_percent;  ///< the rest of it; negative works against the top
  Estimate lag_days;
  Estimate drift_mm_per_year;
  Estimate action12_bass_today_mm, action12_treble_today_mm;  ///< in the air of its home today
  Estimate summer_to_winter_drop_mm;                          ///< typical year, bass: highest 30-day mean less lowest
  double moisture_today_percent = 0;
  double prior_weight = 1;  ///< posterior over prior variance of log response: 1 nothing learnt, 0 all
  int readings_used = 0;
  int bridge_readings = 0;  ///< of the bridge over the rim; with none the parts are the first guess's
  std::vector<FlaggedReading> flagged;
  std::vector<ChangeShare> last_change;  ///< none or one
  FirstGuess first_guess;                ///< before any reading
  std::vector<std::string> assumptions;  ///< what the prior took for granted, in plain words
};
void describe(FieldVisitor&, ResponseResult&);

}  // namespace tailblock
