#include "strings/stopped_pitch.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tailblock {
namespace {

struct Run {
  double saddle_x, saddle_y, nut_x;
};

/// The open string goes through the nut slot and keeps its height at fret 12, wherever the crest is.
Run run_of(const StoppedString& string, const StringPlace& place) {
  const double saddle_x = string.scale_m + place.setback.in_base();
  const double x12 = string.scale_m / 2;
  return {.saddle_x = saddle_x,
          .saddle_y = string.nut_y + (string.line12_y - string.nut_y) * saddle_x / x12,
          .nut_x = place.nut_shift.in_base()};
}

/// From the nut to the crown, under the finger where it pushes the string below the straight line.
double behind_fret(const StoppedString& string, std::size_t n, double nut_x, const Finger& finger) {
  const double run = string.fret_x[n] - nut_x;
  const double rise = string.crown_y[n] - string.nut_y;
  const double depth = finger.press_depth.in_base();
  if (!(depth > 0)) return std::hypot(run, rise);
  const double back = std::min(finger.behind_fret.in_base(), (string.fret_x[n] - string.fret_x[n - 1]) / 2);
  const double finger_y = string.crown_y[n] - rise * back / run - depth;
  return std::hypot(run - back, finger_y - string.nut_y) + std::hypot(back, string.crown_y[n] - finger_y);
}

}  // namespace

StoppedString stopped_string(const NeckLine& neck, const StringEnds& ends, const GuitarString& string,
                             Length dead_length) {
  StoppedString result;
  const Length L = neck.scale_length;
  result.pull_n =
      in_newtons(tension({.speaking_length = L, .kg_per_metre = mass_per_metre(string), .pitch_hz = string.pitch_hz}));
  result.stretching_n = stretching_stiffness_n(string);
  result.bending_n_m2 = bending_stiffness_n_m2(string);
  result.scale_m = L.in_base();
  result.nut_y = ends.nut_over_frets.in_base();
  result.line12_y = result.nut_y + (ends.saddle_over_frets - ends.nut_over_frets).in_base() *
                                       (fret_from_nut(L, 12) / ends.saddle_from_nut);
  result.dead_m = dead_length.in_base();
  result.fret_x = {0};
  result.crown_y = {0};
  for (const Length crown : crowns_over_plane(neck)) {
    result.fret_x.push_back(fret_from_nut(L, static_cast<int>(result.fret_x.size())).in_base());
    result.crown_y.push_back(crown.in_base());
  }
  return result;
}

double stiff_first_mode(double sqrt_ei_over_t_m, double speaking_m, double firm_ends) {
  const double e = sqrt_ei_over_t_m / speaking_m;
  const double q = firm_ends;
  return 1 + q * e + (q * q + std::numbers::pi * std::numbers::pi / 2) * e * e;
}

Stopped stopped(const StoppedString& string, int fret, const StringPlace& place, const Finger& finger) {
  const auto n = static_cast<std::size_t>(fret);
  const Run run = run_of(string, place);
  Stopped note;
  note.open_m = std::hypot(run.saddle_x - run.nut_x, run.saddle_y - string.nut_y);
  note.sounding_m = std::hypot(run.saddle_x - string.fret_x[n], run.saddle_y - string.crown_y[n]);
  note.longer_m = behind_fret(string, n, run.nut_x, finger) + note.sounding_m - note.open_m;
  note.pull_n = string.pull_n + string.stretching_n * note.longer_m / (note.open_m + string.dead_m);
  return note;
}

double cents_sharp(const StoppedString& string, int fret, const StringPlace& place, const EndFirmness& ends,
                   const Finger& finger) {
  const Stopped note = stopped(string, fret, place, finger);
  const auto mode = [&](double pull_n, double length_m, double firm_ends) {
    return stiff_first_mode(std::sqrt(string.bending_n_m2 / pull_n), length_m, firm_ends) * std::sqrt(pull_n) /
           length_m;
  };
  return 1200 *
             std::log2(mode(note.pull_n, note.sounding_m, ends.stopped) / mode(string.pull_n, note.open_m, ends.open)) -
         100.0 * fret;
}

Force least_finger_force(const StoppedString& string, int fret, Length setback) {
  const auto n = static_cast<std::size_t>(fret);
  const Run run = run_of(string, {.setback = setback});
  const double x = string.fret_x[n];
  const double height = string.nut_y + (run.saddle_y - string.nut_y) * x / run.saddle_x - string.crown_y[n];
  return newtons(string.pull_n * height * (1 / x + 1 / (run.saddle_x - x)));
}

}  // namespace tailblock
