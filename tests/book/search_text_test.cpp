#include "book/search_text.h"

#include <gtest/gtest.h>

#include <random>

namespace tailblock {
namespace {

using Words = std::vector<std::string>;

TEST(SearchText, words_are_small_letters_and_digits) {
  EXPECT_EQ(search_words("The Blackened Parlour, 1/2-size (no. 7)"),
            (Words{"the", "blackened", "parlour", "1", "2", "size", "no", "7"}));
}

TEST(SearchText, latin_letters_lose_their_accents) {
  EXPECT_EQ(search_words("Müller-Straße Łódź Ångström œuvre Žižek Þór naïve"),
            (Words{"muller", "strasse", "lodz", "angstrom", "oeuvre", "zizek", "thor", "naive"}));
}

TEST(SearchText, an_accent_written_apart_is_the_same_letter) {
  EXPECT_EQ(search_words("Mu\u0308ller"), search_words("M\u00fcller"));
}

TEST(SearchText, greek_and_cyrillic_lose_their_case) {
  EXPECT_EQ(search_words("ΓΙΩΡΓΟΣ ЁЛКА"), (Words{"γιωργοσ", "ёлка"}));
}

TEST(SearchText, other_scripts_stay_as_they_are) { EXPECT_EQ(search_words("東京 店"), (Words{"東京", "店"})); }

TEST(SearchText, bytes_that_are_no_utf8_part_words) {
  EXPECT_EQ(search_words("ab\xff\xc3"), (Words{"ab"}));
  EXPECT_EQ(search_words("\x80xy"), (Words{"xy"}));
}

TEST(SearchText, any_bytes_give_words_without_blanks) {
  std::mt19937 dice(7);
  for (int round = 0; round < 2000; ++round) {
    std::string bytes(dice() % 40, '\0');
    for (char& byte : bytes) byte = static_cast<char>(dice());
    for (const std::string& word : search_words(bytes)) {
      EXPECT_FALSE(word.empty());
      EXPECT_EQ(word.find_first_of(" \n"), std::string::npos);
    }
  }
}

TEST(SearchText, fields_are_ordered_by_the_first_and_then_the_next) {
  EXPECT_EQ(search_text({"An old one", "1910"}), " an old one\n 1910\n");
  EXPECT_LT(search_text({"an", "zz"}), search_text({"an b", "aa"}));
  EXPECT_LT(search_text({"an", "aa"}), search_text({"an", "zz"}));
  EXPECT_EQ(search_text({"", " - "}), "\n\n");
}

TEST(SearchText, a_word_is_found_by_its_beginning_and_not_by_its_middle) {
  const std::string text = search_text({"the blackened parlour", "1910"});
  EXPECT_TRUE(has_words(text, search_words("PARL black")));
  EXPECT_TRUE(has_words(text, search_words("191")));
  EXPECT_FALSE(has_words(text, search_words("lour")));
  EXPECT_FALSE(has_words(text, search_words("parl white")));
  EXPECT_TRUE(has_words(text, {}));
}

TEST(SearchText, a_text_that_has_the_words_has_their_beginnings) {
  std::mt19937 dice(11);
  const auto word = [&] {
    std::string letters(1 + dice() % 4, 'a');
    for (char& letter : letters) letter = static_cast<char>('a' + dice() % 5);
    return letters;
  };
  int found = 0, ruled_out = 0;
  for (int round = 0; round < 20000; ++round) {
    const std::string text = search_text({word() + " " + word(), word()});
    const Words words{word(), word()};
    const bool has = has_words(text, words);
    const bool may_have = (beginnings(text) & beginnings(words)) == beginnings(words);
    EXPECT_TRUE(may_have || !has) << text << words[0] << ' ' << words[1];
    found += has ? 1 : 0;
    ruled_out += may_have ? 0 : 1;
  }
  EXPECT_GT(found, 100);
  EXPECT_GT(ruled_out, 5000);
}

}  // namespace
}  // namespace tailblock
