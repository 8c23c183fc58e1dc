#include <algorithm>
#include <sstream>

#include "paper/set_blocks.h"
#include "paper/sheet.h"

namespace tailblock {
namespace {

constexpr double pad_x = 1.6, pad_y = 1.1;

struct ColumnPlace {
  double from = 0, wide = 0;
  Hold hold = Hold::start;
};

double natural_width(const std::vector<Words>& words, bool bold) {
  double wide = 0;
  for (const SetLine& line : stack_of(words, 400, Hold::start, bold)) wide = std::max(wide, line.text->widest_mm());
  return wide;
}

double widest_word(const std::string& head) {
  double wide = 0;
  std::istringstream words(head);
  for (std::string word; words >> word;) wide = std::max(wide, natural_width({{word, "", Voice::soft}}, true));
  return wide;
}

/// Columns of figures are as wide as their figures; the others share what is left.
std::vector<ColumnPlace> places_of(const Table& table, double wide_mm) {
  std::vector<ColumnPlace> places(table.columns.size());
  double left = wide_mm, shares = 0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const TableColumn& column = table.columns[i];
    places[i].hold = column.hold;
    if (column.hold != Hold::end) {
      shares += column.share;
      continue;
    }
    double needed = std::max(12.0, widest_word(column.head) + 2 * pad_x + 0.2);
    for (const TableRow& row : table.rows) {
      if (row.kind == TableRow::Kind::group || i >= row.cells.size()) continue;
      needed = std::max(needed, natural_width(row.cells[i].words, row.kind == TableRow::Kind::total) + 2 * pad_x + 0.2);
    }
    left -= places[i].wide = std::min(needed, 0.3 * wide_mm);
  }
  double from = 0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (places[i].hold != Hold::end) places[i].wide = std::max(left, 0.2 * wide_mm) * table.columns[i].share / shares;
    places[i].from = from;
    from += places[i].wide;
  }
  return places;
}

struct SetRow {
  std::vector<SetStack> stacks{};
  std::vector<ColumnPlace> places{};
  TableRow::Kind kind = TableRow::Kind::plain;
  bool is_head = false, first_names_row = false;
  double wide = 0, high = 0;

  /// The lines numbered `first` up to `end` of each cell, with what is round the row.
  void draw(Sheet& sheet, double x, double top, std::size_t first, std::size_t end, bool opens, bool closes) const {
    const double band = high_of(first, end) + (opens ? pad_y : 0) + (closes ? pad_y : 0);
    if (kind == TableRow::Kind::group) sheet.fill(x, top, wide, band, Ink::tint);
    if (kind == TableRow::Kind::total && opens) sheet.line(x, top, x + wide, top, 0.35);
    sheet.begin("TR");
    for (std::size_t i = 0; i < stacks.size(); ++i) {
      const char* tag = is_head || (first_names_row && i == 0) ? "TH" : "TD";
      sheet.begin(tag);
      const SetStack part(stacks[i].begin() + static_cast<std::ptrdiff_t>(std::min(first, stacks[i].size())),
                          stacks[i].begin() + static_cast<std::ptrdiff_t>(std::min(end, stacks[i].size())));
      draw_stack(sheet, part, x + places[i].from + pad_x, top + (opens ? pad_y : 0));
      sheet.end(tag);
    }
    sheet.end("TR");
    if (!closes) return;
    if (is_head) sheet.line(x, top + band, x + wide, top + band, 0.35);
    if (!is_head && kind == TableRow::Kind::plain) sheet.line(x, top + band, x + wide, top + band, 0.15, Ink::rule);
  }

  [[nodiscard]] double high_of(std::size_t first, std::size_t end) const {
    double most = 0;
    for (const SetStack& stack : stacks) {
      double sum = 0;
      for (std::size_t i = first; i < std::min(end, stack.size()); ++i) sum += stack[i].before_mm + stack[i].high_mm;
      most = std::max(most, sum);
    }
    return most;
  }
  [[nodiscard]] std::size_t lines() const {
    std::size_t most = 0;
    for (const SetStack& stack : stacks) most = std::max(most, stack.size());
    return most;
  }
};

SetRow set_row(const Table& table, const TableRow& row, const std::vector<ColumnPlace>& places, double wide_mm) {
  SetRow set{.kind = row.kind, .first_names_row = table.first_names_row, .wide = wide_mm};
  const bool group = row.kind == TableRow::Kind::group, bold = row.kind != TableRow::Kind::plain;
  set.places = group ? std::vector<ColumnPlace>{{.from = 0, .wide = wide_mm}} : places;
  for (std::size_t i = 0; i < std::min(row.cells.size(), set.places.size()); ++i) {
    set.stacks.push_back(stack_of(row.cells[i], set.places[i].wide - 2 * pad_x, set.places[i].hold, bold));
  }
  set.high = set.high_of(0, set.lines()) + 2 * pad_y;
  return set;
}

SetRow set_head(const Table& table, const std::vector<ColumnPlace>& places, double wide_mm) {
  SetRow set{.places = places, .is_head = true, .wide = wide_mm};
  for (std::size_t i = 0; i < places.size(); ++i) {
    set.stacks.push_back(
        stack_of({{table.columns[i].head, "", Voice::soft}}, places[i].wide - 2 * pad_x, places[i].hold, true));
  }
  set.high = set.high_of(0, set.lines()) + 2 * pad_y;
  // Short heads stand on the rule, beside the last line of longer ones.
  for (SetStack& stack : set.stacks) {
    if (!stack.empty()) stack.front().before_mm = set.high - 2 * pad_y - height_of(stack);
  }
  return set;
}

PagePiece piece_of(const SetRow& row, std::size_t first, std::size_t end, const TagStep& tag) {
  const bool opens = first == 0, closes = end == row.lines();
  PagePiece piece{.high_mm = row.high_of(first, end) + (opens ? pad_y : 0) + (closes ? pad_y : 0), .tags = {tag}};
  piece.draw = [row, first, end, opens, closes](Sheet& sheet, double x, double top) {
    row.draw(sheet, x, top, first, end, opens, closes);
  };
  return piece;
}

/// One piece; a row higher than a third of the page is a piece a line, not one or two lines alone on a page.
void push_row(Flow& flow, const SetRow& row, double page_mm, const TagStep& tag) {
  const std::size_t lines = std::max<std::size_t>(row.lines(), 1), step = row.high > page_mm / 3 ? 1 : lines;
  for (std::size_t first = 0; first < lines; first += step) {
    flow.pieces.push_back(piece_of(row, first, std::min(first + step, row.lines()), tag));
    flow.pieces.back().keeps_next = first + step < lines && (first < 2 || first + 3 >= lines);
  }
}

}  // namespace

void set_table(Flow& flow, const Table& table, double wide_mm, double page_mm, int number) {
  const TagStep tag{"Table", number};
  const std::vector<ColumnPlace> places = places_of(table, wide_mm);
  if (!table.caption.empty()) {
    const SetStack caption = stack_of({{table.caption, "", Voice::strong}}, wide_mm);
    PagePiece piece{.high_mm = height_of(caption), .before_mm = 4, .keeps_next = true, .tags = {{"P", number + 1}}};
    piece.draw = [caption](Sheet& sheet, double x, double top) { draw_stack(sheet, caption, x, top); };
    flow.pieces.push_back(std::move(piece));
  }
  const SetRow head = set_head(table, places, wide_mm);
  PagePiece head_piece = piece_of(head, 0, head.lines(), tag);
  head_piece.before_mm = table.caption.empty() ? 4 : 0.5;
  head_piece.keeps_next = true;
  flow.heads.push_back(head_piece);
  flow.pieces.push_back(std::move(head_piece));
  const int head_number = static_cast<int>(flow.heads.size()) - 1;
  std::vector<SetRow> rows;
  double high = head.high;
  for (const TableRow& row : table.rows) {
    rows.push_back(set_row(table, row, places, wide_mm));
    high += rows.back().high;
  }
  const bool whole = high < page_mm / 3.5;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const bool last = i + 1 == rows.size();
    const bool before_total = !last && rows[i + 1].kind == TableRow::Kind::total;
    const std::size_t begins = flow.pieces.size();
    push_row(flow, rows[i], page_mm, tag);
    for (std::size_t k = begins; k < flow.pieces.size(); ++k) flow.pieces[k].head = head_number;
    if (before_total || rows[i].kind == TableRow::Kind::group || (whole && !last)) flow.pieces.back().keeps_next = true;
  }
}

}  // namespace tailblock
