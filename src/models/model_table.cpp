#include "models/model_table.h"

#include <algorithm>

#include "air/home_air.h"
#include "air/hygrometer.h"
#include "air/moist_air.h"
#include "bench/promise.h"
#include "body/prepared_top.h"
#include "models/data_tables.h"
#include "models/do_each.h"
#include "models/envelope_memo.h"
#include "models/examples.h"
#include "models/json.h"
#include "models/plate_memo.h"
#include "repair/cautions.h"
#include "repair/cleats.h"
#include "repair/diagnose.h"
#include "repair/estimate.h"
#include "repair/finish_day.h"
#include "repair/procedure.h"
#include "season/crack_risk.h"
#include "season/year.h"
#include "setup/fret_dress.h"
#include "setup/neck_angle.h"
#include "setup/saddle.h"
#include "strings/clearance.h"
#include "strings/contact_map.h"
#include "strings/intonation.h"
#include "strings/string_line.h"
#include "strings/tension.h"
#include "wood/moisture.h"

namespace tailblock {
namespace {

template <class Request, class Compute>
Model model(std::string name, std::string summary, Request example, Compute compute) {
  using Result = std::invoke_result_t<Compute, const Request&>;
  return {.name = std::move(name),
          .summary = std::move(summary),
          .compute = [compute](std::string_view json) { return to_json<Result>(compute(from_json<Request>(json))); },
          .request_schema = [] { return json_schema<Request>(SchemaWriter::Of::request); },
          .result_schema = [] { return json_schema<Result>(SchemaWriter::Of::result); },
          .example = to_json(std::move(example))};
}

}  // namespace

ModelTable::ModelTable(const DataTables& t, EnvelopeMemo& memo, PlateMemo& plates) {
  const DataTables* tables = &t;
  const SeasonTables season = t.season();
  const auto envelopes = [&memo](const ClearanceRequest& request) { return memo.of(envelope_request(request)); };

  models_.push_back(model("air", "moist air in every measure, from any one of them", example_air(), air));
  models_.push_back(model("home-air", "the air of a home, day by day through the year", example_home_air(), home_air));
  models_.push_back(model("hygrometer", "a hygrometer's own error, from one or two salt readings", example_hygrometer(),
                          [tables](const HygrometerRequest& request) { return hygrometer(request, tables->salts); }));
  models_.push_back(model("moisture",
                          "the moisture wood comes to in still air, and that of a plate that follows a home's",
                          example_moisture(), [](const MoistureRequest& request) { return moisture(request); }));
  models_.push_back(model("tension", "how hard each string of a set pulls", example_tension(*tables),
                          [](const TensionRequest& request) { return tension(request); }));
  models_.push_back(
      model("string-line", "where every string lies over every fret", example_string_line(), string_line));
  models_.push_back(model("clearance", "which notes clear the frets, played like this", example_clearance(*tables),
                          [tables, envelopes](const ClearanceRequest& request) {
                            return clearance(request, *envelopes(request), tables->clearance_verdicts);
                          }));
  models_.push_back(
      model("least-clean-action", "the lowest saddle at which no note touches", example_clearance(*tables),
            [envelopes](const ClearanceRequest& request) { return least_clean_action(request, *envelopes(request)); }));
  models_.push_back(model(
      "contact", "how one note moves over the frets once plucked, and what they do to it", example_contact(*tables),
      [tables](const ContactRequest& request) { return contact(request, tables->contact_verdicts); }));
  models_.push_back(model("contact-map", "which notes buzz, played normally and hard", example_contact_map(*tables),
                          [tables, envelopes](const ContactMapRequest& request) {
                            const auto normal = envelopes(as_clearance(request, request.attack));
                            const auto hard = envelopes(as_clearance(request, request.hard_attack));
                            return contact_map(request, {*normal, *hard}, tables->contact_verdicts, do_each_on_threads);
                          }));
  models_.push_back(
      model("intonation", "how sharp every stopped note is, and where the crests of the saddle are wanted",
            example_intonation(*tables),
            [tables](const IntonationRequest& request) { return intonation(request, tables->intonation_limits); }));
  models_.push_back(model("response", "what one instrument's readings have shown of how it answers the air",
                          example_response(),
                          [season](const ResponseRequest& request) { return response(request, season); }));
  models_.push_back(model("year", "the action at fret 12 on every day of the year ahead", example_year(),
                          [season](const YearRequest& request) { return year(request, season); }));
  models_.push_back(
      model("saddle", "which saddle keeps this guitar playable through the year", example_saddle(),
            [season, tables](const SaddleRequest& request) { return saddle(request, season, tables->saddle_limits); }));
  models_.push_back(model("bench", "what hands do next, and when each instrument is ready", example_bench(),
                          [tables](const BenchRequest& request) { return bench(request, tables->bench_weights); }));
  models_.push_back(model("promise", "the day that holds with a stated chance, for each instrument on the bench",
                          example_promise(), [tables](const PromiseRequest& request) {
                            return promise(request, tables->bench_weights, tables->duration_prior);
                          }));
  models_.push_back(model("plate", "how the braced top moves under its strings and with the air, sound or damaged",
                          example_plate(), [tables, &plates](const PlateRequest& request) {
                            return plate(request, *plates.of(request, tables->plate()), tables->plate());
                          }));
  models_.push_back(model("crack-risk", "the chance that a top cracks in this air, and the humidity to keep",
                          example_crack_risk(), [tables, &plates](const CrackRiskRequest& request) {
                            const PlateRequest sound = plate_for_cracks(request);
                            return crack_risk(request, *plates.of(sound, tables->plate()), tables->cracks());
                          }));
  models_.push_back(model("fret-dress", "which crowns come down, by how little, and which notes force them",
                          example_fret_dress(*tables), [tables, &memo](const FretDressRequest& request) {
                            return fret_dress(request, *memo.of(envelope_request(request)), tables->fret_limits);
                          }));
  models_.push_back(model("neck-angle", "what to take off the heel, and whether the neck's angle is called for",
                          example_neck_angle(), [tables](const NeckAngleRequest& request) {
                            return neck_angle(request, tables->neck_limits, mm(tables->saddle_limits.heel_error),
                                              tables->neck_steps);
                          }));
  models_.push_back(model("diagnose", "what may be behind what was found, and what to read next", example_diagnose(),
                          [tables](const DiagnoseRequest& request) { return diagnose(request, tables->repairs); }));
  models_.push_back(model("procedure", "the operations of one repair, and the question it asks next",
                          example_procedure(),
                          [tables](const ProcedureRequest& request) { return procedure(request, tables->repairs); }));
  models_.push_back(
      model("cleats", "where cleats go along a crack, how thick, and what to cut", example_cleats(),
            [tables](const CleatsRequest& request) { return cleats(request, tables->tops, tables->repairs.figures); }));
  models_.push_back(model("finish-day", "whether a coat will blush today, and when the finish is done",
                          example_finish_day(), [tables](const FinishDayRequest& request) {
                            return finish_day(request, tables->repairs.materials, tables->repairs.figures);
                          }));
  models_.push_back(model("estimate", "what the work costs, line by line and in options side by side",
                          example_estimate(),
                          [tables](const EstimateRequest& request) { return estimate(request, tables->repairs); }));
  models_.push_back(model("cautions", "what can hurt in this work, the day's noise, and papers to ask for",
                          example_cautions(),
                          [tables](const CautionsRequest& request) { return cautions(request, tables->repairs); }));
}

const Model* ModelTable::find(std::string_view name) const {
  const auto found = std::ranges::find(models_, name, &Model::name);
  return found == models_.end() ? nullptr : &*found;
}

}  // namespace tailblock
