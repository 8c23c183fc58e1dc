import type { DrawingPoint, DrawnLine, FindingKind, NewFinding, ViewDrawing } from "../api/shapes";
import { canOpen } from "../trade/findingWords";

/** A finding being entered. */
export interface Draft {
  kind: string;
  points: DrawingPoint[];
  /** Told by name; empty: the nearest named place is used. */
  place: string;
  /** The part it was put on by name. */
  part: string;
  opening: NonNullable<NewFinding["opening"]>;
  moving: NonNullable<NewFinding["moving"]>;
  severity: NonNullable<NewFinding["severity"]>;
  certainty: NonNullable<NewFinding["certainty"]>;
  /** By measure: as typed, and what it means. */
  readings: Record<string, number | undefined>;
  typed: Record<string, string>;
  note: string;
  photos: number[];
  supersedes: number;
}

export function emptyDraft(): Draft {
  return {
    kind: "",
    points: [],
    place: "",
    part: "",
    opening: "not_said",
    moving: "not_said",
    severity: "moderate",
    certainty: "sure",
    readings: {},
    typed: {},
    note: "",
    photos: [],
    supersedes: 0,
  };
}

export function apart(a: DrawingPoint, b: DrawingPoint): number {
  return Math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm);
}

/** The way along a line of points, from its first. */
export function lengthOf(points: readonly DrawingPoint[]): number {
  return points.slice(1).reduce((sum, point, k) => sum + apart(points[k] ?? point, point), 0);
}

interface OnLine {
  readonly from_mm: number;
  readonly away_mm: number;
}

/** Where on a line a point is nearest to: how far along from its first end, and how far off. */
function nearestOn(line: DrawnLine, point: DrawingPoint): OnLine {
  let best: OnLine = { from_mm: 0, away_mm: Number.POSITIVE_INFINITY };
  let along = 0;
  const ends = line.closed && line.points[0] ? [...line.points, line.points[0]] : line.points;
  for (const [k, b] of ends.entries()) {
    const a = ends[k - 1];
    if (!a) continue;
    const length = apart(a, b);
    const dot = (point.x_mm - a.x_mm) * (b.x_mm - a.x_mm) + (point.y_mm - a.y_mm) * (b.y_mm - a.y_mm);
    const share = length === 0 ? 0 : Math.min(1, Math.max(0, dot / (length * length)));
    const foot = { x_mm: a.x_mm + share * (b.x_mm - a.x_mm), y_mm: a.y_mm + share * (b.y_mm - a.y_mm) };
    const away_mm = apart(foot, point);
    if (away_mm < best.away_mm) best = { from_mm: along + share * length, away_mm };
    along += length;
  }
  return best;
}

/** The drawn part that a kind of finding is of, by the beginning of its name. */
function partWanted(kind: string): string | undefined {
  const wanted = [
    ["brace", "brace"],
    ["fret", "fret"],
    ["bridge_plate", "plate"],
    ["bridge", "bridge"],
    ["saddle", "saddle"],
    ["nut", "nut"],
    ["tuner", "tuner"],
  ].find(([start]) => start !== undefined && kind.startsWith(start));
  return wanted?.[1];
}

const nearEnough = 30; // mm from the spot to the part it is of

/** The part a draft is of: the one it was put on by name, else the nearest of the kind that its name asks for. */
export function partOf(view: ViewDrawing, draft: Draft): DrawnLine | undefined {
  const named = view.lines.find((line) => line.name !== "" && line.name === draft.part);
  if (named) return named;
  const wanted = partWanted(draft.kind);
  const [spot] = draft.points;
  if (wanted === undefined || !spot) return undefined;
  const near = view.lines
    .filter((line) => line.part === wanted && line.name !== "")
    .map((line) => ({ line, away: nearestOn(line, spot).away_mm }))
    .sort((a, b) => a.away - b.away)[0];
  return near && near.away <= nearEnough ? near.line : undefined;
}

export function nearestPlace(view: ViewDrawing, point: DrawingPoint | undefined): string {
  if (!point) return "";
  const [near] = [...view.places].sort((a, b) => apart(a.at, point) - apart(b.at, point));
  return near?.name ?? "";
}

/** The corners of a box from two opposite ones. */
function box(a: DrawingPoint, b: DrawingPoint): DrawingPoint[] {
  return [a, { x_mm: b.x_mm, y_mm: a.y_mm }, b, { x_mm: a.x_mm, y_mm: b.y_mm }];
}

/** How the points of a draft lie, given whether it is an area: two points of an area are opposite corners of it. */
export function shapeOf(
  points: readonly DrawingPoint[],
  isArea: boolean,
): { shape: NewFinding["shape"]; points: DrawingPoint[] } {
  const [a, b] = points;
  if (!a || !b) return { shape: "point", points: [...points] };
  if (!isArea) return { shape: "line", points: [...points] };
  return { shape: "area", points: points.length === 2 ? box(a, b) : [...points] };
}

function rounded(point: DrawingPoint): DrawingPoint {
  return { x_mm: Math.round(point.x_mm * 10) / 10, y_mm: Math.round(point.y_mm * 10) / 10 };
}

/** The finding as it will be kept. */
export function findingOf(view: ViewDrawing, draft: Draft, kind: FindingKind): NewFinding {
  const { shape, points } = shapeOf(draft.points, kind.shape === "area");
  const part = partOf(view, { ...draft, kind: kind.name });
  const along = part && !part.closed ? draft.points.map((point) => nearestOn(part, point).from_mm) : [];
  const asks = canOpen(kind.name);
  return {
    kind: kind.name,
    view: view.view,
    shape,
    points: points.map(rounded),
    place: draft.place || nearestPlace(view, draft.points[0]),
    part: part?.name ?? "",
    ...(along.length > 0
      ? { part_from_mm: Math.round(Math.min(...along)), part_to_mm: Math.round(Math.max(...along)) }
      : {}),
    opening: asks ? draft.opening : "not_said",
    moving: asks ? draft.moving : "not_said",
    severity: draft.severity,
    certainty: draft.certainty,
    extents: kind.measures.flatMap((measure) => {
      const value_mm = draft.readings[measure];
      return value_mm === undefined ? [] : [{ measure, typed: draft.typed[measure] ?? "", value_mm }];
    }),
    photos: draft.photos.map((photo_id) => ({ photo_id })),
    supersedes: draft.supersedes,
    note: draft.note,
  };
}

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[\s,]+/)
    .filter(Boolean);
}

function begins(name: string, search: readonly string[]): boolean {
  return search.every((word) => wordsOf(name).some((part) => part.startsWith(word)));
}

/** The first name whose words begin as those of `search` do; none for an empty one. */
export function firstBeginning(names: readonly string[], search: string): string | undefined {
  const words = wordsOf(search);
  return words.length === 0 ? undefined : names.find((name) => begins(name, words));
}

/** Kinds that can be found on a view, those drawn as the draft lies first; `search` narrows them by the words' beginnings. */
export function kindsFor(
  kinds: readonly FindingKind[],
  view: string,
  points: number,
  search: string,
): { fitting: FindingKind[]; others: FindingKind[] } {
  const words = wordsOf(search);
  const here = kinds.filter((kind) => kind.places.includes(view) && begins(kind.words, words));
  if (points < 2 || words.length > 0) return { fitting: here, others: [] };
  const drawn = (kind: FindingKind): boolean =>
    kind.shape !== "point" && (points === 2 || kind.shape === "area" || kind.shape === "line");
  return { fitting: here.filter(drawn), others: here.filter((kind) => !drawn(kind)) };
}
