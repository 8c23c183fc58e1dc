import { groundAxis, type Tick } from "../chart/axes";
import { drawing, frame, type Mark } from "../chart/frame";
import { node, px, type SvgNode } from "../chart/svg";

/** How far one side of the saddle stands out of the bridge, against what the trade allows. */
export interface ExposureSide {
  readonly side: "bass" | "treble";
  readonly now: number;
  readonly after: number;
  readonly least: number;
  readonly most: number;
}

export interface ExposureChoice {
  readonly sides: readonly ExposureSide[];
  readonly ticks: readonly Tick[];
  readonly unit: string;
  readonly width: number;
  readonly write: (mm: number) => string;
}

const rowHeight = 40;

function sideMark(side: ExposureSide, i: number, write: (mm: number) => string): Mark {
  return ({ x, margin, width }): SvgNode[] => {
    const top = margin.top + i * rowHeight;
    const line = top + 27;
    const kept = side.least <= side.after && side.after <= side.most;
    return [
      node("text", { class: "label", x: margin.left, y: top + 13 }, `${side.side} stands out ${write(side.after)}`),
      node(
        "text",
        {
          class: kept ? "label figure" : "label figure broken",
          x: width - margin.right,
          y: top + 13,
          "text-anchor": "end",
        },
        kept ? "inside" : side.after > side.most ? "too tall" : "too low",
      ),
      node("rect", {
        class: "allowed",
        x: px(x(side.least)),
        y: line - 6,
        width: px(x(side.most) - x(side.least)),
        height: 12,
      }),
      node("line", { class: "move", x1: px(x(side.now)), x2: px(x(side.after)), y1: line, y2: line }),
      node("circle", { class: "before", cx: px(x(side.now)), cy: line, r: 4 }),
      node("circle", { class: kept ? "after" : "after broken", cx: px(x(side.after)), cy: line, r: 5 }),
    ];
  };
}

export function exposurePicture({ sides, ticks, unit, width, write }: ExposureChoice): SvgNode {
  const margin = { top: 0, right: 8, bottom: 42, left: 8 };
  const height = sides.length * rowHeight + margin.bottom;
  const most = Math.max(...sides.flatMap((side) => [side.now, side.after, side.most]));
  const within = frame({ width, height, margin, x: [0, most * 1.08], y: [0, 1] });
  const unitWords: Mark = () => [
    node("text", { class: "unit", x: width - margin.right, y: height - 6, "text-anchor": "end" }, unit),
  ];
  return drawing(within, [
    groundAxis(ticks.filter((tick) => tick.at <= most * 1.08)),
    ...sides.map((side, i) => sideMark(side, i, write)),
    unitWords,
  ]);
}
