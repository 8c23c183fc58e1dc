#pragma once

#include <string>
#include <vector>

#include "paper/document.h"

namespace tailblock {

/// What every paper of the shop says at its head and foot.
struct PaperHead {
  Letterhead shop;
  Date day;               ///< of the paper; no clock is asked
  std::string reference;  ///< the shop's own number: `2026-014`
  std::string language = "en-GB";
  bool draft = false;  ///< not given to anybody yet: the paper says so at its head
};
void describe(FieldVisitor&, PaperHead&);

/// The tax of one rate on a paper. Amounts are text.
struct TaxOnPaper {
  std::string rate;  ///< `20 %`
  std::string on, amount;
};
void describe(FieldVisitor&, TaxOnPaper&);

/// An empty document with this head.
[[nodiscard]] Document document_of(const PaperHead& head, const std::string& title, const std::string& subtitle,
                                   const std::string& reference);

/// A fact, when there is one.
void add_fact(Facts& facts, const std::string& name, const std::string& value);

/// @throws Refused when a text that must say something is empty: `owner: is empty`.
void require_said(std::string_view field, const std::string& text);

/// One row of the sums under a paper's lines: what it is, what it is charged on, how much.
[[nodiscard]] TableRow sum_row(const std::string& name, const std::string& on, const std::string& amount,
                               TableRow::Kind kind);

/// The lines of a text that say something.
[[nodiscard]] std::vector<std::string> lines_of(const std::string& text);

/// A cell of one run of words.
[[nodiscard]] TableCell cell_of(const std::string& text, Voice voice = Voice::plain);

}  // namespace tailblock
