#include "setup/bridge_fit.h"

#include <algorithm>
#include <cmath>

#include "season/words.h"
#include "setup/words.h"

namespace tailblock {
namespace {

constexpr double slack_mm = 1e-9;  // a height cut exactly to a limit keeps it
const char* const practice = "common practice, no source";

/// Where the string goes into the bridge behind the saddle.
struct PinHole {
  double distance_mm;
  double below_top_mm;
};

std::optional<PinHole> pin_hole(const BridgeMeasures& bridge) {
  const double exposure = in_mm(bridge.exposure_centre.value_or((bridge.exposure_bass + bridge.exposure_treble) / 2));
  if (bridge.break_angle && bridge.pin_to_saddle) {
    const double distance = in_mm(*bridge.pin_to_saddle);
    return PinHole{distance, distance * std::tan(in_radians(*bridge.break_angle)) - exposure};
  }
  if (bridge.break_angle && exposure > 0) return PinHole{exposure / std::tan(in_radians(*bridge.break_angle)), 0};
  if (bridge.pin_to_saddle) return PinHole{in_mm(*bridge.pin_to_saddle), 0};
  return std::nullopt;
}

const ExposureLimits& usual_exposure(const BridgeMeasures& bridge, const SaddleLimits& limits, bool bass) {
  if (bridge.slot == SaddleSlot::open_ended) return limits.open_ended;
  return bass ? limits.closed_bass : limits.closed_treble;
}

LimitCheck exposure_check(const BridgeMeasures& bridge, const SaddleLimits& limits, bool bass, double raise_mm) {
  const double exposure = in_mm(bass ? bridge.exposure_bass : bridge.exposure_treble) + raise_mm;
  const ExposureBounds bounds = exposure_bounds(bridge, limits, bass);
  LimitCheck check;
  check.limit = bass ? "exposure, bass" : "exposure, treble";
  check.kept = bounds.least_mm - slack_mm <= exposure && exposure <= bounds.most_mm + slack_mm;
  check.usual = bounds.usual_least_mm - slack_mm <= exposure && exposure <= bounds.usual_most_mm + slack_mm;
  check.figure =
      mm_in_words(exposure) + " against " + decimals(bounds.least_mm, 2) + ".." + mm_in_words(bounds.most_mm);
  check.source = practice;
  return check;
}

LimitCheck depth_check(const BridgeMeasures& bridge, double raise_bass_mm, double raise_treble_mm) {
  const double exposure =
      std::max(in_mm(bridge.exposure_bass) + raise_bass_mm, in_mm(bridge.exposure_treble) + raise_treble_mm);
  const double depth = in_mm(*bridge.slot_depth);
  LimitCheck check;
  check.limit = "height over the bridge against depth in the slot";
  check.kept = check.usual = exposure <= depth + slack_mm;
  check.figure = mm_in_words(exposure) + " out of the slot, " + mm_in_words(depth) + " in it";
  check.source = practice;
  return check;
}

LimitCheck angle_check(const SaddleLimits& limits, Angle angle) {
  const double degrees_now = in_degrees(angle);
  LimitCheck check;
  check.limit = "break angle";
  check.kept = degrees_now >= limits.break_angle_least - slack_mm;
  check.usual = check.kept && degrees_now <= limits.break_angle_usual_most + slack_mm;
  check.figure = decimals(degrees_now, 0) + " degrees against " + decimals(limits.break_angle_least, 0) + ".." +
                 decimals(limits.break_angle_usual_most, 0);
  check.source = practice;
  return check;
}

LimitCheck width_check(const SaddleLimits& limits, double one_end_mm, double other_end_mm) {
  LimitCheck check;
  check.limit = "slot width at its two ends";
  check.usual = std::abs(one_end_mm - other_end_mm) <= limits.slot_width_difference_most + slack_mm;
  check.figure = mm_in_words(one_end_mm) + " and " + mm_in_words(other_end_mm) + ", to agree within " +
                 mm_in_words(limits.slot_width_difference_most);
  check.source = practice;
  return check;
}

LimitCheck fit_check(const SaddleLimits& limits, double clearance_mm) {
  LimitCheck check;
  check.limit = "fit of the present saddle in its slot";
  check.usual = limits.fit_clearance_least - slack_mm <= clearance_mm && clearance_mm <= limits.lean_clearance_most;
  check.figure = mm_in_words(clearance_mm) + " of play against " + decimals(limits.fit_clearance_least, 2) + ".." +
                 mm_in_words(limits.fit_clearance_most) + ", refit over " + mm_in_words(limits.lean_clearance_most);
  check.source = practice;
  return check;
}

double narrowest_slot_mm(const BridgeMeasures& bridge) {
  const Length width = *bridge.slot_width;
  return in_mm(bridge.slot_width_other_end ? std::min(width, *bridge.slot_width_other_end) : width);
}

/// What is filed off, end by end.
std::string filed_in_words(double bass_mm, double treble_mm) {
  if (treble_mm == 0) return "file " + mm_in_words(bass_mm) + " off its bottom at the bass end, running out to nothing";
  if (bass_mm == 0)
    return "file " + mm_in_words(treble_mm) + " off its bottom at the treble end, running out to nothing";
  return "file " + both_ends_in_words(bass_mm, treble_mm) + " off its bottom";
}

/// Which way the cut goes.
std::string way_of_working(SaddleSlot slot, const SaddleToMake& made) {
  const double bass_mm = in_mm(made.raise_bass);
  const double treble_mm = in_mm(made.raise_treble);
  const bool closed = slot == SaddleSlot::closed;
  if (bass_mm == 0 && treble_mm == 0) return "Keep the present saddle as it is.";
  if (!made.new_bone) {
    const std::string file = filed_in_words(-bass_mm, -treble_mm);
    if (closed) {
      return "Lower: " + file + ", or make a lower saddle and keep the present one, which is the way back.";
    }
    return "Lower: if the saddle lifts out without force, " + file + "; if it is glued, do not pry it from the ends.";
  }
  const std::string make = "Raise: a new saddle, " + change_in_words(made);
  if (!closed) return make + "; an open-ended one cannot be shimmed from below. Keep the old one.";
  return make +
         ". A hard full-length shim under the present one serves only until then, and is marked. Keep the old one.";
}

}  // namespace

ExposureBounds exposure_bounds(const BridgeMeasures& bridge, const SaddleLimits& limits, bool bass) {
  const ExposureLimits& range = usual_exposure(bridge, limits, bass);
  ExposureBounds bounds{range.least, range.usual_least, range.usual_most, range.most, range.least, {}, {}};
  bounds.least_because = "the least a saddle stands out";
  bounds.most_because = "the most a saddle stands out";
  if (bridge.slot == SaddleSlot::open_ended && !bridge.slot_depth) {
    bounds.most_mm = range.usual_most;
    bounds.most_because = "the usual height of an open-ended saddle, its slot's depth not being known";
  }
  if (bridge.slot_depth && in_mm(*bridge.slot_depth) < bounds.most_mm) {
    bounds.most_mm = in_mm(*bridge.slot_depth);
    bounds.most_because = "the depth of the slot";
  }
  if (const auto pin = pin_hole(bridge)) {
    const double for_angle =
        pin->distance_mm * std::tan(in_radians(degrees(limits.break_angle_least))) - pin->below_top_mm;
    if (for_angle > bounds.least_mm) {
      bounds.least_mm = for_angle;
      bounds.least_because = "the break angle";
    }
  }
  bounds.usual_least_mm = std::max(bounds.usual_least_mm, bounds.least_mm);
  bounds.usual_most_mm = std::max(bounds.least_mm, std::min(bounds.usual_most_mm, bounds.most_mm));
  bounds.usual_least_mm = std::min(bounds.usual_least_mm, bounds.usual_most_mm);
  return bounds;
}

std::optional<Angle> break_angle_at(const BridgeMeasures& bridge, double exposure_mm) {
  const auto pin = pin_hole(bridge);
  if (!pin) return std::nullopt;
  return radians(std::atan((exposure_mm + pin->below_top_mm) / pin->distance_mm));
}

std::vector<LimitCheck> limit_checks(const BridgeMeasures& bridge, const SaddleLimits& limits, double raise_bass_mm,
                                     double raise_treble_mm) {
  std::vector<LimitCheck> checks{exposure_check(bridge, limits, true, raise_bass_mm),
                                 exposure_check(bridge, limits, false, raise_treble_mm)};
  if (bridge.slot_depth) checks.push_back(depth_check(bridge, raise_bass_mm, raise_treble_mm));
  const double lowest_mm =
      std::min(in_mm(bridge.exposure_bass) + raise_bass_mm, in_mm(bridge.exposure_treble) + raise_treble_mm);
  if (const auto angle = break_angle_at(bridge, lowest_mm)) checks.push_back(angle_check(limits, *angle));
  if (bridge.slot_width && bridge.slot_width_other_end) {
    checks.push_back(width_check(limits, in_mm(*bridge.slot_width), in_mm(*bridge.slot_width_other_end)));
  }
  if (bridge.slot_width && bridge.saddle_thickness) {
    checks.push_back(fit_check(limits, narrowest_slot_mm(bridge) - in_mm(*bridge.saddle_thickness)));
  }
  return checks;
}

SaddleToMake saddle_to_make(const BridgeMeasures& bridge, const SaddleLimits& limits, double raise_bass_mm,
                            double raise_treble_mm) {
  SaddleToMake made;
  made.raise_bass = mm(raise_bass_mm);
  made.raise_treble = mm(raise_treble_mm);
  made.exposure_bass = bridge.exposure_bass + mm(raise_bass_mm);
  made.exposure_treble = bridge.exposure_treble + mm(raise_treble_mm);
  made.new_bone = raise_bass_mm > 0 || raise_treble_mm > 0;
  made.how = way_of_working(bridge.slot, made);
  if (raise_bass_mm == 0 && raise_treble_mm == 0) return made;
  if (bridge.slot_depth) {
    const Length line = std::max(made.exposure_bass, made.exposure_treble);
    const Length middle = bridge.exposure_centre
                              ? *bridge.exposure_centre + mm((raise_bass_mm + raise_treble_mm) / 2)
                              : (made.exposure_bass + made.exposure_treble) / 2 + mm(limits.crown_allowance);
    made.blank_height = *bridge.slot_depth + std::max(line, middle) + mm(limits.blank_height_allowance);
  }
  if (bridge.slot_width) {
    const double slot_mm = narrowest_slot_mm(bridge);
    const double widest_mm = in_mm(
        bridge.slot_width_other_end ? std::max(*bridge.slot_width, *bridge.slot_width_other_end) : *bridge.slot_width);
    made.blank_thickness = mm(widest_mm + limits.blank_thickness_allowance);
    made.fit_thickness_least = mm(slot_mm - limits.fit_clearance_most);
    made.fit_thickness_most = mm(slot_mm - limits.fit_clearance_least);
  }
  if (bridge.slot_length) made.blank_length = *bridge.slot_length + mm(limits.blank_length_allowance);
  return made;
}

}  // namespace tailblock
