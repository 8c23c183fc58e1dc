import { groundAxis, heightAxis } from "../chart/axes";
import { drawing, frame, type Mark } from "../chart/frame";
import { band, curve, dots, level, moment, words } from "../chart/marks";
import { node, px, type SvgNode } from "../chart/svg";
import { dayNumber, isoDay, shortDay, spokenDay } from "../trade/day";
import { inTrade, type Notation } from "../trade/length";
import { heightTicks, unitWord } from "./heightTicks";
import { monthTicks } from "./monthTicks";

/** Daily quantiles of one side's action, in mm; the names are those of the API's `ActionBand`. */
export interface Bands {
  readonly low_mm: readonly number[];
  readonly lower_mm: readonly number[];
  readonly median_mm: readonly number[];
  readonly upper_mm: readonly number[];
  readonly high_mm: readonly number[];
}

export interface Measured {
  readonly date: string;
  readonly mm: number;
  readonly sd: number;
  readonly state: "as_found" | "as_left";
}

export interface YearSide {
  readonly side: "bass" | "treble";
  readonly first: string;
  readonly today: string;
  readonly bands: Bands;
  readonly lowest: number;
  readonly highest: number;
  readonly readings: readonly Measured[];
  readonly changes: readonly { readonly date: string; readonly what: string }[];
  /** Day under the finger or the cursor, as a day number. */
  readonly looked?: number;
  readonly notation: Notation;
  readonly width: number;
  readonly height: number;
  /** Heights to span, so that two sides can share a scale. */
  readonly heights?: readonly [number, number];
}

/** 5 % to 95 %, the interval every forecast here is stated with. */
const halfNinety = 1.645;

export function heightsSpanned(side: Pick<YearSide, "bands" | "lowest" | "highest" | "readings">): [number, number] {
  const heights = [
    side.lowest,
    side.highest,
    ...side.bands.low_mm,
    ...side.bands.high_mm,
    ...side.readings.flatMap((reading) => [reading.mm - 2 * reading.sd, reading.mm + 2 * reading.sd]),
  ];
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const room = (high - low) * 0.1;
  return [low - room, high + room];
}

function bandMarks(first: number, bands: Bands): Mark[] {
  const spans = (low: readonly number[], high: readonly number[]) =>
    low.map((value, i) => ({ x: first + i, low: value, high: high[i] ?? value }));
  return [
    band(spans(bands.low_mm, bands.high_mm), "band wide"),
    band(spans(bands.lower_mm, bands.upper_mm), "band half"),
    curve(
      bands.median_mm.map((value, i) => ({ x: first + i, y: value })),
      "median",
    ),
  ];
}

/** Says on the picture what its wide band is: after today where it is widest, on the side farther from a limit. */
function bandWords(first: number, today: number, { bands, lowest, highest }: YearSide): Mark {
  const last = bands.median_mm.length - 1;
  const from = Math.max(0, Math.min(today - first + 20, last));
  const widthAt = (i: number): number => (bands.high_mm[i] ?? 0) - (bands.low_mm[i] ?? 0);
  let widest = from;
  for (let i = from; i <= last - 40; i += 1) if (widthAt(i) > widthAt(widest)) widest = i;
  const at = Math.min(Math.max(widest, from + 30), Math.max(last - 45, 0));
  const [low, high] = [bands.low_mm[at] ?? 0, bands.high_mm[at] ?? 0];
  return (within) => {
    const room = (edge: number): number =>
      Math.min(...[lowest, highest].map((limit) => Math.abs(within.y(edge) - within.y(limit))));
    const above = room(high) >= 18 || room(high) >= room(low);
    const place = above ? { y: high, dy: -6 } : { y: low, dy: 15 };
    return words([{ x: first + at, text: "9 in 10", className: "on-band", anchor: "middle", ...place }])(within);
  };
}

/** Where along a limit its words cross bands, readings and today least, for words that take this share of the width. */
function calmest(side: YearSide, limit: number, at: "above" | "below", share: number): "start" | "middle" | "end" {
  const { bands, readings } = side;
  const count = bands.median_mm.length;
  const first = dayNumber(side.first);
  const tall = 0.16 * (Math.max(...bands.high_mm) - Math.min(...bands.low_mm));
  const [low, high] = at === "below" ? [limit - tall, limit] : [limit, limit + tall];
  const marked = [
    ...readings
      .filter(({ mm, sd }) => mm + 2 * sd > low && mm - 2 * sd < high)
      .map(({ date }) => dayNumber(date) - first),
    dayNumber(side.today) - first,
  ];
  const crossed = (from: number): number => {
    const to = from + share * count;
    const days = Array.from({ length: Math.round(share * count) }, (_, i) => Math.min(count - 1, from + i));
    const inBand = days.filter((day) => (bands.low_mm[day] ?? 0) < high && (bands.high_mm[day] ?? 0) > low).length;
    return inBand + count * marked.filter((day) => from - 8 <= day && day <= to + 8).length;
  };
  const places = [
    { anchor: "end", crossed: crossed(Math.round((1 - share) * count)) },
    { anchor: "start", crossed: crossed(0) },
    { anchor: "middle", crossed: crossed(Math.round((0.5 - share / 2) * count)) },
  ] as const;
  return places.reduce((best, place) => (place.crossed < best.crossed ? place : best)).anchor;
}

function changeMarks(side: YearSide, first: number): Mark {
  const within = side.changes.filter((change) => dayNumber(change.date) >= first);
  return ({ x, y }): SvgNode[] => {
    const [bottom = 0] = y.range();
    return within.map((change) => {
      const at = px(x(dayNumber(change.date)));
      return node(
        "g",
        { class: "work" },
        node("title", {}, `${spokenDay(change.date)}: ${change.what}`),
        node("path", { d: `M${at},${px(bottom)}l-5,-9h10z` }),
      );
    });
  };
}

function readingMarks(side: YearSide, first: number): Mark[] {
  const named = (state: Measured["state"]): string => (state === "as_found" ? "as found" : "as left");
  const inView = side.readings.filter((reading) => dayNumber(reading.date) >= first);
  const placed = inView.map((reading) => ({
    x: dayNumber(reading.date) + (reading.state === "as_left" ? 3 : 0),
    y: reading.mm,
    error: reading.sd * halfNinety,
    className: `reading ${reading.state === "as_left" ? "left" : "found"}`,
    title: `${spokenDay(reading.date)}, ${named(reading.state)}: ${inTrade(reading.mm).mm}`,
  }));
  return [dots(placed)];
}

/** One side of the year: what was read, what is expected, and the heights this player is served between. */
export function yearPicture(side: YearSide): SvgNode {
  const first = dayNumber(side.first);
  const last = first + side.bands.median_mm.length - 1;
  const today = dayNumber(side.today);
  const heights = side.heights ?? heightsSpanned(side);
  const narrow = side.width < 460;
  const within = frame({
    width: side.width,
    height: side.height,
    margin: { top: 52, right: 10, bottom: 28, left: side.notation === "sixtyFourths" ? 52 : 40 },
    x: [first, last],
    y: heights,
  });
  const write = (mm: number): string => inTrade(mm)[side.notation];
  const limitWords = 150 / (side.width - within.margin.left - within.margin.right);
  return drawing(within, [
    heightAxis(
      heightTicks(heights[0], heights[1], side.notation, 6),
      `${unitWord[side.notation]}, ${side.side} at fret 12`,
    ),
    groundAxis(monthTicks(first, last, narrow)),
    ...bandMarks(first, side.bands),
    level({
      y: side.highest,
      label: `too high above ${write(side.highest)}`,
      labelled: "above",
      className: "limit",
      anchor: calmest(side, side.highest, "above", limitWords),
    }),
    level({
      y: side.lowest,
      label: `too low below ${write(side.lowest)}`,
      labelled: "below",
      className: "limit",
      anchor: calmest(side, side.lowest, "below", limitWords),
    }),
    moment({ x: today, label: `today ${shortDay(side.today)}`, className: "today", row: -1.4 }),
    bandWords(first, today, side),
    changeMarks(side, first),
    ...readingMarks(side, first),
    ...(side.looked === undefined
      ? []
      : [moment({ x: side.looked, label: shortDay(isoDay(side.looked)), className: "looked", row: -1.4 })]),
  ]);
}
