#include "book/invoice_question.h"

#include <algorithm>

namespace tailblock {
namespace {

constexpr std::size_t money_bytes = 64;

ExactDecimal plus(ExactDecimal sum, const ExactDecimal& more) {
  sum.units += more.units;
  return sum;
}

/// The invoice that asks for one of a job's offers; null when none does.
const GivenPaper* invoice_of(const JobStory& job, const VisitWork& visit) {
  for (const InvoicedOffer& one : visit.invoiced) {
    const auto ours = std::ranges::find(job.offers, one.offer_id, &JobOffer::id);
    if (ours == job.offers.end()) continue;
    const auto paper = std::ranges::find(visit.papers, one.paper_id, &GivenPaper::id);
    if (paper != visit.papers.end()) return &*paper;
  }
  return nullptr;
}

std::string why_left_out(const JobPlan& job, const GivenPaper* invoice) {
  if (invoice != nullptr) {
    std::string on = "stands on invoice " + invoice->number + " already";
    if (job.story.offers.back().day > invoice->day) on += "; what was offered since is on none";
    return on;
  }
  switch (job.owner) {
    case OwnerStands::no:
      return "the owner said no";
    case OwnerStands::asked:
      return "the owner has not answered yet";
    case OwnerStands::not_asked:
    case OwnerStands::yes:
      break;
  }
  return "it was not put before the owner";
}

/// All hands-on work of the repair itself; what is still drying counts as done, and so does work at the counter.
bool is_finished(const JobPlan& job, const RepairTables& tables) {
  const RepairProcedure& repair = tables.procedure(job.story.job.procedure);
  return std::ranges::all_of(job.steps, [&](const JobStep& step) {
    const bool counter = step.step.family != WorkFamily::work && !repair.is_its_own(step.step.operation);
    return step.state == StepState::done || step.state == StepState::waiting || counter;
  });
}

InvoicedJob line_of(const JobPlan& job, const RepairTables& tables) {
  const JobOffer& offer = job.story.offers.back();
  const OwnerWord& word = *std::ranges::find(job.story.words.rbegin(), job.story.words.rend(), offer.id,
                                             &OwnerWord::offer_id);
  return {.job_id = job.story.job.id,
          .offer_id = offer.id,
          .name = job.plan.name,
          .labour = offer.labour,
          .materials = offer.materials,
          .net = offer.net,
          .tax_percent = offer.tax_percent,
          .tax = offer.tax,
          .agreed_by = word.who,
          .agreed_on = word.day,
          .finished = is_finished(job, tables)};
}

/// Of the two, the offer that needs more of arriving and finishing.
const JobOffer* greater_visit(const JobOffer* one, const JobOffer& other, int digits) {
  if (other.visit_net.empty()) return one;
  const auto net = [&](const JobOffer& offer) { return exact_decimal("visit_net", offer.visit_net, digits).units; };
  return one == nullptr || net(other) > net(*one) ? &other : one;
}

InvoicedVisit visit_part(const InvoiceAnswer& invoice, const VisitWork& visit, int digits) {
  const JobOffer *asked = nullptr, *paid = nullptr;
  for (const JobStory& job : visit.jobs) {
    for (const JobOffer& offer : job.offers) {
      if (std::ranges::find(visit.invoiced, offer.id, &InvoicedOffer::offer_id) != visit.invoiced.end()) {
        paid = greater_visit(paid, offer, digits);
      }
      if (std::ranges::find(invoice.lines, offer.id, &InvoicedJob::offer_id) != invoice.lines.end()) {
        asked = greater_visit(asked, offer, digits);
      }
    }
  }
  InvoicedVisit part;
  if (asked == nullptr) return part;
  ExactDecimal net = exact_decimal("visit_net", asked->visit_net, digits);
  ExactDecimal tax = exact_decimal("visit_tax", asked->visit_tax, digits);
  if (paid != nullptr) {
    net.units -= exact_decimal("visit_net", paid->visit_net, digits).units;
    tax.units -= exact_decimal("visit_tax", paid->visit_tax, digits).units;
  }
  if (net.units <= 0) return part;
  return {.net = as_text(net), .tax_percent = asked->tax_percent, .tax = as_text(tax)};
}

int minor_digits(const std::string& currency, const RepairTables& tables) {
  const Currency* known = row_of_id(tables.currencies, currency);
  if (known == nullptr) throw Refused("currency: \"" + currency + "\" is not in data/currencies.csv");
  return known->minor_digits;
}

void add_up(InvoiceAnswer& invoice, int digits) {
  ExactDecimal net{.units = 0, .digits = digits}, tax = net;
  struct Rate {
    std::string percent;
    ExactDecimal net, tax;
  };
  std::vector<Rate> rates;
  const auto add = [&](const std::string& net_text, const std::string& percent, const std::string& tax_text) {
    const ExactDecimal on = exact_decimal("net", net_text, digits), of_it = exact_decimal("tax", tax_text, digits);
    net = plus(net, on);
    tax = plus(tax, of_it);
    auto rate = std::ranges::find(rates, percent, &Rate::percent);
    if (rate == rates.end()) {
      rates.push_back({percent, {0, digits}, {0, digits}});
      rate = rates.end() - 1;
    }
    rate->net = plus(rate->net, on);
    rate->tax = plus(rate->tax, of_it);
  };
  for (const InvoicedJob& line : invoice.lines) add(line.net, line.tax_percent, line.tax);
  if (!invoice.visit.net.empty()) add(invoice.visit.net, invoice.visit.tax_percent, invoice.visit.tax);
  for (const Rate& rate : rates) {
    invoice.taxes.push_back({.percent = rate.percent, .net = as_text(rate.net), .tax = as_text(rate.tax)});
  }
  invoice.net = as_text(net);
  invoice.tax = as_text(tax);
  invoice.total = as_text(plus(net, tax));
}

}  // namespace

InvoiceAnswer invoice_answer(const VisitWork& visit, const std::vector<JobPlan>& jobs, const RepairTables& tables) {
  InvoiceAnswer invoice;
  for (const JobPlan& job : jobs) {
    if (job.story.job.withdrawn) continue;
    const GivenPaper* before = invoice_of(job.story, visit);
    if (before != nullptr || job.owner != OwnerStands::yes) {
      invoice.left_out.push_back(job.plan.name + ": " + why_left_out(job, before) + ".");
      continue;
    }
    const std::string& currency = job.story.offers.back().currency;
    if (!invoice.currency.empty() && currency != invoice.currency) {
      throw Refused("currency: the owner agreed to lines in " + invoice.currency + " and in " + currency +
                    "; put one of them before the owner again");
    }
    invoice.currency = currency;
    invoice.lines.push_back(line_of(job, tables));
  }
  if (!invoice.lines.empty()) {
    const int digits = minor_digits(invoice.currency, tables);
    invoice.visit = visit_part(invoice, visit, digits);
    add_up(invoice, digits);
  }
  return invoice;
}

void describe(FieldVisitor& visit, InvoicedJob& line) {
  constexpr Range numbers{0, 2147483647, ""};
  visit.integer({"job_id", "in the book"}, line.job_id, numbers);
  visit.integer({"offer_id", "that was said yes to"}, line.offer_id, numbers);
  visit.text({"name", "of the repair"}, line.name, 200);
  visit.text({"labour", "of the net; may not be known"}, line.labour, money_bytes);
  visit.text({"materials", "of the net; may not be known"}, line.materials, money_bytes);
  visit.text({"net", "before tax"}, line.net, money_bytes);
  visit.text({"tax_percent", "the rate; may not be known"}, line.tax_percent, money_bytes);
  visit.text({"tax", "on it"}, line.tax, money_bytes);
  visit.text({"agreed_by", "who said yes"}, line.agreed_by, 200);
  visit.date({"agreed_on", "that day"}, line.agreed_on);
  visit.flag({"finished", "hands have done all of it"}, line.finished);
}

void describe(FieldVisitor& visit, InvoicedVisit& part) {
  visit.text({"net", "before tax; empty: nothing of it is to pay"}, part.net, money_bytes);
  visit.text({"tax_percent", "the rate"}, part.tax_percent, money_bytes);
  visit.text({"tax", "on it"}, part.tax, money_bytes);
}

void describe(FieldVisitor& visit, InvoiceAnswer& invoice) {
  visit.text({"currency", "ISO 4217; empty without a line"}, invoice.currency, money_bytes);
  list(visit, {"lines", "to be paid for"}, invoice.lines, {0, 1000});
  object(visit, {"visit", "arriving and finishing, once"}, invoice.visit);
  visit.text({"net", "without tax; empty without a line"}, invoice.net, money_bytes);
  visit.text({"tax", "all of it; empty without a line"}, invoice.tax, money_bytes);
  visit.text({"total", "with tax; empty without a line"}, invoice.total, money_bytes);
  list(visit, {"taxes", "by rate"}, invoice.taxes, {0, 1000});
  visit.texts({"left_out", "jobs that are not on it, and why"}, invoice.left_out, 500, {0, 1000});
}

}  // namespace tailblock
