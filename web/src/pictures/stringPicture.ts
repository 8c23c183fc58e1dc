import { groundAxis, heightAxis } from "../chart/axes";
import { drawing, type Frame, frame, type Mark } from "../chart/frame";
import { band, curve, type Point, words } from "../chart/marks";
import { node, px, type SvgNode } from "../chart/svg";
import type { Notation } from "../trade/length";
import { heightTicks, unitWord } from "./heightTicks";

export interface DrawnFret {
  readonly fret: number;
  readonly from_nut_mm: number;
  readonly crown_over_plane_mm: number;
}

export interface DrawnString {
  readonly string: number;
  readonly nut_over_frets_mm: number;
  readonly saddle_over_frets_mm: number;
  readonly saddle_from_nut_mm: number;
  readonly over_fret_mm: readonly number[];
  readonly exposure_mm?: number;
}

export interface DrawnNote {
  readonly string: number;
  readonly stopped_fret: number;
  readonly limiting_fret: number;
  readonly margin_mm: number;
  readonly verdict: "clear" | "doubtful" | "touches";
}

/** The chosen note over one higher fret. */
export interface DrawnSwing {
  readonly fret: number;
  readonly from_nut_mm: number;
  readonly string_over_plane_mm: number;
  readonly lowest_over_plane_mm: number;
  readonly gap_mm: number;
  readonly verdict: "clear" | "doubtful" | "touches";
}

export interface StringChoice {
  readonly frets: readonly DrawnFret[];
  readonly strings: readonly DrawnString[];
  /** The note whose tightest place is marked. */
  readonly note: DrawnNote;
  readonly noteWords: string;
  /** How far down the note swings, over every higher fret. */
  readonly swing: readonly DrawnSwing[];
  readonly notation: Notation;
  readonly write: (mm: number) => string;
  readonly width: number;
  readonly height: number;
}

/** How many times taller than long the picture is, against the guitar. */
export function exaggeration(within: Frame): number {
  const [left = 0, right = 1] = within.x.range();
  const [from = 0, to = 1] = within.x.domain();
  const [bottom = 0, top = 0] = within.y.range();
  const [low = 0, high = 1] = within.y.domain();
  return (bottom - top) / (high - low) / ((right - left) / (to - from));
}

/** Where the picture's millimetres lie on the page, for what is laid over it. */
export function stringFrame({
  strings,
  frets,
  width,
  height,
  notation,
}: Pick<StringChoice, "strings" | "frets" | "width" | "height" | "notation">): Frame {
  const saddle = Math.max(...strings.map((one) => one.saddle_over_frets_mm));
  const lowest = Math.min(0, ...frets.map((fret) => fret.crown_over_plane_mm));
  const end = Math.max(...strings.map((one) => one.saddle_from_nut_mm));
  return frame({
    width,
    height,
    margin: { top: 34, right: width < 560 ? 16 : 96, bottom: 30, left: notation === "sixtyFourths" ? 52 : 40 },
    x: [0, end],
    y: [lowest - saddle * 0.16, saddle * 1.08],
  });
}

/** The lowest height drawn. */
function frameFloor(choice: StringChoice): number {
  return stringFrame(choice).y.domain()[0] ?? 0;
}

/** The board under the crowns, with every fret standing on it. */
function boardMark(frets: readonly DrawnFret[]): Mark {
  return ({ x, y }): SvgNode[] => {
    const [bottom = 0] = y.range();
    const first = frets[0];
    const last = frets.at(-1);
    if (!first || !last) return [];
    const tops = frets.map((fret) => `${px(x(fret.from_nut_mm))},${px(y(fret.crown_over_plane_mm) + 7)}`).join("L");
    const end = px(x(last.from_nut_mm) + 6);
    return [
      node("path", {
        class: "board",
        d: `M${px(x(0))},${px(y(first.crown_over_plane_mm) + 7)}L${tops}H${end}V${px(bottom)}H${px(x(0))}Z`,
      }),
      ...frets.map((fret) =>
        node("path", {
          class: "fret",
          d: `M${px(x(fret.from_nut_mm))},${px(y(fret.crown_over_plane_mm))}v8`,
        }),
      ),
    ];
  };
}

function saddleMark(strings: readonly DrawnString[]): Mark {
  return ({ x, y }): SvgNode[] => {
    const tallest = strings.reduce((a, b) => (b.saddle_over_frets_mm > a.saddle_over_frets_mm ? b : a));
    const at = px(x(tallest.saddle_from_nut_mm));
    const [bottom = 0] = y.range();
    const exposure = tallest.exposure_mm;
    const foot = exposure === undefined ? bottom : y(tallest.saddle_over_frets_mm - exposure);
    const parts = [
      node("rect", {
        class: "saddle",
        x: at - 3,
        y: px(y(tallest.saddle_over_frets_mm)),
        width: 6,
        height: px(Math.min(foot, bottom) - y(tallest.saddle_over_frets_mm)),
      }),
    ];
    if (exposure !== undefined && foot < bottom) {
      parts.unshift(node("rect", { class: "bridge", x: at - 14, y: px(foot), width: 28, height: px(bottom - foot) }));
    }
    return parts;
  };
}

function gapMark(at: number, from: number, to: number, className: string): Mark {
  return ({ x, y }): SvgNode[] => [
    node("line", { class: `gap ${className}`, x1: px(x(at)), x2: px(x(at)), y1: px(y(from)), y2: px(y(to)) }),
  ];
}

function height(of: DrawnString, at: number): number {
  const rise = of.saddle_over_frets_mm - of.nut_over_frets_mm;
  return of.nut_over_frets_mm + (rise * at) / of.saddle_from_nut_mm;
}

/** Where the note starts: the nut, or the crown it is stopped at. */
function noteStart({ frets, note }: StringChoice, own: DrawnString): Point {
  const stopped = frets[note.stopped_fret - 1];
  return stopped ? { x: stopped.from_nut_mm, y: stopped.crown_over_plane_mm } : { x: 0, y: own.nut_over_frets_mm };
}

/** How far down the note swings, and what is left over every crown. */
function swingMarks(choice: StringChoice, own: DrawnString): Mark[] {
  const { swing, note, width } = choice;
  const start = noteStart(choice, own);
  const last = swing.at(-1);
  if (!last) return [];
  return [
    band(
      [
        { x: start.x, low: start.y, high: start.y },
        ...swing.map((over) => ({
          x: over.from_nut_mm,
          low: over.lowest_over_plane_mm,
          high: over.string_over_plane_mm,
        })),
      ],
      "swing",
    ),
    curve([start, ...swing.map((over) => ({ x: over.from_nut_mm, y: over.lowest_over_plane_mm }))], "swing-edge"),
    ...swing
      .filter(({ fret }) => fret !== note.limiting_fret)
      .map(({ from_nut_mm, string_over_plane_mm, gap_mm, verdict }) =>
        gapMark(from_nut_mm, string_over_plane_mm - gap_mm, string_over_plane_mm, `${verdict} thin`),
      ),
    words([
      {
        x: last.from_nut_mm,
        y: last.lowest_over_plane_mm,
        text: width < 560 ? "its swing" : "this far down it swings",
        className: "soft",
        dx: 8,
        dy: 4,
      },
    ]),
  ];
}

/** The note as stopped: from the crown of its fret to the saddle, its swing, and the fret it comes nearest to. */
function noteMarks(choice: StringChoice): Mark[] {
  const { frets, strings, note, noteWords, width } = choice;
  const own = strings.find((one) => one.string === note.string);
  const limiting = frets[note.limiting_fret - 1];
  if (!own || !limiting) return [];
  const from = noteStart(choice, own);
  const to = { x: own.saddle_from_nut_mm, y: own.saddle_over_frets_mm };
  const at = limiting.from_nut_mm;
  const over = from.y + ((to.y - from.y) * (at - from.x)) / (to.x - from.x);
  return [
    ...swingMarks(choice, own),
    curve([from, to], note.stopped_fret === 0 ? "stopped open" : "stopped"),
    gapMark(at, limiting.crown_over_plane_mm, over, note.verdict),
    words([
      {
        x: width < 560 ? 0 : at,
        y: width < 560 ? frameFloor(choice) : limiting.crown_over_plane_mm,
        text: noteWords,
        className: `on-gap ${note.verdict}`,
        dx: width < 560 ? 4 : 8,
        dy: width < 560 ? -6 : 30,
      },
    ]),
  ];
}

function openEnds(one: DrawnString): Point[] {
  return [
    { x: 0, y: one.nut_over_frets_mm },
    { x: one.saddle_from_nut_mm, y: one.saddle_over_frets_mm },
  ];
}

/** The two outer strings and their height at fret 12; on a wide picture each is named at the saddle. */
function outerMarks({ frets, strings, write, width }: StringChoice): Mark[] {
  const twelfth = frets[11];
  const treble = strings[0];
  const bass = strings.at(-1);
  if (!twelfth || !treble || !bass) return [];
  const at = twelfth.from_nut_mm;
  const narrow = width < 560;
  const apart = bass.saddle_over_frets_mm - treble.saddle_over_frets_mm;
  const names = [
    { of: bass, text: "bass string", dy: apart < 0 ? 12 : 0 },
    { of: treble, text: "treble string", dy: apart < 0 ? 0 : 12 },
  ];
  return [
    curve(openEnds(treble), "string treble"),
    curve(openEnds(bass), "string bass"),
    gapMark(at, twelfth.crown_over_plane_mm, height(bass, at), "measure"),
    words([
      {
        x: narrow ? 0 : at,
        y: narrow ? bass.saddle_over_frets_mm : Math.max(height(bass, at), height(treble, at)),
        text: `fret 12: bass ${write(bass.over_fret_mm[11] ?? 0)}, treble ${write(treble.over_fret_mm[11] ?? 0)}`,
        className: "strong",
        anchor: narrow ? "start" : "end",
        dx: narrow ? 4 : -6,
        dy: narrow ? 4 : -12,
      },
      ...(narrow
        ? []
        : names.map(({ of, text, dy }) => ({
            x: of.saddle_from_nut_mm,
            y: of.saddle_over_frets_mm,
            text,
            className: "",
            dx: 12,
            dy: Math.abs(apart) < 0.6 ? dy : 4,
          }))),
    ]),
  ];
}

/** The string line from the side: nut on the left, saddle on the right, heights drawn many times their size. */
export function stringPicture(choice: StringChoice): SvgNode {
  const within = stringFrame(choice);
  const [low = 0, high = 1] = within.y.domain();
  const shownFrets = choice.frets.filter(
    ({ fret }) => [1, 3, 5, 7, 9, 12, 15, 19].includes(fret) && (choice.width >= 560 || fret !== 1),
  );
  return drawing(within, [
    heightAxis(
      heightTicks(Math.max(low, 0), high, choice.notation, 6),
      `${unitWord[choice.notation]} over the frets, drawn ${Math.round(exaggeration(within))} times as high as long`,
    ),
    boardMark(choice.frets),
    groundAxis([
      { at: 0, label: "nut", strong: true },
      ...shownFrets.map(({ fret, from_nut_mm }) => ({ at: from_nut_mm, label: String(fret) })),
      { at: within.x.domain()[1] ?? 0, label: "saddle", strong: true, anchor: choice.width < 560 ? "end" : "middle" },
    ]),
    saddleMark(choice.strings),
    ...noteMarks(choice),
    ...outerMarks(choice),
  ]);
}
