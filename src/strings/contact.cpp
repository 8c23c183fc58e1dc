#include "strings/contact.h"

#include <cmath>
#include <numbers>

#include "strings/bare_motion.h"
#include "strings/contact_note.h"

namespace tailblock {
namespace {

constexpr double reported_steps_per_s = 176400;  ///< gain within 0.3 dB of the limit: docs/models/contact.md

/// Losses that make a string fall by 60 dB in the times given.
///
///     s0 + s1 (2 pi f/c)^2 = 3 ln(10)/t       at both pitches f
void set_losses(MovingString& string, const DecayTimes& decay) {
  const double per_time = 3 * std::numbers::ln10;
  const auto square_of_wave_number = [&](double hz) {
    return std::pow(2 * std::numbers::pi * hz, 2) * string.kg_per_metre / in_newtons(string.tension);
  };
  const double slow = per_time / decay.at_100_hz_s, fast = per_time / decay.at_2000_hz_s;
  const double k100 = square_of_wave_number(100), k2000 = square_of_wave_number(2000);
  string.loss_m2_per_s = (fast - slow) / (k2000 - k100);
  string.loss_per_s = slow - string.loss_m2_per_s * k100;
  if (string.loss_m2_per_s < 0 || string.loss_per_s < 0) {
    throw Refused("decay: the losses at 2000 Hz must be larger than at 100 Hz, and less than 400 times as large");
  }
}

void require_consistent(const ContactRequest& request) {
  if (static_cast<int>(request.strings.size()) != request.neck.string_count) {
    throw Refused("strings: " + std::to_string(request.strings.size()) + " items, the neck has " +
                  std::to_string(request.neck.string_count) + " strings");
  }
  (void)require_within("string", request.string, {1, static_cast<double>(request.neck.string_count), ""});
  (void)require_within("stopped_fret", request.stopped_fret, {0, static_cast<double>(request.neck.fret_count - 1), ""});
  if (request.amplitude && request.pluck_force) throw Refused("amplitude_mm: give this or pluck_force_n, not both");
}

double amplitude_of(const ContactRequest& request, const Geometry& g, double give) {
  if (request.amplitude) return request.amplitude->in_base();
  if (request.pluck_force) return in_newtons(*request.pluck_force) * give;
  return note_of(g, request.attack, request.string, request.stopped_fret).amplitude;
}

std::string note_name(const ContactRequest& request) {
  return "String " + std::to_string(request.string) +
         (request.stopped_fret == 0 ? " open" : " at fret " + std::to_string(request.stopped_fret));
}

std::string sentence(const ContactRequest& request, const ContactResult& result, int hardest) {
  const std::string note = note_name(request);
  if (result.verdict == ContactVerdict::clean) return note + " touches no fret when plucked like this.";
  const std::string fret = " fret " + std::to_string(hardest);
  if (result.verdict == ContactVerdict::graze) return note + " only grazes" + fret + ": nothing that sounds.";
  return note + " buzzes on" + fret + " when plucked like this.";
}

}  // namespace

ContactVerdict verdict_of(const Buzz& buzz, const ContactVerdicts& limits) {
  if (buzz.struck_fret == 0) return ContactVerdict::clean;
  const bool heard = buzz.gain_db >= limits.buzz_from_gain_db || buzz.energy_taken >= limits.buzz_from_energy_taken;
  return heard ? ContactVerdict::buzzes : ContactVerdict::graze;
}

ContactMotion contact_motion(const ContactRequest& request, const MotionWishes& wishes, Compare compare) {
  require_valid(request);
  require_consistent(request);
  const ClearanceRequest set_up{request.neck, request.action, request.strings, request.attack};
  const EnvelopeRequest strings = envelope_request(set_up);
  require_valid(strings);
  MovingString moving = strings.strings[static_cast<std::size_t>(request.string - 1)];
  if (request.decay) set_losses(moving, *request.decay);
  const Geometry g = geometry(request.neck, request.action);
  const ContactNote note = contact_note(g, moving, request.string, request.stopped_fret);
  if (const int fret = fret_lain_on(note, request.stopped_fret); fret > 0) {
    throw Refused("action: " + note_name(request) + " lies on fret " + std::to_string(fret) + " before it is plucked");
  }
  ContactMotion motion{.string = note.string, .pluck = {.place = pluck_place(request.attack, note.length)}};
  const double give = height_per_force(note.string, motion.pluck.place);
  const double amplitude = amplitude_of(request, g, give);
  motion.pluck.height = request.direction == PluckDirection::away ? amplitude : -amplitude;
  motion.pluck_force = newtons(amplitude / give);
  std::vector<HeldPluck> plucks{motion.pluck};
  if (compare == Compare::same_note_without_frets) plucks.push_back({motion.pluck.place, motion.pluck.height, false});
  motion.motions = fretted_motion(note.string, note.frets, plucks, wishes);
  return motion;
}

ContactResult contact(const ContactRequest& request, const ContactVerdicts& limits) {
  const ContactMotion motion = contact_motion(
      request, {.seconds = request.seconds, .least_steps_per_s = reported_steps_per_s, .watch_energy = true},
      Compare::nothing);
  const PluckMotion& fretted = motion.motions.plucks[0];
  const StringGrid grid = finest_grid(motion.string, 1 / motion.motions.step_s);
  const BareMotion bare = bare_motion(motion.string, grid, motion.pluck, request.seconds);
  const Buzz buzz = buzz_of(fretted, bare, request.stopped_fret);
  ContactResult result;
  result.verdict = verdict_of(buzz, limits);
  result.sentence = sentence(request, result, buzz.struck_fret);
  result.amplitude = Length::from_base(std::abs(motion.pluck.height));
  result.pluck_force = motion.pluck_force;
  if (fretted.first_touch_s) {
    result.first_touch_ms = *fretted.first_touch_s * 1000;
    result.first_fret = request.stopped_fret + 1 + static_cast<int>(fretted.first_point);
  }
  for (std::size_t i = 0; i < fretted.impulses.size(); ++i) {
    if (fretted.impulses[i] == 0) continue;
    result.struck.push_back({request.stopped_fret + 1 + static_cast<int>(i), fretted.impulses[i] * 1000});
  }
  result.impulse_mns = buzz.impulse_mns;
  result.gain_db = buzz.gain_db;
  result.energy_taken = buzz.energy_taken;
  result.pluck_energy_mj = fretted.energy_at_release * 1000;
  result.energy_balance = fretted.energy_error;
  result.steps_per_s = static_cast<int>(std::lround(1 / motion.motions.step_s));
  return result;
}

}  // namespace tailblock
