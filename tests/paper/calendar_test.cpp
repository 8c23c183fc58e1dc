#include "paper/calendar.h"

#include <gtest/gtest.h>

#include "examples.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

using namespace std::chrono;

/// The lines of a file after its folds are undone; fails where a line does not end in CRLF or is over 75 octets.
std::vector<std::string> unfolded(const std::string& file) {
  std::vector<std::string> lines;
  std::size_t from = 0;
  while (from < file.size()) {
    const std::size_t end = file.find("\r\n", from);
    if (end == std::string::npos) {
      ADD_FAILURE() << "a line without its end";
      break;
    }
    const std::string line = file.substr(from, end - from);
    EXPECT_LE(line.size(), 75U) << line;
    EXPECT_EQ(line.find_first_of("\r\n"), std::string::npos) << line;
    if (!line.empty() && line[0] == ' ' && !lines.empty()) {
      EXPECT_NE(static_cast<unsigned char>(line[1]) & 0xC0U, 0x80U) << "a fold within a character: " << line;
      lines.back() += line.substr(1);
    } else {
      lines.push_back(line);
    }
    from = end + 2;
  }
  return lines;
}

bool has(const std::vector<std::string>& lines, const std::string& line) {
  return std::find(lines.begin(), lines.end(), line) != lines.end();
}

Calendar with(CalendarEvent event) {
  return {.name = "shop", .events = {std::move(event)}};
}

CalendarEvent cure(const std::string& title) {
  return {.uid = "1@x", .title = title, .when = Timed{sys_days(2026y / 3 / 29) + 1h + 30min}};
}

std::string refusal(const Calendar& calendar) {
  try {
    (void)calendar_file(calendar);
  } catch (const Refused& refused) {
    return refused.what();
  }
  return "";
}

TEST(Calendar, says_instants_in_utc_and_days_without_a_time) {
  const auto lines = unfolded(calendar_file(testing::example_calendar()));
  for (const char* line : {"BEGIN:VCALENDAR", "VERSION:2.0", "DTSTAMP:20260220T080500Z", "DTSTART;VALUE=DATE:20260227",
                           "DTEND;VALUE=DATE:20260228", "DTSTART:20260221T073000Z", "DTEND:20260221T074500Z",
                           "DTSTART:20260228T235900Z", "STATUS:CANCELLED", "SEQUENCE:2", "END:VCALENDAR"}) {
    EXPECT_TRUE(has(lines, line)) << line;
  }
}

TEST(Calendar, ends_a_promise_of_some_days_with_the_first_day_after_it) {
  CalendarEvent event = cure("x");
  event.when = AllDay{testing::on(2026, 2, 27), testing::on(2026, 3, 2)};
  const auto lines = unfolded(calendar_file(with(event)));
  EXPECT_TRUE(has(lines, "DTEND;VALUE=DATE:20260303"));
}

TEST(Calendar, escapes_what_means_something_in_a_value) {
  const auto lines = unfolded(calendar_file(with(cure("a,b;c\\d\r\ne\tf:\"g\""))));
  EXPECT_TRUE(has(lines, "SUMMARY:a\\,b\\;c\\\\d\\ne f:\"g\""));
}

TEST(Calendar, folds_at_75_octets_and_never_within_a_character) {
  for (const std::string& character : {std::string("a"), std::string("é"), std::string("日"), std::string("𝄞")}) {
    for (std::size_t shift = 0; shift < 5; ++shift) {
      std::string title(shift, 'x');
      for (int i = 0; i < 200; ++i) title += character;
      EXPECT_TRUE(has(unfolded(calendar_file(with(cure(title)))), "SUMMARY:" + title)) << character << shift;
    }
  }
}

TEST(Calendar, folds_no_line_of_exactly_75_octets) {
  const std::string title(75 - std::string("SUMMARY:").size(), 'a');
  EXPECT_NE(calendar_file(with(cure(title))).find("SUMMARY:" + title + "\r\n"), std::string::npos);
  EXPECT_NE(calendar_file(with(cure(title + "b"))).find("SUMMARY:" + title + "\r\n b\r\n"), std::string::npos);
}

TEST(Calendar, is_the_same_file_for_the_same_book) {
  EXPECT_EQ(calendar_file(testing::example_calendar()), calendar_file(testing::example_calendar()));
}

TEST(Calendar, refuses_what_calendars_would_misread) {
  CalendarEvent event = cure("x");
  event.uid = "";
  EXPECT_EQ(refusal(with(event)), "events[0].uid: is empty");
  EXPECT_EQ(refusal(with(cure(""))), "events[0].title: is empty");
  EXPECT_EQ(refusal(with(cure("\x01"))), "events[0].title: byte 1 is a control character");
  event = cure("x");
  event.when = AllDay{testing::on(2026, 2, 27), testing::on(2026, 2, 26)};
  EXPECT_EQ(refusal(with(event)), "events[0].last: 2026-02-26 is before first, 2026-02-27");
  event.when = Timed{sys_days(2026y / 3 / 29), minutes(-1)};
  EXPECT_EQ(refusal(with(event)), "events[0].lasts: -1 min is below 0");
  Calendar twice = with(cure("x"));
  twice.events.push_back(cure("y"));
  EXPECT_EQ(refusal(twice), "events[1].uid: 1@x is said twice");
}

}  // namespace
}  // namespace tailblock
