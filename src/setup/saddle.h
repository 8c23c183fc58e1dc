#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "season/year.h"

namespace tailblock {

struct SaddleLimits;

/// How the saddle sits in the bridge.
enum class SaddleSlot {
  open_ended,  ///< the slot runs out at both ends: a through saddle
  closed       ///< the slot is closed at both ends: a drop-in saddle
};

inline constexpr std::array<std::string_view, 2> saddle_slot_names{"open_ended", "closed"};

/// The bridge as measured. Exposure is the height of the saddle's top over the top of the bridge.
struct BridgeMeasures {
  SaddleSlot slot = SaddleSlot::closed;
  Length exposure_bass = mm(3.0);
  Length exposure_treble = mm(2.5);
  Length exposure_sd = mm(0.1);
  std::optional<Length> slot_depth, slot_width, slot_length;
  std::optional<Angle> break_angle;        ///< of the string behind the saddle, now
  std::optional<Length> pin_to_saddle;     ///< pin hole to the saddle's back edge
};
void describe(FieldVisitor&, BridgeMeasures&);

struct SaddleRequest {
  ResponseRequest instrument;
  Date first;        ///< the year to serve begins here
  int count = 365;
  ActionLimits limits;               ///< least clean and highest comfortable action at fret 12
  Length wanted_bass = mm(2.4);      ///< what this player likes best
  Length wanted_treble = mm(1.9);
  BridgeMeasures bridge;
  Length scale_length = mm(645);
  int body_joint_fret = 14;
  Length heel_depth = mm(95);
  /// Air the bench has today, when the instrument has been in it long enough; absent: the air of its home.
  std::optional<double> shop_moisture_percent;
};
void describe(FieldVisitor&, SaddleRequest&);

enum class SaddleChoice { leave, one_saddle, two_saddles, humid_room, neck_angle };
inline constexpr std::array<std::string_view, 5> saddle_choice_names{"leave", "one_saddle", "two_saddles",
                                                                     "humid_room", "neck_angle"};

/// One saddle to make, or to keep.
struct SaddleToMake {
  std::string season;                 ///< "all year", "winter", "summer"
  Length raise_bass, raise_treble;    ///< at the saddle, against the one fitted now; positive is taller
  Length exposure_bass, exposure_treble;
  Length blank_height, blank_thickness, blank_length;  ///< with something to file off; zero where the slot is not known
  std::string from, until;            ///< dates, ISO, when there are two
};
void describe(FieldVisitor&, SaddleToMake&);

/// A structural limit met or broken.
struct LimitCheck {
  std::string limit;    ///< "exposure, bass"
  bool kept = true;
  std::string figure;   ///< "3.6 mm against 1.6..3.2 mm"
  std::string source;
};
void describe(FieldVisitor&, LimitCheck&);

/// One way to serve the player through the year, and what it costs.
struct SaddleOption {
  SaddleChoice choice = SaddleChoice::leave;
  std::string title;                  ///< in plain words
  bool possible = true;               ///< inside every structural limit and physically doable on this slot
  std::string why_not;
  std::vector<SaddleToMake> saddles;
  DaysOutside days;                   ///< too low and too high through the year
  Length set_bass_today, set_treble_today;        ///< action to leave at fret 12 today, so that it is right over the year
  Length set_today_sd;                            ///< one standard deviation of that figure
  std::optional<double> keep_relative_humidity;   ///< humid_room: never below this
  std::optional<Length> heel_removal;             ///< neck_angle: at the heel cap
  std::optional<Angle> neck_turn;
  std::vector<LimitCheck> checks;
  std::vector<std::string> cautions;
  double cost = 0;                    ///< weighted days outside plus distance from the wanted action; smaller is better
};
void describe(FieldVisitor&, SaddleOption&);

struct SaddleResult {
  std::vector<SaddleOption> options;  ///< leave first, then in the order of SaddleChoice
  int best = 0;                       ///< index of the option advised
  std::string advice;                 ///< one or two plain sentences
  Length cut_precision;               ///< what a file and a dial caliper hold; heights are rounded to it
  std::vector<std::string> cautions;  ///< for all options: a reading whose error matters more than the cut, and so on
};
void describe(FieldVisitor&, SaddleResult&);

/// Which saddle keeps this guitar playable through the year. docs/models/saddle.md.
[[nodiscard]] SaddleResult saddle(const SaddleRequest& request, const SeasonTables& tables, const SaddleLimits& limits);

}  // namespace tailblock
