import type { TopAnswer, TopAsked, TopState } from "../api/shapes";
import type { Tick } from "../chart/axes";
import type { Place } from "../pictures/contours";
import { heightTicks } from "../pictures/heightTicks";
import type { DrawnBrace, FoundOnTop } from "../pictures/topPicture";
import type { Notation } from "../trade/length";

type Design = TopState["numbers"]["design"];
type Brace = Design["braces"][number];

/** What the picture of a top shows. */
export type Look = "strings" | "air" | "both" | "across";

export const looks: readonly { readonly id: Look; readonly words: string; readonly caption: string }[] = [
  { id: "strings", words: "under the strings", caption: "Rise under the strings" },
  { id: "air", words: "with the air", caption: "Rise from the home’s mean air to the air above" },
  { id: "both", words: "both together", caption: "Rise under the strings and with the air" },
  { id: "across", words: "pull across the grain", caption: "Pull across the grain, strings and air together" },
];

export function valuesOf(state: TopState, look: Look): readonly number[] {
  if (look === "strings") return state.strings_height_mm;
  if (look === "air") return state.moisture_height_mm;
  if (look === "across") return state.across_mpa;
  return state.strings_height_mm.map((mm, i) => mm + (state.moisture_height_mm[i] ?? 0));
}

export function less(after: readonly number[], before: readonly number[]): number[] {
  return after.map((value, i) => value - (before[i] ?? 0));
}

const stressSteps = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10] as const;

function stressTicks(low: number, high: number, most: number): Tick[] {
  const step = stressSteps.find((size) => (high - low) / size <= most) ?? (high - low) / most;
  const ticks: Tick[] = [];
  for (let n = Math.ceil(low / step - 1e-6); n * step <= high + 1e-6; n += 1) {
    ticks.push({ at: n * step, label: (n * step).toFixed(step < 0.1 ? 2 : 1).replace(/^-/, "−") });
  }
  return ticks;
}

export interface Levels {
  readonly levels: readonly Tick[];
  readonly step: number;
}

/** Levels that a reader can name, over what these values span, without nothing itself. */
export function levelsFor(values: readonly number[], look: Look, notation: Notation, most = 10): Levels {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const ticks = look === "across" ? stressTicks(low, high, most) : heightTicks(low, high, notation, most);
  const [first, second] = ticks;
  const step = first && second ? second.at - first.at : Math.max(Math.abs(first?.at ?? 0), 1e-9);
  return { levels: ticks.filter(({ at }) => Math.abs(at) > step / 2), step };
}

/** Whether a place lies inside a closed way. */
function within(rim: readonly Place[], { x, y }: Place): boolean {
  let crossed = false;
  for (const [i, a] of rim.entries()) {
    const b = rim[(i + 1) % rim.length] ?? a;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) crossed = !crossed;
  }
  return crossed;
}

function along(brace: Brace, share: number): Place {
  return {
    x: brace.from_x_mm + share * (brace.to_x_mm - brace.from_x_mm),
    y: brace.from_y_mm + share * (brace.to_y_mm - brace.from_y_mm),
  };
}

/** The brace as far as it lies inside the rim. */
export function inside(brace: Brace, rim: readonly Place[]): DrawnBrace {
  const steps = 400;
  const holds = (i: number): boolean => within(rim, along(brace, i / steps));
  let [first, last] = [0, steps];
  while (first < last && !holds(first)) first += 1;
  while (last > first && !holds(last)) last -= 1;
  return { name: brace.name, from: along(brace, first / steps), to: along(brace, last / steps) };
}

export function lengthOf({ from, to }: DrawnBrace): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

type Loose = NonNullable<TopAsked["loose_braces"]>[number];

/** The loose stretch as it is drawn. */
export function looseStretch(brace: DrawnBrace, end: Loose["end"], length: number): DrawnBrace {
  const share = Math.min(1, length / Math.max(lengthOf(brace), 1));
  const [from, to] = end === "first" ? [brace.from, brace.to] : [brace.to, brace.from];
  return {
    name: brace.name,
    from,
    to: { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) },
  };
}

/** Which end of a brace, as a hand finds it. */
export function endWords(brace: DrawnBrace, end: "first" | "second"): string {
  const [here, there] = end === "first" ? [brace.from, brace.to] : [brace.to, brace.from];
  const side = here.y > 0 ? "treble" : "bass";
  const toward = here.x < there.x ? "neck" : "tail";
  if (Math.abs(here.x - there.x) < 30) return `${side} end`;
  if (Math.abs(here.y - there.y) < 15) return `${toward} end`;
  return here.y * there.y < 0 ? `${side} end, toward the ${toward}` : `end toward the ${toward}`;
}

/** What the survey found, as the picture takes it. */
export function foundOn(survey: TopAnswer["survey"]): FoundOnTop[] {
  return survey.taken.map(({ number, shape, points }) => ({
    number,
    shape,
    points: points.map(({ x_mm, y_mm }) => ({ x: x_mm, y: y_mm })),
  }));
}

export interface Moves {
  readonly humidity?: number;
  readonly thickness?: number;
  readonly stringSet?: string;
  readonly tuning?: string;
  readonly bracing?: string;
  readonly brace?: string;
  readonly end: "first" | "second";
  readonly loose: number;
  readonly worn: number;
  readonly lifted: number;
  /** As if nothing that the surveys found were there. */
  readonly mended: boolean;
}

export const atRest: Moves = { end: "second", loose: 60, worn: 0, lifted: 0, mended: false };

export function asked(moves: Moves): TopAsked {
  return {
    ...(moves.humidity === undefined ? {} : { relative_humidity: moves.humidity }),
    ...(moves.thickness === undefined ? {} : { thickness_mm: moves.thickness }),
    ...(moves.stringSet === undefined ? {} : { string_set: moves.stringSet }),
    ...(moves.tuning === undefined ? {} : { tuning: moves.tuning }),
    ...(moves.bracing === undefined ? {} : { bracing: moves.bracing }),
    ...(moves.brace === undefined || moves.loose === 0
      ? {}
      : { loose_braces: [{ brace: moves.brace, end: moves.end, length_mm: moves.loose }] }),
    ...(moves.worn === 0 ? {} : { bridge_plate_worn: moves.worn }),
    ...(moves.lifted === 0 ? {} : { bridge_lifted_mm: moves.lifted }),
    ...(moves.mended ? { mended: true } : {}),
  };
}

/** What is otherwise than recorded, in words, for the head of the second picture. */
export function changeWords(moves: Moves, answer: TopAnswer, write: (mm: number) => string): string {
  const said: string[] = [];
  if (moves.mended) said.push("everything that was found is mended");
  if (moves.brace !== undefined && moves.loose > 0) said.push(`${moves.brace} loose by ${write(moves.loose)}`);
  if (moves.thickness !== undefined)
    said.push(`top ${write(moves.thickness)} instead of ${write(answer.thickness_mm)}`);
  if (moves.stringSet !== undefined) said.push(`${moves.stringSet} strings`);
  if (moves.tuning !== undefined) said.push(`tuned to ${moves.tuning}`);
  if (moves.worn > 0) said.push(`bridge plate worn by ${Math.round(moves.worn * 100)} %`);
  if (moves.lifted > 0) said.push(`bridge lifted by ${write(moves.lifted)}`);
  return said.join("; ");
}
