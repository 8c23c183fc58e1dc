#include "book/paper_records.h"

#include "book/record_fields.h"

namespace tailblock {

void describe(FieldVisitor& visit, GivenPaper& paper) {
  record_id(visit, paper.id);
  visit.integer({"visit_id", "of this visit"}, paper.visit_id, record_numbers);
  choice(visit, {"kind", "which paper"}, paper.kind, paper_kind_names);
  visit.text({"number", "running by kind and year"}, paper.number, id_bytes);
  visit.date({"day", "it was given"}, paper.day);
  visit.text({"sha256", "of what it said"}, paper.sha256, id_bytes);
}

void describe(FieldVisitor& visit, InvoicedOffer& invoiced) {
  visit.integer({"offer_id", "an offer that was said yes to"}, invoiced.offer_id, record_numbers);
  visit.integer({"paper_id", "the invoice that asks for it"}, invoiced.paper_id, record_numbers);
}

}  // namespace tailblock
