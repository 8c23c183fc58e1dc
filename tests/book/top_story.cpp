#include "top_story.h"

#include <map>

#include "body/line_mesh.h"
#include "body/outline.h"
#include "body/point_grid.h"

namespace tailblock::testing {
namespace {

MeshLine line_on_top(const TopDesign& design, const std::string& name) {
  std::vector<PlanePoint> half;
  for (const OutlinePoint& p : design.outline) half.push_back({in_mm(p.x), in_mm(p.half_width)});
  const Brace& brace = brace_named(design, name);
  return *clipped({{in_mm(brace.from_x), in_mm(brace.from_y)}, {in_mm(brace.to_x), in_mm(brace.to_y)}}, outline(half));
}

}  // namespace

const DataTables& data_tables() {
  static std::map<std::string, std::string, std::less<>> texts;
  static const DataTables loaded = load_data_tables([](std::string_view path) -> std::string_view {
    return texts[std::string(path)] = repository_file(std::string(path));
  });
  return loaded;
}

InstrumentStory top_story(std::vector<Reading> readings) {
  InstrumentStory of;
  of.instrument.scale_length = mm(645);
  of.home.air.temperature_c = std::vector<double>(12, 20.0);
  of.home.air.relative_humidity = {.24, .25, .29, .35, .45, .54, .57, .56, .50, .41, .32, .26};
  VisitStory visit;
  visit.visit = {.id = 1, .date = top_visit_day};
  visit.readings = std::move(readings);
  of.visits = {visit};
  return of;
}

FindingStory found(const std::string& kind, DrawingView view, std::vector<DrawingPoint> points) {
  static int next = 0;
  FindingStory story{.number = ++next, .found_on = top_visit_day};
  story.finding.id = 100 + next;
  story.finding.visit_id = 1;
  story.finding.kind = kind;
  story.finding.view = view;
  story.finding.shape = points.size() == 1   ? FindingShape::point
                        : points.size() == 2 ? FindingShape::line
                                             : FindingShape::area;
  story.finding.points = std::move(points);
  return story;
}

FindingStory read_at(FindingStory story, const std::string& measure, double mm_value) {
  story.finding.extents.push_back({.measure = measure, .value = mm(mm_value)});
  return story;
}

FindingStory said_since(FindingStory story, Date date, FindingState state, std::vector<FindingExtent> extents) {
  story.changes.push_back({date, {.visit_id = 2, .finding_id = story.finding.id, .state = state, .extents = extents}});
  story.open = state == FindingState::unchanged || state == FindingState::grown;
  return story;
}

TopRecords top_records_of(std::vector<FindingStory> stories) {
  TopRecords records;
  records.survey.emplace();
  records.survey->visit_id = 1;
  records.survey->date = top_visit_day;
  for (const FindingStory& story : stories) {
    if (!story.open) records.ended.push_back(story);
  }
  records.survey->found_now = std::move(stories);
  return records;
}

JobStory job_done(const FindingStory& story, const std::string& operation, Date ended_on) {
  JobStory job;
  job.job = {.id = 1, .visit_id = 1, .finding_id = story.finding.id};
  job.spells = {{.id = 1, .job_id = 1, .operation = operation, .began_on = ended_on, .ended_on = ended_on, .finished = true}};
  return job;
}

DrawingPoint on_brace(const TopDesign& design, const std::string& brace, double from_first_mm) {
  const MeshLine line = line_on_top(design, brace);
  const double share = from_first_mm / distance(line.from, line.to);
  return {mm(line.from.x + share * (line.to.x - line.from.x)), mm(line.from.y + share * (line.to.y - line.from.y))};
}

double length_on_top(const TopDesign& design, const std::string& brace) {
  const MeshLine line = line_on_top(design, brace);
  return distance(line.from, line.to);
}

}  // namespace tailblock::testing
