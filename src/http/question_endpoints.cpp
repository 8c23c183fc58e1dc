#include <cmath>

#include "book/questions.h"
#include "http/ask_fields.h"
#include "http/endpoints.h"
#include "quantity/csv_table.h"

namespace tailblock {
namespace {

constexpr Range slider_range{-10, 10, "mm"};
constexpr Range relief_range{-1, 2, "mm"};
constexpr Range amplitude_range{0.05, 5, "mm"};
constexpr Range crown_range{-1, 1, "mm"};

const QueryField as_if_today{"today", "asked as on this day; default the shop's own"};

/// The whole log: an instrument's past visits are explained by the air before them.
Date day_asked(const Shop& shop, const Ask& ask) { return query_date(ask, "today").value_or(shop.today()); }

Endpoint season_question(const Shop& shop) {
  return {"GET",
          "/api/instruments/{id}/season",
          "What an instrument has shown, and its year ahead",
          {as_if_today, {"first", "first day of the year shown; default today"}, {"count", "days shown, 1..1100"}},
          "",
          schema_of_result<SeasonAnswer>(),
          [shop](const Ask& ask) {
            const InstrumentStory story = shop.book.story(ask.id);
            const Date today = day_asked(shop, ask);
            const Span span{.today = today,
                            .first = query_date(ask, "first").value_or(today),
                            .count = query_integer(ask, "count", {1, 1100, "days"}).value_or(365)};
            return json_answer(season_answer(story, shop.book.air_log(story.home.id), shop.tables, shop.envelopes, span));
          }};
}

Endpoint saddle_question(const Shop& shop) {
  return {"POST",
          "/api/instruments/{id}/saddle",
          "Which saddle keeps an instrument playable through the year",
          {},
          schema_of_request<SaddleWishes>(),
          schema_of_result<SaddleAnswer>(),
          [shop](const Ask& ask) {
            const auto wishes = from_json<SaddleWishes>(ask.body.empty() ? "{}" : ask.body);
            const InstrumentStory story = shop.book.story(ask.id);
            return json_answer(
                saddle_answer(story, shop.book.air_log(story.home.id), shop.tables, shop.envelopes, wishes, shop.today()));
          }};
}

/// `5:0.05,9:-0.1`: fret and how far its crown is raised, a bare number in millimetres.
std::vector<double> crowns_asked(const Ask& ask) {
  const auto text = query_text(ask, "crowns");
  std::vector<double> raised_mm;
  if (!text) return raised_mm;
  for (std::string_view rest = *text; !rest.empty();) {
    const std::string_view one = rest.substr(0, rest.find(','));
    rest.remove_prefix(std::min(rest.size(), one.size() + 1));
    const std::size_t colon = one.find(':');
    const auto fret = colon == std::string_view::npos ? std::nullopt : number_from_text(one.substr(0, colon));
    const auto raise = colon == std::string_view::npos ? std::nullopt : number_from_text(one.substr(colon + 1));
    if (!fret || !raise || *fret != std::floor(*fret)) {
      throw Refused("crowns: \"" + std::string(one) + "\" is not a fret and a height in mm, as 5:0.05");
    }
    const auto n = static_cast<std::size_t>(require_within("crowns", *fret, {1, 24, ""}));
    if (raised_mm.size() < n) raised_mm.resize(n, 0);
    raised_mm[n - 1] = require_within("crowns", *raise, crown_range);
  }
  return raised_mm;
}

Sliders sliders_asked(const Ask& ask) {
  return {.saddle_raise_bass = query_length(ask, "saddle_raise_bass_mm", slider_range).value_or(mm(0)),
          .saddle_raise_treble = query_length(ask, "saddle_raise_treble_mm", slider_range).value_or(mm(0)),
          .relief = query_length(ask, "relief_mm", relief_range),
          .relief_read = query_length(ask, "relief_read_mm", relief_range),
          .amplitude_bass = query_length(ask, "amplitude_bass_mm", amplitude_range),
          .crown_departures_mm = crowns_asked(ask),
          .string = query_integer(ask, "string", {1, 12, ""}),
          .stopped_fret = query_integer(ask, "stopped_fret", {0, 23, ""})};
}

Endpoint string_line_question(const Shop& shop) {
  return {"GET",
          "/api/instruments/{id}/string-line",
          "Where the strings lie over the frets, and which notes clear them",
          {as_if_today,
           {"saddle_raise_bass_mm", "slider: taller saddle at the bass string"},
           {"saddle_raise_treble_mm", "slider: taller saddle at the treble string"},
           {"relief_mm", "slider: the rod turned to this relief; the strings move with it"},
           {"relief_read_mm", "relief read again: instead of the reading, the measured heights stay"},
           {"amplitude_bass_mm", "slider: swing of the lowest string at the pluck, normal to the board"},
           {"crowns", "crowns raised over where they are, as 5:0.05,9:-0.1 (fret:mm)"},
           {"string", "swing of which note: its string, 1 the thinnest; default the worst note"},
           {"stopped_fret", "and the fret it is stopped at, 0 open"}},
          "",
          schema_of_result<StringLineAnswer>(),
          [shop](const Ask& ask) {
            return json_answer(string_line_answer(shop.book.story(ask.id), shop.tables, shop.envelopes,
                                                  sliders_asked(ask), day_asked(shop, ask)));
          }};
}

Endpoint intonation_question(const Shop& shop) {
  return {"GET",
          "/api/instruments/{id}/intonation",
          "How sharp its stopped notes are, and whether its saddle can make it",
          {as_if_today, {"press_depth_mm", "how far the finger pushes a string down behind the fret; default 0"}},
          "",
          schema_of_result<IntonationAnswer>(),
          [shop](const Ask& ask) {
            const Length press = query_length(ask, "press_depth_mm", {0, 1.5, "mm"}).value_or(mm(0));
            return json_answer(intonation_answer(shop.book.story(ask.id), shop.tables, press, day_asked(shop, ask)));
          }};
}

Endpoint neck_question(const Shop& shop) {
  return {"GET",
          "/api/instruments/{id}/neck-angle",
          "Whether its neck angle is called for, and what to take off the heel",
          {as_if_today,
           {"action12_wanted_bass_mm", "action at fret 12 wanted, mean of the year"},
           {"action12_wanted_treble_mm", "the same, treble"},
           {"exposure_wanted_bass_mm", "saddle over the bridge wanted afterwards"},
           {"exposure_wanted_treble_mm", "the same, treble"},
           {"relief_wanted_mm", "relief as it will be set"}},
          "",
          schema_of_result<NeckAnswer>(),
          [shop](const Ask& ask) {
            constexpr Range actions{0.3, 10, "mm"}, exposures{0.5, 12, "mm"};
            const NeckWishes wishes{.action12_wanted_bass = query_length(ask, "action12_wanted_bass_mm", actions),
                                    .action12_wanted_treble = query_length(ask, "action12_wanted_treble_mm", actions),
                                    .exposure_wanted_bass = query_length(ask, "exposure_wanted_bass_mm", exposures),
                                    .exposure_wanted_treble = query_length(ask, "exposure_wanted_treble_mm", exposures),
                                    .relief_wanted = query_length(ask, "relief_wanted_mm", {-1, 2, "mm"})};
            const InstrumentStory story = shop.book.story(ask.id);
            return json_answer(neck_answer(story, shop.book.air_log(story.home.id), shop.tables, shop.envelopes, wishes,
                                           day_asked(shop, ask)));
          }};
}

}  // namespace

std::vector<Endpoint> question_endpoints(const Shop& shop) {
  return {season_question(shop), saddle_question(shop), string_line_question(shop), intonation_question(shop),
          neck_question(shop)};
}

}  // namespace tailblock
