#include <array>

#include "repair/estimate.h"

namespace tailblock {
namespace {

constexpr auto optional = Need::has_default;
constexpr Count lines{0, 60};
constexpr std::size_t money_bytes = 24;
constexpr std::array<std::string_view, 3> when_names{"do_now", "can_wait", "leave_alone"};
constexpr std::array<std::string_view, 2> rounding_names{"half_up", "half_even"};
constexpr std::array<std::string_view, 2> tax_names{"per_line", "per_rate"};
constexpr Range minutes{0, 20000, "min"};

void hours(FieldVisitor& visit, Spread& value) {
  constexpr Range range{0, 100000, "h"};
  visit.number({"low_hours", "undercut one time in ten"}, value.low, range);
  visit.number({"typical_hours", "as often more as less"}, value.typical, range);
  visit.number({"high_hours", "exceeded one time in ten"}, value.high, range);
}

}  // namespace

void describe(FieldVisitor& visit, EstimateWork& work) {
  visit.text({"operation", "its kind"}, work.operation, 60);
  visit.number({"low_minutes", "undercut one time in ten", optional}, work.low_minutes, minutes);
  visit.number({"typical_minutes", "as often more as less", optional}, work.typical_minutes, minutes);
  visit.number({"high_minutes", "exceeded one time in ten", optional}, work.high_minutes, minutes);
}

void describe(FieldVisitor& visit, EstimateMaterial& material) {
  visit.text({"name", "what is bought"}, material.name, 120);
  visit.text({"quantity", "decimal text, up to three decimals", optional}, material.quantity, money_bytes);
  visit.text({"unit_price", "decimal text in the currency"}, material.unit_price, money_bytes);
  visit.text({"tax_percent", "decimal text; empty: that of the line", optional}, material.tax_percent, money_bytes);
}

void describe(FieldVisitor& visit, EstimateLine& line) {
  visit.text({"name", "what the owner says yes or no to"}, line.name, 200);
  choice(visit, {"when", "now, later or not", optional}, line.when, when_names);
  maybe(visit, {"repair", "the repair whose hours it takes"}, line.repair,
        [&](const Field& field, ProcedureRequest& repair) { object(visit, field, repair); });
  list(visit, {"work", "work that no procedure gives", optional}, line.work, lines);
  list(visit, {"materials", "what is bought for it", optional}, line.materials, lines);
  visit.text({"fixed_price", "decimal text for the labour, instead of the hours; may be empty", optional},
             line.fixed_price, money_bytes);
  visit.text({"tax_percent", "decimal text, up to three decimals", optional}, line.tax_percent, money_bytes);
  visit.text({"risk", "in words an owner can accept or refuse", optional}, line.risk, 500);
}

void describe(FieldVisitor& visit, LearntWork& learnt) {
  visit.text({"operation", "its kind"}, learnt.operation, 60);
  visit.number({"factor", "times its estimate, in the middle", optional}, learnt.factor, {0.05, 20, ""});
  visit.number({"scatter", "standard deviation of ln(actual/estimate)", optional}, learnt.scatter, {0, 2, ""});
}

void describe(FieldVisitor& visit, EstimateRequest& request) {
  visit.text({"currency", "code of ISO 4217", optional}, request.currency, 3);
  visit.text({"hourly_rate", "decimal text in the currency"}, request.hourly_rate, money_bytes);
  maybe(visit, {"billing_step_minutes", "hands-on time is billed in steps of this"}, request.billing_step_minutes,
        [&](const Field& field, int& step) {
          visit.integer(field, step, {1, 480, "min"});
        });
  choice(visit, {"rounding", "of half a minor unit", optional}, request.rounding, rounding_names);
  choice(visit, {"tax_rounded", "on every line, or once for each rate", optional}, request.tax_rounded, tax_names);
  list(visit, {"lines", "what is offered"}, request.lines, lines);
  list(visit, {"learnt", "what the shop's log has taught", optional}, request.learnt, {0, 300});
}

void describe(FieldVisitor& visit, VisitPart& part) {
  hours(visit, part.hours);
  visit.integer({"billed_minutes", "in billing steps"}, part.billed_minutes, {0, 1000000, "min"});
  visit.text({"net", "money, before tax"}, part.net, money_bytes);
  visit.text({"tax", "money"}, part.tax, money_bytes);
}

void describe(FieldVisitor& visit, PricedLine& line) {
  visit.text({"name", "what the owner says yes or no to"}, line.name, 200);
  choice(visit, {"when", "now, later or not"}, line.when, when_names);
  hours(visit, line.hours);
  visit.number({"wait_days", "typical waits, one after the other"}, line.wait_days, {0, 10000, "d"});
  visit.integer({"billed_minutes", "in billing steps"}, line.billed_minutes, {0, 1000000, "min"});
  visit.text({"labour", "money"}, line.labour, money_bytes);
  visit.text({"labour_low", "money, were the hours to come out low"}, line.labour_low, money_bytes);
  visit.text({"labour_high", "money, were they to come out high"}, line.labour_high, money_bytes);
  visit.text({"materials", "money"}, line.materials, money_bytes);
  visit.text({"net", "money, before tax"}, line.net, money_bytes);
  visit.text({"tax", "money"}, line.tax, money_bytes);
  visit.text({"gross", "money"}, line.gross, money_bytes);
  object(visit, {"visit", "what it needs of arriving and finishing, paid once a visit and not in the line"}, line.visit);
  visit.text({"risk", "in words"}, line.risk, 500);
  visit.texts({"holds", "what its repair still asks for"}, line.holds, 1000, {0, 200});
  visit.flag({"cannot_be_undone", "some of it"}, line.cannot_be_undone);
  visit.flag({"lowers_value", "some of it"}, line.lowers_value);
}

void describe(FieldVisitor& visit, TaxAtRate& tax) {
  visit.text({"percent", "the rate"}, tax.percent, money_bytes);
  visit.text({"net", "money it is on"}, tax.net, money_bytes);
  visit.text({"tax", "money"}, tax.tax, money_bytes);
}

void describe(FieldVisitor& visit, EstimateTotal& total) {
  visit.text({"what", "which lines"}, total.what, 100);
  hours(visit, total.hours);
  visit.text({"net", "money, before tax"}, total.net, money_bytes);
  visit.text({"tax", "money"}, total.tax, money_bytes);
  visit.text({"gross", "money"}, total.gross, money_bytes);
  visit.text({"net_low", "money, were every line to come out low"}, total.net_low, money_bytes);
  visit.text({"net_high", "money, were every line to come out high"}, total.net_high, money_bytes);
  object(visit, {"visit", "the part of it that is arriving and finishing, paid once"}, total.visit);
  list(visit, {"taxes", "by rate"}, total.taxes, {0, 60});
}

void describe(FieldVisitor& visit, EstimateResult& result) {
  visit.text({"currency", "code of ISO 4217"}, result.currency, 3);
  visit.integer({"minor_digits", "decimals of an amount"}, result.minor_digits, {0, 4, ""});
  visit.text({"rounding", "in words"}, result.rounding, 200);
  list(visit, {"lines", "as asked"}, result.lines, lines);
  list(visit, {"options", "side by side"}, result.options, {0, 3});
  visit.texts({"assumptions", "what is taken for granted"}, result.assumptions, 300, {0, 20});
}

}  // namespace tailblock
