#include "paper/estimate_paper.h"

#include <array>

#include "season/words.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 3> when_names{"do_now", "can_wait", "leave_alone"};
constexpr std::array<std::string_view, 3> when_words{"Do now", "Can wait", "Leave alone"};

std::string from_to(const std::string& low, const std::string& high) {
  if (low.empty() || low == high) return high;
  if (high.empty()) return low;
  return low + " – " + high;
}

/// `1.25`, `0.5`, `2`.
std::string hours(double value) { return plain_number(std::stod(decimals(value, 2))); }

std::string hours_of(const EstimateLineOnPaper& line) {
  if (line.hours_high == 0) return "";
  return from_to(hours(line.hours_low), hours(line.hours_high));
}

TableCell answer_of(const EstimateLineOnPaper& line) {
  TableCell cell;
  if (line.when == WhenToDo::leave_alone) return cell;
  cell.boxes = {{"yes", line.answer && line.answer->yes}, {"no", line.answer && !line.answer->yes}};
  if (line.answer) cell.words.push_back({line.answer->by + ", " + day_in_words(line.answer->day), "", Voice::soft});
  return cell;
}

TableRow row_of(const EstimateLineOnPaper& line) {
  TableCell what = cell_of(line.what, Voice::strong);
  if (!line.why.empty()) what.words.push_back({line.why});
  if (!line.materials.empty()) what.words.push_back({line.materials, "Materials:", Voice::soft});
  if (!line.risk.empty()) what.words.push_back({line.risk, "Risk:", Voice::soft});
  if (line.cannot_be_undone) what.words.push_back({"This cannot be undone.", "", Voice::caution});
  return {.cells = {what, cell_of(hours_of(line)), cell_of(line.tax), cell_of(from_to(line.low, line.high)),
                    answer_of(line)}};
}

void add_lines(Document& document, const EstimatePaper& estimate) {
  Table table{.caption = "",
              .columns = {{"Work", 3.4},
                          {"Hours", 1, Hold::end},
                          {"Tax", 1, Hold::end},
                          {"Price without tax", 1, Hold::end},
                          {"Your answer", 1.25}},
              .first_names_row = true};
  for (std::size_t when = 0; when < when_words.size(); ++when) {
    bool named = false;
    for (const EstimateLineOnPaper& line : estimate.lines) {
      if (static_cast<std::size_t>(line.when) != when) continue;
      if (!named) {
        table.rows.push_back({.cells = {cell_of(std::string(when_words[when]))}, .kind = TableRow::Kind::group});
      }
      named = true;
      table.rows.push_back(row_of(line));
    }
  }
  document.blocks.push_back(Heading{2, "Line by line"});
  document.blocks.push_back(std::move(table));
}

/// What is to be paid when everything under "Do now" is answered yes.
void add_totals(Document& document, const EstimatePaper& estimate) {
  Table table{.caption = "If you say yes to everything under “Do now”",
              .columns = {{"", 3}, {"Amount", 1, Hold::end}},
              .first_names_row = true};
  const auto add = [&](const std::string& name, const std::string& amount, TableRow::Kind kind) {
    if (!amount.empty()) table.rows.push_back({.cells = {cell_of(name), cell_of(amount)}, .kind = kind});
  };
  add("Without tax", from_to(estimate.net_low, estimate.net_high), TableRow::Kind::plain);
  for (const TaxOnPaper& tax : estimate.taxes)
    add("Tax " + tax.rate, from_to(tax.low, tax.high), TableRow::Kind::plain);
  add("Total", from_to(estimate.total_low, estimate.total_high), TableRow::Kind::total);
  if (!table.rows.empty()) document.blocks.push_back(std::move(table));
}

void add_ways(Document& document, const EstimatePaper& estimate) {
  const std::array<const std::optional<WayToGo>*, 3> ways{&estimate.do_now, &estimate.can_wait, &estimate.leave_alone};
  Table table{.caption = "", .columns = {{"", 0.75}}, .first_names_row = true};
  TableRow price{.cells = {cell_of("With tax")}}, get{.cells = {cell_of("You get")}},
      risk{.cells = {cell_of("You risk")}};
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const std::optional<WayToGo>& way = *ways[i];
    if (!way) continue;
    table.columns.push_back({std::string(when_words[i]), 1.6});
    price.cells.push_back(cell_of(from_to(way->total_low, way->total_high), Voice::strong));
    get.cells.push_back(cell_of(way->you_get));
    risk.cells.push_back(cell_of(way->you_risk));
  }
  if (table.columns.size() < 2) return;
  table.rows = {price, get, risk};
  document.blocks.push_back(Heading{2, "The ways to go, side by side"});
  document.blocks.push_back(std::move(table));
}

void require_sensible(const EstimatePaper& estimate) {
  require_valid(estimate);
  require_said("owner", estimate.owner);
  require_said("instrument", estimate.instrument);
  for (std::size_t i = 0; i < estimate.lines.size(); ++i) {
    const EstimateLineOnPaper& line = estimate.lines[i];
    const std::string where = "lines[" + std::to_string(i) + "].";
    require_said(where + "what", line.what);
    if (line.hours_low > line.hours_high) {
      throw Refused(where + "hours_low: " + plain_number(line.hours_low) + " h is above hours_high, " +
                    plain_number(line.hours_high) + " h");
    }
    if (line.answer) require_said(where + "answer.by", line.answer->by);
  }
}

}  // namespace

void describe(FieldVisitor& visit, LineAnswer& answer) {
  visit.flag({"yes", "accepted, or else refused"}, answer.yes);
  visit.text({"by", "who answered"}, answer.by, 120);
  visit.date({"day", "of the answer"}, answer.day);
}

void describe(FieldVisitor& visit, EstimateLineOnPaper& line) {
  visit.text({"what", "the work"}, line.what, 300);
  visit.text({"why", "what it is for", Need::has_default}, line.why, 600);
  choice(visit, {"when", "now, later or not at all"}, line.when, when_names);
  visit.number({"hours_low", "at best", Need::has_default}, line.hours_low, {0, 1000, "h"});
  visit.number({"hours_high", "at worst", Need::has_default}, line.hours_high, {0, 1000, "h"});
  visit.text({"materials", "what is used", Need::has_default}, line.materials, 300);
  visit.text({"tax", "of this line", Need::has_default}, line.tax, 20);
  visit.text({"low", "price without tax, at least", Need::has_default}, line.low, 30);
  visit.text({"high", "price without tax, at most", Need::has_default}, line.high, 30);
  visit.text({"risk", "what can go wrong, or lower the value", Need::has_default}, line.risk, 600);
  visit.flag({"cannot_be_undone", "asks for a recorded yes", Need::has_default}, line.cannot_be_undone);
  maybe(visit, {"answer", "of the owner"}, line.answer,
        [&](const Field& field, LineAnswer& value) { object(visit, field, value); });
}

void describe(FieldVisitor& visit, WayToGo& way) {
  visit.text({"total_low", "with tax, at least", Need::has_default}, way.total_low, 30);
  visit.text({"total_high", "with tax, at most", Need::has_default}, way.total_high, 30);
  visit.text({"you_get", "what this way brings", Need::has_default}, way.you_get, 600);
  visit.text({"you_risk", "what this way may cost later", Need::has_default}, way.you_risk, 600);
}

void describe(FieldVisitor& visit, TaxOnPaper& tax) {
  visit.text({"rate", "as it is called"}, tax.rate, 30);
  visit.text({"low", "the tax, at least", Need::has_default}, tax.low, 30);
  visit.text({"high", "the tax, at most"}, tax.high, 30);
}

void describe(FieldVisitor& visit, EstimatePaper& estimate) {
  object(visit, {"head", "of the paper"}, estimate.head);
  visit.text({"owner", "who is asked"}, estimate.owner, 120);
  visit.text({"instrument", "what it is"}, estimate.instrument, 300);
  maybe(visit, {"good_until", "last day of these prices"}, estimate.good_until,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  visit.text({"introduction", "before the table", Need::has_default}, estimate.introduction, 2000);
  list(visit, {"lines", "of work"}, estimate.lines, {1, 200});
  const auto way = [&](const Field& field, WayToGo& value) { object(visit, field, value); };
  maybe(visit, {"do_now", "doing it now"}, estimate.do_now, way);
  maybe(visit, {"can_wait", "waiting"}, estimate.can_wait, way);
  maybe(visit, {"leave_alone", "leaving it alone"}, estimate.leave_alone, way);
  visit.text({"net_low", "without tax, at least", Need::has_default}, estimate.net_low, 30);
  visit.text({"net_high", "without tax, at most", Need::has_default}, estimate.net_high, 30);
  list(visit, {"taxes", "by rate"}, estimate.taxes, {0, 10});
  visit.text({"total_low", "with tax, at least", Need::has_default}, estimate.total_low, 30);
  visit.text({"total_high", "with tax, at most", Need::has_default}, estimate.total_high, 30);
  visit.texts({"terms", "the shop's", Need::has_default}, estimate.terms, 1000, {0, 20});
}

Document estimate_paper(const EstimatePaper& estimate) {
  require_sensible(estimate);
  Document document = document_of(estimate.head, "Estimate", estimate.instrument,
                                  "Estimate " + estimate.head.reference + ", " + day_in_words(estimate.head.day));
  Facts facts;
  add_fact(facts, "For", estimate.owner);
  add_fact(facts, "Number", estimate.head.reference);
  add_fact(facts, "Date", day_in_words(estimate.head.day));
  add_fact(facts, "Good until", estimate.good_until ? day_in_words(*estimate.good_until) : "");
  document.blocks.push_back(std::move(facts));
  if (!estimate.introduction.empty()) document.blocks.push_back(Paragraph{{estimate.introduction}});
  add_ways(document, estimate);
  add_lines(document, estimate);
  add_totals(document, estimate);
  if (!estimate.terms.empty()) {
    document.blocks.push_back(Heading{2, "Terms"});
    Bullets terms;
    for (const std::string& term : estimate.terms) terms.items.push_back({term});
    document.blocks.push_back(std::move(terms));
  }
  document.blocks.push_back(
      Paragraph{{"Tick yes or no at each line. Nothing is begun that has no yes, and nothing that cannot be undone is "
                 "done without one."}});
  document.blocks.push_back(ToSign{{"Date", "Name", "Signature"}});
  return document;
}

}  // namespace tailblock
