import { groundAxis, type Tick } from "../chart/axes";
import { drawing, frame, type Mark } from "../chart/frame";
import { node, px, type SvgNode } from "../chart/svg";

/** How far one side of the saddle stands out of the bridge, against what the trade allows and what it is used to. */
export interface ExposureSide {
  readonly side: "bass" | "treble";
  readonly now: number;
  /** One saddle, or one a season. */
  readonly after: readonly { readonly season: string; readonly mm: number }[];
  readonly least: number;
  readonly most: number;
  /** Inside what the trade is used to, not only inside what can be done. */
  readonly usual: boolean;
}

export interface ExposureChoice {
  readonly sides: readonly ExposureSide[];
  readonly ticks: readonly Tick[];
  readonly unit: string;
  readonly width: number;
  readonly write: (mm: number) => string;
}

/** A side with two saddles says their figures on a line of their own. */
function rowHeight({ after }: ExposureSide): number {
  return after.length > 1 ? 60 : 44;
}

function between(low: number, mm: number, high: number): boolean {
  return low - 1e-6 <= mm && mm <= high + 1e-6;
}

function sideMark(side: ExposureSide, top: number, write: (mm: number) => string): Mark {
  const { least, most, usual, after, now } = side;
  const kept = after.every(({ mm }) => between(least, mm, most));
  const word = !kept ? "outside" : usual ? "usual" : "unusual";
  return ({ x, margin, width }): SvgNode[] => {
    const line = top + rowHeight(side) - 16;
    const figures = after.map(({ mm }) => write(mm)).join(" and ");
    const alone = after.length === 1;
    const span = (low: number, high: number, className: string, half: number): SvgNode =>
      node("rect", { class: className, x: px(x(low)), y: line - half, width: px(x(high) - x(low)), height: half * 2 });
    return [
      node("text", { class: "label", x: margin.left, y: top + 14 }, alone ? `${side.side} ${figures}` : side.side),
      ...(alone ? [] : [node("text", { class: "label", x: margin.left, y: top + 30 }, figures)]),
      node(
        "text",
        {
          class: word === "outside" ? "label figure broken" : "label figure",
          x: width - margin.right,
          y: top + 14,
          "text-anchor": "end",
        },
        word,
      ),
      span(least, most, "allowed", 7),
      node("line", { class: "now", x1: px(x(now)), x2: px(x(now)), y1: line - 10, y2: line + 10 }),
      ...after.map(({ mm }) =>
        node("circle", { class: between(least, mm, most) ? "after" : "after broken", cx: px(x(mm)), cy: line, r: 5 }),
      ),
    ];
  };
}

/** Shaded: what can be done. The stroke is the saddle as it is, the dot the saddle to be. */
export function exposurePicture({ sides, ticks, unit, width, write }: ExposureChoice): SvgNode {
  const margin = { top: 0, right: 8, bottom: 42, left: 8 };
  const tops = sides.map((_, i) => sides.slice(0, i).reduce((sum, side) => sum + rowHeight(side), 0));
  const height = sides.reduce((sum, side) => sum + rowHeight(side), margin.bottom);
  const most = Math.max(...sides.flatMap((side) => [side.now, side.most, ...side.after.map(({ mm }) => mm)]));
  const within = frame({ width, height, margin, x: [0, most * 1.06], y: [0, 1] });
  const unitWords: Mark = () => [
    node("text", { class: "unit", x: width - margin.right, y: height - 6, "text-anchor": "end" }, unit),
  ];
  return drawing(within, [
    groundAxis(ticks.filter((tick) => tick.at <= most * 1.06)),
    ...sides.map((side, i) => sideMark(side, tops[i] ?? 0, write)),
    unitWords,
  ]);
}
