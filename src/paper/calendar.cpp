#include "paper/calendar.h"

#include <cstdio>
#include <set>

#include "paper/document_text.h"

namespace tailblock {
namespace {

constexpr std::size_t most_octets = 75;

/// Backslash, comma, semicolon and line end mean something in a value.
std::string escaped(const std::string& text) {
  std::string safe;
  for (const char c : text) {
    if (c == '\r') continue;
    if (c == '\n') {
      safe += "\\n";
      continue;
    }
    if (c == '\\' || c == ',' || c == ';') safe += '\\';
    safe += c == '\t' ? ' ' : c;
  }
  return safe;
}

bool within_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

class Lines {
 public:
  /// One content line, folded; the space that begins a continued line counts.
  void add(const std::string& line) {
    std::size_t from = 0, room = most_octets;
    while (line.size() - from > room) {
      std::size_t to = from + room;
      while (within_character(line[to])) --to;
      text_ += line.substr(from, to - from) + "\r\n ";
      from = to;
      room = most_octets - 1;
    }
    text_ += line.substr(from) + "\r\n";
  }
  void add_text(const std::string& name, const std::string& value) {
    if (!value.empty()) add(name + ":" + escaped(value));
  }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

std::string day_digits(Date day) {
  std::string digits;
  for (const char c : iso_date(day)) {
    if (c != '-') digits += c;
  }
  return digits;
}

std::string instant(std::chrono::sys_seconds at) {
  const Date day = std::chrono::floor<std::chrono::days>(at);
  const std::chrono::hh_mm_ss time(at - day);
  char clock[16];
  std::snprintf(clock, sizeof clock, "T%02d%02d%02dZ", static_cast<int>(time.hours().count()),
                static_cast<int>(time.minutes().count()), static_cast<int>(time.seconds().count()));
  return day_digits(day) + clock;
}

void add_when(Lines& lines, const AllDay& days) {
  lines.add("DTSTART;VALUE=DATE:" + day_digits(days.first));
  lines.add("DTEND;VALUE=DATE:" + day_digits(days.last + std::chrono::days(1)));  // the first day after it
}

void add_when(Lines& lines, const Timed& timed) {
  lines.add("DTSTART:" + instant(timed.from));
  if (timed.lasts.count() > 0) lines.add("DTEND:" + instant(timed.from + timed.lasts));
}

void add_event(Lines& lines, const CalendarEvent& event) {
  lines.add("BEGIN:VEVENT");
  lines.add_text("UID", event.uid);
  lines.add("DTSTAMP:" + instant(event.stamped));
  std::visit([&](const auto& when) { add_when(lines, when); }, event.when);
  lines.add_text("SUMMARY", event.title);
  lines.add_text("DESCRIPTION", event.about);
  lines.add_text("LOCATION", event.place);
  lines.add_text("CATEGORIES", event.category);
  lines.add("SEQUENCE:" + std::to_string(event.changes));
  lines.add(event.called_off ? "STATUS:CANCELLED" : "STATUS:CONFIRMED");
  lines.add("TRANSP:TRANSPARENT");
  lines.add("END:VEVENT");
}

void require_sensible(const CalendarEvent& event, const std::string& where) {
  for (const auto& [name, text] :
       {std::pair{"uid", &event.uid}, std::pair{"title", &event.title}, std::pair{"about", &event.about},
        std::pair{"place", &event.place}, std::pair{"category", &event.category}}) {
    require_text(where + name, *text);
  }
  if (event.uid.empty()) throw Refused(where + "uid: is empty");
  if (event.title.empty()) throw Refused(where + "title: is empty");
  if (event.changes < 0) throw Refused(where + "changes: " + std::to_string(event.changes) + " is below 0");
  const auto* days = std::get_if<AllDay>(&event.when);
  if (days != nullptr && days->last < days->first) {
    throw Refused(where + "last: " + iso_date(days->last) + " is before first, " + iso_date(days->first));
  }
  const auto* timed = std::get_if<Timed>(&event.when);
  if (timed != nullptr && timed->lasts.count() < 0) {
    throw Refused(where + "lasts: " + std::to_string(timed->lasts.count()) + " min is below 0");
  }
}

}  // namespace

std::string calendar_file(const Calendar& calendar) {
  require_text("name", calendar.name);
  std::set<std::string> uids;
  for (std::size_t i = 0; i < calendar.events.size(); ++i) {
    const std::string where = "events[" + std::to_string(i) + "].";
    require_sensible(calendar.events[i], where);
    if (!uids.insert(calendar.events[i].uid).second) {
      throw Refused(where + "uid: " + calendar.events[i].uid + " is said twice");
    }
  }
  Lines lines;
  lines.add("BEGIN:VCALENDAR");
  lines.add("VERSION:2.0");
  lines.add("PRODID:-//Tailblock//Bench book//EN");
  lines.add("CALSCALE:GREGORIAN");
  lines.add_text("NAME", calendar.name);
  lines.add("REFRESH-INTERVAL;VALUE=DURATION:PT15M");
  for (const CalendarEvent& event : calendar.events) add_event(lines, event);
  lines.add("END:VCALENDAR");
  return lines.text();
}

}  // namespace tailblock
