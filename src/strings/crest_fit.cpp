#include "strings/crest_fit.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "quantity/trade_notation.h"
#include "strings/intonation.h"

namespace tailblock {
namespace {

constexpr double step_mm = 0.05;  // what a slot is cut to

/// How far the front wall moves at string 1 and at the last string.
struct WallMove {
  double treble = 0, bass = 0;
};

/// A x treble + B x bass <= C
struct Limit {
  double a, b, c;
};

double over(const Limit& limit, const WallMove& move) { return limit.a * move.treble + limit.b * move.bass - limit.c; }

/// The part of a convex polygon inside a limit.
std::vector<WallMove> cut(const std::vector<WallMove>& polygon, const Limit& limit) {
  std::vector<WallMove> kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const WallMove& from = polygon[i];
    const WallMove& to = polygon[(i + 1) % polygon.size()];
    const double at_from = over(limit, from), at_to = over(limit, to);
    if (at_from <= 0) kept.push_back(from);
    if ((at_from < 0 && at_to > 0) || (at_from > 0 && at_to < 0)) {
      const double t = at_from / (at_from - at_to);
      kept.push_back({from.treble + t * (to.treble - from.treble), from.bass + t * (to.bass - from.bass)});
    }
  }
  return kept;
}

/// The point of a convex polygon nearest to no move at all.
WallMove nearest_to_nothing(const std::vector<WallMove>& polygon) {
  WallMove best = polygon.front();
  const auto consider = [&](const WallMove& move) {
    if (std::hypot(move.treble, move.bass) < std::hypot(best.treble, best.bass)) best = move;
  };
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const WallMove& from = polygon[i];
    const WallMove& to = polygon[(i + 1) % polygon.size()];
    const double dx = to.treble - from.treble, dy = to.bass - from.bass;
    const double length2 = dx * dx + dy * dy;
    const double t = length2 > 0 ? std::clamp(-(from.treble * dx + from.bass * dy) / length2, 0.0, 1.0) : 0;
    consider({from.treble + t * dx, from.bass + t * dy});
  }
  return best;
}

double front_mm(const SaddleTop& top, double share) {
  return in_mm(top.front_treble) + share * in_mm(top.front_bass - top.front_treble);
}

/// The span in which a crest must be covered by the top: its range where it was read, else its middle.
struct Span {
  double share, low, high;
};

std::vector<Span> spans_of(const std::vector<WantedCrest>& crests) {
  std::vector<Span> spans;
  for (const WantedCrest& crest : crests) {
    spans.push_back(
        {crest.share, in_mm(crest.read ? crest.low : crest.setback), in_mm(crest.read ? crest.high : crest.setback)});
  }
  return spans;
}

/// The least move of a slot this wide that covers every span with its land; absent when none does.
std::optional<WallMove> least_move(const SaddleTop& top, double thickness_mm, double land_mm,
                                   const std::vector<Span>& spans) {
  constexpr double far_mm = 100;
  constexpr double hair_mm = 1e-6;  // a slot that holds them to a hair holds them
  std::vector<WallMove> polygon{{-far_mm, -far_mm}, {far_mm, -far_mm}, {far_mm, far_mm}, {-far_mm, far_mm}};
  for (const Span& span : spans) {
    const double front = front_mm(top, span.share);
    const double t = 1 - span.share, b = span.share;
    polygon = cut(polygon, {t, b, span.low - land_mm - front + hair_mm});
    polygon = cut(polygon, {-t, -b, front + thickness_mm - land_mm - span.high + hair_mm});
    if (polygon.empty()) return std::nullopt;
  }
  return nearest_to_nothing(polygon);
}

/// The thinnest saddle that covers every span, over all places of its slot: the narrowest strip round them, which has
/// one wall on two spans' ends or lies along the line between two.
double thickness_least_mm(const std::vector<Span>& spans, double land_mm) {
  double narrowest = 1e9;
  const auto strip = [&](double slope) {
    double low = 1e9, high = -1e9;
    for (const Span& span : spans) {
      low = std::min(low, span.low - slope * span.share);
      high = std::max(high, span.high - slope * span.share);
    }
    narrowest = std::min(narrowest, high - low);
  };
  for (std::size_t i = 0; i < spans.size(); ++i) {
    for (std::size_t j = i + 1; j < spans.size(); ++j) {
      const double apart = spans[j].share - spans[i].share;
      if (!(std::abs(apart) > 1e-9)) continue;
      strip((spans[j].low - spans[i].low) / apart);
      strip((spans[j].high - spans[i].high) / apart);
    }
  }
  if (spans.size() == 1) strip(0);
  return narrowest + 2 * land_mm;
}

CrestPlace place_of(const CrestOnTop& crest, double land_mm, double thickness_mm) {
  const double low = in_mm(crest.behind_front_low), high = in_mm(crest.behind_front_high);
  if (high < land_mm) return CrestPlace::too_far_forward;
  if (low > thickness_mm - land_mm) return CrestPlace::too_far_back;
  return low >= land_mm && high <= thickness_mm - land_mm ? CrestPlace::fits : CrestPlace::may_fit;
}

double rounded_up(double millimetres) { return std::ceil(millimetres / step_mm - 1e-9) * step_mm; }
double rounded(double millimetres) { return std::round(millimetres / step_mm) * step_mm; }

std::string shown(double millimetres) { return as_trade(mm(millimetres)).millimetres; }

template <class Chosen>
std::vector<int> strings_where(const SlotFit& fit, Chosen chosen) {
  std::vector<int> strings;
  for (const CrestOnTop& crest : fit.crests) {
    if (chosen(crest)) strings.push_back(crest.string);
  }
  return strings;
}

std::vector<int> strings_to_read(const SlotFit& fit) {
  return strings_where(fit, [](const CrestOnTop& crest) { return crest.to_be_read; });
}

std::string strings_in_words(const std::vector<int>& strings) {
  std::string said = strings.size() == 1 ? "string " : "strings ";
  for (std::size_t i = 0; i < strings.size(); ++i) {
    if (i > 0) said += i + 1 == strings.size() ? " and " : ", ";
    said += std::to_string(strings[i]);
  }
  return said;
}

std::string move_in_words(double move_mm, const char* where) {
  if (std::abs(move_mm) < step_mm / 2) return std::string("where it is at the ") + where;
  return shown(std::abs(move_mm)) + (move_mm > 0 ? " further back at the " : " further forward at the ") + where;
}

/// One wall moved and a thicker saddle, where that is enough.
bool widened(const SaddleTop& top, const std::vector<Span>& spans, const IntonationLimits& limits, SlotFit& fit) {
  double forward = 0, back = 0;
  const double land = limits.crest_land_least;
  for (const Span& span : spans) {
    const double front = front_mm(top, span.share);
    forward = std::max(forward, land - (span.low - front));
    back = std::max(back, span.high - front + land - in_mm(top.thickness));
  }
  if ((forward > 0) == (back > 0)) return false;
  const double wider = rounded_up(std::max(forward, back));
  if (in_mm(top.thickness) + wider > limits.slot_width_most) return false;
  fit.verdict = SlotVerdict::widen;
  (forward > 0 ? fit.widen_front : fit.widen_back) = mm(wider);
  fit.words = std::string("The slot must be widened at its ") + (forward > 0 ? "front" : "back") + " wall by " +
              shown(wider) + ", for a saddle " + shown(in_mm(top.thickness) + wider) + " thick";
  return true;
}

void recut(const SaddleTop& top, const std::vector<Span>& spans, const IntonationLimits& limits, SlotFit& fit) {
  fit.verdict = SlotVerdict::recut;
  const double thickness = std::max(in_mm(top.thickness), in_mm(fit.thickness_least));
  const WallMove move = least_move(top, thickness, limits.crest_land_least, spans).value_or(WallMove{});
  fit.move_bass = mm(rounded(move.bass));
  fit.move_treble = mm(rounded(move.treble));
  fit.words = "The slot must be filled and cut anew, its front wall " + move_in_words(in_mm(fit.move_bass), "bass") +
              " and " + move_in_words(in_mm(fit.move_treble), "treble");
  if (thickness > in_mm(top.thickness)) fit.words += ", for a saddle " + shown(thickness) + " thick";
}

void cannot_tell(SlotFit& fit) {
  fit.verdict = SlotVerdict::cannot_tell;
  const std::vector<int> unread = strings_to_read(fit);
  if (!unread.empty()) {
    fit.words = "Whether the slot must move cannot be told yet: read the octave error of " + strings_in_words(unread) +
                " at fret 12.";
    return;
  }
  const auto near = strings_where(fit, [](const CrestOnTop& crest) { return crest.place == CrestPlace::may_fit; });
  fit.words = "Too near the edge of the saddle's top to tell at " + strings_in_words(near) +
              ": read the octave there again, several times over.";
}

}  // namespace

SlotFit slot_fit(const SaddleTop& top, const std::vector<WantedCrest>& crests, const IntonationLimits& limits) {
  SlotFit fit;
  const double land = limits.crest_land_least;
  bool out = false, doubtful = false;
  for (const WantedCrest& crest : crests) {
    const Length front = mm(front_mm(top, crest.share));
    const Length wall = crest.read ? mm(0) : limits.spreads * top.front_sd;
    CrestOnTop on{.string = crest.string,
                  .behind_front = crest.setback - front,
                  .behind_front_low = crest.low - wall - front,
                  .behind_front_high = crest.high + wall - front};
    on.place = place_of(on, land, in_mm(top.thickness));
    out = out || on.place == CrestPlace::too_far_forward || on.place == CrestPlace::too_far_back;
    doubtful = doubtful || on.place == CrestPlace::may_fit;
    on.to_be_read = on.place != CrestPlace::fits && !crest.read;
    fit.crests.push_back(on);
  }
  const std::vector<Span> spans = spans_of(crests);
  fit.thickness_least = mm(rounded_up(thickness_least_mm(spans, land)));
  if (!out && !doubtful) {
    fit.words = "Every crest fits on this saddle's top, at least " + shown(land) + " from its faces.";
  } else if (!out) {
    cannot_tell(fit);
  } else {
    if (!widened(top, spans, limits, fit)) recut(top, spans, limits, fit);
    const std::vector<int> unread = strings_to_read(fit);
    fit.words +=
        unread.empty() ? "." : "; before it is cut, read the octave error of " + strings_in_words(unread) + ".";
  }
  return fit;
}

}  // namespace tailblock
