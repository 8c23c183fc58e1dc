#include "paper/flow.h"

namespace tailblock {
namespace {

class Layer {
 public:
  Layer(const Flow& flow, double first_page_mm, double page_mm)
      : flow_(flow), room_(first_page_mm), page_mm_(page_mm), pages_(1) {}

  /// Lays the chain that begins at `first` and returns where the next begins.
  std::size_t chain(std::size_t first) {
    std::size_t end = first + 1;
    while (end < flow_.pieces.size() && flow_.pieces[end - 1].keeps_next) ++end;
    double high = 0, spare = 0;
    for (std::size_t i = first; i < end; ++i) {
      const PagePiece& piece = flow_.pieces[i];
      high += (i == first && top_ == 0 ? 0 : piece.before_mm) + piece.high_mm;
      if (piece.least_mm > 0) spare += piece.high_mm - piece.least_mm;
    }
    double smaller = 0;  // of what can be given up, how much is
    if (!fits(high)) {
      if (spare > 0 && fits(high - spare)) {
        smaller = (top_ + high - room_) / spare;
      } else if (top_ > 0) {
        turn(flow_.pieces[first]);
      }
    }
    for (std::size_t i = first; i < end; ++i) {
      const PagePiece& piece = flow_.pieces[i];
      const double taken = piece.high_mm - (piece.least_mm > 0 ? smaller * (piece.high_mm - piece.least_mm) : 0);
      if (top_ > 0 && !fits(piece.before_mm + taken)) turn(piece);
      place(piece, taken);
    }
    return end;
  }

  std::vector<PlacedPage> pages() && { return std::move(pages_); }

 private:
  [[nodiscard]] bool fits(double high_mm) const { return top_ + high_mm <= room_ + 1e-6; }

  void turn(const PagePiece& next) {
    pages_.emplace_back();
    top_ = 0;
    room_ = page_mm_;
    if (next.head < 0) return;
    const PagePiece& head = flow_.heads[static_cast<std::size_t>(next.head)];
    if (fits(head.high_mm + next.before_mm + next.high_mm)) place(head, head.high_mm);
  }

  void place(const PagePiece& piece, double high_mm) {
    if (top_ > 0) top_ += piece.before_mm;
    pages_.back().push_back({&piece, top_, high_mm});
    top_ += high_mm;
  }

  const Flow& flow_;
  double room_, page_mm_;
  double top_ = 0;
  std::vector<PlacedPage> pages_;
};

}  // namespace

std::vector<PlacedPage> pages_of(const Flow& flow, double first_page_mm, double page_mm) {
  Layer layer(flow, first_page_mm, page_mm);
  for (std::size_t i = 0; i < flow.pieces.size();) i = layer.chain(i);
  return std::move(layer).pages();
}

}  // namespace tailblock
