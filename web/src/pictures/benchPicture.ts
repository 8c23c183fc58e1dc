import type { BenchAnswer, BenchPerson } from "../api/benchShapes";
import { node, px, type SvgNode } from "../chart/svg";
import type { AtTheBench } from "../parts/todayWork";
import { minutesAt, weekdayOf } from "../trade/clock";
import { dayNumber, isoDay, shortDay } from "../trade/day";

/** The bench as lanes: one instrument a lane, days from left to right. */
export const laneHeight = 76;
export const laneTop = 40;
const barMiddle = 50;
const handsHeight = 20;
const waitHeight = 8;
const minutesPerDay = 1440;
const nightShare = 0.22; // of a day's width: nights are waited through, not worked in

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** When anyone is in the shop on a day, in minutes of it, in order. */
export function openOn(people: readonly BenchPerson[], day: number): Stretch[] {
  const weekday = weekdayOf(day);
  const stretches = people
    .filter((person) => !person.days_off.some((off) => dayNumber(off.day) === day))
    .flatMap((person) => person.hours.filter((hours) => hours.weekday === weekday))
    .map((hours) => ({ from: hours.from_minute, to: hours.to_minute }))
    .sort((a, b) => a.from - b.from);
  const joined: Stretch[] = [];
  for (const one of stretches) {
    const last = joined.at(-1);
    if (last && one.from <= last.to) joined[joined.length - 1] = { from: last.from, to: Math.max(last.to, one.to) };
    else joined.push(one);
  }
  return joined;
}

const daysLookedAt = 60;

/** The moment, or the next at which anyone is in the shop; minutes since 1970. */
export function whenOpen(people: readonly BenchPerson[], minutes: number): number {
  const first = Math.floor(minutes / minutesPerDay);
  for (let day = first; day < first + daysLookedAt; day += 1) {
    const within = minutes - day * minutesPerDay;
    const open = openOn(people, day).find((one) => within < one.to);
    if (open) return day * minutesPerDay + Math.max(open.from, within);
  }
  return minutes;
}

/** Where a moment lies: every day is as wide as the next, its night pressed together. */
export class BenchScale {
  readonly first: number;
  readonly days: number;
  readonly dayWidth: number;
  readonly #opens: number;
  readonly #closes: number;

  constructor(people: readonly BenchPerson[], first: number, days: number, dayWidth: number) {
    this.first = first;
    this.days = days;
    this.dayWidth = dayWidth;
    const hours = people.flatMap((person) => person.hours);
    this.#opens = Math.min(...hours.map((one) => one.from_minute), 12 * 60);
    this.#closes = Math.max(...hours.map((one) => one.to_minute), 13 * 60);
  }

  get width(): number {
    return this.days * this.dayWidth;
  }

  get closes(): number {
    return this.#closes;
  }

  /** From minutes since 1970 to pixels from the left. */
  x(minutes: number): number {
    const day = Math.floor(minutes / minutesPerDay);
    return (day - this.first + this.#share(minutes - day * minutesPerDay)) * this.dayWidth;
  }

  minutes(x: number): number {
    const at = x / this.dayWidth + this.first;
    const day = Math.floor(at);
    let low = 0;
    let high = minutesPerDay;
    while (high - low > 0.5) {
      const middle = (low + high) / 2;
      if (this.#share(middle) < at - day) low = middle;
      else high = middle;
    }
    return day * minutesPerDay + low;
  }

  #share(minute: number): number {
    const night = minutesPerDay - (this.#closes - this.#opens);
    const nightly = night > 0 ? nightShare / night : 0;
    const daily = (1 - nightly * night) / (this.#closes - this.#opens);
    const open = Math.min(Math.max(minute - this.#opens, 0), this.#closes - this.#opens);
    return open * daily + (minute - open) * nightly;
  }
}

export interface BenchDrawn {
  readonly answer: BenchAnswer;
  readonly lanes: readonly string[];
  readonly operations: readonly AtTheBench[];
  readonly scale: BenchScale;
  readonly now: number;
}

function shut({ answer, lanes, scale }: BenchDrawn): SvgNode[] {
  const bottom = laneTop + lanes.length * laneHeight;
  const closed: SvgNode[] = [];
  for (let day = scale.first; day < scale.first + scale.days; day += 1) {
    let from = 0;
    const add = (to: number): void => {
      const [left, right] = [scale.x(day * minutesPerDay + from), scale.x(day * minutesPerDay + to)];
      if (right - left < 0.5) return;
      closed.push(
        node("rect", { class: "shut", x: px(left), y: laneTop, width: px(right - left), height: bottom - laneTop }),
      );
    };
    for (const open of openOn(answer.people, day)) {
      add(open.from);
      from = open.to;
    }
    add(minutesPerDay - 0.001);
  }
  return closed;
}

function dayNames({ answer, lanes, scale }: BenchDrawn): SvgNode[] {
  const bottom = laneTop + lanes.length * laneHeight;
  const names = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
  return Array.from({ length: scale.days }, (_, i) => scale.first + i).flatMap((day) => {
    const x = px(scale.x(day * minutesPerDay));
    const away = openOn(answer.people, day).length === 0;
    return [
      node("line", { class: "axis", x1: x, x2: x, y1: 4, y2: bottom }),
      node("text", { class: "tick strong", x: x + 6, y: 15 }, names[weekdayOf(day) - 1] ?? ""),
      node("text", { class: "tick", x: x + 6, y: 31 }, `${shortDay(isoDay(day))}${away ? ", shut" : ""}`),
    ];
  });
}

function laneOf(drawn: BenchDrawn, instrument: string): number {
  return laneTop + drawn.lanes.indexOf(instrument) * laneHeight;
}

/** Hands-on work is a tall filled block, a wait a low hollow one, so that they differ without their colours. */
function work(drawn: BenchDrawn, { planned, work: what }: AtTheBench): SvgNode[] {
  const middle = laneOf(drawn, planned.instrument) + barMiddle;
  const { scale } = drawn;
  const parts: SvgNode[] = [];
  const waits = [Math.max(minutesAt(planned.hands_on_ends), drawn.now), minutesAt(planned.wait_ends)] as const;
  if (waits[1] > waits[0]) {
    parts.push(
      node("rect", {
        class: "waits",
        x: px(scale.x(waits[0])),
        y: middle - waitHeight / 2,
        width: px(Math.max(scale.x(waits[1]) - scale.x(waits[0]), 1)),
        height: waitHeight,
      }),
    );
  }
  for (const piece of what.state === "waiting" ? [] : planned.pieces) {
    const [left, right] = [scale.x(minutesAt(piece.from)), scale.x(minutesAt(piece.until))];
    parts.push(
      node("rect", {
        class: what.state === "at_work" ? "hands at-work" : "hands",
        x: px(left),
        y: middle - handsHeight / 2,
        width: px(Math.max(right - left, 3)),
        height: handsHeight,
      }),
    );
  }
  if (what.pinned) {
    const x = px(scale.x(minutesAt(planned.starts)));
    const top = middle - handsHeight / 2;
    parts.push(
      node("path", { class: "pin", d: `M${x},${top}V${top - 10}` }),
      node("circle", { class: "pin-head", cx: x, cy: top - 11, r: 4 }),
    );
  }
  return parts;
}

function days(drawn: BenchDrawn): SvgNode[] {
  const { scale, answer } = drawn;
  const last = scale.first + scale.days;
  return answer.instruments.flatMap((one) => {
    const top = laneOf(drawn, one.instrument);
    const marks: SvgNode[] = [];
    const mark = (iso: string, className: string, words: string): void => {
      const day = dayNumber(iso);
      if (day < scale.first || day >= last) return;
      const x = px(scale.x(day * minutesPerDay + scale.closes));
      const [y1, y2] = [top + barMiddle - 16, top + laneHeight - 14];
      marks.push(
        node("line", { class: className, x1: x, x2: x, y1, y2 }),
        node(
          "text",
          { class: `label small-words ${className}`, x, y: top + laneHeight - 3, "text-anchor": "middle" },
          words,
        ),
      );
    };
    if (one.promised) mark(one.promised, "promised", "promised");
    if (one.due && one.due !== one.promised) mark(one.due, "wanted", "wanted");
    return marks;
  });
}

export function benchPicture(drawn: BenchDrawn): SvgNode {
  const height = laneTop + drawn.lanes.length * laneHeight;
  const { scale } = drawn;
  const now = px(scale.x(drawn.now));
  const rules = drawn.lanes.map((_, i) =>
    node("line", {
      class: "grid",
      x1: 0,
      x2: px(scale.width),
      y1: laneTop + i * laneHeight,
      y2: laneTop + i * laneHeight,
    }),
  );
  const shown = drawn.operations.filter(({ planned }) => scale.x(minutesAt(planned.starts)) < scale.width);
  return node(
    "svg",
    { viewBox: `0 0 ${px(scale.width)} ${height}`, width: px(scale.width), height, "aria-hidden": "true" },
    ...shut(drawn),
    ...dayNames(drawn),
    ...rules,
    ...shown.flatMap((one) => work(drawn, one)),
    ...days(drawn),
    node("line", { class: "now-line", x1: now, x2: now, y1: laneTop - 6, y2: height }),
  );
}
