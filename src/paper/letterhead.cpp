#include "paper/letterhead.h"

#include <algorithm>
#include <sstream>

namespace tailblock {

void describe(FieldVisitor& visit, Letterhead& letterhead) {
  visit.text({"shop", "the shop's name"}, letterhead.shop, 200);
  visit.texts({"lines", "address, telephone, tax number", Need::has_default}, letterhead.lines, 300, {0, 12});
}

void describe(FieldVisitor& visit, PaperHead& head) {
  object(visit, {"shop", "whose paper it is"}, head.shop);
  visit.date({"day", "of the paper"}, head.day);
  visit.text({"reference", "the shop's own number of it"}, head.reference, 60);
  visit.text({"language", "tag of the language its texts are in", Need::has_default}, head.language, 35);
  visit.flag({"draft", "not given to anybody yet", Need::has_default}, head.draft);
}

void describe(FieldVisitor& visit, TaxOnPaper& tax) {
  visit.text({"rate", "as it is called"}, tax.rate, 30);
  visit.text({"on", "the amount it is charged on", Need::has_default}, tax.on, 30);
  visit.text({"amount", "the tax"}, tax.amount, 30);
}

Document document_of(const PaperHead& head, const std::string& title, const std::string& subtitle,
                     const std::string& reference) {
  require_said("head.shop.shop", head.shop.shop);
  require_said("head.reference", head.reference);
  require_said("head.language", head.language);
  const auto in_tag = [](char c) {
    return ('a' <= c && c <= 'z') || ('A' <= c && c <= 'Z') || ('0' <= c && c <= '9') || c == '-';
  };
  if (!std::all_of(head.language.begin(), head.language.end(), in_tag)) {
    throw Refused("head.language: '" + head.language + "' is not a language tag such as en-GB");
  }
  Document document{.title = title,
                    .subtitle = subtitle,
                    .reference = reference,
                    .shop = head.shop,
                    .language = head.language,
                    .day = head.day};
  if (head.draft) {
    document.blocks.push_back(Notice{.kind = Notice::Kind::plain,
                                     .title = "A draft, to look at.",
                                     .words = {{"It has not been given to anybody, has no number yet, and may change."}}});
  }
  return document;
}

void add_fact(Facts& facts, const std::string& name, const std::string& value) {
  if (!value.empty()) facts.facts.push_back({name, value});
}

void require_said(std::string_view field, const std::string& text) {
  if (text.find_first_not_of(" \t\r\n") == std::string::npos) throw Refused(std::string(field) + ": is empty");
}

TableRow sum_row(const std::string& name, const std::string& on, const std::string& amount, TableRow::Kind kind) {
  return {.cells = {cell_of(name), cell_of(on), cell_of(amount)}, .kind = kind};
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream whole(text);
  for (std::string line; std::getline(whole, line);) {
    if (line.find_first_not_of(" \t\r") != std::string::npos) lines.push_back(line);
  }
  return lines;
}

TableCell cell_of(const std::string& text, Voice voice) {
  TableCell cell;
  if (!text.empty()) cell.words.push_back({text, "", voice});
  return cell;
}

}  // namespace tailblock
