#pragma once

#include <optional>

#include "paper/letterhead.h"

namespace tailblock {

/// Amounts of money are text, as the shop's books have them (`1,240.00 EUR`): paper prints money and never adds it up.

enum class WhenToDo { do_now, can_wait, leave_alone };

/// The owner's answer to one line.
struct LineAnswer {
  bool yes = false;
  std::string by;
  Date day;
};
void describe(FieldVisitor&, LineAnswer&);

struct EstimateLineOnPaper {
  std::string what;
  std::string why{};
  WhenToDo when = WhenToDo::do_now;
  double hours_low = 0, hours = 0, hours_high = 0;  ///< all 0: they are not said
  std::string wait{};                               ///< for glue and finish, in words
  std::string materials{};                          ///< what is used, with its price if the shop shows it
  std::string tax{};                                ///< of this line: `20 %`
  std::string price{};                              ///< of the line without tax
  std::string risk{};                               ///< what can go wrong
  bool cannot_be_undone = false, lowers_value = false;
  bool not_asked = false;  ///< it comes with the other lines, and has no yes or no of its own
  std::optional<LineAnswer> answer{};
};
void describe(FieldVisitor&, EstimateLineOnPaper&);

/// One way to go, for the table in which they stand side by side.
struct WayToGo {
  std::string total{};  ///< with tax
  std::string hours{};
  std::string you_get{};
  std::string you_risk{};
};
void describe(FieldVisitor&, WayToGo&);

/// What the owner is asked to accept or refuse, line by line.
struct EstimatePaper {
  PaperHead head;
  std::string owner, instrument;
  std::optional<Date> good_until{}, ready{};
  std::string introduction{};
  std::vector<EstimateLineOnPaper> lines{};
  std::optional<WayToGo> do_now{}, can_wait{}, leave_alone{};
  std::string net{};  ///< of what is to be done now
  std::vector<TaxOnPaper> taxes{};
  std::string total{};
  std::vector<std::string> terms{};
};
void describe(FieldVisitor&, EstimatePaper&);

/// @throws Refused naming a field out of range, hours out of order, or what is empty and must not be.
[[nodiscard]] Document estimate_paper(const EstimatePaper& estimate);

}  // namespace tailblock
