#include "book/surveyed_top.h"

#include <algorithm>
#include <cmath>

#include "body/line_mesh.h"
#include "body/meshed_top.h"
#include "body/outline.h"
#include "body/plate_figures.h"
#include "body/point_grid.h"
#include "book/record_fields.h"
#include "quantity/trade_notation.h"
#include "repair/cleats.h"

namespace tailblock {
namespace {

constexpr double least_crack_mm = 10;  // shorter ones cannot be told in the mesh
constexpr double near_brace_mm = 25;   // a loose stretch drawn so near to a brace is of it
constexpr double near_end_mm = 25;     // one that comes so near to the end of its brace begins there
constexpr double bent_mm = 5;
constexpr std::size_t most_cracks = 10, most_loose = 20, most_readings = 200;

std::string millimetres(double mm_value) { return plain_number(std::round(mm_value)) + " mm"; }

PlanePoint plane(const DrawingPoint& p) { return {in_mm(p.x), in_mm(p.y)}; }

DrawingPoint drawing(PlanePoint p) { return {mm(p.x), mm(p.y)}; }

std::vector<PlanePoint> rim_of(const TopDesign& design) {
  std::vector<PlanePoint> half;
  for (const OutlinePoint& p : design.outline) half.push_back({in_mm(p.x), in_mm(p.half_width)});
  return outline(half);
}

PlanePoint along(const MeshLine& line, double from_first) {
  const double share = from_first / distance(line.from, line.to);
  return {line.from.x + share * (line.to.x - line.from.x), line.from.y + share * (line.to.y - line.from.y)};
}

/// How far along a line the nearest place to a point is, and how far off it the point lies.
struct Foot {
  double along, away;
};
Foot foot_of(const MeshLine& line, PlanePoint p) {
  const double length = distance(line.from, line.to);
  const double ux = (line.to.x - line.from.x) / length, uy = (line.to.y - line.from.y) / length;
  const double at = std::clamp((p.x - line.from.x) * ux + (p.y - line.from.y) * uy, 0.0, length);
  return {at, distance(p, along(line, at))};
}

PlanePoint middle_of(const Finding& finding) {
  PlanePoint middle{};
  for (const DrawingPoint& p : finding.points) {
    middle.x += in_mm(p.x) / static_cast<double>(finding.points.size());
    middle.y += in_mm(p.y) / static_cast<double>(finding.points.size());
  }
  return middle;
}

/// The newest of each length read at a finding.
std::optional<double> read_at(const FindingStory& story, std::string_view measure) {
  std::optional<double> value;
  const auto look = [&](const std::vector<FindingExtent>& extents) {
    for (const FindingExtent& extent : extents) {
      if (extent.measure == measure) value = in_mm(extent.value);
    }
  };
  look(story.finding.extents);
  for (const DatedChange& later : story.changes) look(later.change.extents);
  return value;
}

/// Whether a job is for this finding, or for one that it corrects.
bool is_for(const Job& job, const Finding& finding, const std::vector<Finding>& superseded) {
  if (job.withdrawn || job.finding_id == 0) return false;
  if (job.finding_id == finding.id) return true;
  const auto old = std::ranges::find(superseded, finding.supersedes, &Finding::id);
  if (old != superseded.end()) return is_for(job, *old, superseded);
  return finding.supersedes != 0 && job.finding_id == finding.supersedes;
}

/// The last day on which one of these operations was finished for a finding.
std::optional<Date> finished(const TopRecords& records, const Finding& finding,
                             const std::vector<std::string>& operations) {
  std::optional<Date> day;
  for (const JobStory& job : records.jobs) {
    if (!is_for(job.job, finding, records.survey->superseded)) continue;
    for (const WorkSpell& spell : job.spells) {
      const bool is_one = std::ranges::find(operations, spell.operation) != operations.end();
      if (is_one && spell.finished && spell.ended_on && (!day || *day < *spell.ended_on)) day = spell.ended_on;
    }
  }
  return day;
}

/// Everything that is taken, gathered finding by finding.
class Gathering {
 public:
  Gathering(const TopRecords& records, const TopDesign& design, const DataTables& tables)
      : records_(records), design_(design), tables_(tables), rim_(rim_of(design)) {
    for (const Brace& brace : design.braces) {
      braces_.push_back(
          clipped({{in_mm(brace.from_x), in_mm(brace.from_y)}, {in_mm(brace.to_x), in_mm(brace.to_y)}}, rim_));
    }
  }

  SurveyedTop gathered() {
    top_.seen_on = records_.survey->date;
    for (const FindingStory& story : records_.ended) note_end(story);
    std::vector<const FindingStory*> open;
    for (const auto* list : {&records_.survey->found_before, &records_.survey->found_now}) {
      for (const FindingStory& story : *list) {
        if (story.open) open.push_back(&story);
      }
    }
    std::ranges::sort(open, {}, [](const FindingStory* story) { return story->number; });
    std::vector<const FindingStory*> old_repairs;
    for (const FindingStory* story : open) {
      const TopFindingKind* kind = of_the_top(*story);
      if (kind == nullptr || is_mended(*story, *kind)) continue;
      if (kind->taken_as == TakenAs::cleat) {
        old_repairs.push_back(story);
      } else {
        take(*story, *kind);
      }
    }
    for (const FindingStory* story : old_repairs) take_old_repair(*story);
    spread_thickness();
    std::ranges::stable_sort(top_.taken, {}, &TakenFinding::number);
    return std::move(top_);
  }

 private:
  /// Its kind, when it is of the top and does something to the structure.
  [[nodiscard]] const TopFindingKind* of_the_top(const FindingStory& story) const {
    const bool seen = story.finding.view == DrawingView::front || story.finding.view == DrawingView::top_inside;
    const auto on_top = [&](const DrawingPoint& p) { return inside_polygon(rim_, plane(p)); };
    const bool lies_there = std::ranges::any_of(story.finding.points, on_top) ||
                            inside_polygon(rim_, middle_of(story.finding));
    if (!seen || !lies_there) return nullptr;
    return top_finding(tables_.top_findings, story.finding.kind);
  }

  void note(const TopFindingKind& kind, Date day) {
    const bool of_the_wood = kind.taken_as == TakenAs::crack || kind.taken_as == TakenAs::loose_brace ||
                             kind.taken_as == TakenAs::missing_brace;
    if (of_the_wood && (!top_.last_mended || *top_.last_mended < day)) top_.last_mended = day;
  }

  void note_end(const FindingStory& story) {
    const TopFindingKind* kind = of_the_top(story);
    const DatedChange& last = story.changes.back();
    if (kind != nullptr && last.change.state == FindingState::repaired) note(*kind, last.date);
  }

  bool is_mended(const FindingStory& story, const TopFindingKind& kind) {
    const auto done = finished(records_, story.finding, kind.mended_by);
    const Date last_said = story.changes.empty() ? story.found_on : story.changes.back().date;
    if (!done || *done < last_said) return false;
    note(kind, *done);
    return true;
  }

  [[nodiscard]] std::string named(const FindingStory& story) const {
    const FindingKind* kind = finding_kind(tables_.repairs.findings, story.finding.kind);
    std::string words = kind == nullptr ? story.finding.kind : kind->words;
    const std::string& where = story.finding.part.empty() ? story.finding.place : story.finding.part;
    if (!where.empty()) words += ", " + where;
    return words;
  }

  void add(const FindingStory& story, TakenAs taken_as, const std::string& how, std::vector<DrawingPoint> points,
           FindingShape shape) {
    top_.taken.push_back({.number = story.number,
                          .taken_as = taken_as,
                          .words = named(story) + ": " + how,
                          .points = std::move(points),
                          .shape = shape});
  }

  void leave(const FindingStory& story, const std::string& because) {
    top_.not_used.push_back("Finding " + std::to_string(story.number) + ", " + named(story) + ": not taken, " +
                            because);
  }

  void take(const FindingStory& story, const TopFindingKind& kind) {
    switch (kind.taken_as) {
      case TakenAs::crack:
        return take_crack(story, kind);
      case TakenAs::loose_brace:
      case TakenAs::missing_brace:
        return take_brace(story, kind.taken_as);
      case TakenAs::lifted_bridge:
        return take_bridge(story);
      case TakenAs::worn_plate:
        return take_plate(story);
      case TakenAs::thin_place:
        return take_thin_place(story);
      case TakenAs::cleat:
      case TakenAs::not_modelled:
        return leave(story, kind.because);
    }
  }

  void take_crack(const FindingStory& story, const TopFindingKind& kind) {
    const Finding& finding = story.finding;
    if (finding.shape != FindingShape::line) return leave(story, "it was not drawn as a line from end to end");
    const MeshLine chord{plane(finding.points.front()), plane(finding.points.back())};
    const auto inside = distance(chord.from, chord.to) < 1 ? std::nullopt : clipped(chord, rim_);
    if (!inside || distance(inside->from, inside->to) < least_crack_mm) {
      return leave(story, "less than " + millimetres(least_crack_mm) + " of it lies on the top");
    }
    if (top_.damage.cracks.size() == most_cracks) return leave(story, "no more than ten cracks are taken");
    Crack crack{.from_x = mm(inside->from.x),
                .from_y = mm(inside->from.y),
                .to_x = mm(inside->to.x),
                .to_y = mm(inside->to.y),
                .cleats = {}};
    std::string how = "taken as parted over " + millimetres(distance(inside->from, inside->to));
    if (finding.opening == Opening::tight) how += " though it was tight, which is the most it can be";
    const bool is_bent = std::ranges::any_of(
        finding.points, [&](const DrawingPoint& p) { return foot_of(*inside, plane(p)).away > bent_mm; });
    if (is_bent) how += ", straight from end to end";
    if (const auto glued = finished(records_, finding, kind.cleated_by); glued && *glued >= story.found_on) {
      CleatsRequest request;
      request.top.drawn = design_;
      request.from_x = crack.from_x, request.from_y = crack.from_y;
      request.to_x = crack.to_x, request.to_y = crack.to_y;
      request.glued_before = true;
      crack.cleats = cleats(request, tables_.tops, tables_.repairs.figures).as_damage.cleats;
      how += ", held by " + std::to_string(crack.cleats.size()) + " cleats glued since";
    }
    top_.damage.cracks.push_back(std::move(crack));
    top_.crack_numbers.push_back(story.number);
    add(story, TakenAs::crack, how, {drawing(inside->from), drawing(inside->to)}, FindingShape::line);
    if (const auto thick = read_at(story, "thickness_at_crack")) {
      read_here({middle_of(finding)}, *thick);
      top_.taken.back().words += "; the top " + as_trade(mm(*thick)).millimetres + " beside it";
    }
  }

  /// The brace that a finding names or lies along, by its place in the design.
  [[nodiscard]] std::optional<std::size_t> brace_of(const Finding& finding) const {
    const auto named = std::ranges::find(design_.braces, finding.part, &Brace::name);
    if (named != design_.braces.end()) return static_cast<std::size_t>(named - design_.braces.begin());
    if (!finding.part.empty()) return std::nullopt;
    std::optional<std::size_t> nearest;
    double least = near_brace_mm;
    for (std::size_t b = 0; b < braces_.size(); ++b) {
      if (!braces_[b]) continue;
      double away = 0;
      for (const DrawingPoint& p : finding.points) away = std::max(away, foot_of(*braces_[b], plane(p)).away);
      if (away < least) least = away, nearest = b;
    }
    return nearest;
  }

  void take_brace(const FindingStory& story, TakenAs taken_as) {
    const Finding& finding = story.finding;
    const auto which = brace_of(finding);
    if (!which || !braces_[*which]) {
      return leave(story, finding.part.empty()
                              ? "it lies along no brace of the bracing taken"
                              : "the bracing taken has no brace of that name");
    }
    if (top_.damage.loose_braces.size() == most_loose) return leave(story, "no more than twenty stretches are taken");
    const MeshLine& line = *braces_[*which];
    const double length = distance(line.from, line.to);
    double from = 0, to = length;
    if (taken_as == TakenAs::loose_brace) {
      std::tie(from, to) = loose_stretch(story, line);
      if (!(to - from >= 1)) return leave(story, "neither its drawing nor a reading says how much of it is loose");
    }
    const std::string& name = design_.braces[*which].name;
    top_.damage.loose_braces.push_back(
        {.brace = name, .end = BraceEnd::first, .from_end = mm(from), .length = mm(to - from)});
    const std::string what = finding.part.empty() ? name + ", which it lies along, " : "";
    add(story, taken_as,
        taken_as == TakenAs::missing_brace ? what + "taken as carrying nothing"
                                           : what + "taken as off the top over " + millimetres(to - from),
        {drawing(along(line, from)), drawing(along(line, to))}, FindingShape::line);
  }

  /// Along the brace from its first end: where it is drawn, as long as it was last read.
  [[nodiscard]] std::pair<double, double> loose_stretch(const FindingStory& story, const MeshLine& line) const {
    const Finding& finding = story.finding;
    const double length = distance(line.from, line.to);
    double from = length, to = 0;
    for (const DrawingPoint& p : finding.points) {
      from = std::min(from, foot_of(line, plane(p)).along);
      to = std::max(to, foot_of(line, plane(p)).along);
    }
    if (finding.part_from && finding.part_to) {
      std::tie(from, to) = std::minmax({in_mm(*finding.part_from), in_mm(*finding.part_to)});
      to = std::min(to, length);
    }
    if (const auto read = read_at(story, "brace_gap_length"); read && *read > 0) {
      const double middle = (from + to) / 2;
      if (from <= near_end_mm) {
        from = 0, to = *read;
      } else if (length - to <= near_end_mm) {
        from = length - *read, to = length;
      } else {
        from = middle - *read / 2, to = middle + *read / 2;
      }
    }
    return {std::max(0.0, from), std::min(length, to)};
  }

  void take_bridge(const FindingStory& story) {
    const auto depth = read_at(story, "bridge_lift_depth");
    if (!depth || !(*depth > 0)) return leave(story, "how deep a feeler goes in was not read");
    const Footprint bridge = footprint(design_.bridge.body);
    const double deep = std::min(*depth, bridge.back - bridge.front);
    top_.damage.bridge_lifted = std::max(top_.damage.bridge_lifted, mm(deep));
    add(story, TakenAs::lifted_bridge, "taken as off the top by " + millimetres(deep) + " along the whole back edge",
        {drawing({bridge.back - deep, -bridge.half_span}), drawing({bridge.back - deep, bridge.half_span}),
         drawing({bridge.back, bridge.half_span}), drawing({bridge.back, -bridge.half_span})},
        FindingShape::area);
  }

  void take_plate(const FindingStory& story) {
    const auto wear = read_at(story, "plate_hole_wear");
    if (!wear || !(*wear > 0)) return leave(story, "the wear of its holes was not read");
    const double share = worn_share(tables_.plate_figures, design_.bridge.saddle_length, mm(*wear));
    top_.damage.bridge_plate_worn = std::max(top_.damage.bridge_plate_worn, share);
    const double pins = in_mm(design_.bridge.saddle_x) + tables_.plate_figures.pins_behind_saddle_mm;
    const double half = in_mm(design_.bridge.saddle_length) / 2;
    add(story, TakenAs::worn_plate,
        "taken as " + plain_number(std::round(100 * share)) + " % of it gone along the pin holes, all six worn alike",
        {drawing({pins, -half}), drawing({pins, half})}, FindingShape::line);
  }

  void take_thin_place(const FindingStory& story) {
    const auto thick = read_at(story, "thickness_here");
    if (!thick) return leave(story, "its thickness was not read");
    std::vector<PlanePoint> places{middle_of(story.finding)};
    for (const DrawingPoint& p : story.finding.points) places.push_back(plane(p));
    read_here(places, *thick);
    add(story, TakenAs::thin_place, "taken as " + as_trade(mm(*thick)).millimetres + " thick",
        story.finding.points, story.finding.shape);
  }

  void read_here(const std::vector<PlanePoint>& places, double thick) {
    for (const PlanePoint& p : places) {
      if (top_.damage.thickness.size() < most_readings / 2)
        top_.damage.thickness.push_back({mm(p.x), mm(p.y), mm(std::clamp(thick, 0.8, 6.0))});
    }
  }

  /// Away from the places that were read the top is as thick as the rest of it.
  void spread_thickness() {
    if (top_.damage.thickness.empty()) return;
    constexpr double apart = 45, clear = 30;
    const std::vector<ThicknessReading> read = top_.damage.thickness;
    const double last = in_mm(design_.outline.back().x);
    for (double x = apart / 2; x < last; x += apart) {
      for (int row = -5; row <= 5; ++row) {
        const PlanePoint p{x, row * apart};
        const bool is_read = std::ranges::any_of(
            read, [&](const ThicknessReading& one) { return distance(p, {in_mm(one.x), in_mm(one.y)}) < clear; });
        if (is_read || !inside_polygon(rim_, p) || top_.damage.thickness.size() == most_readings) continue;
        top_.damage.thickness.push_back({mm(p.x), mm(p.y), design_.thickness});
      }
    }
  }

  /// An old repair drawn over cracks that are there holds them where it lies.
  void take_old_repair(const FindingStory& story) {
    std::vector<PlanePoint> area;
    for (const DrawingPoint& p : story.finding.points) area.push_back(plane(p));
    std::string held;
    for (std::size_t c = 0; c < top_.damage.cracks.size() && area.size() > 2; ++c) {
      Crack& crack = top_.damage.cracks[c];
      const MeshLine line{{in_mm(crack.from_x), in_mm(crack.from_y)}, {in_mm(crack.to_x), in_mm(crack.to_y)}};
      double from = distance(line.from, line.to), to = 0;
      const double length = from;
      for (double at = 0; at <= length; at += 1) {
        if (inside_polygon(area, along(line, at))) from = std::min(from, at), to = std::max(to, at);
      }
      if (to <= from) continue;
      crack.cleats.push_back({mm((from + to) / 2), mm(to - from)});
      held += (held.empty() ? "" : " and ") + std::to_string(top_.crack_numbers[c]);
    }
    if (held.empty()) {
      return leave(story, top_finding(tables_.top_findings, story.finding.kind)->because);
    }
    add(story, TakenAs::cleat, "taken to hold finding " + held + " where it lies over it", story.finding.points,
        story.finding.shape);
  }

  const TopRecords& records_;
  const TopDesign& design_;
  const DataTables& tables_;
  std::vector<PlanePoint> rim_;
  std::vector<std::optional<MeshLine>> braces_;  ///< as far as they lie on the top
  SurveyedTop top_;
};

}  // namespace

TopRecords top_records(const Book& book, const InstrumentStory& story, Date today) {
  TopRecords records;
  for (const VisitStory& visit : story.visits) {
    if (visit.visit.date > today) continue;
    for (JobStory& job : book.visit_work(visit.visit.id).jobs) {
      std::erase_if(job.spells, [&](const WorkSpell& spell) { return spell.ended_on && *spell.ended_on > today; });
      records.jobs.push_back(std::move(job));
    }
    records.survey = book.survey(visit.visit.id);
    for (const FindingStory& found : records.survey->found_before) {
      if (!found.open) records.ended.push_back(found);
    }
  }
  return records;
}

SurveyedTop surveyed_top(const TopRecords& records, const TopDesign& design, const DataTables& tables) {
  if (!records.survey) return {};
  return Gathering(records, design, tables).gathered();
}

TopDamage mended(const TopDamage& damage) {
  TopDamage sound{.cracks = damage.cracks};
  for (Crack& crack : sound.cracks) {
    const double length = distance({in_mm(crack.from_x), in_mm(crack.from_y)}, {in_mm(crack.to_x), in_mm(crack.to_y)});
    constexpr double apart = 100;  // each as long again: no place is left between them
    crack.cleats.clear();
    for (double at = 0; at < length + apart; at += apart) crack.cleats.push_back({mm(at), mm(2 * apart)});
  }
  return sound;
}

void describe(FieldVisitor& visit, TakenFinding& taken) {
  visit.integer({"number", "of the finding on its instrument"}, taken.number, {0, 1e6, ""});
  choice(visit, {"taken_as", "what the plate model makes of it"}, taken.taken_as, taken_as_names);
  visit.text({"words", "what it is and how it is taken"}, taken.words, 1000);
  choice(visit, {"shape", "how it lies on the top"}, taken.shape, finding_shape_names);
  list(visit, {"points", "on the axes of the top"}, taken.points, {0, 1000});
}

void describe(FieldVisitor& visit, SurveyedTop& top) {
  maybe_date(visit, {"seen_on", "the visit that last saw it; absent: it has not been here"}, top.seen_on);
  list(visit, {"taken", "findings that the calculation counts"}, top.taken, {0, 1000});
  visit.texts({"not_used", "findings of the top that it cannot take, a line each"}, top.not_used, 1000, {0, 1000});
  maybe_date(visit, {"last_mended", "when a crack or a brace of the top was last mended; absent: nothing is known of it"},
             top.last_mended);
}

}  // namespace tailblock
