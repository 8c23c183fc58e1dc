import { groundAxis, heightAxis } from "../chart/axes";
import { drawing, type Frame, frame, type Mark } from "../chart/frame";
import { curve, words } from "../chart/marks";
import { node, px, type SvgNode } from "../chart/svg";
import type { Notation } from "../trade/length";
import { heightTicks } from "./heightTicks";
import { exaggeration } from "./stringPicture";

export interface DrawnCrown {
  readonly fret: number;
  readonly from_nut_mm: number;
  readonly read: boolean;
  readonly crown_bass_mm: number;
  readonly crown_treble_mm: number;
  readonly line_bass_mm: number;
  readonly line_treble_mm: number;
  readonly remove_bass_mm: number;
  readonly remove_treble_mm: number;
  /** Why it comes down; empty when less than a file takes would. */
  readonly reason: string;
}

export interface FretsChoice {
  readonly frets: readonly DrawnCrown[];
  readonly apart: boolean;
  /** Whether the metal is to come off; else it is not drawn. */
  readonly cut: boolean;
  readonly notation: Notation;
  readonly write: (mm: number) => string;
  readonly width: number;
  readonly height: number;
}

type Side = "bass" | "treble";

interface Post {
  readonly x: number;
  readonly crown: number;
  readonly remove: number;
  readonly line: number;
  readonly read: boolean;
}

function post(fret: DrawnCrown, side: Side, cut: boolean): Post {
  const bass = side === "bass";
  return {
    x: fret.from_nut_mm,
    crown: bass ? fret.crown_bass_mm : fret.crown_treble_mm,
    remove: cut && fret.reason !== "" ? (bass ? fret.remove_bass_mm : fret.remove_treble_mm) : 0,
    line: bass ? fret.line_bass_mm : fret.line_treble_mm,
    read: fret.read,
  };
}

function sidesOf(apart: boolean): readonly Side[] {
  return apart ? ["bass", "treble"] : ["bass"];
}

const narrow = 560;

function fretsFrame({ frets, width, height, notation }: FretsChoice): Frame {
  const heights = frets.flatMap((fret) => [
    fret.crown_bass_mm,
    fret.crown_treble_mm,
    fret.line_bass_mm,
    fret.line_treble_mm,
  ]);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const room = Math.max(high - low, 0.1);
  return frame({
    width,
    height,
    margin: { top: 34, right: width < narrow ? 10 : 20, bottom: 30, left: notation === "mm" ? 46 : 40 },
    x: [0, (frets.at(-1)?.from_nut_mm ?? 1) * 1.03],
    y: [low - room * 0.25, high + room * 0.28],
  });
}

/** Crowns as posts on the board; what comes off stands on top in the accent. Bass stands left of treble. */
function crownsMark({ frets, apart, cut, width }: FretsChoice): Mark {
  const wide = width < narrow ? 3.5 : 6;
  return ({ x, y }): SvgNode[] => {
    const [bottom = 0] = y.range();
    return sidesOf(apart).flatMap((side, at, sides) =>
      frets.flatMap((fret) => {
        const one = post(fret, side, cut);
        const left = px(x(one.x) - wide / 2 + (sides.length > 1 ? (at - 0.5) * (wide + 1) : 0));
        const top = y(one.crown);
        const kept = y(one.crown - one.remove);
        const parts = [
          node("rect", {
            class: one.read ? "crown" : "crown unread",
            x: left,
            y: px(kept),
            width: wide,
            height: px(Math.max(bottom - kept, 0)),
          }),
        ];
        if (one.remove > 0) {
          const high = Math.max(px(kept - top), 1.5);
          parts.push(node("rect", { class: "to-remove", x: left, y: px(top), width: wide, height: high }));
        }
        return parts;
      }),
    );
  };
}

function lineMarks({ frets, apart }: FretsChoice): Mark[] {
  return sidesOf(apart).map((side) =>
    curve(
      frets.map((fret) => ({ x: fret.from_nut_mm, y: post(fret, side, false).line })),
      `wanted-line ${side}`,
    ),
  );
}

/** How much comes off, over the frets where it does; every other one where they stand too close. */
function cutWords(choice: FretsChoice): Mark {
  const { frets, cut, write, width } = choice;
  const cuts = frets
    .filter(({ reason }) => cut && reason !== "")
    .map((fret) => ({ fret, most: Math.max(fret.remove_bass_mm, fret.remove_treble_mm) }));
  const perMm = width / (frets.at(-1)?.from_nut_mm ?? 1);
  let last = Number.NEGATIVE_INFINITY;
  const shown = cuts.filter(({ fret, most }) => {
    const needs = write(most).replace(" mm", "").length * 7 + 6;
    if ((fret.from_nut_mm - last) * perMm < needs) return false;
    last = fret.from_nut_mm;
    return true;
  });
  return words(
    shown.map(({ fret, most }) => ({
      x: fret.from_nut_mm,
      y: Math.max(fret.crown_bass_mm, fret.crown_treble_mm),
      text: write(most).replace(" mm", ""),
      className: "broken",
      anchor: "middle" as const,
      dy: -7,
    })),
  );
}

/** Every crown along the neck as if the neck were straight, heights drawn many times their size. */
export function fretsPicture(choice: FretsChoice): SvgNode {
  const within = fretsFrame(choice);
  const [low = 0, high = 1] = within.y.domain();
  const fine: Notation = choice.notation === "sixtyFourths" ? "thousandths" : choice.notation;
  const numbered = choice.frets.filter(({ fret }) =>
    (choice.width < narrow
      ? [1, 3, 5, 7, 9, 12, 15, 19]
      : [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 22]
    ).includes(fret),
  );
  const unit = fine === "mm" ? "mm" : "inch";
  const times = Math.round(exaggeration(within));
  return drawing(within, [
    heightAxis(
      heightTicks(low, high, fine, 6),
      choice.width < narrow
        ? `${unit}, drawn ${times} times too high`
        : `${unit} over the crowns’ own line, drawn ${times} times as high as long`,
    ),
    crownsMark(choice),
    ...lineMarks(choice),
    groundAxis([
      { at: 0, label: "nut", strong: true },
      ...numbered.map(({ fret, from_nut_mm }) => ({ at: from_nut_mm, label: String(fret) })),
    ]),
    cutWords(choice),
  ]);
}
