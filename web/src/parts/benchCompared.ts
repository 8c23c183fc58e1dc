import type { BenchAnswer } from "../api/benchShapes";
import { spokenWeekday } from "../trade/clock";
import { dayNumber } from "../trade/day";
import { dayCount } from "../trade/words";

/** What taking one more instrument does to one that is on the bench. */
export interface Delayed {
  readonly name: string;
  readonly before: string;
  readonly after: string;
  /** Whole days; negative: ready sooner. */
  readonly days: number;
}

export interface Compared {
  readonly delayed: readonly Delayed[];
  readonly unmoved: number;
  /** When the one asked about would be ready. */
  readonly ready: string | undefined;
}

const mostNamed = 3;

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Whose day moved from one plan to the next, by how much and why, in a sentence or two. */
export function movedWords(before: BenchAnswer, after: BenchAnswer): string {
  const { delayed } = compared(before, after, 0);
  if (delayed.length === 0) return "No instrument's day moves.";
  const sentences = delayed.slice(0, mostNamed).map((one) => {
    const why = after.plan?.instruments.find((other) => other.name === one.name)?.why;
    const by = `${dayCount(Math.abs(one.days))} ${one.days > 0 ? "later" : "sooner"}`;
    return `${capital(one.name)} is ready ${by}, ${spokenWeekday(one.after)}${one.days > 0 && why ? `: ${why}` : ""}.`;
  });
  const others = delayed.length - mostNamed;
  if (others > 0) sentences.push(`${others === 1 ? "One more moves" : `${others} more move`} too.`);
  return sentences.join(" ");
}

export function compared(before: BenchAnswer, after: BenchAnswer, visitId: number): Compared {
  const visitOf = (answer: BenchAnswer, name: string): number | undefined =>
    answer.instruments.find((one) => one.instrument === name)?.visit_id;
  const delayed: Delayed[] = [];
  let unmoved = 0;
  for (const one of before.plan?.instruments ?? []) {
    const then = after.plan?.instruments.find((other) => visitOf(after, other.name) === visitOf(before, one.name));
    if (!then) continue;
    const days = dayNumber(then.ready.day) - dayNumber(one.ready.day);
    if (days === 0) unmoved += 1;
    else delayed.push({ name: one.name, before: one.ready.day, after: then.ready.day, days });
  }
  delayed.sort((a, b) => b.days - a.days);
  const taken = after.plan?.instruments.find((one) => visitOf(after, one.name) === visitId);
  return { delayed, unmoved, ready: taken?.ready.day };
}
