#include "book/cleats_question.h"

#include <algorithm>
#include <cmath>

#include "book/drawing_question.h"
#include "book/questions.h"
#include "book/top_question.h"

namespace tailblock {
namespace {

/// A crack drawn with a bend is taken straight from end to end while no point lies farther off than this.
constexpr double straight_mm = 6;

bool gets_cleats(const Finding& finding, const RepairTables& tables) {
  return std::ranges::any_of(tables.procedures, [&](const RepairProcedure& repair) {
    return repair.answers(finding.kind, finding.view) && std::ranges::any_of(repair.steps, [&](const ProcedureStep& step) {
      const OperationKind* work = row_of_id(tables.operations, step.operation);
      return work->grows && work->grows->amount == "cleats";
    });
  });
}

bool is_of_back(DrawingView view) { return view == DrawingView::back || view == DrawingView::back_inside; }
bool is_of_top(DrawingView view) { return view == DrawingView::front || view == DrawingView::top_inside; }

HoldingStrip bar(const DrawnLine& line) {
  const DrawingPoint &from = line.points.front(), &to = line.points.back();
  return {.name = line.name,
          .from_x = from.x,
          .from_y = from.y,
          .to_x = to.x,
          .to_y = to.y,
          .width = std::max(mm(1), line.width)};
}

/// A block is drawn as a rectangle along the centre line.
HoldingStrip block(const DrawnLine& line) {
  const auto [least_x, most_x] = std::ranges::minmax(line.points, {}, &DrawingPoint::x);
  const auto [least_y, most_y] = std::ranges::minmax(line.points, {}, &DrawingPoint::y);
  const Length middle = (least_x.x + most_x.x) / 2;
  return {.name = line.name,
          .from_x = middle,
          .from_y = least_y.y,
          .to_x = middle,
          .to_y = most_y.y,
          .width = most_x.x - least_x.x};
}

/// What is glued under a plate beside the bracing of the top: the blocks, and the bars of a back.
std::vector<HoldingStrip> glued_under(DrawingView inside, const Instrument& own, const DataTables& tables) {
  const InstrumentDrawing drawing = drawing_of(own, tables);
  const auto view = std::ranges::find(drawing.views, inside, &ViewDrawing::view);
  std::vector<HoldingStrip> glued;
  if (view == drawing.views.end()) return glued;
  for (const DrawnLine& line : view->lines) {
    if (line.points.size() < 2) continue;
    if (line.part == DrawnPart::block) glued.push_back(block(line));
    if (line.part == DrawnPart::brace && inside == DrawingView::back_inside) glued.push_back(bar(line));
  }
  return glued;
}

/// How far the drawn line leaves the straight one from end to end.
double bend_mm(const std::vector<DrawingPoint>& points) {
  const DrawingPoint &a = points.front(), &b = points.back();
  const double dx = in_mm(b.x - a.x), dy = in_mm(b.y - a.y), length = std::hypot(dx, dy);
  double most = 0;
  for (const DrawingPoint& p : points) {
    if (length > 0) most = std::max(most, std::abs(in_mm(p.x - a.x) * dy - in_mm(p.y - a.y) * dx) / length);
  }
  return most;
}

std::optional<Length> thickness_beside(const FindingStory& story) {
  std::optional<Length> latest;
  const auto read = [&](const std::vector<FindingExtent>& extents) {
    for (const FindingExtent& extent : extents) {
      if (extent.measure == "thickness_at_crack") latest = extent.value;
    }
  };
  read(story.finding.extents);
  for (const DatedChange& said : story.changes) read(said.change.extents);
  return latest;
}

void add_thickness(CrackWithCleats& crack, const FindingStory& story, const InstrumentStory& instrument, Date today) {
  crack.request.plate_thickness = thickness_beside(story);
  if (crack.request.plate_thickness || crack.request.plate == CrackedPlate::back) return;
  const Reading* read = latest_kept(instrument, "top_thickness", today);
  if (read == nullptr) return;
  crack.request.plate_thickness = mm(read->value);
  if (read->gauge_sd > 0) crack.request.plate_thickness_sd = mm(read->gauge_sd);
  crack.assumed.emplace_back("The top is as thick beside the crack as where it was read");
}

std::string words_of(const FindingStory& story, const RepairTables& tables) {
  const FindingKind* kind = finding_kind(tables.findings, story.finding.kind);
  std::string words = kind == nullptr ? story.finding.kind : kind->words;
  if (!story.finding.place.empty()) words += ", " + story.finding.place;
  return words;
}

CrackWithCleats crack_of(const FindingStory& story, const InstrumentStory& instrument, const DataTables& tables,
                         Date today) {
  const Finding& finding = story.finding;
  const bool back = is_of_back(finding.view);
  CrackWithCleats crack{.number = story.number,
                        .finding_id = finding.id,
                        .words = words_of(story, tables.repairs),
                        .inside = back ? DrawingView::back_inside : DrawingView::top_inside,
                        .request = {},
                        .result = {},
                        .refused = {},
                        .assumed = {}};
  CleatsRequest& request = crack.request;
  request.plate = back ? CrackedPlate::back : CrackedPlate::top;
  request.from_x = finding.points.front().x;
  request.from_y = finding.points.front().y;
  request.to_x = finding.points.back().x;
  request.to_y = finding.points.back().y;
  request.glued_before = finding.kind == "old_glue_in_crack";
  const auto top = known_top(instrument, tables, today, crack.assumed);
  if (!top && !back) {
    crack.refused = "Its bracing is recorded as other than X, ladder or fan: where its braces lie is not known.";
    return crack;
  }
  request.top = top.value_or(WhichTop{.body_size = instrument.instrument.design.body_size});
  request.top.drawn = design_of(request.top, tables.tops);
  fit_outline(*request.top.drawn, instrument.instrument.design.lower_bout_width);
  request.braces = glued_under(crack.inside, instrument.instrument, tables);
  if (back) {
    crack.assumed = {"Outline and back bars: as usual for its size; feel for them before a cleat is cut"};
    request.wood = "the back's own wood, or spruce";
  }
  add_thickness(crack, story, instrument, today);
  if (bend_mm(finding.points) > straight_mm) {
    crack.assumed.emplace_back("The crack is taken straight from end to end; it is drawn with a bend");
  }
  try {
    crack.result = cleats(request, tables.tops, tables.repairs.figures);
  } catch (const Refused& refused) {
    crack.refused = refused.what();
  }
  return crack;
}

}  // namespace

CleatsAnswer cleats_answer(const InstrumentStory& story, const Survey& survey, const DataTables& tables, Date today) {
  CleatsAnswer answer;
  for (const auto* found : {&survey.found_before, &survey.found_now}) {
    for (const FindingStory& one : *found) {
      const Finding& finding = one.finding;
      const bool on_a_plate = is_of_top(finding.view) || is_of_back(finding.view);
      if (!one.open || finding.shape != FindingShape::line || !on_a_plate) continue;
      if (gets_cleats(finding, tables.repairs)) answer.cracks.push_back(crack_of(one, story, tables, today));
    }
  }
  return answer;
}

void describe(FieldVisitor& visit, CrackWithCleats& crack) {
  visit.integer({"number", "of the finding, on its instrument"}, crack.number, {0, 2147483647, ""});
  visit.integer({"finding_id", "number in the book"}, crack.finding_id, {0, 2147483647, ""});
  visit.text({"words", "what and where"}, crack.words, 1000);
  choice(visit, {"inside", "the drawing it is seen on from inside"}, crack.inside, drawing_view_names);
  object(visit, {"request", "what the model was told"}, crack.request);
  maybe(visit, {"result", "where the cleats go; absent: refused"}, crack.result,
        [&](const Field& field, CleatsResult& result) { object(visit, field, result); });
  visit.text({"refused", "why there is no result; empty: there is"}, crack.refused, 1000);
  visit.texts({"assumed", "what no record says and was taken for granted"}, crack.assumed, 1000, {0, 50});
}

void describe(FieldVisitor& visit, CleatsAnswer& answer) {
  list(visit, {"cracks", "open, drawn as a line on top or back"}, answer.cracks, {0, 1000});
}

}  // namespace tailblock
