#include "strings/note_sound.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tailblock {
namespace {

using std::numbers::pi;
constexpr double steps_per_s = 2 * sound_samples_per_s;

/// Passes everything up to 21 kHz and nothing that would fold back below it.
/// A sinc cut at half the new rate under a Kaiser window, 90 dB down. Source: Kaiser's window formulas (from memory).
std::vector<double> low_pass(int every) {
  constexpr double kaiser_beta = 8.96;
  const int half = 70 * every;
  std::vector<double> taps;
  const double bottom = std::cyl_bessel_i(0.0, kaiser_beta);
  for (int i = -half; i <= half; ++i) {
    const double x = static_cast<double>(i) / every;
    const double sinc = i == 0 ? 1 : std::sin(pi * x) / (pi * x);
    const double edge = static_cast<double>(i) / (half + 1);
    taps.push_back(sinc / every * std::cyl_bessel_i(0.0, kaiser_beta * std::sqrt(1 - edge * edge)) / bottom);
  }
  return taps;
}

/// One sample in `every`, none of them false.
std::vector<double> thinned(const std::vector<double>& fine, int every) {
  const std::vector<double> taps = low_pass(every);
  const auto half = static_cast<std::ptrdiff_t>(taps.size() / 2);
  const auto count = static_cast<std::ptrdiff_t>(fine.size());
  std::vector<double> coarse;
  for (std::ptrdiff_t centre = 0; centre < count; centre += every) {
    double sum = 0;
    for (std::ptrdiff_t i = std::max<std::ptrdiff_t>(-half, -centre); i <= half && centre + i < count; ++i) {
      sum += taps[static_cast<std::size_t>(i + half)] * fine[static_cast<std::size_t>(centre + i)];
    }
    coarse.push_back(sum);
  }
  return coarse;
}

/// Up and down without a click.
void fade(std::vector<double>& sound) {
  const auto soften = [&](std::size_t index, double share) { sound[index] *= (1 - std::cos(pi * share)) / 2; };
  const std::size_t in = std::min<std::size_t>(sound.size(), sound_samples_per_s / 1000);
  const std::size_t out = std::min<std::size_t>(sound.size() / 4, sound_samples_per_s / 5);
  for (std::size_t i = 0; i < in; ++i) soften(i, static_cast<double>(i) / static_cast<double>(in));
  for (std::size_t i = 0; i < out; ++i) soften(sound.size() - 1 - i, static_cast<double>(i) / static_cast<double>(out));
}

double loudest(const std::vector<double>& sound) {
  double peak = 0;
  for (const double sample : sound) peak = std::max(peak, std::abs(sample));
  return peak;
}

}  // namespace

void describe(FieldVisitor& visit, NoteSoundRequest& request) {
  describe(visit, request.note);
  visit.flag({"with_frets", "false: the same note where there are no frets", Need::has_default}, request.with_frets);
}

std::vector<std::int16_t> note_sound(const NoteSoundRequest& request) {
  require_valid(request);
  const ContactMotion motion = contact_motion(
      request.note, {.seconds = request.note.seconds, .least_steps_per_s = steps_per_s, .keep_bridge_force = true},
      Compare::same_note_without_frets);
  const int every = static_cast<int>(std::lround(1 / (motion.motions.step_s * sound_samples_per_s)));
  std::vector<double> fretted = thinned(motion.motions.plucks[0].bridge_force, every);
  std::vector<double> bare = thinned(motion.motions.plucks[1].bridge_force, every);
  constexpr double full_scale = 0.9 * 32767;
  const double scale = full_scale / std::max(loudest(fretted), loudest(bare));
  std::vector<double>& sound = request.with_frets ? fretted : bare;
  fade(sound);
  std::vector<std::int16_t> samples;
  samples.reserve(sound.size());
  for (const double force : sound) samples.push_back(static_cast<std::int16_t>(std::lround(force * scale)));
  return samples;
}

}  // namespace tailblock
