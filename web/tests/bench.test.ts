import { expect, test } from "vitest";
import type { BenchAnswer, BenchPerson, BenchWork, PlannedInstrument, PlannedOperation } from "../src/api/benchShapes";
import { svgText } from "../src/chart/svg";
import { compared, movedWords } from "../src/parts/benchCompared";
import { couldBeTakenUp, curing, handsOf, inOrder } from "../src/parts/todayWork";
import { BenchScale, benchPicture, openOn, whenOpen } from "../src/pictures/benchPicture";
import {
  daysSpoken,
  hoursFrom,
  minutesAt,
  momentAt,
  nearDay,
  spokenSpan,
  spokenTime,
  weekdayOf,
} from "../src/trade/clock";
import { dayNumber } from "../src/trade/day";

const friday = dayNumber("2026-02-20");

const person: BenchPerson = {
  name: "Ada",
  hours: [1, 2, 3, 4, 5].flatMap((weekday) => [
    { weekday, from_minute: 540, to_minute: 750 },
    { weekday, from_minute: 780, to_minute: 1050 },
  ]),
  days_off: [{ day: "2026-02-23" }],
  leaves_to_others: [],
};

function workOf(instrument: string, operation: string, more: Partial<BenchWork> = {}): BenchWork {
  return {
    instrument,
    operation,
    instrument_id: 1,
    visit_id: 1,
    job_id: 1,
    operation_id: operation,
    which: 1,
    state: "to_do",
    running_spell: 0,
    running_person: "",
    hands_on_minutes: 30,
    minutes_spent: 0,
    wait_for: "",
    holds: [],
    place: "",
    materials: "",
    adhesives: [],
    clamps: [],
    cautions: [],
    ...more,
  };
}

function planOf(instrument: string, operation: string, minute: number, wait = 0): PlannedOperation {
  const at = (add: number) => momentAt(friday * 1440 + minute + add);
  return {
    instrument,
    operation,
    person: "Ada",
    starts: at(0),
    hands_on_ends: at(30),
    wait_ends: at(30 + wait),
    pieces: [{ from: at(0), until: at(30) }],
  };
}

function readyOf(name: string, day: string): PlannedInstrument {
  return {
    name,
    ready: { day, minute: 600 },
    days_late: 0,
    days_from_now: 0,
    promise_days_later: 0,
    why: "",
  };
}

function answerOf(
  work: BenchWork[],
  operations: PlannedOperation[],
  ready: PlannedInstrument[],
  visits: readonly number[],
): BenchAnswer {
  return {
    now: { day: "2026-02-20", minute: 640 },
    people: [person],
    stations: [],
    trouble: "",
    pins_let_go: [],
    work,
    instruments: ready.map((one, i) => ({
      instrument: one.name,
      instrument_id: i + 1,
      visit_id: visits[i] ?? 0,
      weight: 1,
    })),
    left_out: [],
    held_by_air: [],
    air: [],
    plan: {
      next: [],
      operations,
      instruments: ready,
      moved_promises: [],
      overdue: [],
      overfull: [],
      cost: { late: 0, in_shop: 0, changes: 0, promises: 0, overdue: 0, total: 0, first_come: 0, best_rule: 0 },
      order: [],
      plans: 1,
      changes_of_instrument: 0,
      verdict: "",
    },
  };
}

test("moments and spans are said as people say them", () => {
  expect(weekdayOf(friday)).toBe(5);
  expect(weekdayOf(dayNumber("1969-12-28"))).toBe(7);
  expect(momentAt(minutesAt({ day: "2026-02-20", minute: 640 }))).toEqual({ day: "2026-02-20", minute: 640 });
  expect(spokenTime(545)).toBe("9:05");
  expect(nearDay("2026-02-21", "2026-02-20")).toBe("tomorrow");
  expect(nearDay("2026-02-24", "2026-02-20")).toBe("Tue 24 Feb");
  expect([25, 60, 410, 1440, 2820].map(spokenSpan)).toEqual(["25 min", "1 h", "6 h 50 min", "1 day", "1 day 23 h"]);
  expect(daysSpoken('"it" moves from 2026-02-21 to 2026-03-02')).toBe('"it" moves from Sat 21 Feb to Mon 2 Mar');
});

test("hours are read as they are written, and what is no hours is not", () => {
  expect(hoursFrom("9:00-12:30, 13:00-17:30")).toEqual([
    { from: 540, to: 750 },
    { from: 780, to: 1050 },
  ]);
  expect(hoursFrom("9-13")).toEqual([{ from: 540, to: 780 }]);
  expect(hoursFrom("")).toEqual([]);
  expect(hoursFrom("nine to five")).toBeUndefined();
  expect(hoursFrom("13-9")).toBeUndefined();
});

test("a day's hours are joined, and a day off has none", () => {
  const late: BenchPerson = { ...person, name: "Ben", hours: [{ weekday: 5, from_minute: 700, to_minute: 800 }] };
  expect(openOn([person, late], friday)).toEqual([{ from: 540, to: 1050 }]);
  expect(openOn([person], friday + 3)).toEqual([]);
});

test("the scale of the lanes goes forward, and back again to the same minute", () => {
  const scale = new BenchScale([person], friday, 7, 100);
  let before = -1;
  for (let minutes = friday * 1440; minutes < (friday + 7) * 1440; minutes += 15) {
    const x = scale.x(minutes);
    expect(x).toBeGreaterThan(before);
    expect(Math.abs(scale.minutes(x) - minutes)).toBeLessThan(1);
    before = x;
  }
  expect(scale.x((friday + 1) * 1440)).toBeCloseTo(100, 6);
});

test("hands-on work and waits are drawn apart, pins and promises marked", () => {
  const work = [workOf("one", "glue", { pinned: { day: "2026-02-20", minute: 660 } }), workOf("two", "look")];
  const answer = answerOf(
    work,
    [planOf("one", "glue", 660, 1440), planOf("two", "look", 720)],
    [readyOf("one", "2026-02-21"), readyOf("two", "2026-02-20")],
    [1, 2],
  );
  const promised: BenchAnswer = {
    ...answer,
    instruments: answer.instruments.map((one) => ({ ...one, promised: "2026-02-21", due: "2026-02-22" })),
  };
  const scale = new BenchScale([person], friday, 7, 100);
  const drawn = svgText(
    benchPicture({
      answer: promised,
      lanes: ["one", "two"],
      operations: inOrder(promised),
      scale,
      now: friday * 1440 + 640,
    }),
  );
  const count = (className: string): number => drawn.split(`class="${className}"`).length - 1;
  expect(count("hands")).toBe(2);
  expect(count("waits")).toBe(1);
  expect(count("pin-head")).toBe(1);
  expect(drawn.match(/<line class="promised"/g)?.length).toBe(2);
  expect(drawn.match(/<line class="wanted"/g)?.length).toBe(2);
  const heights = (className: string): number =>
    Number(new RegExp(`class="${className}"[^>]*height="([\\d.]+)"`).exec(drawn)?.[1]);
  expect(heights("hands")).toBeGreaterThan(heights("waits"));
});

test("whom one more delays is told by whole days", () => {
  const before = answerOf([], [], [readyOf("one", "2026-02-21"), readyOf("two", "2026-02-24")], [1, 2]);
  const after = answerOf(
    [],
    [],
    [readyOf("one", "2026-02-23"), readyOf("two", "2026-02-24"), readyOf("three", "2026-02-28")],
    [1, 2, 3],
  );
  expect(compared(before, after, 3)).toEqual({
    delayed: [{ name: "one", before: "2026-02-21", after: "2026-02-23", days: 2 }],
    unmoved: 1,
    ready: "2026-02-28",
  });
});

test("what is dropped on a night, a break or a day off is laid to the next hour anyone is in", () => {
  const at = (day: number, minute: number): number => (friday + day) * 1440 + minute;
  expect(whenOpen([person], at(0, 600))).toBe(at(0, 600));
  expect(whenOpen([person], at(0, 755))).toBe(at(0, 780));
  expect(whenOpen([person], at(0, 1050))).toBe(at(4, 540)); // Monday is a day off
  expect(whenOpen([person], at(4, 0))).toBe(at(4, 540));
});

test("what a tap moved is said: which, by how much and why", () => {
  const before = answerOf([], [], [readyOf("one", "2026-02-21"), readyOf("two", "2026-02-24")], [1, 2]);
  const late = { ...readyOf("one", "2026-02-23"), why: '"glue" waits for hands that "two" has until then' };
  const after = answerOf([], [], [late, readyOf("two", "2026-02-23")], [1, 2]);
  expect(movedWords(before, after)).toBe(
    'One is ready 2 days later, Mon 23 Feb: "glue" waits for hands that "two" has until then. Two is ready 1 day sooner, Mon 23 Feb.',
  );
  expect(movedWords(before, before)).toBe("No instrument's day moves.");
});

test("hands, what cures and what could be taken up are read off the answer", () => {
  const work = [
    workOf("one", "glue", { state: "waiting", wait_ends: { day: "2026-02-20", minute: 700 } }),
    workOf("one", "string up"),
    workOf("two", "level", { state: "at_work", running_spell: 4, running_person: "Ada" }),
    workOf("two", "crown"),
    workOf("three", "look"),
  ];
  const answer = answerOf(
    work,
    [planOf("two", "level", 640), planOf("three", "look", 680), planOf("two", "crown", 720)],
    [],
    [],
  );
  expect(handsOf(answer, "Ada").at?.operation).toBe("level");
  expect(handsOf(answer, "Ada").coming.map(({ work: one }) => one.operation)).toEqual(["look", "crown"]);
  expect(curing(answer, friday * 1440 + 640).map(({ ends }) => ends - friday * 1440)).toEqual([700]);
  expect(curing(answer, friday * 1440 + 701)).toEqual([]);
  expect(couldBeTakenUp(answer).map((one) => one.instrument)).toEqual(["three"]);
});
