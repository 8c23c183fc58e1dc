#include <algorithm>

#include "book/book.h"

namespace tailblock {
namespace {

constexpr int as_found_order = 0, work_order = 1, as_left_order = 2, orders_of_a_visit = 3;

/// What the season model reads; the names are the measures' ids in data/measures.csv.
std::optional<HeightKind> height_kind(std::string_view measure) {
  const auto found = std::find(height_kind_names.begin(), height_kind_names.end(), measure);
  if (found == height_kind_names.end()) return std::nullopt;
  return static_cast<HeightKind>(found - height_kind_names.begin());
}

std::string in_words(std::string id) {
  std::replace(id.begin(), id.end(), '_', ' ');
  return id;
}

void add_readings(ResponseRequest& request, const VisitStory& story, int first_order) {
  for (const Reading& reading : story.readings) {
    const auto kind = height_kind(reading.measure);
    if (!kind || reading.superseded_by != 0) continue;
    request.readings.push_back(
        {.date = story.visit.date,
         .order = first_order + (reading.state == ReadingState::as_found ? as_found_order : as_left_order),
         .kind = *kind,
         .value = mm(reading.value),
         .gauge_sd = mm(reading.gauge_sd)});
  }
}

void add_changes(ResponseRequest& request, const VisitStory& story, int first_order) {
  for (const Intervention& work : story.interventions) {
    SetupChange change{.date = story.visit.date,
                       .order = first_order + work_order,
                       .what = in_words(work.kind),
                       .action12_bass_change = work.action12_bass_change,
                       .action12_treble_change = work.action12_treble_change};
    change.moves_relief = work.moves_relief;
    change.moves_bridge = work.moves_bridge;
    if (work.change_sd) change.change_sd = *work.change_sd;
    request.changes.push_back(std::move(change));
  }
}

}  // namespace

ResponseRequest response_request(const InstrumentStory& story, std::vector<LoggedDay> log, Date today) {
  ResponseRequest request;
  request.today = today;
  request.design = story.instrument.design;
  request.home = story.home.air;
  request.home.log = std::move(log);
  const Visit* before = nullptr;
  int first_order = 0;
  for (const VisitStory& visit : story.visits) {
    if (visit.visit.date > today) break;
    first_order = before != nullptr && before->date == visit.visit.date ? first_order + orders_of_a_visit : 0;
    add_readings(request, visit, first_order);
    add_changes(request, visit, first_order);
    before = &visit.visit;
  }
  return request;
}

}  // namespace tailblock
