#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "season/year.h"
#include "strings/rod_figure.h"

namespace tailblock {

struct NeckNeed;
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
  std::optional<Length> exposure_centre;  ///< between the middle strings; the saddle is arched
  Length exposure_sd = mm(0.1);
  std::optional<Length> slot_depth, slot_width, slot_length;
  std::optional<Length> slot_width_other_end;
  std::optional<Length> saddle_thickness;  ///< of the bone fitted now
  std::optional<Angle> break_angle;        ///< through which a middle string turns over the saddle, now
  std::optional<Length> pin_to_saddle;     ///< pin hole to the saddle's back edge
};
void describe(FieldVisitor&, BridgeMeasures&);

struct SaddleRequest {
  ResponseRequest instrument;
  Date first;  ///< the year to serve begins here
  int count = 365;
  ActionLimits limits;           ///< least clean and highest comfortable action at fret 12
  Length wanted_bass = mm(2.4);  ///< what this player likes best
  Length wanted_treble = mm(1.9);
  BridgeMeasures bridge;
  Length scale_length = mm(645);
  Length saddle_setback = mm(0);  ///< compensation: how far the saddle stands beyond the scale length
  int body_joint_fret = 14;
  Length heel_depth = mm(95);
  std::optional<RodFigure> rod;  ///< of a neck whose rod can be turned
  /// Air the bench has today, when the instrument has been in it long enough; absent: the air of its home.
  std::optional<double> shop_moisture_percent;
};
void describe(FieldVisitor&, SaddleRequest&);

enum class SaddleChoice { leave, turn_rod, one_saddle, two_saddles, humid_room, neck_angle };
inline constexpr std::array<std::string_view, 6> saddle_choice_names{"leave",       "turn_rod",   "one_saddle",
                                                                     "two_saddles", "humid_room", "neck_angle"};

/// One saddle to make, or to keep.
struct SaddleToMake {
  std::string season;                     ///< "all year", "winter", "summer", or "dry months", "damp months"
  Length raise_bass, raise_treble;        ///< at the saddle, against the one fitted now; positive is taller
  Length raise_bass_sd, raise_treble_sd;  ///< one standard deviation of the raise that would be right
  Length exposure_bass, exposure_treble;
  Length set_bass_today, set_treble_today;  ///< what fret 12 should read today with this saddle in
  bool new_bone = false;                    ///< taller somewhere: it cannot be filed out of the present saddle
  std::string how;                          ///< which way the cut goes, in plain words
  Length blank_height, blank_thickness, blank_length;  ///< with something to file off; zero where the slot is not known
  Length fit_thickness_least, fit_thickness_most;      ///< finished, to slide without rattling; zero likewise
  std::string from, until;  ///< dates, ISO, when there are two: in from the first, out on the second
};
void describe(FieldVisitor&, SaddleToMake&);

/// A structural limit met or broken.
struct LimitCheck {
  std::string limit;  ///< "exposure, bass"
  bool kept = true;
  bool usual = true;   ///< inside what is usual, not only inside what can be done
  std::string figure;  ///< "3.6 mm against 1.6..3.2 mm"
  std::string source;
};
void describe(FieldVisitor&, LimitCheck&);

/// One way to serve the player through the year, and what it costs.
struct SaddleOption {
  SaddleChoice choice = SaddleChoice::leave;
  std::string title;     ///< in plain words
  bool possible = true;  ///< inside every structural limit and physically doable on this slot
  std::string why_not;
  std::vector<SaddleToMake> saddles;
  DaysOutside days;                         ///< too low and too high through the year
  Length set_bass_today, set_treble_today;  ///< action to leave at fret 12 today, so that it is right over the year
  Length set_today_sd;                      ///< one standard deviation of that figure, the wider of the two sides
  /// More days outside in the year, too low and too high, bass and treble together, when the action is set wrong by one
  /// standard deviation of the gauge: the worse of the two directions.
  double days_more_if_misread = 0;
  std::optional<Length> relief_to_set;           ///< turn_rod
  std::optional<double> keep_relative_humidity;  ///< humid_room: never below this
  std::optional<Length> heel_removal;            ///< neck_angle: at the heel cap
  std::optional<Length> heel_removal_sd;
  std::optional<Angle> neck_turn;
  std::vector<LimitCheck> checks;
  std::vector<std::string> cautions;
  bool reversible = true;  ///< the guitar can be put back as it came
  double cost = 0;         ///< weighted days outside plus distance from the wanted action; smaller is better
  double worth = 0;        ///< weighted days that this much work must save to be advised
};
void describe(FieldVisitor&, SaddleOption&);

struct SaddleResult {
  std::vector<SaddleOption> options;  ///< leave first, then in the order of SaddleChoice
  int best = 0;                       ///< index of the option advised
  std::string advice;                 ///< one or two plain sentences
  Length reading_sd;                  ///< of the gauge that last read the action
  double saddle_per_action = 2;       ///< mm at the saddle for 1 mm at fret 12
  Length cut_precision;               ///< what a file and a dial caliper hold; heights are rounded to it
  std::vector<std::string> cautions;  ///< for all options: a reading whose error matters more than the cut, and so on
};
void describe(FieldVisitor&, SaddleResult&);

/// Which saddle keeps this guitar playable through the year. docs/models/saddle.md.
///
///     cost = sum over bass and treble of  W_low B(floor - r) + W_high [N - B(ceiling - r)] + pulls
///     r = d x12/(L + c), x12 = L/2      d raise at the saddle, L scale length, c setback, r raise at fret 12
///
/// B(z) expected days with the action under z as things are, N days of the year; the pulls draw towards the wanted
/// action and the usual exposure. Heights are searched in steps of what a file holds, so they are never rounded
/// afterwards. The floor follows the relief through the year where the limits say how. Left out: a change of strings or
/// of the player, a saddle cut and a rod turned together. Valid where the season model is; ranges in
/// describe(). Source: derived here; limits and weights common practice, no source (data/saddle_limits.csv).
/// @throws Refused naming a field out of range, limits that cross, a wanted action outside them, or a side never read.
[[nodiscard]] SaddleResult saddle(const SaddleRequest& request, const SeasonTables& tables, const SaddleLimits& limits);

/// What the same year asks of the neck: mean action, exposures and what is wanted of both, each side.
/// @throws Refused as saddle.
[[nodiscard]] NeckNeed neck_need(const SaddleRequest& request, const SeasonTables& tables, const SaddleLimits& limits);

}  // namespace tailblock
