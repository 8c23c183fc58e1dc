#include "strings/note_sound.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "strings/thin_out.h"

namespace tailblock {
namespace {

using std::numbers::pi;
constexpr double steps_per_s = 2 * sound_samples_per_s;

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
  std::vector<double> fretted = thinned_out(motion.motions.plucks[0].bridge_force, every);
  std::vector<double> bare = thinned_out(motion.motions.plucks[1].bridge_force, every);
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
