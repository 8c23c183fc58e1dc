#pragma once

#include <optional>

#include "paper/letterhead.h"

namespace tailblock {

/// Amounts are text, as in estimate_paper.h.
struct InvoiceLine {
  std::string what;
  std::string remark{};
  std::string quantity{};  ///< `2.5 h`, `6`
  std::string unit_price{};
  std::string tax{};  ///< rate: `20 %`
  std::string amount;
};
void describe(FieldVisitor&, InvoiceLine&);

struct Invoice {
  PaperHead head;                      ///< its day is the day of issue
  std::vector<std::string> bill_to{};  ///< name and address, a line each
  std::string instrument{};
  std::optional<Date> supplied{}, due{};
  std::vector<InvoiceLine> lines{};
  std::string net{};
  std::vector<TaxOnPaper> taxes{};
  std::string total;
  std::string paid{}, left_to_pay{};
  std::vector<std::string> how_to_pay{};
  std::vector<std::string> remarks{};
};
void describe(FieldVisitor&, Invoice&);

/// @throws Refused naming what is out of range, or empty and must not be.
[[nodiscard]] Document invoice(const Invoice& invoice);

}  // namespace tailblock
