#include "repair/estimate.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

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

struct LineSums {
  PricedLine shown;
  std::vector<WorkMinutes> work;
  NetByRate net;
  std::int64_t net_low = 0, net_high = 0, tax = 0;
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

/// Adds the steps of the line's repair, but for what an earlier line brings to the visit.
void add_repair(LineSums& line, const ProcedureRequest& repair, const Till& till, std::set<std::string>& visit) {
  const ProcedureResult plan = procedure(repair, till.tables);
  std::set<std::string> its_own;
  for (const StepShown& step : plan.steps) {
    const bool shared = step.family != WorkFamily::work;
    if (shared && visit.contains(step.operation)) continue;
    if (shared) its_own.insert(step.operation);
    line.work.push_back(minutes_of(step.operation, step.hands_on_minutes, till.request));
    line.shown.cannot_be_undone = line.shown.cannot_be_undone || step.reversible == Reversible::no;
    line.shown.lowers_value = line.shown.lowers_value || step.value == ValueEffect::lowers;
  }
  visit.insert(its_own.begin(), its_own.end());
  line.shown.wait_days = plan.wait_minutes * days_per_minute;
  line.shown.holds = plan.holds;
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
}

LineSums priced(const EstimateLine& asked, const std::string& path, const Till& till, std::set<std::string>& visit) {
  LineSums line;
  line.shown.name = asked.name;
  line.shown.when = asked.when;
  line.shown.risk = asked.risk;
  if (asked.repair) add_repair(line, *asked.repair, till, visit);
  for (const EstimateWork& work : asked.work) {
    if (!(work.low_minutes <= work.typical_minutes && work.typical_minutes <= work.high_minutes)) {
      throw Refused(path + ".work: typical_minutes is not between low_minutes and high_minutes");
    }
    line.work.push_back(
        minutes_of(work.operation, {work.low_minutes, work.typical_minutes, work.high_minutes}, till.request));
  }
  const Spread minutes =
      summed_minutes(line.work, till.tables.figures.low_high_chance, till.tables.figures.shared_scatter);
  line.shown.hours = {minutes.low / 60, minutes.typical / 60, minutes.high / 60};
  add_money(line, asked, path, till);
  return line;
}

EstimateTotal total_of(const std::string& what, const std::vector<LineSums>& lines, LineWhen last, const Till& till) {
  std::vector<WorkMinutes> work;
  NetByRate net_by_rate;
  std::int64_t net = 0, tax_by_line = 0, net_low = 0, net_high = 0;
  for (const LineSums& line : lines) {
    if (line.shown.when > last) continue;
    work.insert(work.end(), line.work.begin(), line.work.end());
    for (const auto& [rate, amount] : line.net) net_by_rate[rate] += amount;
    tax_by_line += line.tax;
    net_low += line.net_low;
    net_high += line.net_high;
  }
  EstimateTotal total{
      .what = what, .hours = {}, .net = "", .tax = "", .gross = "", .net_low = "", .net_high = "", .taxes = {}};
  const Spread minutes = summed_minutes(work, till.tables.figures.low_high_chance, till.tables.figures.shared_scatter);
  total.hours = {minutes.low / 60, minutes.typical / 60, minutes.high / 60};
  std::int64_t tax_by_rate = 0;
  for (const auto& [rate, amount] : net_by_rate) {
    net += amount;
    std::int64_t tax = till.tax_of(amount, {rate, tax_digits}).units;
    if (till.request.tax_rounded == TaxRounding::per_line) {
      tax = 0;
      for (const LineSums& line : lines) {
        const auto at_rate = line.net.find(rate);
        if (line.shown.when <= last && at_rate != line.net.end()) {
          tax += till.tax_of(at_rate->second, {rate, tax_digits}).units;
        }
      }
    }
    tax_by_rate += tax;
    total.taxes.push_back({as_text({rate, tax_digits}), as_text(till.money(amount)), as_text(till.money(tax))});
  }
  total.net = as_text(till.money(net));
  total.tax = as_text(till.money(tax_by_rate));
  total.gross = as_text(till.money(net + tax_by_rate));
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
  std::map<LineWhen, std::set<std::string>> visits;
  for (std::size_t i = 0; i < request.lines.size(); ++i) {
    std::set<std::string>& visit = visits[request.lines[i].when];
    if (request.lines[i].when == LineWhen::can_wait) {
      visit.insert(visits[LineWhen::do_now].begin(), visits[LineWhen::do_now].end());
    }
    lines.push_back(priced(request.lines[i], "lines[" + std::to_string(i) + "]", till, visit));
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
      "Arriving and finishing work is counted once, in the first line that brings it.",
      "What is left alone is listed and costs nothing."};
  return result;
}

}  // namespace tailblock
