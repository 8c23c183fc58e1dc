import { groundAxis, heightAxis, type Tick } from "../chart/axes";
import { drawing, frame, type Mark } from "../chart/frame";
import { curve, moment, type Point } from "../chart/marks";
import { node, px, type SvgNode } from "../chart/svg";
import { dayNumber, shortDay } from "../trade/day";
import { monthTicks } from "./monthTicks";

export interface AirDay {
  readonly date: string;
  readonly relative_humidity: number;
  readonly moisture_percent: number;
  readonly logged: boolean;
}

export interface AirChoice {
  readonly days: readonly AirDay[];
  readonly today: string;
  readonly width: number;
  readonly height: number;
}

/** Stretches of days that were all logged, or all not. */
export function stretches(days: readonly AirDay[]): { logged: boolean; from: number; to: number }[] {
  const found: { logged: boolean; from: number; to: number }[] = [];
  for (const [i, day] of days.entries()) {
    const last = found.at(-1);
    if (last && last.logged === day.logged) last.to = i;
    else found.push({ logged: day.logged, from: i, to: i });
  }
  return found;
}

function bounds(days: readonly AirDay[], width: number, height: number, y: readonly [number, number]) {
  const first = dayNumber(days[0]?.date ?? "1970-01-01");
  return frame({
    width,
    height,
    margin: { top: 42, right: 10, bottom: 28, left: 40 },
    x: [first, first + days.length - 1],
    y,
  });
}

function tenTicks(low: number, high: number, step: number): Tick[] {
  const ticks: Tick[] = [];
  for (let at = Math.ceil(low / step) * step; at <= high; at += step) ticks.push({ at, label: String(at) });
  return ticks;
}

/** The stretch of humidity in which the trade leaves an instrument alone: 40 to 55 % (common practice, no source). */
const atEase: Mark = ({ x, y }) => {
  const [left = 0, right = 0] = x.range();
  return [
    node("rect", { class: "allowed", x: px(left), y: px(y(55)), width: px(right - left), height: px(y(40) - y(55)) }),
    node("text", { class: "label soft", x: px(right - 6), y: px(y(55) + 14), "text-anchor": "end" }, "40 to 55 %"),
  ];
};

export function humidityPicture({ days, today, width, height }: AirChoice): SvgNode {
  const within = bounds(days, width, height, [0, 100]);
  const first = dayNumber(days[0]?.date ?? today);
  const points = (from: number, to: number): Point[] =>
    days.slice(from, to + 1).map((day, i) => ({ x: first + from + i, y: day.relative_humidity * 100 }));
  return drawing(within, [
    atEase,
    heightAxis(tenTicks(0, 100, 20), "% relative humidity in the home"),
    groundAxis(monthTicks(first, first + days.length - 1, width < 460)),
    ...stretches(days).map(({ logged, from, to }) => curve(points(from, to), logged ? "logged" : "expected")),
    moment({ x: dayNumber(today), label: `today ${shortDay(today)}`, className: "today", row: -1 }),
  ]);
}

export function moisturePicture({ days, today, width, height }: AirChoice): SvgNode {
  const moisture = days.map((day) => day.moisture_percent);
  const [low, high] = [Math.floor(Math.min(...moisture) - 0.5), Math.ceil(Math.max(...moisture) + 0.5)];
  const within = bounds(days, width, height, [low, high]);
  const first = dayNumber(days[0]?.date ?? today);
  return drawing(within, [
    heightAxis(tenTicks(low, high, high - low > 6 ? 2 : 1), "% moisture of the wood, following it"),
    groundAxis(monthTicks(first, first + days.length - 1, width < 460)),
    curve(
      moisture.map((value, i) => ({ x: first + i, y: value })),
      "median",
    ),
    moment({ x: dayNumber(today), label: `today ${shortDay(today)}`, className: "today", row: -1 }),
  ]);
}
