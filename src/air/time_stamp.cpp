#include "air/time_stamp.h"

namespace tailblock {
namespace {

bool is_digit(char c) { return '0' <= c && c <= '9'; }
char lower(char c) { return 'A' <= c && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// Takes characters from the front.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : rest_(text) {}

  [[nodiscard]] bool done() const { return rest_.empty(); }

  bool take(char c) {
    if (rest_.empty() || lower(rest_.front()) != c) return false;
    rest_.remove_prefix(1);
    return true;
  }

  void spaces() {
    while (take(' ') || take('\t')) {
    }
  }

  struct Number {
    int value;
    int digits;
  };

  /// One to four digits.
  std::optional<Number> number() {
    Number number{.value = 0, .digits = 0};
    while (!rest_.empty() && is_digit(rest_.front())) {
      if (++number.digits > 4) return std::nullopt;
      number.value = number.value * 10 + (rest_.front() - '0');
      rest_.remove_prefix(1);
    }
    return number.digits > 0 ? std::optional(number) : std::nullopt;
  }

  void fraction() {
    const std::string_view before = rest_;
    if (!take('.') && !take(',')) return;
    if (rest_.empty() || !is_digit(rest_.front())) {
      rest_ = before;
      return;
    }
    while (!rest_.empty() && is_digit(rest_.front())) rest_.remove_prefix(1);
  }

 private:
  std::string_view rest_;
};

/// `am`, `p.m.`; absent when there is none.
std::optional<bool> afternoon(Scanner& scan) {
  const bool pm = scan.take('p');
  if (!pm && !scan.take('a')) return std::nullopt;
  scan.take('.');
  scan.take('m');
  scan.take('.');
  return pm;
}

std::optional<std::chrono::seconds> clock(Scanner& scan) {
  const auto hour = scan.number();
  if (!hour || !scan.take(':')) return std::nullopt;
  const auto minute = scan.number();
  if (!minute || minute->digits != 2 || minute->value > 59) return std::nullopt;
  int second = 0;
  if (scan.take(':')) {
    const auto read = scan.number();
    if (!read || read->digits != 2 || read->value > 60) return std::nullopt;
    second = read->value;
    scan.fraction();
  }
  scan.spaces();
  int hours = hour->value;
  if (const auto pm = afternoon(scan)) {
    if (hours < 1 || hours > 12) return std::nullopt;
    hours = hours % 12 + (*pm ? 12 : 0);
  }
  if (hours > 24) return std::nullopt;
  return std::chrono::seconds(hours * 3600 + minute->value * 60 + second);
}

/// Passes over `Z`, `UTC`, `GMT`, `+01:00`, `-0500`; false when something else is left.
bool zone_then_end(Scanner& scan) {
  scan.spaces();
  if (scan.take('z')) return scan.done();
  if (scan.take('u')) return scan.take('t') && scan.take('c') && scan.done();
  if (scan.take('g') && !(scan.take('m') && scan.take('t'))) return false;
  if (scan.take('+') || scan.take('-')) {
    if (!scan.number()) return false;
    if (scan.take(':') && !scan.number()) return false;
  }
  return scan.done();
}

/// The three numbers of a date and the mark between them.
std::optional<WrittenStamp> date(Scanner& scan) {
  const auto a = scan.number();
  if (!a) return std::nullopt;
  const char mark = scan.take('-') ? '-' : scan.take('/') ? '/' : scan.take('.') ? '.' : '\0';
  if (mark == '\0') return std::nullopt;
  const auto b = scan.number();
  if (!b || b->digits > 2 || !scan.take(mark)) return std::nullopt;
  const auto c = scan.number();
  if (!c) return std::nullopt;
  WrittenStamp stamp{};
  if (a->digits == 4 && c->digits <= 2) {
    stamp.year = a->value;
    stamp.first = b->value;
    stamp.second = c->value;
    stamp.order = DayOrder::month_first;
    return stamp;
  }
  if (a->digits > 2 || (c->digits != 4 && c->digits != 2)) return std::nullopt;
  stamp.year = c->digits == 2 ? 2000 + c->value : c->value;
  stamp.first = a->value;
  stamp.second = b->value;
  if (mark == '.') stamp.order = DayOrder::day_first;
  return stamp;
}

}  // namespace

std::optional<WrittenStamp> read_stamp(std::string_view text) {
  Scanner scan(text);
  scan.spaces();
  auto stamp = date(scan);
  if (!stamp) return std::nullopt;
  const bool marked = scan.take('t') || scan.take(',');
  scan.spaces();
  if (scan.done()) return marked ? std::nullopt : stamp;
  const auto of_day = clock(scan);
  if (!of_day || !zone_then_end(scan)) return std::nullopt;
  stamp->of_day = *of_day;
  stamp->has_clock = true;
  return stamp;
}

std::optional<std::chrono::seconds> read_clock(std::string_view text) {
  Scanner scan(text);
  scan.spaces();
  const auto of_day = clock(scan);
  if (!of_day || !zone_then_end(scan)) return std::nullopt;
  return of_day;
}

std::optional<WallTime> wall_time(const WrittenStamp& stamp, DayOrder order) {
  const bool month_first = stamp.order.value_or(order) == DayOrder::month_first;
  const int month = month_first ? stamp.first : stamp.second;
  const int day = month_first ? stamp.second : stamp.first;
  if (stamp.year < 1970 || stamp.year > 2199 || month < 1 || month > 12 || day < 1 || day > 31) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year(stamp.year),
                                         std::chrono::month(static_cast<unsigned>(month)),
                                         std::chrono::day(static_cast<unsigned>(day))};
  if (!date.ok()) return std::nullopt;
  return WallTime(std::chrono::sys_days(date)) + stamp.of_day;
}

}  // namespace tailblock
