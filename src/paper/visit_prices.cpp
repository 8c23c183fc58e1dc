#include <algorithm>
#include <cmath>

#include "paper/visit_papers.h"
#include "repair/money.h"
#include "season/words.h"

namespace tailblock {
namespace {

constexpr const char* visit_part_name = "Arriving and finishing, once for the visit";
constexpr const char* visit_part_words =
    "Intake, survey and readings, stringing and what follows it, report and hand-over.";

/// `19 %`, without the noughts that say nothing.
std::string rate_in_words(std::string percent) {
  if (percent.empty()) return "as agreed";
  if (percent.find('.') != std::string::npos) percent.erase(percent.find_last_not_of('0') + 1);
  if (percent.ends_with('.')) percent.pop_back();
  return percent + " %";
}

/// The terms and ways to pay that fit a paper's line.
std::vector<std::string> first_lines(const std::string& text, std::size_t most) {
  std::vector<std::string> lines = lines_of(text);
  if (lines.size() > most) lines.resize(most);
  return lines;
}

const JobStory* job_of(const VisitForPaper& visit, RecordId id) {
  const auto job = std::ranges::find_if(visit.work.jobs, [&](const JobStory& one) { return one.job.id == id; });
  return job == visit.work.jobs.end() ? nullptr : &*job;
}

/// The finding that a job is for, and what was noted of the job.
std::string why(const JobStory& job, const VisitForPaper& visit, const TradeTables& trade) {
  std::string words;
  for (const auto* list : {&visit.survey.found_before, &visit.survey.found_now}) {
    for (const FindingStory& story : *list) {
      if (is_of(story, job.job.finding_id, visit.survey)) words = finding_in_words(story, trade) + ".";
    }
  }
  if (!job.job.note.empty()) words += (words.empty() ? "" : " ") + job.job.note;
  return words;
}

/// The word on the newest offer, where it still is what the line says.
std::optional<LineAnswer> answer_to(const JobStory& job, const LineOfJob& line) {
  std::optional<LineAnswer> answer;
  if (job.offers.empty() || !line.differs.empty()) return answer;
  for (const OwnerWord& word : job.words) {
    if (word.offer_id != job.offers.back().id) continue;
    answer = LineAnswer{.yes = word.says == OwnerSays::yes, .by = word.who, .day = word.day};
  }
  return answer;
}

std::string materials_in_words(const EstimateLine& line, const PricedLine& priced) {
  std::string words;
  for (const EstimateMaterial& one : line.materials) {
    words += words.empty() ? "" : ", ";
    if (one.quantity != "1") words += one.quantity + " × ";
    words += one.name;
  }
  if (!words.empty()) words += " (" + priced.materials + ")";
  return words;
}

std::string wait_in_words(double days) {
  if (days < 0.75) return "";
  return "about " + counted(static_cast<std::size_t>(std::lround(days)), "day") + " for glue or finish";
}

EstimateLineOnPaper line_on_paper(const VisitForPaper& visit, const EstimateAnswer& estimate, std::size_t i,
                                  const TradeTables& trade) {
  const PricedLine& priced = estimate.result.lines[i];
  const LineOfJob& line = estimate.lines[i];
  EstimateLineOnPaper on_paper{.what = priced.name, .when = static_cast<WhenToDo>(priced.when)};
  if (const JobStory* job = job_of(visit, line.job_id)) {
    on_paper.why = why(*job, visit, trade);
    on_paper.answer = answer_to(*job, line);
  }
  if (priced.when == LineWhen::leave_alone) return on_paper;
  on_paper.hours_low = priced.hours.low;
  on_paper.hours = priced.hours.typical;
  on_paper.hours_high = priced.hours.high;
  on_paper.wait = wait_in_words(priced.wait_days);
  on_paper.materials = materials_in_words(estimate.request.lines[i], priced);
  on_paper.tax = rate_in_words(estimate.request.lines[i].tax_percent);
  on_paper.price = priced.net;
  on_paper.risk = priced.risk;
  on_paper.cannot_be_undone = priced.cannot_be_undone;
  on_paper.lowers_value = priced.lowers_value;
  return on_paper;
}

/// What a choice pays of arriving and finishing beyond the choice before it.
void add_visit_part(EstimatePaper& paper, const EstimateAnswer& estimate, WhenToDo when) {
  const int digits = estimate.result.minor_digits;
  const auto units = [&](std::size_t option) {
    return exact_decimal("visit", estimate.result.options.at(option).visit.net, digits).units;
  };
  const auto option = static_cast<std::size_t>(when);
  const bool first = option == 0 || units(option - 1) == 0;
  const std::int64_t more = units(option) - (option == 0 ? 0 : units(option - 1));
  if (more <= 0) return;
  const VisitPart& visit = estimate.result.options[option].visit;
  EstimateLineOnPaper line{
      .what = first ? visit_part_name : "More of arriving and finishing",
      .why = "What can wait needs more of it than what is to be done now.",
      .when = when,
      .tax = "",
      .price = as_text({more, digits}),
      .not_asked = true};
  if (first) {
    line.why = visit_part_words;
    line.why += " Paid once with whatever you say yes to; a no to one line makes no other dearer.";
    line.hours_low = visit.hours.low;
    line.hours = visit.hours.typical;
    line.hours_high = visit.hours.high;
  }
  for (std::size_t i = 0; i < estimate.result.lines.size() && line.tax.empty(); ++i) {
    const PricedLine& needs = estimate.result.lines[i];
    if (needs.when <= static_cast<LineWhen>(when) && needs.visit.net == visit.net) {
      line.tax = rate_in_words(estimate.request.lines[i].tax_percent);
    }
  }
  paper.lines.push_back(std::move(line));
}

std::string hours_in_words(const Spread& hours) {
  return decimals(hours.typical, 1) + " (" + decimals(hours.low, 1) + " – " + decimals(hours.high, 1) + ")";
}

struct WaysTold {
  std::string names, risks;
};

WaysTold told(const EstimatePaper& paper, WhenToDo when) {
  WaysTold all;
  for (const EstimateLineOnPaper& line : paper.lines) {
    if (line.when != when || line.not_asked) continue;
    all.names += (all.names.empty() ? "" : "\n") + line.what + ".";
    if (!line.risk.empty()) all.risks += (all.risks.empty() ? "" : "\n") + line.what + ": " + line.risk;
  }
  return all;
}

void add_ways(EstimatePaper& paper, const EstimateAnswer& estimate) {
  const auto total = [&](const EstimateTotal& option) { return option.gross + " " + estimate.result.currency; };
  const WaysTold now = told(paper, WhenToDo::do_now), later = told(paper, WhenToDo::can_wait);
  const auto& options = estimate.result.options;
  if (!now.names.empty() && !options.empty()) {
    paper.do_now = WayToGo{total(options[0]), hours_in_words(options[0].hours), now.names, now.risks};
  }
  if (!later.names.empty() && options.size() > 1) {
    const std::string first = now.names.empty() ? "" : "All of that, and:\n";
    paper.can_wait =
        WayToGo{total(options[1]), hours_in_words(options[1].hours), first + later.names, later.risks};
  }
  paper.leave_alone = WayToGo{.total = "nothing",
                              .you_get = "Nothing is changed and nothing is spent.",
                              .you_risk = "What was found stays as it is, and may get worse."};
}

}  // namespace

EstimatePaper estimate_paper_of(const VisitForPaper& visit, const EstimateAnswer& estimate, const TradeTables& trade,
                                std::optional<Date> good_until) {
  EstimatePaper paper{.head = head_of(visit),
                      .owner = visit.story.owner.name,
                      .instrument = visit.story.instrument.name,
                      .good_until = good_until};
  paper.head.draft = true;
  if (!visit.work.promises.empty()) paper.ready = visit.work.promises.back().ready_on;
  for (std::size_t i = 0; i < estimate.lines.size(); ++i) {
    paper.lines.push_back(line_on_paper(visit, estimate, i, trade));
  }
  add_visit_part(paper, estimate, WhenToDo::do_now);
  add_visit_part(paper, estimate, WhenToDo::can_wait);
  add_ways(paper, estimate);
  if (paper.do_now) {
    const EstimateTotal& now = estimate.result.options[0];
    const std::string currency = " " + estimate.result.currency;
    paper.net = now.net + currency;
    for (const TaxAtRate& tax : now.taxes) {
      paper.taxes.push_back({rate_in_words(tax.percent), tax.net + currency, tax.tax + currency});
    }
    paper.total = now.gross + currency;
  }
  paper.terms = first_lines(visit.shop.terms, 20);
  return paper;
}

Invoice invoice_of(const VisitForPaper& visit, const InvoiceAnswer& answer, std::optional<Date> due) {
  if (answer.lines.empty()) {
    std::string why = "lines: there is nothing to ask to be paid for";
    for (const std::string& left : answer.left_out) why += "; " + left.substr(0, left.size() - 1);
    throw Refused(why);
  }
  const std::string currency = " " + answer.currency;
  Invoice paper{.head = head_of(visit),
                .bill_to = {visit.story.owner.name},
                .instrument = visit.story.instrument.name,
                .due = due,
                .net = answer.net + currency,
                .total = answer.total + currency};
  paper.head.draft = true;
  for (std::string& line : first_lines(visit.story.owner.contact, 11)) paper.bill_to.push_back(std::move(line));
  if (!visit.work.handovers.empty()) paper.supplied = visit.work.handovers.back().day;
  for (const InvoicedJob& line : answer.lines) {
    std::string remark;
    if (!is_nothing(line.materials)) {
      remark = "Labour " + line.labour + ", materials " + line.materials + ". ";
    }
    remark += "Agreed by " + line.agreed_by + " on " + day_in_words(line.agreed_on) + ".";
    paper.lines.push_back(
        {.what = line.name, .remark = remark, .tax = rate_in_words(line.tax_percent), .amount = line.net});
  }
  if (!answer.visit.net.empty()) {
    paper.lines.push_back({.what = visit_part_name,
                           .remark = visit_part_words,
                           .tax = rate_in_words(answer.visit.tax_percent),
                           .amount = answer.visit.net});
  }
  for (const TaxAtRate& tax : answer.taxes) {
    paper.taxes.push_back({rate_in_words(tax.percent), tax.net + currency, tax.tax + currency});
  }
  paper.how_to_pay = first_lines(visit.shop.how_to_pay, 12);
  return paper;
}

}  // namespace tailblock
