#include <algorithm>
#include <cmath>
#include <numeric>

#include "book/book.h"
#include "book/questions.h"
#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

/// The year's highest 30 days of the middle of what to expect, over its mean.
Length highest_over_mean(const std::vector<double>& median_mm) {
  constexpr std::size_t month = 30;
  if (median_mm.size() < month) return {};
  const auto mean = [](auto first, auto last) {
    return std::accumulate(first, last, 0.0) / static_cast<double>(last - first);
  };
  double highest = -1e9;
  for (auto at = median_mm.begin(); median_mm.end() - at >= static_cast<std::ptrdiff_t>(month); ++at) {
    highest = std::max(highest, mean(at, at + static_cast<std::ptrdiff_t>(month)));
  }
  return mm(std::max(0.0, highest - mean(median_mm.begin(), median_mm.end())));
}

/// The wanted relief: what the rod can set, where there is one.
void take_relief(const InstrumentStory& story, const NeckWishes& wishes, const DataTables& tables, Date today,
                 NeckAnswer& answer) {
  NeckAngleRequest& request = answer.request;
  const auto read = latest_reading(story, "relief", today);
  request.relief = read ? mm(*read) : tables.players.relief;
  request.relief_wanted =
      wishes.relief_wanted.value_or(story.instrument.adjustable_rod ? tables.players.relief : request.relief);
}

void take_heel(const InstrumentStory& story, Date today, NeckAnswer& answer) {
  NeckAngleRequest& request = answer.request;
  if (const auto depth = latest_reading(story, "heel_depth", today)) {
    request.heel_depth = mm(*depth);
  } else {
    answer.assumed.push_back("Heel: " + as_trade(request.heel_depth).millimetres +
                             " deep assumed, it was not read; the list scales with it");
  }
  if (const auto cap = latest_reading(story, "heel_cap_thickness", today)) request.heel_cap_thickness = mm(*cap);
  if (const auto tongue = latest_reading(story, "tongue_length", today)) request.tongue_length = mm(*tongue);
}

void take_straightedge(const InstrumentStory& story, Date today, NeckAnswer& answer) {
  const Reading* line = latest_kept(story, "straightedge_over_bridge", today);
  if (line == nullptr) return;
  answer.request.straightedge_over_bridge = mm(line->value);
  answer.request.straightedge_sd = mm(line->gauge_sd);
}

void take_wishes(const NeckWishes& wishes, NeckAngleRequest& request) {
  const auto take = [](const std::optional<Length>& wish, Length& wanted) {
    if (wish) wanted = *wish;
  };
  take(wishes.action12_wanted_bass, request.bass.action12_wanted);
  take(wishes.action12_wanted_treble, request.treble.action12_wanted);
  take(wishes.exposure_wanted_bass, request.bass.exposure_wanted);
  take(wishes.exposure_wanted_treble, request.treble.exposure_wanted);
}

}  // namespace

NeckAnswer neck_answer(const InstrumentStory& story, std::vector<LoggedDay> log, const DataTables& tables,
                       EnvelopeMemo& memo, const NeckWishes& wishes, Date today) {
  NeckAnswer answer;
  SaddleQuestion question = saddle_question(story, std::move(log), tables, memo, {}, today);
  const SaddleRequest& asked = question.request;
  answer.assumed = std::move(question.assumed);
  if (!question.frets_first.empty()) answer.assumed.insert(answer.assumed.begin(), std::move(question.frets_first));
  const NeckNeed need = neck_need(asked, tables.season(), tables.saddle_limits);
  const YearResult ahead =
      year({.instrument = asked.instrument, .first = asked.first, .count = asked.count, .limits = {}}, tables.season());
  NeckAngleRequest& request = answer.request;
  request.bass = need.bass;
  request.treble = need.treble;
  request.bass.highest_over_mean = highest_over_mean(ahead.bass.median_mm);
  request.treble.highest_over_mean = highest_over_mean(ahead.treble.median_mm);
  request.exposure_sd = asked.bridge.exposure_sd;
  request.scale_length = asked.scale_length;
  request.saddle_setback = asked.saddle_setback;
  request.body_joint_fret = asked.body_joint_fret;
  request.fret_count = story.instrument.fret_count;
  const KnownSetup setup = known_setup(story, tables, today);
  const auto ends = string_ends(setup.clearance.neck, setup.clearance.action);
  request.nut_over_frets = 0.5 * (ends.front().nut_over_frets + ends.back().nut_over_frets);
  request.drift_mm_per_year = response(asked.instrument, tables.season()).drift_mm_per_year;
  take_relief(story, wishes, tables, today, answer);
  take_heel(story, today, answer);
  take_straightedge(story, today, answer);
  take_wishes(wishes, request);
  answer.result = neck_angle(request, tables.neck_limits, mm(tables.saddle_limits.heel_error), tables.neck_steps);
  return answer;
}

void describe(FieldVisitor& visit, NeckAnswer& answer) {
  object(visit, {"request", "what the model was told"}, answer.request);
  object(visit, {"result", "verdict, taper and what they do"}, answer.result);
  visit.texts({"assumed", "what no record says and was taken for granted"}, answer.assumed, 1000, {0, 100});
}

}  // namespace tailblock
