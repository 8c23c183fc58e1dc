#pragma once

#include "air/home_air.h"
#include "air/hygrometer.h"
#include "air/moist_air.h"
#include "bench/promise.h"
#include "body/plate.h"
#include "models/data_tables.h"
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
#include "wood/moisture.h"

namespace tailblock {

/// A valid request of each computation, invented, for `--example`, the API document and the tests.

[[nodiscard]] AirRequest example_air();
[[nodiscard]] HomeAirRequest example_home_air();
[[nodiscard]] HygrometerRequest example_hygrometer();
[[nodiscard]] MoistureRequest example_moisture();
[[nodiscard]] TensionRequest example_tension(const DataTables& tables);
[[nodiscard]] StringLineRequest example_string_line();
[[nodiscard]] ClearanceRequest example_clearance(const DataTables& tables);
[[nodiscard]] ContactRequest example_contact(const DataTables& tables);
[[nodiscard]] ContactMapRequest example_contact_map(const DataTables& tables);
[[nodiscard]] ResponseRequest example_response();
[[nodiscard]] YearRequest example_year();
[[nodiscard]] SaddleRequest example_saddle();
[[nodiscard]] BenchRequest example_bench();
[[nodiscard]] PromiseRequest example_promise();
[[nodiscard]] PlateRequest example_plate();
[[nodiscard]] CrackRiskRequest example_crack_risk();
[[nodiscard]] FretDressRequest example_fret_dress(const DataTables& tables);
[[nodiscard]] IntonationRequest example_intonation(const DataTables& tables);
[[nodiscard]] NeckAngleRequest example_neck_angle();
[[nodiscard]] DiagnoseRequest example_diagnose();
[[nodiscard]] ProcedureRequest example_procedure();
[[nodiscard]] CleatsRequest example_cleats();
[[nodiscard]] FinishDayRequest example_finish_day();
[[nodiscard]] EstimateRequest example_estimate();
[[nodiscard]] CautionsRequest example_cautions();

}  // namespace tailblock
