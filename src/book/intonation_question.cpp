#include <algorithm>
#include <cmath>

#include "book/questions.h"
#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

std::string numbered(std::string_view measure, int string) { return std::string(measure) + std::to_string(string); }

/// An octave error says nothing any more once the strings, the saddle or the neck were worked on.
bool worked_on_since(const InstrumentStory& story, const Reading& reading, Date until) {
  bool at_or_after = false;
  for (const VisitStory& visit : story.visits) {
    if (visit.visit.date > until) break;
    const bool own = visit.visit.id == reading.visit_id;
    if (own && reading.state == ReadingState::as_left) {
      at_or_after = true;
      continue;
    }
    at_or_after = at_or_after || own;
    if (at_or_after && !visit.interventions.empty()) return true;
  }
  return false;
}

void take_octave_errors(const InstrumentStory& story, Date today, IntonationAnswer& answer) {
  for (int string = 1; string <= answer.request.neck.string_count; ++string) {
    const Reading* reading = latest_kept(story, numbered("octave_error_", string), today);
    if (reading == nullptr) continue;
    if (worked_on_since(story, *reading, today)) {
      answer.assumed.push_back("The octave error of string " + std::to_string(string) +
                               " was read before work was done: not used");
      continue;
    }
    answer.request.octave_errors.push_back(
        {.string = string, .cents = reading->value, .sd_cents = std::clamp(reading->gauge_sd, 0.05, 20.0)});
  }
}

Length saddle_thickness(const InstrumentStory& story, Date today, std::vector<std::string>& assumed) {
  if (const auto read = latest_reading(story, "saddle_thickness", today)) return mm(*read);
  if (const auto read = latest_reading(story, "slot_width", today)) return mm(*read);
  if (story.instrument.slot_width) return *story.instrument.slot_width;
  const Length usual = SaddleTop{}.thickness;
  assumed.push_back("Saddle: " + as_trade(usual).millimetres + " thick assumed, neither it nor its slot was read");
  return usual;
}

/// Crests from the front face where that was measured; else the saddle stands where the neck's setbacks put it.
void take_saddle(const InstrumentStory& story, Date today, IntonationAnswer& answer) {
  NeckLine& neck = answer.request.neck;
  const Reading* bass = latest_kept(story, "slot_front_bass", today);
  const Reading* treble = latest_kept(story, "slot_front_treble", today);
  if (bass == nullptr || treble == nullptr) {
    answer.request.setback_sd = mm(1);
    answer.assumed.push_back("Crests: " + as_trade(neck.setback_bass).millimetres +
                             " behind the scale length at the "
                             "bass and " +
                             as_trade(neck.setback_treble).millimetres +
                             " at the treble assumed, the front of the slot was not read");
    return;
  }
  const Length x12 = fret_from_nut(neck.scale_length, 12);
  SaddleTop top;
  top.front_bass = mm(bass->value) - (neck.scale_length - x12);
  top.front_treble = mm(treble->value) - (neck.scale_length - x12);
  top.front_sd = mm(std::max(bass->gauge_sd, treble->gauge_sd));
  top.thickness = saddle_thickness(story, today, answer.assumed);
  bool all_read = true;
  for (int string = 1; string <= neck.string_count; ++string) {
    const double share = share_from_treble(neck, string);
    const auto crest = latest_reading(story, numbered("crest_", string), today);
    all_read = all_read && crest.has_value();
    const double behind = crest.value_or(in_mm(top.thickness) / 2);
    answer.request.setbacks_mm.push_back(in_mm(top.front_treble + share * (top.front_bass - top.front_treble)) +
                                         behind);
  }
  if (!all_read) {
    answer.request.setback_sd = 0.25 * top.thickness;
    answer.assumed.push_back("Crests that were not read are taken to stand in the middle of the saddle's top");
  }
  neck.setback_treble = mm(answer.request.setbacks_mm.front());
  neck.setback_bass = mm(answer.request.setbacks_mm.back());
  answer.request.saddle = top;
}

}  // namespace

IntonationAnswer intonation_answer(const InstrumentStory& story, const DataTables& tables, Length press_depth,
                                   Date today) {
  const KnownSetup setup = known_setup(story, tables, today);
  IntonationAnswer answer;
  answer.assumed = setup.assumed;
  IntonationRequest& request = answer.request;
  request.neck = setup.clearance.neck;
  request.action = setup.clearance.action;
  request.strings = setup.clearance.strings;
  request.press_depth = press_depth;
  request.last_fret = std::min(request.last_fret, request.neck.fret_count);
  take_saddle(story, today, answer);
  take_octave_errors(story, today, answer);
  answer.result = intonation(request, tables.intonation_limits);
  return answer;
}

void describe(FieldVisitor& visit, IntonationAnswer& answer) {
  object(visit, {"request", "what the model was told"}, answer.request);
  object(visit, {"result", "cents, crests and the slot"}, answer.result);
  visit.texts({"assumed", "what no record says and was taken for granted"}, answer.assumed, 1000, {0, 100});
}

}  // namespace tailblock
