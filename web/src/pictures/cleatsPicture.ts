import type { CleatsResult } from "../api/finishShapes";
import type { DrawingPoint, ViewDrawing } from "../api/shapes";
import { node, px, type SvgNode } from "../chart/svg";
import { type OnScreen, onScreen, pathOf } from "./surveyPicture";

interface Drawn {
  readonly view: ViewDrawing;
  readonly crack: readonly [DrawingPoint, DrawingPoint];
  readonly result: CleatsResult;
  readonly width: number;
  readonly mostHeight: number;
  /** Only the neighbourhood of the crack: this far beyond its ends, and to its sides. */
  readonly margins?: { readonly ends: number; readonly sides: number };
}

/** The cut of the drawing that shows the crack, which runs more or less with the grain, and what is round it. */
export function around(
  view: ViewDrawing,
  crack: readonly DrawingPoint[],
  margins: { readonly ends: number; readonly sides: number },
): ViewDrawing {
  const xs = crack.map((point) => point.x_mm);
  const ys = crack.map((point) => point.y_mm);
  return {
    ...view,
    x_from_mm: Math.max(view.x_from_mm, Math.min(...xs) - margins.ends),
    x_to_mm: Math.min(view.x_to_mm, Math.max(...xs) + margins.ends),
    y_from_mm: Math.max(view.y_from_mm, Math.min(...ys) - margins.sides),
    y_to_mm: Math.min(view.y_to_mm, Math.max(...ys) + margins.sides),
  };
}

/** The four corners of a cleat, and the ends of its grain lines, which run across the crack. */
export function cleatShape(
  middle: DrawingPoint,
  crack: readonly [DrawingPoint, DrawingPoint],
  along: number,
  across: number,
): { readonly corners: DrawingPoint[]; readonly grain: [DrawingPoint, DrawingPoint][] } {
  const [from, to] = crack;
  const length = Math.hypot(to.x_mm - from.x_mm, to.y_mm - from.y_mm);
  const u = { x: (to.x_mm - from.x_mm) / length, y: (to.y_mm - from.y_mm) / length };
  const at = (a: number, b: number): DrawingPoint => ({
    x_mm: middle.x_mm + u.x * a - u.y * b,
    y_mm: middle.y_mm + u.y * a + u.x * b,
  });
  const [h, w] = [along / 2, across / 2];
  return {
    corners: [at(-h, -w), at(h, -w), at(h, w), at(-h, w)],
    grain: [-0.5, 0, 0.5].map((share) => [at(share * h, -w), at(share * h, w)]),
  };
}

function lineOf(line: ViewDrawing["lines"][number], screen: OnScreen): SvgNode {
  const brace = line.part === "brace" && line.width_mm > 0;
  return node("path", {
    d: pathOf(line.points, line.closed, screen),
    fill: line.part === "plate" ? "var(--band-wide)" : "none",
    stroke: brace ? "var(--band-half)" : "var(--edge)",
    "stroke-width": brace ? px(Math.max(1, line.width_mm * screen.perMm)) : 1,
    "stroke-linejoin": "round",
  });
}

/** A plate from inside with the crack and the cleats on it, each with its number from the crack's first end. */
export function cleatsPicture({ view, crack, result, width, mostHeight, margins }: Drawn): SvgNode {
  const shown = margins === undefined ? view : around(view, crack, margins);
  const screen = onScreen(shown, width, mostHeight);
  const detail = margins !== undefined;
  const cleats = result.cleats.map((cleat, k) => {
    const { corners, grain } = cleatShape(cleat, crack, result.along_crack_mm, result.across_crack_mm);
    const middle = screen.to(cleat);
    return node(
      "g",
      {},
      node("path", {
        d: pathOf(corners, true, screen),
        fill: "var(--sheet)",
        stroke: "var(--accent)",
        "stroke-width": detail ? 2 : 1,
        ...(cleat.within_reach ? {} : { "stroke-dasharray": "4 3" }),
      }),
      ...(detail
        ? grain.map((ends) =>
            node("path", { d: pathOf(ends, false, screen), stroke: "var(--wood)", "stroke-width": 1 }),
          )
        : []),
      ...(detail
        ? [
            node(
              "text",
              {
                x: px(middle.x),
                y: px(middle.y + 5),
                "text-anchor": "middle",
                fill: "var(--ink)",
                stroke: "var(--sheet)",
                "stroke-width": 4,
                "paint-order": "stroke",
                "font-size": 14,
                "font-weight": 600,
              },
              String(k + 1),
            ),
          ]
        : []),
    );
  });
  return node(
    "svg",
    {
      viewBox: `0 0 ${px(screen.width)} ${px(screen.height)}`,
      width: px(screen.width),
      height: px(screen.height),
      "font-family": "var(--sans)",
    },
    ...shown.lines.map((line) => lineOf(line, screen)),
    node("path", {
      d: pathOf(crack, false, screen),
      fill: "none",
      stroke: "var(--accent)",
      "stroke-width": detail ? 3 : 2,
    }),
    ...cleats,
    ...(detail
      ? [
          node("rect", {
            x: 0.5,
            y: 0.5,
            width: px(screen.width - 1),
            height: px(screen.height - 1),
            fill: "none",
            stroke: "var(--rule)",
          }),
        ]
      : []),
  );
}
