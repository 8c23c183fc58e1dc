#include "strings/contact_map.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "strings/contact_note.h"

namespace tailblock {
namespace {

constexpr double map_steps_per_s = 88200;
constexpr double surely_clear_ratio = 1.03;

/// Everything that every note of a map shares.
struct Table {
  const ContactMapRequest& request;
  const MapEnvelopes& envelopes;
  const ContactVerdicts& limits;
  std::vector<MovingString> strings;
  Geometry g;
};

/// One attack on one note: in which directions it must be run, and what came of it.
struct AttackOnNote {
  PluckPlace place;
  double amplitude = 0;
  std::array<bool, 2> needs_run{};  ///< away, toward
  Buzz worst;
  ContactVerdict verdict = ContactVerdict::clean;
};

AttackOnNote attack_on(const Table& table, const Attack& attack, const UnitEnvelopes& envelopes, const NoteAsked& asked,
                       const ContactNote& note) {
  AttackOnNote on{.place = pluck_place(attack, note.length), .amplitude = 0, .needs_run = {}, .worst = {}};
  on.amplitude = note_of(table.g, attack, asked.string, asked.stopped_fret).amplitude;
  const UnitEnvelope& envelope = envelopes.note(asked.string, asked.stopped_fret);
  for (std::size_t i = 0; i < note.frets.size(); ++i) {
    const double reach = on.amplitude * surely_clear_ratio;
    on.needs_run[0] = on.needs_run[0] || note.frets[i].gap < reach * envelope.away[i];
    on.needs_run[1] = on.needs_run[1] || note.frets[i].gap < reach * envelope.toward[i];
  }
  return on;
}

void keep_worse(AttackOnNote& on, const Buzz& buzz, const ContactVerdicts& limits) {
  const ContactVerdict verdict = verdict_of(buzz, limits);
  const bool worse = verdict > on.verdict || (verdict == on.verdict && buzz.impulse_mns > on.worst.impulse_mns);
  if (!worse) return;
  on.verdict = verdict;
  on.worst = buzz;
}

/// A string without frets moves in proportion to its pluck: one closed form serves every pluck at one place.
class BareNotes {
 public:
  BareNotes(const SpeakingString& string, const StringGrid& grid, double seconds)
      : string_(string), grid_(grid), seconds_(seconds) {}

  BareMotion of(const HeldPluck& pluck) {
    if (!unit_ || place_.from_stop != pluck.place.from_stop || place_.width != pluck.place.width) {
      place_ = pluck.place;
      unit_ = bare_motion(string_, grid_, {place_, unit_height}, seconds_);
    }
    const double times = std::pow(pluck.height / unit_height, 2);
    return {times * unit_->bridge_energy, times * unit_->bridge_energy_high, times * unit_->energy_at_end};
  }

 private:
  static constexpr double unit_height = 1e-3;
  SpeakingString string_;
  StringGrid grid_;
  double seconds_;
  PluckPlace place_{};
  std::optional<BareMotion> unit_;
};

/// Steps every pluck that must be run, all together.
void run(const Table& table, const NoteAsked& asked, const ContactNote& note, std::array<AttackOnNote, 2>& attacks) {
  std::vector<HeldPluck> plucks;
  std::vector<AttackOnNote*> whose;
  for (AttackOnNote& on : attacks) {
    for (std::size_t toward = 0; toward < 2; ++toward) {
      if (!on.needs_run[toward]) continue;
      plucks.push_back({on.place, toward == 1 ? -on.amplitude : on.amplitude, true});
      whose.push_back(&on);
    }
  }
  if (plucks.empty()) return;
  const MotionWishes wishes{.least_steps_per_s = map_steps_per_s};
  const NoteMotions fretted = fretted_motion(note.string, note.frets, plucks, wishes);
  BareNotes bare(note.string, finest_grid(note.string, 1 / fretted.step_s), wishes.seconds);
  for (std::size_t i = 0; i < plucks.size(); ++i) {
    if (!fretted.plucks[i].first_touch_s) continue;
    keep_worse(*whose[i], buzz_of(fretted.plucks[i], bare.of(plucks[i]), asked.stopped_fret), table.limits);
  }
}

NoteContact note_contact(const Table& table, const NoteAsked& asked) {
  const MovingString& moving = table.strings[static_cast<std::size_t>(asked.string - 1)];
  const ContactNote note = contact_note(table.g, moving, asked.string, asked.stopped_fret);
  NoteContact result{.string = asked.string, .stopped_fret = asked.stopped_fret};
  if (const int fret = fret_lain_on(note, asked.stopped_fret); fret > 0) {
    result.verdict = NoteVerdict::on_normal_playing;
    result.struck_fret = fret;
    result.lies_on_fret = true;
    return result;
  }
  std::array<AttackOnNote, 2> attacks{attack_on(table, table.request.attack, table.envelopes.normal, asked, note),
                                      attack_on(table, table.request.hard_attack, table.envelopes.hard, asked, note)};
  run(table, asked, note, attacks);
  const auto& [normal, hard] = attacks;
  if (hard.verdict == ContactVerdict::buzzes) result.verdict = NoteVerdict::on_hard_playing;
  if (normal.verdict == ContactVerdict::buzzes) result.verdict = NoteVerdict::on_normal_playing;
  result.struck_fret = normal.worst.struck_fret > 0 ? normal.worst.struck_fret : hard.worst.struck_fret;
  result.gain_db_normal = normal.worst.gain_db;
  result.gain_db_hard = hard.worst.gain_db;
  result.impulse_normal_mns = normal.worst.impulse_mns;
  result.impulse_hard_mns = hard.worst.impulse_mns;
  return result;
}

std::vector<NoteAsked> notes_asked(const ContactMapRequest& request) {
  for (const NoteAsked& note : request.notes) {
    (void)require_within("notes.string", note.string, {1, static_cast<double>(request.neck.string_count), ""});
    (void)require_within("notes.stopped_fret", note.stopped_fret,
                         {0, static_cast<double>(request.neck.fret_count - 1), ""});
  }
  if (!request.notes.empty()) return request.notes;
  std::vector<NoteAsked> every;
  for (int string = 1; string <= request.neck.string_count; ++string) {
    for (int stopped = 0; stopped < request.neck.fret_count; ++stopped) every.push_back({string, stopped});
  }
  return every;
}

std::string sentence(const ContactMapResult& result) {
  const std::string all = std::to_string(result.notes.size());
  if (result.on_normal_playing > 0) {
    return std::to_string(result.on_normal_playing) + " of " + all + " notes buzz in normal playing, " +
           std::to_string(result.on_hard_playing) + " more when played hard.";
  }
  if (result.on_hard_playing > 0) {
    return "No note buzzes in normal playing; " + std::to_string(result.on_hard_playing) + " of " + all +
           " do when played hard.";
  }
  return "No note buzzes, normally or hard.";
}

}  // namespace

ClearanceRequest as_clearance(const ContactMapRequest& request, const Attack& attack) {
  return {request.neck, request.action, request.strings, attack};
}

ContactMapResult contact_map(const ContactMapRequest& request, const MapEnvelopes& envelopes,
                             const ContactVerdicts& limits, const DoEach& do_each) {
  require_valid(request);
  require_matching(as_clearance(request, request.attack), envelopes.normal);
  require_matching(as_clearance(request, request.hard_attack), envelopes.hard);
  const Table table{.request = request,
                    .envelopes = envelopes,
                    .limits = limits,
                    .strings = envelope_request(as_clearance(request, request.attack)).strings,
                    .g = geometry(request.neck, request.action)};
  const std::vector<NoteAsked> asked = notes_asked(request);
  ContactMapResult result;
  result.notes.resize(asked.size());
  do_each(asked.size(), [&](std::size_t i) { result.notes[i] = note_contact(table, asked[i]); });
  for (const NoteContact& note : result.notes) {
    result.clean += note.verdict == NoteVerdict::clean;
    result.on_hard_playing += note.verdict == NoteVerdict::on_hard_playing;
    result.on_normal_playing += note.verdict == NoteVerdict::on_normal_playing;
  }
  result.verdict = sentence(result);
  return result;
}

}  // namespace tailblock
