#include "paper/invoice.h"

#include <algorithm>

#include "season/words.h"

namespace tailblock {
namespace {

void add_lines(Document& document, const Invoice& invoice) {
  const bool counted = std::ranges::any_of(
      invoice.lines, [](const InvoiceLine& line) { return !line.quantity.empty() || !line.unit_price.empty(); });
  Table table{.caption = "", .columns = {{"Work and materials", 1}}, .first_names_row = true};
  if (counted) {
    table.columns.push_back({"Quantity", 1, Hold::end});
    table.columns.push_back({"Each", 1, Hold::end});
  }
  table.columns.push_back({"Tax", 1, Hold::end});
  table.columns.push_back({"Amount", 1, Hold::end});
  for (const InvoiceLine& line : invoice.lines) {
    TableRow row{.cells = {cell_of(line.what)}};
    if (!line.remark.empty()) row.cells[0].words.push_back({line.remark, "", Voice::soft});
    if (counted) {
      row.cells.push_back(cell_of(line.quantity));
      row.cells.push_back(cell_of(line.unit_price));
    }
    row.cells.push_back(cell_of(line.tax));
    row.cells.push_back(cell_of(line.amount));
    table.rows.push_back(std::move(row));
  }
  document.blocks.push_back(std::move(table));
}

void add_sums(Document& document, const Invoice& invoice) {
  Table table{
      .caption = "", .columns = {{"Sum", 1}, {"On", 1, Hold::end}, {"Amount", 1, Hold::end}}, .first_names_row = true};
  if (!invoice.net.empty()) table.rows.push_back(sum_row("Without tax", "", invoice.net, TableRow::Kind::plain));
  for (const TaxOnPaper& tax : invoice.taxes) {
    table.rows.push_back(sum_row("Tax " + tax.rate, tax.on, tax.amount, TableRow::Kind::plain));
  }
  table.rows.push_back(sum_row("Total", "", invoice.total, TableRow::Kind::total));
  if (!invoice.paid.empty()) table.rows.push_back(sum_row("Paid", "", invoice.paid, TableRow::Kind::plain));
  if (!invoice.left_to_pay.empty()) {
    table.rows.push_back(sum_row("Left to pay", "", invoice.left_to_pay, TableRow::Kind::total));
  }
  document.blocks.push_back(std::move(table));
}

void require_sensible(const Invoice& invoice) {
  require_valid(invoice);
  if (invoice.bill_to.empty()) throw Refused("bill_to: is empty");
  require_said("bill_to[0]", invoice.bill_to[0]);
  require_said("total", invoice.total);
  for (std::size_t i = 0; i < invoice.lines.size(); ++i) {
    const std::string where = "lines[" + std::to_string(i) + "].";
    require_said(where + "what", invoice.lines[i].what);
    require_said(where + "amount", invoice.lines[i].amount);
  }
  if (invoice.due && *invoice.due < invoice.head.day) {
    throw Refused("due: " + iso_date(*invoice.due) + " is before the invoice's day, " + iso_date(invoice.head.day));
  }
}

}  // namespace

void describe(FieldVisitor& visit, InvoiceLine& line) {
  visit.text({"what", "work or material"}, line.what, 300);
  visit.text({"remark", "under it", Need::has_default}, line.remark, 300);
  visit.text({"quantity", "with its unit", Need::has_default}, line.quantity, 20);
  visit.text({"unit_price", "of one", Need::has_default}, line.unit_price, 30);
  visit.text({"tax", "rate of this line", Need::has_default}, line.tax, 20);
  visit.text({"amount", "of the line"}, line.amount, 30);
}

void describe(FieldVisitor& visit, Invoice& invoice) {
  object(visit, {"head", "of the paper; its day is the day of issue"}, invoice.head);
  visit.texts({"bill_to", "name and address, a line each"}, invoice.bill_to, 300, {1, 12});
  visit.text({"instrument", "what was worked on", Need::has_default}, invoice.instrument, 300);
  const auto day = [&](const Field& field, Date& value) { visit.date(field, value); };
  maybe(visit, {"supplied", "day the work was done"}, invoice.supplied, day);
  maybe(visit, {"due", "last day to pay"}, invoice.due, day);
  list(visit, {"lines", "work and materials"}, invoice.lines, {1, 300});
  visit.text({"net", "without tax", Need::has_default}, invoice.net, 30);
  list(visit, {"taxes", "by rate"}, invoice.taxes, {0, 10});
  visit.text({"total", "with tax"}, invoice.total, 30);
  visit.text({"paid", "so far", Need::has_default}, invoice.paid, 30);
  visit.text({"left_to_pay", "after what is paid", Need::has_default}, invoice.left_to_pay, 30);
  visit.texts({"how_to_pay", "bank, reference", Need::has_default}, invoice.how_to_pay, 300, {0, 12});
  visit.texts({"remarks", "the law's or the shop's", Need::has_default}, invoice.remarks, 600, {0, 10});
}

Document invoice(const Invoice& invoice) {
  require_sensible(invoice);
  Document document = document_of(invoice.head, invoice.head.draft ? "Invoice" : "Invoice " + invoice.head.reference,
                                  invoice.instrument,
                                  "Invoice " + invoice.head.reference + ", " + day_in_words(invoice.head.day));
  std::string bill_to;
  for (const std::string& line : invoice.bill_to) bill_to += (bill_to.empty() ? "" : "\n") + line;
  Facts facts;
  add_fact(facts, "To", bill_to);
  std::string days = (invoice.head.draft ? "as it stands on " : "issued ") + day_in_words(invoice.head.day);
  if (invoice.supplied) days += "\nwork done " + day_in_words(*invoice.supplied);
  if (invoice.due) days += "\ndue " + day_in_words(*invoice.due);
  add_fact(facts, "Dates", days);
  document.blocks.push_back(std::move(facts));
  add_lines(document, invoice);
  add_sums(document, invoice);
  if (!invoice.how_to_pay.empty()) {
    std::string lines;
    for (const std::string& line : invoice.how_to_pay) lines += (lines.empty() ? "" : "\n") + line;
    document.blocks.push_back(Notice{.kind = Notice::Kind::plain, .title = "How to pay", .words = {{lines}}});
  }
  for (const std::string& remark : invoice.remarks) {
    document.blocks.push_back(Paragraph{{remark, "", Voice::soft}});
  }
  return document;
}

}  // namespace tailblock
