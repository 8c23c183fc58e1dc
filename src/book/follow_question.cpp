#include "book/follow_question.h"

#include <algorithm>
#include <cmath>

#include "book/book.h"
#include "season/year.h"

namespace tailblock {
namespace {

constexpr double sds_to_5_percent = 1.6449;
constexpr std::array<std::string_view, 2> sides{"action12_bass", "action12_treble"};

bool has_heights(const VisitStory& visit) {
  return std::ranges::any_of(visit.readings, [](const Reading& reading) {
    return reading.superseded_by == 0 && std::ranges::find(sides, reading.measure) != sides.end();
  });
}

/// As found, the first of a visit; what was left comes after the work.
const Reading* as_found(const VisitStory& visit, std::string_view measure) {
  for (const Reading& reading : visit.readings) {
    const bool live = reading.superseded_by == 0 && reading.state == ReadingState::as_found;
    if (live && reading.measure == measure) return &reading;
  }
  return nullptr;
}

ForetoldHeight against(const Reading& read, const ActionBand& band) {
  ForetoldHeight height{.measure = read.measure,
                        .foretold_mm = {band.median_mm.front(), band.low_mm.front(), band.high_mm.front()},
                        .read = mm(read.value),
                        .gauge_sd = mm(read.gauge_sd)};
  const double foretold_sd = (height.foretold_mm.high - height.foretold_mm.low) / (2 * sds_to_5_percent);
  height.off_sd = (read.value - height.foretold_mm.median) / std::hypot(foretold_sd, read.gauge_sd);
  if (height.off_sd > sds_to_5_percent) height.fell = Foretold::higher;
  if (height.off_sd < -sds_to_5_percent) height.fell = Foretold::lower;
  return height;
}

std::string verdict_of(const std::vector<ForetoldHeight>& heights) {
  std::string off;
  for (const ForetoldHeight& height : heights) {
    if (height.fell == Foretold::as_foretold) continue;
    if (!off.empty()) off += ", ";
    off += height.measure == sides[0] ? "bass " : "treble ";
    off += foretold_names[static_cast<std::size_t>(height.fell)];
  }
  if (off.empty()) return "It moved as foretold.";
  return "It did not move as foretold: " + off + " than the season accounts for.";
}

}  // namespace

FollowAnswer follow_answer(const InstrumentStory& story, RecordId visit, std::vector<LoggedDay> log,
                           const DataTables& tables) {
  const auto here = std::ranges::find_if(story.visits, [&](const VisitStory& one) { return one.visit.id == visit; });
  FollowAnswer answer;
  if (here == story.visits.end()) return answer;
  InstrumentStory before = story;
  before.visits.clear();
  for (auto one = story.visits.begin(); one != here; ++one) {
    if (!has_heights(*one)) continue;
    answer.visits_before += 1;
    answer.last_visit = one->visit.date;
  }
  before.visits.assign(story.visits.begin(), here);
  if (answer.visits_before == 0) {
    answer.verdict = "Nothing was foretold for this day: no visit before it read the strings at fret 12.";
    return answer;
  }
  const Date day = here->visit.date;
  const YearResult foretold =
      year({.instrument = response_request(before, std::move(log), day), .first = day, .count = 1, .limits = {}},
           tables.season());
  for (const std::string_view side : sides) {
    const Reading* read = as_found(*here, side);
    const bool known = std::ranges::any_of(before.visits, [&](const VisitStory& one) {
      return std::ranges::any_of(one.readings, [&](const Reading& reading) { return reading.measure == side; });
    });
    if (read != nullptr && known) {
      answer.heights.push_back(against(*read, side == sides[0] ? foretold.bass : foretold.treble));
    }
  }
  answer.verdict = answer.heights.empty() ? "Read the strings at fret 12 as found, to see whether it moved as foretold."
                                          : verdict_of(answer.heights);
  return answer;
}

void describe(FieldVisitor& visit, ForetoldHeight& height) {
  visit.text({"measure", "action12_bass or action12_treble"}, height.measure, 64);
  object(visit, {"foretold_mm", "for the day of the visit, from the visits before it"}, height.foretold_mm);
  visit.length({"read_mm", "as found"}, height.read, {-5, 20, "mm"});
  visit.length({"gauge_sd_mm", "one standard deviation of the gauge"}, height.gauge_sd, {0, 5, "mm"});
  visit.number({"off_sd", "read less foretold, in standard deviations of both together"}, height.off_sd,
               {-1000, 1000, ""});
  choice(visit, {"fell", "how it fell"}, height.fell, foretold_names);
}

void describe(FieldVisitor& visit, FollowAnswer& answer) {
  list(visit, {"heights", "foretold and read"}, answer.heights, {0, 2});
  visit.integer({"visits_before", "that read the strings at fret 12"}, answer.visits_before, {0, 100000, ""});
  visit.date({"last_visit", "the last of those"}, answer.last_visit);
  visit.text({"verdict", "one plain sentence"}, answer.verdict, 500);
}

}  // namespace tailblock
