import type { Moment } from "../api/benchShapes";
import { dayNumber, isoDay, shortDay } from "./day";

/** Moments of the shop's wall clock. Where they are drawn or reckoned with they are whole minutes since 1970. */
const minutesPerDay = 1440;
const weekdays = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;

export const weekdayNames: readonly string[] = [
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
  "Sunday",
];

export function minutesAt(moment: Moment): number {
  return dayNumber(moment.day) * minutesPerDay + moment.minute;
}

export function momentAt(minutes: number): Moment {
  const day = Math.floor(minutes / minutesPerDay);
  return { day: isoDay(day), minute: Math.round(minutes - day * minutesPerDay) };
}

/** 1 for Monday. 1 January 1970 was a Thursday. */
export function weekdayOf(day: number): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/** `9:05`. */
export function spokenTime(minute: number): string {
  return `${Math.floor(minute / 60)}:${String(Math.floor(minute % 60)).padStart(2, "0")}`;
}

/** `Tue 24 Feb`. */
export function spokenWeekday(iso: string): string {
  return `${weekdays[weekdayOf(dayNumber(iso)) - 1]} ${shortDay(iso)}`;
}

/** `Tue 24 Feb` or, near, `today` and `tomorrow`. */
export function nearDay(iso: string, today: string): string {
  const ahead = dayNumber(iso) - dayNumber(today);
  if (ahead === 0) return "today";
  if (ahead === 1) return "tomorrow";
  return spokenWeekday(iso);
}

/** `today at 17:30`. */
export function spokenMoment(moment: Moment, today: string): string {
  return `${nearDay(moment.day, today)} at ${spokenTime(moment.minute)}`;
}

/** `25 min`, `6 h 50 min`, `2 days 3 h`. */
export function spokenSpan(minutes: number): string {
  const whole = Math.max(0, Math.round(minutes));
  const days = Math.floor(whole / minutesPerDay);
  const hours = Math.floor((whole % minutesPerDay) / 60);
  const left = whole % 60;
  if (days > 0) return `${days === 1 ? "1 day" : `${days} days`}${hours > 0 ? ` ${hours} h` : ""}`;
  if (hours > 0) return `${hours} h${left > 0 ? ` ${left} min` : ""}`;
  return `${left} min`;
}

/** A sentence of the program with its ISO days said as people say them. */
export function daysSpoken(sentence: string): string {
  return sentence.replace(/\b\d{4}-\d{2}-\d{2}\b/g, (iso) => spokenWeekday(iso));
}

/** `9:00-12:30, 13:00-17:30` as minutes; undefined where that is not what is written. Empty: no hours. */
export function hoursFrom(text: string): { from: number; to: number }[] | undefined {
  const parts = text
    .split(/[,;]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  const read: { from: number; to: number }[] = [];
  for (const part of parts) {
    const found = /^(\d{1,2})(?:[:.](\d{2}))?\s*(?:-|–|to)\s*(\d{1,2})(?:[:.](\d{2}))?$/.exec(part);
    if (!found) return undefined;
    const from = Number(found[1]) * 60 + Number(found[2] ?? 0);
    const to = Number(found[3]) * 60 + Number(found[4] ?? 0);
    if (from >= to || to > minutesPerDay) return undefined;
    read.push({ from, to });
  }
  return read;
}
