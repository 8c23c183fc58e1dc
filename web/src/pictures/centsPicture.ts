import { groundAxis, heightAxis } from "../chart/axes";
import { drawing, frame } from "../chart/frame";
import { band, curve, level, words } from "../chart/marks";
import type { SvgNode } from "../chart/svg";

/** One string: how sharp each stopped note is. The band is what nobody knows yet; the line in it what is certain. */
export interface CentsChoice {
  readonly name: string;
  /** Fret 1 first. */
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly certain: readonly number[];
  readonly certainWords: string;
  readonly read?: number;
  /** Cents shown, the same for every string of a guitar. */
  readonly from: number;
  readonly to: number;
  readonly width: number;
  readonly height: number;
}

function centTicks(from: number, to: number): number[] {
  const step = [1, 2, 5, 10, 20, 50].find((size) => (to - from) / size <= 5) ?? 100;
  const ticks: number[] = [];
  for (let n = Math.ceil(from / step); n * step <= to; n += 1) ticks.push(n * step);
  return ticks;
}

export function centsPicture(choice: CentsChoice): SvgNode {
  const { name, low, high, certain, certainWords, read, from, to, width, height } = choice;
  const frets = low.length;
  const within = frame({
    width,
    height,
    margin: { top: 40, right: 10, bottom: 26, left: 36 },
    x: [1, frets],
    y: [from, to],
  });
  const points = (list: readonly number[]) => list.map((y, i) => ({ x: i + 1, y }));
  return drawing(within, [
    heightAxis(
      centTicks(from, to).map((at) => ({ at, label: String(at).replace("-", "−") })),
      "",
    ),
    words([{ x: 1, y: to, text: name, className: "figure", dx: -36, dy: -24 }]),
    words([{ x: frets, y: to, text: certainWords, className: "soft", anchor: "end", dy: -24 }]),
    level({ y: 0, label: "", labelled: "above", className: "axis" }),
    band(
      low.map((value, i) => ({ x: i + 1, low: value, high: high[i] ?? value })),
      "band half",
    ),
    curve(points(certain), "median"),
    ({ x, y }) =>
      read === undefined || frets < 12
        ? []
        : [
            {
              tag: "circle",
              attributes: { class: "after", cx: Math.round(x(12)), cy: Math.round(y(read) * 10) / 10, r: 4.5 },
              children: [],
            },
          ],
    groundAxis(
      [1, 5, 7, 12, 15, 19].filter((fret) => fret <= frets).map((fret) => ({ at: fret, label: String(fret) })),
    ),
  ]);
}
