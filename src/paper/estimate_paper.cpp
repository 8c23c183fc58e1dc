#include "paper/estimate_paper.h"

#include <algorithm>
#include <array>

#include "season/words.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 3> when_names{"do_now", "can_wait", "leave_alone"};
constexpr std::array<std::string_view, 3> when_words{"Do now", "Can wait", "Leave alone"};
constexpr std::array<std::string_view, 3> way_words{"Do now", "And what can wait", "Leave all alone"};

/// To the tenth: `1.3`, `0.5`, `2.0`.
std::string hours(double value) { return decimals(value, 1); }

TableCell hours_of(const EstimateLineOnPaper& line) {
  TableCell cell;
  if (line.hours_high == 0) return cell;
  cell.words.push_back({hours(line.hours)});
  if (line.hours_low < line.hours_high) {
    cell.words.push_back({hours(line.hours_low) + " – " + hours(line.hours_high), "", Voice::soft});
  }
  return cell;
}

TableCell answer_of(const EstimateLineOnPaper& line) {
  TableCell cell;
  if (line.not_asked || (line.when == WhenToDo::leave_alone && !line.answer)) return cell;
  cell.boxes = {{"yes", line.answer && line.answer->yes}, {"no", line.answer && !line.answer->yes}};
  if (line.answer) cell.words.push_back({line.answer->by + ", " + day_in_words(line.answer->day), "", Voice::soft});
  return cell;
}

TableRow row_of(const EstimateLineOnPaper& line) {
  TableCell what = cell_of(line.what, Voice::strong);
  if (!line.why.empty()) what.words.push_back({line.why});
  if (!line.materials.empty()) what.words.push_back({line.materials, "Materials:", Voice::soft});
  if (!line.wait.empty()) what.words.push_back({line.wait, "Waits:", Voice::soft});
  if (!line.risk.empty()) what.words.push_back({line.risk, "Risk:", Voice::soft});
  if (line.cannot_be_undone) what.words.push_back({"Part of this cannot be undone.", "", Voice::caution});
  if (line.lowers_value) {
    what.words.push_back({"Part of this lowers what the instrument is worth.", "", Voice::caution});
  }
  return {.cells = {what, hours_of(line), cell_of(line.tax), cell_of(line.price), answer_of(line)}};
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
  if (estimate.total.empty()) return;
  Table table{.caption = "If you say yes to everything under “Do now”",
              .columns = {{"", 2}, {"On", 1, Hold::end}, {"Amount", 1, Hold::end}},
              .first_names_row = true};
  if (!estimate.net.empty()) table.rows.push_back(sum_row("Without tax", "", estimate.net, TableRow::Kind::plain));
  for (const TaxOnPaper& tax : estimate.taxes) {
    table.rows.push_back(sum_row("Tax " + tax.rate, tax.on, tax.amount, TableRow::Kind::plain));
  }
  table.rows.push_back(sum_row("Total", "", estimate.total, TableRow::Kind::total));
  document.blocks.push_back(std::move(table));
}

void add_ways(Document& document, const EstimatePaper& estimate) {
  const std::array<const std::optional<WayToGo>*, 3> ways{&estimate.do_now, &estimate.can_wait, &estimate.leave_alone};
  Table table{.caption = "", .columns = {{"", 0.75}}, .first_names_row = true};
  TableRow price{.cells = {cell_of("With tax")}}, time{.cells = {cell_of("Hours")}}, get{.cells = {cell_of("You get")}},
      risk{.cells = {cell_of("You risk")}};
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const std::optional<WayToGo>& way = *ways[i];
    if (!way) continue;
    table.columns.push_back({std::string(way_words[i]), 1.6});
    price.cells.push_back(cell_of(way->total, Voice::strong));
    time.cells.push_back(cell_of(way->hours));
    get.cells.push_back(cell_of(way->you_get));
    risk.cells.push_back(cell_of(way->you_risk));
  }
  if (table.columns.size() < 2) return;
  for (const TableRow& row : {price, time, get, risk}) {
    const bool said = std::any_of(row.cells.begin() + 1, row.cells.end(), [](const auto& c) { return !c.words.empty(); });
    if (said) table.rows.push_back(row);
  }
  document.blocks.push_back(Heading{2, "The ways to go, side by side"});
  document.blocks.push_back(std::move(table));
}

void require_order(const std::string& field, double less, std::string_view other, double more) {
  if (less <= more) return;
  throw Refused(field + ": " + plain_number(less) + " h is above " + std::string(other) + ", " + plain_number(more) +
                " h");
}

void require_sensible(const EstimatePaper& estimate) {
  require_valid(estimate);
  require_said("owner", estimate.owner);
  require_said("instrument", estimate.instrument);
  for (std::size_t i = 0; i < estimate.lines.size(); ++i) {
    const EstimateLineOnPaper& line = estimate.lines[i];
    const std::string where = "lines[" + std::to_string(i) + "].";
    require_said(where + "what", line.what);
    require_order(where + "hours_low", line.hours_low, "hours", line.hours);
    require_order(where + "hours", line.hours, "hours_high", line.hours_high);
    if (line.answer) require_said(where + "answer.by", line.answer->by);
  }
}

}  // namespace

void describe(FieldVisitor& visit, LineAnswer& answer) {
  visit.flag({"yes", "accepted, or else refused"}, answer.yes);
  visit.text({"by", "who answered"}, answer.by, 200);
  visit.date({"day", "of the answer"}, answer.day);
}

void describe(FieldVisitor& visit, EstimateLineOnPaper& line) {
  visit.text({"what", "the work"}, line.what, 300);
  visit.text({"why", "what it is for", Need::has_default}, line.why, 21000);
  choice(visit, {"when", "now, later or not at all"}, line.when, when_names);
  visit.number({"hours_low", "at best", Need::has_default}, line.hours_low, {0, 10000, "h"});
  visit.number({"hours", "likely", Need::has_default}, line.hours, {0, 10000, "h"});
  visit.number({"hours_high", "at worst", Need::has_default}, line.hours_high, {0, 10000, "h"});
  visit.text({"wait", "for glue and finish, in words", Need::has_default}, line.wait, 120);
  visit.text({"materials", "what is used", Need::has_default}, line.materials, 4000);
  visit.text({"tax", "of this line", Need::has_default}, line.tax, 20);
  visit.text({"price", "without tax", Need::has_default}, line.price, 30);
  visit.text({"risk", "what can go wrong", Need::has_default}, line.risk, 2000);
  visit.flag({"cannot_be_undone", "part of it asks for a recorded yes", Need::has_default}, line.cannot_be_undone);
  visit.flag({"lowers_value", "part of it does", Need::has_default}, line.lowers_value);
  visit.flag({"not_asked", "it comes with the other lines", Need::has_default}, line.not_asked);
  maybe(visit, {"answer", "of the owner"}, line.answer,
        [&](const Field& field, LineAnswer& value) { object(visit, field, value); });
}

void describe(FieldVisitor& visit, WayToGo& way) {
  visit.text({"total", "with tax", Need::has_default}, way.total, 30);
  visit.text({"hours", "in words", Need::has_default}, way.hours, 60);
  visit.text({"you_get", "what this way brings", Need::has_default}, way.you_get, 4000);
  visit.text({"you_risk", "what this way may cost later", Need::has_default}, way.you_risk, 4000);
}

void describe(FieldVisitor& visit, EstimatePaper& estimate) {
  object(visit, {"head", "of the paper"}, estimate.head);
  visit.text({"owner", "who is asked"}, estimate.owner, 200);
  visit.text({"instrument", "what it is"}, estimate.instrument, 300);
  maybe(visit, {"good_until", "last day of these prices"}, estimate.good_until,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  maybe(visit, {"ready", "day it is promised for"}, estimate.ready,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  visit.text({"introduction", "before the table", Need::has_default}, estimate.introduction, 2000);
  list(visit, {"lines", "of work"}, estimate.lines, {1, 200});
  const auto way = [&](const Field& field, WayToGo& value) { object(visit, field, value); };
  maybe(visit, {"do_now", "doing it now"}, estimate.do_now, way);
  maybe(visit, {"can_wait", "waiting"}, estimate.can_wait, way);
  maybe(visit, {"leave_alone", "leaving it alone"}, estimate.leave_alone, way);
  visit.text({"net", "without tax", Need::has_default}, estimate.net, 30);
  list(visit, {"taxes", "by rate"}, estimate.taxes, {0, 10});
  visit.text({"total", "with tax", Need::has_default}, estimate.total, 30);
  visit.texts({"terms", "the shop's", Need::has_default}, estimate.terms, 1000, {0, 20});
}

Document estimate_paper(const EstimatePaper& estimate) {
  require_sensible(estimate);
  Document document = document_of(estimate.head, "Estimate", estimate.instrument,
                                  "Estimate " + estimate.head.reference + ", " + day_in_words(estimate.head.day));
  Facts facts;
  add_fact(facts, "For", estimate.owner);
  add_fact(facts, "Number", estimate.head.draft ? "" : estimate.head.reference);
  add_fact(facts, "Date", day_in_words(estimate.head.day));
  add_fact(facts, "Good until", estimate.good_until ? day_in_words(*estimate.good_until) : "");
  add_fact(facts, "Ready", estimate.ready ? day_in_words(*estimate.ready) : "");
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
                 "done without one. If the work turns out to be more than you said yes to, it stops and you are asked "
                 "again. The first figure of hours is the likely one; eight such jobs in ten stay in the range under "
                 "it."}});
  document.blocks.push_back(ToSign{{"Date", "Name", "Signature"}});
  return document;
}

}  // namespace tailblock
