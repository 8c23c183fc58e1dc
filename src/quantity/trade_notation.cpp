#include "quantity/trade_notation.h"

#include <array>
#include <charconv>
#include <cmath>
#include <numeric>
#include <optional>
#include <vector>

#include "quantity/quoted_text.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

constexpr std::size_t longest_text = 64;

struct Spelling {
  std::string_view written;
  std::string_view plain;
};

/// What phones and word processors put for plain characters. A fraction or superscript is set off from a digit before
/// it.
constexpr std::array spellings{
    Spelling{"\u00A0", " "},        Spelling{"\u2007", " "},    Spelling{"\u2009", " "},
    Spelling{"\u202F", " "},        Spelling{"\u2033", "\""},   Spelling{"\u201C", "\""},
    Spelling{"\u201D", "\""},       Spelling{"\u201E", "\""},   Spelling{"\u2019\u2019", "\""},
    Spelling{"\u2032\u2032", "\""}, Spelling{"''", "\""},       Spelling{"\u2044", "/"},
    Spelling{"\u2215", "/"},        Spelling{"\u2212", "-"},    Spelling{"\u2010", "-"},
    Spelling{"\u2011", "-"},        Spelling{"\u2013", "-"},    Spelling{"\u339C", " mm"},
    Spelling{"\u339D", " cm"},      Spelling{"\u00BD", " 1/2"}, Spelling{"\u00BC", " 1/4"},
    Spelling{"\u00BE", " 3/4"},     Spelling{"\u215B", " 1/8"}, Spelling{"\u215C", " 3/8"},
    Spelling{"\u215D", " 5/8"},     Spelling{"\u215E", " 7/8"},
};

constexpr std::array<std::string_view, 10> superscripts{"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                                        "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
constexpr std::array<std::string_view, 10> subscripts{"\u2080", "\u2081", "\u2082", "\u2083", "\u2084",
                                                      "\u2085", "\u2086", "\u2087", "\u2088", "\u2089"};

bool is_digit(char c) { return '0' <= c && c <= '9'; }
bool is_letter(char c) { return ('a' <= c && c <= 'z') || ('A' <= c && c <= 'Z'); }

/// Moves a small raised or lowered digit from the front of `text` to `plain`.
bool take_small_digit(std::string_view& text, std::string& plain, bool& raised) {
  for (std::size_t digit = 0; digit < 10; ++digit) {
    const bool up = text.starts_with(superscripts[digit]);
    if (!up && !text.starts_with(subscripts[digit])) continue;
    if (up && !raised && !plain.empty() && is_digit(plain.back())) plain += ' ';  // 1⁵⁄₆₄ is not 15/64
    raised = up;
    plain += static_cast<char>('0' + digit);
    text.remove_prefix(up ? superscripts[digit].size() : subscripts[digit].size());
    return true;
  }
  return false;
}

/// The text in plain lower-case characters. Others are left as they are, to be refused where they stand.
std::string plain_text(std::string_view text) {
  std::string plain;
  bool raised = false;
  while (!text.empty()) {
    if (take_small_digit(text, plain, raised)) continue;
    raised = false;
    const Spelling* found = nullptr;
    for (const Spelling& spelling : spellings) {
      if (text.starts_with(spelling.written)) {
        found = &spelling;
        break;
      }
    }
    if (found != nullptr) {
      plain += found->plain;
      text.remove_prefix(found->written.size());
      continue;
    }
    const char c = text.front() == '\t' ? ' ' : text.front();
    plain += 'A' <= c && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    text.remove_prefix(1);
  }
  return plain;
}

enum class Unit { millimetres, centimetres, inches, thousandths, sixty_fourths, thirty_seconds, sixteenths };

struct UnitWord {
  std::string_view word;
  Unit unit;
};

constexpr std::array unit_words{
    UnitWord{"mm", Unit::millimetres},
    UnitWord{"millimetre", Unit::millimetres},
    UnitWord{"millimetres", Unit::millimetres},
    UnitWord{"millimeter", Unit::millimetres},
    UnitWord{"millimeters", Unit::millimetres},
    UnitWord{"cm", Unit::centimetres},
    UnitWord{"in", Unit::inches},
    UnitWord{"inch", Unit::inches},
    UnitWord{"inches", Unit::inches},
    UnitWord{"\"", Unit::inches},
    UnitWord{"thou", Unit::thousandths},
    UnitWord{"thousandth", Unit::thousandths},
    UnitWord{"thousandths", Unit::thousandths},
    UnitWord{"64ths", Unit::sixty_fourths},
    UnitWord{"64th", Unit::sixty_fourths},
    UnitWord{"32nds", Unit::thirty_seconds},
    UnitWord{"32nd", Unit::thirty_seconds},
    UnitWord{"16ths", Unit::sixteenths},
    UnitWord{"16th", Unit::sixteenths},
};

Length of_unit(double value, Unit unit) {
  switch (unit) {
    case Unit::millimetres:
      return mm(value);
    case Unit::centimetres:
      return mm(value * 10);
    case Unit::inches:
      return inches(value);
    case Unit::thousandths:
      return thousandths(value);
    case Unit::sixty_fourths:
      return sixty_fourths(value);
    case Unit::thirty_seconds:
      return sixty_fourths(value * 2);
    case Unit::sixteenths:
      break;
  }
  return sixty_fourths(value * 4);
}

/// Reads one length from left to right. Every step takes characters from the front or refuses.
class LengthReader {
 public:
  LengthReader(std::string_view field, std::string_view written, std::optional<DefaultUnit> bare)
      : field_(field), written_(written), bare_(bare) {
    if (written.size() > longest_text) refuse("is too long to be a length");
    plain_ = plain_text(written);
    rest_ = plain_;
  }

  Length read() {
    skip_spaces();
    if (rest_.empty()) refuse("is empty: write a length, such as 5/64 or 2 mm");
    const double sign = take('-') ? -1 : (take('+'), 1);
    skip_spaces();
    Length sum = sign * term();
    while (skip_spaces(), !rest_.empty()) {
      in_sum_ = true;
      const bool spaced = rest_.size() > 1 && rest_[1] == ' ';
      const bool minus = rest_.front() == '-';
      if (!minus && rest_.front() != '+') refuse("has " + quoted_text(rest_) + " after its length");
      if (minus && !spaced) refuse("needs a space on both sides of the minus");
      if (bare_whole_) refuse("needs a unit on each part of the sum");
      rest_.remove_prefix(1);
      skip_spaces();
      const Length part = term();
      sum += minus ? -part : part;
    }
    return sum;
  }

 private:
  [[noreturn]] void refuse(const std::string& why) const {
    throw Refused(std::string(field_) + ": " + quoted_text(written_) + " " + why);
  }

  bool take(char c) {
    if (!rest_.starts_with(c)) return false;
    rest_.remove_prefix(1);
    return true;
  }

  void skip_spaces() {
    while (take(' ')) {
    }
  }

  std::string_view digits() {
    std::size_t count = 0;
    while (count < rest_.size() && is_digit(rest_[count])) ++count;
    const std::string_view taken = rest_.substr(0, count);
    rest_.remove_prefix(count);
    return taken;
  }

  static double value_of(std::string_view decimal) {
    double value = 0;
    std::from_chars(decimal.data(), decimal.data() + decimal.size(), value);
    return value;
  }

  std::optional<Unit> unit() {
    skip_spaces();
    std::size_t length = 0;
    if (rest_.starts_with('"')) {
      length = 1;
    } else {
      while (length < rest_.size() && is_digit(rest_[length])) ++length;  // 64ths
      while (length < rest_.size() && is_letter(rest_[length])) ++length;
    }
    const std::string_view word = rest_.substr(0, length);
    if (word.empty()) return std::nullopt;
    if (word == "mil" || word == "mils") {
      refuse("says mil, which is a thousandth of an inch to some and a millimetre to others: write thou or mm");
    }
    for (const UnitWord& known : unit_words) {
      if (word != known.word) continue;
      rest_.remove_prefix(length);
      if (known.unit == Unit::inches && word != "\"") take('.');
      return known.unit;
    }
    refuse("has " + quoted_text(word) + " where a unit is due: mm, cm, in, \", thou, 64ths");
  }

  /// `3/32` at the front, told from the number of a next part by its slash.
  [[nodiscard]] bool fraction_ahead() const {
    std::size_t at = 0;
    while (at < rest_.size() && is_digit(rest_[at])) ++at;
    return at > 0 && at < rest_.size() && rest_[at] == '/';
  }

  struct Fraction {
    double value;
    double denominator;
  };

  Fraction fraction() {
    const double numerator = value_of(digits());
    take('/');
    const double denominator = value_of(digits());
    if (denominator < 1 || denominator > 128) refuse("has a fraction whose lower number is not 1..128");
    if (rest_.starts_with("ths") || rest_.starts_with("nds") || rest_.starts_with("th") || rest_.starts_with("nd")) {
      rest_.remove_prefix(rest_.starts_with("ths") || rest_.starts_with("nds") ? 3 : 2);
    }
    return {.value = numerator / denominator, .denominator = denominator};
  }

  Length in_fractions(double whole, const Fraction& part) {
    if (whole > 0 && part.value >= 1) refuse("has a fraction of one or more after a whole number");
    const double value = whole + part.value;
    const auto given = unit();
    if (given && *given != Unit::inches) return of_unit(value, *given);
    const int over = static_cast<int>(part.denominator);
    if ((over & (over - 1)) != 0) refuse("has a fraction that no inch ruler shows: the lower number is 2, 4, 8 .. 128");
    if (!given && bare_ && *bare_ != DefaultUnit::inches && over <= 8) {
      refuse("could be in inches or in " + std::string(field_unit()) + ": write the unit");
    }
    inches_so_far_ = true;
    return inches(value);
  }

  [[nodiscard]] std::string_view field_unit() const {
    constexpr std::array<std::string_view, 4> names{"millimetres", "64ths", "thousandths", "inches"};
    return names[static_cast<std::size_t>(*bare_)];
  }

  Length term() {
    if (fraction_ahead()) return in_fractions(0, fraction());
    const std::string_view whole = digits();
    if (rest_.starts_with('.') || rest_.starts_with(',')) return in_decimals(whole);
    if (whole.empty()) {
      refuse(rest_.empty() ? "ends where a number is due" : "has " + quoted_text(rest_) + " where a number is due");
    }
    const std::string_view before = rest_;
    const bool space_before = rest_.starts_with(' ');
    skip_spaces();
    const bool hyphen = take('-');
    const bool space_after = hyphen && rest_.starts_with(' ');
    skip_spaces();
    if (fraction_ahead()) {
      if (hyphen && space_before && space_after) {
        refuse(
            "could be a whole number with its fraction or one less the other: leave the spaces out, or write the unit");
      }
      return in_fractions(value_of(whole), fraction());
    }
    rest_ = before;
    return with_unit(value_of(whole), std::string(whole), false);
  }

  Length in_decimals(std::string_view whole) {
    const bool point = rest_.front() == '.';
    rest_.remove_prefix(1);
    const std::string_view decimals = digits();
    if (decimals.empty()) refuse("has a decimal mark without a digit after it");
    if (rest_.starts_with('.') || rest_.starts_with(',') || rest_.starts_with('/')) {
      refuse("has two marks in one number: write 2.5 or 2,5");
    }
    const std::string number = (whole.empty() ? "0" : std::string(whole)) + "." + std::string(decimals);
    return with_unit(value_of(number), number, point && whole.empty());
  }

  Length with_unit(double value, const std::string& number, bool starts_with_point) {
    if (const auto given = unit()) {
      inches_so_far_ = *given != Unit::millimetres && *given != Unit::centimetres;
      return of_unit(value, *given);
    }
    if (value == 0) return mm(0);
    if (starts_with_point && (bare_ != DefaultUnit::millimetres || inches_so_far_)) return inches(value);
    if (in_sum_) refuse("needs a unit on each part of the sum");
    bare_whole_ = true;
    if (bare_ == DefaultUnit::millimetres) return mm(value);
    if (bare_ == DefaultUnit::sixty_fourths) return sixty_fourths(value);
    if (bare_ == DefaultUnit::thousandths) return thousandths(value);
    if (bare_ == DefaultUnit::inches) return inches(value);
    const bool counts_64ths = value < 64 && value == std::floor(value);
    refuse("could be " + number + " mm or " + number + (counts_64ths ? "/64 in" : " in") + ": write the unit");
  }

  std::string_view field_;
  std::string_view written_;
  std::optional<DefaultUnit> bare_;
  std::string plain_;
  std::string_view rest_;
  bool in_sum_ = false;
  bool bare_whole_ = false;     ///< the part just read took the field's unit
  bool inches_so_far_ = false;  ///< so that `.003` after `5/64` is inches in a field of millimetres too
};

/// Halves go up: an eighth of an inch, 3.175 mm, is 3.18 although the nearest double lies a hair under it.
std::string fixed(double value, int decimals) {
  double scale = 1;
  for (int i = 0; i < decimals; ++i) scale *= 10;
  const long long parts = std::llround(value * scale + 1e-7);
  const auto unit = static_cast<long long>(scale);
  return std::to_string(parts / unit) + "." + std::to_string(unit + parts % unit).substr(1);
}

/// `5/64`, `1 3/32`, `1 in`; empty for nothing at all.
std::string mixed(long parts, long denominator) {
  const long whole = parts / denominator;
  const long left = parts % denominator;
  if (left == 0) return whole == 0 ? "" : std::to_string(whole) + " in";
  const std::string fraction = std::to_string(left) + "/" + std::to_string(denominator);
  return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

std::string or_zero(const std::string& sign, const std::string& text) { return text.empty() ? "0" : sign + text; }

/// `.003`, `1.081 in`
std::string in_thousandths_of_an_inch(long thou) {
  const std::string decimals = std::to_string(1000 + thou % 1000).substr(1);
  return thou < 1000 ? "." + decimals : std::to_string(thou / 1000) + "." + decimals + " in";
}

}  // namespace

Length length_from_text(std::string_view field, std::string_view text) {
  return LengthReader(field, text, std::nullopt).read();
}

Length length_from_text(std::string_view field, std::string_view text, DefaultUnit bare) {
  return LengthReader(field, text, bare).read();
}

TradeLength as_trade(Length length) {
  require_within("length", in_mm(length), {-100'000, 100'000, "mm"});
  const std::string minus = length < Length() ? "-" : "";
  const Length size = length < Length() ? -length : length;
  const double in_64ths = in_sixty_fourths(size);
  const long near_64ths = std::lround(in_64ths);
  const long left_over = std::lround((in_64ths - static_cast<double>(near_64ths)) * 1000 / 64);
  const long near_32nds = std::lround(in_64ths / 2);
  const long common = std::gcd(near_64ths, 64L);
  const long thou = std::lround(in_thousandths(size) + 1e-7);

  std::string sixty_fourths = or_zero(minus, mixed(near_64ths, 64));
  if (left_over != 0) {
    const std::string left = in_thousandths_of_an_inch(std::abs(left_over));
    const bool adds = (left_over > 0) == minus.empty();
    sixty_fourths = near_64ths == 0 ? minus + left : sixty_fourths + (adds ? " + " : " - ") + left;
  }
  const std::string ten_thousandths = fixed(in_inches(size), 4);
  const std::string hundredths = fixed(in_mm(size), 2);
  return {.sixty_fourths = sixty_fourths,
          .fraction = or_zero(minus, mixed(near_64ths / common, 64 / common)),
          .thirty_seconds = or_zero(minus, mixed(near_32nds, 32)),
          .thousandths = (thou == 0 ? "" : minus) + in_thousandths_of_an_inch(thou),
          .inches = (ten_thousandths == "0.0000" ? "" : minus) + ten_thousandths + " in",
          .millimetres = (hundredths == "0.00" ? "" : minus) + hundredths + " mm"};
}

}  // namespace tailblock
