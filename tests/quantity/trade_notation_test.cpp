#include "quantity/trade_notation.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <clocale>
#include <locale>
#include <string>

#include "published.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

double mm_of(const std::string& text) { return in_mm(length_from_text("action12_bass", text)); }

void refuses(const std::string& text, const std::string& line) {
  try {
    FAIL() << text << " was read as " << mm_of(text) << " mm";
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), "action12_bass: " + line);
  }
}

void refuses_in(DefaultUnit unit, const std::string& text, const std::string& line) {
  try {
    FAIL() << text << " was read as " << in_mm(length_from_text("action12_bass", text, unit)) << " mm";
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), "action12_bass: " + line);
  }
}

void reads_in(DefaultUnit unit, const std::string& text, Length expected) {
  EXPECT_NEAR(in_mm(length_from_text("action12_bass", text, unit)), in_mm(expected), 1e-12) << text;
}

TEST(TradeNotation, every_way_of_writing_it_is_read) {
  testing::Published table("trade_notation.csv");
  for (const CsvRow& row : table.rows())
    table.check(row, mm_of(std::string(row.text("text"))), "expected_mm", "tolerance_mm");
}

TEST(TradeNotation, a_bare_number_is_refused_with_what_it_could_mean) {
  refuses("2", R"("2" could be 2 mm or 2/64 in: write the unit)");
  refuses("100", R"("100" could be 100 mm or 100 in: write the unit)");
  refuses("0.5", R"("0.5" could be 0.5 mm or 0.5 in: write the unit)");
  refuses("0.078", R"("0.078" could be 0.078 mm or 0.078 in: write the unit)");
  refuses(",078", R"(",078" could be 0.078 mm or 0.078 in: write the unit)");
  refuses("5 /64", R"("5 /64" could be 5 mm or 5/64 in: write the unit)");
}

TEST(TradeNotation, what_cannot_be_read_is_refused_with_the_reason) {
  refuses("", R"("" is empty: write a length, such as 5/64 or 2 mm)");
  refuses("  ", R"("  " is empty: write a length, such as 5/64 or 2 mm)");
  refuses("two", R"("two" has "two" where a number is due)");
  refuses("-", R"("-" ends where a number is due)");
  refuses("5/63", R"("5/63" has a fraction that no inch ruler shows: the lower number is 2, 4, 8 .. 128)");
  refuses("5/0", R"("5/0" has a fraction whose lower number is not 1..128)");
  refuses("5/", R"("5/" has a fraction whose lower number is not 1..128)");
  refuses("1 65/64", R"("1 65/64" has a fraction of one or more after a whole number)");
  refuses("1.2.3 mm", R"("1.2.3 mm" has two marks in one number: write 2.5 or 2,5)");
  refuses("2. mm", R"("2. mm" has a decimal mark without a digit after it)");
  refuses("2 m", R"("2 m" has "m" where a unit is due: mm, cm, in, ", thou, 64ths)");
  refuses("1e3 mm", R"("1e3 mm" has "e" where a unit is due: mm, cm, in, ", thou, 64ths)");
  refuses("2 mm mm", R"("2 mm mm" has "mm" after its length)");
  refuses(
      "78 mil",
      R"("78 mil" says mil, which is a thousandth of an inch to some and a millimetre to others: write thou or mm)");
  refuses("5/64 + 3", R"("5/64 + 3" needs a unit on each part of the sum)");
  refuses("5/64-.002", R"("5/64-.002" needs a space on both sides of the minus)");
  refuses("1 - 3/32",
          R"("1 - 3/32" could be a whole number with its fraction or one less the other: leave the spaces out, )"
          "or write the unit");
  refuses("nan mm", R"("nan mm" has "nan mm" where a number is due)");
  refuses("\xFF\x01", R"("??" has "??" where a number is due)");
  refuses(std::string(70, '1'), "\"" + std::string(40, '1') + "...\" is too long to be a length");
}

TEST(TradeNotation, in_a_field_that_shows_its_unit_a_bare_number_takes_it) {
  reads_in(DefaultUnit::millimetres, "2", mm(2));
  reads_in(DefaultUnit::millimetres, "2,1", mm(2.1));
  reads_in(DefaultUnit::millimetres, ".5", mm(0.5));
  reads_in(DefaultUnit::sixty_fourths, "5", sixty_fourths(5));
  reads_in(DefaultUnit::sixty_fourths, "5.5", sixty_fourths(5.5));
  reads_in(DefaultUnit::thousandths, "78", thousandths(78));
  reads_in(DefaultUnit::inches, "1 1/2", inches(1.5));
  reads_in(DefaultUnit::inches, "25.4", inches(25.4));
}

TEST(TradeNotation, a_unit_that_is_written_outweighs_the_field) {
  reads_in(DefaultUnit::sixty_fourths, "2 mm", mm(2));
  reads_in(DefaultUnit::millimetres, "5/64", sixty_fourths(5));
  reads_in(DefaultUnit::millimetres, "5/64 + .003", sixty_fourths(5) + thousandths(3));
  reads_in(DefaultUnit::thousandths, ".078", thousandths(78));
  reads_in(DefaultUnit::sixty_fourths, ".078", thousandths(78));
}

TEST(TradeNotation, a_half_in_a_field_of_other_units_is_refused) {
  refuses_in(DefaultUnit::millimetres, "1/2", R"("1/2" could be in inches or in millimetres: write the unit)");
  refuses_in(DefaultUnit::sixty_fourths, "5 1/2", R"("5 1/2" could be in inches or in 64ths: write the unit)");
  refuses_in(DefaultUnit::millimetres, "2 + 1", R"("2 + 1" needs a unit on each part of the sum)");
}

TEST(TradeNotation, prints_all_notations_each_rounded_once) {
  const TradeLength two_mm = as_trade(mm(2.06));
  EXPECT_EQ(two_mm.sixty_fourths, "5/64 + .003");
  EXPECT_EQ(two_mm.fraction, "5/64");
  EXPECT_EQ(two_mm.thirty_seconds, "3/32");
  EXPECT_EQ(two_mm.thousandths, ".081");
  EXPECT_EQ(two_mm.inches, "0.0811 in");
  EXPECT_EQ(two_mm.millimetres, "2.06 mm");
  EXPECT_EQ(as_trade(inches(0.125)).millimetres, "3.18 mm");
  EXPECT_EQ(as_trade(inches(0.125)).sixty_fourths, "8/64");
  EXPECT_EQ(as_trade(inches(0.125)).fraction, "1/8");
  EXPECT_EQ(as_trade(sixty_fourths(73) - thousandths(2)).sixty_fourths, "1 9/64 - .002");
  EXPECT_EQ(as_trade(inches(1) + thousandths(3)).sixty_fourths, "1 in + .003");
  EXPECT_EQ(as_trade(inches(1.081)).thousandths, "1.081 in");
  EXPECT_EQ(as_trade(thousandths(3)).sixty_fourths, ".003");
  EXPECT_EQ(as_trade(-sixty_fourths(5) - thousandths(3)).sixty_fourths, "-5/64 - .003");
  EXPECT_EQ(as_trade(mm(0)).sixty_fourths, "0");
  EXPECT_EQ(as_trade(mm(-0.001)).millimetres, "0.00 mm");
  EXPECT_EQ(as_trade(mm(-0.001)).fraction, "0");
}

TEST(TradeNotation, a_half_hundredth_of_a_millimetre_goes_up_at_every_eighth) {
  for (int eighths = 1; eighths < 400; eighths += 2) {
    const int hundredths = (635 * eighths + 1) / 2;  // 1/8 in is 317.5 hundredths
    const std::string decimals = std::to_string(100 + hundredths % 100).substr(1);
    EXPECT_EQ(as_trade(inches(eighths / 8.0)).millimetres, std::to_string(hundredths / 100) + "." + decimals + " mm");
  }
}

TEST(TradeNotation, a_length_that_is_no_number_is_not_printed) {
  EXPECT_THROW((void)as_trade(mm(std::nan(""))), Refused);
  EXPECT_THROW((void)as_trade(mm(1e9)), Refused);
}

struct Notation {
  std::string TradeLength::*text;
  double resolution_mm;  ///< half a step of that notation
};

class RoundTrip : public ::testing::TestWithParam<Notation> {};

TEST_P(RoundTrip, what_is_printed_reads_back_within_half_a_step) {
  const Notation notation = GetParam();
  const bool held = rc::check("print and read back", [&] {
    const int small_or_large =
        *rc::gen::oneOf(rc::gen::inRange(-600'000, 600'000), rc::gen::inRange(-80'000'000, 80'000'000));
    const double exact_mm = small_or_large / 100'000.0;
    const std::string text = as_trade(mm(exact_mm)).*notation.text;
    RC_LOG() << exact_mm << " mm is printed " << text;
    RC_ASSERT(std::abs(mm_of(text) - exact_mm) <= notation.resolution_mm + 1e-8);
  });
  EXPECT_TRUE(held);
}

INSTANTIATE_TEST_SUITE_P(AllNotations, RoundTrip,
                         ::testing::Values(Notation{&TradeLength::sixty_fourths, 25.4 / 2000},
                                           Notation{&TradeLength::fraction, 25.4 / 128},
                                           Notation{&TradeLength::thirty_seconds, 25.4 / 64},
                                           Notation{&TradeLength::thousandths, 25.4 / 2000},
                                           Notation{&TradeLength::inches, 25.4 / 20'000},
                                           Notation{&TradeLength::millimetres, 0.005}));

/// Reads or refuses in one printable line; anything else fails.
void survives(const std::string& text) {
  try {
    const double value = mm_of(text);
    RC_ASSERT(std::isfinite(value));
  } catch (const Refused& refused) {
    const std::string line = refused.what();
    RC_ASSERT(line.starts_with("action12_bass: \""));
    RC_ASSERT(line.find('\n') == std::string::npos);
    RC_ASSERT(line.size() < 200U);
  }
}

RC_GTEST_PROP(TradeNotation, any_bytes_are_read_or_refused, (const std::string& bytes)) { survives(bytes); }

RC_GTEST_PROP(TradeNotation, any_text_of_its_own_characters_is_read_or_refused, ()) {
  const auto piece = rc::gen::element<std::string>("1", "5", "64", "0", "/", ".", ",", " ", "+", "-", "\"", "'", "mm",
                                                   "in", "thou", "½", "⁵", "₆", "⁄", "−", "64ths", "\xE2\x80");
  const auto pieces = *rc::gen::container<std::vector<std::string>>(piece);
  std::string text;
  for (const std::string& part : pieces) text += part;
  survives(text);
}

/// A number format as in much of Europe, made here so that no installed locale is needed.
struct CommaFormat : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(TradeNotation, a_locale_of_decimal_commas_changes_nothing) {
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new CommaFormat));
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "nl_NL.UTF-8"}) {
    if (std::setlocale(LC_ALL, name) != nullptr) break;
  }
  EXPECT_NEAR(mm_of("2.06 mm"), 2.06, 1e-12);
  EXPECT_NEAR(mm_of("2,06 mm"), 2.06, 1e-12);
  EXPECT_EQ(as_trade(mm(1234.56)).millimetres, "1234.56 mm");
  EXPECT_EQ(as_trade(mm(2.06)).inches, "0.0811 in");
  refuses("0.5", R"("0.5" could be 0.5 mm or 0.5 in: write the unit)");
  std::setlocale(LC_ALL, "C");
  std::locale::global(before);
}

}  // namespace
}  // namespace tailblock
