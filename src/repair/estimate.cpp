#include "repair/estimate.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

constexpr int tax_digits = 3, quantity_digits = 3;
constexpr double days_per_minute = 1.0 / 1440;

/// What every line is priced with.
struct Till {
  const EstimateRequest& request;
  const RepairTables& tables;
  Currency currency;
  ExactDecimal rate;
  int step = 5;

  [[nodiscard]] ExactDecimal money(std::int64_t units) const { return {units, currency.minor_digits}; }
  [[nodiscard]] ExactDecimal labour(int minutes) const {
    return money(rounded_division(rate.units * minutes, 60, request.rounding));
  }
  [[nodiscard]] ExactDecimal tax_of(std::int64_t net, const ExactDecimal& percent) const {
    // percent/100: two digits more
    return times(money(net), {percent.units, percent.digits + 2}, request.rounding);
  }
  [[nodiscard]] int billed(double minutes) const { return step * static_cast<int>(std::ceil(minutes / step - 1e-9)); }
};

ExactDecimal not_negative(const std::string& field, const std::string& text, int digits) {
  const ExactDecimal value = exact_decimal(field, text, digits);
  if (value.units < 0) throw Refused(field + ": " + quoted_text(text) + " is below 0");
  return value;
}

/// Prices up to 10^9 and what multiplies them up to 10^6 keep every product far below 2^63.
ExactDecimal price(const std::string& field, const std::string& text, const Till& till) {
  const ExactDecimal value = not_negative(field, text, till.currency.minor_digits);
  (void)require_within(field, static_cast<double>(value.units), {0, 1e11, "minor units"});
  return value;
}

ExactDecimal percent(const std::string& field, const std::string& text) {
  const ExactDecimal value = not_negative(field, text, tax_digits);
  (void)require_within(field, static_cast<double>(value.units) / 1000, {0, 100, "percent"});
  return value;
}

/// Net amounts in minor units, by tax rate in thousandths of a percent.
using NetByRate = std::map<std::int64_t, std::int64_t>;

/// Arriving and finishing that a line needs.
struct VisitSums {
  std::vector<WorkMinutes> work;
  std::int64_t net = 0, net_low = 0, net_high = 0, rate = 0;
  VisitPart shown;
};

struct LineSums {
  PricedLine shown;
  std::vector<WorkMinutes> work;
  NetByRate net;
  std::int64_t net_low = 0, net_high = 0, tax = 0;
  VisitSums visit;
};

WorkMinutes minutes_of(const std::string& operation, const Spread& hands_on, const EstimateRequest& request) {
  WorkMinutes minutes{.hands_on = hands_on};
  for (const LearntWork& learnt : request.learnt) {
    if (learnt.operation != operation) continue;
    minutes.learnt_factor = learnt.factor;
    minutes.learnt_scatter = learnt.scatter;
  }
  return minutes;
}

void add_repair(LineSums& line, const ProcedureRequest& repair, const Till& till) {
  const ProcedureResult plan = procedure(repair, till.tables);
  const RepairProcedure& wanted = till.tables.procedure(repair.procedure);
  for (const StepShown& step : plan.steps) {
    const bool own = step.family == WorkFamily::work || wanted.is_its_own(step.operation);
    auto& work = own ? line.work : line.visit.work;
    work.push_back(minutes_of(step.operation, step.hands_on_minutes, till.request));
    line.shown.cannot_be_undone = line.shown.cannot_be_undone || step.reversible == Reversible::no;
    line.shown.lowers_value = line.shown.lowers_value || step.value == ValueEffect::lowers;
  }
  line.shown.wait_days = plan.wait_minutes * days_per_minute;
  line.shown.holds = plan.holds;
}

Spread added_up(const std::vector<WorkMinutes>& work, const RepairFigures& figures) {
  return summed_minutes(work, figures.low_high_chance, figures.shared_scatter);
}

Spread in_hours(const Spread& minutes) { return {minutes.low / 60, minutes.typical / 60, minutes.high / 60}; }

void price_visit(VisitSums& visit, std::int64_t rate, bool by_hours, const Till& till) {
  const Spread minutes = added_up(visit.work, till.tables.figures);
  visit.rate = rate;
  visit.shown.hours = in_hours(minutes);
  if (by_hours) {
    visit.shown.billed_minutes = till.billed(minutes.typical);
    visit.net = till.labour(visit.shown.billed_minutes).units;
    visit.net_low = till.labour(till.billed(minutes.low)).units;
    visit.net_high = till.labour(till.billed(minutes.high)).units;
  }
  visit.shown.net = as_text(till.money(visit.net));
  visit.shown.tax = as_text(till.tax_of(visit.net, {rate, tax_digits}));
}

void add_money(LineSums& line, const EstimateLine& asked, const std::string& path, const Till& till) {
  const ExactDecimal line_tax = percent(path + ".tax_percent", asked.tax_percent);
  const Spread minutes{line.shown.hours.low * 60, line.shown.hours.typical * 60, line.shown.hours.high * 60};
  line.shown.billed_minutes = till.billed(minutes.typical);
  ExactDecimal labour = till.labour(line.shown.billed_minutes);
  ExactDecimal low = till.labour(till.billed(minutes.low)), high = till.labour(till.billed(minutes.high));
  if (!asked.fixed_price.empty()) low = high = labour = price(path + ".fixed_price", asked.fixed_price, till);
  std::int64_t bought = 0;
  line.net[line_tax.units] += labour.units;
  for (std::size_t i = 0; i < asked.materials.size(); ++i) {
    const EstimateMaterial& material = asked.materials[i];
    const std::string at = path + ".materials[" + std::to_string(i) + "]";
    const ExactDecimal quantity = not_negative(at + ".quantity", material.quantity, quantity_digits);
    (void)require_within(at + ".quantity", static_cast<double>(quantity.units) / 1000, {0, 10000, ""});
    const ExactDecimal cost =
        times(price(at + ".unit_price", material.unit_price, till), quantity, till.request.rounding);
    const ExactDecimal tax =
        material.tax_percent.empty() ? line_tax : percent(at + ".tax_percent", material.tax_percent);
    line.net[tax.units] += cost.units;
    bought += cost.units;
  }
  for (const auto& [rate, net] : line.net) {
    // sixty such lines times a tax rate stay below 2^63
    (void)require_within(path + ".net", static_cast<double>(net), {0, 1e11, "minor units"});
  }
  for (const auto& [rate, net] : line.net) line.tax += till.tax_of(net, {rate, tax_digits}).units;
  line.net_low = low.units + bought;
  line.net_high = high.units + bought;
  line.shown.labour = as_text(labour);
  line.shown.labour_low = as_text(low);
  line.shown.labour_high = as_text(high);
  line.shown.materials = as_text(till.money(bought));
  line.shown.net = as_text(till.money(labour.units + bought));
  line.shown.tax = as_text(till.money(line.tax));
  line.shown.gross = as_text(till.money(labour.units + bought + line.tax));
  price_visit(line.visit, line_tax.units, asked.fixed_price.empty(), till);
  line.shown.visit = line.visit.shown;
}

LineSums priced(const EstimateLine& asked, const std::string& path, const Till& till) {
  LineSums line;
  line.shown.name = asked.name;
  line.shown.when = asked.when;
  line.shown.risk = asked.risk;
  if (asked.repair) add_repair(line, *asked.repair, till);
  for (const EstimateWork& work : asked.work) {
    if (!(work.low_minutes <= work.typical_minutes && work.typical_minutes <= work.high_minutes)) {
      throw Refused(path + ".work: typical_minutes is not between low_minutes and high_minutes");
    }
    line.work.push_back(
        minutes_of(work.operation, {work.low_minutes, work.typical_minutes, work.high_minutes}, till.request));
  }
  line.shown.hours = in_hours(added_up(line.work, till.tables.figures));
  add_money(line, asked, path, till);
  return line;
}

/// The greatest part of arriving and finishing that any of the chosen lines needs; null: none of them needs any.
const VisitSums* visit_of(const std::vector<LineSums>& lines, LineWhen last) {
  const VisitSums* greatest = nullptr;
  for (const LineSums& line : lines) {
    if (line.shown.when > last || line.visit.work.empty()) continue;
    if (greatest == nullptr || line.visit.net > greatest->net) greatest = &line.visit;
  }
  return greatest;
}

std::int64_t tax_at(std::int64_t rate, const std::vector<const NetByRate*>& nets, const Till& till) {
  std::int64_t on = 0, tax = 0;
  for (const NetByRate* net : nets) {
    const auto at_rate = net->find(rate);
    if (at_rate == net->end()) continue;
    on += at_rate->second;
    tax += till.tax_of(at_rate->second, {rate, tax_digits}).units;
  }
  return till.request.tax_rounded == TaxRounding::per_line ? tax : till.tax_of(on, {rate, tax_digits}).units;
}

EstimateTotal total_of(const std::string& what, const std::vector<LineSums>& lines, LineWhen last, const Till& till) {
  std::vector<WorkMinutes> work;
  std::vector<const NetByRate*> nets;
  std::int64_t net = 0, tax = 0, net_low = 0, net_high = 0;
  EstimateTotal total{.what = what,
                      .hours = {},
                      .net = "",
                      .tax = "",
                      .gross = "",
                      .net_low = "",
                      .net_high = "",
                      .visit = {.hours = {}, .net = as_text(till.money(0)), .tax = as_text(till.money(0))},
                      .taxes = {}};
  for (const LineSums& line : lines) {
    if (line.shown.when > last) continue;
    work.insert(work.end(), line.work.begin(), line.work.end());
    nets.push_back(&line.net);
    net_low += line.net_low;
    net_high += line.net_high;
  }
  NetByRate once;
  if (const VisitSums* visit = visit_of(lines, last)) {
    total.visit = visit->shown;
    work.insert(work.end(), visit->work.begin(), visit->work.end());
    once[visit->rate] = visit->net;
    nets.push_back(&once);
    net_low += visit->net_low;
    net_high += visit->net_high;
  }
  NetByRate by_rate;
  for (const NetByRate* one : nets) {
    for (const auto& [rate, amount] : *one) by_rate[rate] += amount;
  }
  for (const auto& [rate, amount] : by_rate) {
    const std::int64_t tax_of_rate = tax_at(rate, nets, till);
    net += amount;
    tax += tax_of_rate;
    total.taxes.push_back({as_text({rate, tax_digits}), as_text(till.money(amount)), as_text(till.money(tax_of_rate))});
  }
  total.hours = in_hours(added_up(work, till.tables.figures));
  total.net = as_text(till.money(net));
  total.tax = as_text(till.money(tax));
  total.gross = as_text(till.money(net + tax));
  total.net_low = as_text(till.money(net_low));
  total.net_high = as_text(till.money(net_high));
  return total;
}

Till till_of(const EstimateRequest& request, const RepairTables& tables) {
  const Currency* currency = row_of_id(tables.currencies, request.currency);
  if (currency == nullptr) {
    throw Refused("currency: " + quoted_text(request.currency) + " is not a code of ISO 4217 in data/currencies.csv");
  }
  Till till{request, tables, *currency, {}, static_cast<int>(tables.figures.billing_step)};
  till.rate = price("hourly_rate", request.hourly_rate, till);
  (void)require_within("hourly_rate", static_cast<double>(till.rate.units), {0, 1e9, "minor units"});
  if (request.billing_step_minutes) till.step = *request.billing_step_minutes;
  return till;
}

std::string rounding_words(const Till& till) {
  std::string words = "Each amount is rounded to " + std::to_string(till.currency.minor_digits) + " decimals, ";
  words += till.request.rounding == MoneyRounding::half_up ? "halves away from zero" : "halves to the even digit";
  words += till.request.tax_rounded == TaxRounding::per_line ? "; tax is rounded on every line."
                                                             : "; tax is rounded once for each rate.";
  return words;
}

}  // namespace

EstimateResult estimate(const EstimateRequest& request, const RepairTables& tables) {
  require_valid(request);
  const Till till = till_of(request, tables);
  std::vector<LineSums> lines;
  for (std::size_t i = 0; i < request.lines.size(); ++i) {
    lines.push_back(priced(request.lines[i], "lines[" + std::to_string(i) + "]", till));
  }
  EstimateResult result;
  result.currency = till.currency.id;
  result.minor_digits = till.currency.minor_digits;
  result.rounding = rounding_words(till);
  for (const LineSums& line : lines) result.lines.push_back(line.shown);
  result.options.push_back(total_of("what should be done now", lines, LineWhen::do_now, till));
  result.options.push_back(total_of("with what can wait", lines, LineWhen::can_wait, till));
  result.assumptions = {
      "Minutes are the shop's defaults (common practice, no source) unless its own log has taught "
      "better ones.",
      "Arriving and finishing is in no line: it is paid once, as much as the line needs that needs most of it.",
      "What is left alone is listed and costs nothing."};
  return result;
}

}  // namespace tailblock
