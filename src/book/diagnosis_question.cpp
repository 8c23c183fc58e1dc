#include "book/diagnosis_question.h"

#include <algorithm>
#include <map>

#include "book/book.h"
#include "season/response.h"
#include "strings/clearance.h"

namespace tailblock {
namespace {

/// Between the median and either quantile of 5 and 95 percent of a normal distribution.
constexpr double sds_to_5_percent = 1.6449;

double sd_of(const Estimate& estimate) { return (estimate.high - estimate.low) / (2 * sds_to_5_percent); }

/// Every reading of the instrument that repairs know, with that of the last earlier visit that has it.
void add_readings(DiagnoseRequest& request, const InstrumentStory& story, const RepairTables& tables, Date day) {
  for (const KnownReading& known : tables.readings) {
    if (known.of != ReadingOf::instrument) continue;
    const Reading* read = latest_kept(story, known.id, day);
    if (read == nullptr) continue;
    GivenReading given{.measure = known.id, .value = read->value, .sd = {}, .earlier = {}, .earlier_sd = {}};
    if (read->gauge_sd > 0) given.sd = read->gauge_sd;
    const auto of =
        std::ranges::find_if(story.visits, [&](const VisitStory& visit) { return visit.visit.id == read->visit_id; });
    const Reading* before = latest_kept(story, known.id, of->visit.date - std::chrono::days(1));
    if (before != nullptr) {
      given.earlier = before->value;
      if (before->gauge_sd > 0) given.earlier_sd = before->gauge_sd;
    }
    request.readings.push_back(given);
  }
}

/// A figure that a computation gave, where the table of such figures knows it and its range takes it.
void add_figure(DiagnoseRequest& request, const RepairTables& tables, const std::string& figure, double value,
                std::optional<double> sd) {
  const auto known = std::ranges::find(tables.readings, figure, &KnownReading::id);
  if (known == tables.readings.end()) return;
  request.readings.push_back({.measure = figure,
                              .value = std::clamp(value, known->hard_low, known->hard_high),
                              .sd = sd,
                              .earlier = {},
                              .earlier_sd = {}});
}

void add_season(DiagnoseRequest& request, const ResponseResult& season, const RepairTables& tables) {
  add_figure(request, tables, "season_swing", season.summer_to_winter_drop_mm.median,
             sd_of(season.summer_to_winter_drop_mm));
  if (season.last_change.empty()) return;
  const ChangeShare& change = season.last_change.front();
  add_figure(request, tables, "season_unexplained", change.unexplained_bass_mm.median,
             sd_of(change.unexplained_bass_mm));
  add_figure(request, tables, "something_else", change.something_else_probability, {});
}

void add_clearance(DiagnoseRequest& request, const InstrumentStory& story, const DataTables& tables, EnvelopeMemo& memo,
                   Date day, std::vector<std::string>& assumed) {
  const KnownSetup setup = known_setup(story, tables, day);
  const auto action = latest_reading(story, "action12_bass", day);
  if (!action) {
    assumed.emplace_back("Clearance left out: the action at fret 12, bass, was not read");
    return;
  }
  const auto envelopes = memo.of(envelope_request(setup.clearance));
  const ClearanceResult clear = clearance(setup.clearance, *envelopes, tables.clearance_verdicts);
  const double ratio = clear.notes[static_cast<std::size_t>(clear.worst_note)].ratio;
  if (ratio > 0) add_figure(request, tables.repairs, "worst_reach", 1 / ratio, {});
  const PlayerNeeds needs = player_needs(story, setup, tables, memo);
  add_figure(request, tables.repairs, "clean_action_room", *action - in_mm(needs.limits.lowest_bass), {});
  assumed.insert(assumed.end(), setup.assumed.begin(), setup.assumed.end());
}

/// The latest of each thing said.
void add_said(DiagnoseRequest& request, const std::vector<SaidAtVisit>& said) {
  std::map<std::pair<SaidAbout, std::string>, bool> latest;
  for (const SaidAtVisit& one : said) latest[{one.about, one.name}] = one.holds;
  for (const auto& [what, holds] : latest) {
    if (what.first == SaidAbout::fact) request.facts.push_back({what.second, holds});
    if (what.first == SaidAbout::symptom && holds) request.symptoms.push_back(what.second);
  }
}

FindingSeen seen(const FindingStory& story, const RepairTables& tables) {
  std::map<std::string, double> latest;
  for (const FindingExtent& read : story.finding.extents) latest[read.measure] = in_mm(read.value);
  for (const DatedChange& later : story.changes) {
    for (const FindingExtent& read : later.change.extents) latest[read.measure] = in_mm(read.value);
  }
  FindingSeen finding{.kind = story.finding.kind, .where = story.finding.place, .readings = {}};
  for (const auto& [measure, value] : latest) {
    if (row_of_id(tables.readings, measure) == nullptr) continue;
    finding.readings.push_back({.measure = measure, .value = value, .sd = {}, .earlier = {}, .earlier_sd = {}});
  }
  return finding;
}

/// Those that are open. That something was not found says nothing: nobody says when a survey is whole.
void add_findings(DiagnoseRequest& request, const Survey& survey, const RepairTables& tables) {
  for (const auto* list : {&survey.found_before, &survey.found_now}) {
    for (const FindingStory& story : *list) {
      if (story.open) request.findings.push_back(seen(story, tables));
    }
  }
}

}  // namespace

DiagnosisAnswer diagnosis_answer(const InstrumentStory& story, const VisitWork& visit, const Survey& survey,
                                 std::vector<LoggedDay> log, const DataTables& tables, EnvelopeMemo& memo) {
  DiagnosisAnswer answer;
  const Date day = visit.visit.date;
  add_readings(answer.request, story, tables.repairs, day);
  add_findings(answer.request, survey, tables.repairs);
  add_said(answer.request, visit.said);
  if (!visit.overrides.empty()) {
    const GateRecord& gate = visit.overrides.back();
    answer.request.humidity_override = GateOverride{.by = gate.who, .on = gate.day, .why = gate.why};
  }
  try {
    add_season(answer.request, response(response_request(story, std::move(log), day), tables.season()), tables.repairs);
  } catch (const Refused& refused) {
    answer.assumed.push_back(std::string("The season's share is left out: ") + refused.what());
  }
  try {
    add_clearance(answer.request, story, tables, memo, day, answer.assumed);
  } catch (const Refused& refused) {
    answer.assumed.push_back(std::string("Clearance left out: ") + refused.what());
  }
  answer.result = diagnose(answer.request, tables.repairs);
  return answer;
}

void describe(FieldVisitor& visit, DiagnosisAnswer& answer) {
  object(visit, {"request", "what the model was told"}, answer.request);
  object(visit, {"result", "causes with their evidence, and what to read next"}, answer.result);
  visit.texts({"assumed", "what no record says and was taken for granted, and what was left out"}, answer.assumed, 1000,
              {0, 200});
}

}  // namespace tailblock
