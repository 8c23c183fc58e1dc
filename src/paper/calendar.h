#pragma once

#include <chrono>
#include <string>
#include <variant>
#include <vector>

#include "quantity/date.h"

namespace tailblock {

/// Whole days of the shop's wall calendar, the last one included.
struct AllDay {
  Date first, last;
};

/// From an instant on. Instants are UTC: an event of the bench happens once, and the calendar that shows it knows its
/// own zone. A file in the shop's zone would have to carry that zone's rules (VTIMEZONE) and would be wrong when they
/// change.
struct Timed {
  std::chrono::sys_seconds from;
  std::chrono::minutes lasts{0};
};

struct CalendarEvent {
  std::string uid;  ///< the same for the same promise or cure as long as it lives: `promise-41@...`
  std::string title;
  std::string about{}, place{};
  std::string category{};  ///< `Promise`, `Cure`
  std::variant<AllDay, Timed> when;
  std::chrono::sys_seconds stamped{};  ///< when what it says was last said; no clock is read here
  int changes = 0;                     ///< how often it was moved; calendars take the highest
  bool called_off = false;             ///< kept in the feed so that calendars take it away
};

struct Calendar {
  std::string name;
  std::vector<CalendarEvent> events{};
};

/// The events as one file or feed that every calendar reads: iCalendar, RFC 5545, with the calendar's name and how
/// often to ask again by RFC 7986 (both from memory, section numbers not checked; accepted by an independent parser in
/// the tests). Lines end in CRLF and are folded at 75 octets, never inside a character. Promises leave the day free
/// (TRANSPARENT). The same facts give the same bytes, whenever they are asked for.
/// @throws Refused when a UID is empty or said twice, a title is empty, an event ends before it begins, or a text is
/// not text.
[[nodiscard]] std::string calendar_file(const Calendar& calendar);

}  // namespace tailblock
