#pragma once

#include <optional>
#include <string>
#include <vector>

#include "repair/hours.h"
#include "repair/money.h"
#include "repair/procedure.h"

namespace tailblock {

/// When a line is worth doing.
enum class LineWhen { do_now, can_wait, leave_alone };

/// One piece of work of a line that no procedure gives.
struct EstimateWork {
  std::string operation;  ///< its kind, in data/operations.csv or free
  double low_minutes = 20, typical_minutes = 30, high_minutes = 45;
};
void describe(FieldVisitor&, EstimateWork&);

/// Something bought for a line. Amounts of money are decimal text: `"12.50"`.
struct EstimateMaterial {
  std::string name;
  std::string quantity = "1";  ///< up to three decimals
  std::string unit_price;
  std::string tax_percent;  ///< up to three decimals; empty: that of the line
};
void describe(FieldVisitor&, EstimateMaterial&);

/// One line that the owner says yes or no to.
struct EstimateLine {
  std::string name;
  LineWhen when = LineWhen::do_now;
  std::optional<ProcedureRequest> repair;
  std::vector<EstimateWork> work;
  std::vector<EstimateMaterial> materials;
  std::string fixed_price;  ///< for the labour, instead of the hours; may be empty
  std::string tax_percent = "0";
  std::string risk;  ///< in words an owner can accept or refuse
};
void describe(FieldVisitor&, EstimateLine&);

/// What the shop's own log has taught of one kind of work, as `promise` learns it.
struct LearntWork {
  std::string operation;
  double factor = 1;     ///< how many times its estimate it takes, in the middle
  double scatter = 0.3;  ///< standard deviation of ln(actual/estimate)
};
void describe(FieldVisitor&, LearntWork&);

enum class TaxRounding { per_line, per_rate };

struct EstimateRequest {
  std::string currency = "EUR";
  std::string hourly_rate;
  std::optional<int> billing_step_minutes;
  MoneyRounding rounding = MoneyRounding::half_up;
  TaxRounding tax_rounded = TaxRounding::per_line;
  std::vector<EstimateLine> lines;
  std::vector<LearntWork> learnt;
};
void describe(FieldVisitor&, EstimateRequest&);

/// Arriving and finishing: intake, survey and readings, stringing, set-up after it, report and hand-over.
struct VisitPart {
  Spread hours;
  int billed_minutes = 0;
  std::string net, tax;
};
void describe(FieldVisitor&, VisitPart&);

/// One line with its hours and money; money as decimal text in the currency. Its own are without `visit`.
struct PricedLine {
  std::string name;
  LineWhen when = LineWhen::do_now;
  Spread hours;
  double wait_days = 0;  ///< typical waits of its repair, one after the other
  int billed_minutes = 0;
  std::string labour, labour_low, labour_high;  ///< low and high: were the hours to come out so
  std::string materials, net, tax, gross;
  VisitPart visit;  ///< what it needs of arriving and finishing, paid once a visit; nothing at a fixed price
  std::string risk;
  std::vector<std::string> holds;  ///< what its repair still asks for
  bool cannot_be_undone = false, lowers_value = false;
};
void describe(FieldVisitor&, PricedLine&);

/// The tax of one rate in one total.
struct TaxAtRate {
  std::string percent, net, tax;
};
void describe(FieldVisitor&, TaxAtRate&);

/// The lines of one choice together, and of all before it.
struct EstimateTotal {
  std::string what;
  Spread hours;
  std::string net, tax, gross, net_low, net_high;
  VisitPart visit;  ///< of these, the part that is paid once: the greatest that any of the lines needs
  std::vector<TaxAtRate> taxes;
};
void describe(FieldVisitor&, EstimateTotal&);

struct EstimateResult {
  std::string currency;
  int minor_digits = 2;
  std::string rounding;  ///< in words
  std::vector<PricedLine> lines;
  std::vector<EstimateTotal> options;  ///< the least, and what can wait beside it; what is left alone costs nothing
  std::vector<std::string> assumptions;
};
void describe(FieldVisitor&, EstimateResult&);

/// What the work costs, line by line and in options side by side, with the hours behind it.
///
///     labour = billed minutes x rate/60, billed: typical minutes up to the next billing step; or the fixed price
///     net = labour + sum quantity x unit price;   tax = net x rate, per line or once per rate;   gross = net + tax
///
/// Money is whole minor units throughout; each product is rounded once, halves as told. Hours of a line are those of
/// `summed_minutes`. Arriving and finishing belongs to the visit: it is priced beside each line, and a choice of lines
/// pays the greatest of theirs once, so that a refused line never makes another one dearer. What a repair lists as
/// `its_own` in data/procedures.csv stays with it. A fixed price covers arriving and finishing too.
/// Left out: exchange rates, discounts. Source: arithmetic; minutes from data/operations.csv.
/// @throws Refused naming the field: an unknown currency, an amount with more decimals than the currency has.
[[nodiscard]] EstimateResult estimate(const EstimateRequest& request, const RepairTables& tables);

}  // namespace tailblock
