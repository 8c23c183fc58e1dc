#include "quantity/quoted_text.h"

#include <gtest/gtest.h>

namespace tailblock {
namespace {

TEST(QuotedText, keeps_what_can_be_read) { EXPECT_EQ(quoted_text("5/64″ Größe 弦"), "\"5/64″ Größe 弦\""); }

TEST(QuotedText, replaces_what_cannot) {
  EXPECT_EQ(quoted_text("a\nb\x7F"), "\"a?b?\"");
  EXPECT_EQ(quoted_text("\xC3(\xE2\x80"), "\"?(??\"");
  EXPECT_EQ(quoted_text("\xC0\xAF\xED\xA0\x80\xF5\x80\x80\x80\xC2\x85"), "\"???????????\"");
}

TEST(QuotedText, cuts_long_text_between_characters) {
  EXPECT_EQ(quoted_text("ääää", 5), "\"ää...\"");
  EXPECT_EQ(quoted_text("ääää", 8), "\"ääää\"");
}

}  // namespace
}  // namespace tailblock
