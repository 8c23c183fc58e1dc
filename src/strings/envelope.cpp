#include "strings/envelope.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <cstddef>
#include <numbers>

#include "strings/fretted_motion.h"
#include "strings/string_line.h"

namespace tailblock {
namespace {

using std::numbers::pi;

// What follows decides accuracy and speed only; docs/models/clearance.md has the convergence figures.
constexpr double highest_mode_hz = 20000;  ///< higher ones die within milliseconds and are small
constexpr double motion_s = 0.25;          ///< how long the motion is followed
constexpr double samples_per_cycle = 2.6;  ///< of the highest mode still alive; peaks are refined by a parabola
constexpr double dead_tail = 1e-3;         ///< modes whose amplitudes sum to less, mm per mm of pluck, are dropped
constexpr double nearest_pluck = 0.75;     ///< share of the sounding length beyond which nobody plucks

constexpr std::size_t lanes = 8;          ///< samples worked on at once, to suit vector registers
constexpr std::size_t frets_at_once = 4;  ///< rows of the product held in registers
constexpr std::size_t block_samples =
    64;  ///< samples of one block; neighbours share two, so that no peak falls between

using Lanes = std::array<float, lanes>;
using Block = std::array<float, block_samples>;

/// One partial released from rest: amplitude * exp(-decay t) * (cos + decay/omega sin)(omega t).
struct Mode {
  double wave_number;
  double omega;
  double decay;
  double amplitude;
};

/// The speaking part of a string with its pluck, SI.
struct Speaking {
  double length;
  double pluck_from_stop;
  double pluck_width;
};

/// The partials of a pluck 1 high at the pluck point, lowest first.
std::vector<Mode> modes_of(const MovingString& string, const Speaking& note) {
  const double T = in_newtons(string.tension);
  const double height =
      height_per_force({.length = note.length, .tension = T, .bending_stiffness = string.bending_stiffness_n_m2},
                       {.from_stop = note.pluck_from_stop, .width = note.pluck_width});
  std::vector<Mode> modes;
  for (int q = 1;; ++q) {
    const double k = q * pi / note.length;
    const double restoring = T * k * k + string.bending_stiffness_n_m2 * k * k * k * k;
    const double decay = string.loss_per_s + string.loss_m2_per_s * k * k;
    const double omega_squared = restoring / string.kg_per_metre - decay * decay;
    if (omega_squared <= 0 || std::sqrt(omega_squared) > 2 * pi * highest_mode_hz) break;
    const double half_width = k * note.pluck_width / 2;
    const double force = 2 / note.length * std::sin(k * note.pluck_from_stop) * std::sin(half_width) / half_width;
    modes.push_back({k, std::sqrt(omega_squared), decay, force / restoring / height});
  }
  return modes;
}

/// How many of the lowest modes still matter after `t` seconds.
std::size_t alive_after(const std::vector<Mode>& modes, double t) {
  double tail = 0;
  std::size_t alive = modes.size();
  while (alive > 1) {
    const Mode& mode = modes[alive - 1];
    tail += std::abs(mode.amplitude) * std::exp(-mode.decay * t);
    if (tail > dead_tail) break;
    --alive;
  }
  return alive;
}

/// The time course of one mode, sampled; each block starts from a state kept in double precision.
class Sampler {
 public:
  Sampler(const Mode& mode, double start_s, double step_s) {
    const std::complex<double> rate(-mode.decay, mode.omega);
    // u = Re(release * exp(rate t)) with u'(0) = 0.
    const std::complex<double> release(1, -mode.decay / mode.omega);
    state_ = release * std::exp(rate * start_s);
    one_step_ = std::exp(rate * step_s);
    const std::complex<double> many = std::exp(rate * (step_s * lanes));
    twice_cosine_ = static_cast<float>(2 * many.real());
    damping_ = static_cast<float>(std::norm(many));
    to_next_block_ = std::exp(rate * (step_s * (block_samples - 2)));
  }

  /// u(j + lanes) = 2 Re(z^lanes) u(j) - |z^lanes|^2 u(j - lanes), z one step.
  void next_block(Block& out) {
    std::complex<double> z = state_;
    for (std::size_t j = 0; j < 2 * lanes; ++j) {
      out[j] = static_cast<float>(z.real());
      z = {z.real() * one_step_.real() - z.imag() * one_step_.imag(),
           z.real() * one_step_.imag() + z.imag() * one_step_.real()};
    }
    for (std::size_t j = 2 * lanes; j < block_samples; j += lanes) {
      for (std::size_t lane = 0; lane < lanes; ++lane) {
        out[j + lane] = twice_cosine_ * out[j + lane - lanes] - damping_ * out[j + lane - 2 * lanes];
      }
    }
    state_ = state_ * to_next_block_;
  }

 private:
  std::complex<double> state_, one_step_, to_next_block_;
  float twice_cosine_ = 0;
  float damping_ = 0;
};

/// Displacement over a few frets through one block: shape (frets x modes) times time courses (modes x samples).
/// `shape` holds, mode by mode, the frets_at_once values of this group.
void displacement(const float* shape, const std::vector<Block>& courses, std::size_t modes,
                  std::array<Block, frets_at_once>& out) {
  for (std::size_t j = 0; j < block_samples; j += lanes) {
    std::array<Lanes, frets_at_once> sum{};
    for (std::size_t q = 0; q < modes; ++q) {
      for (std::size_t fret = 0; fret < frets_at_once; ++fret) {
        for (std::size_t lane = 0; lane < lanes; ++lane) {
          sum[fret][lane] += shape[q * frets_at_once + fret] * courses[q][j + lane];
        }
      }
    }
    for (std::size_t fret = 0; fret < frets_at_once; ++fret) {
      std::copy(sum[fret].begin(), sum[fret].end(), out[fret].begin() + static_cast<std::ptrdiff_t>(j));
    }
  }
}

/// The highest point of a smooth course through its samples: the top of the parabola at each local peak.
/// `sign` -1 looks for the lowest.
double refined_peak(const Block& samples, float sign, double best) {
  for (std::size_t j = 1; j + 1 < block_samples; ++j) {
    const double before = sign * samples[j - 1], here = sign * samples[j], after = sign * samples[j + 1];
    if (here < before || here < after) continue;
    const double bend = before - 2 * here + after;
    const double top = bend < 0 ? here - (after - before) * (after - before) / (8 * bend) : here;
    best = std::max(best, top);
  }
  return best;
}

/// Largest and smallest sample, quickly.
struct Extremes {
  float low, high;
};
Extremes extremes(const Block& samples) {
  Lanes low{}, high{};
  for (std::size_t j = 0; j < block_samples; j += lanes) {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const float u = samples[j + lane];
      low[lane] = u < low[lane] ? u : low[lane];
      high[lane] = u > high[lane] ? u : high[lane];
    }
  }
  return {*std::min_element(low.begin(), low.end()), *std::max_element(high.begin(), high.end())};
}

/// Depths over the frets of one note.
class NoteMotion {
 public:
  NoteMotion(std::vector<Mode> modes, const std::vector<double>& fret_from_stop)
      : modes_(std::move(modes)), frets_(fret_from_stop.size()), low_(frets_, 0), high_(frets_, 0) {
    const std::size_t groups = (frets_ + frets_at_once - 1) / frets_at_once;
    shapes_.assign(groups, std::vector<float>(modes_.size() * frets_at_once, 0));
    for (std::size_t fret = 0; fret < frets_; ++fret) {
      for (std::size_t q = 0; q < modes_.size(); ++q) {
        shapes_[fret / frets_at_once][q * frets_at_once + fret % frets_at_once] =
            static_cast<float>(modes_[q].amplitude * std::sin(modes_[q].wave_number * fret_from_stop[fret]));
      }
    }
    courses_.resize(modes_.size());
  }

  /// From `start_s` to `end_s` with the modes alive at the start and as few samples as they need.
  void follow(double start_s, double end_s) {
    const std::size_t alive = alive_after(modes_, start_s);
    const double step_s = 2 * pi / (samples_per_cycle * modes_[alive - 1].omega);
    std::vector<Sampler> samplers;
    samplers.reserve(alive);
    for (std::size_t q = 0; q < alive; ++q) samplers.emplace_back(modes_[q], start_s - step_s, step_s);
    for (double t = start_s; t < end_s; t += step_s * (block_samples - 2)) {
      for (std::size_t q = 0; q < alive; ++q) samplers[q].next_block(courses_[q]);
      look(alive);
    }
  }

  [[nodiscard]] const std::vector<double>& low() const { return low_; }
  [[nodiscard]] const std::vector<double>& high() const { return high_; }

 private:
  void look(std::size_t alive) {
    constexpr double worth_refining = 1.02;  // a parabola never adds more than this to a peak that counts
    std::array<Block, frets_at_once> u;
    for (std::size_t group = 0; group < shapes_.size(); ++group) {
      displacement(shapes_[group].data(), courses_, alive, u);
      for (std::size_t i = 0; i < frets_at_once && group * frets_at_once + i < frets_; ++i) {
        const std::size_t fret = group * frets_at_once + i;
        const Extremes seen = extremes(u[i]);
        if (seen.high * worth_refining > high_[fret]) high_[fret] = refined_peak(u[i], 1, high_[fret]);
        if (-seen.low * worth_refining > low_[fret]) low_[fret] = refined_peak(u[i], -1, low_[fret]);
      }
    }
  }

  std::vector<Mode> modes_;
  std::size_t frets_;
  std::vector<double> low_, high_;
  std::vector<std::vector<float>> shapes_;
  std::vector<Block> courses_;
};

UnitEnvelope unit_envelope(const EnvelopeRequest& request, int string_number, int stopped_fret) {
  const MovingString& string = request.strings[static_cast<std::size_t>(string_number - 1)];
  const double scale = request.scale_length.in_base();
  const double stop = fret_from_nut(request.scale_length, stopped_fret).in_base();
  const double length = scale + string.setback.in_base() - stop;
  const double from_saddle = pluck_from_saddle(request.pluck_from_saddle, Length::from_base(length)).in_base();
  const Speaking note{length, length - from_saddle, request.pluck_width.in_base()};

  std::vector<double> fret_from_stop;
  for (int fret = stopped_fret + 1; fret <= request.fret_count; ++fret) {
    fret_from_stop.push_back(fret_from_nut(request.scale_length, fret).in_base() - stop);
  }
  NoteMotion motion(modes_of(string, note), fret_from_stop);
  double start = 0;
  for (double end = motion_s / 128; end <= motion_s; end *= 2) {
    motion.follow(start, end);
    start = end;
  }
  return {string_number, stopped_fret, motion.low(), motion.high()};
}

}  // namespace

void describe(FieldVisitor& visit, MovingString& string) {
  visit.number({"kg_per_metre", "mass per length"}, string.kg_per_metre, {1e-5, 0.1, "kg/m"});
  force(visit, {"tension_n", "pull at pitch"}, string.tension, {5, 500, "N"});
  visit.number({"bending_stiffness_n_m2", "E I of the solid part"}, string.bending_stiffness_n_m2, {0, 0.05, "N m2"});
  visit.length({"setback_mm", "saddle crest behind the scale length"}, string.setback, {-5, 15, "mm"});
  visit.number({"loss_per_s", "loss of slow partials", Need::has_default}, string.loss_per_s, {0, 50, "1/s"});
  visit.number({"loss_m2_per_s", "loss that grows with the square of the wave number", Need::has_default},
               string.loss_m2_per_s, {0, 0.05, "m2/s"});
}

void describe(FieldVisitor& visit, EnvelopeRequest& request) {
  visit.length({"scale_length_mm", "scale length"}, request.scale_length, {500, 700, "mm"});
  visit.integer({"fret_count", "number of frets"}, request.fret_count, {12, 24, ""});
  list(visit, {"strings", "string 1, the thinnest, first"}, request.strings, {1, 12});
  visit.length({"pluck_from_saddle_mm", "where the string is plucked", Need::has_default}, request.pluck_from_saddle,
               {20, 250, "mm"});
  visit.length({"pluck_width_mm", "width of finger or pick", Need::has_default}, request.pluck_width, {0.5, 20, "mm"});
}

void describe(FieldVisitor& visit, UnitEnvelope& envelope) {
  visit.integer({"string", "1 is the thinnest"}, envelope.string, {1, 12, ""});
  visit.integer({"stopped_fret", "0 is the open string"}, envelope.stopped_fret, {0, 23, ""});
  visit.numbers({"away", "reach below the rest line, mm per mm of pluck, plucked away from the board"}, envelope.away,
                {0, 3, ""}, {1, 24});
  visit.numbers({"toward", "the same, plucked toward the board"}, envelope.toward, {0, 3, ""}, {1, 24});
}

void describe(FieldVisitor& visit, UnitEnvelopes& envelopes) {
  visit.integer({"string_count", "number of strings"}, envelopes.string_count, {1, 12, ""});
  visit.integer({"fret_count", "number of frets"}, envelopes.fret_count, {12, 24, ""});
  list(visit, {"notes", "string 1 open, string 1 at fret 1, and so on"}, envelopes.notes, {12, 288});
}

Length pluck_from_saddle(Length stated, Length sounding_length) {
  return std::min(stated, nearest_pluck * sounding_length);
}

UnitEnvelopes unit_envelopes(const EnvelopeRequest& request) {
  require_valid(request);
  UnitEnvelopes envelopes;
  envelopes.string_count = static_cast<int>(request.strings.size());
  envelopes.fret_count = request.fret_count;
  for (int string = 1; string <= envelopes.string_count; ++string) {
    for (int stopped = 0; stopped < request.fret_count; ++stopped) {
      envelopes.notes.push_back(unit_envelope(request, string, stopped));
    }
  }
  return envelopes;
}

}  // namespace tailblock
