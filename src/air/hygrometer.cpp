#include "air/hygrometer.h"

#include <algorithm>
#include <cmath>

#include "quantity/csv_table.h"
#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

constexpr Range fractions{-2, 2, ""};

std::string points(double fraction) { return plain_number(std::round(std::abs(fraction) * 1000) / 10) + " points"; }

std::string one_error(double error) {
  if (std::abs(error) < 0.0005) return "reads true";
  return "reads " + points(error) + (error > 0 ? " too damp" : " too dry");
}

std::string verdict_of(const HygrometerResult& result) {
  std::string text = "The hygrometer ";
  for (std::size_t i = 0; i < result.error_relative_humidity.size(); ++i) {
    if (i > 0) text += " and ";
    text += one_error(result.error_relative_humidity[i]) + " at " +
            plain_number(std::round(result.true_relative_humidity[i] * 100)) + " %";
  }
  if (result.replace) return text + ": replace it.";
  if (result.error_relative_humidity.size() == 1) {
    return text + ": correct every reading by that; a second salt would show whether it holds when dry.";
  }
  return text + ": correct every reading along the line between the two.";
}

}  // namespace

const Salt& SaltTable::named(std::string_view name) const {
  const auto found = std::find_if(salts.begin(), salts.end(), [&](const Salt& salt) { return salt.name == name; });
  if (found == salts.end()) throw Refused("salt: " + quoted_text(name) + " is not in the table of salts");
  return *found;
}

SaltTable salt_table(std::string_view csv) {
  const CsvTable csv_table("salts.csv", csv);
  SaltTable table;
  for (const CsvRow& row : csv_table.rows()) {
    Salt salt;
    salt.name = row.name("name");
    salt.a0 = row.number("a0", {0, 100, "%"});
    salt.a1 = row.number("a1", {-1, 1, "%/K"});
    salt.a2 = row.number("a2", {-0.1, 0.1, "%/K2"});
    salt.a3 = row.number("a3", {-0.01, 0.01, "%/K3"});
    salt.low_c = row.number("low_c", {-20, 30, "C"});
    salt.high_c = row.number("high_c", {salt.low_c, 100, "C"});
    salt.uncertainty_percent = row.number("uncertainty_percent", {0, 10, "%"});
    salt.standing = row.name("standing");
    salt.source = row.name("source");
    table.salts.push_back(std::move(salt));
  }
  return table;
}

RelativeHumidity humidity_over(const Salt& salt, Temperature temperature) {
  const double t = require_within("temperature_c", in_celsius(temperature), {salt.low_c, salt.high_c, "C"});
  return humidity_percent(salt.a0 + t * (salt.a1 + t * (salt.a2 + t * salt.a3)));
}

void describe(FieldVisitor& visit, SaltReading& reading) {
  visit.text({"salt", "a name in the table of salts", Need::has_default}, reading.salt, 60);
  temperature(visit, {"temperature_c", "of the box, steady", Need::has_default}, reading.temperature, {0, 50, "C"});
  relative_humidity(visit, {"shown_relative_humidity", "what the hygrometer shows when settled, 0..1"}, reading.shown);
}

void describe(FieldVisitor& visit, HygrometerRequest& request) {
  list(visit, {"readings", "one over one salt, or one over each of two"}, request.readings, {1, 2});
  relative_humidity(visit, {"replace_beyond", "an error that says replace it, 0..1", Need::has_default},
                    request.replace_beyond);
}

void describe(FieldVisitor& visit, HygrometerCorrection& correction) {
  visit.number({"offset", "true humidity = offset + slope x shown, all 0..1"}, correction.offset, {-2, 2, ""});
  visit.number({"slope", "see offset"}, correction.slope, {0.2, 5, ""});
}

void describe(FieldVisitor& visit, HygrometerResult& result) {
  object(visit, {"correction", "how to put a reading right"}, result.correction);
  visit.numbers({"true_relative_humidity", "over each salt, 0..1"}, result.true_relative_humidity, fractions, {1, 2});
  visit.numbers({"error_relative_humidity", "shown less true, 0..1: positive reads too damp"},
                result.error_relative_humidity, fractions, {1, 2});
  visit.flag({"replace", "the error is beyond what is worth correcting"}, result.replace);
  visit.text({"verdict", "one sentence"}, result.verdict, 400);
}

RelativeHumidity corrected(const HygrometerCorrection& correction, RelativeHumidity shown) {
  return humidity_fraction(std::clamp(correction.offset + correction.slope * in_fraction(shown), 0.0, 1.0));
}

HygrometerResult hygrometer(const HygrometerRequest& request, const SaltTable& salts) {
  require_valid(request);
  HygrometerResult result;
  for (const SaltReading& reading : request.readings) {
    const double truth = in_fraction(humidity_over(salts.named(reading.salt), reading.temperature));
    result.true_relative_humidity.push_back(truth);
    result.error_relative_humidity.push_back(in_fraction(reading.shown) - truth);
  }
  const auto& truth = result.true_relative_humidity;
  const auto& error = result.error_relative_humidity;
  if (truth.size() == 1) {
    result.correction.offset = -error[0];
  } else {
    if (std::abs(truth[1] - truth[0]) < 0.2) {
      throw Refused("readings: the two salts stand " + points(truth[1] - truth[0]) +
                    " apart, and 20 are due for a line");
    }
    const double shown_apart = in_fraction(request.readings[1].shown - request.readings[0].shown);
    const double slope = (truth[1] - truth[0]) / shown_apart;
    if (!(0.2 <= slope && slope <= 5)) {
      throw Refused(
          "readings: the hygrometer hardly tells the two salts apart, or has them the wrong way round: replace it");
    }
    result.correction = {.offset = truth[0] - slope * in_fraction(request.readings[0].shown), .slope = slope};
  }
  result.replace = std::any_of(error.begin(), error.end(),
                               [&](double one) { return std::abs(one) > in_fraction(request.replace_beyond); });
  result.verdict = verdict_of(result);
  return result;
}

}  // namespace tailblock
