import type { DrawingPoint, ViewDrawing } from "../api/shapes";

/** A view's millimetres on a screen of a given width, and back. */
export interface OnScreen {
  readonly width: number;
  readonly height: number;
  readonly perMm: number;
  readonly to: (point: DrawingPoint) => { readonly x: number; readonly y: number };
  readonly from: (x: number, y: number) => DrawingPoint;
}

export function onScreen(view: ViewDrawing, width: number, mostHeight: number): OnScreen {
  const along = [view.x_from_mm, view.x_to_mm] as const;
  const across = [view.y_from_mm, view.y_to_mm] as const;
  const [acrossPage, downPage] = view.upright ? [across, along] : [along, across];
  const wide = acrossPage[1] - acrossPage[0];
  const high = downPage[1] - downPage[0];
  const perMm = Math.min(width / wide, mostHeight / high);
  const flip = (value: number, [from, to]: readonly [number, number], turned: boolean): number =>
    turned ? to - value : value - from;
  const back = (value: number, [from, to]: readonly [number, number], turned: boolean): number =>
    turned ? to - value : value + from;
  return {
    width: wide * perMm,
    height: high * perMm,
    perMm,
    to: ({ x_mm, y_mm }) => {
      const [over, down] = view.upright ? [y_mm, x_mm] : [x_mm, y_mm];
      return {
        x: flip(over, acrossPage, view.mirrored) * perMm,
        y: flip(down, downPage, view.upside_down) * perMm,
      };
    },
    from: (x, y) => {
      const over = back(x / perMm, acrossPage, view.mirrored);
      const down = back(y / perMm, downPage, view.upside_down);
      return view.upright ? { x_mm: down, y_mm: over } : { x_mm: over, y_mm: down };
    },
  };
}

/** `M1 2L3 4Z`. */
export function pathOf(points: readonly DrawingPoint[], closed: boolean, screen: OnScreen): string {
  const at = points.map((point) => screen.to(point)).map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`);
  return `M${at.join("L")}${closed ? "Z" : ""}`;
}

/** Where the number of a mark stands: half way along a line, the middle of an area. */
export function middleOf(points: readonly DrawingPoint[], shape: string, screen: OnScreen): { x: number; y: number } {
  const on = points.map((point) => screen.to(point));
  const [first, last] = [on[0] ?? { x: 0, y: 0 }, on.at(-1) ?? { x: 0, y: 0 }];
  if (shape === "line" && on.length === 2) return { x: (first.x + last.x) / 2, y: (first.y + last.y) / 2 };
  if (shape === "line") return on[Math.floor(on.length / 2)] ?? first;
  const sum = on.reduce((so, { x, y }) => ({ x: so.x + x, y: so.y + y }), { x: 0, y: 0 });
  return { x: sum.x / on.length, y: sum.y / on.length };
}

/** Numbers stand where there is room: each is moved down until it is clear of those before it. */
export function apartFromOthers(
  places: readonly { x: number; y: number }[],
  radius: number,
): { x: number; y: number }[] {
  const settled: { x: number; y: number }[] = [];
  for (const place of places) {
    let { x, y } = place;
    for (let tries = 0; tries < 40; tries += 1) {
      if (settled.every((other) => Math.hypot(other.x - x, other.y - y) >= 2 * radius)) break;
      y += radius;
      if (tries % 4 === 3) {
        x += 2 * radius;
        y = place.y;
      }
    }
    settled.push({ x, y });
  }
  return settled;
}
