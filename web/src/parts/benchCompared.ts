import type { BenchAnswer } from "../api/benchShapes";
import { dayNumber } from "../trade/day";

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
