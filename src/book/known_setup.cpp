#include <algorithm>
#include <cmath>

#include "book/kept_frets.h"
#include "book/questions.h"
#include "quantity/trade_notation.h"
#include "strings/relief_change.h"

namespace tailblock {
namespace {

/// The value read, or the one assumed, which is then said.
Length known_or(const InstrumentStory& story, Date today, std::string_view measure, Length assumed,
                const std::string& words, std::vector<std::string>& said) {
  if (const auto read = latest_reading(story, measure, today)) return mm(*read);
  said.push_back(words + ": " + plain_number(in_mm(assumed)) + " mm assumed, none was read");
  return assumed;
}

struct SideNeeds {
  Length wanted, highest;
};

SideNeeds side_needs(const std::string& side, Length lowest, const PlayerSide& usual, std::optional<Length> wanted_said,
                     std::optional<Length> highest_said, std::vector<std::string>& said) {
  SideNeeds needs;
  needs.wanted = std::max(wanted_said.value_or(usual.wanted), wanted_said ? lowest : lowest + usual.least_margin);
  if (wanted_said && *wanted_said < lowest) {
    said.push_back("Wanted at the " + side + ": " + as_trade(*wanted_said).millimetres +
                   " would touch frets, played like this; " + as_trade(lowest).millimetres + " is aimed at");
  }
  needs.highest = highest_said.value_or(needs.wanted + usual.comfort);
  if (needs.highest < needs.wanted + usual.least_margin) {
    needs.highest = needs.wanted + usual.least_margin;
    said.push_back("Highest at the " + side + ": " + as_trade(*highest_said).millimetres +
                   " leaves no room over the least clean action; " + as_trade(needs.highest).millimetres +
                   " is allowed");
  }
  return needs;
}

/// From a neck well bowed back to one that no rod is needed to see.
std::vector<FloorAtRelief> floors_by_relief(const ClearanceRequest& setup, const UnitEnvelopes& envelopes) {
  constexpr int first_tenth = -3, last_tenth = 10;
  std::vector<Length> reliefs;
  for (int tenth = first_tenth; tenth <= last_tenth; ++tenth) reliefs.push_back(mm(tenth / 10.0));
  std::vector<FloorAtRelief> floors;
  for (const CleanAtRelief& clean : least_clean_by_relief(setup, envelopes, reliefs)) {
    floors.push_back({.relief = clean.relief,
                      .lowest_bass = clean.outer.action12_bass,
                      .lowest_treble = clean.outer.action12_treble});
  }
  return floors;
}

/// The frets that a saddle is chosen for: as they stand, or level where they are to be dressed before it.
struct FretsToPlayOn {
  ClearanceRequest setup;
  LeastCleanAction least_clean;
  std::string first{};
};

FretsToPlayOn frets_to_play_on(const ClearanceRequest& setup, const UnitEnvelopes& envelopes, Length worth_dressing) {
  const LeastCleanAction now = least_clean_action(setup, envelopes);
  FretsToPlayOn as_they_stand{.setup = setup, .least_clean = now};
  if (setup.neck.crown_departures_mm.empty()) return as_they_stand;
  const HeldSetUp held = held_set_up(setup.neck, setup.action);
  FretsToPlayOn level{.setup = setup, .least_clean = {}};
  level.setup.neck = held.neck;
  level.setup.neck.crown_departures_mm.clear();
  level.setup.action = held.action;
  level.least_clean = least_clean_action(level.setup, envelopes);
  const bool bass_decides = now.outer.action12_bass - level.least_clean.outer.action12_bass >
                            now.outer.action12_treble - level.least_clean.outer.action12_treble;
  const Length gain = bass_decides ? now.outer.action12_bass - level.least_clean.outer.action12_bass
                                   : now.outer.action12_treble - level.least_clean.outer.action12_treble;
  if (gain <= worth_dressing) return as_they_stand;
  const auto heights = [](const OuterHeights& outer) {
    return as_trade(outer.action12_bass).millimetres + " at the bass and " +
           as_trade(outer.action12_treble).millimetres + " at the treble";
  };
  level.first = "Dress the frets first: as they stand nothing lower than " + heights(now.outer) +
                " is clean, by fret " + std::to_string((bass_decides ? now.bass : now.treble).fret) +
                "; on level frets " + heights(level.least_clean.outer) + ". The saddle is chosen for level frets.";
  return level;
}

/// By how much a measure changed at a visit, read before and after the work.
struct ReadChange {
  double mm, sd_mm;
};

std::optional<ReadChange> read_change(const VisitStory& visit, std::string_view measure) {
  const auto before = reading_at(visit, measure, ReadingState::as_found);
  const auto after = reading_at(visit, measure, ReadingState::as_left);
  if (!before || !after) return std::nullopt;
  return ReadChange{after->value - before->value, std::hypot(after->gauge_sd, before->gauge_sd)};
}

/// Visits at which the rod was turned, and nothing else done, with relief and action read before and after.
std::vector<RodTurn> rod_turns(const InstrumentStory& story, Date today) {
  std::vector<RodTurn> turns;
  for (const VisitStory& visit : story.visits) {
    if (visit.visit.date > today) break;
    if (visit.interventions.size() != 1 || visit.interventions[0].kind != "rod_adjusted") continue;
    const auto relief = read_change(visit, "relief");
    const auto action = read_change(visit, "action12_bass");
    if (!relief || !action) continue;
    turns.push_back({.relief_change = mm(relief->mm),
                     .action12_change = mm(action->mm),
                     .relief_change_sd = mm(relief->sd_mm),
                     .action12_change_sd = mm(action->sd_mm)});
  }
  return turns;
}

}  // namespace

std::optional<RodFigure> known_rod(const InstrumentStory& story, const NeckLine& neck, const DataTables& tables,
                                   Date today) {
  if (!story.instrument.adjustable_rod) return std::nullopt;
  return rod_figure(neck, tables.saddle_limits.rod_figure_sd, rod_turns(story, today));
}

std::optional<Reading> reading_at(const VisitStory& visit, std::string_view measure, ReadingState state) {
  std::optional<Reading> found;
  for (const Reading& reading : visit.readings) {
    if (reading.measure == measure && reading.state == state && reading.superseded_by == 0) found = reading;
  }
  return found;
}

const Reading* latest_kept(const InstrumentStory& story, std::string_view measure, Date until) {
  const Reading* latest = nullptr;
  for (const VisitStory& visit : story.visits) {
    if (visit.visit.date > until) break;
    for (const ReadingState state : {ReadingState::as_found, ReadingState::as_left}) {
      for (const Reading& reading : visit.readings) {
        if (reading.state == state && reading.superseded_by == 0 && reading.measure == measure) latest = &reading;
      }
    }
  }
  return latest;
}

std::optional<double> latest_reading(const InstrumentStory& story, std::string_view measure, Date until) {
  const Reading* latest = latest_kept(story, measure, until);
  return latest == nullptr ? std::nullopt : std::optional(latest->value);
}

KnownSetup setup_without_crowns(const InstrumentStory& story, const DataTables& tables, Date today) {
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
  neck.string_count = static_cast<int>(setup.clearance.strings.size());
  setup.clearance.attack =
      attack_named(tables.attacks, attack_level_names[static_cast<std::size_t>(instrument.attack)]);
  said.push_back("Played on " + instrument.string_set + " strings, " + instrument.tuning + " tuning, " +
                 std::string(attack_level_names[static_cast<std::size_t>(instrument.attack)]) + " playing");
  return setup;
}

KnownSetup known_setup(const InstrumentStory& story, const DataTables& tables, Date today) {
  KnownSetup setup = setup_without_crowns(story, tables, today);
  NeckLine& neck = setup.clearance.neck;
  const auto crowns = known_crowns(story, neck, tables.fret_limits, today);
  if (!crowns) {
    setup.assumed.emplace_back("Frets taken as level, none was read");
    return setup;
  }
  neck.crown_departures_mm = crowns->departures_mm;
  std::string said = "Crowns as read on " + iso_date(crowns->read_on);
  if (crowns->apart) said += ", each in the middle of its bass and treble end";
  setup.assumed.push_back(std::move(said));
  if (!latest_reading(story, "relief", today)) neck.relief = crowns->relief;
  return setup;
}

PlayerNeeds player_needs(const InstrumentStory& story, const KnownSetup& setup, const DataTables& tables,
                         EnvelopeMemo& memo) {
  const Instrument& instrument = story.instrument;
  PlayerNeeds needs;
  const auto envelopes = memo.of(envelope_request(setup.clearance));
  const FretsToPlayOn frets = frets_to_play_on(setup.clearance, *envelopes, mm(tables.saddle_limits.frets_first_gain));
  needs.least_clean = frets.least_clean;
  needs.frets_first = frets.first;
  const OuterHeights& lowest = needs.least_clean.outer;
  const SideNeeds bass = side_needs("bass", lowest.action12_bass, tables.players.bass, instrument.wanted_action12_bass,
                                    instrument.highest_action12_bass, needs.assumed);
  const SideNeeds treble =
      side_needs("treble", lowest.action12_treble, tables.players.treble, instrument.wanted_action12_treble,
                 instrument.highest_action12_treble, needs.assumed);
  needs.limits = {.lowest_bass = lowest.action12_bass,
                  .lowest_treble = lowest.action12_treble,
                  .highest_bass = bass.highest,
                  .highest_treble = treble.highest,
                  .floors = floors_by_relief(frets.setup, *envelopes)};
  needs.wanted_bass = bass.wanted;
  needs.wanted_treble = treble.wanted;
  return needs;
}

}  // namespace tailblock
