#include "quantity/fields.h"

namespace tailblock {

void temperature(FieldVisitor& visit, const Field& field, Temperature& value, const Range& in_c) {
  double number = in_celsius(value);
  visit.number(field, number, in_c);
  value = celsius(number);
}

void relative_humidity(FieldVisitor& visit, const Field& field, RelativeHumidity& value) {
  double number = in_fraction(value);
  visit.number(field, number, {0, 1, ""});
  value = humidity_fraction(number);
}

void moisture(FieldVisitor& visit, const Field& field, Moisture& value, const Range& range) {
  double number = in_percent(value);
  visit.number(field, number, range);
  value = moisture_percent(number);
}

void force(FieldVisitor& visit, const Field& field, Force& value, const Range& in_n) {
  double number = in_newtons(value);
  visit.number(field, number, in_n);
  value = newtons(number);
}

void angle(FieldVisitor& visit, const Field& field, Angle& value, const Range& in_deg) {
  double number = in_degrees(value);
  visit.number(field, number, in_deg);
  value = degrees(number);
}

void span_of_days(FieldVisitor& visit, const Field& field, Days& value, const Range& range) {
  double number = in_days(value);
  visit.number(field, number, range);
  value = days(number);
}

std::string RangeCheck::path(std::string_view leaf) const {
  std::string text;
  for (const std::string& step : trail_) text += step;
  return text + std::string(leaf);
}

void RangeCheck::number(const Field& field, double& value, const Range& range) {
  if (!(range.low <= value && value <= range.high)) require_within(path(field.name), value, range);
}

void RangeCheck::length(const Field& field, Length& value, const Range& range) {
  double number_mm = in_mm(value);
  number(field, number_mm, range);
}

void RangeCheck::integer(const Field& field, int& value, const Range& range) {
  double whole = value;
  number(field, whole, range);
}

void RangeCheck::text(const Field& field, std::string& value, std::size_t most_bytes) {
  if (value.size() > most_bytes) {
    throw Refused(path(field.name) + ": " + std::to_string(value.size()) + " bytes is more than " +
                  std::to_string(most_bytes));
  }
}

void RangeCheck::date(const Field& field, Date& value) {
  // A log holds thousands of days: only one that is outside is written out, to be refused as its text would be.
  constexpr Date first{std::chrono::year(1900) / std::chrono::January / 1};
  constexpr Date last{std::chrono::year(2199) / std::chrono::December / 31};
  if (value < first || last < value) (void)date_from_iso(path(field.name), iso_date(value));
}

void RangeCheck::choice(const Field& field, int& index, std::span<const std::string_view> names) {
  if (index < 0 || static_cast<std::size_t>(index) >= names.size()) {
    throw Refused(path(field.name) + ": choice " + std::to_string(index) + " does not exist");
  }
}

void RangeCheck::numbers(const Field& field, std::vector<double>& values, const Range& range, const Count& count) {
  enter_list(field, values.size(), count);
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (range.low <= values[i] && values[i] <= range.high) continue;
    require_within(path("[" + std::to_string(i) + "]"), values[i], range);
  }
  leave_list();
}

void RangeCheck::texts(const Field& field, std::vector<std::string>& values, std::size_t most_bytes,
                       const Count& count) {
  enter_list(field, values.size(), count);
  for (std::size_t i = 0; i < values.size(); ++i) {
    const std::string item = "[" + std::to_string(i) + "]";
    text({item, ""}, values[i], most_bytes);
  }
  leave_list();
}

bool RangeCheck::enter(const Field& field) {
  trail_.push_back(std::string(field.name) + ".");
  return true;
}

void RangeCheck::leave() { trail_.pop_back(); }

std::size_t RangeCheck::enter_list(const Field& field, std::size_t have, const Count& count) {
  if (have < count.least || have > count.most) {
    throw Refused(path(field.name) + ": " + std::to_string(have) + " items is outside " + std::to_string(count.least) +
                  ".." + std::to_string(count.most));
  }
  trail_.push_back(std::string(field.name));
  return have;
}

void RangeCheck::enter_item(std::size_t index) { trail_.push_back("[" + std::to_string(index) + "]."); }

void RangeCheck::leave_item() { trail_.pop_back(); }

void RangeCheck::leave_list() { trail_.pop_back(); }

}  // namespace tailblock
