#include "models/examples.h"

namespace tailblock {
namespace {

using namespace std::chrono;

constexpr Date august = Date(2025y / August / 14);
constexpr Date february = Date(2026y / February / 10);

/// A heated house through a cold winter, twelve months read indoors.
HomeAir heated_house() {
  HomeAir home;
  home.temperature_c = {20, 20, 20, 20, 21, 23, 24, 24, 22, 20, 20, 20};
  home.relative_humidity = {0.24, 0.25, 0.29, 0.35, 0.45, 0.54, 0.57, 0.56, 0.50, 0.41, 0.32, 0.26};
  return home;
}

std::vector<GuitarString> light_strings(const DataTables& tables) {
  return tuned(string_set_named(tables.string_sets, "light"), tuning_named(tables.tunings, "standard"));
}

}  // namespace

AirRequest example_air() { return {.temperature = celsius(21), .relative_humidity = humidity_percent(45)}; }

HomeAirRequest example_home_air() { return {.home = heated_house(), .first = february, .count = 365}; }

HygrometerRequest example_hygrometer() {
  HygrometerRequest request;
  request.readings.push_back({.salt = "sodium chloride", .temperature = celsius(20), .shown = humidity_percent(79)});
  return request;
}

MoistureRequest example_moisture() {
  MoistureRequest request;
  request.home = heated_house();
  request.first = february;
  return request;
}

TensionRequest example_tension(const DataTables& tables) {
  return {.scale_length = mm(645), .strings = light_strings(tables)};
}

StringLineRequest example_string_line() {
  StringLineRequest request;
  request.neck.relief = mm(0.15);
  request.action = {.action12_bass = mm(2.4), .action12_treble = mm(1.9)};
  return request;
}

ClearanceRequest example_clearance(const DataTables& tables) {
  const StringLineRequest line = example_string_line();
  return {.neck = line.neck,
          .action = line.action,
          .strings = light_strings(tables),
          .attack = attack_named(tables.attacks, "medium")};
}

ContactRequest example_contact(const DataTables& tables) {
  const ClearanceRequest set_up = example_clearance(tables);
  ContactRequest request;
  request.neck = set_up.neck;
  request.action = {.action12_bass = mm(1.8), .action12_treble = mm(1.4)};
  request.strings = set_up.strings;
  request.attack = set_up.attack;
  request.string = 6;
  request.stopped_fret = 1;
  return request;
}

ContactMapRequest example_contact_map(const DataTables& tables) {
  const ClearanceRequest set_up = example_clearance(tables);
  return {.neck = set_up.neck,
          .action = set_up.action,
          .strings = set_up.strings,
          .attack = set_up.attack,
          .hard_attack = attack_named(tables.attacks, "hard")};
}

IntonationRequest example_intonation(const DataTables& tables) {
  const StringLineRequest line = example_string_line();
  IntonationRequest request;
  request.neck = line.neck;
  request.action = line.action;
  request.strings = light_strings(tables);
  request.octave_errors = {{.string = 6, .cents = 2}};
  request.saddle = SaddleTop{.front_bass = mm(3), .front_treble = mm(0.5), .thickness = mm(3)};
  return request;
}

ResponseRequest example_response() {
  ResponseRequest request;
  request.today = february;
  request.home = heated_house();
  request.readings = {
      {.date = august, .kind = HeightKind::action12_bass, .value = mm(2.5)},
      {.date = august, .kind = HeightKind::action12_treble, .value = mm(2.0)},
      {.date = february, .kind = HeightKind::action12_bass, .value = sixty_fourths(5)},
      {.date = february, .kind = HeightKind::action12_treble, .value = mm(1.5)},
  };
  return request;
}

YearRequest example_year() {
  YearRequest request;
  request.instrument = example_response();
  request.first = february;
  request.limits = ActionLimits{};
  return request;
}

SaddleRequest example_saddle() {
  SaddleRequest request;
  request.instrument = example_response();
  request.first = february;
  return request;
}

/// A crack being glued, a brace waiting for the same clamps, and a set-up that is wanted soon.
BenchRequest example_bench() {
  constexpr Moment morning{.day = february, .minute = 9 * 60};
  BenchRequest request;
  request.now = morning;
  BenchPerson person;
  person.name = "bench";
  for (int day = 1; day <= 5; ++day) person.hours.push_back({.weekday = day});
  request.people = {person};
  request.stations = {{.name = "clamps", .count = 1}};
  const auto instrument = [&](const char* name, int due_in_days, std::vector<Operation> operations) {
    BenchInstrument made;
    made.name = name;
    made.arrives = morning;
    made.due = february + std::chrono::days(due_in_days);
    made.operations = std::move(operations);
    return made;
  };
  const auto operation = [](const char* name, int hands_on_minutes, int wait_minutes) {
    Operation made;
    made.name = name;
    made.hands_on_minutes = hands_on_minutes;
    made.wait_minutes = wait_minutes;
    if (wait_minutes > 0) made.stations = {{.name = "clamps", .wait_minutes = wait_minutes}};
    return made;
  };
  request.instruments = {
      instrument("mid-size, top crack", 5, {operation("glue crack", 45, 960), operation("level and polish", 60, 0)}),
      instrument("parlour, loose brace", 6, {operation("glue brace", 30, 960), operation("string and set up", 75, 0)}),
      instrument("slope-shouldered, set-up", 1, {operation("set up", 120, 0)})};
  return request;
}

PromiseRequest example_promise() {
  PromiseRequest request;
  request.bench = example_bench();
  request.simulations = 100;
  request.finished = {{.kind = "set up", .estimated_minutes = 120, .actual_minutes = 150},
                      {.kind = "glue crack", .estimated_minutes = 45, .actual_minutes = 40}};
  return request;
}

PlateRequest example_plate() {
  PlateRequest request;
  request.top = {.body_size = BodySize::slope_large, .bracing = "x_scalloped"};
  request.damage.loose_braces = {{.brace = "X leg to treble", .end = BraceEnd::second, .length = mm(60)}};
  request.moisture = {.top = -3, .braces = -3, .bridge = -3, .back = -3};
  return request;
}

/// An old top with a crack that one cleat holds, in a heated house.
CrackRiskRequest example_crack_risk() {
  CrackRiskRequest request;
  request.top.bracing = "x_braced";
  request.home = heated_house();
  request.first = february;
  request.damage.cracks = {{.from_x = mm(360),
                            .from_y = mm(30),
                            .to_x = mm(470),
                            .to_y = mm(30),
                            .cleats = {{.along = mm(40), .length = mm(15)}}}};
  return request;
}

FretDressRequest example_fret_dress(const DataTables& tables) {
  const ClearanceRequest set_up = example_clearance(tables);
  FretDressRequest request{
      .neck = set_up.neck, .action = set_up.action, .strings = set_up.strings, .attack = set_up.attack, .readings = {}};
  for (int fret = 1; fret <= request.neck.fret_count; ++fret) {
    const double high = fret == 9 ? 0.15 : 0;
    request.readings.push_back({.fret = fret, .value = mm(high)});
    request.readings.push_back({.kind = FretReadingKind::over_board, .fret = fret, .value = mm(0.95 + high)});
  }
  return request;
}

NeckAngleRequest example_neck_angle() {
  NeckAngleRequest request;
  request.bass = {.action12 = mm(3.1), .action12_wanted = mm(2.5), .exposure = mm(2)};
  request.treble = {.action12 = mm(2.5), .action12_wanted = mm(2), .exposure = mm(1.8), .exposure_wanted = mm(2.75)};
  request.heel_cap_thickness = mm(4);
  request.straightedge_over_bridge = mm(-2.4);
  request.relief = mm(0.25);
  request.drift_mm_per_year = Estimate{.median = 0.03, .low = 0, .high = 0.07};
  return request;
}

DiagnoseRequest example_diagnose() {
  const auto read = [](const char* measure, double value, double sd) {
    return GivenReading{.measure = measure, .value = value, .sd = sd, .earlier = {}, .earlier_sd = {}};
  };
  DiagnoseRequest request;
  request.symptoms = {"high_action"};
  request.readings = {read("body_humidity", 46, 2), read("action12_bass", 3.4, 0.1), read("relief", 0.2, 0.03),
                      read("belly", 7.5, 0.4)};
  request.findings = {{.kind = "brace_loose", .where = "X leg, treble", .readings = {read("brace_gap_depth", 9, 1)}}};
  request.surveyed = true;
  request.facts = {{.fact = "gap_opens_with_strings", .holds = false}};
  return request;
}

ProcedureRequest example_procedure() {
  ProcedureRequest request;
  request.procedure = "top_crack";
  request.readings = {{.measure = "body_humidity", .value = 46, .sd = 2, .earlier = {}, .earlier_sd = {}},
                      {.measure = "crack_width", .value = 0.2, .sd = 0.03, .earlier = {}, .earlier_sd = {}},
                      {.measure = "crack_length", .value = 130, .sd = 2, .earlier = {}, .earlier_sd = {}}};
  request.amounts = {{.amount = "cleats", .count = 3}, {.amount = "crack_mm", .count = 130}};
  request.on_record = {"record_arrival", "photograph_before", "survey_outside",        "survey_inside",
                       "tap_and_probe",  "measure_geometry",  "check_listed_materials"};
  request.yes = {{.operation = "all", .by = "an invented owner", .on = Date(std::chrono::year(2026) / 2 / 14)}};
  return request;
}

CleatsRequest example_cleats() {
  CleatsRequest request;
  request.top = {.body_size = BodySize::mid_size, .bracing = "x_scalloped"};
  request.from_x = mm(330);
  request.to_x = mm(450);
  request.from_y = mm(60);
  request.to_y = mm(62);
  request.plate_thickness = mm(2.7);
  return request;
}

FinishDayRequest example_finish_day() {
  FinishDayRequest request;
  request.relative_humidity = humidity_percent(48);
  request.coats_done = 3;
  request.hours_since_last_coat = 18;
  request.today = Date(std::chrono::year(2026) / 2 / 20);
  request.thickness = {{.where = "lower bout, treble", .now = mm(2.55), .before = mm(2.6), .sd = {}}};
  return request;
}

EstimateRequest example_estimate() {
  EstimateRequest request;
  request.hourly_rate = "58.00";
  EstimateLine crack;
  crack.name = "top crack glued and cleated";
  crack.repair = example_procedure();
  crack.tax_percent = "19";
  crack.risk = "The line of the crack stays visible.";
  EstimateLine saddle;
  saddle.name = "new saddle";
  saddle.when = LineWhen::can_wait;
  saddle.repair = ProcedureRequest{};
  saddle.repair->procedure = "drop_in_saddle";
  saddle.materials = {{.name = "bone blank", .quantity = "1", .unit_price = "9.50", .tax_percent = ""}};
  saddle.tax_percent = "19";
  request.lines = {crack, saddle};
  return request;
}

CautionsRequest example_cautions() {
  CautionsRequest request;
  request.operations = {"spray_lacquer_coat"};
  request.materials = {"brazilian_rosewood"};
  request.noise = {{.what = "sanding a hollow body", .level_db = 94, .minutes = 40}};
  return request;
}

}  // namespace tailblock
