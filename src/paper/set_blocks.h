#pragma once

#include <memory>

#include "paper/document.h"
#include "paper/flow.h"
#include "paper/set_text.h"

namespace tailblock {

/// The sizes of the shop's paper, in millimetres.
namespace type_size {
constexpr double body = 3.3, small = 2.75, title = 6.2, section = 4.3, part = 3.5, across_the_room = 15;
}

/// How many photos stand side by side.
inline constexpr std::size_t photos_across = 3;

/// A line of set words, or a row of boxes to tick, in a stack of such lines.
struct SetLine {
  std::shared_ptr<const SetText> text{};
  int line = 0;
  double high_mm = 0;
  double before_mm = 0;
  std::vector<TickBox> boxes{};
};
using SetStack = std::vector<SetLine>;

[[nodiscard]] SetStack stack_of(const std::vector<Words>& words, double wide_mm, Hold hold = Hold::start,
                                bool bold = false);
[[nodiscard]] SetStack stack_of(const TableCell& cell, double wide_mm, Hold hold, bool bold);
[[nodiscard]] double height_of(const SetStack& stack);
void draw_line(Sheet& sheet, const SetLine& line, double x_mm, double top_mm);
void draw_stack(Sheet& sheet, const SetStack& stack, double x_mm, double top_mm);

/// Appends the pieces of each block of the document, its title first, to a flow as wide as the page's text.
[[nodiscard]] Flow flow_of(const Document& document, double wide_mm, double page_mm);

/// Appends a table; a row higher than a third of the page may be divided between lines.
void set_table(Flow& flow, const Table& table, double wide_mm, double page_mm, int number);

}  // namespace tailblock
