#include "paper/flow.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace tailblock {
namespace {

/// Which pieces lie on which page, `h` for a head said again: `0 1 | h 2`.
std::string layout(const Flow& flow, double first_mm, double page_mm) {
  std::string text;
  for (const PlacedPage& page : pages_of(flow, first_mm, page_mm)) {
    if (!text.empty()) text += " | ";
    for (std::size_t i = 0; i < page.size(); ++i) {
      const std::ptrdiff_t number = page[i].piece - flow.pieces.data();
      const bool own = 0 <= number && number < std::ssize(flow.pieces);
      if (i > 0) text += ' ';
      text += own ? std::to_string(number) : "h";
    }
  }
  return text;
}

Flow lines(int count, double high = 10) {
  Flow flow;
  for (int i = 0; i < count; ++i) flow.pieces.push_back({.high_mm = high});
  return flow;
}

TEST(Flow, fills_a_page_and_turns_it) { EXPECT_EQ(layout(lines(5), 30, 20), "0 1 2 | 3 4"); }

TEST(Flow, gives_the_first_page_its_own_room) { EXPECT_EQ(layout(lines(5), 10, 40), "0 | 1 2 3 4"); }

TEST(Flow, drops_the_space_above_what_begins_a_page) {
  Flow flow = lines(3);
  for (PagePiece& piece : flow.pieces) piece.before_mm = 5;
  const auto pages = pages_of(flow, 25, 25);
  ASSERT_EQ(pages.size(), 2U);
  EXPECT_EQ(pages[0][1].top_mm, 15);
  EXPECT_EQ(pages[1][0].top_mm, 0);
}

TEST(Flow, keeps_a_heading_with_what_it_heads) {
  Flow flow = lines(4);
  flow.pieces[2].keeps_next = true;
  EXPECT_EQ(layout(flow, 30, 30), "0 1 | 2 3");
}

TEST(Flow, divides_a_chain_that_no_page_holds) {
  Flow flow = lines(6);
  for (PagePiece& piece : flow.pieces) piece.keeps_next = true;
  EXPECT_EQ(layout(flow, 30, 30), "0 1 2 | 3 4 5");
}

TEST(Flow, says_the_head_again_where_rows_go_on_and_not_where_they_begin) {
  Flow flow = lines(6);
  flow.heads.push_back({.high_mm = 10});
  flow.pieces[0].keeps_next = true;  // the head itself
  for (std::size_t i = 1; i < 6; ++i) flow.pieces[i].head = 0;
  EXPECT_EQ(layout(flow, 30, 30), "0 1 2 | h 3 4 | h 5");
}

TEST(Flow, lets_a_drawing_be_smaller_only_when_that_is_enough) {
  Flow flow = lines(3, 20);
  flow.pieces[1].least_mm = 12;
  flow.pieces[1].keeps_next = true;
  const auto pages = pages_of(flow, 55, 55);
  ASSERT_EQ(pages.size(), 1U);
  EXPECT_DOUBLE_EQ(pages[0][1].high_mm, 15);
  EXPECT_EQ(layout(flow, 51, 60), "0 | 1 2");
  EXPECT_DOUBLE_EQ(pages_of(flow, 51, 60)[1][0].high_mm, 20);
}

TEST(Flow, lays_a_piece_higher_than_a_page_rather_than_turn_for_ever) {
  EXPECT_EQ(layout(lines(2, 50), 30, 30), "0 | 1");
}

TEST(Flow, leaves_the_head_unsaid_over_a_piece_that_needs_its_room) {
  Flow flow = lines(2, 25);
  flow.heads.push_back({.high_mm = 10});
  for (PagePiece& piece : flow.pieces) piece.head = 0;
  EXPECT_EQ(layout(flow, 30, 30), "0 | 1");
  EXPECT_EQ(layout(flow, 30, 40), "0 | h 1");
}

Flow any_flow() {
  Flow flow;
  flow.heads.push_back({.high_mm = 8});
  const int count = *rc::gen::inRange(0, 60);
  for (int i = 0; i < count; ++i) {
    PagePiece piece{.high_mm = *rc::gen::inRange(1, 60) * 1.0, .before_mm = *rc::gen::inRange(0, 8) * 1.0};
    piece.keeps_next = *rc::gen::inRange(0, 3) == 0;
    piece.head = *rc::gen::inRange(-1, 1);
    if (*rc::gen::inRange(0, 4) == 0) piece.least_mm = 0.75 * piece.high_mm;
    flow.pieces.push_back(std::move(piece));
  }
  return flow;
}

RC_GTEST_PROP(Flow, lays_every_piece_once_in_order_and_within_the_page, ()) {
  const Flow flow = any_flow();
  const double first = *rc::gen::inRange(20, 120), room = *rc::gen::inRange(70, 140);
  const auto pages = pages_of(flow, first, room);
  const PagePiece* next = flow.pieces.data();
  for (std::size_t i = 0; i < pages.size(); ++i) {
    double end = 0;
    for (const PlacedPiece& placed : pages[i]) {
      RC_ASSERT(placed.top_mm >= end - 1e-9);
      RC_ASSERT(placed.high_mm >= (placed.piece->least_mm > 0 ? placed.piece->least_mm : placed.piece->high_mm) - 1e-9);
      end = placed.top_mm + placed.high_mm;
      if (placed.piece == flow.heads.data()) continue;
      RC_ASSERT(placed.piece == next);
      ++next;
    }
    RC_ASSERT(end <= (i == 0 ? std::max(first, 60.0) : room) + 1e-6);  // 60: a piece higher than the first page's room
  }
  RC_ASSERT(next == flow.pieces.data() + flow.pieces.size());
}

RC_GTEST_PROP(Flow, parts_no_piece_from_the_next_that_it_keeps_when_a_page_holds_both, ()) {
  Flow flow = any_flow();
  for (PagePiece& piece : flow.pieces) piece.head = -1, piece.least_mm = 0;
  for (std::size_t i = 0; i < flow.pieces.size(); ++i) flow.pieces[i].keeps_next = i % 2 == 0;  // pairs, at most 134 mm
  const auto pages = pages_of(flow, 140, 140);
  for (const PlacedPage& page : pages) {
    if (page.empty()) continue;
    const PagePiece* last = page.back().piece;
    const bool parted = last->keeps_next && last != &flow.pieces.back();
    RC_ASSERT(!parted);
  }
}

}  // namespace
}  // namespace tailblock
