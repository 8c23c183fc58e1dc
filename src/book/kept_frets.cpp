#include "book/kept_frets.h"

#include <algorithm>

#include "book/fret_place.h"
#include "setup/fret_readings.h"

namespace tailblock {
namespace {

bool same_fret(const FretReading& a, const FretReading& b) {
  return a.kind == b.kind && a.fret == b.fret && a.from_fret == b.from_fret && a.to_fret == b.to_fret;
}

/// A fret read again replaces what was read of it; one end read again leaves what was said of the other.
void take_reading(std::vector<FretReading>& standing, const FretReading& read) {
  std::vector<FretReading> kept;
  for (FretReading before : standing) {
    if (same_fret(before, read)) {
      if (read.side == FretSide::both || before.side == read.side) continue;
      if (before.side == FretSide::both) {
        before.side = read.side == FretSide::bass ? FretSide::treble : FretSide::bass;
      }
    }
    kept.push_back(before);
  }
  kept.push_back(read);
  standing = std::move(kept);
}

/// Readings at frets of one visit in one state: of the metal left, or of how the crowns stand.
std::vector<FretReading> read_at_frets(const VisitStory& visit, ReadingState state, bool metal) {
  std::vector<FretReading> readings;
  for (const Reading& reading : visit.readings) {
    const auto place = fret_place(reading.measure);
    if (!place || reading.state != state || reading.superseded_by != 0) continue;
    const auto kind = fret_reading_kind(place->measure);
    if (!kind || (*kind == FretReadingKind::over_board) != metal) continue;
    readings.push_back({.kind = *kind,
                        .fret = place->fret,
                        .side = place->side,
                        .value = mm(reading.value),
                        .sd = mm(reading.gauge_sd),
                        .from_fret = place->from_fret,
                        .to_fret = place->to_fret});
  }
  return readings;
}

/// Work on the frets lies between what was found and what was left.
struct Standing {
  std::vector<FretReading> readings{};
  std::optional<Date> last_read{};
};

Standing standing_readings(const InstrumentStory& story, Date today, bool metal) {
  Standing standing;
  const auto most_frets = static_cast<std::size_t>(story.instrument.fret_count) / 2;
  for (const VisitStory& visit : story.visits) {
    if (visit.visit.date > today) break;
    for (const ReadingState state : {ReadingState::as_found, ReadingState::as_left}) {
      if (state == ReadingState::as_left && std::ranges::any_of(visit.interventions, is_fretwork)) standing = {};
      const auto readings = read_at_frets(visit, state, metal);
      if (readings.empty()) continue;
      if (readings.size() >= most_frets) standing.readings.clear();
      standing.last_read = visit.visit.date;
      for (const FretReading& one : readings) take_reading(standing.readings, one);
    }
  }
  return standing;
}

std::vector<double> as_they_stand(const CrownSide& side) {
  std::vector<double> departures = side.departure;
  for (std::size_t i = 0; i < departures.size(); ++i) {
    if (side.loose[i]) departures[i] += side.springs[i];
  }
  return departures;
}

}  // namespace

bool is_fretwork(const Intervention& work) { return work.kind == "frets_levelled" || work.kind == "refretted"; }

KeptFrets kept_frets(const InstrumentStory& story, Date today) {
  KeptFrets kept;
  for (const bool metal : {false, true}) {
    const Standing standing = standing_readings(story, today, metal);
    if (!kept.read_on) kept.read_on = standing.last_read;
    kept.readings.insert(kept.readings.end(), standing.readings.begin(), standing.readings.end());
  }
  const int last = story.instrument.fret_count;
  std::erase_if(kept.readings, [last](const FretReading& reading) { return reading.fret > last; });
  return kept;
}

std::optional<KnownCrowns> known_crowns(const InstrumentStory& story, const NeckLine& neck, const FretLimits& limits,
                                        Date today) {
  KeptFrets kept = kept_frets(story, today);
  const bool any_height = std::ranges::any_of(kept.readings, [](const FretReading& reading) {
    return reading.kind != FretReadingKind::springs && reading.kind != FretReadingKind::over_board;
  });
  if (!any_height) return std::nullopt;
  const Crowns crowns = crowns_from_readings(
      {.neck = neck, .action = {}, .strings = {}, .attack = {}, .readings = std::move(kept.readings)}, limits);
  KnownCrowns known{.departures_mm = as_they_stand(crowns.bass),
                    .relief = crowns.relief,
                    .read_on = *kept.read_on,
                    .apart = crowns.apart};
  if (!crowns.apart) return known;
  const std::vector<double> treble = as_they_stand(crowns.treble);
  for (std::size_t i = 0; i < treble.size(); ++i) known.departures_mm[i] = 0.5 * (known.departures_mm[i] + treble[i]);
  return known;
}

}  // namespace tailblock
