#include <array>

#include "strings/contact.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 2> directions{"away", "toward"};
constexpr std::array<std::string_view, 3> verdicts{"clean", "graze", "buzzes"};

}  // namespace

void describe(FieldVisitor& visit, DecayTimes& decay) {
  visit.number({"at_100_hz_s", "time to fall by 60 dB at 100 Hz"}, decay.at_100_hz_s, {0.2, 60, "s"});
  visit.number({"at_2000_hz_s", "the same at 2000 Hz"}, decay.at_2000_hz_s, {0.1, 60, "s"});
}

void describe(FieldVisitor& visit, ContactRequest& request) {
  object(visit, {"neck", "neck, nut, relief and frets", Need::has_default}, request.neck);
  object(visit, {"action", "heights at fret 12 or at the saddle"}, request.action);
  list(visit, {"strings", "string 1, the thinnest, first"}, request.strings, {1, 12});
  object(visit, {"attack", "where and how hard the player plucks"}, request.attack);
  visit.integer({"string", "1 is the thinnest"}, request.string, {1, 12, ""});
  visit.integer({"stopped_fret", "0 is the open string", Need::has_default}, request.stopped_fret, {0, 23, ""});
  choice(visit, {"direction", "which way it is drawn before it is let go", Need::has_default}, request.direction,
         directions);
  maybe(visit, {"amplitude_mm", "of this note at the pluck, normal to the board, instead of the attack's"},
        request.amplitude, [&](const Field& field, Length& value) {
          visit.length(field, value, {0.01, 5, "mm"});
        });
  maybe(visit, {"pluck_force_n", "the same as a force"}, request.pluck_force, [&](const Field& field, Force& value) {
    force(visit, field, value, {0.01, 20, "N"});
  });
  visit.number({"seconds", "how long it is followed", Need::has_default}, request.seconds, {0.05, 4, "s"});
  maybe(visit, {"decay", "how fast the string dies away, instead of the usual losses"}, request.decay,
        [&](const Field& field, DecayTimes& value) { object(visit, field, value); });
}

void describe(FieldVisitor& visit, StruckFret& struck) {
  visit.integer({"fret", "the fret"}, struck.fret, {1, 24, ""});
  visit.number({"impulse_mns", "all pushes on it added up, mN s"}, struck.impulse_mns, {0, 1e5, "mN s"});
}

void describe(FieldVisitor& visit, ContactResult& result) {
  choice(visit, {"verdict", "what it means"}, result.verdict, verdicts);
  visit.text({"sentence", "one sentence"}, result.sentence, 200);
  visit.length({"amplitude_mm", "as let go"}, result.amplitude, {0, 100, "mm"});
  force(visit, {"pluck_force_n", "that holds it there"}, result.pluck_force, {0, 1000, "N"});
  maybe(visit, {"first_touch_ms", "after it is let go; absent when it touches nothing"}, result.first_touch_ms,
        [&](const Field& field, double& value) {
          visit.number(field, value, {0, 4000, "ms"});
        });
  maybe(visit, {"first_fret", "the fret touched first"}, result.first_fret, [&](const Field& field, int& value) {
    visit.integer(field, value, {1, 24, ""});
  });
  list(visit, {"struck", "every fret that was touched"}, result.struck, {0, 24});
  visit.number({"impulse_mns", "to all frets together, mN s"}, result.impulse_mns, {0, 1e6, "mN s"});
  visit.number({"gain_db", "part of the bridge's force above 2 kHz, over the same note without frets"}, result.gain_db,
               {-100, 100, "dB"});
  visit.number({"energy_taken", "of what the note would have at the end without frets"}, result.energy_taken,
               {-10, 1, ""});
  visit.number({"pluck_energy_mj", "put into the string by the pluck"}, result.pluck_energy_mj, {0, 1e5, "mJ"});
  visit.number({"energy_balance", "largest error of the energy at any step, damping and pluck accounted for"},
               result.energy_balance, {0, 1, ""});
  visit.integer({"steps_per_s", "steps the motion was followed in"}, result.steps_per_s, {1, 1e8, ""});
}

}  // namespace tailblock
