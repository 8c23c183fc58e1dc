import { node, px, type SvgNode } from "../chart/svg";

interface Drawn {
  readonly spread: number;
  readonly sd: number;
  readonly stop: number;
  readonly free: number;
  readonly width: number;
}

const height = 78;
const bar = { top: 34, height: 22 } as const;

/** How far the air is over its dew point, on a scale that says where no coat goes on and where nothing holds it. */
export function spreadPicture({ spread, sd, stop, free, width }: Drawn): SvgNode {
  const most = Math.max(free + 6, spread + sd + 1);
  const at = (value: number): number => px((Math.max(0, Math.min(most, value)) / most) * (width - 2) + 1);
  const band = (from: number, to: number, fill: string): SvgNode =>
    node("rect", {
      x: at(from),
      y: bar.top,
      width: px(at(to) - at(from)),
      height: bar.height,
      fill,
      stroke: "var(--edge)",
      "stroke-width": 1,
    });
  const words = (x: number, y: number, text: string, anchor: string, weight = 400): SvgNode =>
    node(
      "text",
      { x: px(x), y, "text-anchor": anchor, fill: "var(--ink)", "font-size": 13, "font-weight": weight },
      text,
    );
  const x = at(spread);
  const anchor = x < 70 ? "start" : x > width - 70 ? "end" : "middle";
  return node(
    "svg",
    { viewBox: `0 0 ${px(width)} ${height}`, width: px(width), height, "font-family": "var(--sans)" },
    band(0, stop, "var(--accent-wash)"),
    band(stop, free, "var(--band-wide)"),
    band(free, most, "var(--sheet)"),
    words((at(0) + at(stop)) / 2, bar.top + 15, "no coat", "middle"),
    words((at(stop) + at(free)) / 2, bar.top + 15, "trial", "middle"),
    words((at(free) + at(most)) / 2, bar.top + 15, "free", "middle"),
    words(at(stop), height - 4, `${stop} °C`, "middle"),
    words(at(free), height - 4, `${free} °C`, "middle"),
    node("path", {
      d: `M${at(spread - sd)} ${bar.top - 6}H${at(spread + sd)}`,
      stroke: "var(--accent)",
      "stroke-width": 3,
    }),
    node("path", {
      d: `M${x} ${bar.top - 10}V${bar.top + bar.height}`,
      stroke: "var(--accent)",
      "stroke-width": 3,
    }),
    words(x, 16, `${spread.toFixed(1)} °C over the dew point`, anchor, 600),
  );
}
