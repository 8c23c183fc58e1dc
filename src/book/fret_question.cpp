#include "book/fret_question.h"

#include <algorithm>

#include "book/kept_frets.h"
#include "book/questions.h"

namespace tailblock {
namespace {

constexpr Range small{0, 10, "mm"};

void maybe_length(FieldVisitor& visit, const Field& field, std::optional<Length>& value) {
  maybe(visit, field, value, [&](const Field& present, Length& length) { visit.length(present, length, small); });
}

void take_kept_readings(FretAnswer& answer, const InstrumentStory& story, Date today) {
  KeptFrets kept = kept_frets(story, today);
  answer.readings = std::move(kept.readings);
  answer.read_on = kept.read_on;
  const bool twelfth = std::ranges::any_of(answer.readings, [](const FretReading& reading) {
    return reading.kind == FretReadingKind::over_board && reading.fret == 12;
  });
  const auto height = latest_reading(story, "fret12_height", today);
  if (height && !twelfth && !answer.readings.empty()) {
    answer.readings.push_back({.kind = FretReadingKind::over_board, .fret = 12, .value = mm(*height)});
  }
}

/// The neck was reset after the frets were last levelled or renewed.
bool neck_angle_changed(const InstrumentStory& story, Date today) {
  bool changed = false;
  for (const VisitStory& visit : story.visits) {
    if (visit.visit.date > today) break;
    for (const Intervention& work : visit.interventions) {
      if (work.kind == "neck_reset") changed = true;
      if (is_fretwork(work)) changed = false;
    }
  }
  return changed;
}

/// The humidity in the body on the day the crowns were read, where it was read then.
std::optional<RelativeHumidity> body_humidity(const InstrumentStory& story, std::optional<Date> on) {
  std::optional<RelativeHumidity> humidity;
  for (const VisitStory& visit : story.visits) {
    if (visit.visit.date != on) continue;
    for (const Reading& reading : visit.readings) {
      if (reading.measure == "body_humidity" && reading.superseded_by == 0) humidity = humidity_percent(reading.value);
    }
  }
  return humidity;
}

}  // namespace

FretAnswer fret_answer(const InstrumentStory& story, const DataTables& tables, EnvelopeMemo& memo,
                       const FretWishes& wishes, Date today) {
  today = wishes.today.value_or(today);
  const KnownSetup setup = setup_without_crowns(story, tables, today);
  FretAnswer answer;
  answer.assumed = setup.assumed;
  answer.scale_length = story.instrument.scale_length;
  answer.body_joint_fret = story.instrument.body_joint_fret;
  answer.fret_count = story.instrument.fret_count;
  answer.relief = setup.clearance.neck.relief;
  answer.readings = wishes.readings;
  if (wishes.readings.empty()) take_kept_readings(answer, story, today);
  const bool any_height = std::ranges::any_of(
      answer.readings, [](const FretReading& reading) { return reading.kind != FretReadingKind::springs; });
  if (!any_height) return answer;
  if (!answer.read_on) answer.assumed.emplace_back("Crowns as typed here, not kept at a visit");

  const Instrument& own = story.instrument;
  FretDressRequest request{.neck = setup.clearance.neck,
                           .action = setup.clearance.action,
                           .strings = setup.clearance.strings,
                           .attack = setup.clearance.attack,
                           .readings = answer.readings};
  const auto wanted = [](std::optional<Length> asked, std::optional<Length> said) { return asked ? asked : said; };
  request.wanted_action12_bass = wanted(wishes.wanted_bass, own.wanted_action12_bass);
  request.wanted_action12_treble = wanted(wishes.wanted_treble, own.wanted_action12_treble);
  request.least_crown = wishes.least_crown;
  request.margin = wishes.margin;
  request.fall_away = wishes.fall_away;
  request.fall_away_from = wishes.fall_away_from;
  request.adjustable_rod = own.adjustable_rod;
  request.rod = known_rod(story, request.neck, tables, today);
  request.neck_angle_changed = neck_angle_changed(story, today);
  request.body_humidity = body_humidity(story, answer.read_on ? answer.read_on : std::optional(today));
  answer.result = fret_dress(request, *memo.of(envelope_request(request)), tables.fret_limits);
  return answer;
}

void describe(FieldVisitor& visit, FretWishes& wishes) {
  maybe(visit, {"today", "asked as on this day"}, wishes.today,
        [&](const Field& field, Date& date) { visit.date(field, date); });
  maybe_length(visit, {"wanted_bass_mm", "action wanted at fret 12"}, wishes.wanted_bass);
  maybe_length(visit, {"wanted_treble_mm", "action wanted at fret 12"}, wishes.wanted_treble);
  maybe_length(visit, {"least_crown_mm", "that every crown keeps"}, wishes.least_crown);
  maybe_length(visit, {"margin_mm", "room left under every note"}, wishes.margin);
  maybe_length(visit, {"fall_away_mm", "last fret below the line"}, wishes.fall_away);
  maybe(visit, {"fall_away_from_fret", "the last fret still on the line"}, wishes.fall_away_from,
        [&](const Field& field, int& fret) {
          visit.integer(field, fret, {8, 23, ""});
        });
  list(visit, {"readings", "as they are being typed; empty: those kept", Need::has_default}, wishes.readings, {0, 400});
}

void describe(FieldVisitor& visit, FretAnswer& answer) {
  maybe(visit, {"read_on", "the visit whose readings these are"}, answer.read_on,
        [&](const Field& field, Date& date) { visit.date(field, date); });
  list(visit, {"readings", "what the answer rests on"}, answer.readings, {0, 400});
  maybe(visit, {"result", "absent while no crown has been read"}, answer.result,
        [&](const Field& field, FretDressResult& result) { object(visit, field, result); });
  visit.length({"relief_mm", "of the neck, as read or assumed"}, answer.relief, {-1.5, 4, "mm"});
  visit.length({"scale_length_mm", "scale length"}, answer.scale_length, {300, 1000, "mm"});
  visit.integer({"body_joint_fret", "fret at the body joint"}, answer.body_joint_fret, {1, 30, ""});
  visit.integer({"fret_count", "number of frets"}, answer.fret_count, {1, 30, ""});
  visit.texts({"assumed", "what no record says and was taken for granted"}, answer.assumed, 1000, {0, 100});
}

}  // namespace tailblock
