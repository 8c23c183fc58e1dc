import type { BenchAnswer, BenchWork, PlannedOperation } from "../api/benchShapes";
import { minutesAt } from "../trade/clock";

/** An operation of the plan with what it is in the book. */
export interface AtTheBench {
  readonly planned: PlannedOperation;
  readonly work: BenchWork;
}

const named = (of: { readonly instrument: string; readonly operation: string }): string =>
  `${of.instrument}\n${of.operation}`;

export function inOrder(answer: BenchAnswer): AtTheBench[] {
  const works = new Map(answer.work.map((work) => [named(work), work]));
  return (answer.plan?.operations ?? []).flatMap((planned) => {
    const work = works.get(named(planned));
    return work ? [{ planned, work }] : [];
  });
}

/** What a person's hands are at, or nothing; then what they take up, in order. */
export function handsOf(answer: BenchAnswer, person: string): { at: BenchWork | undefined; coming: AtTheBench[] } {
  const at = answer.work.find((work) => work.running_spell !== 0 && work.running_person === person);
  const coming = inOrder(answer).filter(
    ({ planned, work }) => planned.person === person && work.running_spell === 0 && work.state !== "waiting",
  );
  return { at, coming };
}

/** People of the shop, and whoever else has hands at something. */
export function peopleAtWork(answer: BenchAnswer): string[] {
  const known = answer.people.map((person) => person.name);
  const others = answer.work
    .filter((work) => work.running_spell !== 0 && !known.includes(work.running_person))
    .map((work) => work.running_person);
  return [...known, ...new Set(others)];
}

/** What waits by itself: glue, drying, settling; soonest first. */
export function curing(answer: BenchAnswer, now: number): { work: BenchWork; ends: number }[] {
  return answer.work
    .flatMap((work) => (work.state === "waiting" && work.wait_ends ? [{ work, ends: minutesAt(work.wait_ends) }] : []))
    .filter(({ ends }) => ends > now)
    .sort((a, b) => a.ends - b.ends);
}

/** The next operation of each instrument that hands could take up at once: for work out of the plan's turn. */
export function couldBeTakenUp(answer: BenchAnswer): BenchWork[] {
  const seen = new Set<string>();
  const next: BenchWork[] = [];
  for (const work of answer.work) {
    if (seen.has(work.instrument)) continue;
    seen.add(work.instrument);
    if (work.state === "to_do" || (work.state === "at_work" && work.running_spell === 0)) next.push(work);
  }
  return next;
}
