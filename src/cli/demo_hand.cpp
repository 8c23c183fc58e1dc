#include "cli/demo_hand.h"

#include <cmath>
#include <cstdlib>

#include "quantity/csv_table.h"
#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

/// `5/64`, `3/32`; between two marks `5 1/2 64ths`.
std::string in_64ths(Length length, double step) {
  const double count = std::round(in_sixty_fourths(length) / step) * step;
  const double whole = std::floor(count);
  if (count == whole) return as_trade(sixty_fourths(whole)).fraction;
  return plain_number(whole) + " 1/2 64ths";
}

/// A plug and the feeler over it: `5/64 + .003`.
std::string in_64ths_and_thousandths(Length length, double step) {
  const double plug = std::floor(in_sixty_fourths(length));
  const double feeler = std::round(in_thousandths(length - sixty_fourths(plug)) / step) * step;
  const std::string first = as_trade(sixty_fourths(plug)).fraction;
  return feeler == 0 ? first : first + " + " + as_trade(thousandths(feeler)).thousandths;
}

std::string in_thou(Length length, double step) {
  return as_trade(thousandths(std::round(in_thousandths(length) / step) * step)).thousandths;
}

/// `2.1 mm`, `-0.35 mm`: whole hundredths, without the zeros at the end.
std::string in_millimetres(Length length, double step) {
  const long hundredths = std::lround(in_mm(length) / step) * std::lround(step * 100);
  return plain_number(static_cast<double>(hundredths) / 100) + " mm";
}

std::string written(const DemoGauge& gauge, double value) {
  switch (gauge.notation) {
    case Notation::sixty_fourths:
      return in_64ths(mm(value), gauge.step);
    case Notation::sixty_fourths_and_thousandths:
      return in_64ths_and_thousandths(mm(value), gauge.step);
    case Notation::thousandths:
      return in_thou(mm(value), gauge.step);
    case Notation::millimetres:
      return in_millimetres(mm(value), gauge.step);
    case Notation::plain:
      break;
  }
  return plain_number(std::round(value / gauge.step) * gauge.step);
}

}  // namespace

WrittenReading written_as(const DemoGauge& gauge, const std::string& typed) {
  if (gauge.notation != Notation::plain) {
    return {.typed = typed, .value = in_mm(length_from_text(gauge.measure, typed))};
  }
  const auto number = number_from_text(typed);
  if (!number) throw Refused(gauge.measure + ": \"" + typed + "\" is not a number");
  return {.typed = typed, .value = *number};
}

WrittenReading read_off(const DemoGauge& gauge, double true_value, NamedChance& chance) {
  return written_as(gauge, written(gauge, true_value + gauge.hand_sd * chance.normal()));
}

}  // namespace tailblock
