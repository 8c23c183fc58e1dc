#include "paper/claim_ticket.h"

#include "paper/scan_code.h"
#include "season/words.h"

namespace tailblock {
namespace {

constexpr double code_mm = 42;

std::vector<Words> what_is_left(const ClaimTicket& ticket) {
  std::vector<Words> words{{ticket.instrument, "", Voice::strong}};
  words.push_back({day_in_words(ticket.left_on), "Left on"});
  if (ticket.promised) words.push_back({day_in_words(*ticket.promised), "Promised for"});
  std::string with;
  for (const std::string& thing : ticket.came_with) with += (with.empty() ? "" : ", ") + thing;
  if (!with.empty()) words.push_back({with, "Came with"});
  if (!ticket.to_be_done.empty()) words.push_back({ticket.to_be_done, "To be done"});
  return words;
}

void add_half(Document& document, const ClaimTicket& ticket, const std::vector<Words>& words) {
  if (ticket.code.empty()) {
    for (const Words& part : words) document.blocks.push_back(Paragraph{part});
    return;
  }
  document.blocks.push_back(Figure{.picture = scan_code(ticket.code, code_mm), .beside = words});
}

void require_sensible(const ClaimTicket& ticket) {
  require_valid(ticket);
  require_said("number", ticket.number);
  require_said("owner", ticket.owner);
  require_said("instrument", ticket.instrument);
}

}  // namespace

void describe(FieldVisitor& visit, ClaimTicket& ticket) {
  object(visit, {"head", "of the paper"}, ticket.head);
  visit.text({"number", "of the ticket"}, ticket.number, 20);
  visit.text({"owner", "who may collect"}, ticket.owner, 200);
  visit.text({"instrument", "what it is"}, ticket.instrument, 200);
  visit.date({"left_on", "day it came in"}, ticket.left_on);
  maybe(visit, {"promised", "for when"}, ticket.promised,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  visit.texts({"came_with", "case, strap, capo", Need::has_default}, ticket.came_with, 80, {0, 12});
  visit.text({"to_be_done", "in a few words", Need::has_default}, ticket.to_be_done, 300);
  visit.text({"code", "what the code says when scanned", Need::has_default}, ticket.code, 600);
  visit.texts({"terms", "of storage and collection", Need::has_default}, ticket.terms, 300, {0, 5});
}

Document claim_ticket(const ClaimTicket& ticket) {
  require_sensible(ticket);
  Document document =
      document_of(ticket.head, "Claim ticket " + ticket.number, "The owner's half: bring it when you collect.",
                  "Ticket " + ticket.number + ", " + day_in_words(ticket.head.day));
  std::vector<Words> owners = what_is_left(ticket);
  owners.insert(owners.begin() + 1, {ticket.owner, "Owner"});
  add_half(document, ticket, owners);
  for (const std::string& term : ticket.terms) document.blocks.push_back(Paragraph{{term, "", Voice::soft}});
  document.blocks.push_back(CutLine{});
  document.blocks.push_back(Heading{0, ticket.number});
  document.blocks.push_back(Paragraph{{"The instrument's half: tie it to the instrument.", "", Voice::soft}});
  std::vector<Words> tied = what_is_left(ticket);
  tied.push_back({ticket.head.shop.shop, "Shop"});
  add_half(document, ticket, tied);
  return document;
}

}  // namespace tailblock
