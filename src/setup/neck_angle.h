#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "season/response.h"
#include "setup/saddle_limits.h"
#include "strings/string_line.h"

namespace tailblock {

/// The neck as a lever about the edge where its heel meets the body under the board.
struct NeckLever {
  Length scale_length = mm(645);
  Length saddle_setback = mm(0);  ///< crest behind the scale length
  int body_joint_fret = 14;
  Length heel_depth = mm(95);  ///< from that edge down to the outside of the heel cap
};

/// What turning it back by one amount takes, and what a slip of the hand at the heel costs. `rise` is what the fret
/// plane gains over the bridge at the saddle: positive turns the neck back, which lowers the strings.
///
///     tan turn = rise/D,   removal = rise H/D,   D = L 2^(-n/12) + c
///
/// H heel depth, n body joint fret, c setback. Source: derived here (similar triangles).
struct NeckTurn {
  Angle turn;
  Length heel_removal;         ///< at the outside of the heel cap
  Length joint_to_saddle;      ///< D
  double saddle_per_heel = 0;  ///< mm at the saddle for 1 mm at the heel cap
};
[[nodiscard]] NeckTurn neck_turn(const NeckLever& lever, Length rise);

/// One side of the saddle, set right for the whole year, as though the bridge had no limits.
struct AskedExposure {
  double mm = 0;
  double sd_mm = 0;
  double least_mm = 0, middle_mm = 0, most_mm = 0;  ///< the trade's, for this slot
};

/// The worst of both sides.
[[nodiscard]] double under_least_mm(const AskedExposure& bass, const AskedExposure& treble);
[[nodiscard]] double uncertainty_mm(const AskedExposure& bass, const AskedExposure& treble);

/// Whether the neck's angle is called for by the exposure that is asked of the saddle.
enum class NeckVerdict {
  called_for,  ///< under the least by more than twice the uncertainty
  not_needed,  ///< over it by more
  withheld,    ///< within it
  too_tall     ///< over the most: taking wood off the heel would make it worse
};
[[nodiscard]] NeckVerdict neck_verdict(const AskedExposure& bass, const AskedExposure& treble);

/// The rise that puts the asked exposure in the middle of what is usual, the mean of both sides, in steps of what can
/// be cut. `saddle` and `neck-angle` both take it from here.
[[nodiscard]] Length neck_rise(const AskedExposure& bass, const AskedExposure& treble, Length step);

/// Nut, fret 12 and saddle of one string in the plane, before the neck is turned.
struct StringBeforeTurn {
  Length nut_over_frets;
  Length saddle_over_frets;
  Length crown12{};  ///< crown of fret 12 over the fret plane
};
struct StringAfterTurn {
  Length action12;
  Length saddle_over_frets;
  Length saddle_from_nut_change;  ///< along the frets; positive is longer
};
/// The string after the neck has turned rigidly about a hinge so far under the fret plane, the saddle staying with the
/// body and raised by `saddle_raise`.
///
///     D' = D cos t + (s + g) sin t,   s' = (s + g) cos t - D sin t - g
///
/// Exact. Source: derived here (rotation in the plane).
[[nodiscard]] StringAfterTurn after_turn(const NeckLever& lever, Length hinge_under_frets, Angle turn,
                                         const StringBeforeTurn& before, Length saddle_raise);

/// One side as it is, right for the whole year and not for today alone, and as it is wanted.
struct NeckSide {
  Length action12 = mm(2.6), action12_wanted = mm(2.4);  ///< mean of the year
  Length action12_sd = mm(0.1);                          ///< one standard deviation of that mean
  Length exposure = mm(2), exposure_wanted = mm(3);
  Length exposure_least = mm(1.6);  ///< a saddle that stands out less loses its break angle
  Length exposure_most = mm(4.5);
  Length highest_over_mean = mm(0.2);  ///< action in the year's highest month over its mean
  Length today_over_mean{};            ///< action today over the year's mean
};
void describe(FieldVisitor&, NeckSide&);

/// What the year asks of one saddle on this bridge, as `saddle` finds it before it offers to turn the neck.
struct NeckNeed {
  NeckSide bass, treble;
};

struct NeckAngleRequest {
  NeckSide bass, treble;
  Length exposure_sd = mm(0.1);
  Length nut_over_frets = mm(0.3);
  Length scale_length = mm(645);
  Length saddle_setback = mm(0);
  int body_joint_fret = 14;
  int fret_count = 20;
  Length heel_depth = mm(95);
  Length heel_cap_thickness{};          ///< the last of that depth
  Length hinge_under_frets = mm(7);     ///< board and fret
  std::optional<Length> tongue_length;  ///< joint to the end of the board
  std::optional<Length> rise;           ///< instead of what the wanted exposures ask for
  std::optional<Length> straightedge_over_bridge;
  Length straightedge_sd = mm(0.1);
  Length relief = mm(0.15), relief_wanted = mm(0.15);
  std::optional<Estimate> drift_mm_per_year;  ///< of the action at fret 12; positive rises
};
void describe(FieldVisitor&, NeckAngleRequest&);

/// What the neck question takes for granted: data/neck_limits.csv, lengths in mm.
struct NeckLimits {
  double straightedge_low, straightedge_high;
  double heel_step;          ///< down the heel, from line to line of the list
  double tongue_shim_least;  ///< thinner and the glue line takes it up
  double years_few;          ///< a saddle that lasts less long is said to be near its end
};
/// @throws Refused naming the row: a figure missing, unknown, given twice, out of range or without a source.
[[nodiscard]] NeckLimits neck_limits(std::string_view csv);

/// One step of the work: data/neck_steps.csv.
struct NeckStep {
  std::string words;
  std::string caution;      ///< read where the step is read; may be empty
  bool asks_owner = false;  ///< cannot be undone: only with the owner's yes
};
void describe(FieldVisitor&, NeckStep&);
[[nodiscard]] std::vector<NeckStep> neck_steps(std::string_view csv);

/// One line of the taper.
struct HeelDepth {
  Length depth;   ///< down the heel from the edge under the board
  Length remove;  ///< negative: to be built up
  std::string where;
};
void describe(FieldVisitor&, HeelDepth&);

/// One fret beyond the joint, where the board does not follow the neck by itself.
struct TonguePlace {
  int fret = 0;  ///< 0: the end of the board
  Length from_joint;
  Length shim;  ///< under it; glued down without one, that much below the plane of the others
};
void describe(FieldVisitor&, TonguePlace&);

/// One side afterwards.
struct NeckSideAfter {
  Length exposure_asked;          ///< with the neck as it is and the action as wanted
  Length exposure_asked_highest;  ///< the same in the year's highest month, were the saddle cut for that
  Length action12_saddle_kept;
  Length action12, exposure;  ///< with the new saddle
  Length saddle_raise;
};
void describe(FieldVisitor&, NeckSideAfter&);

struct NeckAngleResult {
  NeckVerdict verdict = NeckVerdict::not_needed;
  std::string words;   ///< one sentence
  Length uncertainty;  ///< one standard deviation of the exposure asked, the wider side
  Length rise;         ///< of the fret plane at the saddle
  Angle turn;
  std::vector<HeelDepth> heel;
  std::vector<TonguePlace> tongue;
  NeckSideAfter bass, treble;
  Length saddle_from_nut_change;               ///< along the frets, mean of the sides
  Length nut_back;                             ///< how far the nut moves away from the body
  double saddle_per_heel = 0;                  ///< mm at the saddle for 1 mm at the heel cap
  double action12_per_heel = 0;                ///< mm at fret 12 likewise
  std::optional<Length> straightedge_of_year;  ///< corrected for season and relief
  Length straightedge_by_season, straightedge_by_relief;
  std::optional<double> years_left, years_left_least;  ///< until the drift has used the saddle up; absent: it does not
  std::vector<std::string> cautions;
  std::vector<NeckStep> steps;
};
void describe(FieldVisitor&, NeckAngleResult&);

/// Heel taper, tongue shim and what they do to action and exposure; whether the neck's angle is called for, withheld
/// within twice its uncertainty. docs/models/neck-angle.md.
///
///     asked = exposure + (wanted - action)(L + c)/x_12        rise = wanted exposure - asked, mean of both sides
///
/// Valid for scales of 500..700 mm, turns up to 4 degrees. Left out: a neck that twists, a body that gives when the
/// strings are off. Source: derived here; limits common practice (data/neck_limits.csv).
/// @throws Refused naming the field outside the valid range.
[[nodiscard]] NeckAngleResult neck_angle(const NeckAngleRequest& request, const NeckLimits& limits, Length heel_error,
                                         const std::vector<NeckStep>& steps);

}  // namespace tailblock
