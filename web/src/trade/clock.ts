import type { Moment } from "../api/jobShapes";
import { dayNumber, shortDay } from "./day";

/** Hands-on time as a bench says it: `5 min`, `1 h 10`. */
export function spokenMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  const rest = whole % 60;
  return rest === 0 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${rest}`;
}

/** A wait: `40 min`, `3 h`, `2 days`. */
export function spokenWait(minutes: number): string {
  if (minutes < 24 * 60) return spokenMinutes(minutes);
  const days = Math.round((minutes / (24 * 60)) * 10) / 10;
  return days === 1 ? "1 day" : `${days} days`;
}

/** `10–15–25 min`: seldom less, as usual, seldom more. */
export function spread(low: number, usual: number, high: number, spoken: (minutes: number) => string): string {
  if (low === high) return spoken(usual);
  return `${spoken(usual)} (${spoken(low)} to ${spoken(high)})`;
}

export function minutesBetween(from: Moment, to: Moment): number {
  return (dayNumber(to.day) - dayNumber(from.day)) * 24 * 60 + to.minute - from.minute;
}

export function clockTime(minute: number): string {
  return `${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, "0")}`;
}

/** `15:40` today, else `21 Feb 9:10`. */
export function spokenMoment(moment: Moment, now: Moment): string {
  const time = clockTime(moment.minute);
  return moment.day === now.day ? time : `${shortDay(moment.day)} ${time}`;
}
