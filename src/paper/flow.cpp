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
    double high = 0;
    for (std::size_t i = first; i < end; ++i) high += flow_.pieces[i].before_mm + flow_.pieces[i].high_mm;
    if (top_ > 0 && !fits(high)) turn(flow_.pieces[first]);
    for (std::size_t i = first; i < end; ++i) {
      const PagePiece& piece = flow_.pieces[i];
      if (top_ > 0 && !fits(piece.before_mm + piece.high_mm)) turn(piece);
      place(piece);
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
    if (next.head >= 0) place(flow_.heads[static_cast<std::size_t>(next.head)]);
  }

  void place(const PagePiece& piece) {
    if (top_ > 0) top_ += piece.before_mm;
    pages_.back().push_back({&piece, top_});
    top_ += piece.high_mm;
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
