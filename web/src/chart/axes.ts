import type { Mark } from "./frame";
import { node, px } from "./svg";

export interface Tick {
  readonly at: number;
  readonly label: string;
  /** Shown heavier: the start of a year, the nut. */
  readonly strong?: boolean;
  readonly anchor?: "start" | "middle" | "end";
}

/** Heights up the left side, with their unit at the top. */
export function heightAxis(ticks: readonly Tick[], unit: string): Mark {
  return ({ x, y }) => {
    const [left = 0, right = 0] = x.range();
    return [
      ...ticks.map((tick) =>
        node("line", { class: "grid", x1: px(left), x2: px(right), y1: px(y(tick.at)), y2: px(y(tick.at)) }),
      ),
      ...ticks.map((tick) =>
        node("text", { class: "tick", x: px(left - 8), y: px(y(tick.at) + 4), "text-anchor": "end" }, tick.label),
      ),
      node("text", { class: "unit", x: 0, y: 13 }, unit),
    ];
  };
}

/** Ticks along the bottom. */
export function groundAxis(ticks: readonly Tick[]): Mark {
  return ({ x, y }) => {
    const [bottom = 0] = y.range();
    const [left = 0, right = 0] = x.range();
    return [
      node("line", { class: "axis", x1: px(left), x2: px(right), y1: px(bottom), y2: px(bottom) }),
      ...ticks.map((tick) =>
        node("line", { class: "axis", x1: px(x(tick.at)), x2: px(x(tick.at)), y1: px(bottom), y2: px(bottom + 5) }),
      ),
      ...ticks.map((tick) =>
        node(
          "text",
          {
            class: tick.strong ? "tick strong" : "tick",
            x: px(x(tick.at)),
            y: px(bottom + 19),
            "text-anchor": tick.anchor ?? "middle",
          },
          tick.label,
        ),
      ),
    ];
  };
}
