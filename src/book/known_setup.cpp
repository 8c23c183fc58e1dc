#include <algorithm>

#include "book/questions.h"

namespace tailblock {
namespace {

/// The value read, or the one assumed, which is then said.
Length known_or(const InstrumentStory& story, Date today, std::string_view measure, Length assumed,
                const std::string& words, std::vector<std::string>& said) {
  if (const auto read = latest_reading(story, measure, today)) return mm(*read);
  said.push_back(words + ": " + plain_number(in_mm(assumed)) + " mm assumed, none was read");
  return assumed;
}

}  // namespace

std::optional<double> latest_reading(const InstrumentStory& story, std::string_view measure, Date until) {
  std::optional<double> latest;
  for (const VisitStory& visit : story.visits) {
    if (visit.visit.date > until) break;
    for (const ReadingState state : {ReadingState::as_found, ReadingState::as_left}) {
      for (const Reading& reading : visit.readings) {
        if (reading.state == state && reading.superseded_by == 0 && reading.measure == measure) latest = reading.value;
      }
    }
  }
  return latest;
}

KnownSetup known_setup(const InstrumentStory& story, const DataTables& tables, Date today) {
  const Instrument& instrument = story.instrument;
  KnownSetup setup;
  auto& said = setup.assumed;
  NeckLine& neck = setup.clearance.neck;
  const NeckLine usual;
  neck.scale_length = instrument.scale_length;
  neck.body_joint_fret = instrument.body_joint_fret;
  neck.fret_count = instrument.fret_count;
  neck.nut_over_fret1_bass =
      known_or(story, today, "action1_bass", usual.nut_over_fret1_bass, "Height over fret 1, bass", said);
  neck.nut_over_fret1_treble =
      known_or(story, today, "action1_treble", usual.nut_over_fret1_treble, "Height over fret 1, treble", said);
  neck.relief = known_or(story, today, "relief", tables.players.relief, "Relief", said);
  setup.clearance.action.action12_bass =
      known_or(story, today, "action12_bass", tables.players.bass.wanted, "Action at fret 12, bass", said);
  setup.clearance.action.action12_treble =
      known_or(story, today, "action12_treble", tables.players.treble.wanted, "Action at fret 12, treble", said);
  setup.clearance.strings = tuned(string_set_named(tables.string_sets, instrument.string_set),
                                  tuning_named(tables.tunings, instrument.tuning));
  setup.clearance.attack =
      attack_named(tables.attacks, attack_level_names[static_cast<std::size_t>(instrument.attack)]);
  said.push_back("Frets level, " + instrument.string_set + " strings, " + instrument.tuning + " tuning, " +
                 std::string(attack_level_names[static_cast<std::size_t>(instrument.attack)]) + " playing");
  return setup;
}

PlayerNeeds player_needs(const InstrumentStory& story, const KnownSetup& setup, const DataTables& tables,
                         EnvelopeMemo& memo) {
  const Instrument& instrument = story.instrument;
  PlayerNeeds needs;
  needs.least_clean = least_clean_action(setup.clearance, *memo.of(envelope_request(setup.clearance)));
  needs.limits.lowest_bass = needs.least_clean.outer.action12_bass;
  needs.limits.lowest_treble = needs.least_clean.outer.action12_treble;
  const auto wanted = [](const std::optional<Length>& said, const PlayerSide& side, Length lowest) {
    return said.value_or(std::max(side.wanted, lowest + side.least_margin));
  };
  needs.wanted_bass = wanted(instrument.wanted_action12_bass, tables.players.bass, needs.limits.lowest_bass);
  needs.wanted_treble = wanted(instrument.wanted_action12_treble, tables.players.treble, needs.limits.lowest_treble);
  needs.limits.highest_bass =
      instrument.highest_action12_bass.value_or(needs.wanted_bass + tables.players.bass.comfort);
  needs.limits.highest_treble =
      instrument.highest_action12_treble.value_or(needs.wanted_treble + tables.players.treble.comfort);
  return needs;
}

}  // namespace tailblock
