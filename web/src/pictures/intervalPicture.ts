import { groundAxis, type Tick } from "../chart/axes";
import { drawing, frame, type Mark } from "../chart/frame";
import { node, px, type SvgNode } from "../chart/svg";

/** A number with the interval that holds it nine times in ten, under a line that says it in words. */
export interface IntervalRow {
  readonly words: string;
  readonly figure: string;
  readonly median: number;
  readonly low: number;
  readonly high: number;
  readonly className: string;
}

export interface IntervalChoice {
  readonly rows: readonly IntervalRow[];
  readonly domain: readonly [number, number];
  readonly ticks: readonly Tick[];
  readonly unit: string;
  readonly width: number;
  /** Changes grow from nothing; heights have no such place, and each bar is its own interval. */
  readonly from?: "zero" | "interval";
}

const rowHeight = 38;

function rowMark(row: IntervalRow, i: number, grows: "zero" | "interval"): Mark {
  return ({ x, margin, width }): SvgNode[] => {
    const top = margin.top + i * rowHeight;
    const bar = top + 25;
    const ends = grows === "zero" ? [Math.min(row.median, 0), Math.max(row.median, 0)] : [row.low, row.high];
    const [from = 0, to = 0] = ends.map((end) => px(x(end)));
    const zero = node("line", { class: "axis", x1: px(x(0)), x2: px(x(0)), y1: bar - 9, y2: bar + 9 });
    return [
      node("text", { class: "label", x: margin.left, y: top + 13 }, row.words),
      node("text", { class: "label figure", x: width - margin.right, y: top + 13, "text-anchor": "end" }, row.figure),
      ...(grows === "zero" ? [zero] : []),
      node("rect", {
        class: `bar ${row.className}`,
        x: from,
        y: bar - 5,
        width: Math.max(px(to - from), 0),
        height: 10,
      }),
      node("line", { class: "whisker", x1: px(x(row.low)), x2: px(x(row.high)), y1: bar, y2: bar }),
      node("circle", { class: `middle ${row.className}`, cx: px(x(row.median)), cy: bar, r: 4 }),
    ];
  };
}

/** Bars from zero to the middle of what is expected, or over its interval, with a whisker from 5 to 95 %. */
export function intervalPicture({ rows, domain, ticks, unit, width, from = "zero" }: IntervalChoice): SvgNode {
  const margin = { top: 0, right: 8, bottom: 42, left: 8 };
  const height = rows.length * rowHeight + margin.bottom;
  const within = frame({ width, height, margin, x: domain, y: [0, 1] });
  const unitWords: Mark = () => [
    node("text", { class: "unit", x: width - margin.right, y: height - 6, "text-anchor": "end" }, unit),
  ];
  return drawing(within, [groundAxis(ticks), ...rows.map((row, i) => rowMark(row, i, from)), unitWords]);
}
