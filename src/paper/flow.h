#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace tailblock {

class Sheet;

/// A step in the tree that a PDF keeps for programs that read it aloud: pieces in a row with the same name and number
/// belong to one element.
struct TagStep {
  std::string name;  ///< `P`, `Table`, `L` ...
  int number = 0;
  bool operator==(const TagStep&) const = default;
};

/// What cannot be divided between two pages: a line of a paragraph, a row of a table, a drawing.
struct PagePiece {
  double high_mm = 0;
  double before_mm = 0;     ///< space above it, dropped at the top of a page
  bool keeps_next = false;  ///< does not end a page when the next piece could be taken along
  int head = -1;            ///< said again, out of Flow::heads, when this piece begins a page that has room for both
  std::vector<TagStep> tags{};
  std::function<void(Sheet&, double x_mm, double top_mm)> draw{};
  double least_mm = 0;  ///< how high it is at least, when it can be drawn smaller to fit a page's end; else 0
  std::function<void(Sheet&, double x_mm, double top_mm, double high_mm)> draw_smaller{};
};

struct Flow {
  std::vector<PagePiece> pieces;
  std::vector<PagePiece> heads;
};

struct PlacedPiece {
  const PagePiece* piece;
  double top_mm;   ///< from the top of the page's text
  double high_mm;  ///< as laid
};
using PlacedPage = std::vector<PlacedPiece>;

/// Lays the pieces on pages from the top down. A chain of pieces that keep one another begins a new page rather than be
/// divided, or lets what it holds of drawings be smaller if that is enough. If it is longer than a page, it is divided
/// where a page is full. The first page has less room, under the letterhead. `flow` must outlive the pages.
[[nodiscard]] std::vector<PlacedPage> pages_of(const Flow& flow, double first_page_mm, double page_mm);

}  // namespace tailblock
