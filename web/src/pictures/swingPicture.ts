import { groundAxis, heightAxis } from "../chart/axes";
import { drawing, type Frame, frame, type Mark } from "../chart/frame";
import { band, curve, type Word, words } from "../chart/marks";
import { node, px, type SvgNode } from "../chart/svg";
import type { Notation } from "../trade/length";
import { heightTicks, unitWord } from "./heightTicks";
import { type DrawnSwing, exaggeration } from "./stringPicture";

export interface SwingChoice {
  readonly stoppedAt: string;
  /** Where the note starts, from the nut. */
  readonly start_mm: number;
  readonly swing: readonly DrawnSwing[];
  readonly limiting_fret: number;
  readonly notation: Notation;
  /** What is left over a crown, short enough to stand over it. */
  readonly figure: (mm: number) => string;
  readonly width: number;
  readonly height: number;
}

function reach({ string_over_plane_mm, lowest_over_plane_mm }: DrawnSwing): number {
  return string_over_plane_mm - lowest_over_plane_mm;
}

function left(over: DrawnSwing): number {
  return over.gap_mm - reach(over);
}

/** Deep enough for the whole swing and for the crown that limits it; crowns far below are left out. */
function depth({ swing, limiting_fret }: SwingChoice): number {
  const limiting = swing.find(({ fret }) => fret === limiting_fret);
  return 1.15 * Math.max(0.05, limiting?.gap_mm ?? 0, ...swing.map(reach));
}

function swingFrame(choice: SwingChoice): Frame {
  const { width, height, start_mm, swing, notation } = choice;
  const last = swing.at(-1)?.from_nut_mm ?? start_mm + 1;
  return frame({
    width,
    height,
    margin: { top: 34, right: 22, bottom: 30, left: notation === "sixtyFourths" ? 52 : 44 },
    x: [start_mm, last],
    y: [-depth(choice), 0],
  });
}

function crownMark(over: DrawnSwing): Mark {
  return ({ x, y }): SvgNode[] => {
    const [bottom = 0] = y.range();
    const [at, top] = [px(x(over.from_nut_mm)), px(y(-over.gap_mm))];
    if (top >= bottom) return [];
    return [node("path", { class: `crown ${over.verdict}`, d: `M${at},${px(bottom)}V${top}` })];
  };
}

/** Figures over the crowns that have room for them; the one that limits the note first of all. */
function figures(choice: SwingChoice, within: Frame): Word[] {
  const { swing, limiting_fret, figure } = choice;
  const [bottom = 0] = within.y.range();
  const taken: { from: number; to: number }[] = [];
  const byNeed = [...swing].sort(
    (a, b) => Number(b.fret === limiting_fret) - Number(a.fret === limiting_fret) || left(a) - left(b),
  );
  const shown: Word[] = [];
  for (const over of byNeed) {
    const [at, text] = [within.x(over.from_nut_mm), figure(left(over))];
    const half = 4 + text.length * 3.6;
    const low = within.y(-over.gap_mm);
    if (low >= bottom - 4 || taken.some(({ from, to }) => at + half > from && at - half < to)) continue;
    taken.push({ from: at - half, to: at + half });
    shown.push({
      x: over.from_nut_mm,
      y: -over.gap_mm,
      text,
      className: `on-gap ${over.verdict}`,
      anchor: "middle",
      dy: -5,
    });
  }
  return shown;
}

/** The chosen note close up: the string at rest laid straight across the top, its swing below it, and the crowns. */
export function swingPicture(choice: SwingChoice): SvgNode {
  const { swing, start_mm, stoppedAt, notation, width } = choice;
  const within = swingFrame(choice);
  const [low = 0] = within.y.domain();
  const narrow = width < 560;
  const spaced = swing.filter(({ fret }, i) => !narrow || i < 4 || fret % 2 === 0);
  return drawing(within, [
    heightAxis(
      heightTicks(low, 0, notation, 5),
      `${unitWord[notation]} below the string, drawn ${Math.round(exaggeration(within))} times as high as long`,
    ),
    band(
      [{ x: start_mm, low: 0, high: 0 }, ...swing.map((over) => ({ x: over.from_nut_mm, low: -reach(over), high: 0 }))],
      "swing",
    ),
    ...swing.map(crownMark),
    curve([{ x: start_mm, y: 0 }, ...swing.map((over) => ({ x: over.from_nut_mm, y: -reach(over) }))], "swing-edge"),
    curve(
      [
        { x: start_mm, y: 0 },
        { x: within.x.domain()[1] ?? 0, y: 0 },
      ],
      "string",
    ),
    groundAxis([
      { at: start_mm, label: stoppedAt, strong: true },
      ...spaced.map(({ fret, from_nut_mm }) => ({ at: from_nut_mm, label: String(fret) })),
    ]),
    words(figures(choice, within)),
  ]);
}
