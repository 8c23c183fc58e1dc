#include "air/logger_file.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace tailblock {
namespace {

/// A day of hourly readings at one temperature and humidity, written by `line(hour)`.
template <class Line>
std::string hourly(Line line) {
  std::string text;
  for (int hour = 0; hour < 24; ++hour) text += line(hour) + "\n";
  return text;
}

std::string two(int number) { return std::to_string(100 + number).substr(1); }

void has_one_day(const LoggerReport& report, const std::string& day, double temperature_c, double humidity) {
  ASSERT_EQ(report.days.size(), 1U);
  EXPECT_EQ(iso_date(report.days[0].date), day);
  EXPECT_NEAR(report.days[0].temperature_c, temperature_c, 1e-9);
  EXPECT_NEAR(report.days[0].relative_humidity, humidity, 1e-9);
  EXPECT_EQ(report.readings, 24);
  EXPECT_EQ(report.refused_count, 0);
  EXPECT_EQ(report.gap_count, 0);
  EXPECT_EQ(report.step_minutes, 60);
}

TEST(LoggerFile, reads_commas_with_points_and_iso_stamps) {
  const std::string text =
      "\xEF\xBB\xBFTime,Temperature (\xC2\xB0"
      "C),Humidity (%rh),Dew Point (\xC2\xB0"
      "C)\r\n" +
      hourly([](int h) { return "2024-01-31T" + two(h) + ":00:00Z,20.5,41.0,6.9\r"; });
  has_one_day(read_logger_file({.text = text}), "2024-01-31", 20.5, 0.41);
}

TEST(LoggerFile, reads_semicolons_with_decimal_commas_and_days_before_months) {
  const std::string text =
      "Datum;Uhrzeit;Temp. [\xB0"
      "C];rel. Feuchte [%]\n" +
      hourly([](int h) { return "31.1.2024;" + two(h) + ":00;20,5;41,0"; });
  const LoggerReport report = read_logger_file({.text = text});
  has_one_day(report, "2024-01-31", 20.5, 0.41);
  EXPECT_EQ(report.columns,
            "time from column 1 \"Datum\", clock from column 2 \"Uhrzeit\", temperature from column 3 "
            "\"Temp. [?C]\", humidity from column 4 \"rel. Feuchte [%]\"");
}

TEST(LoggerFile, reads_tabs_fahrenheit_and_clocks_of_twelve_hours) {
  const std::string text =
      "Date Time\tTemperature_F\tRH\n" + hourly([](int h) {
        const int twelve = h % 12 == 0 ? 12 : h % 12;
        return "1/31/24 " + std::to_string(twelve) + ":00 " + (h < 12 ? "AM" : "PM") + "\t68.0\t41";
      });
  const LoggerReport report = read_logger_file({.text = text});
  has_one_day(report, "2024-01-31", 20, 0.41);
  EXPECT_EQ(report.first, "2024-01-31 00:00");
  EXPECT_EQ(report.last, "2024-01-31 23:00");
  EXPECT_EQ(report.notes.at(0), "Dates were read month before day, as line 2 can be read no other way.");
}

TEST(LoggerFile, reads_units_in_the_cells_quotes_and_a_preamble) {
  const std::string text =
      "Logger: front room\nSerial,12345\n\n\"#\",\"Date Time, GMT+01:00\",\"Temp\",\"RH\"\n" + hourly([](int h) {
        return "1,\"2024-01-31 " + two(h) +
               ":00\",\"20,5 \xC2\xB0"
               "C\",\"41,0 %\"";
      });
  const LoggerReport report = read_logger_file({.text = text});
  has_one_day(report, "2024-01-31", 20.5, 0.41);
  EXPECT_EQ(report.preamble_lines, 4);
}

TEST(LoggerFile, reads_sixteen_bit_text) {
  std::string text = "\xFF\xFE";
  for (const char c : "time;temp C;rh\n" + hourly([](int h) { return "2024-01-31 " + two(h) + ":00;20,5;41"; })) {
    text += c;
    text += '\0';
  }
  has_one_day(read_logger_file({.text = text}), "2024-01-31", 20.5, 0.41);
}

TEST(LoggerFile, tells_a_dew_point_from_a_temperature) {
  const std::string text = "Time,Dew Point (C),Humidity at temp. (%),Temperature (C)\n" +
                           hourly([](int h) { return "2024-01-31 " + two(h) + ":00,6.9,41,20.5"; });
  has_one_day(read_logger_file({.text = text}), "2024-01-31", 20.5, 0.41);
}

TEST(LoggerFile, takes_stated_columns_where_none_are_named) {
  const std::string text = hourly([](int h) { return "41.0,2024-01-31 " + two(h) + ":00,20.5"; });
  const LoggerReport report = read_logger_file({.text = text,
                                                .temperature_unit = TemperatureUnit::celsius,
                                                .columns = {.time = 2, .temperature = 3, .humidity = 1}});
  has_one_day(report, "2024-01-31", 20.5, 0.41);
}

TEST(LoggerFile, applies_the_loggers_own_correction) {
  const std::string text = "time,temp C,rh\n" + hourly([](int h) { return "2024-01-31 " + two(h) + ":00,20,44"; });
  const LoggerReport report = read_logger_file({.text = text, .correction = {.offset = -0.03, .slope = 1}});
  EXPECT_NEAR(report.days.at(0).relative_humidity, 0.41, 1e-12);
}

const std::string sound_day = "time,temp C,rh\n" + hourly([](int h) { return "2024-01-31 " + two(h) + ":00,20.5,41"; });

void refuses_line(const std::string& line, const std::string& reason) {
  const LoggerReport report = read_logger_file({.text = sound_day + line + "\n"});
  ASSERT_EQ(report.refused.size(), 1U) << line;
  EXPECT_EQ(report.refused[0].line, 26);
  EXPECT_EQ(report.refused[0].text, line);
  EXPECT_EQ(report.refused[0].reason, reason);
  ASSERT_EQ(report.days.size(), 1U);
  EXPECT_NEAR(report.days[0].relative_humidity, 0.41, 1e-12) << "a refused line was used";
}

TEST(LoggerFile, says_of_each_line_not_used_why) {
  refuses_line("2024-01-31 23:00,20.5,41", "has the same time as line 25");
  refuses_line("2024-01-31 23:30,20.5,130", "has an impossible humidity: 130 %");
  refuses_line("2024-01-31 23:30,20.5,0.41", "has an impossible humidity: 0.41 %");
  refuses_line("2024-01-31 23:30,205,41", "has an impossible temperature: 205 C");
  refuses_line("2024-01-31 23:30,--,41", "has no temperature: \"--\"");
  refuses_line("2024-01-31 23:30,20.5,", "has no humidity: \"\"");
  refuses_line("2024-01-31 23:30,20.5,NaN", "has no humidity: \"NaN\"");
  refuses_line("2024-01-31 23:30,20.5", "has too few cells");
  refuses_line("2024-01-31 23:30,20,5,41",
               "has more cells than columns: decimal commas and commas between cells cannot "
               "be told apart");
  refuses_line("2024-02-30 23:30,20.5,41", "has a day that does not exist");
  refuses_line("yesterday,20.5,41", "has a time that cannot be read: \"yesterday\"");
  refuses_line("2024-01-31 25:30,20.5,41", "has a time that cannot be read: \"2024-01-31 25:30\"");
}

TEST(LoggerFile, reports_gaps_and_leaves_thin_days_out) {
  std::string text = "time,temp C,rh\n";
  for (const char* day : {"01", "02", "05"}) {
    text += hourly([&](int h) { return std::string("2024-03-") + day + " " + two(h) + ":00,20,40"; });
  }
  text += "2024-03-06 00:00,20,90\n2024-03-06 01:00,20,90\n";
  const LoggerReport report = read_logger_file({.text = text});
  ASSERT_EQ(report.days.size(), 3U);
  ASSERT_EQ(report.gaps.size(), 1U);
  EXPECT_EQ(report.gaps[0].from, "2024-03-02 23:00");
  EXPECT_EQ(report.gaps[0].to, "2024-03-05 00:00");
  EXPECT_EQ(report.gaps[0].hours, 49);
  ASSERT_EQ(report.thin_days.size(), 1U);
  EXPECT_EQ(iso_date(report.thin_days[0].date), "2024-03-06");
  EXPECT_EQ(report.thin_days[0].readings, 2);
  EXPECT_EQ(report.thin_days[0].expected, 24);
}

TEST(LoggerFile, one_reading_a_day_by_hand_is_enough) {
  const LoggerReport report =
      read_logger_file({.text = "date,temp C,rh\n2024-03-01,20,40\n2024-03-02,20,41\n2024-03-04,20,42\n"});
  EXPECT_EQ(report.days.size(), 3U);
  EXPECT_EQ(report.step_minutes, 2880);
}

TEST(LoggerFile, lines_out_of_order_are_sorted_and_said) {
  const LoggerReport report =
      read_logger_file({.text = "date,temp C,rh\n2024-03-02,20,41\n2024-03-01,20,40\n2024-03-03,20,42\n"});
  EXPECT_EQ(iso_date(report.days[0].date), "2024-03-01");
  EXPECT_EQ(report.notes.at(0), "The lines were not in order of time and were sorted.");
}

TEST(LoggerFile, a_run_of_days_tells_which_number_is_the_day) {
  const LoggerReport report =
      read_logger_file({.text = "date,temp C,rh\n01/02/2024,20,40\n02/02/2024,20,41\n03/02/2024,20,42\n"});
  EXPECT_EQ(iso_date(report.days[2].date), "2024-02-03");
  EXPECT_EQ(report.notes.at(0), "Dates were read day before month, since the readings jump otherwise.");
}

void refuses(const LoggerFile& file, const std::string& line) {
  try {
    (void)read_logger_file(file);
    FAIL() << "accepted what should read: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(LoggerFile, what_the_file_does_not_tell_is_refused_unless_stated) {
  LoggerFile file{.text = "date,temp,rh\n3/4/2024,68,40\n"};
  refuses(file, "text: the file does not say whether its temperatures are in C or F: say which");
  file.temperature_unit = TemperatureUnit::fahrenheit;
  refuses(file, "text: dates such as line 2's can be read as day and month or as month and day: say which comes first");
  file.day_order = DayOrder::month_first;
  EXPECT_EQ(iso_date(read_logger_file(file).days.at(0).date), "2024-03-04");
  file.day_order = DayOrder::day_first;
  EXPECT_EQ(iso_date(read_logger_file(file).days.at(0).date), "2024-04-03");
}

TEST(LoggerFile, refuses_a_file_it_cannot_use) {
  refuses({.text = ""}, "text: no line names a temperature and a humidity column: say which columns they are");
  refuses({.text = "2024-01-31 10:00,20,41\n"},
          "text: no line names a temperature and a humidity column: say which columns they are");
  refuses({.text = "time,temp C,rh\n"}, "text: no line can be used");
  refuses({.text = "time,temp C,rh\nx,20,41\n"},
          "text: no line can be used: line 2 has a time that cannot be read: \"x\"");
  refuses({.text = "time,temp C,rh\n13/1/2024,20,41\n1/13/2024,20,41\n"},
          "text: line 2 has the day before the month and line 3 the month before the day: say which it is");
}

TEST(LoggerFile, a_stated_unit_outweighs_the_heading_and_says_so) {
  const LoggerReport report =
      read_logger_file({.text = "date,temp C,rh\n2024-03-01,68,40\n", .temperature_unit = TemperatureUnit::fahrenheit});
  EXPECT_NEAR(report.days.at(0).temperature_c, 20, 1e-9);
  EXPECT_EQ(report.notes.at(0), "The heading names another unit of temperature than the one stated, which was taken.");
}

void survives(const std::string& text) {
  try {
    const LoggerReport report = read_logger_file({.text = text, .temperature_unit = TemperatureUnit::celsius});
    for (const LoggedDay& day : report.days) {
      RC_ASSERT(day.temperature_c >= -40 && day.temperature_c <= 60);
      RC_ASSERT(day.relative_humidity >= 0.01 && day.relative_humidity <= 1);
    }
  } catch (const Refused& refused) {
    RC_ASSERT(std::string(refused.what()).find('\n') == std::string::npos);
  }
}

RC_GTEST_PROP(LoggerFile, any_bytes_are_read_or_refused, (const std::string& bytes)) { survives(bytes); }

RC_GTEST_PROP(LoggerFile, any_text_of_its_own_pieces_is_read_or_refused, ()) {
  const auto piece =
      rc::gen::element<std::string>("time,temp C,rh\n", "2024-01-31", "3/4/2024", " 10:00", ",20.5,41", "\n", ";", "\t",
                                    "\"", "1e9", "-", "%", "C", "\xC2\xB0", "PM", "\r", ".");
  std::string text = "time,temp C,rh\n";
  for (const std::string& part : *rc::gen::container<std::vector<std::string>>(piece)) text += part;
  survives(text);
}

TEST(TimeStamp, reads_the_common_forms_and_nothing_else) {
  const auto seconds = [](const char* text) { return read_stamp(text)->of_day.count(); };
  EXPECT_EQ(seconds("2024-01-31 06:30"), 23400);
  EXPECT_EQ(seconds("2024/01/31 06:30:15.250"), 23415);
  EXPECT_EQ(seconds("2024-01-31T06:30:15,25+01:00"), 23415);
  EXPECT_EQ(seconds("31.1.2024, 6:30"), 23400);
  EXPECT_EQ(seconds("1/31/2024 12:30 AM"), 1800);
  EXPECT_EQ(seconds("1-31-24 12:30 p.m."), 45000);
  EXPECT_EQ(seconds("2024-01-31 06:30 UTC"), 23400);
  for (const char* text :
       {"", "2024-01", "2024-1-31-5", "2024-01-31T", "2024-01-31 6", "31/1.2024", "31.1.024", "1/31/2024 13:30 PM",
        "2024-01-31 06:60", "2024-01-31 06:30 x", "20240131", "2024-01-31 06:30 gm"}) {
    EXPECT_FALSE(read_stamp(text)) << text;
  }
}

}  // namespace
}  // namespace tailblock
