#include "strings/compensation.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace tailblock {
namespace {

/// Where a falling function is zero, by halving; the nearer end when it has no zero between.
template <class Falling>
double zero_between(double low, double high, Falling f) {
  constexpr int halvings = 60;  // from 55 mm to the rounding of a double
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    (f(middle) > 0 ? low : high) = middle;
  }
  return (low + high) / 2;
}

std::vector<double> errors(const StoppedString& string, const Stopping& stopping, const StringPlace& place) {
  std::vector<double> cents;
  for (int fret = 1; fret <= stopping.last_fret; ++fret) {
    cents.push_back(cents_sharp(string, fret, place, stopping.ends, stopping.finger));
  }
  return cents;
}

}  // namespace

Length octave_setback(const StoppedString& string, const Stopping& stopping) {
  constexpr Range searched{-15, 40, "mm"};
  const auto error = [&](double setback_mm) {
    return cents_sharp(string, 12, {.setback = mm(setback_mm)}, stopping.ends, stopping.finger);
  };
  if (!(error(searched.low) > 0) || !(error(searched.high) < 0)) {
    throw Refused("strings: no setback within -15..40 mm brings fret 12 in tune; check pitch, gauge and heights");
  }
  return mm(zero_between(searched.low, searched.high, error));
}

BothEnds nut_and_saddle(const StoppedString& string, const Stopping& stopping) {
  constexpr int rounds = 8;
  const Length step = mm(0.001);
  BothEnds best{.place = {.setback = octave_setback(string, stopping)}};
  for (int round = 0; round < rounds; ++round) {
    const StringPlace& at = best.place;
    const auto r = errors(string, stopping, at);
    const auto r_saddle = errors(string, stopping, {at.setback + step, at.nut_shift});
    const auto r_nut = errors(string, stopping, {at.setback, at.nut_shift + step});
    double ss = 0, sn = 0, nn = 0, sr = 0, nr = 0;
    for (std::size_t i = 0; i < r.size(); ++i) {
      const double by_saddle = (r_saddle[i] - r[i]) / in_mm(step);
      const double by_nut = (r_nut[i] - r[i]) / in_mm(step);
      ss += by_saddle * by_saddle;
      sn += by_saddle * by_nut;
      nn += by_nut * by_nut;
      sr += by_saddle * r[i];
      nr += by_nut * r[i];
    }
    const double determinant = ss * nn - sn * sn;
    best.place.setback += mm((sn * nr - nn * sr) / determinant);
    best.place.nut_shift += mm((sn * sr - ss * nr) / determinant);
  }
  double squares = 0;
  for (const double error : errors(string, stopping, best.place)) {
    squares += error * error;
    best.worst_cents = std::max(best.worst_cents, std::abs(error));
  }
  best.rms_cents = std::sqrt(squares / stopping.last_fret);
  return best;
}

double firmness_of(const StoppedString& string, Length setback, double octave_error_cents, const Finger& finger) {
  return zero_between(-4, 8, [&](double firm) {
    return octave_error_cents - cents_sharp(string, 12, {.setback = setback}, {firm, firm}, finger);
  });
}

double cents_per_mm_of_setback(const StoppedString& string, Length setback, const Stopping& stopping) {
  const auto error = [&](Length at) {
    return cents_sharp(string, 12, {.setback = at}, stopping.ends, stopping.finger);
  };
  return (error(setback + mm(0.5)) - error(setback - mm(0.5)));
}

}  // namespace tailblock
