#include "repair/given.h"

#include <array>
#include <cmath>
#include <set>

#include "quantity/quoted_text.h"
#include "repair/table_cells.h"

namespace tailblock {
namespace {

constexpr Range any_value{-100000, 100000, ""};
constexpr Range any_spread{0, 10000, ""};
constexpr std::array<std::string_view, 5> gate_names{"open", "near_limit", "dry", "damp", "not_read"};

}  // namespace

void describe(FieldVisitor& visit, GivenReading& reading) {
  visit.text({"measure", "id in data/measures.csv, finding_measures.csv or model_figures.csv"}, reading.measure, 60);
  visit.number({"value", "in the unit of that table"}, reading.value, any_value);
  maybe_number(visit, {"sd", "one standard deviation; absent: that of the usual gauge"}, reading.sd, any_spread);
  maybe_number(visit, {"earlier", "the same in the first or last trusted set"}, reading.earlier, any_value);
  maybe_number(visit, {"earlier_sd", "one standard deviation of that"}, reading.earlier_sd, any_spread);
}

void describe(FieldVisitor& visit, GateOverride& override_by) {
  visit.text({"by", "who decided it"}, override_by.by, 120);
  visit.date({"on", "when"}, override_by.on);
  visit.text({"why", "the reason, in their words"}, override_by.why, 500);
}

void describe(FieldVisitor& visit, HumidityGate& gate) {
  choice(visit, {"state", "what the humidity in the body says"}, gate.state, gate_names);
  visit.flag({"holds", "neck, fret, saddle and crack-gluing work waits"}, gate.holds);
  visit.text({"words", "one sentence"}, gate.words, 500);
  visit.text({"overridden", "by whom, when and why; empty: it is not"}, gate.overridden, 800);
}

ReadValues::ReadValues(const std::vector<GivenReading>& given, const std::vector<KnownReading>& known)
    : given_(given), known_(&known) {
  std::set<std::string_view> seen;
  for (const GivenReading& reading : given_) {
    const KnownReading* row = row_of_id(known, reading.measure);
    if (row == nullptr) throw Refused("readings: " + quoted_text(reading.measure) + " is no reading that repairs know");
    if (!seen.insert(reading.measure).second)
      throw Refused("readings: " + quoted_text(reading.measure) + " comes twice");
    const Range hard{row->hard_low, row->hard_high, row->unit};
    (void)require_within(reading.measure, reading.value, hard);
    if (reading.earlier) (void)require_within(reading.measure, *reading.earlier, hard);
  }
}

const GivenReading* ReadValues::find(std::string_view measure) const {
  for (const GivenReading& reading : given_) {
    if (reading.measure == measure) return &reading;
  }
  return nullptr;
}

std::optional<KnownValue> ReadValues::now(std::string_view measure) const {
  const GivenReading* reading = find(measure);
  if (reading == nullptr) return std::nullopt;
  return KnownValue{reading->value, reading->sd.value_or(row_of_id(*known_, measure)->sd)};
}

std::optional<KnownValue> ReadValues::change(std::string_view measure) const {
  const GivenReading* reading = find(measure);
  if (reading == nullptr || !reading->earlier) return std::nullopt;
  const double usual = row_of_id(*known_, measure)->sd;
  return KnownValue{reading->value - *reading->earlier,
                    std::hypot(reading->sd.value_or(usual), reading->earlier_sd.value_or(usual))};
}

HumidityGate humidity_gate(const std::optional<KnownValue>& body_humidity,
                           const std::optional<GateOverride>& override_by, const RepairFigures& figures) {
  const double low = figures.gate_humidity_low, high = figures.gate_humidity_high;
  const std::string range = plain_number(low) + " to " + plain_number(high) + " percent";
  HumidityGate gate;
  if (!body_humidity) {
    gate = {GateState::not_read, true,
            "The humidity in the body was not read: neck, fret, saddle and crack-gluing "
            "work waits for it.",
            ""};
  } else if (body_humidity->value < low || body_humidity->value > high) {
    const bool dry = body_humidity->value < low;
    std::string words = std::string(dry ? "Dry" : "Damp") + ": " + plain_number(body_humidity->value);
    words += " percent in the body is outside " + range;
    words += dry ? "; humidify" : "; dry slowly";
    words += ", settle and read again before neck, fret, saddle and crack-gluing work.";
    gate = {dry ? GateState::dry : GateState::damp, true, words, ""};
  } else {
    const double room = std::min(body_humidity->value - low, high - body_humidity->value);
    const bool sure = room >= figures.sure_margin * body_humidity->sd;
    std::string words = plain_number(body_humidity->value) + " percent in the body lies within " + range;
    words += sure ? "." : ", but nearer the limit than the hygrometer can tell: check it over wet salt.";
    gate = {sure ? GateState::open : GateState::near_limit, false, words, ""};
  }
  if (gate.holds && override_by) {
    if (override_by->by.empty() || override_by->why.empty()) {
      throw Refused("humidity_override: says who and why");
    }
    gate.holds = false;
    gate.overridden = override_by->by + " on " + iso_date(override_by->on) + ": " + override_by->why;
  }
  return gate;
}

}  // namespace tailblock
