#include "book/questions.h"

#include "book/book.h"
#include "strings/relief_change.h"

namespace tailblock {
namespace {

constexpr Range action_range{0, 10, "mm"};

void assumed_list(FieldVisitor& visit, std::vector<std::string>& assumed) {
  visit.texts({"assumed", "what no record says and was taken for granted"}, assumed, 1000, {0, 100});
}

void maybe_length(FieldVisitor& visit, const Field& field, std::optional<Length>& value) {
  maybe(visit, field, value,
        [&](const Field& present, Length& length) { visit.length(present, length, action_range); });
}

std::vector<std::string> all_assumed(const KnownSetup& setup, const PlayerNeeds& needs) {
  std::vector<std::string> all = setup.assumed;
  all.insert(all.end(), needs.assumed.begin(), needs.assumed.end());
  return all;
}

BridgeMeasures known_bridge(const InstrumentStory& story, Date today, std::vector<std::string>& assumed) {
  BridgeMeasures bridge;
  bridge.slot = story.instrument.slot;
  bridge.slot_depth = story.instrument.slot_depth;
  bridge.slot_width = story.instrument.slot_width;
  bridge.slot_length = story.instrument.slot_length;
  const auto exposure = [&](const char* measure, const std::string& words, Length& value) {
    if (const auto read = latest_reading(story, measure, today)) {
      value = mm(*read);
    } else {
      assumed.push_back(words + ": " + plain_number(in_mm(value)) + " mm assumed, none was read");
    }
  };
  exposure("saddle_exposure_bass", "Saddle over the bridge, bass", bridge.exposure_bass);
  exposure("saddle_exposure_treble", "Saddle over the bridge, treble", bridge.exposure_treble);
  if (const auto centre = latest_reading(story, "saddle_exposure_centre", today)) bridge.exposure_centre = mm(*centre);
  if (const auto angle = latest_reading(story, "break_angle", today)) bridge.break_angle = degrees(*angle);
  if (const auto depth = latest_reading(story, "slot_depth", today)) bridge.slot_depth = mm(*depth);
  if (const auto width = latest_reading(story, "slot_width", today)) bridge.slot_width = mm(*width);
  if (const auto thick = latest_reading(story, "saddle_thickness", today)) bridge.saddle_thickness = mm(*thick);
  return bridge;
}

void raise_crowns(NeckLine& neck, const std::vector<double>& raise_mm) {
  if (raise_mm.size() > static_cast<std::size_t>(neck.fret_count)) {
    throw Refused("crown_departures_mm: fret " + std::to_string(raise_mm.size()) + " is raised, the neck has " +
                  std::to_string(neck.fret_count) + " frets");
  }
  neck.crown_departures_mm.resize(static_cast<std::size_t>(neck.fret_count), 0);
  for (std::size_t i = 0; i < raise_mm.size(); ++i) neck.crown_departures_mm[i] += raise_mm[i];
}

std::vector<AttackMark> attack_marks(const std::vector<AttackLevelRow>& levels) {
  std::vector<AttackMark> marks;
  marks.reserve(levels.size());
  for (const AttackLevelRow& level : levels) {
    marks.push_back({level.name, level.attack.amplitude_bass, level.attack.amplitude_treble});
  }
  return marks;
}

}  // namespace

SeasonAnswer season_answer(const InstrumentStory& story, std::vector<LoggedDay> log, const DataTables& tables,
                           EnvelopeMemo& memo, const Span& span) {
  const KnownSetup setup = known_setup(story, tables, span.today);
  const PlayerNeeds needs = player_needs(story, setup, tables, memo);
  SeasonAnswer answer;
  answer.today = span.today;
  answer.limits = needs.limits;
  answer.least_clean = needs.least_clean;
  answer.frets_first = needs.frets_first;
  answer.assumed = all_assumed(setup, needs);
  const YearRequest request{.instrument = response_request(story, std::move(log), span.today),
                            .first = span.first,
                            .count = span.count,
                            .limits = needs.limits};
  answer.response = response(request.instrument, tables.season());
  answer.year = year(request, tables.season());
  answer.request = request.instrument;
  answer.request.home.log.clear();
  return answer;
}

SaddleQuestion saddle_question(const InstrumentStory& story, std::vector<LoggedDay> log, const DataTables& tables,
                               EnvelopeMemo& memo, const SaddleWishes& wishes, Date today) {
  const KnownSetup setup = known_setup(story, tables, today);
  const PlayerNeeds needs = player_needs(story, setup, tables, memo);
  SaddleQuestion question{.request = {}, .frets_first = needs.frets_first, .assumed = all_assumed(setup, needs)};
  SaddleRequest& request = question.request;
  request.instrument = response_request(story, std::move(log), today);
  request.first = wishes.first.value_or(today);
  request.limits = wishes.limits.value_or(needs.limits);
  request.wanted_bass = wishes.wanted_bass.value_or(needs.wanted_bass);
  request.wanted_treble = wishes.wanted_treble.value_or(needs.wanted_treble);
  request.bridge = wishes.bridge ? *wishes.bridge : known_bridge(story, today, question.assumed);
  request.scale_length = story.instrument.scale_length;
  request.body_joint_fret = story.instrument.body_joint_fret;
  request.rod = known_rod(story, setup.clearance.neck, tables, today);
  if (const auto heel = latest_reading(story, "heel_depth", today)) request.heel_depth = mm(*heel);
  return question;
}

SaddleAnswer saddle_answer(const InstrumentStory& story, std::vector<LoggedDay> log, const DataTables& tables,
                           EnvelopeMemo& memo, const SaddleWishes& wishes, Date today) {
  SaddleQuestion question = saddle_question(story, std::move(log), tables, memo, wishes, wishes.today.value_or(today));
  SaddleAnswer answer{.request = std::move(question.request),
                      .result = {},
                      .frets_first = std::move(question.frets_first),
                      .assumed = std::move(question.assumed)};
  answer.result = saddle(answer.request, tables.season(), tables.saddle_limits);
  answer.request.instrument.home.log.clear();
  return answer;
}

StringLineAnswer string_line_answer(const InstrumentStory& story, const DataTables& tables, EnvelopeMemo& memo,
                                    const Sliders& sliders, Date today) {
  KnownSetup setup = known_setup(story, tables, today);
  ClearanceRequest& request = setup.clearance;
  if (sliders.relief_read) request.neck.relief = *sliders.relief_read;
  const HeldSetUp measured = held_set_up(request.neck, request.action);
  const Length relief = sliders.relief.value_or(measured.neck.relief);
  const RodFigure rod = known_rod(story, request.neck, tables, today)
                            .value_or(rod_figure(request.neck, tables.saddle_limits.rod_figure_sd, {}));
  HeldSetUp moved = with_relief_changed(measured, relief - measured.neck.relief, rod.action12_per_relief);
  const Length body_rise_bass = *moved.action.saddle_over_frets_bass - *measured.action.saddle_over_frets_bass;
  const Length body_rise_treble = *moved.action.saddle_over_frets_treble - *measured.action.saddle_over_frets_treble;
  *moved.action.saddle_over_frets_bass += sliders.saddle_raise_bass;
  *moved.action.saddle_over_frets_treble += sliders.saddle_raise_treble;
  raise_crowns(moved.neck, sliders.crown_departures_mm);
  request.neck = moved.neck;
  request.action = moved.action;
  if (sliders.amplitude_bass) request.attack = attack_of(tables.attacks, request.attack, *sliders.amplitude_bass);

  StringLineRequest drawn{.neck = request.neck, .action = request.action};
  const auto bridge_top = [&](const char* measure, Length saddle_over_frets, Length rise) -> std::optional<Length> {
    const auto exposure = latest_reading(story, measure, today);
    if (!exposure) return std::nullopt;
    return saddle_over_frets - mm(*exposure) + rise;
  };
  drawn.bridge_top_over_frets_bass =
      bridge_top("saddle_exposure_bass", *measured.action.saddle_over_frets_bass, body_rise_bass);
  drawn.bridge_top_over_frets_treble =
      bridge_top("saddle_exposure_treble", *measured.action.saddle_over_frets_treble, body_rise_treble);

  const auto envelopes = memo.of(envelope_request(request));
  StringLineAnswer answer{.string_line = string_line(drawn),
                          .clearance = clearance(request, *envelopes, tables.clearance_verdicts),
                          .swing = {},
                          .cure = least_cure(request, *envelopes, tables.clearance_verdicts),
                          .request = request,
                          .hard_attack = hardest_of(tables.attacks, request.attack),
                          .relief = relief,
                          .rod = rod,
                          .attacks = attack_marks(tables.attacks),
                          .assumed = setup.assumed};
  const NoteClearance& worst = answer.clearance.notes[static_cast<std::size_t>(answer.clearance.worst_note)];
  const bool chosen = sliders.string && sliders.stopped_fret;
  answer.swing = note_swing(request, *envelopes, tables.clearance_verdicts, chosen ? *sliders.string : worst.string,
                            chosen ? *sliders.stopped_fret : worst.stopped_fret);
  return answer;
}

void describe(FieldVisitor& visit, SeasonAnswer& answer) {
  visit.date({"today", "the day this was asked for"}, answer.today);
  object(visit, {"request", "what the model was told, the log left out"}, answer.request);
  object(visit, {"response", "what the instrument has shown"}, answer.response);
  object(visit, {"year", "the year ahead"}, answer.year);
  object(visit, {"limits", "between which this player is served"}, answer.limits);
  object(visit, {"least_clean", "the lowest saddle that touches nothing at this attack"}, answer.least_clean);
  visit.text({"frets_first", "crowns to dress before the saddle, which is chosen for level frets; empty: none"},
             answer.frets_first, 1000);
  assumed_list(visit, answer.assumed);
}

void describe(FieldVisitor& visit, SaddleWishes& wishes) {
  maybe_date(visit, {"today", "asked as on this day"}, wishes.today);
  maybe_date(visit, {"first", "the year to serve begins here"}, wishes.first);
  maybe(visit, {"limits", "instead of what strings and player need"}, wishes.limits,
        [&](const Field& field, ActionLimits& limits) { object(visit, field, limits); });
  maybe_length(visit, {"wanted_bass_mm", "action at fret 12 wanted"}, wishes.wanted_bass);
  maybe_length(visit, {"wanted_treble_mm", "action at fret 12 wanted"}, wishes.wanted_treble);
  maybe(visit, {"bridge", "instead of what was read"}, wishes.bridge,
        [&](const Field& field, BridgeMeasures& bridge) { object(visit, field, bridge); });
}

void describe(FieldVisitor& visit, SaddleAnswer& answer) {
  object(visit, {"request", "what the model was told, the log left out"}, answer.request);
  object(visit, {"result", "the choices side by side"}, answer.result);
  visit.text({"frets_first", "crowns to dress before the saddle, which is chosen for level frets; empty: none"},
             answer.frets_first, 1000);
  assumed_list(visit, answer.assumed);
}

void describe(FieldVisitor& visit, AttackMark& mark) {
  visit.text({"name", "as the tables call it"}, mark.name, 100);
  visit.length({"amplitude_bass_mm", "swing normal to the board at the pluck, lowest string"}, mark.amplitude_bass,
               {0.05, 5, "mm"});
  visit.length({"amplitude_treble_mm", "the same, string 1"}, mark.amplitude_treble, {0.05, 5, "mm"});
}

void describe(FieldVisitor& visit, StringLineAnswer& answer) {
  object(visit, {"string_line", "where every string lies"}, answer.string_line);
  object(visit, {"clearance", "which notes clear the frets"}, answer.clearance);
  object(visit, {"swing", "of the note asked for, or of the worst"}, answer.swing);
  object(visit, {"cure", "the least that frees every touching note"}, answer.cure);
  object(visit, {"request", "what clearance was asked, sliders and all; contact may be asked the same"},
         answer.request);
  object(visit, {"hard_attack", "the hardest this player plays, for contact-map"}, answer.hard_attack);
  visit.length({"relief_mm", "drawn with this relief"}, answer.relief, {-1.5, 4, "mm"});
  object(visit, {"rod", "how the action was taken to follow the relief"}, answer.rod);
  list(visit, {"attacks", "how hard players play"}, answer.attacks, {0, 100});
  assumed_list(visit, answer.assumed);
}

}  // namespace tailblock
