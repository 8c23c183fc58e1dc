import type { Tick } from "../chart/axes";
import { node, px, type SvgNode } from "../chart/svg";
import { type Contour, contour, edges, type Mesh, type Place } from "./contours";

/** A brace as it lies inside the outline. */
export interface DrawnBrace {
  readonly name: string;
  readonly from: Place;
  readonly to: Place;
}

/** Something the survey found, where it is drawn: a point, a line from end to end, or an area. */
export interface FoundOnTop {
  readonly number: number;
  readonly shape: "point" | "line" | "area";
  readonly points: readonly Place[];
}

export interface TopChoice {
  readonly mesh: Mesh;
  readonly values: readonly number[];
  /** Levels to draw, with what is written on them, a step apart; nothing itself is no level. */
  readonly levels: readonly Tick[];
  readonly step: number;
  readonly unit: string;
  readonly braces: readonly DrawnBrace[];
  /** Stretches off the top. */
  readonly loose: readonly DrawnBrace[];
  readonly found?: readonly FoundOnTop[];
  readonly bridge: { readonly front: number; readonly back: number; readonly halfSpan: number };
  readonly saddle: { readonly x: number; readonly halfLength: number };
  /** A place to be found, with its word. */
  readonly mark?: Place & { readonly words: string };
  readonly width: number;
}

const pad = 6;
const legendHeight = 46;
const mostBands = 10;

/** Colour by how many steps a band begins over or under nothing; a step either way is paper. */
function bandClass(steps: number): string {
  if (steps >= 1) return `band-rise-${Math.min(steps, mostBands)}`;
  return steps >= -1 ? "band-still" : `band-sink-${Math.min(-steps - 1, mostBands)}`;
}

interface Band {
  readonly from: number | undefined;
  readonly className: string;
}

/** From the lowest up; the lowest has no level under it. */
function bandsOf(levels: readonly Tick[], step: number): Band[] {
  const [first] = levels;
  if (!first) return [{ from: undefined, className: bandClass(0) }];
  const steps = (at: number): number => Math.round(at / step);
  const under = steps(first.at) - 1;
  return [
    { from: undefined, className: bandClass(under === 0 ? 0 : under) },
    ...levels.map(({ at }) => ({ from: at, className: bandClass(steps(at)) })),
  ];
}

function path(ways: readonly (readonly Place[])[], at: (place: Place) => string, close: boolean): string {
  return ways.map((way) => `M${way.map(at).join("L")}${close ? "Z" : ""}`).join("");
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

function length(way: readonly Spot[]): number {
  return way.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.x - (way[i]?.x ?? 0), p.y - (way[i]?.y ?? 0)), 0);
}

interface Line {
  readonly way: readonly Spot[];
  readonly label: string;
}

interface Word {
  readonly spot: Spot;
  readonly half: number;
  readonly label: string;
}

/** One label a line that is long enough, each where it stands furthest from the others; the longest lines first. */
function labels(lines: readonly Line[], kept: readonly Word[], width: number, height: number): SvgNode[] {
  const taken: Word[] = [...kept];
  const byLength = [...lines].map((line) => ({ ...line, long: length(line.way) })).sort((a, b) => b.long - a.long);
  for (const { way, label, long } of byLength) {
    if (long < 44) continue;
    const half = 3 + label.length * 3.4;
    const room = (p: Spot): number =>
      Math.min(
        60,
        p.x - half,
        width - half - p.x,
        p.y - 10,
        height - 8 - p.y,
        ...taken.map((other) =>
          Math.max(Math.abs(p.x - other.spot.x) - half - other.half, Math.abs(p.y - other.spot.y) - 15),
        ),
      );
    const [first] = way;
    if (!first) continue;
    const best = way.reduce((a, b) => (room(b) > room(a) ? b : a), first);
    if (room(best) >= 2) taken.push({ spot: best, half, label });
  }
  return taken
    .slice(kept.length)
    .map(({ spot, label }) =>
      node("text", { class: "label level", x: px(spot.x), y: px(spot.y + 4), "text-anchor": "middle" }, label),
    );
}

/** Swatches from the lowest band to the highest, with the levels between them. */
function legend(bands: readonly Band[], levels: readonly Tick[], unit: string, width: number, top: number): SvgNode[] {
  const [left, right] = [pad + 10, width - pad - 10];
  const each = (right - left) / bands.length;
  const every = Math.ceil((Math.max(...levels.map(({ label }) => label.length), 1) * 7.4) / each);
  return [
    ...bands.map(({ className }, i) =>
      node("rect", { class: `band ${className}`, x: px(left + i * each), y: top, width: px(each), height: 10 }),
    ),
    ...levels.map((_, i) => {
      const x = px(left + (i + 1) * each);
      return node("line", { class: "axis", x1: x, x2: x, y1: top, y2: top + 13 });
    }),
    ...levels.flatMap(({ label }, i) =>
      i % every === 0
        ? [node("text", { class: "tick", x: px(left + (i + 1) * each), y: top + 25, "text-anchor": "middle" }, label)]
        : [],
    ),
    node("text", { class: "unit", x: px(width / 2), y: top + 40, "text-anchor": "middle" }, unit),
  ];
}

/** The word beside a mark, toward the middle of the picture. */
function markWord({ words, ...place }: NonNullable<TopChoice["mark"]>, at: (p: Place) => Spot, width: number): Word {
  const spot = at(place);
  const half = 4 + words.length * 3.6;
  return { spot: { x: spot.x + (spot.x < width / 2 ? 8 + half : -8 - half), y: spot.y }, half, label: words };
}

function markNodes(place: Place, word: Word, at: (p: Place) => Spot): SvgNode[] {
  const [spot, text] = [at(place), word.spot];
  return [
    node("circle", { class: "found", cx: px(spot.x), cy: px(spot.y), r: 6 }),
    node("text", { class: "label figure", x: px(text.x), y: px(text.y + 4), "text-anchor": "middle" }, word.label),
  ];
}

const numberRoom = 10;

/** Where the numbers of findings stand: at their middles, each moved along until it is clear of those before it. */
function foundWords(found: readonly FoundOnTop[], at: (p: Place) => Spot): Word[] {
  const words: Word[] = [];
  for (const { number, points } of found) {
    const all = points.map(at);
    const middle = {
      x: all.reduce((sum, { x }) => sum + x, 0) / all.length,
      y: all.reduce((sum, { y }) => sum + y, 0) / all.length,
    };
    const clear = (spot: Spot): boolean =>
      words.every((other) => Math.hypot(spot.x - other.spot.x, spot.y - other.spot.y) > 2 * numberRoom);
    let spot = middle;
    for (let step = 1; step < 12 && !clear(spot); step += 1) spot = { x: middle.x, y: middle.y + step * 6 };
    words.push({ spot, half: numberRoom, label: String(number) });
  }
  return words;
}

function foundNodes(found: readonly FoundOnTop[], words: readonly Word[], at: (p: Place) => string): SvgNode[] {
  return [
    ...found.flatMap(({ shape, points }) =>
      shape === "point" ? [] : [node("path", { class: `surveyed ${shape}`, d: path([points], at, shape === "area") })],
    ),
    ...words.flatMap(({ spot, label }) => [
      node("circle", { class: "surveyed-number", cx: px(spot.x), cy: px(spot.y), r: 9 }),
      node("text", { class: "label numeral", x: px(spot.x), y: px(spot.y + 4), "text-anchor": "middle" }, label),
    ]),
  ];
}

/** The top from outside, neck up and bass to the left, with bands and labelled levels of what moves or pulls. */
export function topPicture(choice: TopChoice): SvgNode {
  const { mesh, values, levels, bridge, saddle, width } = choice;
  const half = Math.max(...mesh.y.map(Math.abs));
  const scale = (width - 2 * pad) / (2 * half);
  const high = Math.max(...mesh.x) * scale + 2 * pad;
  const spotOf = (p: Place): Spot => ({ x: pad + (p.y + half) * scale, y: pad + p.x * scale });
  const at = (p: Place): string => {
    const spot = spotOf(p);
    return `${px(spot.x)},${px(spot.y)}`;
  };
  const bands = bandsOf(levels, choice.step);
  const contours = levels.map(({ at: level }): Contour => contour(mesh, values, level));
  const edge = path(edges(mesh), at, true);
  const stroke = ({ from, to }: DrawnBrace, className: string): SvgNode =>
    node("path", { class: className, d: `M${at(from)}L${at(to)}` });
  const lines = contours.flatMap(({ lines: ways }, i) =>
    ways.map((way): Line => ({ way: way.map(spotOf), label: levels[i]?.label ?? "" })),
  );
  const word = choice.mark ? markWord(choice.mark, spotOf, width) : undefined;
  const found = choice.found ?? [];
  const numbers = foundWords(found, spotOf);
  const corner = (x: number, y: number): Place => ({ x, y });
  return node(
    "svg",
    { viewBox: `0 0 ${width} ${px(high + legendHeight)}`, width, height: px(high + legendHeight) },
    node("path", { class: `band ${bands[0]?.className ?? ""}`, d: edge, "fill-rule": "evenodd" }),
    ...contours.map(({ region }, i) =>
      node("path", {
        class: `band ${bands[i + 1]?.className ?? ""}`,
        d: path(region, at, true),
        "fill-rule": "evenodd",
      }),
    ),
    ...contours.map(({ lines: ways }) => node("path", { class: "level", d: path(ways, at, false), fill: "none" })),
    ...choice.braces.map((brace) => stroke(brace, "brace")),
    ...choice.loose.map((brace) => stroke(brace, "brace loose")),
    node("path", {
      class: "on-top",
      d: path(
        [
          [
            corner(bridge.front, -bridge.halfSpan),
            corner(bridge.front, bridge.halfSpan),
            corner(bridge.back, bridge.halfSpan),
            corner(bridge.back, -bridge.halfSpan),
          ],
        ],
        at,
        true,
      ),
    }),
    node("path", {
      class: "on-top",
      d: `M${at(corner(saddle.x, -saddle.halfLength))}L${at(corner(saddle.x, saddle.halfLength))}`,
    }),
    node("path", { class: "rim", d: edge }),
    ...labels(lines, [...(word ? [word] : []), ...numbers], width, high),
    ...foundNodes(found, numbers, at),
    ...(choice.mark && word ? markNodes(choice.mark, word, spotOf) : []),
    ...legend(bands, levels, choice.unit, width, high + 2),
  );
}
